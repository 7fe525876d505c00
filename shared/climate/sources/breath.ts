/** What people give to the air: carbon dioxide and water; and how outdoor air carries both away. */
import { G_PER_KG } from '../../units/index.ts'
import { dewPointOfRatioC, humidityRatio, volumeM3PerKg } from './psychrometrics.ts'

export type Sex = 'male' | 'female'
export type CarbonDioxideRow = {
  readonly ages: string
  readonly meanMassKg: number
  readonly basalMJPerDay: number
  readonly at1Met: number
  readonly at1p2Met: number
}

const row = ([ages, meanMassKg, basalMJPerDay, at1Met, at1p2Met]: readonly [
  string,
  number,
  number,
  number,
  number,
]): CarbonDioxideRow => ({
  ages,
  meanMassKg,
  basalMJPerDay,
  at1Met,
  at1p2Met,
})

/** Carbon dioxide, L/s at 273 K and 101 kPa, by sex and age (Persily and de Jonge 2017, Indoor Air 27:868, table 4). */
export const CARBON_DIOXIDE: Readonly<Record<Sex, readonly CarbonDioxideRow[]>> = {
  male: [
    row(['<1', 8, 1.86, 0.0009, 0.0011]),
    row(['1-3', 12.8, 3.05, 0.0015, 0.0018]),
    row(['3-6', 18.8, 3.9, 0.0019, 0.0023]),
    row(['6-11', 31.9, 5.14, 0.0025, 0.003]),
    row(['11-16', 57.6, 7.02, 0.0034, 0.0041]),
    row(['16-21', 77.3, 7.77, 0.0037, 0.0045]),
    row(['21-30', 84.9, 8.24, 0.0039, 0.0048]),
    row(['30-40', 87, 7.83, 0.0037, 0.0046]),
    row(['40-50', 90.5, 8, 0.0038, 0.0046]),
    row(['50-60', 89.5, 7.95, 0.0038, 0.0046]),
    row(['60-70', 89.5, 6.84, 0.0033, 0.004]),
    row(['70-80', 83.9, 6.57, 0.0031, 0.0038]),
    row(['>=80', 76.1, 6.19, 0.003, 0.0036]),
  ],
  female: [
    row(['<1', 7.7, 1.75, 0.0008, 0.001]),
    row(['1-3', 12.3, 2.88, 0.0014, 0.0017]),
    row(['3-6', 18.3, 3.59, 0.0017, 0.0021]),
    row(['6-11', 31.7, 4.73, 0.0023, 0.0027]),
    row(['11-16', 55.9, 6.03, 0.0029, 0.0035]),
    row(['16-21', 65.9, 6.12, 0.0029, 0.0036]),
    row(['21-30', 71.9, 6.49, 0.0031, 0.0038]),
    row(['30-40', 74.8, 6.08, 0.0029, 0.0035]),
    row(['40-50', 77.1, 6.16, 0.0029, 0.0036]),
    row(['50-60', 77.5, 6.17, 0.003, 0.0036]),
    row(['60-70', 76.8, 5.67, 0.0027, 0.0033]),
    row(['70-80', 70.8, 5.45, 0.0026, 0.0032]),
    row(['>=80', 64.1, 5.19, 0.0025, 0.003]),
  ],
}

/** Carbon dioxide given off, L/s, from respiratory quotient, basal MJ/day, met, K and kPa (Persily and de Jonge 2017, equation 9). */
export const carbonDioxideLPerS = (input: {
  readonly respiratoryQuotient: number
  readonly basalMJPerDay: number
  readonly met: number
  readonly tempK: number
  readonly pressureKPa: number
}): number => input.respiratoryQuotient * input.basalMJPerDay * input.met * (input.tempK / input.pressureKPa) * 0.000211

/** Carbon dioxide over outdoors by category, ppm (EN 16798-1:2019); bedrooms from memory. */
export const CARBON_DIOXIDE_LIMITS = {
  categoryIPpm: 550,
  categoryIIPpm: 800,
  categoryIIIPpm: 1350,
  bedroomIPpm: 380,
  bedroomIIPpm: 550,
  bedroomIIIPpm: 950,
  /** German environment agency 2008: up to this good, above the next unacceptable, ppm absolute. */
  goodBelowPpm: 1000,
  unacceptableAbovePpm: 2000,
  /** Occupational limit, 8 h, ppm (OSHA, NIOSH; from memory). */
  workdayPpm: 5000,
} as const

/** Carbon dioxide after a time in well-mixed air, ppm: C = Co + G/Q + (C0 - Co - G/Q) exp(-n t). Source in L/s, volume in m3, exchange a hour. */
export function mixedPpm(input: {
  readonly sourceLPerS: number
  readonly volumeM3: number
  readonly exchangePerH: number
  readonly hours: number
  readonly outsidePpm: number
  readonly startPpm: number
}): number {
  const hourly = (input.sourceLPerS * 3600 * 1000) / input.volumeM3
  if (input.exchangePerH === 0) return input.startPpm + hourly * input.hours
  const steady = input.outsidePpm + hourly / input.exchangePerH
  return steady + (input.startPpm - steady) * Math.exp(-input.exchangePerH * input.hours)
}

/** Outdoor air that holds a rise, L/s, from source in L/s and rise in ppm (steady balance Q = G / dC). */
export const airForRiseLPerS = (sourceLPerS: number, risePpm: number): number => (sourceLPerS * 1e6) / risePpm

/** Air through a window opened on one side, m3/h (Maas 1995): opening in m2, wind in m/s, height in m, difference in K. */
export const openWindowM3PerH = (input: {
  readonly areaM2: number
  readonly windMPerS: number
  readonly heightM: number
  readonly differenceK: number
}): number =>
  3600 *
  0.5 *
  input.areaM2 *
  Math.sqrt(0.0056 * input.windMPerS ** 2 + 0.0037 * input.heightM * Math.abs(input.differenceK) + 0.012)

/** Water given off by breath and skin, g/h a person asleep: the middle of 40 to 50 that field guides plan (read); a building code of practice gives 50 for breath asleep (New Zealand metal roofing 10.8.1, read), within its 30 %. */
export const ASLEEP_WATER_G_PER_H = 45
/** Water of an active person, g/h (New Zealand building research table, from memory). */
export const ACTIVE_WATER_G_PER_H = 200

/**
 * Steady humidity of a space with a water source, before any condensation.
 * Air in °C, outdoor humidity 0 to 1, source in g/h, outdoor air in m3/h at outdoor conditions, Pa.
 * Result: kg/kg, dew point in °C (not above the room's temperature) and whether the air is saturated.
 */
export function steadyHumidity(input: {
  readonly outsideC: number
  readonly outsideHumidity01: number
  readonly sourceGPerH: number
  readonly airM3PerH: number
  readonly insideC: number
  readonly pressurePa: number
}): { readonly ratio: number; readonly dewPointC: number; readonly saturated: boolean } {
  const outside = humidityRatio(input.outsideC, input.outsideHumidity01, input.pressurePa)
  const dryAirKgPerH = input.airM3PerH / volumeM3PerKg(input.outsideC, outside, input.pressurePa)
  const ratio = outside + input.sourceGPerH / G_PER_KG / dryAirKgPerH
  const saturated = ratio >= humidityRatio(input.insideC, 1, input.pressurePa)
  return {
    ratio,
    saturated,
    dewPointC: saturated ? input.insideC : dewPointOfRatioC(input.insideC, ratio, input.pressurePa),
  }
}
