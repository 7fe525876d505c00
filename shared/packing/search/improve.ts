/** Betters a layout by taking a few units out and putting them back otherwise, until the rounds are spent. */
import type { BayState } from '../bay-state.ts'
import type { Random } from '../random.ts'
import { pickIndex } from '../random.ts'
import type { Scene } from '../scene.ts'
import { bayScore, costOf, LEFT_OUT, tangledUnits } from './objective.ts'
import type { Origin } from './objective.ts'
import { missingFrom, sortedBy } from './build.ts'
import type { Ranked } from './build.ts'
import { insert } from './insert.ts'
import { SpotList } from './spot-list.ts'
import { branch, takeOut } from './state.ts'
import type { SceneState } from './state.ts'

export type Improvement = {
  readonly scene: Scene
  readonly origin: Origin | null
  readonly random: Random
  readonly rounds: number
  readonly shouldStop: () => boolean
  readonly onRound: (done: number) => void
}

/** A worse layout is accepted up to this cost at first, falling to nothing: otherwise the search sticks where it began. */
const FIRST_PATIENCE = 3
const NOISE = 0.35
const MOST_OUT = 8

/** Destroy and rebuild from `start`. Returns the best layout seen and the rounds spent. */
export const improve = (start: Ranked, task: Improvement): Ranked & { readonly spent: number } => {
  let best = start
  let current = start
  let spent = 0
  const list = new SpotList()
  while (spent < task.rounds && !task.shouldStop()) {
    const patience = FIRST_PATIENCE * (1 - spent / task.rounds) ** 2
    const next = round(current, task, list)
    spent++
    task.onRound(spent)
    if (next === null) continue
    if (next.cost <= current.cost + patience * task.random()) current = next
    if (next.cost < best.cost) best = next
    else if (current.cost > best.cost + FIRST_PATIENCE * 2) current = best
  }
  return { ...best, spent }
}

const round = (current: Ranked, task: Improvement, list: SpotList): Ranked | null => {
  const { scene, random } = task
  const missing = missingFrom(scene, current.state)
  const chosen = choose(current.state, missing, task)
  if (chosen.size === 0 && missing.length === 0) return null
  const state = branch(current.state)
  const owned = new Set<number>()
  const out = takeOut(scene, state, chosen, owned)
  const order =
    missing.length > 0 && random() < 0.5
      ? [...orderOf(scene, missing, random), ...orderOf(scene, out, random)]
      : orderOf(scene, [...missing, ...out], random)
  const noise01 = random() < 0.2 ? 0 : NOISE * random()
  let left = 0
  for (const unit of order)
    if (!insert(scene, state, unit, owned, { random, noise01, origin: task.origin, list })) left++
  if (left * LEFT_OUT > current.cost + LEFT_OUT) return null
  return { state, cost: costOf(scene, state, task.origin) }
}

const orderOf = (scene: Scene, units: readonly number[], random: Random): number[] => {
  const kind = random()
  const jitter = new Map(units.map((unit) => [unit, 0.5 + random()]))
  if (kind < 0.25) return sortedBy(scene, units, [(_, unit) => jitter.get(unit) ?? 0])
  return sortedBy(scene, units, [(s, unit) => (s.model.units[unit]?.volumeMm3 ?? 0) * (jitter.get(unit) ?? 1)])
}

/** Which units come out this round. */
const choose = (state: SceneState, missing: readonly number[], task: Improvement): Set<number> => {
  const { scene, random } = task
  if (missing.length > 0 && random() < 0.8)
    return clearFor(scene, state, missing[pickIndex(random, missing.length)] ?? 0, random)
  const hurt = missing.length > 0 ? [] : hurtIn(scene, state)
  if (hurt.length > 0 && random() < 0.6) {
    const unit = hurt[pickIndex(random, hurt.length)] ?? 0
    return new Set([unit, ...clearFor(scene, state, unit, random)])
  }
  const kind = random()
  if (kind < 0.35) return fromOneBay(state, random)
  if (kind < 0.7) return aroundWorst(scene, state, random)
  return anywhere(scene, state, random)
}

/** Units that stand where they should only in need, or out of reach of the bed or the seat. */
const hurtIn = (scene: Scene, state: SceneState): number[] => {
  const hurt: number[] = [...tangledUnits(scene, state)]
  for (const bay of state.bays) {
    if (bay.placed.length === 0) continue
    const score = bayScore(scene, bay)
    if (score.hard === 0) continue
    bay.placed.forEach((item, slot) => {
      if ((score.faults[slot] ?? 0) > 0) hurt.push(item.unit)
    })
  }
  return hurt
}

/** Bays that would suit a unit: its own rules let it in, and from inside where it is wanted from there. */
const suits = (scene: Scene, unit: number, bay: BayState): boolean => {
  const admission = scene.admissions[unit]?.[bay.model.index]
  if (admission === undefined || admission.rule !== null || admission.tier === 2) return false
  const wanted = scene.layout === 'bed' && scene.traits[unit]?.access.has('night') === true
  return !wanted || bay.model.bay.reachFromBed
}

/** Makes room for a unit in one of the bays that suit it. */
const clearFor = (scene: Scene, state: SceneState, unit: number, random: Random): Set<number> => {
  const suited = state.bays.filter((bay) => suits(scene, unit, bay))
  const bays =
    suited.length > 0 ? suited : state.bays.filter((bay) => scene.admissions[unit]?.[bay.model.index]?.rule === null)
  const bay = bays[pickIndex(random, Math.max(1, bays.length))]
  const out = new Set<number>()
  if (bay === undefined) return out
  const share = 0.3 + 0.7 * random()
  for (const item of bay.placed) if (random() < share && out.size < MOST_OUT * 2) out.add(item.unit)
  return out
}

const fromOneBay = (state: SceneState, random: Random): Set<number> => {
  const bays = state.bays.filter((bay) => bay.placed.length > 0)
  const bay = bays[pickIndex(random, Math.max(1, bays.length))]
  const out = new Set<number>()
  if (bay === undefined) return out
  const share = Math.min(1, (2 + MOST_OUT * random()) / bay.placed.length)
  for (const item of bay.placed) if (random() < share) out.add(item.unit)
  return out
}

/** A unit whose reach costs much, what stands in its way, and one or two others. */
const aroundWorst = (scene: Scene, state: SceneState, random: Random): Set<number> => {
  let worst = -1
  let most = -1
  for (const bay of state.bays) {
    if (bay.placed.length === 0) continue
    const score = bayScore(scene, bay)
    bay.placed.forEach((item, slot) => {
      const traits = scene.traits[item.unit]
      const tier = scene.admissions[item.unit]?.[bay.model.index]?.tier ?? 0
      const cost = ((traits?.uses ?? 0) + 0.1) * (score.counts[slot] ?? 0) + tier * 5 + 0.3
      const drawn = cost * random()
      if (drawn > most) {
        most = drawn
        worst = item.unit
      }
    })
  }
  const out = new Set<number>()
  if (worst < 0) return out
  out.add(worst)
  const home = state.bays[state.where[worst] ?? -1]
  for (const item of home?.placed ?? []) if (random() < 0.35 && out.size < MOST_OUT) out.add(item.unit)
  for (const unit of anywhere(scene, state, random)) if (out.size < MOST_OUT && random() < 0.5) out.add(unit)
  return out
}

const anywhere = (scene: Scene, state: SceneState, random: Random): Set<number> => {
  const held: number[] = []
  scene.traits.forEach((_, unit) => {
    if ((state.where[unit] ?? -1) >= 0) held.push(unit)
  })
  const out = new Set<number>()
  const count = 1 + pickIndex(random, Math.min(MOST_OUT, Math.max(1, held.length)))
  for (let k = 0; k < count; k++) {
    const unit = held[pickIndex(random, Math.max(1, held.length))]
    if (unit !== undefined) out.add(unit)
  }
  return out
}
