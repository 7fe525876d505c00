/** Energy of driving: air, tyres and climb, with the effect of cold on both. */
import { J_PER_WH, KELVIN_OFFSET, STANDARD_GRAVITY_M_PER_S2 } from '../../units/index.ts'

/** Specific gas constant of dry air, J/kgK (ISO 2533). */
const R_DRY_AIR = 287.05
const STANDARD_PRESSURE_PA = 101_325 // ISO 2533
/** Battery to wheel in planning (NREL FASTSim database holds 0.92 to 0.98 for the drivetrain, times the battery's own loss). */
export const DRIVE_EFFICIENCY_01 = 0.88
/** Share of climb energy recovered on the way down (common practice). */
export const REGENERATION_01 = 0.7

/** Density of dry air, kg/m3, from temperature in °C and pressure in Pa (ideal gas). */
export const dryAirDensity = (tempC: number, pressurePa = STANDARD_PRESSURE_PA): number =>
  pressurePa / (R_DRY_AIR * (tempC + KELVIN_OFFSET))

/**
 * Rolling coefficient of a tyre at an outside temperature, °C, and a speed, km/h.
 * Source: Wang, Besselink and Nijmeijer 2015, WEVJ 7:447. High in level for modern tyres: use its temperature ratio.
 */
export const rollingCoefficientWang = (tempC: number, speedKmPerH: number): number =>
  1.9e-6 * tempC ** 2 - 2.1e-4 * tempC + 0.013 + 5.4e-5 * speedKmPerH

/** Rolling coefficient now, from one that holds at 20 °C, by the temperature ratio of Wang 2015. */
export const rollingCoefficientAt = (at20C: number, tempC: number, speedKmPerH: number): number =>
  (at20C * rollingCoefficientWang(tempC, speedKmPerH)) / rollingCoefficientWang(20, speedKmPerH)

export type RoadLoad = {
  readonly speedMPerS: number
  readonly massKg: number
  readonly dragAreaM2: number
  readonly rollingCoefficient: number
  readonly airDensityKgPerM3: number
  readonly driveEfficiency01: number
  readonly auxiliaryW: number
  /** Rise over run. */
  readonly grade: number
}

/** Energy from the battery, Wh/km: (F v / efficiency + auxiliaries) / v, F = 1/2 rho CdA v2 + m g Crr + m g grade. */
export function roadLoadWhPerKm(load: RoadLoad): number {
  const weightN = load.massKg * STANDARD_GRAVITY_M_PER_S2
  const forceN =
    0.5 * load.airDensityKgPerM3 * load.dragAreaM2 * load.speedMPerS ** 2 +
    weightN * (load.rollingCoefficient + load.grade)
  return ((forceN / load.driveEfficiency01 + load.auxiliaryW / load.speedMPerS) * 1000) / J_PER_WH
}

/** Energy of a net climb, Wh; a descent gives back its regenerated share as a negative. Mass in kg, climb in m. */
export const climbWh = (
  massKg: number,
  climbM: number,
  driveEfficiency01 = DRIVE_EFFICIENCY_01,
  regeneration01 = REGENERATION_01,
): number =>
  (massKg * STANDARD_GRAVITY_M_PER_S2 * (climbM >= 0 ? climbM / driveEfficiency01 : climbM * regeneration01)) / J_PER_WH
