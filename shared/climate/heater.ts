/** The cabin heater: heat per electricity by outside temperature, part load, and when it may run. */
import { PLANNING_COP } from './sources/hvac.ts'
import type { HeaterParameters } from './types.ts'

type CopPoint = HeaterParameters['cop'][number]

/** Cooling per electricity at 25 and 45 °C outside: 1.8 at 45 °C read in a bench test, the other derived. */
const COOLING_COP: readonly CopPoint[] = [
  { outsideC: 25, value: 3 },
  { outsideC: 45, value: 1.8 },
]
/** Loss of a heat pump that cycles below its least output (AHRI 210/240 default degradation, from memory). */
const CYCLING_LOSS_01 = 0.25
/** A vehicle's fan and controls make heat of all electricity at the worst (resistance). */
const RESISTANCE = 1

/**
 * Heat out per electricity in, at an outside temperature in °C.
 * Straight lines between the points, level beyond them; 1 for resistance and below a heat pump's lower limit; never under 1.
 * A heat pump without points uses the planning curve.
 */
export function copAt(heater: Pick<HeaterParameters, 'kind' | 'cop' | 'lowerLimitC'>, outsideC: number): number {
  if (heater.kind === 'resistance' || heater.kind === 'mains-fan-heater')
    return heater.cop.length === 0 ? RESISTANCE : between(heater.cop, outsideC)
  const lower = heater.lowerLimitC ?? null
  if (lower !== null && outsideC < lower) return RESISTANCE
  return Math.max(RESISTANCE, between(heater.cop.length === 0 ? PLANNING_COP : heater.cop, outsideC))
}

/** Heat drawn out per electricity in while cooling, at an outside temperature in °C. */
export const coolingCopAt = (outsideC: number): number => between(COOLING_COP, outsideC)

/** The lowest temperature that cooling aims at, °C: a set-point below it is meant for heating (climate controls end near 16, from memory). */
const COOLS_TO_C = 18
/** Where it is colder outside than that, cooling eases off by this much for each kelvin: fresh air does it (engine's convention). */
const EASES_PER_K = 3

/** Outside temperature below which cooling eases off, °C: what it aims at in the heat. */
export const easesBelowC = (setC: number): number => Math.max(setC, COOLS_TO_C)

/** What cooling aims at, °C, by set-point and outside temperature: never below 18, and higher the colder it is outside. */
export function coolingAimC(setC: number, outsideC: number): number {
  const aimC = easesBelowC(setC)
  return aimC + EASES_PER_K * Math.max(0, aimC - outsideC)
}

/** Apparatus dew point of the cooling coil, °C: evaporators are held at 3 to 10 to stay above frost (from memory). */
export const COIL_C = 8
/** Heat of moist air, J/kgK (ASHRAE Fundamentals 2017 ch. 1). */
const AIR_J_PER_KG_K = 1006

/**
 * Air that the coil brings all the way to its dew point for each W of sensible cooling, kg/s: the rest passes by untouched.
 * Return air in °C. Sensible and latent heat then stand in the ratio of the straight line from the room to the coil's dew point.
 * Source: apparatus dew point and bypass factor, ASHRAE Systems (from memory).
 */
export const coilKgPerSPerW = (returnC: number): number => 1 / (AIR_J_PER_KG_K * Math.max(returnC - COIL_C, 2))

/** Electricity per unit of heat at an output, 1/1: dearer below the least output, where a heat pump switches on and off. */
export function electricPerHeat(heater: HeaterParameters, cop: number, heatW: number): number {
  const part = heater.kind === 'heat-pump' && heater.minHeatW > 0 ? Math.min(1, heatW / heater.minHeatW) : 1
  return 1 / (cop * (1 - CYCLING_LOSS_01 * (1 - part)))
}

function between(points: readonly CopPoint[], outsideC: number): number {
  let below: CopPoint | null = null
  let above: CopPoint | null = null
  for (const point of points) {
    if (point.outsideC <= outsideC && (below === null || point.outsideC > below.outsideC)) below = point
    if (point.outsideC >= outsideC && (above === null || point.outsideC < above.outsideC)) above = point
  }
  if (below === null) return above?.value ?? RESISTANCE
  if (above === null || above.outsideC === below.outsideC) return below.value
  return below.value + ((above.value - below.value) * (outsideC - below.outsideC)) / (above.outsideC - below.outsideC)
}
