/** The user's names for ids, and the number each unit bears on drawings. */
import type { Bay, Trip } from '../document/index.ts'
import type { Packing } from './plan-parts.ts'

export type Names = {
  readonly unit: (unitId: string) => string
  readonly piece: (pieceId: string) => string
  readonly bay: (bayId: string) => string
  readonly bayOf: (bayId: string) => Bay | null
  readonly traveller: (travellerId: string) => string
  /** Number in loading order; units that were not placed come after. */
  readonly number: (unitId: string) => number
}

export function namesOf(trip: Trip, packing: Packing): Names {
  const pieces = new Map(trip.kit.pieces.map((piece) => [piece.id, piece.name]))
  const bins = new Map(trip.kit.bins.map((bin) => [bin.id, bin.name]))
  const bays = new Map(trip.vehicle.bays.map((bay) => [bay.id, bay]))
  const travellers = new Map(trip.travellers.map((traveller) => [traveller.id, traveller.label]))
  const ordered = [...new Set([...packing.loadingOrder, ...packing.units.map((unit) => unit.id)])]
  const numbers = new Map(ordered.map((id, index) => [id, index + 1]))
  return {
    unit: (id) => bins.get(id) ?? pieces.get(id) ?? id,
    piece: (id) => pieces.get(id) ?? id,
    bay: (id) => bays.get(id)?.name ?? id,
    bayOf: (id) => bays.get(id) ?? null,
    traveller: (id) => travellers.get(id) ?? id,
    number: (id) => numbers.get(id) ?? ordered.length + 1,
  }
}
