/** Bytes of a trip to its plan, and the shapes of both: what the headless command runs on. */
import { parseTrip, tripJsonSchema } from '../document/index.ts'
import type { Trip } from '../document/index.ts'
import { derivePlan, settlingRounds } from '../plan/index.ts'
import type { Plan, PlanBudget } from '../plan/index.ts'
import { ok } from '../result/index.ts'
import type { Problem, Result } from '../result/index.ts'
import { planSchema } from './plan-schema/plan.ts'
import { z } from './zod.ts'

/** Rounds that no time limit reaches: then `enoughSearched` ends the search. */
export const ENDLESS_ITERATIONS = 10_000_000

/** `iterations` null: as many rounds as settle a load of the trip's size. */
export type TripBudget = Omit<PlanBudget, 'iterations'> & { readonly iterations: number | null }

export type PlannedTrip = { readonly trip: Trip; readonly plan: Plan }

/** Every reason why the bytes are refused, or the trip and its plan. */
export function planTrip(bytes: Uint8Array, budget: TripBudget): Result<PlannedTrip, readonly Problem[]> {
  const trip = parseTrip(bytes)
  if (!trip.ok) return trip
  const iterations = budget.iterations ?? settlingRounds(trip.value.kit.pieces.length)
  return ok({ trip: trip.value, plan: derivePlan(trip.value, { ...budget, iterations }) })
}

/** JSON Schemas, draft 2020-12, of what goes in and of what comes out. */
export const jsonSchemas = (): { readonly trip: object; readonly plan: object } => ({
  trip: tripJsonSchema(),
  plan: z.toJSONSchema(planSchema, { target: 'draft-2020-12', io: 'input' }),
})
