/** The whole job: bins, drive layout, one bed layout a night, reach, moves between them, and what was left out and why. */
import { poseRule, put, plainBox } from './bay-state.ts'
import { boxAt } from './geometry.ts'
import { changeoversBetween } from './changeover.ts'
import { explainAll } from './explain.ts'
import { layoutOf, reachOfState } from './layout.ts'
import { loadingOrder } from './loading-order.ts'
import { cautionsOf, massFaults, massReport } from './mass.ts'
import { packBin } from './bins.ts'
import { randomFrom } from './random.ts'
import { packModelOf, sceneOf } from './scene.ts'
import type { PackModel, Scene } from './scene.ts'
import { build, missingFrom } from './search/build.ts'
import type { Ranked } from './search/build.ts'
import { improve } from './search/improve.ts'
import type { Origin } from './search/objective.ts'
import { clashes, emptyState } from './search/state.ts'
import type { SceneState } from './search/state.ts'
import type {
  InnerPacking,
  Layout,
  NightPacking,
  PackBudget,
  PackFault,
  PackedUnit,
  PackingInput,
  PackingOutcome,
  PackNight,
  PackPiece,
  Placement,
  Reach,
  Unplaced,
} from './types.ts'

/** Rounds that settle a 45-unit car in about three seconds on one core of 2020s office hardware (measured in test/bench). */
export const DEFAULT_ITERATIONS = 800
/** Share of the rounds spent on the drive layout; the nights share the rest. */
const DRIVE_SHARE = 0.4

/**
 * Packs a load: drive layout, a bed layout for each night, reach, moves and explanations.
 * Lengths mm in the bay's frame, masses g, temperatures °C; `budget.iterations` are improvement rounds, 0 or more.
 * Gives one outcome in which each unit is placed, away, or left out with its reasons; the same seed and rounds give the same outcome.
 * Stopped early, it returns the best so far with `cancelled` true. Limits passed by the whole load are in `faults`.
 * Destroy-and-rebuild search over free spaces with full support; reach after reach.md's retrieval sets.
 */
export const packLoad = (input: PackingInput, budget: PackBudget): PackingOutcome => {
  const run = new Run(budget)
  const { inner, model, tooMany } = withBins(input, budget.seed)
  const driveScene = sceneOf(model, null)
  const rounds = driveRounds(input, budget.iterations)
  const drive = solveDrive(driveScene, budget, rounds, run)
  const driveLayout = layoutOf(driveScene, drive.state)
  const missing = missingFrom(driveScene, drive.state)
  const unplaced = [...explainAll(driveScene, drive.state, missing), ...tooMany]
  const known = new Set(model.units.flatMap((unit) => unit.pieces.map((piece) => piece.id)))
  const nights = solveNights(model, driveScene, driveLayout, unplaced, budget, run)
  const mass = massReport(driveScene, drive.state)
  const driveReach = reachOfState(driveScene, drive.state)
  return {
    units: [...packedUnits(driveScene), ...input.pieces.filter((piece) => !known.has(piece.id)).map(looseUnit)],
    bins: inner,
    drive: driveLayout,
    driveReach,
    driveUnplaced: unplaced,
    mass,
    faults: [...massFaults(driveScene, mass), ...nights.flatMap((night) => night.faults)],
    cautions: cautionsOf(driveScene, drive.state),
    nights: nights.map((night) => night.packing),
    loadingOrder: loadingOrder(
      drive.state.bays.flatMap((bay) =>
        bay.placed.map((item) => ({ id: model.units[item.unit]?.id ?? '', bay: bay.model, box: plainBox(item) })),
      ),
    ),
    weightedReach: weighted(driveScene, driveReach) + mean(nights.map((night) => night.weightedReach)),
    iterations: run.spent,
    cancelled: run.cancelled,
  }
}

/** Rounds spent so far and whether the host has asked to stop. */
class Run {
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
}

const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length

const driveRounds = (input: PackingInput, iterations: number): number =>
  input.nights.length === 0 ? iterations : Math.ceil(iterations * DRIVE_SHARE)

/** Packs each bin; what does not go in its bin stays out and says so. */
const withBins = (
  input: PackingInput,
  seed: number,
): { readonly inner: readonly InnerPacking[]; readonly model: PackModel; readonly tooMany: readonly Unplaced[] } => {
  const inner: InnerPacking[] = []
  const tooMany: Unplaced[] = []
  for (const bin of input.bins) {
    const pieces = input.pieces.filter((piece) => piece.binId === bin.id)
    const { packing, left } = packBin(input, bin, pieces, seed)
    inner.push(packing)
    for (const unitId of left) {
      const why = [{ bayId: bin.id, rule: 'no-room' as const, shortByMm: null }]
      tooMany.push({ unitId, layout: 'drive', nightId: null, why, cure: { kind: 'empty-bin', binId: bin.id } })
    }
  }
  const out = new Set(tooMany.map((each) => each.unitId))
  const model = packModelOf({ ...input, pieces: input.pieces.filter((piece) => !out.has(piece.id)) })
  return { inner, model, tooMany }
}

const packedUnits = (scene: Scene): readonly PackedUnit[] =>
  scene.model.units.map((unit) => ({
    id: unit.id,
    kind: unit.bin === null ? 'piece' : 'bin',
    pieceIds: unit.pieces.map((piece) => piece.id),
    sizeMm: unit.sizeMm,
    massG: (unit.bin?.massG ?? 0) + unit.pieces.reduce((sum, piece) => sum + piece.massG, 0),
  }))

const looseUnit = (piece: PackPiece): PackedUnit => ({
  id: piece.id,
  kind: 'piece',
  pieceIds: [piece.id],
  sizeMm: piece.sizeMm,
  massG: piece.massG,
})

/**
 * The night is the tighter of the two: it is sketched first, and the drive layout grows round what can stand there day and night.
 * An earlier plan, where given, takes the sketch's place.
 */
const solveDrive = (scene: Scene, budget: PackBudget, rounds: number, run: Run): Ranked => {
  const earlier = budget.startFrom?.drive
  const night = scene.model.input.nights[0]
  if (earlier !== undefined || night === undefined) {
    return solve(scene, keepLegal(scene, earlier?.placements ?? []), null, rounds, run, 'drive')
  }
  const bedScene = sceneOf(scene.model, night)
  const sketchRounds = Math.floor(rounds * SKETCH_SHARE)
  const sketch = layoutOf(bedScene, solve(bedScene, emptyState(bedScene), null, sketchRounds, run, 'drive').state)
  const at = new Map(sketch.placements.map((placement) => [placement.unitId, placement]))
  const origin: Origin = scene.model.units.map((unit) => at.get(unit.id) ?? 'free')
  const start = keepLegal(scene, sketch.placements)
  return solve(scene, start, origin, rounds - sketchRounds, run, 'drive')
}

/** Share of the drive layout's rounds spent on the sketch of the night. */
const SKETCH_SHARE = 0.35

/** Places what may stay where it was, from the floor up. */
const keepLegal = (scene: Scene, placements: readonly Placement[]): SceneState => {
  const state = emptyState(scene)
  const unitAt = new Map(scene.model.units.map((unit) => [unit.id, unit]))
  const bayAt = new Map(scene.model.bays.map((bay) => [bay.bay.id, bay.index]))
  for (const placement of placements.slice().sort((a, b) => a.atMm[2] - b.atMm[2])) {
    const unit = unitAt.get(placement.unitId)
    const bay = state.bays[bayAt.get(placement.bayId) ?? -1]
    if (unit === undefined || bay === undefined || scene.traits[unit.index] === null) continue
    const lock = scene.locks[unit.index] ?? null
    if (scene.admissions[unit.index]?.[bay.model.index]?.rule !== null || lock?.atMm !== undefined && lock?.atMm !== null) continue
    const box = boxAt(placement.atMm, placement.sizeMm)
    if (poseRule(scene, bay, unit.index, box) !== null || clashes(scene, state, bay.model.index, box)) continue
    put(scene, bay, unit.index, { box, edges: placement.edges })
    state.where[unit.index] = bay.model.index
  }
  return state
}

const solve = (
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
  const last = improve(first, { scene, origin, random, rounds, shouldStop: run.shouldStop, onRound })
  run.spent += last.spent
  return last
}

type NightSolved = {
  readonly packing: NightPacking
  readonly faults: readonly PackFault[]
  readonly weightedReach: number
}

const solveNights = (
  model: PackModel,
  driveScene: Scene,
  drive: Layout,
  driveUnplaced: readonly Unplaced[],
  budget: PackBudget,
  run: Run,
): readonly NightSolved[] => {
  const nights = model.input.nights
  const rounds = Math.floor((budget.iterations - driveRounds(model.input, budget.iterations)) / Math.max(1, nights.length))
  let earlier: Layout | null = null
  return nights.map((night, index) => {
    const before = earlier ?? budget.startFrom?.nights[index]?.bed ?? null
    const solved = solveNight(model, night, driveScene, drive, driveUnplaced, before, rounds, run)
    earlier = solved.packing.bed
    return solved
  })
}

const solveNight = (
  model: PackModel,
  night: PackNight,
  driveScene: Scene,
  drive: Layout,
  driveUnplaced: readonly Unplaced[],
  earlier: Layout | null,
  rounds: number,
  run: Run,
): NightSolved => {
  const leftHome = new Set(driveUnplaced.map((each) => each.unitId))
  const scene = withoutUnits(sceneOf(model, night), leftHome)
  const driveAt = new Map(drive.placements.map((placement) => [placement.unitId, placement]))
  const origin: Origin = model.units.map((unit) => driveAt.get(unit.id) ?? null)
  const starts = [drive.placements, ...(earlier === null ? [] : [earlier.placements])]
  const random = randomFrom(run.budget.seed)
  const builds = starts.map((placements) => build(scene, keepLegal(scene, placements), origin, random, run.shouldStop))
  const first = builds.reduce((a, b) => (b.cost < a.cost ? b : a))
  const solved = solve(scene, first.state, origin, rounds, run, 'bed')
  const bed = withAway(layoutOf(scene, solved.state), model, night)
  const reach = reachOfState(scene, solved.state)
  run.budget.onProgress?.(Math.min(1, run.spent / Math.max(1, run.budget.iterations)), 'changeover')
  const massG = massOf(driveScene)
  const moves = changeoversBetween({ model, night, massG, from: drive, to: bed, shouldStop: run.shouldStop })
  const carried = driveUnplaced
    .filter((each) => (night.states[each.unitId] ?? 'stored') === 'stored')
    .map((each): Unplaced => ({ ...each, layout: 'bed', nightId: night.id }))
  return {
    packing: {
      nightId: night.id,
      bed,
      reach,
      changeover: moves.there,
      changeback: moves.back,
      unplaced: [...explainAll(scene, solved.state, missingFrom(scene, solved.state)), ...carried],
    },
    faults: nightFaults(scene, solved.state, reach),
    weightedReach: weighted(scene, reach),
  }
}

/** Things that did not go in their bin are no unit of the search, but each is somewhere that night. */
const withAway = (layout: Layout, model: PackModel, night: PackNight): Layout => {
  const known = new Set([...model.units.map((unit) => unit.id), ...layout.away.map((place) => place.unitId)])
  const inBins = new Set(model.units.flatMap((unit) => unit.pieces.map((piece) => piece.id)))
  const away = Object.entries(night.states).flatMap(([unitId, state]) =>
    state === 'stored' || known.has(unitId) || inBins.has(unitId) ? [] : [{ unitId, state }],
  )
  return { placements: layout.placements, away: [...layout.away, ...away] }
}

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

const weighted = (scene: Scene, reaches: readonly Reach[]): number => {
  const uses = new Map(scene.model.units.map((unit) => [unit.id, scene.traits[unit.index]?.uses ?? 0]))
  return reaches.reduce((sum, reach) => sum + (uses.get(reach.unitId) ?? 0) * reach.blockedBy.length, 0)
}
