/** What was read on the night and what was paid; and how the trip is shown. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { LedgerEntry } from '../schema/ledger.ts'
import type { Measured } from '../schema/measured.ts'
import { has, missing, without } from './target.ts'

export type AddMeasurement = { readonly kind: 'add-measurement'; readonly measured: Measured }
export type RemoveMeasurement = { readonly kind: 'remove-measurement'; readonly index: number }
export type AddLedgerEntry = { readonly kind: 'add-ledger-entry'; readonly entry: LedgerEntry }
export type RemoveLedgerEntry = { readonly kind: 'remove-ledger-entry'; readonly entryId: string }
export type SetPreferences = { readonly kind: 'set-preferences'; readonly preferences: Partial<Trip['preferences']> }

export const addMeasurement = (trip: Trip, { measured }: AddMeasurement): Result<Trip> =>
  ok({ ...trip, measured: [...trip.measured, measured] })

export function removeMeasurement(trip: Trip, { index }: RemoveMeasurement): Result<Trip> {
  if (trip.measured[index] === undefined) return missing('measurement', String(index))
  return ok({ ...trip, measured: trip.measured.toSpliced(index, 1) })
}

/** Goes to its place by date, after what was paid on the same day. */
export function addLedgerEntry(trip: Trip, { entry }: AddLedgerEntry): Result<Trip> {
  if (has(trip.ledger, entry.id)) return fail(problem('edit-id-taken', [], { id: entry.id }))
  const at = trip.ledger.findIndex((one) => one.date > entry.date)
  return ok({ ...trip, ledger: trip.ledger.toSpliced(at < 0 ? trip.ledger.length : at, 0, entry) })
}

export function removeLedgerEntry(trip: Trip, { entryId }: RemoveLedgerEntry): Result<Trip> {
  if (!has(trip.ledger, entryId)) return missing('ledger-entry', entryId)
  return ok({ ...trip, ledger: without(trip.ledger, entryId) })
}

export const setPreferences = (trip: Trip, { preferences }: SetPreferences): Result<Trip> =>
  ok({ ...trip, preferences: { ...trip.preferences, ...preferences } })
