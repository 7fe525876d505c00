/** Single moves between two arrangements: who can leave, who can land, who is in whose way. */
import type { BayModel, Window } from './bay-model.ts'
import { hull, inside, moved, overlaps, sharedFootprint } from './geometry.ts'
import type { Box } from './geometry.ts'
import { freeWindow } from './passage.ts'
import { facesWindow, inSweep, restsOn, shiftTo } from './reach.ts'

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
  /** States looked at before the search settles for a good answer. */
  readonly nodeLimit: number
  /** Let any unit wait (small cases); else only what stands in a way. */
  readonly exhaustive: boolean
  readonly shouldStop: () => boolean
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

export const inBay = (spots: readonly Spot[], bay: number, but: number): Box[] => {
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

/** A final move that leaves every other misplaced unit a way out and a way in, as far as settled things go. */
export const harmless = (
  task: ChangeoverTask,
  spots: readonly Spot[],
  mover: number,
  target: Spot,
  wrong: readonly number[],
): boolean => {
  if (target.kind === 'away') return true
  const bay = task.bays[target.bay]
  if (bay === undefined) return false
  const open = new Set(wrong)
  const settled: Box[] = []
  spots.forEach((spot, other) => {
    if (!open.has(other) && spot.kind === 'bay' && spot.bay === target.bay) settled.push(spot.box)
  })
  const after = [...settled, target.box]
  return wrong.every((other) => {
    if (other === mover) return true
    return [spots[other], task.movers[other]?.target].every((place) => {
      if (place === undefined || place.kind === 'away' || place.bay !== target.bay) return true
      return freeWindow(bay, after, place.box) >= 0 || freeWindow(bay, settled, place.box) < 0
    })
  })
}

const sameBox = (a: Box, b: Box): boolean =>
  a.x1 === b.x1 && a.y1 === b.y1 && a.z1 === b.z1 && a.x2 === b.x2 && a.y2 === b.y2 && a.z2 === b.z2

/** Misplaced units and whatever keeps them from leaving or from their place, and keeps those from leaving, and so on. */
export const inTheWay = (task: ChangeoverTask, spots: readonly Spot[], wrong: readonly number[]): number[] => {
  const found = new Set<number>(wrong)
  const queue: Spot[] = []
  for (const mover of wrong) {
    const here = spots[mover]
    const target = task.movers[mover]?.target
    if (here !== undefined) queue.push(here)
    if (target !== undefined) queue.push(target)
  }
  for (let place = queue.pop(); place !== undefined; place = queue.pop()) {
    for (let other = 0; other < spots.length; other++) {
      const spot = spots[other]
      if (spot === undefined || found.has(other) || !bars(task, place, spot)) continue
      found.add(other)
      queue.push(spot)
    }
  }
  return [...found]
}

/** Whether what stands at `other` is in the way of a place: in it, on it, or before one of its openings. */
export const bars = (task: ChangeoverTask, place: Spot, other: Spot): boolean => {
  if (place.kind === 'away' || other.kind === 'away') return false
  const bay = task.bays[place.bay]
  const bayThere = task.bays[other.bay]
  if (bay === undefined || bayThere === undefined) return false
  if (place.bay !== other.bay && task.shareAir[place.bay]?.[other.bay] !== true) return false
  if (place.bay !== other.bay)
    return overlaps(moved(place.box, bay.bay.originMm), moved(other.box, bayThere.bay.originMm))
  if (sameBox(place.box, other.box)) return false
  return (
    overlaps(place.box, other.box) ||
    restsOn(other.box, place.box) ||
    bay.windows.some((window) => inWayOut(other.box, place.box, window))
  )
}

/** Whether `other` stands in the straight way out through a window, or in the way to be shifted into line with it first. */
const inWayOut = (other: Box, box: Box, window: Window): boolean => {
  if (inSweep(other, box, window)) return true
  if (facesWindow(box, window)) return false
  const shift = shiftTo(box, window)
  if (shift === null) return false
  const there = moved(box, shift)
  return overlaps(other, hull(box, there)) || inSweep(other, there, window)
}
