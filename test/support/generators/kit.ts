/** Random kits that the document accepts. */
import * as fc from 'fast-check'
import type { Bin, Kit, Piece } from '../../../shared/document/index.ts'
import { decimal, int, joined, label, maybe, note, sizeMm } from './values.ts'

export type Names = {
  readonly pieceIds: readonly string[]
  readonly binIds: readonly string[]
  readonly nightIds: readonly string[]
  readonly bayIds: readonly string[]
  readonly travellerIds: readonly string[]
  /** The last pieces are bedding, and the very last is the mattress. */
  readonly beddingIds: readonly string[]
  readonly mattressId: string
}

const one = <T>(values: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...values)

const ACCESS: readonly Piece['access'][number][] = [
  'en-route',
  'on-arrival',
  'evening',
  'night',
  'morning',
  'seldom',
  'emergency',
]
const PHASES: readonly Piece['usedIn'][number][] = [
  'on-the-road',
  'arriving',
  'before-dark',
  'bedtime',
  'morning',
  'check-out',
]
const STATES: readonly Piece['atNight'][] = ['stored', 'in-use', 'stored', 'outside', 'left-behind']
const PURPOSES: readonly Piece['purpose'][] = [
  'adapter',
  'lead',
  'water',
  'food',
  'clothes',
  'light',
  'tools',
  'other',
  'co-alarm',
  'window-covers',
]

const traits: fc.Arbitrary<Piece['traits']> = joined(
  joined(maybe('liquidMl', int(0, 20_000)), maybe('freezesBelowC', decimal(-30, 5))),
  joined(
    joined(maybe('food', fc.boolean()), maybe('fuel', fc.boolean())),
    joined(maybe('lithiumWh', decimal(0, 500)), maybe('mayStandOutside', fc.boolean())),
  ),
)

const beddingOf = (id: string, names: Names): fc.Arbitrary<Piece['bedding']> => {
  if (id === names.mattressId) return fc.record({ kind: fc.constant('mattress' as const), matM2KPerW: decimal(0, 3) })
  if (!names.beddingIds.includes(id)) return fc.constant(undefined)
  return joined(
    fc.record({ kind: fc.constantFrom('bag' as const, 'quilt' as const, 'blanket' as const, 'pillow' as const) }),
    joined(maybe('comfortC', decimal(-20, 15)), maybe('forTravellerId', one(names.travellerIds))),
  )
}

const lock = (names: Names, layout: 'drive' | 'bed'): fc.Arbitrary<Piece['locks'][number]> =>
  fc.record({ layout: fc.constant(layout), bayId: one(names.bayIds) })

const locks = (names: Names): fc.Arbitrary<Piece['locks']> =>
  fc.oneof(
    { weight: 6, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.tuple(lock(names, 'drive')) },
    { weight: 1, arbitrary: fc.tuple(lock(names, 'drive'), lock(names, 'bed')) },
  )

const piece = (id: string, names: Names): fc.Arbitrary<Piece> => {
  const others = names.pieceIds.filter((other) => other !== id)
  const company = others.length === 0 ? fc.constant([]) : fc.uniqueArray(one(others), { maxLength: 2 })
  return fc.tuple(fc.boolean(), company, beddingOf(id, names)).chain(([soft, mates, bedding]) =>
    joined(
      fc.record({
        id: fc.constant(id),
        name: label,
        sizeMm: sizeMm(10, 900),
        massG: int(0, 20_000),
        form: fc.constant(soft ? ('soft' as const) : ('rigid' as const)),
        squeezeTo01: soft ? decimal(0.2, 1) : fc.constant(1),
        upright: fc.uniqueArray(fc.constantFrom('length' as const, 'width' as const, 'height' as const), {
          minLength: 1,
          maxLength: 3,
        }),
        access: fc.uniqueArray(one(ACCESS), { minLength: 1, maxLength: 3 }),
        usedIn: fc.uniqueArray(one(PHASES), { maxLength: 3 }),
        atNight: bedding === undefined ? one(STATES) : fc.constant('bed' as const),
        atNightOn: fc
          .uniqueArray(one(names.nightIds), { maxLength: 1 })
          .chain((nights) =>
            fc.tuple(...nights.map((nightId) => fc.record({ nightId: fc.constant(nightId), state: one(STATES) }))),
          ),
        traits,
        purpose: one(PURPOSES),
        belongsWith: fc.constant(mates.slice(0, 1)),
        apartFrom: fc.constant(mates.slice(1)),
        locks: locks(names),
        spare: fc.boolean(),
      }),
      joined(
        joined(maybe('bearsG', int(0, 50_000)), maybe('note', note)),
        joined(
          names.binIds.length === 0 ? fc.constant({}) : maybe('binId', one(names.binIds)),
          fc.constant(bedding === undefined ? {} : { bedding }),
        ),
      ),
    ),
  )
}

const bin = (id: string, names: Names): fc.Arbitrary<Bin> =>
  fc.tuple(sizeMm(100, 700), fc.boolean()).chain(([size, soft]) =>
    fc.record({
      id: fc.constant(id),
      name: label,
      sizeMm: fc.constant(size),
      innerMm: fc.tuple(int(50, size[0]), int(50, size[1]), int(50, size[2])),
      massG: int(0, 4000),
      form: fc.constant(soft ? ('soft' as const) : ('rigid' as const)),
      squeezeTo01: soft ? decimal(0.2, 1) : fc.constant(1),
      liftLimitG: int(5000, 25_000),
      lid: fc.boolean(),
      locks: locks(names),
    }),
  )

export const arbitraryKit = (names: Names): fc.Arbitrary<Kit> =>
  fc.record({
    pieces: fc.tuple(...names.pieceIds.map((id) => piece(id, names))),
    bins: fc.tuple(...names.binIds.map((id) => bin(id, names))),
    freeShare01: decimal(0, 0.3),
  })
