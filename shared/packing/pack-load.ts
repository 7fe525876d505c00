/** The whole job: bins, drive layout, one bed layout a night, reach, moves between them, and what was left out and why. */
import { packBins } from './bins.ts'
import { plainBox } from './bay-state.ts'
import { explainAll } from './explain.ts'
import type { Resolve } from './explain.ts'
import { layoutOf, reachOfState, weightedReach } from './layout.ts'
import { loadingOrder } from './loading-order.ts'
import { cautionsOf, massFaults, massReport } from './mass.ts'
import { solveNight } from './pack-night.ts'
import type { NightJob, NightSolved } from './pack-night.ts'
import { packModelOf, sceneOf } from './scene.ts'
import type { Scene } from './scene.ts'
import { ENDED_WHOLE, missingFrom } from './search/build.ts'
import type { Ranked } from './search/build.ts'
import type { Origin } from './search/objective.ts'
import { keepLegal, Run, solve } from './search/solve.ts'
import { emptyState } from './search/state.ts'
import type { Layout, PackBudget, PackedUnit, PackingInput, PackingOutcome, PackPiece } from './types.ts'

/** Rounds times pieces that settle a load: about three seconds for a car, ten for 400 pieces in a van (measured in test/bench). */
const ROUNDS_TIMES_PIECES = 36_000
const MOST_SETTLING_ROUNDS = 800

/** Improvement rounds after which a load of so many pieces gains little: `budget.iterations` where nobody says otherwise. */
export const settlingRounds = (pieces: number): number =>
  Math.min(MOST_SETTLING_ROUNDS, Math.ceil(ROUNDS_TIMES_PIECES / Math.max(1, pieces)))

/** Share of the rounds spent on the drive layout; the nights share the rest. */
const DRIVE_SHARE = 0.4

/**
 * Packs a load: drive layout, a bed layout for each night, reach, moves and explanations.
 * Lengths mm in the bay's frame, masses g, temperatures °C; `budget.iterations` are improvement rounds, 0 or more.
 * Gives one outcome in which each unit is placed, away, or left out with its reasons; the same seed and rounds give the same outcome.
 * Stopped early, it returns the best so far with `cancelled` true; of more than `ENDED_WHOLE` units what was not reached is left out without reasons. Limits passed by the whole load are in `faults`.
 * Destroy-and-rebuild search over free spaces with full support; reach after reach.md's retrieval sets.
 */
export const packLoad = (input: PackingInput, budget: PackBudget): PackingOutcome => {
  if (budget.iterations <= MOST_IN_ONE_PASS) return onePass(input, budget)
  let best = onePass(input, { ...budget, iterations: FIRST_PASS })
  let spent = best.iterations
  for (let pass = 1; spent < budget.iterations && budget.shouldStop?.() !== true; pass++) {
    const iterations = Math.min(FIRST_PASS * 2 ** pass, budget.iterations - spent)
    const next = onePass(input, { ...budget, seed: budget.seed + pass, iterations })
    spent += next.iterations
    if (next.cancelled || next.iterations === 0) break
    if (worthOf(input, next) < worthOf(input, best)) best = next
  }
  return { ...best, iterations: spent, cancelled: spent < budget.iterations }
}

/** More rounds than this are spent in several passes, each from another seed and twice as long, so that a plan stands whenever the host wants an end. */
const MOST_IN_ONE_PASS = 1600
const FIRST_PASS = 400

/** What is left out weighs most, then what is stuck, then faults, then reach and moves as the traveller weighs them. */
const worthOf = ({ weights }: PackingInput, outcome: PackingOutcome): number => {
  const { nights } = outcome
  const leftOut = outcome.driveUnplaced.length + nights.reduce((sum, night) => sum + night.unplaced.length, 0)
  const stuck = nights.reduce((sum, night) => sum + night.changeover.stuckUnitIds.length, 0)
  const moves = mean(nights.map((night) => night.changeover.moves.length))
  const wishes = weights.reach * outcome.weightedReach + weights.dusk * moves
  return leftOut * 1e6 + stuck * 1e4 + outcome.faults.length * 1e3 + wishes
}

const onePass = (input: PackingInput, budget: PackBudget): PackingOutcome => {
  const run = new Run(budget)
  const { inner, pieces, tooMany } = packBins(input, budget.seed)
  const model = packModelOf({ ...input, pieces })
  run.shouldStop()
  const driveScene = sceneOf(model, null)
  run.shouldStop()
  const rounds = driveRounds(input, budget.iterations)
  const drive = solveDrive(driveScene, budget, rounds, run)
  const driveLayout = layoutOf(driveScene, drive.state)
  const missing = missingFrom(driveScene, drive.state)
  const resolve: Resolve = {
    again: (scene) =>
      solve(scene, keepLegal(scene, driveLayout.placements, run.shouldStop), null, rounds, run.aside(), 'drive').state,
    shouldStop: run.shouldStop,
  }
  const unplaced = [...explainAll(driveScene, drive.state, missing, resolve), ...tooMany]
  const known = new Set(model.units.flatMap((unit) => unit.pieces.map((piece) => piece.id)))
  const mass = massReport(driveScene, drive.state)
  const brokenOff = run.shouldStop() && model.units.length > ENDED_WHOLE
  const driveReach = brokenOff ? [] : reachOfState(driveScene, drive.state)
  const nights = solveNights(
    { model, driveScene, drive: driveLayout, driveReach, driveUnplaced: unplaced },
    budget,
    run,
  )
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
    weightedReach: weightedReach(driveScene, driveReach) + mean(nights.map((night) => night.weightedReach)),
    iterations: run.spent,
    cancelled: run.cancelled,
  }
}

const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length

const driveRounds = (input: PackingInput, iterations: number): number =>
  input.nights.length === 0 ? iterations : Math.ceil(iterations * DRIVE_SHARE)

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
    return solve(scene, keepLegal(scene, earlier?.placements ?? [], run.shouldStop), null, rounds, run, 'drive')
  }
  const bedScene = sceneOf(scene.model, night)
  const sketchRounds = Math.floor(rounds * SKETCH_SHARE)
  const sketch = layoutOf(bedScene, solve(bedScene, emptyState(bedScene), null, sketchRounds, run, 'drive').state)
  const at = new Map(sketch.placements.map((placement) => [placement.unitId, placement]))
  const origin: Origin = scene.model.units.map((unit) => at.get(unit.id) ?? 'free')
  const start = keepLegal(scene, sketch.placements, run.shouldStop)
  return solve(scene, start, origin, rounds - sketchRounds, run, 'drive')
}

/** Share of the drive layout's rounds spent on the sketch of the night. */
const SKETCH_SHARE = 0.35

const solveNights = (
  day: Pick<NightJob, 'model' | 'driveScene' | 'drive' | 'driveReach' | 'driveUnplaced'>,
  budget: PackBudget,
  run: Run,
): readonly NightSolved[] => {
  const { nights } = day.model.input
  const forNights = budget.iterations - driveRounds(day.model.input, budget.iterations)
  const rounds = Math.floor(forNights / Math.max(1, nights.length))
  let before: Layout | null = null
  return nights.map((night, index) => {
    const earlier = before ?? budget.startFrom?.nights[index]?.bed ?? null
    const solved = solveNight({ ...day, night, earlier, rounds }, run)
    before = solved.packing.bed
    return solved
  })
}
