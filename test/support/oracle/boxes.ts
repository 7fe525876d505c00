/** Plain geometry of the oracle: boxes as corners, areas by counting cells. Slow, obvious, and none of the solver's code. */
import type { Face, PackBay, Placement, Vec3 } from '../../../shared/packing/index.ts'

export type Solid = { readonly lo: Vec3; readonly hi: Vec3 }

export const solidOf = (at: Vec3, size: Vec3): Solid => ({
  lo: at,
  hi: [at[0] + size[0], at[1] + size[1], at[2] + size[2]],
})

export const solidOfPlacement = (placement: Placement): Solid => solidOf(placement.atMm, placement.sizeMm)

/** The placement in the vehicle's frame. */
export const solidInVehicle = (placement: Placement, bay: PackBay): Solid =>
  solidOf(
    [placement.atMm[0] + bay.originMm[0], placement.atMm[1] + bay.originMm[1], placement.atMm[2] + bay.originMm[2]],
    placement.sizeMm,
  )

/** Whether two solids share volume; touching faces do not. */
export const intersect = (a: Solid, b: Solid): boolean =>
  [0, 1, 2].every((axis) => lo(a, axis) < hi(b, axis) && lo(b, axis) < hi(a, axis))

export const lo = (solid: Solid, axis: number): number => solid.lo[axis] ?? 0
export const hi = (solid: Solid, axis: number): number => solid.hi[axis] ?? 0

/** Share of a rectangle's area covered by others, by cutting it at every edge into cells and asking each cell's middle. */
export function covered01(base: Solid, others: readonly Solid[]): number {
  const cuts = (axis: 0 | 1): number[] => {
    const inside = others
      .flatMap((other) => [other.lo[axis], other.hi[axis]])
      .filter((at) => at > base.lo[axis] && at < base.hi[axis])
    return [...new Set([base.lo[axis], base.hi[axis], ...inside])].toSorted((a, b) => a - b)
  }
  const xs = cuts(0)
  const ys = cuts(1)
  let area = 0
  for (let i = 0; i + 1 < xs.length; i += 1) {
    for (let j = 0; j + 1 < ys.length; j += 1) {
      const [x1 = 0, x2 = 0] = [xs[i], xs[i + 1]]
      const [y1 = 0, y2 = 0] = [ys[j], ys[j + 1]]
      const x = (x1 + x2) / 2
      const y = (y1 + y2) / 2
      if (others.some((other) => other.lo[0] <= x && x <= other.hi[0] && other.lo[1] <= y && y <= other.hi[1]))
        area += (x2 - x1) * (y2 - y1)
    }
  }
  return area / ((base.hi[0] - base.lo[0]) * (base.hi[1] - base.lo[1]))
}

/** Area that two solids share seen from above. */
export function sharedFromAbove(a: Solid, b: Solid): number {
  const x = Math.min(a.hi[0], b.hi[0]) - Math.max(a.lo[0], b.lo[0])
  const y = Math.min(a.hi[1], b.hi[1]) - Math.max(a.lo[1], b.lo[1])
  return x > 0 && y > 0 ? x * y : 0
}

const AXIS = { 'x-': 0, 'x+': 0, 'y-': 1, 'y+': 1, 'z+': 2 } as const

export const axisOf = (face: Face): 0 | 1 | 2 => AXIS[face]
export const outward = (face: Face): 1 | -1 => (face.endsWith('+') ? 1 : -1)

/** The space a solid sweeps when drawn straight out through a face. */
export function sweepOut(solid: Solid, face: Face, bay: PackBay): Solid {
  const axis = axisOf(face)
  const lower = [...solid.lo]
  const upper = [...solid.hi]
  if (outward(face) > 0) upper[axis] = Math.max(bay.sizeMm[axis], hi(solid, axis))
  else lower[axis] = Math.min(0, lo(solid, axis))
  return { lo: [lower[0] ?? 0, lower[1] ?? 0, lower[2] ?? 0], hi: [upper[0] ?? 0, upper[1] ?? 0, upper[2] ?? 0] }
}

/** How far a leaning wall reaches in between two heights: the straight line's larger end. */
export function insetOver(slope: PackBay['slopes'][number], bay: PackBay, fromZ: number, toZ: number): number {
  const at = (z: number): number => slope.insetFloorMm + ((slope.insetTopMm - slope.insetFloorMm) * z) / bay.sizeMm[2]
  return Math.max(at(fromZ), at(toZ))
}
