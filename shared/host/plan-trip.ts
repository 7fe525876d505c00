/** Bytes of a trip to its plan, and the shapes of both: what the headless command runs on. */
import { parseTrip, tripJsonSchema } from '../document/index.ts'
import type { Trip } from '../document/index.ts'
import { derivePlan } from '../plan/index.ts'
import type { Plan, PlanBudget } from '../plan/index.ts'
import { ok } from '../result/index.ts'
import type { Problem, Result } from '../result/index.ts'
import { planSchema } from './plan-schema/plan.ts'
import { z } from './zod.ts'

/** Rounds of the packing search where nobody says otherwise: the packing engine's own measured default. */
export const PLAN_ITERATIONS = 1200
/** Rounds that no time limit reaches: then `shouldStop` ends the search. */
export const ENDLESS_ITERATIONS = 10_000_000

export type PlannedTrip = { readonly trip: Trip; readonly plan: Plan }

/** Every reason why the bytes are refused, or the trip and its plan. */
export function planTrip(bytes: Uint8Array, budget: PlanBudget): Result<PlannedTrip, readonly Problem[]> {
  const trip = parseTrip(bytes)
  return trip.ok ? ok({ trip: trip.value, plan: derivePlan(trip.value, budget) }) : trip
}

/** JSON Schemas, draft 2020-12, of what goes in and of what comes out. */
export const jsonSchemas = (): { readonly trip: object; readonly plan: object } => ({
  trip: tripJsonSchema(),
  plan: z.toJSONSchema(planSchema, { target: 'draft-2020-12', io: 'input' }),
})
