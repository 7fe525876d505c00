/** Trips that fall short in one known way: a sample with part of its kit, made to lack warmth, charge, time, room or payload. */
import fc from 'fast-check'
import type { Night, Piece, Trip } from '../../../shared/document/index.ts'

export const PLANTED = ['cold', 'leg', 'ban', 'room', 'payload', 'adapter'] as const
export type Planted = (typeof PLANTED)[number]

/** Code of the shortfall that each plants. */
export const PLANTED_CODE: Readonly<Record<Planted, RegExp>> = {
  cold: /^too-cold-/,
  leg: /^leg-too-long$/,
  ban: /^leave-in-movement-ban$/,
  room: /^no-place-/,
  payload: /^over-payload$/,
  adapter: /^adapter-not-on-board$/,
}

/** How hard the plant is, 0 to 1: near 0 one small change mends it, near 1 perhaps none does. */
type Hardness = { readonly hard01: number; readonly pick: number }

const onNight = (trip: Trip, change: (night: Night) => Night): Trip => ({
  ...trip,
  nights: trip.nights.map((night, index) => (index === 0 ? change(night) : night)),
})

const onPieces = (trip: Trip, change: (piece: Piece) => Piece): Trip => ({
  ...trip,
  kit: { ...trip.kit, pieces: trip.kit.pieces.map(change) },
})

/** One night, every third piece or so, no bins: small enough to plan many times. */
export function smallTrip(trip: Trip, pick: number): Trip {
  const [night] = trip.nights
  if (night === undefined) throw new Error('a sample has a night')
  const hookup = night.hookup
  const kept = trip.kit.pieces.filter(
    (piece, index) =>
      piece.bedding !== undefined ||
      piece.id === hookup?.adapterPieceId ||
      piece.id === hookup?.extensionPieceId ||
      (index + pick) % 4 === 0,
  )
  const ids = new Set(kept.map(({ id }) => id))
  const pieces = kept.map(({ binId: _loose, ...piece }) => ({
    ...piece,
    belongsWith: piece.belongsWith.filter((id) => ids.has(id)),
    apartFrom: piece.apartFrom.filter((id) => ids.has(id)),
    atNightOn: piece.atNightOn.filter(({ nightId }) => nightId === night.id),
    locks: [],
  }))
  const bed = {
    ...trip.vehicle.bed,
    mattressPieceIds: trip.vehicle.bed.mattressPieceIds.filter((id) => ids.has(id)),
  }
  return {
    ...trip,
    nights: [night],
    vehicle: { ...trip.vehicle, bed },
    kit: { ...trip.kit, bins: [], pieces },
    checklist: { ...trip.checklist, ticks: [], lessons: [] },
    measured: [],
    ledger: [],
  }
}

const LEG_WH_PER_KM = 210

/** A leg that takes this share of the battery and leaves the reserve. */
const legM = ({ vehicle }: Trip, share01: number): number =>
  Math.round(
    (((share01 - (vehicle.battery?.reserve01 ?? 0)) * (vehicle.battery?.usableWh ?? 0)) / LEG_WH_PER_KM) * 1000,
  )

/** One trip with one plant. */
export function planted(whole: Trip, kind: Planted, { hard01, pick }: Hardness): Trip {
  const trip = smallTrip(whole, pick)
  switch (kind) {
    case 'cold':
      return onNight(trip, (night) => ({
        ...night,
        covers: pick % 2 === 0,
        weather: { ...night.weather, coldMarginK: Math.round(8 + 12 * hard01) },
        heating: {
          ...night.heating,
          bedHeaterIds: [],
          setPoints: night.heating.setPoints.map((point) =>
            point.tempC === null ? point : { ...point, tempC: Math.round(point.tempC - 10 * hard01) },
          ),
        },
        beddingPieceIds: night.beddingPieceIds.filter((_, index, all) => index !== pick % all.length),
      }))
    case 'leg':
      return onNight(trip, (night) => ({
        ...night,
        heating: { ...night.heating, chargeLimit01: 0.5 },
        arriveCharge01: 0.35,
        leg: { distanceM: legM(trip, 0.505 + 0.3 * hard01), whPerKm: LEG_WH_PER_KM, fastChargers: [] },
      }))
    case 'ban':
      return onNight(trip, (night) => ({
        ...night,
        target: night.target ?? { name: 'ridge', minutesBeforeSunrise: 30, driveM: 9000, driveMin: 15, walkMin: 10 },
        movementBan: { from: '21:00', to: hard01 < 0.5 ? '08:30' : '09:30' },
      }))
    case 'room':
      return onPieces(trip, (piece) =>
        piece.bedding === undefined && piece.traits.mustCarry !== true && trip.kit.pieces.indexOf(piece) % 3 === 0
          ? { ...piece, form: 'rigid', squeezeTo01: 1, sizeMm: [1150, 950, Math.round(420 + 300 * hard01)] }
          : piece,
      )
    case 'payload': {
      const { masses } = trip.vehicle
      const loadG = trip.kit.pieces.reduce((sum, { massG, spare }) => sum + (spare ? 0 : massG), 0)
      const peopleG = trip.travellers.reduce((sum, { massG }) => sum + massG, 0) - masses.driverIncludedG
      const overG = Math.round(500 + 25_000 * hard01)
      const permittedG = masses.readyG + peopleG + (masses.roofFittedG ?? 0) + loadG - overG
      return { ...trip, vehicle: { ...trip.vehicle, masses: { ...masses, permittedG } } }
    }
    case 'adapter': {
      const [night] = trip.nights
      const adapter = trip.kit.pieces.find(({ bedding }) => bedding === undefined)
      if (night?.hookup === undefined || adapter === undefined) return trip
      const adapterPieceId = night.hookup.adapterPieceId ?? adapter.id
      return onNight(
        onPieces(trip, (piece) => (piece.id === adapterPieceId ? { ...piece, spare: true } : piece)),
        (one) => (one.hookup === undefined ? one : { ...one, hookup: { ...one.hookup, adapterPieceId } }),
      )
    }
  }
}

export const plantedShortfall = (samples: readonly Trip[], kind: Planted): fc.Arbitrary<Trip> =>
  fc
    .record({
      trip: fc.constantFrom(...samples),
      hard01: fc.noBias(fc.integer({ min: 0, max: 100 })).map((percent) => percent / 100),
      pick: fc.noBias(fc.integer({ min: 0, max: 3 })),
    })
    .map(({ trip, hard01, pick }) => planted(trip, kind, { hard01, pick }))
