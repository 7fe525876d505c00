/** A first layout: units one by one in several orders, the best order kept. */
import type { Random } from '../random.ts'
import type { Scene } from '../scene.ts'
import { insert } from './insert.ts'
import { costOf } from './objective.ts'
import type { Origin } from './objective.ts'
import { SpotList } from './spot-list.ts'
import { branch } from './state.ts'
import type { SceneState } from './state.ts'

export type Ranked = { readonly state: SceneState; readonly cost: number }

type Order = (scene: Scene, unit: number) => number

const bulk = (scene: Scene, unit: number): number => scene.model.units[unit]?.volumeMm3 ?? 0
const longest = (scene: Scene, unit: number): number => Math.max(...(scene.model.units[unit]?.sizeMm ?? [0]))
const choices = (scene: Scene, unit: number): number =>
  (scene.admissions[unit] ?? []).filter((each) => each.rule === null && each.tier < 2).length
const urgency = (scene: Scene, unit: number): number => {
  const traits = scene.traits[unit]
  const first = scene.layout === 'bed' ? 'night' : 'en-route'
  return traits?.access.has(first) === true ? 1 : 0
}

/** Larger first; a key earlier in the list outweighs the later ones. */
const ORDERS: readonly (readonly Order[])[] = [
  [urgency, bulk],
  [(scene, unit) => -choices(scene, unit), bulk],
  [bulk],
  [urgency, (scene, unit) => -choices(scene, unit), longest],
  [longest, bulk],
]

/** What has one bay to go to takes its place there before anything else fills it. */
const lone = (scene: Scene, unit: number): number => (choices(scene, unit) <= 1 ? 1 : 0)

const fixedFirst = (scene: Scene, unit: number): number => {
  const lock = scene.locks[unit]
  if (lock === null || lock === undefined) return 0
  return lock.atMm === null ? 1 : 2 + (lock.atMm[2] === 0 ? 1 : 0) - lock.atMm[2] / 1e6
}

export const sortedBy = (scene: Scene, units: readonly number[], keys: readonly Order[]): number[] => {
  const all = [fixedFirst, ...keys].map((key) => new Map(units.map((unit) => [unit, key(scene, unit)])))
  return units.slice().sort((a, b) => {
    for (const key of all) {
      const by = (key.get(b) ?? 0) - (key.get(a) ?? 0)
      if (by !== 0) return by
    }
    return a - b
  })
}

/** Units that the layout should hold and does not. */
export const missingFrom = (scene: Scene, state: SceneState): number[] => {
  const missing: number[] = []
  scene.traits.forEach((traits, unit) => {
    if (traits !== null && (state.where[unit] ?? -1) < 0) missing.push(unit)
  })
  return missing
}

/** Up to so many units a first layout is made whole even if the host wants an end: it takes a moment only. */
export const ENDED_WHOLE = 500

/** Completes `start` in each order and returns the best. */
export const build = (
  scene: Scene,
  start: SceneState,
  origin: Origin | null,
  random: Random,
  shouldStop: () => boolean,
): Ranked => {
  let best: Ranked | null = null
  const list = new SpotList()
  const missing = missingFrom(scene, start)
  for (const order of ORDERS) {
    const state = branch(start)
    const owned = new Set<number>()
    let brokenOff = false
    for (const unit of sortedBy(scene, missing, [lone, ...order])) {
      brokenOff = shouldStop() && (best !== null || missing.length > ENDED_WHOLE)
      if (brokenOff) break
      insert(scene, state, unit, owned, { random, noise01: 0, origin, list })
    }
    if (best !== null && brokenOff) break
    // What was broken off is not judged: that takes as long again.
    const cost: number = brokenOff ? Infinity : costOf(scene, state, origin)
    if (best === null || cost < best.cost) best = { state, cost }
    if (shouldStop()) break
  }
  return best ?? { state: start, cost: costOf(scene, start, origin) }
}
