/** Saturation of air over water and ice, and dew point, quick enough for the inner loop. */
import { KELVIN_OFFSET } from '../units/index.ts'

/** Triple point of water, °C: the branch between ice and water (ASHRAE; a branch at 0 °C leaves a jump). */
const TRIPLE_POINT_C = 0.01
/** Ratio of molar masses of water and dry air (ASHRAE Fundamentals 2017 ch. 1 eq. 20). */
const MASS_RATIO = 0.621945

/**
 * Vapour pressure at saturation, Pa, from -100 to 200 °C; over ice below the triple point.
 * Source: Hyland and Wexler (1983) as ASHRAE Fundamentals 2017 ch. 1 eq. 5 and 6. Equal to psychrolib 1.1.1.
 */
export const saturationPa = (tempC: number): number => Math.exp(logSaturation(tempC))

/** Natural logarithm of `saturationPa`. */
function logSaturation(tempC: number): number {
  const t = tempC + KELVIN_OFFSET
  return tempC <= TRIPLE_POINT_C
    ? -5.6745359e3 / t +
        6.3925247 +
        t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - t * 9.484024e-13))) +
        4.1635019 * Math.log(t)
    : -5.8002206e3 / t +
        1.3914993 +
        t * (-4.8640239e-2 + t * (4.1764768e-5 - t * 1.4452093e-8)) +
        6.5459673 * Math.log(t)
}

/** Its slope, per K: the same terms by temperature. */
function logSaturationSlope(tempC: number): number {
  const t = tempC + KELVIN_OFFSET
  return tempC <= TRIPLE_POINT_C
    ? (5.6745359e3 / t + 4.1635019) / t -
        9.677843e-3 +
        t * (2 * 6.2215701e-7 + t * (3 * 2.0747825e-9 - t * (4 * 9.484024e-13)))
    : (5.8002206e3 / t + 6.5459673) / t - 4.8640239e-2 + t * (2 * 4.1764768e-5 - t * (3 * 1.4452093e-8))
}

/** Water in saturated air, kg per kg dry air, at °C and Pa. */
export function saturationRatio(tempC: number, pressurePa: number): number {
  const vapourPa = Math.min(saturationPa(tempC), 0.9 * pressurePa)
  return (MASS_RATIO * vapourPa) / (pressurePa - vapourPa)
}

/** Vapour pressure of air that carries a ratio of water, Pa. */
export const vapourPa = (ratio: number, pressurePa: number): number => (pressurePa * ratio) / (MASS_RATIO + ratio)

const DRIEST_C = -60
const DRIEST_PA = saturationPa(DRIEST_C)

/** Dew point (frost point below the triple point) of a vapour pressure, °C; -60 where the air is dry. Newton on the logarithm. */
export function dewPointFromPa(pressure: number): number {
  if (pressure <= DRIEST_PA) return DRIEST_C
  const wanted = Math.log(pressure)
  let tempC =
    pressure > 611
      ? (243.04 * (wanted - 6.4149)) / (17.625 - wanted + 6.4149)
      : (272.62 * (wanted - 6.4149)) / (22.46 - wanted + 6.4149)
  for (let turn = 0; turn < NEWTON_TURNS; turn += 1)
    tempC += (wanted - logSaturation(tempC)) / logSaturationSlope(tempC)
  return tempC
}

/** From a first guess within 0.1 K each turn squares the error. */
const NEWTON_TURNS = 2
