/** The plans that the night search tries: set-point profiles, bed heaters, gaps, covers, currents and charge limits. */
import { S_PER_HOUR } from '../../units/index.ts'
import { legNeedWh } from '../leg.ts'
import { utcOf } from '../night-state.ts'
import type { NightDecisions, NightInput } from '../types.ts'

/** What the search may vary; absent: chosen from the night itself. */
export type NightSearchOptions = {
  readonly setPointsC?: readonly number[]
  readonly gapsMm?: readonly number[]
  /** Whether covers may be put up; absent: as the night has them. */
  readonly covers?: readonly boolean[]
  readonly currentsA?: readonly (number | null)[]
  readonly chargeLimits01?: readonly number[]
  /** `followed` also lets the set-point follow the night in short pieces, just warm enough; absent: profiles a person would set. */
  readonly profiles?: 'plain' | 'followed'
}

/** Inside temperatures worth trying while people sleep under bedding, °C (common practice 8 to 20). */
const SET_POINTS_C = [5, 8, 10, 12, 14, 16, 18, 20] as const
/** Gaps at the top of two windows, mm (common practice 10 to 15). */
const GAPS_MM = [0, 10, 20] as const
/** Heating starts this long before bed, s (common practice: an hour). */
const BEFORE_BED_S = S_PER_HOUR
/** Drop while asleep in the lowered profile, K. */
const LOWERED_K = 4
/** No cabin heater is set lower than this, °C. */
export const LEAST_SET_POINT_C = 5
/** Charge limits are set in steps of 5 %, and cover the leg with this much in hand. */
const LIMIT_STEPS = 20
const LEG_IN_HAND = 1.1
/** Warming up before getting up, s. */
const BEFORE_RISING_S = 2700

type SetPoints = NightDecisions['setPoints']

/** Held from an hour before bed to departure. */
export function heldProfile(input: NightInput, tempC: number, leadS = BEFORE_BED_S): SetPoints {
  return [{ fromUtc: utcOf(Math.max(input.arriveUtc, input.sleepFromUtc - leadS)), tempC }]
}

/** Lower while asleep, warm again before getting up. */
function loweredProfile(input: NightInput, tempC: number): SetPoints {
  return [
    { fromUtc: utcOf(Math.max(input.arriveUtc, input.sleepFromUtc - BEFORE_BED_S)), tempC },
    { fromUtc: input.sleepFromUtc, tempC: Math.max(LEAST_SET_POINT_C, tempC - LOWERED_K) },
    { fromUtc: utcOf(Math.max(input.sleepFromUtc, risingFrom(input))), tempC },
  ]
}

/** Off while asleep, warm before getting up. */
function morningProfile(input: NightInput, tempC: number): SetPoints {
  return [{ fromUtc: utcOf(Math.max(input.sleepFromUtc, risingFrom(input))), tempC }]
}

/** Warm-up ends at rising, or at unplugging where that comes first: site power rather than the battery's. */
const risingFrom = (input: NightInput): number =>
  Math.min(input.sleepToUtc, input.supply?.unplugUtc ?? input.sleepToUtc) - BEFORE_RISING_S

/** All profiles: the night's own, off, and the three shapes at each temperature. */
export function profiles(input: NightInput, options: NightSearchOptions): SetPoints[] {
  if (input.heater.kind === 'none') return [[]]
  const temps = options.setPointsC ?? SET_POINTS_C
  return [
    input.decisions.setPoints,
    [],
    ...temps.flatMap((tempC) => [
      heldProfile(input, tempC),
      loweredProfile(input, tempC),
      morningProfile(input, tempC),
    ]),
  ]
}

/** No bed heater, each alone, all. */
export function bedHeaterSets(input: NightInput): readonly (readonly string[])[] {
  const ids = input.bedHeaters.map((heater) => heater.id)
  if (ids.length === 0) return [[]]
  return ids.length === 1 ? [[], ids] : [[], ...ids.map((id) => [id]), ids]
}

/** Gaps to try; at least two sides where the night opens none. */
export function ventilations(
  input: NightInput,
  options: NightSearchOptions,
): readonly { gapMm: number; sides: number }[] {
  const gaps = new Set([...(options.gapsMm ?? GAPS_MM), input.decisions.windowGapMm])
  const sides = input.decisions.windowSides > 0 ? input.decisions.windowSides : 2
  return [...gaps].map((gapMm) => ({ gapMm, sides: gapMm > 0 ? sides : input.decisions.windowSides }))
}

/** Currents and charge limits worth trying on a plan whose warmth is settled. */
export function chargings(
  input: NightInput,
  options: NightSearchOptions,
): readonly { currentA: number | null; chargeLimit01: number }[] {
  if (input.battery === null || input.supply === null)
    return [{ currentA: input.decisions.currentA, chargeLimit01: input.decisions.chargeLimit01 }]
  const currents = options.currentsA ?? [...new Set([null, input.decisions.currentA])]
  const limits = options.chargeLimits01 ?? [
    ...new Set([input.decisions.chargeLimit01, input.battery.chargeLimit01, ...enoughForLeg(input)]),
  ]
  return currents.flatMap((currentA) => limits.map((chargeLimit01) => ({ currentA, chargeLimit01 })))
}

/** The charge limit that covers the leg, where energy is paid for: charging further only costs. */
function enoughForLeg({ leg, battery, supply }: NightInput): readonly number[] {
  if (leg === null || battery === null || (supply?.pricePerKWh ?? 0) <= 0) return []
  const wanted01 = (legNeedWh(leg) * LEG_IN_HAND) / battery.usableWh + Math.max(leg.reserve01, battery.reserve01)
  const limit01 = Math.ceil(wanted01 * LIMIT_STEPS - 1e-9) / LIMIT_STEPS
  return limit01 < battery.chargeLimit01 ? [limit01] : []
}
