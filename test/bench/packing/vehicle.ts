/** The vehicle's own figures: a car's first and settled plan, a van of 400 units, growth with the number of units, reach against a packing that ignores access. */
import { settlingRounds, handScene, packLoad, reachOf, tryPose } from '../../../shared/packing/index.ts'
import type { Layout, PackingInput, PackingOutcome } from '../../../shared/packing/index.ts'
import { packingFaults } from '../../support/oracle/packing.ts'
import { scenarioLoad } from '../../support/scenario-load.ts'
import { cpuSeconds } from './clock.ts'
import { vanLoad } from './loads.ts'

const SEED = 1
const SIZES = [50, 100, 200, 400] as const
/** Rounds tried in turn until the wanted quality is reached. */
const LADDER = [0, 25, 50, 100, 200, 400, 800] as const

export type Line = { readonly measure: string; readonly ours: string; readonly wanted: string; readonly met: boolean }

export function vehicleLines(): readonly Line[] {
  return [...carLines(), ...vanLines()]
}

const leftOut = (outcome: PackingOutcome): number =>
  outcome.driveUnplaced.length + outcome.nights.reduce((sum, night) => sum + night.unplaced.length, 0)

type Timed = { readonly outcome: PackingOutcome; readonly seconds: number }

function timed(input: PackingInput, iterations: number): Timed {
  const began = cpuSeconds()
  const outcome = packLoad(input, { seed: SEED, iterations })
  return { outcome, seconds: cpuSeconds() - began }
}

function carLines(): readonly Line[] {
  const input = scenarioLoad('scenario-a')
  timed(input, 20)
  const first = timed(input, 0)
  const settled = timed(input, settlingRounds(input.pieces.length))
  const faults = packingFaults(input, settled.outcome).length
  return [
    {
      measure: `a ${input.pieces.length}-piece car, ${input.nights.length} nights: first plan (${leftOut(first.outcome)} left out)`,
      ours: `${first.seconds.toFixed(2)} s`,
      wanted: '0.3 s',
      met: first.seconds <= 0.3,
    },
    {
      measure: `the same, settled (${leftOut(settled.outcome)} left out, ${faults} faults, ${movesOf(settled.outcome)} moves at dusk)`,
      ours: `${settled.seconds.toFixed(2)} s`,
      wanted: '3 s',
      met: settled.seconds <= 3,
    },
    poseLine(input, settled.outcome),
  ]
}

const movesOf = (outcome: PackingOutcome): string =>
  outcome.nights.map((night) => night.changeover.moves.length).join(' and ')

/** Asks of every unit whether it may stand where its neighbours stand. */
function poseLine(input: PackingInput, outcome: PackingOutcome): Line {
  const hand = handScene(input, outcome.drive, null)
  const began = cpuSeconds()
  let asked = 0
  for (const unit of outcome.drive.placements) {
    for (const other of outcome.drive.placements) {
      tryPose(hand, { unitId: unit.unitId, bayId: other.bayId, atMm: other.atMm, sizeMm: unit.sizeMm })
      asked++
    }
  }
  const eachMs = ((cpuSeconds() - began) / asked) * 1000
  return {
    measure: `a pose by hand, mean of ${asked}`,
    ours: `${eachMs.toFixed(3)} ms`,
    wanted: '1 ms',
    met: eachMs <= 1,
  }
}

function vanLines(): readonly Line[] {
  const rows = SIZES.map((count) => ({ count, ...settledVan(count) }))
  const largest = rows.at(-1)
  const exponent = slope(rows.map(({ count, seconds }) => [Math.log(count), Math.log(seconds)] as const))
  for (const { count, seconds, rounds, ours, reference, left, faults } of rows) {
    const bar = '#'.repeat(Math.max(1, Math.round(seconds * 10)))
    console.log(
      `${String(count).padStart(4)} units ${seconds.toFixed(2).padStart(6)} s, ${rounds} rounds, reach ${ours.toFixed(1)} against ${reference.toFixed(1)}, ${left} left out, ${faults} faults ${bar}`,
    )
  }
  if (largest === undefined) return []
  const input = vanLoad(400, SEED)
  const whole = timed(input, settlingRounds(input.pieces.length))
  const memoryMb = process.memoryUsage().rss / 1e6
  const reach = rows.map(({ ours, reference }) => ours / reference)
  const worst = Math.max(...reach)
  return [
    {
      measure: `400 units in a van, both layouts, ${settlingRounds(input.pieces.length)} rounds (${leftOut(whole.outcome)} left out)`,
      ours: `${whole.seconds.toFixed(1)} s, ${memoryMb.toFixed(0)} MB of the whole process`,
      wanted: '15 s, 300 MB',
      met: whole.seconds <= 15 && memoryMb <= 300,
    },
    {
      measure: 'growth of time from 50 to 400 units at the same quality (all placed, reach under half)',
      ours: `n^${exponent.toFixed(2)}`,
      wanted: 'n^1.6',
      met: exponent < 1.6,
    },
    {
      measure: 'use-weighted reach against largest first with no access priority, worst of the sizes',
      ours: worst.toFixed(2),
      wanted: '0.50',
      met: worst < 0.5,
    },
  ]
}

/** The least number of rounds that places all and halves the reference's reach, and what it cost. */
function settledVan(count: number): {
  seconds: number
  rounds: number
  ours: number
  reference: number
  left: number
  faults: number
} {
  const input = vanLoad(count, SEED)
  const reference = reachWithoutPriority(input)
  for (const rounds of LADDER) {
    const { outcome, seconds } = timed(input, rounds)
    const ours = weighted(input, outcome)
    const left = leftOut(outcome)
    if ((left > 0 || ours > reference / 2) && rounds !== LADDER.at(-1)) continue
    return { seconds, rounds, ours, reference, left, faults: packingFaults(input, outcome).length }
  }
  throw new Error('the ladder has no last rung')
}

/** Largest first, nothing known of who is wanted when: the layouts are judged by the true wants. */
function reachWithoutPriority(input: PackingInput): number {
  const blind: PackingInput = {
    ...input,
    pieces: input.pieces.map((piece) => ({ ...piece, access: ['seldom'], uses: { drive: 0, bed: 0 } })),
    weights: { reach: 0, dusk: 0, lowAndCentral: 0, baysKeptFree: 0 },
  }
  return weighted(input, packLoad(blind, { seed: SEED, iterations: 0 }))
}

function weighted(input: PackingInput, outcome: PackingOutcome): number {
  const uses = new Map(input.pieces.map((piece) => [piece.id, piece.uses]))
  const of = (layout: Layout, nightId: string | null): number =>
    reachOf(handScene(input, layout, nightId)).reduce((sum, reach) => {
      const own = uses.get(reach.unitId)
      return sum + reach.blockedBy.length * (own === undefined ? 0 : nightId === null ? own.drive : own.bed)
    }, 0)
  return of(outcome.drive, null) + outcome.nights.reduce((sum, night) => sum + of(night.bed, night.nightId), 0)
}

/** Least-squares slope. */
function slope(points: readonly (readonly [number, number])[]): number {
  const meanX = points.reduce((sum, [x]) => sum + x, 0) / points.length
  const meanY = points.reduce((sum, [, y]) => sum + y, 0) / points.length
  const above = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0)
  return above / points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0)
}
