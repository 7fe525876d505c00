/** Finds the best place for one unit in a layout as it stands, and puts it there. */
import { freeSpaces, plainBox, poseRule, put, stackRule } from '../bay-state.ts'
import type { BayState, Pose3 } from '../bay-state.ts'
import { boxAt, overlaps } from '../geometry.ts'
import type { Box } from '../geometry.ts'
import { sizeWithin } from '../poses.ts'
import type { Pose } from '../poses.ts'
import type { Random } from '../random.ts'
import { facesWindow, shiftTo, sweepOf } from '../reach.ts'
import type { Scene } from '../scene.ts'
import type { PackLock, Vec3 } from '../types.ts'
import { bayScore } from './objective.ts'
import type { Origin } from './objective.ts'
import { clashes, ownBay } from './state.ts'
import type { SceneState } from './state.ts'

type Spot = { readonly bay: number; readonly pose: Pose3; cost: number }

export type InsertOptions = {
  readonly random: Random
  /** Share by which a judgement may be off, so that rounds differ; 0 for the plain best. */
  readonly noise01: number
  /** Where each unit is in the other layout: there it need not move at dusk. */
  readonly origin: Origin | null
}

/** Candidates looked at closely, per unit. */
const CLOSE_LOOKS = 20
const TIER_COST = [0, 30, 1000] as const
const OUT_OF_REACH = 500
const OFF_SEAT = 12
const WASTE = 4
const HEIGHT = 2
const BLOCKS = 3
const BLOCKED = 4
const HOMELESS = 6
const TAKES_SEAT = 1.5
const STAYS = 5
const NOT_FACING = 8
const NOT_STANDING_LOW_PER_KG = 0.15

/** Puts a unit at its best legal place. False where there is none. */
export const insert = (
  scene: Scene,
  state: SceneState,
  unit: number,
  owned: Set<number>,
  options: InsertOptions,
): boolean => {
  const spots = candidates(scene, state, unit, options)
  spots.sort((a, b) => a.cost - b.cost)
  let best: Spot | null = null
  let looks = 0
  for (const spot of spots) {
    if (best !== null && spot.cost >= best.cost) break
    const bay = state.bays[spot.bay]
    if (bay === undefined || stackRule(scene, bay, unit, spot.pose.box) !== null) continue
    if (clashes(scene, state, spot.bay, spot.pose.box)) continue
    spot.cost += blockingCost(scene, bay, unit, spot.pose.box)
    if (spot.cost < (best?.cost ?? Infinity)) best = spot
    if (++looks >= CLOSE_LOOKS) break
  }
  if (best === null) return false
  const bay = ownBay(state, best.bay, owned)
  if (bay === null) return false
  put(scene, bay, unit, best.pose)
  state.where[unit] = best.bay
  return true
}

const candidates = (scene: Scene, state: SceneState, unit: number, options: InsertOptions): Spot[] => {
  const spots: Spot[] = []
  const item = scene.model.units[unit]
  const admissions = scene.admissions[unit]
  if (item === undefined || admissions === undefined) return spots
  const lock = scene.locks[unit] ?? null
  for (let index = 0; index < state.bays.length; index++) {
    const bay = state.bays[index]
    const admission = admissions[index]
    if (bay === undefined || admission === undefined || admission.rule !== null) continue
    if (bay.massG + (scene.traits[unit]?.massG ?? 0) > bay.model.bay.loadLimitG) continue
    const base = bayCost(scene, bay, unit) + (TIER_COST[admission.tier] ?? 0)
    if (lock !== null && lock.atMm !== null) {
      lockedSpots(scene, bay, unit, lock.atMm, lock, base, spots)
      continue
    }
    for (const pose of item.poses) poseSpots(scene, bay, unit, pose, base, options, lock, spots)
    if (lock === null) homeSpot(scene, bay, unit, base, options, spots)
  }
  return spots
}

/** The very spot it has in the other layout, if it is free. */
const homeSpot = (scene: Scene, bay: BayState, unit: number, base: number, options: InsertOptions, into: Spot[]): void => {
  const spot = options.origin?.[unit] ?? null
  if (spot === null || spot === 'free' || spot.bayId !== bay.model.bay.id) return
  const box = boxAt(spot.atMm, spot.sizeMm)
  if (poseRule(scene, bay, unit, box) !== null) return
  const noise = 1 + options.noise01 * (options.random() - 0.5) * 2
  into.push({ bay: bay.model.index, pose: { box, edges: spot.edges }, cost: base - STAYS * scene.model.input.weights.dusk * noise })
}

/** A unit fixed by the user has one place; only its turn may be open. */
const lockedSpots = (
  scene: Scene,
  bay: BayState,
  unit: number,
  atMm: Vec3,
  lock: PackLock,
  base: number,
  into: Spot[],
): void => {
  for (const pose of scene.model.units[unit]?.poses ?? []) {
    const box = boxAt(atMm, lock.sizeMm ?? pose.sizeMm)
    const size = sizeWithin(pose, [box.x2 - box.x1, box.y2 - box.y1, box.z2 - box.z1])
    if (size === null || size[0] !== box.x2 - box.x1 || size[1] !== box.y2 - box.y1 || size[2] !== box.z2 - box.z1) continue
    if (poseRule(scene, bay, unit, box) === null) into.push({ bay: bay.model.index, pose: { box, edges: pose.edges }, cost: base })
  }
}

const bayCost = (scene: Scene, bay: BayState, unit: number): number => {
  const traits = scene.traits[unit]
  if (traits === null || traits === undefined) return 0
  const { bay: data } = bay.model
  let cost = (bay.model.freeMm3 - bay.usedMm3) / 2e8
  if (scene.layout === 'bed') {
    if (traits.access.has('night')) cost += data.reachFromBed ? 0 : OUT_OF_REACH
    else if (data.reachFromBed) cost += TAKES_SEAT
    return cost
  }
  if (traits.access.has('en-route')) cost += data.reachFromDriverSeat ? 0 : OFF_SEAT
  else if (data.reachFromDriverSeat) cost += TAKES_SEAT
  if (!data.usable.bed && storedSomeNight(scene, unit)) cost += HOMELESS * scene.model.input.weights.dusk
  return cost
}

const storedSomeNight = (scene: Scene, unit: number): boolean => {
  const id = scene.model.units[unit]?.id ?? ''
  return scene.model.input.nights.some((night) => (night.states[id] ?? 'stored') === 'stored')
}

const poseSpots = (
  scene: Scene,
  bay: BayState,
  unit: number,
  pose: Pose,
  base: number,
  options: InsertOptions,
  lock: PackLock | null,
  into: Spot[],
): void => {
  const massKg = (scene.traits[unit]?.massG ?? 0) / 1000
  const heightMm = bay.model.bay.sizeMm[2]
  for (const space of freeSpaces(bay)) {
    const roomX = space.x2 - space.x1
    const roomY = space.y2 - space.y1
    const roomZ = space.z2 - space.z1
    const size = sizeWithin(pose, [roomX, roomY, roomZ])
    if (size === null) continue
    if (lock !== null && lock.sizeMm !== null && !sameSize(lock.sizeMm, size)) continue
    const waste = 1 - (size[0] * size[1]) / (roomX * roomY) + 0.3 * (1 - size[2] / roomZ) - 0.4 * flush(size, roomX, roomY)
    const height = (space.z1 / heightMm) * HEIGHT + massKg * NOT_STANDING_LOW_PER_KG * ((space.z1 + size[2] / 2) / heightMm)
    const cost = base + waste * WASTE + height
    for (const x of startsOf(space.x1, space.x2, size[0], bay.model.windowXs)) {
      for (const y of startsOf(space.y1, space.y2, size[1], bay.model.windowYs)) {
        const box = boxAt([x, y, space.z1], size)
        const noise = 1 + options.noise01 * (options.random() - 0.5) * 2
        into.push({ bay: bay.model.index, pose: { box, edges: pose.edges }, cost: cost * noise })
      }
    }
  }
}

const flush = (size: Vec3, roomX: number, roomY: number): number =>
  (size[0] === roomX ? 1 : 0) + (size[1] === roomY ? 1 : 0)

const sameSize = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2]

/** Both ends of a space, and where an edge would line up with a window's. */
const startsOf = (low: number, high: number, size: number, edges: readonly number[]): readonly number[] => {
  const last = high - size
  const starts = last === low ? [low] : [low, last]
  for (const edge of edges) {
    for (const start of [edge, edge - size]) {
      if (start > low && start < last && !starts.includes(start)) starts.push(start)
    }
  }
  return starts
}

/** What the place costs in reach: what stands in its way, and whose way it stands in. */
const blockingCost = (scene: Scene, bay: BayState, unit: number, box: Box): number => {
  const { model, placed } = bay
  const own = scene.traits[unit]
  if (own === null || own === undefined || model.windows.length === 0) return 0
  const wanted = wantOf(scene, unit)
  let least = Infinity
  let faces = false
  for (const window of model.windows) {
    if (!facesWindow(box, window)) continue
    faces = true
    const sweep = sweepOf(box, window, model)
    let count = model.solids.some((solid) => overlaps(solid.box, sweep)) ? 3 : 0
    for (const other of placed) if (overlaps(other, sweep)) count++
    least = Math.min(least, count)
  }
  if (!faces && model.windows.every((window) => shiftTo(box, window) === null)) return Infinity
  let cost = faces ? least * wanted * BLOCKED : NOT_FACING
  if (placed.length === 0) return cost
  const score = bayScore(scene, bay)
  for (let slot = 0; slot < placed.length; slot++) {
    const other = placed[slot]
    const window = model.windows[score.windows[slot] ?? -1]
    if (other === undefined || window === undefined) continue
    const stands = other.z2 === box.z1 && overlaps({ ...box, z1: other.z1, z2: other.z2 }, plainBox(other))
    if (stands || overlaps(sweepOf(other, window, model), box)) cost += wantOf(scene, other.unit) * BLOCKS
  }
  return cost
}

/** How much it matters that nothing stands in a unit's way. */
const wantOf = (scene: Scene, unit: number): number => {
  const traits = scene.traits[unit]
  if (traits === null || traits === undefined) return 0
  let want = 0.05 + traits.uses
  if (scene.layout === 'bed') return traits.access.has('night') ? want + 100 : want
  if (traits.access.has('en-route')) want += 2
  if (traits.access.has('on-arrival')) want += 0.5
  return want
}
