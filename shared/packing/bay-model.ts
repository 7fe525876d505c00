/** A bay made ready for the search: solid parts as boxes, openings as windows on an axis. */
import { boxAt } from './geometry.ts'
import type { Box } from './geometry.ts'
import type { Face, PackBay, PackOpening } from './types.ts'

export type Axis = 0 | 1 | 2

/** A hole on the low or high face of an axis; `low`/`high` bound it on the two other axes in order. */
export type Window = {
  readonly id: string
  readonly face: Face
  readonly axis: Axis
  readonly outward: -1 | 1
  readonly aLow: number
  readonly aHigh: number
  readonly bLow: number
  readonly bHigh: number
  readonly door: string
  readonly opensFromInside: boolean
}

/** A solid part of the bay. Steps cut from a leaning wall give no footing: goods would slide off the true slope. */
export type Solid = {
  readonly box: Box
  readonly supports: boolean
  /** The leaning wall it is cut from; null for a part that stands in the bay. */
  readonly face: Face | null
}

export type BayModel = {
  readonly index: number
  readonly bay: PackBay
  readonly box: Box
  readonly solids: readonly Solid[]
  readonly windows: readonly Window[]
  /** Distinct offsets along x and y where a window begins or ends inside the bay. */
  readonly windowXs: readonly number[]
  readonly windowYs: readonly number[]
  readonly freeMm3: number
}

/** Height of one step of a leaning wall, mm (common practice: finer steps waste less room, coarser ones search faster). */
const SLOPE_STEP_MM = 60

const windowOf = (opening: PackOpening): Window => {
  const axis = opening.face.startsWith('x') ? 0 : opening.face.startsWith('y') ? 1 : 2
  return {
    id: opening.id,
    face: opening.face,
    axis,
    outward: opening.face.endsWith('-') ? -1 : 1,
    aLow: opening.fromMm[0],
    aHigh: opening.toMm[0],
    bLow: opening.fromMm[1],
    bHigh: opening.toMm[1],
    door: opening.door,
    opensFromInside: opening.opensFromInside,
  }
}

/** Cuts a leaning wall into level steps, each as deep as the wall is at its deepest within the step. */
const slopeSolids = (bay: PackBay): readonly Solid[] => {
  const [lengthMm, widthMm, heightMm] = bay.sizeMm
  const solids: Solid[] = []
  for (const slope of bay.slopes) {
    const steps = slope.insetFloorMm === slope.insetTopMm ? 1 : Math.max(1, Math.ceil(heightMm / SLOPE_STEP_MM))
    const insetAt = (z: number): number => slope.insetFloorMm + ((slope.insetTopMm - slope.insetFloorMm) * z) / heightMm
    for (let step = 0; step < steps; step++) {
      const z1 = Math.floor((step * heightMm) / steps)
      const z2 = Math.floor(((step + 1) * heightMm) / steps)
      const inset = Math.ceil(Math.max(insetAt(z1), insetAt(z2)))
      if (inset <= 0) continue
      const box: Box = {
        x1: slope.face === 'x+' ? lengthMm - inset : 0,
        x2: slope.face === 'x-' ? inset : lengthMm,
        y1: slope.face === 'y+' ? widthMm - inset : 0,
        y2: slope.face === 'y-' ? inset : widthMm,
        z1,
        z2,
      }
      solids.push({ box, supports: false, face: slope.face })
    }
  }
  return solids
}

const innerEdges = (windows: readonly Window[], axis: 0 | 1, lengthMm: number): readonly number[] => {
  const edges = new Set<number>()
  for (const window of windows) {
    if (window.axis === axis) continue
    const [low, high] = axis === 0 || window.axis === 0 ? [window.aLow, window.aHigh] : [window.bLow, window.bHigh]
    if (low > 0 && low < lengthMm) edges.add(low)
    if (high > 0 && high < lengthMm) edges.add(high)
  }
  return [...edges]
}

/** A bay in the form the search works on. */
export const bayModelOf = (bay: PackBay, index: number): BayModel => {
  const box = boxAt([0, 0, 0], bay.sizeMm)
  const fixed = bay.obstacles.map((obstacle) => ({
    box: boxAt(obstacle.atMm, obstacle.sizeMm),
    supports: true,
    face: null,
  }))
  const solids = [...fixed, ...slopeSolids(bay)]
  const windows = bay.openings.map(windowOf)
  const solidMm3 = solids.reduce(
    (sum, { box: part }) => sum + (part.x2 - part.x1) * (part.y2 - part.y1) * (part.z2 - part.z1),
    0,
  )
  return {
    index,
    bay,
    box,
    solids,
    windows,
    windowXs: innerEdges(windows, 0, bay.sizeMm[0]),
    windowYs: innerEdges(windows, 1, bay.sizeMm[1]),
    freeMm3: Math.max(1, bay.sizeMm[0] * bay.sizeMm[1] * bay.sizeMm[2] - solidMm3),
  }
}
