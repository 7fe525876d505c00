/** Bins filled by hand-made cases: what goes in and where, what is sorted in beside it, what is left out and what would help. */
import { describe, expect, it } from 'vitest'
import { packBins } from '../../../shared/packing/bins.ts'
import type { PackBin, PackingInput, PackNight, PackPiece, PackTraits, Vec3 } from '../../../shared/packing/index.ts'
import { plainBin, plainInput, plainNight, plainPiece } from '../../support/generators/planted-load.ts'

/** Six litres inside: 300 by 200 by 100 mm. */
const crate: PackBin = plainBin('crate', [320, 220, 120], [300, 200, 100])
const SEED = 3
const fill = (pieces: readonly PackPiece[], bins: readonly PackBin[] = [crate], change: Partial<PackingInput> = {}) =>
  packBins(plainInput([], pieces, { bins, ...change }), SEED)

const flat = (id: string, sizeMm: Vec3, change: Partial<PackPiece> = {}): PackPiece =>
  plainPiece(id, sizeMm, { binId: 'crate', uprightEdges: [2], ...change })
const withTraits = (piece: PackPiece, traits: Partial<PackTraits>): PackPiece => ({
  ...piece,
  traits: { ...piece.traits, ...traits },
})

describe('a bin with its own pieces', () => {
  it('holds each at a place in its own frame', () => {
    const { inner, pieces, tooMany } = fill([flat('base', [300, 200, 60]), flat('lid', [300, 200, 40])])
    expect(tooMany).toEqual([])
    expect(pieces.map(({ id, binId }) => [id, binId])).toEqual([
      ['base', 'crate'],
      ['lid', 'crate'],
    ])
    expect(inner).toHaveLength(1)
    expect(inner[0]?.binId).toBe('crate')
    const heights = new Map(inner[0]?.placements.map(({ unitId, atMm }) => [unitId, atMm[2]]))
    // One lies on the other, whichever is below: 60 over 40 or 40 over 60.
    expect([
      [0, 60],
      [40, 0],
    ]).toContainEqual([heights.get('base'), heights.get('lid')])
    for (const { bayId, atMm, sizeMm, edges } of inner[0]?.placements ?? []) {
      expect([bayId, atMm.slice(0, 2), sizeMm.slice(0, 2), edges]).toEqual(['crate', [0, 0], [300, 200], [0, 1, 2]])
    }
  })

  it('is listed though it is empty', () => {
    expect(fill([])).toEqual({ inner: [{ binId: 'crate', placements: [] }], pieces: [], tooMany: [] })
  })

  it('turns a piece as it may stand', () => {
    const { inner, tooMany } = fill([flat('flask', [90, 80, 250], { uprightEdges: [0] })])
    expect(tooMany).toEqual([])
    expect(inner[0]?.placements[0]?.sizeMm[2]).toBe(90)
  })

  it('takes what is heavy, valuable, must be held or is locked elsewhere by day: its lid and the bin answer for that', () => {
    const heavy = withTraits(
      flat('safe', [300, 200, 100], {
        massG: 5_000_000,
        locks: [{ layout: 'drive', bayId: 'boot', atMm: [0, 0, 0], sizeMm: null }],
      }),
      { valuable: true, needsRestraint: true },
    )
    const low = plainInput([], [heavy], { bins: [crate] })
    const { inner, tooMany } = packBins({ ...low, vehicle: { ...low.vehicle, seatBackHeightMm: 0 } }, SEED)
    expect(tooMany).toEqual([])
    expect(inner[0]?.placements.map(({ unitId }) => unitId)).toEqual(['safe'])
  })

  it('has what leaks below what that would spoil', () => {
    const can = withTraits(flat('can', [300, 200, 40]), { liquidMl: 1000 })
    const papers = withTraits(flat('papers', [300, 200, 60]), { valuable: true })
    const { inner, tooMany } = fill([papers, can])
    expect(tooMany).toEqual([])
    expect(new Map(inner[0]?.placements.map(({ unitId, atMm }) => [unitId, atMm[2]]))).toEqual(
      new Map([
        ['can', 0],
        ['papers', 40],
      ]),
    )
  })

  it('has nothing on what bears nothing', () => {
    const frail = { bearsG: 0 }
    const { tooMany } = fill([flat('a', [300, 200, 50], frail), flat('b', [300, 200, 50], frail)])
    expect(tooMany).toHaveLength(1)
    const { tooMany: none } = fill([flat('a', [300, 200, 50], frail), flat('b', [300, 200, 50])])
    expect(none).toEqual([])
  })

  it('is solved by itself: nights and other bays have no say', () => {
    const night: PackNight = {
      id: 'n',
      states: { base: 'left-behind' },
      lowTempC: {},
      highTempC: {},
      outsideStorage: false,
      foodBayIds: [],
    }
    const { inner } = fill([flat('base', [300, 200, 60])], [crate], { nights: [night], freeShare01: 0.9 })
    expect(inner[0]?.placements.map(({ unitId }) => unitId)).toEqual(['base'])
  })
})

describe('a piece that does not go into its bin', () => {
  it('is told by name, with the bin, the rule and what would help, and travels no further', () => {
    const wide = flat('wide', [300, 200, 100])
    const late = flat('late', [90, 190, 90])
    const { pieces, tooMany, inner } = fill([wide, late])
    expect(pieces.map(({ id }) => id)).toEqual(['wide'])
    expect(inner[0]?.placements.map(({ unitId }) => unitId)).toEqual(['wide'])
    expect(tooMany).toEqual([
      {
        unitId: 'late',
        layout: 'drive',
        nightId: null,
        why: [{ bayId: 'crate', rule: 'no-room', shortByMm: null }],
        cure: { kind: 'leave-behind', unitIds: ['wide'] },
      },
    ])
  })

  it('is offered the emptied bin where no single other makes room', () => {
    const halves = [flat('left', [150, 200, 100]), flat('right', [150, 200, 100])]
    const { tooMany } = fill([...halves, flat('whole', [300, 200, 100])])
    expect(tooMany.map(({ unitId, cure }) => [unitId, cure])).toEqual([
      ['whole', { kind: 'empty-bin', binId: 'crate' }],
    ])
  })

  it('is offered the turn that leaves what the bin holds in place', () => {
    // 190 mm is too high for the bin; lying, 90 of length are left beside the other, and it is 80 or 90 high and as wide.
    const beside = flat('beside', [210, 200, 100])
    const flask = flat('flask', [80, 90, 190])
    const { tooMany } = fill([beside, flask])
    expect(tooMany.map(({ unitId, why, cure }) => [unitId, why[0]?.rule, cure])).toEqual([
      ['flask', 'does-not-fit', { kind: 'turn', edge: 0 }],
    ])
    const allowed = fill([beside, { ...flask, uprightEdges: [0, 2] }])
    expect(allowed.tooMany).toEqual([])
    // 105 by 190 lying goes nowhere beside 210 of 300, and stands 105 high on its other side: no single change helps. Beside 190 it lies.
    const tall = fill([beside, flat('slab', [105, 80, 190])])
    expect(tall.tooMany.map(({ cure }) => cure)).toEqual([null])
    const second = fill([flat('beside', [190, 200, 100]), flat('slab', [105, 80, 190])])
    expect(second.tooMany.map(({ cure }) => cure)).toEqual([{ kind: 'turn', edge: 1 }])
  })

  it('is offered the first other bin that takes it beside what is in there, up to what can be lifted', () => {
    const pieces = (held: Partial<PackPiece> = {}): readonly PackPiece[] => [
      flat('wide', [300, 200, 90], { massG: 100 }),
      flat('late', [150, 200, 90], { massG: 2000 }),
      flat('cups', [150, 200, 90], { massG: 3000, binId: 'second', ...held }),
    ]
    const cureOf = (bins: readonly PackBin[], held: Partial<PackPiece> = {}): unknown =>
      fill(pieces(held), bins).tooMany[0]?.cure
    const second: PackBin = { ...crate, id: 'second' }
    const third: PackBin = { ...crate, id: 'third' }
    const leave = { kind: 'leave-behind', unitIds: ['wide'] }
    expect(cureOf([crate, second, third])).toEqual({ kind: 'other-bin', binId: 'second' })
    expect(cureOf([crate, third, second])).toEqual({ kind: 'other-bin', binId: 'third' })
    // 500 the bin, 3000 and 2000 in it.
    expect(cureOf([crate, { ...second, liftLimitG: 5500 }])).toEqual({ kind: 'other-bin', binId: 'second' })
    expect(cureOf([crate, { ...second, liftLimitG: 5499 }])).toEqual(leave)
    expect(cureOf([crate, { ...third, liftLimitG: 2500 }])).toEqual({ kind: 'other-bin', binId: 'third' })
    expect(cureOf([crate, { ...third, liftLimitG: 2499 }])).toEqual(leave)
    expect(cureOf([crate, second], { sizeMm: [160, 200, 90] })).toEqual(leave)
    expect(cureOf([crate, second], { apartFrom: ['late'] })).toEqual(leave)
  })

  it('is not offered a bin of another larder or with another danger, only an empty one', () => {
    const second: PackBin = { ...crate, id: 'second' }
    const dangers: readonly Partial<PackTraits>[] = [{ food: true }, { fuel: true }]
    for (const danger of dangers) {
      const cureOf = (late: Partial<PackTraits>, held: Partial<PackTraits> | null): unknown =>
        fill(
          [
            flat('wide', [300, 200, 90]),
            withTraits(flat('late', [150, 200, 90]), late),
            ...(held === null ? [] : [withTraits(flat('cups', [150, 200, 90], { binId: 'second' }), held)]),
          ],
          [crate, second],
        ).tooMany.find(({ unitId }) => unitId === 'late')?.cure
      const there = { kind: 'other-bin', binId: 'second' }
      expect([danger, cureOf(danger, danger)]).toEqual([danger, there])
      expect([danger, cureOf(danger, null)]).toEqual([danger, there])
      expect([danger, cureOf(danger, {})]).not.toEqual([danger, there])
      expect([danger, cureOf({}, danger)]).not.toEqual([danger, there])
    }
  })
})

describe('loose small pieces', () => {
  /** Half a litre held by the crate, wanted seldom or in the morning. */
  const held = flat('held', [100, 100, 50], { massG: 1000, access: ['seldom', 'morning'] })
  const small = (id: string, change: Partial<PackPiece> = {}): PackPiece =>
    plainPiece(id, [100, 100, 50], { massG: 300, ...change })
  const sorted = (
    loose: readonly PackPiece[],
    own: readonly PackPiece[] = [held],
    bins: readonly PackBin[] = [crate],
  ) => {
    const { pieces, inner, tooMany } = fill([...own, ...loose], bins)
    const into = pieces
      .filter(({ id, binId }) => binId !== null && loose.some((each) => each.id === id))
      .map(({ id }) => id)
    const placed = inner.flatMap(({ placements }) => placements.map(({ unitId }) => unitId))
    expect(placed.toSorted()).toEqual([...own.map(({ id }) => id), ...into].toSorted())
    expect(tooMany).toEqual([])
    return into
  }

  it('are sorted into a bin that holds something wanted at the same moments', () => {
    expect(sorted([small('a')])).toEqual(['a'])
    expect(sorted([small('a', { access: ['morning'] }), small('b', { access: ['morning', 'seldom'] })])).toEqual([
      'a',
      'b',
    ])
    expect(sorted([small('a', { access: ['morning', 'evening'] })])).toEqual([])
    expect(sorted([small('a', { access: ['evening'] })])).toEqual([])
    expect(sorted([small('a')], [])).toEqual([])
  })

  it('stay loose where the traveller has fixed their place or wants them in the night', () => {
    const lock = { layout: 'bed', bayId: 'boot', atMm: null, sizeMm: null } as const
    expect(sorted([small('a', { locks: [lock] })])).toEqual([])
    const nightly = flat('nightly', [100, 100, 50], { access: ['night'] })
    expect(sorted([small('a', { access: ['night'] })], [nightly])).toEqual([])
  })

  it('are no larger than a fifth of the bin', () => {
    // A fifth of six litres is 1.2: 100 by 120 by 100 mm.
    expect(sorted([small('a', { sizeMm: [100, 120, 100] })])).toEqual(['a'])
    expect(sorted([small('a', { sizeMm: [101, 120, 100] })])).toEqual([])
  })

  it('stay loose where they are elsewhere on any night', () => {
    const night = (states: PackNight['states']): PackNight => plainNight('n', { states })
    const into = (nights: readonly PackNight[]): readonly (string | null)[] =>
      fill([held, small('a')], [crate], { nights }).pieces.map(({ binId }) => binId)
    expect(into([night({}), night({ a: 'stored' })])).toEqual(['crate', 'crate'])
    expect(into([night({}), night({ a: 'in-use' })])).toEqual(['crate', null])
    expect(into([night({ a: 'outside' }), night({})])).toEqual(['crate', null])
  })

  it('share larder and dangers with what the bin holds', () => {
    const dangers: readonly Partial<PackTraits>[] = [
      { food: true },
      { scented: true },
      { fuel: true },
      { wetAfterUse: true },
    ]
    for (const danger of dangers) {
      const into = (loose: Partial<PackTraits>, own: Partial<PackTraits>): readonly string[] =>
        sorted([withTraits(small('a'), loose)], [withTraits(held, own)])
      expect([danger, into(danger, danger), into(danger, {}), into({}, danger)]).toEqual([danger, ['a'], [], []])
    }
    // One of several is enough for the bin to be a larder.
    const plain = flat('plain', [50, 50, 50])
    expect(sorted([withTraits(small('a'), { food: true })], [plain, withTraits(held, { food: true })])).toEqual(['a'])
    expect(sorted([withTraits(small('a'), { scented: true })], [withTraits(held, { food: true })])).toEqual(['a'])
  })

  it('bring nothing new for the bin to mind', () => {
    const news: readonly Partial<PackTraits>[] = [
      { liquidMl: 1 },
      { valuable: true },
      { lithiumWh: 1 },
      { freezesBelowC: 0 },
      { spoilsAboveC: 30 },
      { needsRestraint: true },
    ]
    for (const one of news) expect([one, sorted([withTraits(small('a'), one)])]).toEqual([one, []])
    expect(sorted([withTraits(small('a'), { fragile: true, mayStandOutside: true })])).toEqual(['a'])
  })

  it('are kept apart from what either names', () => {
    expect(sorted([small('a', { apartFrom: ['held'] })])).toEqual([])
    expect(sorted([small('a')], [{ ...held, apartFrom: ['a'] }])).toEqual([])
    expect(sorted([small('a', { apartFrom: ['other'] })])).toEqual(['a'])
  })

  it('go in while the bin can be lifted, the larger first', () => {
    // 500 the bin, 1000 held: 300 more for each.
    const bigger = small('bigger', { sizeMm: [100, 100, 60] })
    const limit = (liftLimitG: number): readonly string[] =>
      sorted([small('smaller'), bigger], [held], [{ ...crate, liftLimitG }])
    expect(limit(2100)).toEqual(['smaller', 'bigger'])
    expect(limit(2099)).toEqual(['bigger'])
    expect(limit(1800)).toEqual(['bigger'])
    expect(limit(1799)).toEqual([])
    // What is too heavy does not keep the next from going in.
    expect(
      sorted(
        [small('lead', { massG: 5000, sizeMm: [100, 100, 60] }), small('a')],
        [held],
        [{ ...crate, liftLimitG: 2000 }],
      ),
    ).toEqual(['a'])
  })

  it('go in while there is room, eight at most', () => {
    const tight = flat('tight', [300, 200, 95])
    expect(sorted([small('a')], [tight])).toEqual([])
    expect(sorted([small('thin', { sizeMm: [200, 150, 5] }), small('a')], [tight])).toEqual(['thin'])
    const ten = Array.from({ length: 10 }, (_, at) => small(`small-${at}`, { sizeMm: [40, 40, 40], massG: 10 }))
    expect(sorted(ten)).toHaveLength(8)
  })

  it('go into the first bin only, and leave what has a bin of its own in it', () => {
    const second: PackBin = { ...crate, id: 'second' }
    const there = flat('there', [100, 100, 50], { binId: 'second' })
    const { pieces } = fill([held, there, small('a')], [crate, second])
    expect(pieces.map(({ id, binId }) => [id, binId])).toEqual([
      ['held', 'crate'],
      ['there', 'second'],
      ['a', 'crate'],
    ])
  })
})
