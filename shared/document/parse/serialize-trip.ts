/** A trip as the text of its file: keys in the schema's order, two spaces, one newline at the end. */
import { invariant } from '../../result/index.ts'
import { tripSchema } from '../schema/document.ts'
import type { Trip } from '../schema/document.ts'

/** Writes the same bytes for the same trip, whatever order its keys were set in. */
export function serializeTrip(trip: Trip): string {
  // Reading through the schema puts each object's keys in the schema's order.
  const ordered = tripSchema.safeParse(trip)
  invariant(ordered.success, 'only a valid trip is written')
  return `${JSON.stringify(ordered.data, null, 2)}\n`
}
