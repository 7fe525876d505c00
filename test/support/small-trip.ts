/** A sample trip cut down to its bed and a few pieces, so that a whole plan takes a second. */
import { readFileSync } from 'node:fs'

const KEPT = ['lead', 'charging-unit', 'covers', 'co-alarm', 'first-aid']

type Loose = Record<string, unknown>
type Sample = Loose & {
  title: string
  preferences: Loose
  vehicle: Loose & { masses: Loose; bed: { mattressPieceIds: string[] } }
  kit: Loose & { pieces: (Loose & { id: string })[] }
  nights: (Loose & { beddingPieceIds: string[] })[]
}

/** Plain JSON, free to be changed: `change` may spoil it too. */
export function smallTrip(change: (trip: Sample) => void = () => undefined): string {
  const file = new URL('../../assets/samples/bats-by-the-quarry.trip.json', import.meta.url)
  const trip = JSON.parse(readFileSync(file, 'utf8')) as Sample
  const nights = trip.nights.slice(0, 1)
  const bed = nights.flatMap(({ beddingPieceIds }) => beddingPieceIds)
  const kept = new Set([...KEPT, ...bed, ...trip.vehicle.bed.mattressPieceIds])
  const pieces = trip.kit.pieces.filter(({ id }) => kept.has(id))
  for (const piece of pieces) Reflect.deleteProperty(piece, 'binId')
  const small: Sample = { ...trip, nights, kit: { ...trip.kit, pieces, bins: [] }, ledger: [] }
  change(small)
  return JSON.stringify(small)
}
