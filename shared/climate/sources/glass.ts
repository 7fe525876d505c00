/** Glass: films, transmittance, inner surface, onset of condensation, covers; and the sky above it. */
import { KELVIN_OFFSET } from '../../units/index.ts'
import { saturationPressurePa } from './psychrometrics.ts'

/** A single pane of car glass with the films of EN 673; each value names its source. */
export const GLASS = {
  thicknessM: 0.004, // common practice for car glass, 3 to 6 mm
  conductivityWPerMK: 1, // EN 673
  insideWPerM2K: 7.7, // EN 673 (ISO 6946, 0.13 m2K/W)
  outsideWPerM2K: 25, // EN 673
} as const

/** Outside film on glass, W/m2K, from wind in m/s (EnergyPlus simple combined, very smooth surface; from memory). */
export const outsideFilmWPerM2K = (windMPerS: number): number => 8.23 + 3.33 * windMPerS - 0.036 * windMPerS ** 2

export type Pane = {
  readonly outsideWPerM2K: number
  readonly insideWPerM2K: number
  readonly thicknessM: number
  readonly conductivityWPerMK: number
}

/** Transmittance of one pane, W/m2K: 1 / (1/he + d/lambda + 1/hi) (EN 673). */
export const paneUWPerM2K = (pane: Pane): number =>
  1 / (1 / pane.outsideWPerM2K + pane.thicknessM / pane.conductivityWPerMK + 1 / pane.insideWPerM2K)

/** Transmittance with a cover in series, W/m2K; cover in m2K/W. */
export const coveredUWPerM2K = (glassUWPerM2K: number, coverM2KPerW: number): number =>
  1 / (1 / glassUWPerM2K + coverM2KPerW)

/** Inner surface of glass, °C, and the room humidity 0 to 1 at which it wets (or frosts, below 0 °C). Room and outdoor air in °C. */
export function paneSurface(
  pane: Pane,
  insideC: number,
  outsideC: number,
): { readonly surfaceC: number; readonly onsetHumidity01: number; readonly frost: boolean } {
  const surfaceC = insideC - (paneUWPerM2K(pane) / pane.insideWPerM2K) * (insideC - outsideC)
  return {
    surfaceC,
    onsetHumidity01: saturationPressurePa(surfaceC) / saturationPressurePa(insideC),
    frost: surfaceC < 0,
  }
}

const STEFAN_BOLTZMANN = 5.6697e-8 // W/m2K4, the value in EnergyPlus

/**
 * Sky: emissivity, infrared, W/m2, and its temperature, °C, from air and dew point, °C, and opaque cloud in tenths.
 * Source: Clark and Allen 1978 with Walton's cloud factor on the whole emissivity: 1 + 0.0224 N - 0.0035 N2 + 0.00028 N3.
 */
export function skyAt(
  airC: number,
  dewC: number,
  cloudTenths: number,
  sigma = STEFAN_BOLTZMANN,
): { readonly emissivity: number; readonly infraredW: number; readonly skyC: number } {
  const clear = 0.787 + 0.764 * Math.log((dewC + KELVIN_OFFSET) / 273)
  const emissivity = clear * (1 + 0.0224 * cloudTenths - 0.0035 * cloudTenths ** 2 + 0.00028 * cloudTenths ** 3)
  const infraredW = emissivity * sigma * (airC + KELVIN_OFFSET) ** 4
  return { emissivity, infraredW, skyC: (infraredW / sigma) ** 0.25 - KELVIN_OFFSET }
}
