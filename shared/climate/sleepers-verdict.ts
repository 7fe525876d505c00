/** One sleeper's night in a few words and instants: the worst margin, from when it is cold, and the feet apart. */
import { S_PER_HOUR } from '../units/index.ts'
import { sleepersUnder } from './bedding-sets.ts'
import { bedClimateAt, feetMarginK, marginK, requiredClo, sleepRows, sleeperModel, verdictOf } from './sleepers.ts'
import { utcOf } from './night-state.ts'
import type { RunColumns } from './night-state.ts'
import type { BedClimate, SleeperModel } from './sleepers.ts'
import type { Utc } from '../units/index.ts'
import type { NightDecisions, NightInput, Sleeper, SleeperHour, SleeperVerdict } from './types.ts'

/**
 * Verdict for each sleeper over the hours asleep.
 * Result: margin K at the worst instant and which judgement ruled there; instants from which body or feet are too cold; the insulation asked for then, clo.
 * Derived heat balance at 40 to 47 W/m2; ISO 23537 comfort rating with 5 K in hand (8 K for cold sleepers).
 */
export function sleeperVerdicts(input: NightInput, decisions: NightDecisions, columns: RunColumns): SleeperVerdict[] {
  const heaters = input.bedHeaters.filter((heater) => decisions.bedHeaterIds.includes(heater.id))
  const rows = sleepRows(input, columns)
  return sleepersUnder(input, decisions.beddingSetId).map((sleeper) => {
    const heated = sleeperModel(sleeper, input.sleepers.length, heaters)
    const unheated = sleeperModel(sleeper, input.sleepers.length, [])
    return verdictFor(sleeper, rows, columns, (row) => ((columns.bedHeatW[row] ?? 0) > 0 ? heated : unheated))
  })
}

function verdictFor(
  sleeper: Sleeper,
  rows: readonly number[],
  columns: RunColumns,
  modelAt: (row: number) => SleeperModel,
): SleeperVerdict {
  let worst: { marginK: number; ruledBy: SleeperVerdict['ruledBy']; row: number } = {
    marginK: Infinity,
    ruledBy: 'heat-balance',
    row: rows[0] ?? 0,
  }
  let coldFromUtc: Utc | null = null
  let feetColdFromUtc: Utc | null = null
  let coldestOperativeC = Infinity
  let coldestFeetC = Infinity
  const hours: SleeperHour[] = []
  let nextUtc = -Infinity
  for (const row of rows) {
    const climate = bedClimateAt(columns, row)
    const now = marginK(modelAt(row), climate)
    if (now.marginK < worst.marginK) worst = { ...now, row }
    if (now.marginK < 0) coldFromUtc ??= utcOf(columns.atUtc[row] ?? 0)
    if (feetMarginK(modelAt(row), climate) < 0) feetColdFromUtc ??= utcOf(columns.atUtc[row] ?? 0)
    const atUtc = columns.atUtc[row] ?? 0
    if (atUtc >= nextUtc) {
      nextUtc = atUtc + S_PER_HOUR
      hours.push(hourOf(modelAt(row), climate, atUtc))
    }
    coldestOperativeC = Math.min(coldestOperativeC, climate.operativeC)
    coldestFeetC = Math.min(coldestFeetC, climate.feetC)
  }
  return {
    sleeperId: sleeper.id,
    marginK: worst.marginK,
    ruledBy: worst.ruledBy,
    verdict: verdictOf(worst.marginK),
    coldFromUtc,
    feetColdFromUtc,
    requiredClo: requiredClo(modelAt(worst.row), bedClimateAt(columns, worst.row)),
    coldestOperativeC,
    coldestFeetC,
    hours,
  }
}

const hourOf = (model: SleeperModel, climate: BedClimate, atUtc: number): SleeperHour => {
  const now = marginK(model, climate).marginK
  return {
    atUtc: utcOf(atUtc),
    operativeC: climate.operativeC,
    feetC: climate.feetC,
    marginK: now,
    feetMarginK: feetMarginK(model, climate),
    verdict: verdictOf(now),
    requiredClo: requiredClo(model, climate),
  }
}
