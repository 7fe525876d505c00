/** What the sky takes and the sun gives: effective sky temperature, and daylight through the glass. */
import { KELVIN_OFFSET } from '../units/index.ts'

/** W/m2K4 (CODATA 2018). */
const STEFAN_BOLTZMANN = 5.670374e-8

/**
 * Effective temperature of the night sky, °C.
 * Air and dew point in °C, cloud 0 to 1. Never warmer than the air.
 * Source: Clark and Allen (1978) clear-sky emissivity, Walton (1983) cloud factor with -0.0035 N2 + 0.00028 N3.
 */
export function skyC(airC: number, dewPointC: number, cloud01: number): number {
  const n = 10 * Math.min(Math.max(cloud01, 0), 1)
  const cloudFactor = 1 + 0.0224 * n - 0.0035 * n * n + 0.00028 * n * n * n
  const emissivity = (0.787 + 0.764 * Math.log((dewPointC + KELVIN_OFFSET) / 273)) * cloudFactor
  const kelvin = airC + KELVIN_OFFSET
  return Math.min(airC, kelvin * Math.min(Math.max(emissivity, 0.4), 1) ** 0.25 - KELVIN_OFFSET)
}

/** Linearised exchange with the sky, W/m2K, between two temperatures in °C for a black surface. */
export function skyExchangeWPerM2K(airC: number, sky: number): number {
  const mean = (airC + sky) / 2 + KELVIN_OFFSET
  return 4 * STEFAN_BOLTZMANN * mean ** 3
}

/**
 * Sunlight on level ground, W/m2, by the sun's height in degrees and cloud 0 to 1; 0 below the horizon.
 * Source: Haurwitz (1945) clear sky, Kasten and Czeplak (1980) cloud; both from memory.
 */
export function daylightWPerM2(elevationDeg: number, cloud01: number): number {
  const sine = Math.sin((elevationDeg * Math.PI) / 180)
  if (sine <= 0.005) return 0
  const cloud = Math.min(Math.max(cloud01, 0), 1)
  return 1098 * sine * Math.exp(-0.057 / sine) * (1 - 0.75 * cloud ** 3.4)
}
