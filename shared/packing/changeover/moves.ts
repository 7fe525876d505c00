/** Single moves between two arrangements: who can leave, who can land, who is in whose way. */
import type { BayModel } from '../bay-model.ts'
import { inside, moved, overlaps, sharedFootprint } from '../geometry.ts'
import type { Box } from '../geometry.ts'
import { freeWindow } from '../passage.ts'

/** A place: in a bay, or away under a name (made into the bed, outdoors, ...). */
export type Spot =
  { readonly kind: 'bay'; readonly bay: number; readonly box: Box } | { readonly kind: 'away'; readonly name: string }

export type Mover = {
  readonly source: Spot
  readonly target: Spot
  /** Becomes part of the bed: rather last. */
  readonly late: boolean
  readonly massG: number
  readonly bearsG: number
}

export type ChangeoverTask = {
  readonly bays: readonly BayModel[]
  readonly movers: readonly Mover[]
  /** By bay, then bay: whether the two take up some of the same air. */
  readonly shareAir: readonly (readonly boolean[])[]
  /** Places where a mover may wait in a given state, best first. */
  readonly waitsFor: (mover: number, spots: readonly Spot[]) => readonly Spot[]
  /** States that the exact search may look at; 0 where there are too many things for it. */
  readonly nodeLimit: number
  /** Look again, and wider, where something is stuck. */
  readonly thorough: boolean
  /** Enough has been asked for. */
  readonly shouldStop: () => boolean
  /** The host wants an end. */
  readonly hostStops: () => boolean
}

export type Step = { readonly mover: number; readonly from: Spot; readonly to: Spot; readonly window: number }

export const sameSpot = (a: Spot, b: Spot): boolean => {
  if (a.kind === 'away') return b.kind === 'away' && a.name === b.name
  return (
    b.kind === 'bay' &&
    a.bay === b.bay &&
    a.box.x1 === b.box.x1 &&
    a.box.y1 === b.box.y1 &&
    a.box.z1 === b.box.z1 &&
    a.box.x2 === b.box.x2 &&
    a.box.y2 === b.box.y2 &&
    a.box.z2 === b.box.z2
  )
}

const inBay = (spots: readonly Spot[], bay: number, but: number): Box[] => {
  const boxes: Box[] = []
  spots.forEach((spot, mover) => {
    if (mover !== but && spot.kind === 'bay' && spot.bay === bay) boxes.push(spot.box)
  })
  return boxes
}

/** Window by which a mover can leave where it is; -1 where it cannot, 0 where it is away. */
export const leaves = (task: ChangeoverTask, spots: readonly Spot[], mover: number): number => {
  const spot = spots[mover]
  if (spot === undefined) return -1
  if (spot.kind === 'away') return 0
  const bay = task.bays[spot.bay]
  return bay === undefined ? -1 : freeWindow(bay, inBay(spots, spot.bay, mover), spot.box)
}

/** Window by which a mover can be put at a place; -1 where it cannot, 0 where the place is away. */
export const enters = (task: ChangeoverTask, spots: readonly Spot[], mover: number, to: Spot): number => {
  if (to.kind === 'away') return 0
  const bay = task.bays[to.bay]
  if (bay === undefined || !inside(to.box, bay.box)) return -1
  const others = inBay(spots, to.bay, mover)
  if (others.some((other) => overlaps(other, to.box))) return -1
  if (bay.solids.some((solid) => overlaps(solid.box, to.box))) return -1
  if (!stands(task, spots, mover, to, bay)) return -1
  if (meetsOtherBay(task, spots, mover, to, bay)) return -1
  return freeWindow(bay, others, to.box)
}

const stands = (
  task: ChangeoverTask,
  spots: readonly Spot[],
  mover: number,
  to: Extract<Spot, { kind: 'bay' }>,
  bay: BayModel,
): boolean => {
  if (to.box.z1 === 0) return true
  let heldMm2 = 0
  for (const solid of bay.solids) {
    if (solid.supports && solid.box.z2 === to.box.z1) heldMm2 += sharedFootprint(solid.box, to.box)
  }
  for (let other = 0; other < spots.length; other++) {
    const spot = spots[other]
    if (other === mover || spot === undefined || spot.kind === 'away' || spot.bay !== to.bay) continue
    if (spot.box.z2 !== to.box.z1) continue
    const area = sharedFootprint(spot.box, to.box)
    if (area > 0 && (task.movers[other]?.bearsG ?? 0) < (task.movers[mover]?.massG ?? 0) && !isTarget(task, mover, to))
      return false
    heldMm2 += area
  }
  return heldMm2 >= (to.box.x2 - to.box.x1) * (to.box.y2 - to.box.y1)
}

const isTarget = (task: ChangeoverTask, mover: number, spot: Spot): boolean => {
  const target = task.movers[mover]?.target
  return target !== undefined && sameSpot(target, spot)
}

/** Two bays of the two layouts may be the same air: a folded seat back stands where the load bay was. */
const meetsOtherBay = (
  task: ChangeoverTask,
  spots: readonly Spot[],
  mover: number,
  to: Extract<Spot, { kind: 'bay' }>,
  bay: BayModel,
): boolean => {
  const near = task.shareAir[to.bay]
  if (near === undefined || !near.includes(true)) return false
  const here = moved(to.box, bay.bay.originMm)
  return spots.some((spot, other) => {
    if (other === mover || spot.kind === 'away' || near[spot.bay] !== true) return false
    const bayThere = task.bays[spot.bay]
    return bayThere !== undefined && overlaps(here, moved(spot.box, bayThere.bay.originMm))
  })
}

export const misplaced = (task: ChangeoverTask, spots: readonly Spot[]): number[] => {
  const wrong: number[] = []
  task.movers.forEach((mover, index) => {
    const spot = spots[index]
    if (spot !== undefined && !sameSpot(spot, mover.target)) wrong.push(index)
  })
  return wrong
}
