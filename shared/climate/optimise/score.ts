/** What one plan of a night is worth: comfort, charge, cost, and what else decides between equals. */
import { runNight } from '../night-run.ts'
import { costOf, legOf } from '../simulate.ts'
import { comfortMarginK, sleepRows } from '../sleepers.ts'
import type { NightRun } from '../night-run.ts'
import type { Prepared } from '../night-prepare.ts'
import type { NightDecisions } from '../types.ts'
import type { Scored } from './front.ts'

/** Runs a plan and scores it. */
export const score = (prepared: Prepared, decisions: NightDecisions): Scored =>
  scoreOf(prepared, decisions, runNight(prepared, decisions))

/** The score of a run. Where nobody sleeps, comfort is the lowest operative temperature over the hours of sleep, above 0 °C. */
export function scoreOf(prepared: Prepared, decisions: NightDecisions, run: NightRun): Scored {
  const { input } = prepared
  const depart01 = input.battery === null ? null : run.charge01
  const leg = legOf(input, depart01)
  const rows = sleepRows(input, run.columns)
  const least = (column: Float64Array): number => rows.reduce((low, row) => Math.min(low, column[row] ?? low), Infinity)
  return {
    decisions,
    comfortMarginK:
      input.sleepers.length === 0 ? least(run.columns.operativeC) : comfortMarginK(input, decisions, run.columns),
    depart01,
    legMarginWh: leg?.marginWh ?? null,
    cost: costOf(input, run.totals.supplyWh),
    co2MaxPpm: rows.reduce((most, row) => Math.max(most, run.columns.co2Ppm[row] ?? 0), 0),
    legReachable: leg?.reachable ?? true,
    legNeedWh: leg?.needWh ?? 0,
    heatingWh: run.totals.heatingWh,
  }
}
