/** Pieces: add, duplicate, remove, put into a bin, bring or leave. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Piece } from '../schema/kit.ts'
import { changeOne, copyId, has, missing, omit, unitIds } from './target.ts'

export type AddPiece = { readonly kind: 'add-piece'; readonly piece: Piece }
export type AddPieces = { readonly kind: 'add-pieces'; readonly pieces: readonly Piece[] }
export type DuplicatePiece = { readonly kind: 'duplicate-piece'; readonly pieceId: string }
export type RemovePiece = { readonly kind: 'remove-piece'; readonly pieceId: string }
export type RemovePieces = { readonly kind: 'remove-pieces'; readonly pieceIds: readonly string[] }
/** The same for many. */
export type ChangePieces = {
  readonly kind: 'change-pieces'
  readonly pieceIds: readonly string[]
  readonly change: Partial<Pick<Piece, 'access' | 'atNight'>>
}
/** Null takes the piece out of its bin. */
export type MoveToBin = { readonly kind: 'move-to-bin'; readonly pieceId: string; readonly binId: string | null }
/** A spare piece stays at home, and remedies may bring it. */
export type SetSpare = { readonly kind: 'set-spare'; readonly pieceId: string; readonly spare: boolean }

const withPieces = (trip: Trip, pieces: readonly Piece[]): Trip => ({ ...trip, kit: { ...trip.kit, pieces } })

export const addPiece = (trip: Trip, { piece }: AddPiece): Result<Trip> =>
  addPieces(trip, { kind: 'add-pieces', pieces: [piece] })

/** All of them, or none. */
export function addPieces(trip: Trip, { pieces }: AddPieces): Result<Trip> {
  const taken = unitIds(trip)
  const twice = pieces.find((piece) => taken.has(piece.id))
  if (twice !== undefined) return fail(problem('edit-id-taken', [], { id: twice.id }))
  return ok(withPieces(trip, [...trip.kit.pieces, ...pieces]))
}

/** The copy stands beside its pattern, with an id of its own and no fixed place. */
export function duplicatePiece(trip: Trip, edit: DuplicatePiece): Result<Trip> {
  const at = trip.kit.pieces.findIndex((piece) => piece.id === edit.pieceId)
  const piece = trip.kit.pieces[at]
  if (piece === undefined) return missing('piece', edit.pieceId)
  const copy: Piece = { ...piece, id: copyId(unitIds(trip), piece.id), locks: [] }
  return ok(withPieces(trip, trip.kit.pieces.toSpliced(at + 1, 0, copy)))
}

export const removePiece = (trip: Trip, { pieceId }: RemovePiece): Result<Trip> =>
  removePieces(trip, { kind: 'remove-pieces', pieceIds: [pieceId] })

/** Takes pieces out of the trip, and every mention of them: all of them, or none. */
export function removePieces(trip: Trip, { pieceIds }: RemovePieces): Result<Trip> {
  const unknown = unknownPiece(trip, pieceIds)
  if (unknown !== undefined) return missing('piece', unknown)
  const gone = new Set(pieceIds)
  const isGone = (id: string): boolean => gone.has(id)
  const { bed } = trip.vehicle
  const lessons = trip.checklist.lessons.map((lesson) =>
    lesson.unusedPieceIds?.some(isGone) === true
      ? { ...lesson, unusedPieceIds: keptOf(lesson.unusedPieceIds, gone) }
      : lesson,
  )
  const pieces = trip.kit.pieces.filter((piece) => !gone.has(piece.id))
  return ok({
    ...forgetUnits(withPieces(trip, pieces), gone),
    vehicle: bed.mattressPieceIds.some(isGone)
      ? { ...trip.vehicle, bed: { ...bed, mattressPieceIds: keptOf(bed.mattressPieceIds, gone) } }
      : trip.vehicle,
    nights: trip.nights.map((night) => forgetOnNight(night, gone)),
    checklist: lessons.some((lesson, index) => lesson !== trip.checklist.lessons[index])
      ? { ...trip.checklist, lessons }
      : trip.checklist,
  })
}

function unknownPiece(trip: Trip, pieceIds: readonly string[]): string | undefined {
  const known = new Set(trip.kit.pieces.map((piece) => piece.id))
  return pieceIds.find((id) => !known.has(id))
}

const keptOf = (ids: readonly string[], gone: ReadonlySet<string>): readonly string[] =>
  ids.filter((id) => !gone.has(id))

/** No piece keeps company with, or away from, units that are gone. */
export function forgetUnits(trip: Trip, gone: ReadonlySet<string>): Trip {
  const pieces = trip.kit.pieces.map((piece) =>
    [...piece.belongsWith, ...piece.apartFrom].some((id) => gone.has(id))
      ? { ...piece, belongsWith: keptOf(piece.belongsWith, gone), apartFrom: keptOf(piece.apartFrom, gone) }
      : piece,
  )
  return withPieces(trip, pieces)
}

function forgetOnNight(night: Trip['nights'][number], gone: ReadonlySet<string>): Trip['nights'][number] {
  const chosen = night.beddingPieceIds.some((id) => gone.has(id))
  const bare = chosen ? { ...night, beddingPieceIds: keptOf(night.beddingPieceIds, gone) } : night
  const { hookup } = bare
  if (hookup === undefined) return bare
  const isGone = (id: string | undefined): boolean => id !== undefined && gone.has(id)
  const unadapted = isGone(hookup.adapterPieceId) ? omit(hookup, 'adapterPieceId') : hookup
  const unextended = isGone(unadapted.extensionPieceId) ? omit(unadapted, 'extensionPieceId') : unadapted
  return unextended === hookup ? bare : { ...bare, hookup: unextended }
}

export function changePieces(trip: Trip, { pieceIds, change }: ChangePieces): Result<Trip> {
  const unknown = unknownPiece(trip, pieceIds)
  if (unknown !== undefined) return missing('piece', unknown)
  const meant = new Set(pieceIds)
  return ok(
    withPieces(
      trip,
      trip.kit.pieces.map((piece) => (meant.has(piece.id) ? { ...piece, ...change } : piece)),
    ),
  )
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
