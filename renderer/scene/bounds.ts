/** The box around boxes. */
import type { Box, Vec3 } from './types.ts'

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]

/** The smallest box around all; a metre cube where there is nothing. */
export function boundsOf(boxes: readonly Box[]): Box {
  const first = boxes[0]
  if (first === undefined) return { atMm: [0, 0, 0], sizeMm: [1000, 1000, 1000] }
  const low: [number, number, number] = [...first.atMm]
  const high: [number, number, number] = [...add(first.atMm, first.sizeMm)]
  for (const box of boxes) {
    for (const axis of [0, 1, 2] as const) {
      low[axis] = Math.min(low[axis], box.atMm[axis])
      high[axis] = Math.max(high[axis], box.atMm[axis] + box.sizeMm[axis])
    }
  }
  return { atMm: low, sizeMm: [high[0] - low[0], high[1] - low[1], high[2] - low[2]] }
}

/** The eight corners of a box. */
export function cornersOf(box: Box): readonly Vec3[] {
  const [x0, y0, z0] = box.atMm
  const [x1, y1, z1] = add(box.atMm, box.sizeMm)
  return [x0, x1].flatMap((x) => [y0, y1].flatMap((y) => [z0, z1].map((z): Vec3 => [x, y, z])))
}
