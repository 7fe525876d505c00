/** Bins: add, duplicate, remove. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Bin } from '../schema/kit.ts'
import { forgetUnits } from './pieces.ts'
import { copyId, has, missing, omit, unitIds, without } from './target.ts'

export type AddBin = { readonly kind: 'add-bin'; readonly bin: Bin }
export type DuplicateBin = { readonly kind: 'duplicate-bin'; readonly binId: string }
/** Its pieces stay in the trip, loose. */
export type RemoveBin = { readonly kind: 'remove-bin'; readonly binId: string }

const withBins = (trip: Trip, bins: readonly Bin[]): Trip => ({ ...trip, kit: { ...trip.kit, bins } })

export function addBin(trip: Trip, edit: AddBin): Result<Trip> {
  if (unitIds(trip).has(edit.bin.id)) return fail(problem('edit-id-taken', [], { id: edit.bin.id }))
  return ok(withBins(trip, [...trip.kit.bins, edit.bin]))
}

/** The copy is empty and has no fixed place. */
export function duplicateBin(trip: Trip, edit: DuplicateBin): Result<Trip> {
  const at = trip.kit.bins.findIndex((bin) => bin.id === edit.binId)
  const bin = trip.kit.bins[at]
  if (bin === undefined) return missing('bin', edit.binId)
  const copy: Bin = { ...bin, id: copyId(unitIds(trip), bin.id), locks: [] }
  return ok(withBins(trip, trip.kit.bins.toSpliced(at + 1, 0, copy)))
}

export function removeBin(trip: Trip, edit: RemoveBin): Result<Trip> {
  const { binId } = edit
  if (!has(trip.kit.bins, binId)) return missing('bin', binId)
  const pieces = trip.kit.pieces.map((piece) => (piece.binId === binId ? omit(piece, 'binId') : piece))
  const bins = without(trip.kit.bins, binId)
  return ok(forgetUnits({ ...trip, kit: { ...trip.kit, pieces, bins } }, new Set([binId])))
}
