/**
 * Whether any single small change mends a shortfall: every change of each kind is made by hand and planned, one after the other.
 * Written without the planner's own neighbourhood and without its edits; slow, and complete over what it lists.
 */
import type { Night, Piece, Trip } from '../../../shared/document/index.ts'

type Made = { readonly name: string; readonly trip: Trip }

const nightWith = (trip: Trip, nightId: string, change: (night: Night) => Night): Trip => ({
  ...trip,
  nights: trip.nights.map((night) => (night.id === nightId ? change(night) : night)),
})

const pieceWith = (trip: Trip, pieceId: string, change: (piece: Piece) => Piece): Trip => ({
  ...trip,
  kit: { ...trip.kit, pieces: trip.kit.pieces.map((piece) => (piece.id === pieceId ? change(piece) : piece)) },
})

const beddings = (trip: Trip, night: Night): Made[] =>
  trip.kit.pieces
    .filter((piece) => piece.bedding !== undefined && !night.beddingPieceIds.includes(piece.id))
    .map((piece) => ({
      name: `bed ${piece.id}`,
      trip: nightWith(
        pieceWith(trip, piece.id, (one) => ({ ...one, spare: false })),
        night.id,
        (one) => ({ ...one, beddingPieceIds: [...one.beddingPieceIds, piece.id] }),
      ),
    }))

const heaters = (trip: Trip, night: Night): Made[] =>
  trip.vehicle.bedHeaters.map(({ id }) => ({
    name: `heater ${id}`,
    trip: nightWith(trip, night.id, (one) => ({
      ...one,
      heating: { ...one.heating, bedHeaterIds: [...new Set([...one.heating.bedHeaterIds, id])] },
    })),
  }))

const warmth = (trip: Trip, night: Night, stepsK: readonly number[]): Made[] =>
  stepsK.map((byK) => ({
    name: `heat ${byK}`,
    trip: nightWith(trip, night.id, (one) => ({
      ...one,
      heating: {
        ...one.heating,
        setPoints: one.heating.setPoints.map((point) =>
          point.tempC === null ? point : { ...point, tempC: point.tempC + byK },
        ),
      },
    })),
  }))

const covered = (trip: Trip, night: Night): Made[] =>
  trip.kit.pieces.some((piece) => piece.purpose === 'window-covers' && !piece.spare)
    ? [{ name: 'covers', trip: nightWith(trip, night.id, (one) => ({ ...one, covers: true })) }]
    : []

const limits = (trip: Trip, night: Night): Made[] =>
  [0.95, 1].map((limit) => ({
    name: `limit ${limit}`,
    trip: nightWith(trip, night.id, (one) => ({ ...one, heating: { ...one.heating, chargeLimit01: limit } })),
  }))

const later = (trip: Trip, night: Night): Made[] =>
  Array.from({ length: 40 }, (_, step) => (step + 1) * 5).map((minutes) => ({
    name: `later ${minutes}`,
    trip: nightWith(trip, night.id, (one) =>
      one.target === undefined
        ? one
        : { ...one, target: { ...one.target, minutesBeforeSunrise: one.target.minutesBeforeSunrise - minutes } },
    ),
  }))

/** To leave the dog, the gas alarm, what a road or the law asks for, or what the post wants is no cure for want of room or weight. */
const NEVER_LEFT =
  /^(pet|co-alarm|fire-blanket|first-aid|medicine|warning-triangle|cargo-net|snow-chains|shovel|supply-tester|charging-unit|lead|adapter|documents)$/

const without = (trip: Trip): Made[] =>
  trip.kit.pieces
    .filter((piece) => !piece.spare && piece.traits.mustCarry !== true && piece.bedding === undefined)
    .filter((piece) => !piece.access.includes('emergency') && !NEVER_LEFT.test(piece.purpose))
    .map((piece) => ({
      name: `leave ${piece.id}`,
      trip: pieceWith(trip, piece.id, (one) => ({ ...one, spare: true })),
    }))

const packed = (trip: Trip): Made[] =>
  trip.kit.pieces
    .filter(({ spare }) => spare)
    .map((piece) => ({
      name: `pack ${piece.id}`,
      trip: pieceWith(trip, piece.id, (one) => ({ ...one, spare: false })),
    }))

/** Every neighbouring trip that could bear on a shortfall of this code on this night. */
export function everyNeighbour(trip: Trip, code: string, nightId: string | null): readonly Made[] {
  const night = trip.nights.find(({ id }) => id === nightId)
  if (code.startsWith('no-place') || code.startsWith('over-')) return without(trip)
  if (night === undefined) return []
  if (code.startsWith('too-cold'))
    return [
      ...beddings(trip, night),
      ...heaters(trip, night),
      ...covered(trip, night),
      ...warmth(trip, night, [2, 4, 6, 8]),
    ]
  if (code === 'leg-too-long')
    return [...limits(trip, night), ...covered(trip, night), ...warmth(trip, night, [-2, -4, -6])]
  if (code === 'leave-in-movement-ban') return later(trip, night)
  if (code === 'adapter-not-on-board') return packed(trip)
  return []
}
