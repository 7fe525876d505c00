/** One layout from start to settled: what may stay is kept, the rest is built in, then bettered. */
import { poseRule, put } from '../bay-state.ts'
import { boxAt } from '../geometry.ts'
import { randomFrom } from '../random.ts'
import type { Scene } from '../scene.ts'
import type { PackBudget, Placement } from '../types.ts'
import { build, ENDED_WHOLE, missingFrom } from './build.ts'
import type { Ranked } from './build.ts'
import { improve } from './improve.ts'
import type { Origin } from './objective.ts'
import { clashes, emptyState } from './state.ts'
import type { SceneState } from './state.ts'

/** Rounds spent so far and whether the host has asked to stop. */
export class Run {
  spent = 0
  cancelled = false
  readonly budget: PackBudget

  constructor(budget: PackBudget) {
    this.budget = budget
  }

  readonly shouldStop = (): boolean => {
    if (!this.cancelled && this.budget.shouldStop?.() === true) this.cancelled = true
    return this.cancelled
  }

  /** A run of the same seed and length beside this one, whose rounds do not count and which tells nothing. */
  aside(): Run {
    const { seed, iterations } = this.budget
    return new Run({ seed, iterations, shouldStop: this.shouldStop })
  }
}

/** Places what may stay where it was, from the floor up; of a great load no more than the host waits for. */
export const keepLegal = (scene: Scene, placements: readonly Placement[], shouldStop: () => boolean): SceneState => {
  const state = emptyState(scene)
  const unitAt = new Map(scene.model.units.map((unit) => [unit.id, unit]))
  const bayAt = new Map(scene.model.bays.map((bay) => [bay.bay.id, bay.index]))
  for (const placement of placements.slice().sort((a, b) => a.atMm[2] - b.atMm[2])) {
    if (placements.length > ENDED_WHOLE && shouldStop()) break
    const unit = unitAt.get(placement.unitId)
    const bay = state.bays[bayAt.get(placement.bayId) ?? -1]
    if (unit === undefined || bay === undefined || scene.traits[unit.index] === null) continue
    const lock = scene.locks[unit.index] ?? null
    if (
      scene.admissions[unit.index]?.[bay.model.index]?.rule !== null ||
      (lock?.atMm !== undefined && lock?.atMm !== null)
    )
      continue
    const box = boxAt(placement.atMm, placement.sizeMm)
    if (poseRule(scene, bay, unit.index, box) !== null || clashes(scene, state, bay.model.index, box)) continue
    put(scene, bay, unit.index, { box, edges: placement.edges })
    state.where[unit.index] = bay.model.index
  }
  return state
}

/** Builds from `start` and betters it for `rounds`, longer while something is left out. */
export const solve = (
  scene: Scene,
  start: SceneState,
  origin: Origin | null,
  rounds: number,
  run: Run,
  note: 'drive' | 'bed',
): Ranked => {
  const random = randomFrom(run.budget.seed)
  const first = build(scene, start, origin, random, run.shouldStop)
  const spentBefore = run.spent
  const total = Math.max(1, run.budget.iterations)
  const onRound = (done: number): void => {
    if (done % 16 === 0) run.budget.onProgress?.(Math.min(1, (spentBefore + done) / total), note)
  }
  const task = { scene, origin, random, shouldStop: run.shouldStop, onRound }
  let last = improve(first, { ...task, rounds })
  run.spent += last.spent
  for (let extra = 0; extra < RESCUES && rounds > 0 && missingFrom(scene, last.state).length > 0; extra++) {
    last = improve(last, { ...task, rounds: RESCUE_ROUNDS })
  }
  return last
}

/** Further rounds, not counted as spent, while something has no place yet: some loads take longer than their share. */
const RESCUE_ROUNDS = 60
const RESCUES = 6
