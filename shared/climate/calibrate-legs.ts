/** The owner's own legs teach the consumption: one scale on what the leg model says, with the spread that the readings leave. */
import { legNeedWh, legWhPerKm } from './leg.ts'
import type { LegParameters } from './types.ts'

/** What was read of one leg driven without a charge on the way; null where it was not read. */
export type MeasuredLeg = {
  /** The leg as it was driven: distance, speed, climb, outside temperature. Its own `consumptionScale` plays no part. */
  readonly leg: LegParameters
  /** Of the battery, Wh. */
  readonly usableWh: number
  /** Energy as the vehicle shows it, Wh. */
  readonly usedWh: number | null
  /** Charge on leaving and on arriving, fractions. */
  readonly from01: number | null
  readonly to01: number | null
}

export type ConsumptionFit = {
  /** Multiplies the consumption of every leg; 1 is the model or the stated figure as it stands. */
  readonly scale: number
  /** One standard deviation of the scale. */
  readonly scaleSpread: number
  /** Consumption of the last leg without its climb, and its spread, Wh/km; null without a leg. */
  readonly whPerKm: number | null
  readonly whPerKmSpread: number | null
  readonly legs: number
  readonly readings: number
}

/** How well consumption is known before any leg: 15 % (stated figures against real driving, common practice). */
const PRIOR_SPREAD_01 = 0.15
/** What wind, traffic and driving leave open from leg to leg: 5 % (common practice). */
const MODEL_01 = 0.05
/** The vehicle's own energy reading: 2 %; charge in whole percent: a uniform step of 0.01 at each end. */
const ENERGY_01 = 0.02
const CHARGE_01 = Math.sqrt(2 / 12) * 0.01
/** A leg that moved the charge less than this says nothing, fraction (derived: twice the step of a charge shown in whole percent). */
const LEAST_01 = 0.02

/**
 * Fits the consumption to measured legs, by least squares on the logarithm of the scale.
 * Legs with their readings (Wh, fractions). Result: scale and Wh/km, each with one standard deviation; without a reading, 1 with 15 %.
 * A leg read both ways counts by its energy: charge would count the same driving twice.
 */
export function calibrateLegs(legs: readonly MeasuredLeg[]): ConsumptionFit {
  let precision = 1 / PRIOR_SPREAD_01 ** 2
  let weighted = 0
  let readings = 0
  for (const measured of legs) {
    const reading = usedWh(measured)
    const saidWh = legNeedWh({ ...measured.leg, consumptionScale: 1 })
    if (reading === null || saidWh <= 0) continue
    const weight = 1 / (reading.spread01 ** 2 + MODEL_01 ** 2)
    precision += weight
    weighted += weight * Math.log(reading.wh / saidWh)
    readings += 1
  }
  const scale = Math.exp(weighted / precision)
  const scaleSpread = scale / Math.sqrt(precision)
  const last = legs.at(-1)
  const plainWhPerKm = last === undefined ? null : legWhPerKm({ ...last.leg, consumptionScale: 1 })
  return {
    scale,
    scaleSpread,
    whPerKm: plainWhPerKm === null ? null : plainWhPerKm * scale,
    whPerKmSpread: plainWhPerKm === null ? null : plainWhPerKm * scaleSpread,
    legs: legs.length,
    readings,
  }
}

function usedWh(measured: MeasuredLeg): { readonly wh: number; readonly spread01: number } | null {
  if (measured.usedWh !== null && measured.usedWh > 0) return { wh: measured.usedWh, spread01: ENERGY_01 }
  if (measured.from01 === null || measured.to01 === null) return null
  const used01 = measured.from01 - measured.to01
  return used01 < LEAST_01 ? null : { wh: used01 * measured.usableWh, spread01: CHARGE_01 / used01 }
}
