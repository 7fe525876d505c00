/** A sample trip with pieces left out, grown or shrunk, made heavier, and a colder night: a load that a real vehicle mostly holds. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { parseTrip } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'

const NAMES = ['bats-by-the-quarry', 'ridge-run-with-a-dog'] as const
/** Changes repeat over the kit: a pattern of this many pieces. */
const PATTERN = 7

function read(name: string): Trip {
  const parsed = parseTrip(readFileSync(new URL(`../../../assets/samples/${name}.trip.json`, import.meta.url)))
  if (!parsed.ok) throw new Error(`${name} does not parse`)
  return parsed.value
}

type Change = { readonly kept: boolean; readonly size: number; readonly mass: number }

function changed(trip: Trip, pattern: readonly Change[], coldMarginK: number): Trip {
  const pieces = trip.kit.pieces.map((piece, at) => {
    const change = pattern[at % pattern.length]
    if (change === undefined || piece.bedding !== undefined) return piece
    const [length, width, height] = piece.sizeMm
    const scaled = (edge: number): number => Math.max(1, Math.round(edge * change.size))
    return {
      ...piece,
      spare: piece.spare || !change.kept,
      sizeMm: [scaled(length), scaled(width), scaled(height)] as const,
      massG: Math.round(piece.massG * change.mass),
      locks: [],
    }
  })
  const nights = trip.nights.map((night) => ({ ...night, weather: { ...night.weather, coldMarginK } }))
  return { ...trip, kit: { ...trip.kit, pieces }, nights }
}

export const sampleVariant: fc.Arbitrary<Trip> = fc
  .record({
    name: fc.constantFrom(...NAMES),
    pattern: fc.array(
      fc.record({
        kept: fc.boolean(),
        size: fc.double({ min: 0.6, max: 1.1, noNaN: true }),
        mass: fc.double({ min: 0.5, max: 2, noNaN: true }),
      }),
      { minLength: PATTERN, maxLength: PATTERN },
    ),
    coldMarginK: fc.integer({ min: 0, max: 12 }),
  })
  .map(({ name, pattern, coldMarginK }) => changed(read(name), pattern, coldMarginK))
