/** Limits of caution, as published: carbon monoxide, cold and heat illness, loose loads, food, leads. */
import { STANDARD_GRAVITY_M_PER_S2 } from '../../units/index.ts'

/** Distance of engines and flames from openings (Florida Department of Health after CDC). */
export const GENERATOR_DISTANCE = { minimumM: 6.1, minimumFt: 20 } as const
/** Hypothermia below this core temperature is an emergency (cdc.gov). */
export const HYPOTHERMIA_CORE = { belowC: 35, belowF: 95 } as const
/** Heat stroke above this core temperature (after CDC). */
export const HEAT_STROKE_CORE = { aboveF: 103, canReachF: 106, withinMinutes: '10-15' } as const
/** Restraint of cargo, in g (49 CFR 393.102; EN 12195-1; from memory). */
export const CARGO_RESTRAINT_G = { forward: 0.8, rearward: 0.5, sideways: 0.5 } as const
/** The load on a vehicle and its axles (49 CFR 571.110, concept; from memory). */
export const PAYLOAD_RULE = 'occupants+cargo <= GVWR - curb mass; each axle <= GAWR'
/** Holding of cold food (USDA, FDA; from memory). */
export const COLD_FOOD = {
  fridgeMaximumC: 4.4,
  dangerFromC: 4.4,
  dangerToC: 60,
  hoursLimit: 2,
  hoursLimitAbove32C: 1,
} as const
/** Lithium iron phosphate cells take no charge below this cell temperature, °C (common cell data). */
export const LFP_CHARGE_MINIMUM_C = 0
/** Extension leads (CPSC). */
export const EXTENSION_LEAD = { coiledOrCovered: false, hotCord: 'discard', minimumGaugeAwg: 16 } as const
/** A 20 A cord on a 30 A receptacle through an adapter has no overload protection (NEC 551.71, handbook comment). */
export const ADAPTER_PROTECTS = false

/** Mean deceleration of a stop, in g, from speed in m/s and distance in m: v2 / (2 d g). */
export const stopG = (speedMPerS: number, distanceM: number): number =>
  speedMPerS ** 2 / (2 * distanceM * STANDARD_GRAVITY_M_PER_S2)

/** Published ratios of the force of a loose object to its weight: a handbook, a club's crash test, a club's page. */
const LOOSE_OBJECT: readonly { readonly speedKmPerH: number; readonly massKg: number; readonly ratio: number }[] = [
  { speedKmPerH: 50, massKg: 4.5, ratio: 20 },
  { speedKmPerH: 45, massKg: 145, ratio: 48 },
  { speedKmPerH: 96.6, massKg: 11.34, ratio: 65 },
]

/**
 * Force of a loose object over its weight, and as a mass, kg. Speed in km/h, mass in kg.
 * The published ratio where one stands within 10 % in speed and 20 % in mass; else a stop within 0.5 m. A range of 20 to 50 is honest at 50 km/h.
 */
export function looseObject(
  speedKmPerH: number,
  massKg: number,
): { readonly ratio: number; readonly equivalentKg: number } {
  const published = LOOSE_OBJECT.find(
    (entry) => Math.abs(entry.speedKmPerH / speedKmPerH - 1) < 0.05 && Math.abs(entry.massKg / massKg - 1) < 0.2,
  )
  const ratio = published?.ratio ?? stopG(speedKmPerH / 3.6, 0.5)
  return { ratio, equivalentKg: ratio * massKg }
}
