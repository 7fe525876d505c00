/** Air exchanged with outside: leakage, what the heating draws, and a window left open by some millimetres. */
import { KELVIN_OFFSET, MM_PER_M, S_PER_HOUR } from '../units/index.ts'
import type { CabinParameters } from './types.ts'

/** Gas constant of dry air, J/kgK (ASHRAE Fundamentals 2017 ch. 1). */
const DRY_AIR_J_PER_KG_K = 287.042
/** Heat of moist air near 0 to 20 °C, J/kgK (ASHRAE Fundamentals 2017 ch. 1). */
const AIR_J_PER_KG_K = 1006
/** Temperature at which fresh-air volumes are counted, °C (engine's convention; 0.34 Wh/m3K at sea level). */
const REFERENCE_C = 20
/** Length of one side window's upper edge, m (estimate). */
const EDGE_M = 0.9
/** Effective height of a slit for buoyancy: a gap over a sloping edge, m (estimate). */
const STACK_HEIGHT_M = 0.15
/** Single-sided wind and stack constants, 1 and m/s2K (EN 16798-7, from memory). */
const WIND_CONSTANT = 0.001
const STACK_CONSTANT = 0.0035
/** Discharge of a slit (common practice 0.6). */
const DISCHARGE = 0.6
/** Pressure difference between opposite sides of a parked vehicle as a share of wind pressure, and shelter at 1 m height (estimates). */
const CROSS_PRESSURE = 0.5
const SHELTER = 0.5

/** Standard atmosphere pressure at a height, Pa (ASHRAE Fundamentals 2017 ch. 1 eq. 3). Height in m, -450 to 6000. */
export const pressurePa = (elevationM: number): number => 101_325 * (1 - 2.25577e-5 * elevationM) ** 5.2559

/** Mass of dry air in a counted m3, kg. */
export const airKgPerM3 = (atPa: number): number => atPa / (DRY_AIR_J_PER_KG_K * (REFERENCE_C + KELVIN_OFFSET))

/** Heat of a counted m3 of air, J/m3K. */
export const airJPerM3K = (atPa: number): number => airKgPerM3(atPa) * AIR_J_PER_KG_K

/** Leakage of a closed cabin, m3/h. */
export const leakageM3PerH = (cabin: CabinParameters): number => cabin.leakagePerH * cabin.airVolumeM3

/**
 * Air through a gap at the top of side windows, m3/h, driven by wind and by the difference of temperature.
 * Gap in mm for each side, number of sides, wind in m/s, difference inside less outside in K (its size counts). 0 for no gap.
 * Source: EN 16798-7 for one side (from memory); two sides in series with 0.6 discharge. Accuracy about a factor of 1.5.
 */
export function gapM3PerH(gapMm: number, sides: number, windMPerS: number, differenceK: number): number {
  if (gapMm <= 0 || sides <= 0) return 0
  const sideM2 = (gapMm / MM_PER_M) * EDGE_M
  const wind = Math.max(windMPerS, 0)
  const turbulent = WIND_CONSTANT * wind * wind
  const stack = STACK_CONSTANT * STACK_HEIGHT_M * Math.abs(differenceK)
  const singleM3PerS = ((sideM2 * sides) / 2) * Math.sqrt(turbulent + stack)
  if (sides < 2) return singleM3PerS * S_PER_HOUR
  // Equal slits in series: 1 / sqrt(1/A2 + 1/A2).
  const crossM3PerS = DISCHARGE * (sideM2 / Math.SQRT2) * (sides / 2) * SHELTER * wind * Math.sqrt(CROSS_PRESSURE)
  return Math.sqrt(singleM3PerS * singleM3PerS + crossM3PerS * crossM3PerS) * S_PER_HOUR
}
