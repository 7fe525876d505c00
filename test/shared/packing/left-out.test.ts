/** What is left out, in one or two bays of a few boxes: its reason in each bay, what is missing, and the smallest change, each worked out by hand. */
import { describe, expect, it } from 'vitest'
import { explainAll } from '../../../shared/packing/explain.ts'
import { packLoad } from '../../../shared/packing/index.ts'
import type {
  PackBay,
  PackingInput,
  PackNight,
  PackPiece,
  PackTraits,
  RuleCode,
  UnitCure,
  Vec3,
} from '../../../shared/packing/index.ts'
import { stateFrom } from '../../../shared/packing/layout.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import { missingFrom } from '../../../shared/packing/search/build.ts'
import { plainBay, plainInput, plainNight, plainPiece } from '../../support/generators/planted-load.ts'

const boot = plainBay('boot', [0, 0, 0], [300, 200, 100])
const flat = (id: string, sizeMm: Vec3, change: Partial<PackPiece> = {}): PackPiece =>
  plainPiece(id, sizeMm, { uprightEdges: [2], ...change })
const night: PackNight = plainNight('night')

type Told = readonly [
  unitId: string,
  why: readonly (readonly [string, RuleCode, number | null])[],
  cure: UnitCure | null,
]

const leftOut = (
  pieces: readonly PackPiece[],
  bays: readonly PackBay[] = [boot],
  change: Partial<PackingInput> = {},
): readonly Told[] =>
  packLoad(plainInput(bays, pieces, change), { seed: 1, iterations: 0 }).driveUnplaced.map(
    ({ unitId, why, cure }): Told => [unitId, why.map(({ bayId, rule, shortByMm }) => [bayId, rule, shortByMm]), cure],
  )

describe('a thing too long for every bay', () => {
  it('lacks the millimetres of its best way to lie, the bay’s shape being all there is', () => {
    expect(leftOut([flat('pole', [320, 100, 50])])).toEqual([['pole', [['boot', 'does-not-fit', 20]], null]])
    // Both ways it lies: 210 by 350 lacks 50 and 10 across, or 150 along.
    expect(leftOut([flat('board', [350, 210, 50])])).toEqual([['board', [['boot', 'does-not-fit', 60]], null]])
    const seat = plainBay('seat', [900, 0, 0], [250, 90, 100])
    expect(leftOut([flat('pole', [320, 100, 50])], [boot, seat])).toEqual([
      [
        'pole',
        [
          ['boot', 'does-not-fit', 20],
          ['seat', 'does-not-fit', 80],
        ],
        null,
      ],
    ])
  })

  it('goes in turned, on the first edge that does', () => {
    const tall = plainBay('boot', [0, 0, 0], [400, 200, 150])
    expect(leftOut([flat('flask', [100, 150, 320])], [tall])).toEqual([
      ['flask', [['boot', 'does-not-fit', 170]], { kind: 'turn', edge: 0 }],
    ])
    expect(leftOut([flat('flask', [160, 100, 320])], [tall])).toEqual([
      ['flask', [['boot', 'does-not-fit', 170]], { kind: 'turn', edge: 1 }],
    ])
    expect(leftOut([flat('flask', [400, 100, 160], { uprightEdges: [0] })], [tall])).toEqual([
      ['flask', [['boot', 'does-not-fit', 250]], { kind: 'turn', edge: 1 }],
    ])
    expect(leftOut([flat('flask', [160, 100, 320], { uprightEdges: [0, 2] })], [tall])[0]?.[2]).toEqual({
      kind: 'turn',
      edge: 1,
    })
  })

  it.each([
    [304, 5],
    [305, 5],
    [308, 10],
    [310, 10],
    [311, 15],
    [320, 20],
    [323, 25],
    [337, 40],
    [371, 75],
    [380, 80],
    [386, 90],
    [416, 120],
    [420, 120],
  ])('is pressed if soft: %i mm into 300 by %i mm, told to five', (longMm, byMm) => {
    expect(leftOut([flat('bag', [longMm, 100, 50], { form: 'soft', squeezeTo01: 1 })])).toEqual([
      ['bag', [['boot', 'does-not-fit', longMm - 300]], { kind: 'squeeze', byMm }],
    ])
  })

  it('is pressed no further than 120 mm, and beyond what it yields of itself', () => {
    const soft = { form: 'soft', squeezeTo01: 1 } as const
    expect(leftOut([flat('bag', [421, 100, 50], soft)])).toEqual([['bag', [['boot', 'does-not-fit', 121]], null]])
    // 0.95 of 320 is 304: four more would do, told to five.
    expect(leftOut([flat('bag', [320, 100, 50], { ...soft, squeezeTo01: 0.95 })])[0]?.[2]).toEqual({
      kind: 'squeeze',
      byMm: 5,
    })
    expect(leftOut([flat('bag', [320, 100, 50], { ...soft, squeezeTo01: 0.9 })])).toEqual([])
    // Along one edge only: pressed to the bay's width of 200, the other edge is still too long for 300.
    expect(leftOut([flat('bag', [310, 305, 50], soft)])[0]?.[2]).toBe(null)
  })

  it('is pressed through an opening that is too small', () => {
    const hatch = plainBay('boot', [0, 0, 0], [300, 200, 100], {
      openings: [{ id: 'hatch', face: 'z+', fromMm: [0, 0], toMm: [100, 100], door: 'top', opensFromInside: true }],
    })
    const of = (form: 'rigid' | 'soft') => leftOut([flat('bag', [150, 100, 50], { form })], [hatch])
    expect(of('soft')).toEqual([['bag', [['boot', 'opening-too-small', null]], { kind: 'squeeze', byMm: 50 }]])
    expect(of('rigid')).toEqual([['bag', [['boot', 'opening-too-small', null]], null]])
  })
})

describe('a thing that a rule forbids', () => {
  const rules: readonly (readonly [RuleCode, Partial<PackBay>, Partial<PackPiece>, Partial<PackTraits>])[] = [
    ['unit-too-heavy', { unitLimitG: 999 }, {}, {}],
    ['bay-load-limit', { loadLimitG: 999 }, {}, {}],
    ['soft-only', { softOnly: true }, {}, {}],
    ['not-lockable', { lockable: false }, {}, { valuable: true }],
    ['restraint', { restraint: 'none' }, { massG: 4001 }, {}],
  ]
  it.each(rules)('%s is told so, with the bay that would take it but for that', (rule, bay, piece, traits) => {
    const plain = flat('thing', [100, 100, 50], piece)
    const thing = { ...plain, traits: { ...plain.traits, ...traits } }
    const found = leftOut([thing], [{ ...boot, ...bay }])
    // A limit of the bay's whole load is no rule that a single thing can be excused from.
    const cure = rule === 'bay-load-limit' ? null : { kind: 'other-bay', bayId: 'boot', ignoring: rule }
    expect(found).toEqual([['thing', [['boot', rule, null]], cure]])
  })

  it('is told the first bay that would take it, not one where it does not fit', () => {
    const heavy = (id: string, x: number, sizeMm: Vec3): PackBay => plainBay(id, [x, 0, 0], sizeMm, { unitLimitG: 999 })
    const bays = [
      plainBay('tiny', [2000, 0, 0], [90, 90, 90]),
      heavy('near', 0, [100, 100, 100]),
      heavy('far', 900, [100, 100, 100]),
    ]
    expect(leftOut([flat('thing', [100, 100, 50])], bays)).toEqual([
      [
        'thing',
        [
          ['tiny', 'does-not-fit', 20],
          ['near', 'unit-too-heavy', null],
          ['far', 'unit-too-heavy', null],
        ],
        { kind: 'other-bay', bayId: 'near', ignoring: 'unit-too-heavy' },
      ],
    ])
  })

  it('that is fixed to a bay where it does not fit is offered another', () => {
    const seat = plainBay('seat', [900, 0, 0], [90, 90, 90])
    const lock = { layout: 'drive', bayId: 'seat', atMm: null, sizeMm: null } as const
    expect(leftOut([flat('thing', [100, 100, 50], { locks: [lock] })], [boot, seat])).toEqual([
      [
        'thing',
        [
          ['boot', 'locked', null],
          ['seat', 'does-not-fit', 20],
        ],
        { kind: 'other-bay', bayId: 'boot', ignoring: 'locked' },
      ],
    ])
  })
})

describe('a thing for which others leave no room', () => {
  it('lacks the least millimetres over the free spaces, and goes in for the smallest that makes room', () => {
    // 100 by 200 mm are left beside the block: 150 by 150 lacks 50.
    const block = flat('block', [200, 200, 100])
    expect(leftOut([block, flat('late', [150, 150, 100])])).toEqual([
      ['late', [['boot', 'no-room', 50]], { kind: 'leave-behind', unitIds: ['block'] }],
    ])
    // Without the tile 100 by 200 would be free: still ten too few for 110, so the block it is.
    const tile = flat('tile', [100, 50, 100])
    const wide = leftOut([block, tile, flat('wide', [110, 160, 100])])
    expect(wide.map(([id, , cure]) => [id, cure])).toEqual([['wide', { kind: 'leave-behind', unitIds: ['block'] }]])
  })

  it('goes in for the smaller of two that would do', () => {
    const larger = flat('larger', [160, 200, 100])
    const smaller = flat('smaller', [140, 200, 100])
    expect(leftOut([larger, smaller, flat('late', [130, 200, 100])])[0]?.[2]).toEqual({
      kind: 'leave-behind',
      unitIds: ['smaller'],
    })
    expect(leftOut([smaller, larger, flat('late', [130, 200, 100])])[0]?.[2]).toEqual({
      kind: 'leave-behind',
      unitIds: ['smaller'],
    })
  })

  it('is not told to do without what carries another that would then take the room', () => {
    const base = flat('base', [200, 200, 50], { massG: 5000 })
    const top = flat('top', [200, 200, 50], { bearsG: 0 })
    const late = flat('late', [150, 150, 100])
    const [one] = leftOut([base, top, late])
    expect(one?.[0]).toBe('late')
    expect(one?.[2]).toBe(null)
  })

  it('is not offered room in a bay that forbids it', () => {
    const seat = plainBay('seat', [900, 0, 0], [300, 200, 100], { unitLimitG: 100 })
    const inSeat = flat('in-seat', [300, 200, 100], { massG: 50 })
    const inBoot = flat('in-boot', [300, 200, 100])
    const found = leftOut([inSeat, inBoot, flat('late', [290, 190, 100])], [boot, seat])
    // The light one fills the seat, where the heavy one may not go; a full bay has no space that could lack anything.
    expect(found).toEqual([
      [
        'late',
        [
          ['boot', 'no-room', null],
          ['seat', 'unit-too-heavy', null],
        ],
        { kind: 'leave-behind', unitIds: ['in-boot'] },
      ],
    ])
  })

  it('is told the limit of the whole bay’s load where room there is', () => {
    const limited = { ...boot, loadLimitG: 1500 }
    const heavy = flat('heavy', [100, 100, 50], { massG: 1000 })
    const second = leftOut([heavy, flat('second', [90, 90, 50], { massG: 1000 })], [limited])
    expect(second).toEqual([
      ['second', [['boot', 'bay-load-limit', null]], { kind: 'leave-behind', unitIds: ['heavy'] }],
    ])
    // Neither room nor mass: the mass is told.
    const both = leftOut([flat('heavy', [200, 200, 100]), flat('late', [150, 150, 100])], [limited])
    expect(both.map(([id, why]) => [id, why])).toEqual([['late', [['boot', 'bay-load-limit', null]]]])
    const just = leftOut([heavy, flat('second', [90, 90, 50], { massG: 500 })], [limited])
    expect(just).toEqual([])
  })

  it('is told what may not lie on or near what', () => {
    const deep = plainBay('boot', [0, 0, 0], [300, 200, 200])
    const base = flat('base', [300, 200, 100], { bearsG: 500, massG: 2000 })
    const late = flat('late', [290, 190, 100], { bearsG: 500 })
    expect(leftOut([base, late], [deep])).toEqual([
      ['late', [['boot', 'load-on-top', null]], { kind: 'leave-behind', unitIds: ['base'] }],
    ])
    expect(leftOut([flat('a', [100, 100, 50], { apartFrom: ['b'] }), flat('b', [90, 90, 50])])).toEqual([
      ['b', [['boot', 'apart', null]], { kind: 'leave-behind', unitIds: ['a'] }],
    ])
  })

  it('by night is told for that night', () => {
    const states = { block: 'stored', late: 'stored' } as const
    const byDay = plainBay('day', [900, 0, 0], [300, 200, 100], { usable: { drive: true, bed: false } })
    const outcome = packLoad(
      plainInput([boot, byDay], [flat('block', [200, 200, 100]), flat('late', [150, 150, 100])], {
        nights: [{ ...night, states }],
      }),
      { seed: 1, iterations: 0 },
    )
    expect(outcome.driveUnplaced).toEqual([])
    expect(outcome.nights[0]?.unplaced).toEqual([
      {
        unitId: 'late',
        layout: 'bed',
        nightId: 'night',
        why: [{ bayId: 'boot', rule: 'no-room', shortByMm: 50 }],
        cure: { kind: 'leave-behind', unitIds: ['block'] },
      },
    ])
  })

  it('by night has no bay left where the bed has taken them all, and by day where there is none', () => {
    const byDay = { ...boot, usable: { drive: true, bed: false } }
    const outcome = packLoad(plainInput([byDay], [flat('thing', [100, 100, 50])], { nights: [night] }), {
      seed: 1,
      iterations: 0,
    })
    expect(outcome.nights[0]?.unplaced.map(({ why }) => why)).toEqual([
      [{ bayId: 'boot', rule: 'closed-by-bed', shortByMm: null }],
    ])
    const byNight = { ...boot, usable: { drive: false, bed: true } }
    expect(leftOut([flat('thing', [100, 100, 50])], [byNight])).toEqual([['thing', [['boot', 'no-room', null]], null]])
  })
})

describe('a reason asked for', () => {
  const input = plainInput([boot], [flat('block', [200, 200, 100]), flat('late', [150, 150, 100])])
  const scene = sceneOf(packModelOf(input), null)
  const state = stateFrom(scene, {
    placements: [{ unitId: 'block', bayId: 'boot', atMm: [0, 0, 0], sizeMm: [200, 200, 100], edges: [0, 1, 2] }],
    away: [],
  })
  const asked = (shouldStop: () => boolean) =>
    explainAll(scene, state, missingFrom(scene, state), { again: () => state, shouldStop })

  it('is told with its change, which plain insertion proves without solving again', () => {
    expect(asked(() => false)).toEqual([
      {
        unitId: 'late',
        layout: 'drive',
        nightId: null,
        why: [{ bayId: 'boot', rule: 'no-room', shortByMm: 50 }],
        cure: { kind: 'leave-behind', unitIds: ['block'] },
      },
    ])
  })

  it('is told without a change once the host wants an end', () => {
    expect(asked(() => true)).toMatchObject([
      { unitId: 'late', why: [{ bayId: 'boot', rule: 'no-room', shortByMm: 50 }], cure: null },
    ])
  })

  it('offers only a change that the host’s own next call finds too', () => {
    // Two of 150 by 100 stand so that 150 by 200 has room only once the other is moved: solving again does it, unless the host's call does not.
    const tight = plainInput(
      [boot],
      [
        flat('a', [150, 100, 100]),
        flat('b', [150, 100, 100]),
        flat('c', [150, 60, 100]),
        flat('late', [150, 200, 100]),
        flat('mast', [900, 60, 60]),
      ],
    )
    const tightScene = sceneOf(packModelOf(tight), null)
    const at = (unitId: string, atMm: Vec3, sizeMm: Vec3 = [150, 100, 100]) =>
      ({ unitId, bayId: 'boot', atMm, sizeMm, edges: [0, 1, 2] }) as const
    // Without c: a at the left front, b at the right front, the two free halves 150 by 100 lie behind them.
    const placements = [at('a', [0, 0, 0]), at('b', [150, 0, 0]), at('c', [0, 100, 0], [150, 60, 100])]
    const tightState = stateFrom(tightScene, { placements, away: [] })
    const solved = stateFrom(tightScene, {
      placements: [at('a', [0, 0, 0]), at('b', [0, 100, 0]), at('late', [150, 0, 0], [150, 200, 100])],
      away: [],
    })
    const late = missingFrom(tightScene, tightState).slice(0, 1)
    expect(missingFrom(tightScene, tightState)).toHaveLength(2)
    let called = 0
    const cureBy = (again: typeof solved): UnitCure | null | undefined =>
      explainAll(tightScene, tightState, late, {
        again: () => {
          called++
          return again
        },
        shouldStop: () => false,
      })[0]?.cure
    expect(cureBy(solved)).toEqual({ kind: 'leave-behind', unitIds: ['c'] })
    expect(called).toBe(1)
    // Nor where that call has the late one in for another that had its place.
    const robbed = stateFrom(tightScene, {
      placements: [at('a', [0, 0, 0]), at('late', [150, 0, 0], [150, 200, 100])],
      away: [],
    })
    expect(cureBy(robbed)).toEqual({ kind: 'leave-behind', unitIds: ['b'] })
    // Without the next larger the late one goes in as all stands.
    expect(cureBy(tightState)).toEqual({ kind: 'leave-behind', unitIds: ['b'] })
  })

  it('never moves another thing that is fixed', () => {
    // The post stands fixed in the middle of the boot: beside it 100 mm are left on either hand, and the late one needs 150.
    const seat = plainBay('seat', [900, 0, 0], [90, 90, 90])
    const post = (locked: boolean): PackPiece =>
      flat('post', [100, 200, 100], {
        locks: locked ? [{ layout: 'drive', bayId: 'boot', atMm: [100, 0, 0], sizeMm: [100, 200, 100] }] : [],
      })
    const late = flat('late', [150, 200, 100], {
      locks: [{ layout: 'drive', bayId: 'seat', atMm: null, sizeMm: null }],
    })
    const place = (unitId: string, x: number, longMm: number) =>
      ({ unitId, bayId: 'boot', atMm: [x, 0, 0], sizeMm: [longMm, 200, 100], edges: [0, 1, 2] }) as const
    const cureWith = (locked: boolean): UnitCure | null | undefined => {
      const fixedScene = sceneOf(packModelOf(plainInput([boot, seat], [post(locked), late])), null)
      const now = stateFrom(fixedScene, { placements: [place('post', 100, 100)], away: [] })
      const moved = stateFrom(fixedScene, { placements: [place('post', 0, 100), place('late', 150, 150)], away: [] })
      const [told] = explainAll(fixedScene, now, missingFrom(fixedScene, now), {
        again: () => moved,
        shouldStop: () => false,
      })
      return told?.cure
    }
    expect(cureWith(false)).toEqual({ kind: 'other-bay', bayId: 'boot', ignoring: 'locked' })
    expect(cureWith(true)).toBe(null)
  })
})
