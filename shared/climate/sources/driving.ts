/** Published measurements of driving: tyres by road, consumption by temperature, range lost, label consumption. */
import { M_PER_MILE, fromFahrenheit } from '../../units/index.ts'

export type Tyre = 'radial' | 'bias-ply'
/** Slope, 1/(km/h), and base of the rolling coefficient, in thousandths (Rakha et al. 2001, J. Transp. Eng. 127:418). */
const TYRES: Readonly<Record<Tyre, { readonly slope: number; readonly base: number }>> = {
  radial: { slope: 0.0328, base: 4.575 },
  'bias-ply': { slope: 0.0438, base: 6.1 },
}

/** Road factor by surface (Rakha et al. 2001, J. Transp. Eng. 127:418). */
export const ROAD_FACTOR: Readonly<Record<string, number>> = {
  'concrete excellent': 1,
  'concrete good': 1.5,
  'concrete poor': 2,
  'asphalt good': 1.25,
  'asphalt fair': 1.75,
  'asphalt poor': 2.25,
  'macadam good': 1.5,
  'macadam fair': 2.25,
  'macadam poor': 3.75,
  'cobbles ordinary': 5.5,
  'cobbles poor': 8.5,
  'snow 2 inch': 2.5,
  'snow 4 inch': 3.75,
  'dirt smooth': 2.5,
  'dirt sandy': 3.75,
}

/** Rolling coefficient by tyre, road factor and speed, km/h (Rakha et al. 2001). */
export const rollingCoefficientRakha = (tyre: Tyre, roadFactor: number, speedKmPerH: number): number =>
  (roadFactor * (TYRES[tyre].slope * speedKmPerH + TYRES[tyre].base)) / 1000

/** Coefficients of consumption against °F, kWh/mile (Yuksel and Michalek 2015, ES&T, 10.1021/es505621s). */
const YUKSEL = [0.395, -0.0022, 9.1978e-5, -3.9249e-6, 5.2918e-8, -2.0659e-10] as const

/** Consumption of a small electric car, kWh/mile, at an outside temperature, °C; the fit holds from -29 to 43 °C. */
export function consumptionKWhPerMile(outsideC: number): number {
  const tempF = outsideC * 1.8 + 32
  return YUKSEL.reduce((sum, coefficient, power) => sum + coefficient * tempF ** power, 0)
}

/** Range lost, %, against 24 °C (AAA 2019): with and without cabin climate; the rows beside 41 % from memory. */
const RANGE_LOSS: readonly {
  readonly outsideC: number
  readonly climate: boolean
  readonly lossPercent: number
}[] = [
  { outsideC: fromFahrenheit(20), climate: true, lossPercent: 41 },
  { outsideC: fromFahrenheit(20), climate: false, lossPercent: 12 },
  { outsideC: fromFahrenheit(95), climate: true, lossPercent: 17 },
  { outsideC: fromFahrenheit(95), climate: false, lossPercent: 4 },
]
/** Mild outside temperature against which range is counted, °C (AAA 2019: 75 °F). */
const RANGE_MILD_C = fromFahrenheit(75)

/** Range lost, %, at an outside temperature, °C, with or without cabin climate: straight lines through the measured points and none lost at 75 °F; null beyond them. */
export function rangeLossPercent(outsideC: number, climate: boolean): number | null {
  const points = RANGE_LOSS.filter((entry) => entry.climate === climate)
  const end = points.find((entry) =>
    outsideC < RANGE_MILD_C ? entry.outsideC < RANGE_MILD_C : entry.outsideC > RANGE_MILD_C,
  )
  if (end === undefined) return null
  const share01 = (outsideC - RANGE_MILD_C) / (end.outsideC - RANGE_MILD_C)
  return share01 > 1.05 ? null : end.lossPercent * share01
}

/** Range lost in winter, %, at or below 0 °C (Norwegian motor club test). */
export const WINTER_RANGE_LOSS_PERCENT = 20

/** Consumption over its mild value that a loss of range means. */
export const consumptionRatio = (rangeLossPercent: number): number => 1 / (1 - rangeLossPercent / 100)

/** Label consumption at the wall, kWh/mile, by row of the vehicle table: city, highway, combined (EPA, in NREL FASTSim_py_veh_db.csv). */
const LABELS: Readonly<Record<number, { readonly city: number; readonly highway: number; readonly combined: number }>> =
  {
    17: { city: 0.263, highway: 0.306, combined: 0.283 },
    18: { city: 0.261, highway: 0.306, combined: 0.281 },
    19: { city: 0.2675, highway: 0.331, combined: 0.296 },
    20: { city: 0.265, highway: 0.331, combined: 0.293 },
    21: { city: 0.265, highway: 0.337, combined: 0.298 },
    22: { city: 0.38, highway: 0.371, combined: 0.375 },
  }

/** Combined label consumption, kWh/mile: the printed one where row, city and highway are the table's, else 55 % city and 45 % highway (EPA). */
export function combinedKWhPerMile(row: number | null, city: number, highway: number): number {
  const label = row === null ? undefined : LABELS[row]
  if (label !== undefined && Math.abs(label.city - city) < 5e-4 && Math.abs(label.highway - highway) < 5e-4)
    return label.combined
  return 0.55 * city + 0.45 * highway
}

/** Wh/km of kWh/mile. */
export const whPerKm = (kWhPerMile: number): number => (kWhPerMile * 1_000_000) / M_PER_MILE

/** Miles of charge to leave with: the leg and a share of the full range in reserve (common practice). */
export const leaveWithMiles = (legMiles: number, fullMiles: number, reserve01: number): number =>
  legMiles + reserve01 * fullMiles
