/** Nights: decide, choose bedding, add, duplicate, remove. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import { dayAfter } from '../parse/calendar.ts'
import type { Trip } from '../schema/document.ts'
import type { Night } from '../schema/nights.ts'
import { changeNight, copyId, has, missing, omit, without } from './target.ts'

/** What is decided for a night: the fields that the window's dials turn. */
export type NightDecision = Partial<
  Pick<
    Night,
    'arrive' | 'covers' | 'ventilation' | 'heating' | 'sleep' | 'morningMin' | 'beddingPieceIds' | 'arriveCharge01'
  >
>

export type SetNight = { readonly kind: 'set-night'; readonly nightId: string; readonly decision: NightDecision }
export type ChooseBedding = {
  readonly kind: 'choose-bedding'
  readonly nightId: string
  readonly pieceIds: readonly string[]
}
/** Goes to its place by date. */
export type AddNight = { readonly kind: 'add-night'; readonly night: Night }
/** The same night again, one day after the last, with the charge that the day before leaves. */
export type DuplicateNight = { readonly kind: 'duplicate-night'; readonly nightId: string }
export type RemoveNight = { readonly kind: 'remove-night'; readonly nightId: string }

/** Bedding that is decided with the rest comes along like bedding chosen by itself. */
export function setNight(trip: Trip, { nightId, decision }: SetNight): Result<Trip> {
  const { beddingPieceIds, ...rest } = decision
  if (beddingPieceIds === undefined) return changeNight(trip, nightId, (night) => ({ ...night, ...rest }))
  const laid = chooseBedding(trip, { kind: 'choose-bedding', nightId, pieceIds: beddingPieceIds })
  return laid.ok ? changeNight(laid.value, nightId, (night) => ({ ...night, ...rest })) : laid
}

/** What is chosen comes along: a spare piece is spare no longer. */
export function chooseBedding(trip: Trip, edit: ChooseBedding): Result<Trip> {
  const unknown = edit.pieceIds.find((id) => !has(trip.kit.pieces, id))
  if (unknown !== undefined) return missing('piece', unknown)
  const pieces = trip.kit.pieces.map((piece) =>
    piece.spare && edit.pieceIds.includes(piece.id) ? { ...piece, spare: false } : piece,
  )
  const chosen = pieces.some((piece, index) => piece !== trip.kit.pieces[index])
    ? { ...trip, kit: { ...trip.kit, pieces } }
    : trip
  return changeNight(chosen, edit.nightId, (night) => ({ ...night, beddingPieceIds: edit.pieceIds }))
}

export function addNight(trip: Trip, { night }: AddNight): Result<Trip> {
  if (has(trip.nights, night.id)) return fail(problem('edit-id-taken', [], { id: night.id }))
  const at = trip.nights.findIndex((one) => one.date > night.date)
  return ok({ ...trip, nights: trip.nights.toSpliced(at < 0 ? trip.nights.length : at, 0, night) })
}

export function duplicateNight(trip: Trip, edit: DuplicateNight): Result<Trip> {
  const pattern = trip.nights.find((night) => night.id === edit.nightId)
  const last = trip.nights.at(-1)
  if (pattern === undefined || last === undefined) return missing('night', edit.nightId)
  const id = copyId(new Set(trip.nights.map((night) => night.id)), pattern.id)
  return ok({
    ...trip,
    nights: [...trip.nights, { ...omit(pattern, 'arriveCharge01'), id, date: dayAfter(last.date) }],
  })
}

/** Takes a night out of the trip with what was measured on it; what was paid stays, without its night. */
export function removeNight(trip: Trip, { nightId }: RemoveNight): Result<Trip> {
  const index = trip.nights.findIndex((night) => night.id === nightId)
  if (index < 0) return missing('night', nightId)
  if (trip.nights.length === 1) return fail(problem('edit-last-night', ['nights'], {}))
  const next = trip.nights[index + 1]
  const removed = trip.nights[index]
  // The first night of the rest still needs its charge on arriving.
  const heir =
    index === 0 && next !== undefined && next.arriveCharge01 === undefined && removed?.arriveCharge01 !== undefined
      ? { ...next, arriveCharge01: removed.arriveCharge01 }
      : next
  return ok({
    ...trip,
    nights: without(trip.nights, nightId).map((night) => (night === next && heir !== undefined ? heir : night)),
    kit: {
      ...trip.kit,
      pieces: trip.kit.pieces.map((piece) =>
        piece.atNightOn.some((one) => one.nightId === nightId)
          ? { ...piece, atNightOn: piece.atNightOn.filter((one) => one.nightId !== nightId) }
          : piece,
      ),
    },
    measured: trip.measured.filter((one) => one.nightId !== nightId),
    ledger: trip.ledger.map((entry) => (entry.nightId === nightId ? omit(entry, 'nightId') : entry)),
    checklist: {
      ...trip.checklist,
      lessons: trip.checklist.lessons.map((lesson) => (lesson.nightId === nightId ? omit(lesson, 'nightId') : lesson)),
    },
  })
}
