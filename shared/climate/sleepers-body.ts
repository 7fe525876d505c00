/** What a person gives to the cabin: heat, water and carbon dioxide, asleep and awake. */
import { G_PER_KG, MET_W_PER_M2, MM_PER_M } from '../units/index.ts'
import { ASLEEP_WATER_G_PER_H } from './sources/breath.ts'
import type { Sleeper } from './types.ts'

/** Asleep, met (ASHRAE 55 lists 0.7; public sleep course 0.77 to 0.81). */
export const ASLEEP_MET = 0.75
/** Awake and lying or sitting quietly, met (ASHRAE 55: reclining 0.8, seated quiet 1.0). */
const AWAKE_MET = 1
/** Water given off awake at rest, g/h (from memory). */
const AWAKE_G_PER_H = 55
/** Carbon dioxide, l/h (asleep 13, derived from Persily 2017; awake reclining 17, from memory). */
const ASLEEP_CO2_L_PER_H = 13
const AWAKE_CO2_L_PER_H = 17
/** Heat carried by a gram of water given off, Wh (2430 J/g at skin temperature). */
const LATENT_WH_PER_G = 2430 / 3600

export type Release = { readonly sensibleW: number; readonly waterKgPerS: number; readonly co2LPerH: number }

/** Body surface, m2, from height and mass. Source: DuBois and DuBois (1916). */
export const bodySurfaceM2 = (sleeper: Pick<Sleeper, 'heightMm' | 'massG'>): number =>
  0.202 * (sleeper.massG / G_PER_KG) ** 0.425 * (sleeper.heightMm / MM_PER_M) ** 0.725

/** What all sleepers together give to the cabin at one state; heat that leaves as water is not in `sensibleW`. */
export function releaseOf(sleepers: readonly Sleeper[], asleep: boolean): Release {
  const surfaceM2 = sleepers.reduce((sum, sleeper) => sum + bodySurfaceM2(sleeper), 0)
  const waterGPerH = sleepers.length * (asleep ? ASLEEP_WATER_G_PER_H : AWAKE_G_PER_H)
  const heatW = surfaceM2 * MET_W_PER_M2 * (asleep ? ASLEEP_MET : AWAKE_MET)
  return {
    sensibleW: Math.max(0, heatW - waterGPerH * LATENT_WH_PER_G),
    waterKgPerS: waterGPerH / G_PER_KG / 3600,
    co2LPerH: sleepers.length * (asleep ? ASLEEP_CO2_L_PER_H : AWAKE_CO2_L_PER_H),
  }
}
