/** The bedding a night could lay: what is chosen, what else rides along, and what is owned and would still find room. */
import type { Night, Piece, Trip } from '../../document/index.ts'
import type { BeddingSet } from '../../climate/index.ts'
import type { PackingOutcome } from '../../packing/index.ts'
import { loadedPieces } from '../load.ts'
import { sleeperBedding } from './sleeper-bedding.ts'

/** More sets than this are told by no one; each costs the night search some time (engine's convention). */
const MOST_SETS = 8

/** What the load says of bedding: room left by day, and how each unit is got at. */
export type BeddingRoom = {
  readonly packing: Pick<PackingOutcome, 'units' | 'drive' | 'driveReach'>
  readonly freeMm3: number
}

/**
 * Sets of bedding for one night, the chosen one first; empty where there is nothing to choose.
 * A bag takes the place of its owner's bag, quilts, blankets and mats come on top, and nobody is left without a cover.
 * What would have to come from home is offered only where the load has room for it; moves are what its units and those before them ask for.
 */
export function beddingSets(trip: Trip, night: Night, room: BeddingRoom): readonly BeddingSet[] {
  const owned = trip.kit.pieces.filter((piece) => piece.bedding !== undefined)
  const chosen = owned.filter(({ id }) => night.beddingPieceIds.includes(id))
  const aboard = new Set(loadedPieces(trip).map(({ id }) => id))
  const extra = owned.filter((piece) => !chosen.includes(piece) && (isCover(piece) || isMat(piece)))
  const fewer = chosen
    .filter(isCover)
    .map((left) => chosen.filter((piece) => piece !== left))
    .filter((set) => everyoneCovered(trip, set) || !everyoneCovered(trip, chosen))
  const more = extra.map((piece) => withPiece(chosen, piece))
  const all = extra.reduce<readonly Piece[]>(withPiece, chosen)
  const allAboard = extra.filter(({ id }) => aboard.has(id)).reduce<readonly Piece[]>(withPiece, chosen)
  const sets = new Map<string, readonly Piece[]>()
  for (const set of [chosen, allAboard, all, ...more, ...fewer]) {
    if (sets.size < MOST_SETS && (set === chosen || fits(set, aboard, room.freeMm3))) sets.set(idOf(set), set)
  }
  if (sets.size < 2) return []
  return [...sets].map(([id, pieces]) => ({
    id,
    pieceIds: pieces.map((piece) => piece.id),
    aboard: pieces.every((piece) => aboard.has(piece.id)),
    bySleeper: trip.travellers.map((traveller) => ({
      sleeperId: traveller.id,
      bedding: sleeperBedding(trip, pieces, traveller),
    })),
    moves: movesFor(pieces, room.packing),
    volumeMm3: pieces.reduce((sum, piece) => sum + volumeMm3(piece, room.packing), 0),
  }))
}

const isCover = ({ bedding }: Piece): boolean => bedding !== undefined && COVERS.has(bedding.kind)
const isMat = ({ bedding }: Piece): boolean => (bedding?.matM2KPerW ?? 0) > 0
const COVERS: ReadonlySet<string> = new Set(['bag', 'quilt', 'blanket'])

const idOf = (set: readonly Piece[]): string =>
  set
    .map(({ id }) => id)
    .toSorted()
    .join('+')

/** A bag replaces the bag of the same traveller; anything else comes on top. */
function withPiece(set: readonly Piece[], piece: Piece): readonly Piece[] {
  const owner = piece.bedding?.forTravellerId
  const kept =
    piece.bedding?.kind === 'bag' && owner !== undefined
      ? set.filter(({ bedding }) => !(bedding?.kind === 'bag' && bedding.forTravellerId === owner))
      : set
  return [...kept, piece]
}

const everyoneCovered = (trip: Trip, set: readonly Piece[]): boolean =>
  trip.travellers.every(({ id }) => set.some((piece) => isCover(piece) && (piece.bedding?.forTravellerId ?? id) === id))

/** Whether what would come from home finds room by day, squeezed as far as it lets itself be. */
function fits(set: readonly Piece[], aboard: ReadonlySet<string>, freeMm3: number): boolean {
  const broughtMm3 = set
    .filter(({ id }) => !aboard.has(id))
    .reduce((sum, { sizeMm: [length, width, height], squeezeTo01 }) => sum + length * width * height * squeezeTo01, 0)
  return broughtMm3 <= freeMm3
}

/** Units handled to lay a set: its own, drawn out and laid, and whatever lies before them; what is still at home counts for itself. */
function movesFor(set: readonly Piece[], { units, driveReach }: BeddingRoom['packing']): number {
  const handled = new Set<string>()
  for (const { id } of set) {
    const unitId = units.find(({ pieceIds }) => pieceIds.includes(id))?.id ?? id
    handled.add(unitId)
    for (const before of driveReach.find((reach) => reach.unitId === unitId)?.blockedBy ?? []) handled.add(before)
  }
  return handled.size
}

/** Room taken as packed; where it rides in a bin or is still at home, as stated. */
function volumeMm3({ id, sizeMm }: Piece, { drive }: BeddingRoom['packing']): number {
  const packed = drive.placements.find(({ unitId }) => unitId === id)?.sizeMm ?? sizeMm
  return packed[0] * packed[1] * packed[2]
}
