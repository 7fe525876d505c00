/** Free spaces of a bay: boxes whose whole base rests on something and whose column is empty. */
import type { BayModel } from './bay-model.ts'
import { inside, overlaps } from './geometry.ts'
import type { Box } from './geometry.ts'

/** Spaces thinner than this hold nothing worth looking for, mm. */
const LEAST_MM = 20

type Flat = { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }

/** All spaces of a bay that holds `placed`. */
export const spacesOf = (bay: BayModel, placed: readonly Box[]): Box[] => {
  const levels = new Set<number>([0])
  for (const solid of bay.solids) if (solid.supports && solid.box.z2 < bay.box.z2) levels.add(solid.box.z2)
  for (const box of placed) if (box.z2 < bay.box.z2) levels.add(box.z2)
  return [...levels].flatMap((z) => levelSpaces(bay, placed, z))
}

/** Spaces after one more box has been put in. `placed` already holds it. */
export const spacesAfter = (bay: BayModel, spaces: readonly Box[], placed: readonly Box[], added: Box): Box[] => {
  const top = added.z2
  const cut: Box[] = []
  const touched = new Set<number>()
  for (const space of spaces) {
    if (space.z1 === top) continue
    if (!overlaps(space, added)) {
      cut.push(space)
      continue
    }
    touched.add(space.z1)
    splitAround(space, added, cut)
  }
  const kept =
    touched.size === 0 ? cut : cut.filter((space, index) => !touched.has(space.z1) || isMaximal(cut, space, index))
  return top < bay.box.z2 ? [...kept, ...levelSpaces(bay, placed, top)] : kept
}

/** The parts of a space beside and below a box, each as large as it can be. */
const splitAround = (space: Box, box: Box, into: Box[]): void => {
  if (box.x1 - space.x1 >= LEAST_MM) into.push({ ...space, x2: box.x1 })
  if (space.x2 - box.x2 >= LEAST_MM) into.push({ ...space, x1: box.x2 })
  if (box.y1 - space.y1 >= LEAST_MM) into.push({ ...space, y2: box.y1 })
  if (space.y2 - box.y2 >= LEAST_MM) into.push({ ...space, y1: box.y2 })
  if (box.z1 - space.z1 >= LEAST_MM) into.push({ ...space, z2: box.z1 })
}

const isMaximal = (spaces: readonly Box[], space: Box, index: number): boolean => {
  for (let other = 0; other < spaces.length; other++) {
    const larger = spaces[other]
    if (larger === undefined || other === index || larger.z1 !== space.z1) continue
    if (inside(space, larger) && (!inside(larger, space) || other < index)) return false
  }
  return true
}

const levelSpaces = (bay: BayModel, placed: readonly Box[], z: number): Box[] => {
  const supports: Flat[] = z === 0 ? [bay.box] : []
  const standing: Box[] = []
  const hanging: Box[] = []
  for (const { box, supports: holds } of bay.solids) {
    if (holds && box.z2 === z) supports.push(box)
    if (box.z1 <= z && z < box.z2) standing.push(box)
    else if (box.z1 > z) hanging.push(box)
  }
  for (const box of placed) {
    if (box.z2 === z) supports.push(box)
    if (box.z1 <= z && z < box.z2) standing.push(box)
    else if (box.z1 > z) hanging.push(box)
  }
  let spaces = freeRectangles(supports, standing).map((flat): Box => ({ ...flat, z1: z, z2: bay.box.z2 }))
  for (const box of hanging) {
    if (!spaces.some((space) => overlaps(space, box))) continue
    const next: Box[] = []
    for (const space of spaces) {
      if (overlaps(space, box)) splitAround(space, box, next)
      else next.push(space)
    }
    spaces = next.filter((space, index) => isMaximal(next, space, index))
  }
  return spaces
}

const sortedEdges = (
  flats: readonly Flat[],
  blockers: readonly Flat[],
  low: 'x1' | 'y1',
  high: 'x2' | 'y2',
): number[] => {
  const edges = new Set<number>()
  for (const flat of flats) edges.add(flat[low]).add(flat[high])
  for (const flat of blockers) edges.add(flat[low]).add(flat[high])
  return [...edges].sort((a, b) => a - b)
}

/** Maximal rectangles in the union of `supports` less `blockers`. */
const freeRectangles = (supports: readonly Flat[], blockers: readonly Flat[]): Flat[] => {
  const near = blockers.filter((b) => supports.some((s) => b.x1 < s.x2 && s.x1 < b.x2 && b.y1 < s.y2 && s.y1 < b.y2))
  const only = supports[0]
  if (only === undefined) return []
  if (supports.length === 1 && near.length === 0) return [{ x1: only.x1, y1: only.y1, x2: only.x2, y2: only.y2 }]
  const xs = sortedEdges(supports, near, 'x1', 'x2')
  const ys = sortedEdges(supports, near, 'y1', 'y2')
  const columns = xs.length - 1
  const rows = ys.length - 1
  const grid = new Uint8Array(columns * rows)
  paint(grid, columns, xs, ys, supports, 1)
  paint(grid, columns, xs, ys, near, 0)
  return maximalRectangles(grid, columns, rows, xs, ys)
}

const paint = (
  grid: Uint8Array,
  columns: number,
  xs: readonly number[],
  ys: readonly number[],
  flats: readonly Flat[],
  value: 0 | 1,
): void => {
  const xAt = new Map(xs.map((x, index) => [x, index]))
  const yAt = new Map(ys.map((y, index) => [y, index]))
  for (const flat of flats) {
    const c1 = xAt.get(flat.x1) ?? 0
    const c2 = xAt.get(flat.x2) ?? 0
    const r2 = yAt.get(flat.y2) ?? 0
    for (let row = yAt.get(flat.y1) ?? 0; row < r2; row++) grid.fill(value, row * columns + c1, row * columns + c2)
  }
}

/** Largest-rectangle-in-a-histogram for every row; kept only where the next row does not extend it. */
const maximalRectangles = (
  grid: Uint8Array,
  columns: number,
  rows: number,
  xs: readonly number[],
  ys: readonly number[],
): Flat[] => {
  const found: Flat[] = []
  const heights = new Int32Array(columns + 1)
  const starts = new Int32Array(columns + 1)
  const tall = new Int32Array(columns + 1)
  const runs = new Int32Array(columns + 1)
  for (let row = 0; row < rows; row++) {
    let depth = 0
    for (let column = 0; column < columns; column++) {
      const free = grid[row * columns + column] === 1
      heights[column] = free ? (heights[column] ?? 0) + 1 : 0
      const below = row + 1 < rows && grid[(row + 1) * columns + column] === 1
      runs[column + 1] = (runs[column] ?? 0) + (below ? 1 : 0)
    }
    for (let column = 0; column <= columns; column++) {
      const height = column < columns ? (heights[column] ?? 0) : 0
      let start = column
      while (depth > 0 && (tall[depth - 1] ?? 0) > height) {
        depth--
        start = starts[depth] ?? 0
        const extends_ = (runs[column] ?? 0) - (runs[start] ?? 0) === column - start
        if (extends_) continue
        const x1 = xs[start] ?? 0
        const x2 = xs[column] ?? 0
        const y1 = ys[row + 1 - (tall[depth] ?? 0)] ?? 0
        const y2 = ys[row + 1] ?? 0
        if (x2 - x1 >= LEAST_MM && y2 - y1 >= LEAST_MM) found.push({ x1, y1, x2, y2 })
      }
      if (height > 0 && (depth === 0 || (tall[depth - 1] ?? 0) < height)) {
        starts[depth] = start
        tall[depth] = height
        depth++
      }
    }
  }
  return found
}
