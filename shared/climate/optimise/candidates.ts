/** The plans that the night search tries: set-point profiles, bed heaters, gaps, covers, currents and charge limits. */
import { S_PER_HOUR } from '../../units/index.ts'
import { PILOT_MINIMUM_A } from '../circuit.ts'
import { legNeedWh } from '../leg.ts'
import { utcOf } from '../night-state.ts'
import type { Scored } from './front.ts'
import type { NightDecisions, NightInput, SupplyOutcome } from '../types.ts'

/** What the search may vary; absent: chosen from the night itself. */
export type NightSearchOptions = {
  readonly setPointsC?: readonly number[]
  readonly gapsMm?: readonly number[]
  /** Covers up or down to try; absent: both where they are aboard. */
  readonly covers?: readonly boolean[]
  readonly currentsA?: readonly (number | null)[]
  readonly chargeLimits01?: readonly number[]
  /** `followed` also lets the set-point follow the night in short pieces, just warm enough; absent: profiles a person would set. */
  readonly profiles?: 'plain' | 'followed'
}

/** More of them where the night may be hot and the heater can cool, °C. */
const COOLING_POINTS_C = [22, 24] as const
const HOT_OUTSIDE_C = 18
/** Inside temperatures worth trying while people sleep under bedding, °C (common practice 8 to 20). */
const SET_POINTS_C = [5, 8, 10, 12, 14, 16, 18, 20] as const
/** Gaps at the top of two windows, mm (common practice 10 to 15). */
const GAPS_MM = [0, 10, 20] as const
/** Heating starts this long before bed, s (common practice: an hour). */
const BEFORE_BED_S = S_PER_HOUR
/** Drop while asleep in the lowered profile, K (common practice 3 to 5). */
const LOWERED_K = 4
/** No cabin heater is set lower than this, °C (common practice). */
export const LEAST_SET_POINT_C = 5
/** Charge limits are set in steps of 5 %, and cover the leg with this much in hand. */
const LIMIT_STEPS = 20
/** More bed heaters than this are tried all together only (engine's convention). */
const MOST_ALONE = 2
const LEG_IN_HAND = 1.1
/** A gentler current brings this many times what the plan draws on average: taper, a colder night (engine's convention). */
const GENTLE_IN_HAND = 1.2
/** Warming up before getting up, s (common practice 30 to 60 min). */
const BEFORE_RISING_S = 2700

type SetPoints = NightDecisions['setPoints']

/** Held from an hour before bed to departure. */
export function heldProfile(input: NightInput, tempC: number, leadS = BEFORE_BED_S): SetPoints {
  return [{ fromUtc: utcOf(Math.max(input.arriveUtc, input.sleepFromUtc - leadS)), tempC }]
}

/** Lower while asleep, warm again before getting up; off once unplugged, where the warmth came from the site. */
function loweredProfile(input: NightInput, tempC: number): SetPoints {
  return [
    { fromUtc: utcOf(Math.max(input.arriveUtc, input.sleepFromUtc - BEFORE_BED_S)), tempC },
    { fromUtc: input.sleepFromUtc, tempC: Math.max(LEAST_SET_POINT_C, tempC - LOWERED_K) },
    ...morningProfile(input, tempC),
  ]
}

/** Off while asleep, warm before getting up; off once unplugged. */
function morningProfile(input: NightInput, tempC: number): SetPoints {
  const warm = { fromUtc: utcOf(Math.max(input.sleepFromUtc, risingFrom(input))), tempC }
  const unplugUtc = input.supply?.unplugUtc ?? input.departUtc
  const offAtUnplug = unplugUtc >= input.sleepToUtc && unplugUtc < input.departUtc
  return offAtUnplug ? [warm, { fromUtc: unplugUtc, tempC: null }] : [warm]
}

/** Warm-up ends at rising, or at unplugging where that comes first: site power rather than the battery's. */
const risingFrom = (input: NightInput): number =>
  Math.min(input.sleepToUtc, input.supply?.unplugUtc ?? input.sleepToUtc) - BEFORE_RISING_S

/** All profiles: the night's own, off, and the three shapes at each temperature. */
export function profiles(input: NightInput, options: NightSearchOptions): SetPoints[] {
  if (input.heater.kind === 'none') return [[]]
  const hot = input.heater.canCool && input.weather.some(({ tempC }) => tempC > HOT_OUTSIDE_C)
  const temps = options.setPointsC ?? [...SET_POINTS_C, ...(hot ? COOLING_POINTS_C : [])]
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

/** No bed heater, all, and each alone where there are few. */
export function bedHeaterSets(input: NightInput): readonly (readonly string[])[] {
  const ids = input.bedHeaters.map((heater) => heater.id)
  if (ids.length === 0) return [[]]
  if (ids.length > MOST_ALONE) return [[], ids]
  return ids.length === 1 ? [[], ids] : [[], ...ids.map((id) => [id]), ids]
}

/** Covers to try: up and down where they are aboard, else as the night has them. */
export function coverChoices(input: NightInput, options: NightSearchOptions): readonly boolean[] {
  if (options.covers !== undefined) return options.covers
  return (input.coversOwned ?? input.decisions.covers) ? [true, false] : [false]
}

/** Gaps to try, narrowest first; at least two sides where the night opens none. */
export function ventilations(
  input: NightInput,
  options: NightSearchOptions,
): readonly { gapMm: number; sides: number }[] {
  const gaps = new Set([...(options.gapsMm ?? GAPS_MM), input.decisions.windowGapMm])
  const sides = input.decisions.windowSides > 0 ? input.decisions.windowSides : 2
  return [...gaps]
    .sort((left, right) => left - right)
    .map((gapMm) => ({ gapMm, sides: gapMm > 0 ? sides : input.decisions.windowSides }))
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

/** The least whole current that brings what a plan draws, with something in hand: less heat in every contact; none where nothing is saved. */
export function gentleCurrentA(input: NightInput, outcome: SupplyOutcome | null, point: Scored): number | null {
  const { supply } = input
  if (supply === null || outcome === null || point.supplyWh <= 0) return null
  const hours = (Math.min(supply.unplugUtc, input.departUtc) - Math.max(supply.plugInUtc, input.arriveUtc)) / S_PER_HOUR
  const wattsPerA = outcome.voltsAtLoad * outcome.phaseFactor
  if (hours <= 0 || wattsPerA <= 0) return null
  const meanA = (point.supplyWh / hours + supply.otherLoadW) / wattsPerA
  const gentleA = Math.max(Math.ceil(meanA * GENTLE_IN_HAND), supply.minimumA, PILOT_MINIMUM_A)
  return gentleA <= outcome.usableA - 1 ? gentleA : null
}
