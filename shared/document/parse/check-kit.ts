/** Does the kit make sense: ids, bins, fixed places, company? */
import type { DocumentPath, Problem } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Bin, Piece } from '../schema/kit.ts'
import type { Bay } from '../schema/vehicle.ts'
import { AXES, found, idSet, idsTwice, placed, unknownId } from './checks.ts'

/** Nothing is thinner than this, mm: a fixed place without a size of its own needs at least so much. */
const LEAST_SIDE_MM = 1

type Known = {
  readonly bins: ReadonlySet<string>
  readonly units: ReadonlySet<string>
  readonly nights: ReadonlySet<string>
  readonly travellers: ReadonlySet<string>
  readonly bays: ReadonlyMap<string, Bay>
}

/** `before`: a trip without problems from which this one was made; a piece of it is not read again where all that it may point at is still there. */
export function checkKit(trip: Trip, before: Trip | null): readonly Problem[] {
  const { pieces, bins } = trip.kit
  const known: Known = {
    bins: idSet(bins),
    units: idSet([...bins, ...pieces]),
    nights: idSet(trip.nights),
    travellers: idSet(trip.travellers),
    bays: new Map(trip.vehicle.bays.map((bay) => [bay.id, bay])),
  }
  const sound = new Set(before !== null && nothingGone(trip, before, known) ? before.kit.pieces : [])
  // A bin and a piece share one name space: as packed, both are units.
  const someTwice = known.units.size < pieces.length + bins.length
  return [
    ...(someTwice ? idsTwice([...placed(pieces, 'kit', 'pieces'), ...placed(bins, 'kit', 'bins')]) : []),
    ...pieces.flatMap((piece, index) => (sound.has(piece) ? [] : checkPiece(piece, ['kit', 'pieces', index], known))),
    ...bins.flatMap((bin, index) => checkBin(bin, ['kit', 'bins', index], known)),
  ]
}

const nothingGone = (trip: Trip, before: Trip, known: Known): boolean =>
  trip.vehicle.bays === before.vehicle.bays &&
  allIn(before.kit.bins, known.bins) &&
  allIn(before.kit.pieces, known.units) &&
  allIn(before.nights, known.nights) &&
  allIn(before.travellers, known.travellers)

const allIn = (items: readonly { readonly id: string }[], ids: ReadonlySet<string>): boolean =>
  items.every(({ id }) => ids.has(id))

function checkPiece(piece: Piece, path: DocumentPath, known: Known): readonly Problem[] {
  const company = (['belongsWith', 'apartFrom'] as const).flatMap((list) =>
    piece[list].flatMap((id, index) => {
      const at = [...path, list, index]
      return id === piece.id
        ? [found('reference-to-itself', at, id, { piece: piece.name })]
        : unknownId(id, known.units, 'unit', at)
    }),
  )
  const torn = piece.belongsWith.findIndex((id) => piece.apartFrom.includes(id))
  const nights = piece.atNightOn.flatMap(({ nightId }, index) => {
    const at = [...path, 'atNightOn', index, 'nightId']
    const before = piece.atNightOn.findIndex((one) => one.nightId === nightId)
    return before < index
      ? [found('night-twice', at, nightId, { piece: piece.name })]
      : unknownId(nightId, known.nights, 'night', at)
  })
  return [
    ...unknownId(piece.binId, known.bins, 'bin', [...path, 'binId']),
    ...company,
    ...(torn >= 0
      ? [found('with-and-apart', [...path, 'belongsWith', torn], piece.belongsWith[torn], { piece: piece.name })]
      : []),
    ...nights,
    ...unknownId(piece.bedding?.forTravellerId, known.travellers, 'traveller', [...path, 'bedding', 'forTravellerId']),
    ...(piece.form === 'rigid' && piece.squeezeTo01 < 1
      ? [found('rigid-squeezed', [...path, 'squeezeTo01'], piece.squeezeTo01, { piece: piece.name })]
      : []),
    ...checkLocks(piece, path, known),
  ]
}

function checkBin(bin: Bin, path: DocumentPath, known: Known): readonly Problem[] {
  const axis = AXES.find((each) => bin.innerMm[each] > bin.sizeMm[each])
  return [
    ...(axis !== undefined
      ? [
          found('bin-inside-larger', [...path, 'innerMm', axis], bin.innerMm[axis], {
            bin: bin.name,
            maximum: String(bin.sizeMm[axis]),
          }),
        ]
      : []),
    ...(bin.form === 'rigid' && bin.squeezeTo01 < 1
      ? [found('rigid-squeezed', [...path, 'squeezeTo01'], bin.squeezeTo01, { piece: bin.name })]
      : []),
    ...checkLocks(bin, path, known),
  ]
}

function checkLocks(unit: Piece | Bin, path: DocumentPath, known: Known): readonly Problem[] {
  return unit.locks.flatMap((lock, index) => {
    const at = [...path, 'locks', index]
    const bay = known.bays.get(lock.bayId)
    if (bay === undefined)
      return [found('reference-unknown', [...at, 'bayId'], lock.bayId, { id: lock.bayId, what: 'bay' })]
    if (unit.locks.findIndex((one) => one.layout === lock.layout) < index) {
      return [found('lock-twice', [...at, 'layout'], lock.layout, { piece: unit.name })]
    }
    if (!bay.usable[lock.layout]) {
      return [
        found('lock-bay-not-usable', [...at, 'bayId'], lock.bayId, {
          piece: unit.name,
          bay: bay.name,
          layout: lock.layout,
        }),
      ]
    }
    const { atMm, sizeMm } = lock
    const outside =
      atMm !== undefined &&
      AXES.some((axis) => atMm[axis] < 0 || atMm[axis] + (sizeMm?.[axis] ?? LEAST_SIDE_MM) > bay.sizeMm[axis])
    return outside
      ? [
          found('lock-outside-bay', [...at, 'atMm'], atMm, {
            piece: unit.name,
            bay: bay.name,
            size: bay.sizeMm.join(' × '),
          }),
        ]
      : []
  })
}
