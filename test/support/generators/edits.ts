/** Random edits of a trip: sensible ones, and fields set to values that may not belong there. */
import * as fc from 'fast-check'
import type { Edit, Trip } from '../../../shared/document/index.ts'
import { dateOf } from './nights.ts'
import { decimal, int, label } from './values.ts'

type Path = readonly (string | number)[]

/** Every path of a value that leads to a plain value, a list or an object. */
export function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inside = Array.isArray(value)
    ? value.flatMap((one: unknown, index) => pathsOf(one, [...path, index]))
    : Object.entries(value).flatMap(([key, one]) => pathsOf(one, [...path, key]))
  return path.length === 0 ? inside : [path, ...inside]
}

const junk = fc.oneof(
  int(-5, 5000),
  decimal(-2, 2),
  fc.boolean(),
  label,
  fc.constantFrom('stored', 'yes', '22:15', '2027-01-31', 'bay-1', 'piece-1', 'night-1', 'traveller-1'),
  fc.constant(null),
  fc.constant([]),
  fc.constant({}),
)

const anywhere = (trip: Trip): fc.Arbitrary<Edit> => {
  const place = fc.constantFrom(...pathsOf(trip))
  return fc.oneof(
    { weight: 4, arbitrary: fc.record({ kind: fc.constant('set-value' as const), path: place, value: junk }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('set-value' as const), path: place }) },
  )
}

const one = <T>(values: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...values)

const onKit = (trip: Trip): fc.Arbitrary<Edit> => {
  const { pieces, bins } = trip.kit
  const pieceId = one(pieces.map((piece) => piece.id))
  const binId = one([...bins.map((bin) => bin.id), 'no-such-bin'])
  return fc.oneof(
    fc.record({ kind: fc.constant('duplicate-piece' as const), pieceId }),
    fc.record({ kind: fc.constant('remove-piece' as const), pieceId }),
    fc.record({ kind: fc.constant('remove-pieces' as const), pieceIds: fc.array(pieceId, { maxLength: 3 }) }),
    fc.record({
      kind: fc.constant('change-pieces' as const),
      pieceIds: fc.array(pieceId, { maxLength: 3 }),
      change: fc.record({ atNight: fc.constantFrom('stored' as const, 'outside' as const, 'left-behind' as const) }),
    }),
    fc.record({
      kind: fc.constant('add-pieces' as const),
      pieces: fc.array(
        fc.tuple(one(pieces), int(1, 4)).map(([piece, at]) => ({ ...piece, id: `${piece.id}-new-${String(at)}` })),
        { maxLength: 3 },
      ),
    }),
    fc.record({ kind: fc.constant('move-to-bin' as const), pieceId, binId: fc.option(binId) }),
    fc.record({ kind: fc.constant('set-spare' as const), pieceId, spare: fc.boolean() }),
    fc.record({
      kind: fc.constant('add-piece' as const),
      piece: one(pieces).map((piece) => ({ ...piece, id: `${piece.id}-new` })),
    }),
    fc.record({ kind: fc.constant('duplicate-bin' as const), binId }),
    fc.record({ kind: fc.constant('remove-bin' as const), binId }),
    fc.record({
      kind: fc.constant('lock' as const),
      unitId: pieceId,
      lock: fc.record({
        layout: fc.constantFrom('drive' as const, 'bed' as const),
        bayId: one(trip.vehicle.bays.map((bay) => bay.id)),
      }),
    }),
    fc.record({ kind: fc.constant('unlock' as const), unitId: pieceId }),
  )
}

const onNights = (trip: Trip): fc.Arbitrary<Edit> => {
  const nightId = one(trip.nights.map((night) => night.id))
  const bedding = trip.kit.pieces.filter((piece) => piece.bedding !== undefined).map((piece) => piece.id)
  return fc.oneof(
    fc.record({
      kind: fc.constant('set-night' as const),
      nightId,
      decision: fc.record({ covers: fc.boolean(), morningMin: int(0, 90) }),
    }),
    fc.record({ kind: fc.constant('choose-bedding' as const), nightId, pieceIds: fc.subarray(bedding) }),
    fc.record({ kind: fc.constant('duplicate-night' as const), nightId }),
    fc.record({ kind: fc.constant('remove-night' as const), nightId }),
    fc.record({
      kind: fc.constant('add-night' as const),
      night: fc
        .tuple(one(trip.nights), int(1, 40))
        .map(([night, day]) => ({ ...night, id: `${night.id}-new`, date: dateOf(day, 0) })),
    }),
    fc.record({
      kind: fc.constant('take-remedy' as const),
      change: fc.oneof(
        fc.record({ kind: fc.constant('set-point' as const), nightId, byK: int(-4, 4) }),
        fc.record({ kind: fc.constant('charge-limit' as const), nightId, to01: decimal(0.5, 1) }),
        fc.record({ kind: fc.constant('window-gap' as const), nightId, toMm: int(0, 60) }),
        fc.record({ kind: fc.constant('stop-on-the-way' as const), nightId, atM: int(0, 200_000) }),
        fc.record({ kind: fc.constant('target-later' as const), nightId, byMin: int(0, 60) }),
      ),
    }),
  )
}

const onLists = (trip: Trip): fc.Arbitrary<Edit> => {
  const nightId = one(trip.nights.map((night) => night.id))
  const id = int(1, 5).map((number) => `own-${String(number)}`)
  const rule = fc.record({
    id,
    phase: fc.constant('bedtime' as const),
    step: label,
    reason: label,
    when: fc.constant(true),
    after: fc.constant([]),
    durationMin: int(0, 30),
    enabled: fc.boolean(),
  })
  return fc.oneof(
    fc.record({
      kind: fc.constant('tick' as const),
      tick: fc.record({
        stepKey: fc.constantFrom('a', 'b', 'c'),
        state: fc.constantFrom('done' as const, 'skipped' as const),
        atUtc: int(0, 9),
      }),
    }),
    fc.record({ kind: fc.constant('untick' as const), stepKey: fc.constantFrom('a', 'b', 'c') }),
    fc.record({ kind: fc.constant('add-lesson' as const), lesson: fc.record({ id, text: label, nightId }) }),
    fc.record({ kind: fc.constant('remove-lesson' as const), lessonId: id }),
    fc.record({ kind: fc.constant('lesson-to-rule' as const), lessonId: id, rule }),
    fc.record({ kind: fc.constant('add-rule' as const), rule }),
    fc.record({ kind: fc.constant('edit-rule' as const), rule }),
    fc.record({ kind: fc.constant('remove-rule' as const), ruleId: id }),
    fc.record({
      kind: fc.constant('switch-rule' as const),
      ruleId: fc.oneof(id, fc.constant('covers')),
      on: fc.boolean(),
    }),
    fc.record({
      kind: fc.constant('add-measurement' as const),
      measured: fc.record({ nightId, moment: fc.constant('bedtime' as const), clock: fc.constant('22:00') }),
    }),
    fc.record({ kind: fc.constant('remove-measurement' as const), index: int(0, 2) }),
    fc.record({
      kind: fc.constant('add-ledger-entry' as const),
      entry: fc.record({
        id,
        date: int(1, 28).map((day) => dateOf(day, 0)),
        kind: fc.constant('food' as const),
        label,
        amountCents: int(0, 900),
      }),
    }),
    fc.record({ kind: fc.constant('remove-ledger-entry' as const), entryId: id }),
    fc.record({
      kind: fc.constant('set-preferences' as const),
      preferences: fc.record({ units: fc.constantFrom('metric' as const, 'us' as const) }),
    }),
  )
}

/** One edit of any kind; about one in three is refused. */
export const arbitraryEdit = (trip: Trip): fc.Arbitrary<Edit> =>
  fc.oneof(anywhere(trip), onKit(trip), onNights(trip), onLists(trip))

type Named = { readonly id: string }

/** Something that others speak of is taken out, takes the id of another, or holds no load any more, without anybody being told. */
export function arbitraryTear(trip: Trip): fc.Arbitrary<Edit> {
  const named: readonly (readonly [Path, readonly Named[]])[] = [
    [['kit', 'pieces'], trip.kit.pieces],
    [['kit', 'bins'], trip.kit.bins],
    [['nights'], trip.nights],
    [['travellers'], trip.travellers],
    [['vehicle', 'bays'], trip.vehicle.bays],
    [['vehicle', 'bedHeaters'], trip.vehicle.bedHeaters],
    [['checklist', 'rules'], trip.checklist.rules],
  ]
  const tears = named.flatMap(([list, items]) =>
    items.flatMap((_, index): Edit[] => [
      { kind: 'set-value', path: [...list, index] },
      ...items.map(({ id }): Edit => ({ kind: 'set-value', path: [...list, index, 'id'], value: id })),
      { kind: 'set-value', path: [...list, index, 'id'], value: 'another-name' },
    ]),
  )
  const shut = trip.vehicle.bays.map((_, index): Edit => ({
    kind: 'set-value',
    path: ['vehicle', 'bays', index, 'usable', 'drive'],
    value: false,
  }))
  return fc.oneof({ weight: 6, arbitrary: one(tears) }, { weight: 1, arbitrary: one(shut) })
}
