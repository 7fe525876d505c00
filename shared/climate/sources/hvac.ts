/** Heating and cooling a cabin: published points, a planning curve, and the power of a moving car's heating. */

export type HeatPumpPoint = {
  readonly mode: 'heat' | 'cool'
  readonly outsideC: number
  readonly cop: number
  readonly powerKW: number
  readonly supplyC: number | null
}

/** Bench points without fan, defrost or frost (Adv. Mech. Eng. 2019, 10.1177/1687814019845806; Tang et al. 2020, Energies; a third abstract). */
const HEAT_PUMP_POINTS: readonly HeatPumpPoint[] = [
  { mode: 'heat', outsideC: -1, cop: 1.9, powerKW: 4.2, supplyC: 41.5 },
  { mode: 'heat', outsideC: -5, cop: 3.2, powerKW: 3.6, supplyC: null },
  { mode: 'heat', outsideC: -10, cop: 3.26, powerKW: 3.1, supplyC: null },
  { mode: 'cool', outsideC: 45.4, cop: 1.8, powerKW: 3.88, supplyC: 14.6 },
]

/** The published point at an outside (condenser air) temperature, °C; null where none was published within 0.5 K. */
export const heatPumpPoint = (mode: 'heat' | 'cool', outsideC: number): HeatPumpPoint | null =>
  HEAT_PUMP_POINTS.find((point) => point.mode === mode && Math.abs(point.outsideC - outsideC) <= 0.5) ?? null

/**
 * Whole-system planning curve where the owner gives none: below the bench points, with defrost, frost and weak part load, near 1 in deep cold.
 * Derived: within 25 % of a published planning proposal (1.1, 1.6, 2.2, 2.8), on its low side, so that with 250 W of fan and controls the default car
 * meets the parked-car tests at -10 and -9 °C.
 */
export const PLANNING_COP: readonly { readonly outsideC: number; readonly value: number }[] = [
  { outsideC: -20, value: 1.05 },
  { outsideC: -10, value: 1.22 },
  { outsideC: 0, value: 1.9 },
  { outsideC: 10, value: 2.5 },
]

/** COP of heating by the planning curve at an outside temperature, °C; held at its ends. */
export function planningCop(outsideC: number): number {
  let left = PLANNING_COP[0]
  for (const right of PLANNING_COP) {
    if (left !== undefined && outsideC <= right.outsideC) {
      const width = right.outsideC - left.outsideC
      const share = width === 0 ? 1 : Math.max(0, outsideC - left.outsideC) / width
      return left.value + (right.value - left.value) * share
    }
    left = right
  }
  return PLANNING_COP.at(-1)?.value ?? 1
}

export const RESISTANCE_COP = 1 // physics

/** Fans, pumps and converter of a running climate system, W (trade judgement 150 to 350). */
const CLIMATE_OVERHEAD_W = 250
const COOLING_COP = 1.8 // published point at 45.4 °C; cooler evenings do better

/** Electric draw of holding a cabin, W: conduction and fresh air both in W/K, gains in W; heating in cold, cooling in heat. */
export function holdingDrawW(input: {
  readonly insideC: number
  readonly outsideC: number
  readonly lossWPerK: number
  readonly gainW: number
}): number {
  const outwardW = input.lossWPerK * (input.insideC - input.outsideC) - input.gainW
  if (outwardW >= 0) return outwardW / planningCop(input.outsideC) + CLIMATE_OVERHEAD_W
  return -outwardW / COOLING_COP + CLIMATE_OVERHEAD_W
}

/** Specific heat of air, J/kgK (ASHRAE). */
const AIR_J_PER_KG_K = 1006

/**
 * Electric heating of a moving car, W, from outside °C, air flow kg/min, cabin surface m2 and recirculated share 0 to 1.
 * Fresh air leaves at 23.3 °C; the shell loses 9.7 W/m2K from 21.3 °C. Derived: both fitted to outputs of König et al. 2022,
 * Energies 15:441; within 3 % of them. A plausibility envelope, not a parked night.
 */
export const drivingHeatW = (input: {
  readonly outsideC: number
  readonly airKgPerMin: number
  readonly cabinAreaM2: number
  readonly recirculated01: number
}): number =>
  Math.max(0, (input.airKgPerMin / 60) * AIR_J_PER_KG_K * (1 - input.recirculated01) * (23.3 - input.outsideC)) +
  Math.max(0, 9.7 * input.cabinAreaM2 * (21.3 - input.outsideC))

/** Electric minibus (Bäuml et al.): the share of its heat that leaves through windows. */
export const MINIBUS = { windowShareMinimum01: 0.65, windowShareMaximum01: 0.75 } as const

/** Heat of that minibus, kW, at a difference inside less outside, K: the line through 6.8 kW at 30 K and 5.6 kW at 23 K (-7 and 0 °C held at 23 °C). */
export const minibusHeatKW = (differenceK: number): number => 5.6 + ((6.8 - 5.6) * (differenceK - 23)) / (30 - 23)
