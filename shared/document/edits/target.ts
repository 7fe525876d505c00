/** Finding what an edit speaks of, and changing one element of a list. */
import { fail, ok, problem } from '../../result/index.ts'
import type { DocumentPath, Problem, Result } from '../../result/index.ts'
import { freeId } from '../schema/ids.ts'
import type { Trip } from '../schema/document.ts'
import type { Night } from '../schema/nights.ts'

type Named = { readonly id: string }
export type Target =
  'piece' | 'bin' | 'night' | 'rule' | 'lesson' | 'ledger-entry' | 'measurement' | 'unit' | 'bed-heater'

export const missing = (what: Target, id: string): Result<never> => fail(missingProblem(what, id))

export const missingProblem = (what: Target, id: string): Problem => problem('edit-target-missing', [], { what, id })

export const has = (list: readonly Named[], id: string): boolean => list.some((one) => one.id === id)

/** The list with one element changed; the same list where the change gives the same element. */
export const changeOne = <T extends Named>(list: readonly T[], id: string, change: (one: T) => T): readonly T[] =>
  list.map((one) => (one.id === id ? change(one) : one))

export const without = <T extends Named>(list: readonly T[], id: string): readonly T[] =>
  list.filter((one) => one.id !== id)

/** A free id for the copy of what has one: `tent-2` beside `tent`. */
export const copyId = (taken: ReadonlySet<string>, pattern: string): string =>
  freeId(taken, pattern.replace(/-\d+$/, ''))

export const unitIds = (trip: Trip): ReadonlySet<string> =>
  new Set([...trip.kit.pieces.map((piece) => piece.id), ...trip.kit.bins.map((bin) => bin.id)])

export function changeNight(trip: Trip, nightId: string, change: (night: Night) => Night): Result<Trip> {
  if (!has(trip.nights, nightId)) return missing('night', nightId)
  return ok({ ...trip, nights: changeOne(trip.nights, nightId, change) })
}

/** An object without a key: an optional field that is not given has no key. */
export function omit<T extends object, K extends keyof T>(value: T, key: K): Omit<T, K> {
  const { [key]: _dropped, ...rest } = value
  return rest
}

export const pathMissing = (path: DocumentPath): Result<never> =>
  fail(problem('edit-path-missing', path, { field: path.join('.') }))
