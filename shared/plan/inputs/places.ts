/** Names of places in words: the bay a unit is in, and where it is when no bay holds it. */
import type { Trip } from '../../document/index.ts'
import type { AwayPlace, Layout, PackingOutcome, Placement } from '../../packing/index.ts'

export type Places = {
  /** Unit that a piece rides in; the piece itself where it is loose. */
  readonly unitOf: (pieceId: string) => string
  readonly nameOf: (unitOrPieceId: string) => string
  readonly bayName: (bayId: string) => string
  /** Where a piece is in a layout; empty where no bay holds it. */
  readonly placeOf: (layout: Layout, pieceId: string) => string
  readonly bayOf: (layout: Layout, pieceId: string) => string | null
  readonly words: (place: Placement | AwayPlace) => string
}

export function places(trip: Trip, packing: PackingOutcome): Places {
  const names = new Map<string, string>([...trip.kit.pieces, ...trip.kit.bins].map(({ id, name }) => [id, name]))
  const bays = new Map<string, string>(trip.vehicle.bays.map(({ id, name }) => [id, name]))
  const units = new Map<string, string>(
    packing.units.flatMap((unit) => unit.pieceIds.map((pieceId) => [pieceId, unit.id] as const)),
  )
  const unitOf = (pieceId: string): string => units.get(pieceId) ?? pieceId
  const bayName = (bayId: string): string => bays.get(bayId) ?? bayId
  const bayOf = (layout: Layout, pieceId: string): string | null => {
    // What is out of its bin that night is not where the bin is: fuel would be sent back to where people sleep.
    if (layout.away.some((away) => away.unitId === pieceId)) return null
    const unitId = unitOf(pieceId)
    return (
      layout.placements.find((placement) => placement.unitId === unitId || placement.unitId === pieceId)?.bayId ?? null
    )
  }
  return {
    unitOf,
    nameOf: (id) => names.get(id) ?? id,
    bayName,
    bayOf,
    placeOf: (layout, pieceId) => {
      const bayId = bayOf(layout, pieceId)
      return bayId === null ? '' : bayName(bayId)
    },
    words: (place) => ('bayId' in place ? bayName(place.bayId) : place.state),
  }
}
