/** The cabin heater: heat per electricity by outside temperature, part load, and when it may run. */
import type { HeaterParameters } from './types.ts'

type CopPoint = HeaterParameters['cop'][number]

/** Whole-system planning curve where the owner gives none: fan and defrost in, near 1 in deep cold (from memory, conservative). */
export const PLANNING_COP: readonly CopPoint[] = [
  { outsideC: -20, value: 1 },
  { outsideC: -10, value: 1.15 },
  { outsideC: 0, value: 1.8 },
  { outsideC: 10, value: 2.5 },
]
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
