/** A container partly filled, as a map of levels by cell, and how good a block is in a space: by definition, for small containers. */
import type { Vec3 } from '../../../shared/packing/index.ts'

/** A block as it stands: hull, and the flat top on it. */
export type Stood = {
  readonly low: Vec3
  readonly high: Vec3
  readonly topLow: readonly [number, number]
  readonly topHigh: readonly [number, number]
}

export type Flat = {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
  readonly z: number
}

/** All rectangles of one level that cannot grow; `lowest` is the least height worth keeping under the ceiling. */
export function levelRectangles(size: Vec3, stood: readonly Stood[], lowest: number): readonly Flat[] {
  const [length, width, height] = size
  const level = Array.from({ length }, () => Array.from({ length: width }, () => 0))
  const paint = (x1: number, y1: number, x2: number, y2: number, z: number): void => {
    for (let x = x1; x < x2; x += 1) level[x]?.fill(z, y1, y2)
  }
  for (const { low, high, topLow, topHigh } of stood) {
    paint(low[0], low[1], high[0], high[1], -1)
    if (high[2] + lowest <= height) paint(topLow[0], topLow[1], topHigh[0], topHigh[1], high[2])
  }
  const found: Flat[] = []
  for (const z of new Set(level.flat().filter((each) => each >= 0))) {
    const all = (x1: number, y1: number, x2: number, y2: number): boolean => {
      if (x1 < 0 || y1 < 0 || x2 > length || y2 > width) return false
      for (let x = x1; x < x2; x += 1) for (let y = y1; y < y2; y += 1) if (level[x]?.[y] !== z) return false
      return true
    }
    for (let x1 = 0; x1 < length; x1 += 1)
      for (let x2 = x1 + 1; x2 <= length; x2 += 1)
        for (let y1 = 0; y1 < width; y1 += 1)
          for (let y2 = y1 + 1; y2 <= width && all(x1, y1, x2, y2); y2 += 1)
            if (
              !all(x1 - 1, y1, x2, y2) &&
              !all(x1, y1 - 1, x2, y2) &&
              !all(x1, y1, x2 + 1, y2) &&
              !all(x1, y1, x2, y2 + 1)
            )
              found.push({ x1, y1, x2, y2, z })
  }
  return found
}

/** Share of a block's surface that touches floor, walls, ceiling or blocks no farther off than `near`. */
export function touching01(size: Vec3, near: Vec3, stood: readonly Stood[], low: Vec3, block: Vec3): number {
  const high: Vec3 = [low[0] + block[0], low[1] + block[1], low[2] + block[2]]
  const overlap = (other: Stood, axis: 0 | 1 | 2): number =>
    Math.max(0, Math.min(high[axis], other.high[axis]) - Math.max(low[axis], other.low[axis]))
  const face = (axis: 0 | 1): number => (axis === 0 ? block[1] : block[0]) * block[2]
  const side = (axis: 0 | 1, up: boolean): number => {
    const whole = face(axis)
    const toWall = up ? size[axis] - high[axis] : low[axis]
    if (toWall <= near[axis]) return whole
    const area = stood.reduce((sum, other) => {
      const gap = up ? other.low[axis] - high[axis] : low[axis] - other.high[axis]
      return gap < 0 || gap > near[axis] ? sum : sum + overlap(other, axis === 0 ? 1 : 0) * overlap(other, 2)
    }, 0)
    return Math.min(whole, area)
  }
  const base = block[0] * block[1]
  const top = size[2] - high[2] <= near[2] ? base : 0
  const touched = base + top + side(0, false) + side(0, true) + side(1, false) + side(1, true)
  return touched / (2 * (base + face(0) + face(1)))
}

/** Longest sum of edges, each used no more often than it may be, that a length holds. */
export function longestSum(
  length: number,
  edges: readonly { readonly size: number; readonly count: number }[],
): number {
  const [first, ...rest] = edges
  if (first === undefined) return 0
  let best = 0
  for (let times = 0; times <= first.count && times * first.size <= length; times += 1)
    best = Math.max(best, times * first.size + longestSum(length - times * first.size, rest))
  return best
}
