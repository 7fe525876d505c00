/** One night: its bed layout grown from the drive layout, the moves there and back, and what fell out. */
import { changeoversBetween } from './changeover/between.ts'
import { explainAll } from './explain.ts'
import type { Resolve } from './explain.ts'
import { boxAt, moved } from './geometry.ts'
import type { Box } from './geometry.ts'
import { layoutOf, reachOfState, weightedReach } from './layout.ts'
import { randomFrom } from './random.ts'
import { sceneOf } from './scene.ts'
import type { PackModel, Scene } from './scene.ts'
import { build, ENDED_WHOLE, missingFrom } from './search/build.ts'
import type { Ranked } from './search/build.ts'
import { improve } from './search/improve.ts'
import type { Origin } from './search/objective.ts'
import { keepLegal, solve } from './search/solve.ts'
import type { Run } from './search/solve.ts'
import type { SceneState } from './search/state.ts'
import type { AwayPlace, Changeover, Layout, NightPacking, PackFault, PackNight, Reach, Unplaced } from './types.ts'

export type NightSolved = {
  readonly packing: NightPacking
  readonly faults: readonly PackFault[]
  readonly weightedReach: number
}

export type NightJob = {
  readonly model: PackModel
  readonly night: PackNight
  readonly driveScene: Scene
  readonly drive: Layout
  readonly driveReach: readonly Reach[]
  readonly driveUnplaced: readonly Unplaced[]
  /** A layout of nearly the same night to start from, where there is one. */
  readonly earlier: Layout | null
  readonly rounds: number
}

/** Bed layouts tried while something cannot be brought over. */
const TRIES = 4
/** Rounds spent on each further try, at most. */
const TRY_ROUNDS = 120

/** Finds the bed layout of one night and the moves to it and back. */
export const solveNight = (job: NightJob, run: Run): NightSolved => {
  const { model, night } = job
  if (run.shouldStop() && model.units.length > ENDED_WHOLE) return brokenOff(job)
  const leftHome = new Set(job.driveUnplaced.map((each) => each.unitId))
  const scene = {
    ...withoutUnits(sceneOf(model, night), leftHome),
    tangles: tanglesOf(model, job.drive, job.driveReach),
    barredByDay: barredByDay(model, job.driveReach),
  }
  const driveAt = new Map(job.drive.placements.map((placement) => [placement.unitId, placement]))
  const origin: Origin = model.units.map((unit) => driveAt.get(unit.id) ?? null)
  const solved = solve(scene, startOf(scene, job, origin, run), origin, job.rounds, run, 'bed')
  const { state, bed, moves } = bringOver(scene, solved, origin, job, run)
  const reach = reachOfState(scene, state)
  const carried = job.driveUnplaced
    .filter((each) => (night.states[each.unitId] ?? 'stored') === 'stored')
    .map((each): Unplaced => ({ ...each, layout: 'bed', nightId: night.id }))
  const resolve: Resolve = {
    again: (changed) =>
      solve(changed, keepLegal(changed, bed.placements, run.shouldStop), origin, job.rounds, run.aside(), 'bed').state,
    shouldStop: run.shouldStop,
  }
  return {
    packing: {
      nightId: night.id,
      bed,
      reach,
      changeover: moves.there,
      changeback: moves.back,
      unplaced: [...explainAll(scene, state, missingFrom(scene, state), resolve), ...carried],
    },
    faults: nightFaults(scene, state, reach),
    weightedReach: weightedReach(scene, reach),
  }
}

/** A great load of which the host wants no more: nothing has a place that night, and no reason is told. */
const brokenOff = ({ model, night, drive }: NightJob): NightSolved => {
  const stored = model.units.filter((unit) => unit.bin !== null || (night.states[unit.id] ?? 'stored') === 'stored')
  const none: Changeover = {
    moves: [],
    lowerBound: 0,
    optimal: false,
    stuckUnitIds: drive.placements.map((placement) => placement.unitId),
  }
  return {
    packing: {
      nightId: night.id,
      bed: { placements: [], away: elsewhereOn(night) },
      reach: [],
      changeover: none,
      changeback: none,
      unplaced: stored.map((unit) => ({ unitId: unit.id, layout: 'bed', nightId: night.id, why: [], cure: null })),
    },
    faults: [],
    weightedReach: 0,
  }
}

/** For each unit, where those stand by day that it bars: going there at dusk it would bar itself. */
const tanglesOf = (model: PackModel, drive: Layout, reaches: readonly Reach[]): readonly (readonly Box[])[] => {
  const originOf = new Map(model.bays.map((bay) => [bay.bay.id, bay.bay.originMm]))
  const boxOf = new Map(
    drive.placements.map((each) => [
      each.unitId,
      moved(boxAt(each.atMm, each.sizeMm), originOf.get(each.bayId) ?? [0, 0, 0]),
    ]),
  )
  const indexOf = new Map(model.units.map((unit) => [unit.id, unit.index]))
  const found: Box[][] = model.units.map(() => [])
  for (const { unitId, blockedBy } of reaches) {
    const box = boxOf.get(unitId)
    if (box === undefined) continue
    for (const id of blockedBy) found[indexOf.get(id) ?? -1]?.push(box)
  }
  return found
}

const barredByDay = (model: PackModel, reaches: readonly Reach[]): readonly (readonly number[])[] => {
  const indexOf = new Map(model.units.map((unit) => [unit.id, unit.index]))
  const found: number[][] = model.units.map(() => [])
  for (const { unitId, blockedBy } of reaches) {
    found[indexOf.get(unitId) ?? -1]?.push(...blockedBy.flatMap((id) => indexOf.get(id) ?? []))
  }
  return found
}

/** What can stay where it rides by day, or where it lay the night before: whichever completes better. */
const startOf = (scene: Scene, job: NightJob, origin: Origin, run: Run): SceneState => {
  const starts = [job.drive.placements, ...(job.earlier === null ? [] : [job.earlier.placements])]
  const random = randomFrom(run.budget.seed)
  const builds = starts.map((placements) =>
    build(scene, keepLegal(scene, placements, run.shouldStop), origin, random, run.shouldStop),
  )
  return builds.reduce((a, b) => (b.cost < a.cost ? b : a)).state
}

type Brought = {
  readonly state: SceneState
  readonly bed: Layout
  readonly moves: { readonly there: Changeover; readonly back: Changeover }
}

/** The layout with its moves; where something is stuck, other layouts of nearly the same cost are tried. */
const bringOver = (scene: Scene, solved: Ranked, origin: Origin, job: NightJob, run: Run): Brought => {
  const { model, night, drive } = job
  run.budget.onProgress?.(Math.min(1, run.spent / Math.max(1, run.budget.iterations)), 'changeover')
  const massG = massOf(job.driveScene)
  const movesFor = (ranked: Ranked): Brought => {
    const bed = withAway(layoutOf(scene, ranked.state), model, night)
    const moves = changeoversBetween({ model, night, massG, from: drive, to: bed, shouldStop: run.shouldStop })
    return { state: ranked.state, bed, moves }
  }
  let best = movesFor(solved)
  const unplaced = missingFrom(scene, solved.state).length
  for (let tried = 1; tried < TRIES && stuckIn(best) > 0 && unplaced === 0 && !run.shouldStop(); tried++) {
    const rounds = Math.min(TRY_ROUNDS, job.rounds)
    const random = randomFrom(run.budget.seed + tried * SEED_STEP)
    const other = improve(
      { state: solved.state, cost: Infinity },
      { scene, origin, random, rounds, shouldStop: run.shouldStop, onRound: () => undefined },
    )
    if (missingFrom(scene, other.state).length > 0 || other.cost === Infinity) continue
    const brought = movesFor(other)
    if (stuckIn(brought) < stuckIn(best)) best = brought
  }
  return best
}

/** Keeps the seeds of further tries apart. */
const SEED_STEP = 7919

const stuckIn = ({ moves }: Brought): number => moves.there.stuckUnitIds.length + moves.back.stuckUnitIds.length

/** Things that did not go in their bin are no unit of the search, but each is somewhere that night. */
const withAway = (layout: Layout, model: PackModel, night: PackNight): Layout => {
  const known = new Set([...model.units.map((unit) => unit.id), ...layout.away.map((place) => place.unitId)])
  const inBins = new Set(model.units.flatMap((unit) => unit.pieces.map((piece) => piece.id)))
  const away = elsewhereOn(night).filter(({ unitId }) => !known.has(unitId) && !inBins.has(unitId))
  return { placements: layout.placements, away: [...layout.away, ...away] }
}

/** All that a night has elsewhere than stored, units and pieces of bins alike. */
const elsewhereOn = (night: PackNight): readonly AwayPlace[] =>
  Object.entries(night.states).flatMap(([unitId, state]) => (state === 'stored' ? [] : [{ unitId, state }]))

/** What was left out by day is not there at night. */
const withoutUnits = (scene: Scene, ids: ReadonlySet<string>): Scene => ({
  ...scene,
  traits: scene.traits.map((traits, index) => (ids.has(scene.model.units[index]?.id ?? '') ? null : traits)),
})

const massOf = (scene: Scene): ((unitId: string) => number) => {
  const masses = new Map(scene.model.units.map((unit) => [unit.id, scene.traits[unit.index]?.massG ?? 0]))
  return (unitId) => masses.get(unitId) ?? 0
}

/** A thing wanted in the night that cannot be had from the bed with nothing moved. */
const nightFaults = (scene: Scene, state: SceneState, reaches: readonly Reach[]): readonly PackFault[] => {
  const unitAt = new Map(scene.model.units.map((unit) => [unit.id, unit.index]))
  return reaches.flatMap((reach): readonly PackFault[] => {
    const unit = unitAt.get(reach.unitId) ?? -1
    if (scene.traits[unit]?.access.has('night') !== true) return []
    if (reach.fromSeatOrBed && reach.blockedBy.length === 0) return []
    const bayId = state.bays[state.where[unit] ?? -1]?.model.bay.id ?? null
    const nightId = scene.night?.id ?? null
    return [{ rule: 'reach', amount: reach.blockedBy.length, limit: 0, bayId, unitId: reach.unitId, nightId }]
  })
}
