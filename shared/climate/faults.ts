/** Fault nights: the supply goes, the breaker trips, the heater fails; what follows, and until when one can still act. */
import { S_PER_HOUR } from '../units/index.ts'
import { prepareNight } from './night-prepare.ts'
import { runNight } from './night-run.ts'
import { utcOf } from './night-state.ts'
import { adviseOn } from './fault-advice.ts'
import { legOf, outcomeOf } from './simulate.ts'
import { bedClimateAt, marginK, sleeperModels } from './sleepers.ts'
import type { Prepared } from './night-prepare.ts'
import type { NightRun } from './night-run.ts'
import type { Fault, NightDecisions, NightInput } from './types.ts'
import type { FaultHour, FaultOutcome } from './answers.ts'

/** Acting is found to the minute, s (engine's convention). */
const RESOLUTION_S = 60

/**
 * One night with a fault in it.
 * Fault times as instants. Result: the whole outcome; the latest instant at which switching the heating off (supply lost) or resetting the breaker
 * still leaves the leg within reach, the fault's own instant where even that is too late, null where the leg needs no action or nothing helps it;
 * hours of heat after the fault, null where no heating was asked for; the hours one by one; and what to do about warmth and leg together.
 */
export function runFault(input: NightInput, fault: Fault): FaultOutcome {
  const faulty: NightInput = { ...input, fault }
  const prepared = prepareNight(faulty)
  const run = runNight(prepared, faulty.decisions, true)
  const outcome = outcomeOf(prepared, run)
  return {
    fault,
    coldestBedC: outcome.coldestBedC,
    depart01: outcome.depart01,
    legMarginWh: outcome.leg?.marginWh ?? null,
    actByUtc: actByUtc(prepared, run, fault),
    hoursOfHeatLeft: hoursOfHeatLeft(faulty, run, fault),
    hours: hoursAfter(faulty, run, fault),
    advice: adviseOn(input, fault),
    outcome,
  }
}

/** One row an hour: temperatures, what is in hand at the bed, and what the batteries still hold. */
function hoursAfter(input: NightInput, run: NightRun, fault: Fault): readonly FaultHour[] {
  const { columns } = run
  const models = [sleeperModels(input, input.decisions, false), sleeperModels(input, input.decisions, true)] as const
  const hours: FaultHour[] = []
  let nextUtc = fault.atUtc as number
  const last = columns.atUtc.length - 1
  columns.atUtc.forEach((atUtc, row) => {
    if (atUtc < nextUtc && row !== last) return
    nextUtc = atUtc + S_PER_HOUR
    const asleep = atUtc > input.sleepFromUtc && atUtc <= input.sleepToUtc && input.sleepers.length > 0
    const now = models[(columns.bedHeatW[row] ?? 0) > 0 ? 1 : 0]
    const climate = bedClimateAt(columns, row)
    hours.push({
      atUtc: utcOf(atUtc),
      outsideC: columns.outsideC[row] ?? 0,
      bedAirC: columns.bedAirC[row] ?? 0,
      feetC: columns.feetC[row] ?? 0,
      marginK: asleep ? now.reduce((least, model) => Math.min(least, marginK(model, climate).marginK), Infinity) : null,
      heatW: columns.heatW[row] ?? 0,
      charge01: input.battery === null ? null : (columns.charge01[row] ?? 0),
      leisure01: input.leisure === null ? null : (columns.leisure01[row] ?? 0),
    })
  })
  return hours
}

function actByUtc(prepared: Prepared, run: NightRun, fault: Fault): FaultOutcome['actByUtc'] {
  const { input } = prepared
  const legHolds = (charge01: number): boolean => legOf(input, charge01)?.reachable ?? true
  if (fault.kind === 'heater-fails' || input.leg === null || input.battery === null || legHolds(run.charge01))
    return null
  const holdsWhenActedAt = (atUtc: number): boolean => legHolds(actedRun(prepared, fault, atUtc).charge01)
  if (!holdsWhenActedAt(fault.atUtc)) return fault.atUtc
  let good = fault.atUtc as number
  let late = input.departUtc as number
  while (late - good > RESOLUTION_S) {
    const middle = (good + late) / 2
    if (holdsWhenActedAt(middle)) good = middle
    else late = middle
  }
  return utcOf(good)
}

/** The night with the action taken at an instant: heating and bed heaters off, or the breaker reset at what it holds. */
function actedRun(prepared: Prepared, fault: Fault, atUtc: number): NightRun {
  const { input } = prepared
  if (fault.kind === 'breaker-trips') {
    const reset: NightInput = { ...input, fault: { ...fault, resetUtc: utcOf(atUtc) } }
    return runNight({ ...prepared, input: reset }, input.decisions)
  }
  return runNight(prepared, heatingOffFrom(input.decisions, atUtc))
}

/** The same decisions with the heating off from an instant on. */
export const heatingOffFrom = (decisions: NightDecisions, atUtc: number): NightDecisions => ({
  ...decisions,
  setPoints: [...decisions.setPoints.filter((point) => point.fromUtc < atUtc), { fromUtc: utcOf(atUtc), tempC: null }],
})

function hoursOfHeatLeft(input: NightInput, run: NightRun, fault: Fault): number | null {
  const rows = [...run.columns.atUtc.keys()].filter((row) => (run.columns.atUtc[row] ?? 0) > fault.atUtc)
  const wanted = input.decisions.setPoints.some((point) => point.tempC !== null)
  if (!wanted || input.heater.kind === 'none') return null
  if (fault.kind === 'heater-fails') return 0
  if (run.stopsUtc !== null) return Math.max(0, (run.stopsUtc - fault.atUtc) / S_PER_HOUR)
  if (input.battery === null || rows.length === 0) return null
  const usedW =
    rows.reduce((sum, row) => sum + (run.columns.heatingElectricW[row] ?? 0) + (run.columns.bedHeatW[row] ?? 0), 0) /
    rows.length
  if (usedW <= 0) return null
  const spareWh = Math.max(0, run.charge01 - input.battery.reserve01) * input.battery.usableWh
  return (input.departUtc - fault.atUtc) / S_PER_HOUR + spareWh / usedW
}
