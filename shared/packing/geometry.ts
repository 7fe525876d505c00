/** Boxes on integer millimetres and what can be asked of two of them. */
import type { Vec3 } from './types.ts'

/** A box by its two corners; touching faces do not overlap. */
export type Box = {
  readonly x1: number
  readonly y1: number
  readonly z1: number
  readonly x2: number
  readonly y2: number
  readonly z2: number
}

export const boxAt = (atMm: Vec3, sizeMm: Vec3): Box => ({
  x1: atMm[0],
  y1: atMm[1],
  z1: atMm[2],
  x2: atMm[0] + sizeMm[0],
  y2: atMm[1] + sizeMm[1],
  z2: atMm[2] + sizeMm[2],
})

export const overlaps = (a: Box, b: Box): boolean =>
  a.x1 < b.x2 && b.x1 < a.x2 && a.y1 < b.y2 && b.y1 < a.y2 && a.z1 < b.z2 && b.z1 < a.z2

/** Area that two footprints share, mm². */
export const sharedFootprint = (a: Box, b: Box): number => {
  const x = Math.min(a.x2, b.x2) - Math.max(a.x1, b.x1)
  if (x <= 0) return 0
  const y = Math.min(a.y2, b.y2) - Math.max(a.y1, b.y1)
  return y <= 0 ? 0 : x * y
}

export const inside = (inner: Box, outer: Box): boolean =>
  inner.x1 >= outer.x1 &&
  inner.y1 >= outer.y1 &&
  inner.z1 >= outer.z1 &&
  inner.x2 <= outer.x2 &&
  inner.y2 <= outer.y2 &&
  inner.z2 <= outer.z2

export const volumeMm3 = (sizeMm: Vec3): number => sizeMm[0] * sizeMm[1] * sizeMm[2]

export const moved = (box: Box, by: Vec3): Box => ({
  x1: box.x1 + by[0],
  y1: box.y1 + by[1],
  z1: box.z1 + by[2],
  x2: box.x2 + by[0],
  y2: box.y2 + by[1],
  z2: box.z2 + by[2],
})

/** The smallest box around two. */
export const hull = (a: Box, b: Box): Box => ({
  x1: Math.min(a.x1, b.x1),
  y1: Math.min(a.y1, b.y1),
  z1: Math.min(a.z1, b.z1),
  x2: Math.max(a.x2, b.x2),
  y2: Math.max(a.y2, b.y2),
  z2: Math.max(a.z2, b.z2),
})
