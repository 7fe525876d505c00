/**
 * From a bag's comfort rating to insulation and back, so that a quilt over a bag counts.
 * Derived, not a standard: ISO 23537 gives ratings, not insulation; its annex is not published openly.
 */
import { CLO_M2K_PER_W } from '../units/index.ts'

/** Sleeper at ease, ASHRAE 55 reclining: 46.6 W/m2. */
const METABOLIC_W_PER_M2 = 46.6
/** Share of heat that leaves dry; the rest is breath and evaporation (derived: own first-order model, 22 % wet). */
const DRY_01 = 0.78
/** Mean skin temperature at ease, °C (ISO 11079 neutral, rounded). */
const SKIN_C = 33
/** Air layer around a bag in still air, m2K/W (about 0.6 clo, from memory). */
const AIR_LAYER_M2K_PER_W = 0.09
/** One base layer, as ratings assume: long top and bottoms, ASHRAE 55 garment table 0.20 + 0.15 clo. */
const BASE_LAYER_CLO = 0.35

/** Insulation of a bag with this comfort temperature (°C, ISO 23537), clo, without sleepwear and air layer. Never negative. */
export function bagCloFromComfort(comfortC: number): number {
  const totalM2KPerW = (SKIN_C - comfortC) / (METABOLIC_W_PER_M2 * DRY_01)
  return Math.max(0, (totalM2KPerW - AIR_LAYER_M2K_PER_W) / CLO_M2K_PER_W - BASE_LAYER_CLO)
}

/** Comfort temperature, °C, that covers of this insulation (clo, without sleepwear) would be rated at. Inverse of `bagCloFromComfort`. */
export function comfortFromClo(clo: number): number {
  const totalM2KPerW = (clo + BASE_LAYER_CLO) * CLO_M2K_PER_W + AIR_LAYER_M2K_PER_W
  return SKIN_C - METABOLIC_W_PER_M2 * DRY_01 * totalM2KPerW
}
