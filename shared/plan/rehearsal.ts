/** Faults that each night is rehearsed with: the supply goes, the breaker trips, the heater fails. */
import { PILOT_MINIMUM_A, runFault } from '../climate/index.ts'
import type { Fault, FaultOutcome } from '../climate/index.ts'
import { S_PER_HOUR } from '../units/index.ts'
import type { Utc } from '../units/index.ts'
import { choicesOf } from './choices.ts'
import type { NightPlan } from './types.ts'

/** Where a fault night is rehearsed when the traveller has not dragged the hour: 03:00 is five hours after a usual bedtime of 22:00. */
const FAULT_AFTER_BEDTIME_S = 5 * S_PER_HOUR
/** What a breaker that has tripped once is trusted with, of what was thought to be usable (common practice: 32 A tripped, 24 A held). */
const HELD_AFTER_TRIP_01 = 0.75

/** A fault of a kind at an instant of this night; a breaker holds what is known of it, else three quarters, and is down until somebody resets it. */
export function faultAt(kind: Fault['kind'], atUtc: Utc, { input, outcome }: NightPlan): Fault {
  if (kind !== 'breaker-trips') return { kind, atUtc }
  const trustedA = Math.floor(HELD_AFTER_TRIP_01 * (outcome.supply?.usableA ?? 0))
  const least = Math.max(PILOT_MINIMUM_A, input.supply?.minimumA ?? 0)
  const heldA = input.supply?.heldA ?? (trustedA < least ? null : trustedA)
  return { kind, atUtc, heldA, resetUtc: null }
}

/** The kinds that can befall this night. */
export const faultKinds = ({ input }: NightPlan): readonly Fault['kind'][] => [
  ...(input.supply === null ? [] : (['supply-lost', 'breaker-trips'] as const)),
  ...(input.heater.kind === 'none' ? [] : (['heater-fails'] as const)),
]

/** What happens when each of them befalls it in the small hours. */
export function rehearsals(plan: NightPlan): readonly FaultOutcome[] {
  const { clock } = plan
  const atUtc = Math.min(clock.bedtimeUtc + FAULT_AFTER_BEDTIME_S, clock.wakeUtc) as Utc
  const input = choicesOf(plan)
  return faultKinds(plan).map((kind) => runFault(input, faultAt(kind, atUtc, plan)))
}
