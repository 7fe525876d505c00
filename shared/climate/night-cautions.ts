/** What must be minded in a night: air, cold, heat, supply and battery, each with its instant or value. */
import { isHousehold } from './sources/connectors.ts'
import { heatsFromSupply } from './night-power.ts'
import { utcOf } from './night-state.ts'
import type { NightRun } from './night-run.ts'
import type { NightInput, NightOutcome, SleeperVerdict, SupplyOutcome, SupplyParameters } from './types.ts'

type Caution = NightOutcome['cautions'][number]

/** Above this CO2 is unacceptable indoors, ppm (German federal agency guideline: 1000 good, 2000 the limit). */
const CO2_HIGH_PPM = 2000
/** Least outdoor air for each sleeper, m3/h (derived: 13 l/h of CO2 stay under 2000 ppm). */
const FRESH_M3_PER_H = 9
/** Sag beyond which the wiring is likely shared or thin, share of volts (NEC 210.19(A) informational note: 3 %). */
const SHARED_SAG_01 = 0.03
/** Operative temperature at which heat becomes an illness for someone asleep, °C (common practice). */
const HEAT_ILLNESS_C = 32
/** Bed air this cold is a danger whatever the bedding promises, °C (common practice). */
const COLD_ILLNESS_C = -15

/** All cautions of one night, each code once. */
export function nightCautions(
  input: NightInput,
  run: NightRun,
  supply: SupplyOutcome | null,
  sleepers: readonly SleeperVerdict[],
): Caution[] {
  return [
    ...airCautions(input, run),
    ...bodyCautions(run, sleepers),
    ...supplyCautions(input, supply),
    ...batteryCautions(input, run),
  ]
}

const caution = (code: Caution['code'], value: number | null = null, atUtc: Caution['atUtc'] = null): Caution => ({
  code,
  atUtc,
  value,
})

function airCautions(input: NightInput, run: NightRun): Caution[] {
  if (input.sleepers.length === 0) return []
  const list = [caution('carbon-monoxide')]
  const high = run.columns.co2Ppm.findIndex((ppm) => ppm > CO2_HIGH_PPM)
  if (high >= 0) list.push(caution('co2-high', maxOf(run.columns.co2Ppm), utcOf(run.columns.atUtc[high] ?? 0)))
  if (run.leastFreshM3PerH < FRESH_M3_PER_H * input.sleepers.length)
    list.push(caution('no-fresh-air', run.leastFreshM3PerH))
  return list
}

function bodyCautions(run: NightRun, sleepers: readonly SleeperVerdict[]): Caution[] {
  if (sleepers.length === 0) return []
  const list: Caution[] = []
  const coldestC = sleepers.reduce((least, sleeper) => Math.min(least, sleeper.coldestOperativeC), Infinity)
  const tooCold = sleepers.find((sleeper) => sleeper.verdict === 'too-cold')
  if (tooCold !== undefined || coldestC < COLD_ILLNESS_C)
    list.push(caution('cold-illness', coldestC, tooCold?.coldFromUtc ?? null))
  const hot = run.columns.operativeC.findIndex((tempC) => tempC > HEAT_ILLNESS_C)
  if (hot >= 0) list.push(caution('heat-illness', maxOf(run.columns.operativeC), utcOf(run.columns.atUtc[hot] ?? 0)))
  return list
}

function supplyCautions(input: NightInput, outcome: SupplyOutcome | null): Caution[] {
  const { supply } = input
  if (supply === null || outcome === null) return []
  const list: Caution[] = []
  if (outcome.measured && outcome.sag01 > SHARED_SAG_01) list.push(caution('shared-wiring', outcome.sag01))
  if (isHousehold(supply.connector)) list.push(caution('domestic-socket', outcome.usableA))
  if (supply.usesAdapter === true || supply.adapterLimitA !== null) list.push(caution('adapter', supply.adapterLimitA))
  if (supply.usesExtension === true || supply.leadLimitA !== null)
    list.push(caution('extension-lead', supply.leadLimitA))
  if (supply.polarityReversed === 'yes') list.push(caution('polarity-reversed'))
  if (supply.earthOk === 'no') list.push(caution('earth-missing'))
  if (supply.earthOk === 'not-known') list.push(caution('earth-not-known'))
  if (outcome.voltsAtLoad < outcome.stopV) list.push(caution('sag-stop', outcome.voltsAtLoad))
  else if (outcome.voltsAtLoad < outcome.stepDownV) list.push(caution('sag-step-down', outcome.voltsAtLoad))
  if (outcome.belowMinimum && supply.chargeAllowed && input.battery !== null)
    list.push(caution('below-minimum-current', outcome.usableA))
  if (loadsTogether(input, supply, outcome)) list.push(caution('two-loads', outcome.wattsAtLoad))
  return list
}

/** Whether heater, charger and other loads together want more than the post carries. */
function loadsTogether(input: NightInput, supply: SupplyParameters, outcome: SupplyOutcome): boolean {
  const heaterW = heatsFromSupply(input) && input.heater.kind !== 'none' ? input.heater.maxHeatW : 0
  const carW =
    input.battery !== null && supply.chargeAllowed ? supply.minimumA * outcome.voltsAtLoad * outcome.phaseFactor : 0
  const chargerW = input.leisure?.chargerW ?? 0
  const wants = [heaterW, carW, chargerW, supply.otherLoadW].filter((watts) => watts > 0)
  return wants.length >= 2 && wants.reduce((sum, watts) => sum + watts, 0) > outcome.wattsAtLoad
}

function batteryCautions(input: NightInput, run: NightRun): Caution[] {
  const list: Caution[] = []
  if (run.stopsUtc !== null) list.push(caution('heater-stops', null, run.stopsUtc))
  if (input.leisure !== null && run.leisureFrozenUtc !== null) {
    const code = input.leisure.kind === 'lead' ? 'leisure-acid-frost' : 'leisure-frost'
    list.push(caution(code, null, run.leisureFrozenUtc))
  }
  return list
}

const maxOf = (column: Float64Array): number => column.reduce((most, value) => Math.max(most, value), -Infinity)
