/** The most volume that a few boxes can fill of a small container, by trying every cell, turn and subset; every box wholly supported. */
import type { ContainerInput } from '../../../shared/packing/index.ts'

type Size = readonly [number, number, number]

/** Edges in whole cells; a container of at most 30 cells, since each is a bit. */
export function fullestVolume(input: ContainerInput): number {
  const [length, width, height] = input.sizeMm
  const cell = (x: number, y: number, z: number): number => 1 << ((z * width + y) * length + x)
  const maskOf = (at: Size, size: Size): number => {
    let mask = 0
    for (let x = at[0]; x < at[0] + size[0]; x++)
      for (let y = at[1]; y < at[1] + size[1]; y++) for (let z = at[2]; z < at[2] + size[2]; z++) mask |= cell(x, y, z)
    return mask
  }
  const types = input.boxes.map(({ sizeMm, upright, count }) => ({ turns: turnsOf(sizeMm, upright), count }))
  const left = types.map(({ count }) => count)
  const volumeOf = (size: Size): number => size[0] * size[1] * size[2]
  const room = length * width * height
  let best = 0
  /** Corners are taken in rising order, lowest level first, so that each packing is met once and what carries is there before what it carries. */
  const fill = (from: number, taken: number, filled: number, rest: number): void => {
    best = Math.max(best, filled)
    if (best === room || filled + Math.min(rest, room - filled) <= best) return
    for (let at = from; at < room; at++) {
      const x = at % length
      const y = Math.floor(at / length) % width
      const z = Math.floor(at / (length * width))
      types.forEach(({ turns }, type) => {
        if ((left[type] ?? 0) === 0) return
        for (const size of turns) {
          if (x + size[0] > length || y + size[1] > width || z + size[2] > height) continue
          const body = maskOf([x, y, z], size)
          if ((taken & body) !== 0) continue
          const under = z === 0 ? 0 : maskOf([x, y, z - 1], [size[0], size[1], 1])
          if ((taken & under) !== under) continue
          left[type] = (left[type] ?? 0) - 1
          fill(at + 1, taken | body, filled + volumeOf(size), rest - volumeOf(size))
          left[type] = (left[type] ?? 0) + 1
          if (best === room) return
        }
      })
    }
  }
  const all = input.boxes.reduce((sum, { sizeMm, count }) => sum + volumeOf(sizeMm) * count, 0)
  fill(0, 0, 0, all)
  return best
}

/** Different shapes a box may take, each with an allowed edge upright. */
function turnsOf(size: Size, upright: readonly [boolean, boolean, boolean]): readonly Size[] {
  const shapes = new Map<string, Size>()
  for (const [a, b, up] of [
    [1, 2, 0],
    [2, 1, 0],
    [0, 2, 1],
    [2, 0, 1],
    [0, 1, 2],
    [1, 0, 2],
  ] as const) {
    if (upright[up] !== true) continue
    const turned: Size = [size[a], size[b], size[up]]
    shapes.set(turned.join(), turned)
  }
  return [...shapes.values()]
}
