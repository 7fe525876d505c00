/** Pieces: add, duplicate, remove, put into a bin, bring or leave. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Piece } from '../schema/kit.ts'
import { changeOne, copyId, has, missing, omit, unitIds, without } from './target.ts'

export type AddPiece = { readonly kind: 'add-piece'; readonly piece: Piece }
export type DuplicatePiece = { readonly kind: 'duplicate-piece'; readonly pieceId: string }
export type RemovePiece = { readonly kind: 'remove-piece'; readonly pieceId: string }
/** Null takes the piece out of its bin. */
export type MoveToBin = { readonly kind: 'move-to-bin'; readonly pieceId: string; readonly binId: string | null }
/** A spare piece stays at home, and remedies may bring it. */
export type SetSpare = { readonly kind: 'set-spare'; readonly pieceId: string; readonly spare: boolean }

const withPieces = (trip: Trip, pieces: readonly Piece[]): Trip => ({ ...trip, kit: { ...trip.kit, pieces } })

export function addPiece(trip: Trip, edit: AddPiece): Result<Trip> {
  if (unitIds(trip).has(edit.piece.id)) return fail(problem('edit-id-taken', [], { id: edit.piece.id }))
  return ok(withPieces(trip, [...trip.kit.pieces, edit.piece]))
}

/** The copy stands beside its pattern, with an id of its own and no fixed place. */
export function duplicatePiece(trip: Trip, edit: DuplicatePiece): Result<Trip> {
  const at = trip.kit.pieces.findIndex((piece) => piece.id === edit.pieceId)
  const piece = trip.kit.pieces[at]
  if (piece === undefined) return missing('piece', edit.pieceId)
  const copy: Piece = { ...piece, id: copyId(unitIds(trip), piece.id), locks: [] }
  return ok(withPieces(trip, trip.kit.pieces.toSpliced(at + 1, 0, copy)))
}

/** Takes a piece out of the trip, and every mention of it. */
export function removePiece(trip: Trip, edit: RemovePiece): Result<Trip> {
  const { pieceId } = edit
  if (!has(trip.kit.pieces, pieceId)) return missing('piece', pieceId)
  const { bed } = trip.vehicle
  const lessons = trip.checklist.lessons.map((lesson) =>
    lesson.unusedPieceIds?.includes(pieceId) === true
      ? { ...lesson, unusedPieceIds: lesson.unusedPieceIds.filter((id) => id !== pieceId) }
      : lesson,
  )
  return ok({
    ...forgetUnit(withPieces(trip, without(trip.kit.pieces, pieceId)), pieceId),
    vehicle: bed.mattressPieceIds.includes(pieceId)
      ? { ...trip.vehicle, bed: { ...bed, mattressPieceIds: bed.mattressPieceIds.filter((id) => id !== pieceId) } }
      : trip.vehicle,
    nights: trip.nights.map((night) => forgetOnNight(night, pieceId)),
    checklist: lessons.some((lesson, index) => lesson !== trip.checklist.lessons[index])
      ? { ...trip.checklist, lessons }
      : trip.checklist,
  })
}

/** No piece keeps company with, or away from, a unit that is gone. */
export function forgetUnit(trip: Trip, unitId: string): Trip {
  const pieces = trip.kit.pieces.map((piece) =>
    piece.belongsWith.includes(unitId) || piece.apartFrom.includes(unitId)
      ? {
          ...piece,
          belongsWith: piece.belongsWith.filter((id) => id !== unitId),
          apartFrom: piece.apartFrom.filter((id) => id !== unitId),
        }
      : piece,
  )
  return withPieces(trip, pieces)
}

function forgetOnNight(night: Trip['nights'][number], pieceId: string): Trip['nights'][number] {
  const chosen = night.beddingPieceIds.includes(pieceId)
  const bare = chosen ? { ...night, beddingPieceIds: night.beddingPieceIds.filter((id) => id !== pieceId) } : night
  const { hookup } = bare
  if (hookup === undefined) return bare
  const unadapted = hookup.adapterPieceId === pieceId ? omit(hookup, 'adapterPieceId') : hookup
  const unextended = unadapted.extensionPieceId === pieceId ? omit(unadapted, 'extensionPieceId') : unadapted
  return unextended === hookup ? bare : { ...bare, hookup: unextended }
}

export function moveToBin(trip: Trip, edit: MoveToBin): Result<Trip> {
  if (!has(trip.kit.pieces, edit.pieceId)) return missing('piece', edit.pieceId)
  const { binId } = edit
  if (binId !== null && !has(trip.kit.bins, binId)) return missing('bin', binId)
  const change = (piece: Piece): Piece => (binId === null ? omit(piece, 'binId') : { ...piece, binId })
  return ok(withPieces(trip, changeOne(trip.kit.pieces, edit.pieceId, change)))
}

export function setSpare(trip: Trip, edit: SetSpare): Result<Trip> {
  if (!has(trip.kit.pieces, edit.pieceId)) return missing('piece', edit.pieceId)
  return ok(
    withPieces(
      trip,
      changeOne(trip.kit.pieces, edit.pieceId, (piece) => ({ ...piece, spare: edit.spare })),
    ),
  )
}
