/** Facts of the load: what is where tonight, what frost or heat would harm, what is loose, wet, wanted at night. */
import { unusedPieces } from '../../checklist/index.ts'
import type { ChecklistFacts, PlacedThing } from '../../checklist/index.ts'
import type { Night, Piece, Trip } from '../../document/index.ts'
import type { Layout, PackCaution, PackingOutcome } from '../../packing/index.ts'
import { isKeptAlways, loadedPieces, nightState } from '../load.ts'
import { asOne, byPlace, placesOf } from './grouped.ts'
import { places } from './places.ts'

const NOWHERE: Layout = { placements: [], away: [] }

export function loadFacts(trip: Trip, packing: PackingOutcome, night: Night): ChecklistFacts['load'] {
  const pieces = loadedPieces(trip)
  const at = places(trip, packing)
  const packed = packing.nights.find(({ nightId }) => nightId === night.id)
  const bed = packed?.bed ?? NOWHERE
  const named = (piece: Piece): { id: string; name: string } => ({ id: piece.id, name: piece.name })
  const byNight = (piece: Piece): PlacedThing => ({ ...named(piece), place: at.placeOf(bed, piece.id) })
  const byDay = (piece: Piece): PlacedThing => ({ ...named(piece), place: at.placeOf(packing.drive, piece.id) })
  const states = new Map(pieces.map((piece) => [piece.id, nightState(piece, night)]))
  const inState = (state: string): readonly Piece[] => pieces.filter(({ id }) => states.get(id) === state)
  const cautioned = (code: PackCaution['code']): readonly PlacedThing[] =>
    packing.cautions
      .filter((caution) => caution.code === code)
      .map(({ unitId, bayId }) => ({ id: unitId, name: at.nameOf(unitId), place: at.bayName(bayId) }))
  const lowC = night.weather.lowC - night.weather.coldMarginK
  const keepAlways = new Set(pieces.filter(isKeptAlways).map(({ id }) => id))
  return {
    unrestrained: cautioned('unrestrained'),
    aboveSeatBack: cautioned('above-seat-back'),
    fuelInCabin: cautioned('fuel-in-cabin'),
    fuel: pieces.filter(({ traits }) => traits.fuel === true).map(byNight),
    unplaced: [...new Set([...packing.driveUnplaced, ...(packed?.unplaced ?? [])].map(({ unitId }) => unitId))].map(
      (id) => ({ id, name: at.nameOf(id) }),
    ),
    freezing: byPlace(
      pieces.flatMap((piece) => {
        const { freezesBelowC } = piece.traits
        return freezesBelowC !== undefined && lowC < freezesBelowC ? [{ ...byNight(piece), freezesBelowC }] : []
      }),
    ).map(([group, members]) => ({
      ...group,
      freezesBelowC: Math.max(...members.map(({ freezesBelowC }) => freezesBelowC)),
    })),
    spoiling: pieces.flatMap((piece) => {
      const { spoilsAboveC } = piece.traits
      return spoilsAboveC !== undefined && night.weather.highC > spoilsAboveC ? [{ ...byDay(piece), spoilsAboveC }] : []
    }),
    food: placesOf(pieces.filter(({ traits }) => traits.food === true || traits.scented === true).map(byNight)),
    lithium: asOne(pieces.filter(({ traits }) => (traits.lithiumWh ?? 0) > 0).map(named)),
    wet: asOne(pieces.filter(({ traits }) => traits.wetAfterUse === true).map(named)),
    bed: inState('bed').map(named),
    inUse: inState('in-use').map(named),
    outside: inState('outside').map(named),
    mustCarry: placesOf(pieces.filter(({ traits }) => traits.mustCarry === true).map(byDay)),
    emergency: pieces.filter(({ access }) => access.includes('emergency')).map(byDay),
    nightReach: placesOf(
      pieces.filter((piece) => piece.access.includes('night') && states.get(piece.id) === 'stored').map(byNight),
    ),
    valuables: pieces.filter(({ traits }) => traits.valuable === true).map(named),
    heavyBins: heavyBins(trip, packing),
    looseAtNightBesideDriver: false,
    movesAtDusk: packed?.changeover.moves.length ?? 0,
    movesInMorning: packed?.changeback.moves.length ?? 0,
    unused: unusedPieces(
      trip.checklist.lessons.flatMap(({ unusedPieceIds }) =>
        unusedPieceIds === undefined ? [] : [{ unusedPieceIds }],
      ),
      keepAlways,
    ).flatMap((id) => pieces.filter((piece) => piece.id === id).map(named)),
  }
}

function heavyBins(trip: Trip, packing: PackingOutcome): ChecklistFacts['load']['heavyBins'] {
  return packing.units.flatMap((unit) => {
    const bin = trip.kit.bins.find(({ id }) => id === unit.id)
    return bin !== undefined && unit.massG > bin.liftLimitG ? [{ id: bin.id, name: bin.name, massG: unit.massG }] : []
  })
}
