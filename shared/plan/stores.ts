/** What the trip uses up from night to night: water, food, clean clothes; and by how much a night falls short, seen the day before. */
import type { Night, Piece, Trip } from '../document/index.ts'
import type { MassReport } from '../packing/index.ts'
import { loadedPieces } from './load.ts'
import type { NightStores } from './types.ts'

/** Drinking and a little cooking where the site has a tap, in frost: 2.5 to 3 l and 1 to 2 l, common practice. */
export const WATER_PER_PERSON_NIGHT_ML = 4000
/** Food as carried in a vehicle, part dry, part fresh: 0.7 to 1 kg a day, common practice. */
const FOOD_PER_PERSON_NIGHT_G = 850
/** 1 ml of water weighs 1 g. */
const G_PER_ML = 1

const sumOf = <T>(list: readonly T[], of: (one: T) => number): number => list.reduce((sum, one) => sum + of(one), 0)

const massOf = (pieces: readonly Piece[], purpose: Piece['purpose']): number =>
  sumOf(
    pieces.filter((piece) => piece.purpose === purpose),
    ({ massG }) => massG,
  )

/** Water on board in drinking bottles and cans, ml. */
export const waterOnBoardMl = (pieces: readonly Piece[]): number =>
  sumOf(
    pieces.filter(({ purpose }) => purpose === 'water'),
    ({ traits }) => traits.liquidMl ?? 0,
  )

type Stock = { readonly waterMl: number; readonly foodG: number }

/**
 * Stores of each night, from full at home on. A night's day runs from arriving to arriving at the next site; what is taken
 * on at a site counts from the next night. Nobody is counted as eating from the load where the load has no food.
 */
export function nightStores(trip: Trip, mass: MassReport): readonly NightStores[] {
  const pieces = loadedPieces(trip)
  const people = trip.travellers.length
  const full: Stock = { waterMl: waterOnBoardMl(pieces), foodG: massOf(pieces, 'food') }
  const clothesG = massOf(pieces, 'clothes')
  const wanted: Stock = {
    waterMl: full.waterMl > 0 ? people * WATER_PER_PERSON_NIGHT_ML : 0,
    foodG: full.foodG > 0 ? people * FOOD_PER_PERSON_NIGHT_G : 0,
  }
  let now = full
  return trip.nights.map((night, index): NightStores => {
    const start = now
    const left: Stock = {
      waterMl: Math.max(0, start.waterMl - wanted.waterMl),
      foodG: Math.max(0, start.foodG - wanted.foodG),
    }
    now = takenOn(left, night, full)
    const usedUpG = (full.waterMl - left.waterMl) * G_PER_ML + (full.foodG - left.foodG)
    return {
      nightId: night.id,
      waterMl: start.waterMl,
      waterShortMl: Math.max(0, wanted.waterMl - start.waterMl),
      waterLeftMl: left.waterMl,
      foodG: start.foodG,
      foodShortG: Math.max(0, wanted.foodG - start.foodG),
      foodLeftG: left.foodG,
      // One set a night: by the last night all that was brought has been worn.
      dirtyG: Math.round((clothesG * (index + 1)) / trip.nights.length),
      loadG: mass.loadG - usedUpG,
      payloadMarginG: mass.payloadG - mass.loadG + usedUpG,
    }
  })
}

/** Cans hold no more than they held; food may be bought beyond what came along. */
const takenOn = (left: Stock, { takenOn: taken }: Night, full: Stock): Stock => ({
  waterMl: Math.min(full.waterMl, left.waterMl + (taken?.waterMl ?? 0)),
  foodG: left.foodG + (taken?.foodG ?? 0),
})
