/** What one sleeper lies on and under, of the pieces that are laid. */
import type { Piece, Trip } from '../../document/index.ts'
import { bagCloFromComfort, comfortFromClo } from '../../climate/index.ts'
import type { SleeperBedding } from '../../climate/index.ts'

/** Bedding for one sleeper: what is marked as theirs, and an equal claim on what is marked for no one. */
export function sleeperBedding(
  trip: Trip,
  laid: readonly Piece[],
  traveller: Trip['travellers'][number],
): SleeperBedding {
  const theirs = laid.filter(
    ({ bedding }) => bedding !== undefined && (bedding.forTravellerId ?? traveller.id) === traveller.id,
  )
  const covers = theirs.filter(
    ({ bedding }) => bedding !== undefined && ['bag', 'quilt', 'blanket'].includes(bedding.kind),
  )
  const beddingClo = covers.reduce((sum, piece) => sum + coverClo(piece), 0)
  const rated = covers.some(({ bedding }) => bedding?.comfortC !== undefined)
  return {
    comfortC: rated ? comfortFromClo(beddingClo) : null,
    coverClo: beddingClo + traveller.sleepwearClo,
    matM2KPerW: theirs.reduce(
      (sum, { bedding }) => sum + (bedding?.matM2KPerW ?? 0),
      trip.vehicle.bed.fittedMattressM2KPerW ?? 0,
    ),
  }
}

function coverClo({ bedding }: Piece): number {
  if (bedding === undefined) return 0
  if (bedding.clo !== undefined) return bedding.clo
  return bedding.comfortC === undefined ? 0 : bagCloFromComfort(bedding.comfortC)
}
