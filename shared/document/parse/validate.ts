/** Is this value a trip? Shape first, then references and sense. */
import { fail, ok } from '../../result/index.ts'
import type { Problem, Result } from '../../result/index.ts'
import { tripSchema } from '../schema/document.ts'
import type { Trip } from '../schema/document.ts'
import { checkKit } from './check-kit.ts'
import { checkNights } from './check-nights.ts'
import { checkChecklist, checkHome, checkMeasuredAndLedger, checkTravellers } from './check-rest.ts'
import { checkVehicle } from './check-vehicle.ts'
import { PROBLEM_LIMIT, problemsOfIssues } from './validate-shape.ts'

/**
 * Problems of a trip whose shape is right: ids, references, geometry, order, sums.
 * `before`: a trip without any, from which this one was made; a piece or night of it is not read again where nothing it points at has changed.
 */
export const checkTrip = (trip: Trip, before: Trip | null): readonly Problem[] => [
  ...checkVehicle(trip),
  ...checkHome(trip),
  ...checkTravellers(trip),
  ...checkKit(trip, before),
  ...checkNights(trip, before),
  ...checkChecklist(trip),
  ...checkMeasuredAndLedger(trip),
]

/** A value of the current version as a trip, or every reason why it is none (50 at most). */
export function validateTrip(value: unknown): Result<Trip, readonly Problem[]> {
  const shaped = tripSchema.safeParse(value)
  if (!shaped.success) return fail(problemsOfIssues(shaped.error.issues, value))
  const problems = checkTrip(shaped.data, null)
  return problems.length === 0 ? ok(shaped.data) : fail(problems.slice(0, PROBLEM_LIMIT))
}
