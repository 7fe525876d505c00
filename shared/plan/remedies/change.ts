/** A remedy's change applied to the trip: one small edit, the rest untouched. */
import type { Night, Piece, Trip } from '../../document/index.ts'
import { assertNever } from '../../result/index.ts'
import type { RemedyChange } from '../types.ts'

/** Set-point tried where the night had no heat at all: cool but above frost, common practice. */
const FIRST_SET_POINT_C = 8

/** The trip with one change made. Ids that the trip does not have leave it as it is. */
export function applyRemedy(trip: Trip, change: RemedyChange): Trip {
  switch (change.kind) {
    case 'bring-bedding':
      return onNight(trip, change.nightId, (night) => ({
        ...night,
        beddingPieceIds: [...new Set([...night.beddingPieceIds, change.pieceId])],
      }))
    case 'set-point':
      return onNight(trip, change.nightId, (night) => ({
        ...night,
        heating: { ...night.heating, setPoints: shiftedSetPoints(night, change.byK) },
      }))
    case 'charge-limit':
      return onNight(trip, change.nightId, (night) => ({
        ...night,
        heating: { ...night.heating, chargeLimit01: change.to01 },
      }))
    case 'current':
      return onNight(trip, change.nightId, (night) => ({
        ...night,
        heating: { ...night.heating, currentA: change.toA },
      }))
    case 'stop-on-the-way':
      return trip
    case 'leave-behind':
      return onPieces(trip, change.pieceIds, (piece) => ({ ...piece, spare: true }))
    case 'covers':
      return onNight(trip, change.nightId, (night) => ({ ...night, covers: true }))
    case 'bed-heater':
      return onNight(trip, change.nightId, (night) => ({
        ...night,
        heating: { ...night.heating, bedHeaterIds: [...new Set([...night.heating.bedHeaterIds, change.heaterId])] },
      }))
    case 'window-gap':
      return onNight(trip, change.nightId, (night) => ({
        ...night,
        ventilation: { ...night.ventilation, gapMm: change.toMm },
      }))
    case 'target-later':
      return onNight(trip, change.nightId, (night) => later(night, change.byMin))
    case 'turn-piece':
      return onPieces(trip, [change.pieceId], (piece) => ({ ...piece, upright: ['length', 'width', 'height'] }))
    case 'unlock':
      return onPieces(trip, [change.pieceId], (piece) => ({ ...piece, locks: [] }))
    default:
      return assertNever(change)
  }
}

const onNight = (trip: Trip, nightId: string, change: (night: Night) => Night): Trip => ({
  ...trip,
  nights: trip.nights.map((night) => (night.id === nightId ? change(night) : night)),
})

const onPieces = (trip: Trip, ids: readonly string[], change: (piece: Piece) => Piece): Trip => ({
  ...trip,
  kit: { ...trip.kit, pieces: trip.kit.pieces.map((piece) => (ids.includes(piece.id) ? change(piece) : piece)) },
})

function shiftedSetPoints(night: Night, byK: number): Night['heating']['setPoints'] {
  const { setPoints } = night.heating
  if (setPoints.every(({ tempC }) => tempC === null))
    return byK > 0 ? [{ from: night.arrive, tempC: FIRST_SET_POINT_C + byK }] : setPoints
  return setPoints.map(({ from, tempC }) => ({ from, tempC: tempC === null ? null : tempC + byK }))
}

/** Being at the target later: fewer minutes before sunrise. */
const later = (night: Night, byMin: number): Night =>
  night.target === undefined
    ? night
    : { ...night, target: { ...night.target, minutesBeforeSunrise: night.target.minutesBeforeSunrise - byMin } }
