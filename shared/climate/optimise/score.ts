/** What one plan of a night is worth: comfort, charge, cost, moves, and what else decides between equals. */
import { beddingChoices, beddingSetOf, movesOf } from '../bedding-sets.ts'
import { runNight } from '../night-run.ts'
import { costOf, legOf } from '../simulate.ts'
import { comfortMarginK, sleepRows } from '../sleepers.ts'
import type { NightRun } from '../night-run.ts'
import type { Prepared } from '../night-prepare.ts'
import type { NightDecisions } from '../types.ts'
import type { Scored } from './front.ts'

/** Bedrooms should stay below this through the night, °C (CIBSE TM59, from memory). */
const HOT_FROM_C = 26
/** Below this nobody is too hot asleep, whatever covers them, °C (common practice). */
const NEVER_HOT_C = 20

/** Runs a plan and scores it. */
export const score = (prepared: Prepared, decisions: NightDecisions): Scored =>
  scoreOf(prepared, decisions, runNight(prepared, decisions))

/** Runs a plan once and scores it under every bedding set: bedding changes what people feel, not the cabin. */
export function scoreSets(prepared: Prepared, decisions: NightDecisions): readonly Scored[] {
  const run = runNight(prepared, decisions)
  return beddingChoices(prepared.input).map((beddingSetId) =>
    scoreOf(prepared, beddingSetId === undefined ? decisions : { ...decisions, beddingSetId }, run),
  )
}

/**
 * The score of a run. Comfort is the least margin of any sleeper, or on a hot night what is left to 26 °C;
 * where nobody sleeps, the lowest operative temperature over the hours of sleep, above 0 °C.
 */
export function scoreOf(prepared: Prepared, decisions: NightDecisions, run: NightRun): Scored {
  const { input } = prepared
  const depart01 = input.battery === null ? null : run.charge01
  const leg = legOf(input, depart01)
  const rows = sleepRows(input, run.columns)
  const { operativeC } = run.columns
  const least = rows.reduce((low, row) => Math.min(low, operativeC[row] ?? low), Infinity)
  return {
    decisions,
    comfortMarginK: input.sleepers.length === 0 ? least : comfortOf(prepared, decisions, run),
    depart01,
    legMarginWh: leg?.marginWh ?? null,
    cost: costOf(input, run.totals.supplyWh),
    moves: movesOf(input, decisions),
    beddingVolumeMm3: beddingSetOf(input, decisions.beddingSetId)?.volumeMm3 ?? 0,
    risingC: operativeC[rows.at(-1) ?? 0] ?? 0,
    sleepers: input.sleepers.length,
    co2MaxPpm: rows.reduce((most, row) => Math.max(most, run.columns.co2Ppm[row] ?? 0), 0),
    legReachable: leg?.reachable ?? true,
    legNeedWh: leg?.needWh ?? 0,
    heatingWh: run.totals.heatingWh,
    supplyWh: run.totals.supplyWh,
    wiringWh: run.totals.wiringWh,
  }
}

function comfortOf({ input }: Prepared, decisions: NightDecisions, run: NightRun): number {
  const cold = comfortMarginK(input, decisions, run.columns)
  const hottest = sleepRows(input, run.columns).reduce(
    (most, row) => Math.max(most, run.columns.operativeC[row] ?? most),
    -Infinity,
  )
  return hottest > NEVER_HOT_C ? Math.min(cold, HOT_FROM_C - hottest) : cold
}
