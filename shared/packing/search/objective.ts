/** One number per layout: left out first, then hard access and tiers, then reach, moves at dusk, low and central, bays kept free. */
import type { BayScore, BayState, Placed } from '../bay-state.ts'
import { names } from '../bay-state.ts'
import { moved, overlaps } from '../geometry.ts'
import { peeled } from '../passage.ts'
import { reachesIn } from '../reach.ts'
import type { BoxReach } from '../reach.ts'
import type { Scene } from '../scene.ts'
import type { Placement } from '../types.ts'
import type { SceneState } from './state.ts'

/** Where each unit is in the other layout; `free` where it makes no difference, null where it must move in any case. */
export type Origin = readonly (Placement | 'free' | null)[]

export const LEFT_OUT = 1e6
const HARD = 1e3
/** Half a move: being pulled round a corner is a nuisance, not a barrier. Common practice. */
const NOT_STRAIGHT = 0.5
/** Extra handling per kilogram moved out of the way, in moves. Common practice. */
const PER_KG = 0.04
/** Handlings a day charged for a wish that the bay cannot meet (from the seat, not under the bed). */
const WRONG_BAY = 2
const APART_FROM_FRIEND = 0.3

/** Cost of a bay by itself; cached on the bay. */
export const bayScore = (scene: Scene, bay: BayState): BayScore => (bay.score ??= scoreBay(scene, bay))

const scoreBay = (scene: Scene, bay: BayState): BayScore => {
  const atNight = scene.layout === 'bed'
  const fromInside = atNight ? bay.model.bay.reachFromBed : bay.model.bay.reachFromDriverSeat
  const reaches = reachesIn(bay.model, bay.placed, fromInside)
  const faults = trappedIn(bay, reaches)
  let reach = 0
  let low = 0
  let momentX = 0
  let momentY = 0
  bay.placed.forEach((item, slot) => {
    const traits = scene.traits[item.unit]
    const own = reaches[slot]
    if (traits === null || traits === undefined || own === undefined) return
    const count = own.blockers.length
    const movedG = own.blockers.reduce((sum, j) => sum + (scene.traits[bay.placed[j]?.unit ?? -1]?.massG ?? 0), 0)
    const cost = count + (movedG / 1000) * PER_KG + (own.straight ? 0 : NOT_STRAIGHT)
    reach += traits.uses * cost + LATENT_USE * cost
    const tier = scene.admissions[item.unit]?.[bay.model.index]?.tier ?? 0
    reach += tier === 1 ? WRONG_BAY : 0
    const access = accessFault(scene, item.unit, fromInside, count)
    faults[slot] = (faults[slot] ?? 0) + access.hard + (tier === 2 ? 1 : 0)
    reach += access.soft
    const { originMm } = bay.model.bay
    low += (traits.massG / 1000) * ((originMm[2] + (item.z1 + item.z2) / 2) / 1000)
    momentX += traits.massG * (originMm[0] + (item.x1 + item.x2) / 2)
    momentY += traits.massG * (originMm[1] + (item.y1 + item.y2) / 2)
  })
  return {
    hard: faults.reduce((sum, each) => sum + each, 0),
    faults,
    reach,
    low,
    momentX,
    momentY,
    counts: reaches.map((each) => each.blockers.length),
    barredBy: reaches.map((each) => each.blockers.map((slot) => bay.placed[slot]?.unit ?? -1)),
  }
}

/** By place in the bay: what no order of taking out frees; where all come straight out there is none. */
const trappedIn = (bay: BayState, reaches: readonly BoxReach[]): number[] => {
  const faults = bay.placed.map(() => 0)
  if (bay.model.windows.length === 0 || reaches.every((each) => each.straight)) return faults
  for (const slot of peeled(bay.model, bay.placed).trapped) faults[slot] = TRAPPED
  return faults
}

/** Hard faults charged for a thing that could not have been put where it stands. */
const TRAPPED = 3

/** What everything is wanted, however seldom, times a day. */
const LATENT_USE = 0.02

/** What becomes the bed comes out first at dusk and frees the room the rest needs: handlings charged per thing in its way. */
const DUSK_FIRST = 0.6

const accessFault = (
  scene: Scene,
  unit: number,
  fromInside: boolean,
  count: number,
): { readonly hard: number; readonly soft: number } => {
  const access = scene.traits[unit]?.access
  if (access === undefined) return { hard: 0, soft: 0 }
  if (scene.layout === 'bed') {
    if (!access.has('night')) return { hard: 0, soft: 0 }
    return { hard: (fromInside ? 0 : 1) + Math.min(1, count * 0.5), soft: count }
  }
  const seat = access.has('en-route') ? (fromInside ? 0 : WRONG_BAY * 2) + count * 2 : 0
  const laidFirst = scene.model.bedding.has(scene.model.units[unit]?.id ?? '') ? count * DUSK_FIRST : 0
  return { hard: 0, soft: seat + laidFirst + (access.has('on-arrival') ? count * 0.5 : 0) }
}

/** Cost of a layout. `origin` is null where there is no other layout yet. */
export const costOf = (scene: Scene, state: SceneState, origin: Origin | null): number => {
  const { weights, freeShare01 } = scene.model.input
  let hard = 0
  let reach = 0
  let low = 0
  let used = 0
  let crowded = 0
  let massG = 0
  let momentX = 0
  let momentY = 0
  for (const bay of state.bays) {
    if (bay.placed.length === 0) continue
    const score = bayScore(scene, bay)
    hard += score.hard
    reach += score.reach
    used += 1
    crowded += Math.max(0, bay.usedMm3 / bay.model.freeMm3 - (1 - freeShare01))
    if (bay.model.bay.belongsTo === 'site') continue
    low += score.low
    massG += bay.massG
    momentX += score.momentX
    momentY += score.momentY
  }
  const leftOut = leftOutOf(scene, state)
  const central = massG > 0 ? Math.abs(momentY / massG - middleY(scene)) / 100 : 0
  const height = massG > 0 ? (low / (massG / 1000)) * 10 : 0
  return (
    leftOut * LEFT_OUT +
    (hard + axleExcess(scene, massG, momentX)) * HARD +
    weights.reach * reach +
    weights.dusk *
      ((scene.layout === 'drive' ? willMove(scene, state) : 0) +
        (origin === null ? 0 : movedFrom(scene, state, origin))) +
    weights.dusk * tangled(scene, state) * TANGLE +
    weights.lowAndCentral * (height + central) +
    weights.baysKeptFree * (used * 0.5 + crowded * 2) +
    strangers(scene, state) * APART_FROM_FRIEND
  )
}

/** Bigger things left out cost a little more, so that the search gives up the small one. */
const leftOutOf = (scene: Scene, state: SceneState): number => {
  let left = 0
  scene.traits.forEach((traits, unit) => {
    if (traits !== null && (state.where[unit] ?? -1) < 0) left += 1 + (scene.model.units[unit]?.volumeMm3 ?? 0) / 1e10
  })
  return left
}

/** Middle of the widest vehicle bay across, vehicle frame. */
const middleY = (scene: Scene): number => {
  let low = Infinity
  let high = -Infinity
  for (const { bay } of scene.model.bays) {
    if (bay.belongsTo === 'site') continue
    low = Math.min(low, bay.originMm[1])
    high = Math.max(high, bay.originMm[1] + bay.sizeMm[1])
  }
  return (low + high) / 2
}

const axleExcess = (scene: Scene, massG: number, momentX: number): number => {
  if (scene.layout !== 'drive') return 0
  const { frontAxle, rearAxle, rearAxleXMm, wheelbaseMm } = scene.model.input.vehicle
  if (rearAxleXMm === null || wheelbaseMm === null) return 0
  const frontG = (momentX - massG * rearAxleXMm) / wheelbaseMm
  const over = (axle: typeof frontAxle, shareG: number): number =>
    axle === null ? 0 : Math.max(0, axle.readyG + shareG - axle.limitG) / 1000
  return over(frontAxle, frontG) + over(rearAxle, massG - frontG)
}

/** Things that must move at dusk because their bay is not there at night. */
const willMove = (scene: Scene, state: SceneState): number => {
  const nights = scene.model.input.nights
  if (nights.length === 0) return 0
  let moves = 0
  scene.traits.forEach((traits, unit) => {
    const bay = state.bays[state.where[unit] ?? -1]
    if (traits === null || bay === undefined) return
    if (bay.model.bay.usable.bed) return
    const stored = nights.filter((night) => (night.states[scene.model.units[unit]?.id ?? ''] ?? 'stored') === 'stored')
    moves += stored.length / nights.length
  })
  return moves
}

const movedFrom = (scene: Scene, state: SceneState, origin: Origin): number => {
  const stays = new Uint8Array(scene.traits.length)
  let moves = 0
  for (const bay of state.bays) {
    for (const item of bay.placed) {
      const spot = origin[item.unit] ?? null
      if (spot === 'free' || sameSpot(bay.model.bay.id, item, spot)) stays[item.unit] = 1
      else moves++
    }
  }
  return moves + (scene.barredByDay.length === 0 ? 0 : STEP_ASIDE * steppingAside(scene, state, stays))
}

/** A thing that stays but stands in the way of one that moves is put down and put back. */
const STEP_ASIDE = 2

const steppingAside = (scene: Scene, state: SceneState, stays: Uint8Array): number => {
  const aside = new Uint8Array(stays.length)
  let count = 0
  const ask = (barriers: readonly number[] | undefined): void => {
    for (const unit of barriers ?? []) {
      if (stays[unit] !== 1 || aside[unit] === 1) continue
      aside[unit] = 1
      count++
    }
  }
  for (const bay of state.bays) {
    if (bay.placed.length === 0) continue
    const score = bayScore(scene, bay)
    bay.placed.forEach((item, slot) => {
      if (stays[item.unit] !== 1) ask(score.barredBy[slot])
    })
  }
  scene.barredByDay.forEach((barriers, unit) => {
    if (stays[unit] !== 1) ask(barriers)
  })
  return count
}

/** Moves a tangle costs: one thing put down and taken up again, and the risk that there is no place to put it. */
const TANGLE = 3

const tangled = (scene: Scene, state: SceneState): number => tangledUnits(scene, state).length

/** Units that stand where something is by day that can only leave after them. */
export const tangledUnits = (scene: Scene, state: SceneState): readonly number[] => {
  const found: number[] = []
  if (scene.tangles.length === 0) return found
  for (const bay of state.bays) {
    for (const item of bay.placed) {
      const avoid = scene.tangles[item.unit]
      if (avoid === undefined || avoid.length === 0) continue
      const here = moved(item, bay.model.bay.originMm)
      if (avoid.some((box) => overlaps(box, here))) found.push(item.unit)
    }
  }
  return found
}

export const sameSpot = (bayId: string, item: Placed, spot: Placement | null): boolean =>
  spot !== null &&
  spot.bayId === bayId &&
  spot.atMm[0] === item.x1 &&
  spot.atMm[1] === item.y1 &&
  spot.atMm[2] === item.z1 &&
  spot.sizeMm[0] === item.x2 - item.x1 &&
  spot.sizeMm[1] === item.y2 - item.y1 &&
  spot.sizeMm[2] === item.z2 - item.z1

const strangers = (scene: Scene, state: SceneState): number => {
  let apart = 0
  for (const bay of state.bays) {
    for (const item of bay.placed) {
      const wanted = scene.traits[item.unit]?.belongsWith
      if (wanted === undefined || wanted.size === 0) continue
      const near = bay.placed.some((other) => other.unit !== item.unit && names(scene, other.unit, wanted))
      if (!near && ![...wanted].every((id) => scene.model.units[item.unit]?.pieces.some((p) => p.id === id))) apart++
    }
  }
  return apart
}
