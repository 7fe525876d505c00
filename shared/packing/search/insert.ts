/** Finds the best place for one unit in a layout as it stands, and puts it there. */
import { freeSpaces, poseRule, put, stackRule } from '../bay-state.ts'
import type { BayState } from '../bay-state.ts'
import { boxAt } from '../geometry.ts'
import type { Box } from '../geometry.ts'
import { poseAllows, sizeWithin } from '../poses.ts'
import type { Pose } from '../poses.ts'
import type { Random } from '../random.ts'
import { facesWindow, hinders, inSweep, restsOn, shiftTo } from '../reach.ts'
import type { Scene } from '../scene.ts'
import type { PackLock, Placement, Vec3 } from '../types.ts'
import type { Origin } from './objective.ts'
import type { Spot, SpotList, Where } from './spot-list.ts'
import { clashes, ownBay } from './state.ts'
import type { SceneState } from './state.ts'

export type InsertOptions = {
  readonly random: Random
  /** Share by which a judgement may be off, so that rounds differ; 0 for the plain best. */
  readonly noise01: number
  /** Where each unit is in the other layout: there it need not move at dusk. */
  readonly origin: Origin | null
  /** Scratch for the places looked at; made once per solve, so that the inner loop allocates nothing. */
  readonly list: SpotList
}

/** Candidates looked at closely, per unit. */
const CLOSE_LOOKS = 20
/** Weights of the quick judgement by which places are looked at, in its own arbitrary unit; tuned on the samples, the objective decides. */
/** By tier of admission: welcome, better elsewhere, last resort. */
const TIER_COST = [0, 30, 1000] as const
/** Wanted at night, yet not to be had from the bed. */
const OUT_OF_REACH = 500
/** Wanted on the road, yet not to be had from the seat. */
const OFF_SEAT = 12
/** A space left ragged. */
const WASTE = 4
/** Standing at the top of the bay rather than on its floor. */
const HEIGHT = 2
/** Per kilogram standing at the top rather than on the floor. */
const NOT_STANDING_LOW_PER_KG = 0.15
/** Standing in the way of a thing wanted once a day. */
const BLOCKS = 3
/** One thing before it, for a thing wanted once a day. */
const BLOCKED = 4
/** In line with no opening. */
const NOT_FACING = 8
/** In a bay that is gone at night, per unit of the traveller's weight for moves at dusk. */
const HOMELESS = 6
/** In reach of the seat or the bed without need. */
const TAKES_SEAT = 1.5
/** Where it is in the other layout, per unit of the traveller's weight for moves at dusk. */
const STAYS = 5

/** Puts a unit at its best legal place. False where there is none. */
export const insert = (
  scene: Scene,
  state: SceneState,
  unit: number,
  owned: Set<number>,
  options: InsertOptions,
): boolean => {
  const list = options.list
  list.clear()
  collect(scene, state, unit, options)
  list.heapify()
  let best: Spot | null = null
  let least = Infinity
  for (let looks = 0; looks < CLOSE_LOOKS;) {
    const at = list.pop()
    if (at < 0 || list.costAt(at) >= least) break
    const spot = list.spotAt(at)
    const bay = state.bays[spot.bay]
    if (bay === undefined || stackRule(scene, bay, unit, spot.box) !== null) continue
    if (clashes(scene, state, spot.bay, spot.box)) continue
    const cost = list.costAt(at) + blockingCost(scene, bay, unit, spot.box)
    if (cost < least) {
      best = spot
      least = cost
    }
    looks++
  }
  const bay = best === null ? null : ownBay(state, best.bay, owned)
  if (best === null || bay === null) return false
  put(scene, bay, unit, { box: best.box, edges: edgesAt(scene, unit, best) })
  state.where[unit] = best.bay
  return true
}

const edgesAt = (scene: Scene, unit: number, spot: Spot): Placement['edges'] =>
  scene.model.units[unit]?.poses[spot.pose]?.edges ?? [0, 1, 2]

/** One unit looked at in one bay. */
type Look = {
  readonly scene: Scene
  readonly bay: BayState
  readonly unit: number
  /** Cost of the bay itself. */
  readonly base: number
  readonly lock: PackLock | null
  readonly options: InsertOptions
}

const collect = (scene: Scene, state: SceneState, unit: number, options: InsertOptions): void => {
  const item = scene.model.units[unit]
  const admissions = scene.admissions[unit]
  if (item === undefined || admissions === undefined) return
  const lock = scene.locks[unit] ?? null
  const massG = scene.traits[unit]?.massG ?? 0
  for (let index = 0; index < state.bays.length; index++) {
    const bay = state.bays[index]
    const admission = admissions[index]
    if (bay === undefined || admission === undefined || admission.rule !== null) continue
    if (bay.massG + massG > bay.model.bay.loadLimitG) continue
    const base = bayCost(scene, bay, unit) + (TIER_COST[admission.tier] ?? 0)
    const look: Look = { scene, bay, unit, base, lock, options }
    if (lock !== null && lock.atMm !== null) {
      lockedSpots(look, lock, lock.atMm)
      continue
    }
    item.poses.forEach((pose, at) => poseSpots(look, pose, at))
    if (lock === null) homeSpot(look)
  }
}

const whereOf = (look: Look, pose: number, atMm: Vec3): Where => ({
  bay: look.bay.model.index,
  pose,
  x: atMm[0],
  y: atMm[1],
  z: atMm[2],
})

/** The very spot it has in the other layout, if it is free. */
const homeSpot = (look: Look): void => {
  const { scene, bay, unit, base, options } = look
  const spot = options.origin?.[unit] ?? null
  if (spot === null || spot === 'free' || spot.bayId !== bay.model.bay.id) return
  const box = boxAt(spot.atMm, spot.sizeMm)
  const pose = (scene.model.units[unit]?.poses ?? []).findIndex((each) => poseAllows(each, spot.sizeMm))
  if (pose < 0 || poseRule(scene, bay, unit, box) !== null) return
  const noise = 1 + options.noise01 * (options.random() - 0.5) * 2
  const cost = base - STAYS * scene.model.input.weights.dusk * noise
  options.list.push(cost, whereOf(look, pose, spot.atMm), spot.sizeMm)
}

/** A unit fixed by the user has one place; only its turn may be open. */
const lockedSpots = (look: Look, lock: PackLock, atMm: Vec3): void => {
  const { scene, bay, unit, base, options } = look
  const poses = scene.model.units[unit]?.poses ?? []
  poses.forEach((pose, at) => {
    const size = lock.sizeMm ?? pose.sizeMm
    if (!poseAllows(pose, size)) return
    if (poseRule(scene, bay, unit, boxAt(atMm, size)) === null) options.list.push(base, whereOf(look, at, atMm), size)
  })
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

const poseSpots = (look: Look, pose: Pose, poseAt: number): void => {
  const { scene, bay, unit, base, lock, options } = look
  const where = whereOf(look, poseAt, [0, 0, 0])
  const massKg = (scene.traits[unit]?.massG ?? 0) / 1000
  const heightMm = bay.model.bay.sizeMm[2]
  const { windowXs, windowYs } = bay.model
  for (const space of freeSpaces(bay)) {
    const roomX = space.x2 - space.x1
    const roomY = space.y2 - space.y1
    const roomZ = space.z2 - space.z1
    if (pose.leastMm[0] > roomX || pose.leastMm[1] > roomY || pose.leastMm[2] > roomZ) continue
    const size = sizeWithin(pose, [roomX, roomY, roomZ])
    if (size === null) continue
    if (lock !== null && lock.sizeMm !== null && !sameSize(lock.sizeMm, size)) continue
    const waste =
      1 - (size[0] * size[1]) / (roomX * roomY) + 0.3 * (1 - size[2] / roomZ) - 0.4 * flush(size, roomX, roomY)
    const height =
      (space.z1 / heightMm) * HEIGHT + massKg * NOT_STANDING_LOW_PER_KG * ((space.z1 + size[2] / 2) / heightMm)
    const cost = base + waste * WASTE + height
    const lastX = space.x2 - size[0]
    const lastY = space.y2 - size[1]
    for (let i = 0; i < 2 + 2 * windowXs.length; i++) {
      const x = startAt(i, space.x1, lastX, size[0], windowXs)
      if (x < 0) continue
      for (let k = 0; k < 2 + 2 * windowYs.length; k++) {
        const y = startAt(k, space.y1, lastY, size[1], windowYs)
        if (y < 0) continue
        const noise = 1 + options.noise01 * (options.random() - 0.5) * 2
        where.x = x
        where.y = y
        where.z = space.z1
        options.list.push(cost * noise, where, size)
      }
    }
  }
}

/** The `i`th start worth trying in a space: both ends, then where an edge lines up with a window's; -1 where that is none of its own. */
const startAt = (i: number, low: number, last: number, size: number, edges: readonly number[]): number => {
  if (i === 0) return low
  if (i === 1) return last === low ? -1 : last
  const edge = edges[(i - 2) >> 1] ?? -1
  const start = (i & 1) === 0 ? edge : edge - size
  return start > low && start < last ? start : -1
}

const flush = (size: Vec3, roomX: number, roomY: number): number =>
  (size[0] === roomX ? 1 : 0) + (size[1] === roomY ? 1 : 0)

const sameSize = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2]

/** What the place costs in reach: what stands in its way, and whose way it stands in. */
const blockingCost = (scene: Scene, bay: BayState, unit: number, box: Box): number => {
  const { model, placed } = bay
  const own = scene.traits[unit]
  if (own === null || own === undefined || model.windows.length === 0) return 0
  const wanted = wantOf(scene, unit)
  const way = wayOut(bay, box, null)
  if (way.window < 0 && model.windows.every((window) => shiftTo(box, window) === null)) return Infinity
  let cost = way.window < 0 ? NOT_FACING : way.count * wanted * BLOCKED
  for (let slot = bay.outBy.length; slot < placed.length; slot++) {
    const item = placed[slot]
    bay.outBy.push(item === undefined ? -1 : wayOut(bay, item, item).window)
  }
  for (let slot = 0; slot < placed.length; slot++) {
    const other = placed[slot]
    const window = model.windows[bay.outBy[slot] ?? -1]
    if (other === undefined || window === undefined) continue
    if (restsOn(box, other) || inSweep(box, other, window)) cost += wantOf(scene, other.unit) * BLOCKS
  }
  return cost
}

/** The opening with least straight before a box, `but` itself aside; `window` -1 where it is in line with none. */
const wayOut = (bay: BayState, box: Box, but: Box | null): { readonly window: number; readonly count: number } => {
  const { model, placed } = bay
  let best = -1
  let least = Infinity
  for (let index = 0; index < model.windows.length; index++) {
    const window = model.windows[index]
    if (window === undefined || !facesWindow(box, window)) continue
    let count = model.solids.some((solid) => hinders(solid, box, window)) ? BEHIND_SOLID : 0
    for (const other of placed) if (other !== but && inSweep(other, box, window)) count++
    if (count >= least) continue
    best = index
    least = count
  }
  return { window: best, count: least }
}

/** A wheel arch or a tank before it counts as so many things. */
const BEHIND_SOLID = 3

/** How much it matters that nothing stands in a unit's way. */
const wantOf = (scene: Scene, unit: number): number => {
  const traits = scene.traits[unit]
  if (traits === null || traits === undefined) return 0
  let want = 0.05 + traits.uses
  if (scene.layout === 'bed') return traits.access.has('night') ? want + 100 : want
  if (traits.access.has('en-route')) want += 2
  if (scene.model.bedding.has(scene.model.units[unit]?.id ?? '')) want += 0.6
  if (traits.access.has('on-arrival')) want += 0.5
  return want
}
