/** Which pieces ride along: everything not spare, and any spare bedding that a night has chosen. */
import type { Piece, Trip } from '../document/index.ts'
import type { NightState } from '../packing/index.ts'

export function loadedPieces(trip: Trip): readonly Piece[] {
  const chosen = new Set(trip.nights.flatMap((night) => night.beddingPieceIds))
  return trip.kit.pieces.filter((piece) => !piece.spare || chosen.has(piece.id))
}

/**
 * What nobody leaves at home for room or weight, or for not having been needed: what the law or an emergency asks for, what warns,
 * holds or feeds, the animal itself, and what the post wants.
 */
const KEPT_PURPOSES: ReadonlySet<Piece['purpose']> = new Set<Piece['purpose']>([
  'pet',
  'co-alarm',
  'fire-blanket',
  'first-aid',
  'medicine',
  'warning-triangle',
  'cargo-net',
  'snow-chains',
  'shovel',
  'supply-tester',
  'charging-unit',
  'lead',
  'adapter',
  'documents',
])

export const isKeptAlways = ({ purpose, traits, access }: Piece): boolean =>
  traits.mustCarry === true || access.includes('emergency') || KEPT_PURPOSES.has(purpose)

/** Where a piece is on a night: the user's word for that night, else in the bed if chosen for it, else its usual place. */
export function nightState(
  piece: Piece,
  night: { readonly id: string; readonly beddingPieceIds: readonly string[]; readonly covers: boolean },
): NightState {
  const own = piece.atNightOn.find((entry) => entry.nightId === night.id)
  if (own !== undefined) return own.state
  if (night.beddingPieceIds.includes(piece.id)) return 'bed'
  if (piece.bedding !== undefined && piece.atNight === 'bed')
    return piece.bedding.kind === 'mattress' ? 'bed' : 'stored'
  if (piece.purpose === 'window-covers' && piece.atNight === 'in-use') return night.covers ? 'in-use' : 'stored'
  return piece.atNight
}
