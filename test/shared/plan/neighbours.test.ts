/** What is tried for each shortfall, in order, and what each change costs in the ranking: on trips of plain numbers. */
import { describe, expect, it } from 'vitest'
import type { SingleChange, Trip } from '../../../shared/document/index.ts'
import { costOf, scoreOf } from '../../../shared/plan/remedies/cost.ts'
import { neighbours } from '../../../shared/plan/remedies/neighbours.ts'
import type { Finding, Plan } from '../../../shared/plan/types.ts'
import { sample } from './trips.ts'

const trip = sample('bats-by-the-quarry')
const [one, two] = trip.nights
if (one === undefined || two === undefined) throw new Error('the sample has two nights')

const nightPlan = (nightId: string, usableA = 12.4) => ({
  nightId,
  input: { decisions: { chargeLimit01: 0.95 }, supply: { minimumA: 6 } },
  outcome: { supply: { usableA } },
})
const plan = {
  nights: [nightPlan('night-1'), nightPlan('night-2')],
  packing: { units: [{ id: 'food-box', pieceIds: ['dry-food', 'bread-bag'] }] },
} as unknown as Plan
const shortfall = (code: string, params: object = {}, nightId: string | null = 'night-1', thing = ''): Finding => ({
  id: `${code}:${nightId ?? 'trip'}${thing === '' ? '' : `:${thing}`}`,
  severity: 'shortfall',
  area: 'night',
  nightId,
  problem: { code, path: [], params: params as Finding['problem']['params'] },
})
const withNight = (over: object, vehicle: object = {}): Trip =>
  ({ ...trip, vehicle: { ...trip.vehicle, ...vehicle }, nights: [{ ...one, ...over }, two] }) as Trip
const tried = (of: Trip, found: Finding): readonly SingleChange[] => neighbours(of, plan, found)
/** `kind value` of each. */
const brief = (changes: readonly SingleChange[]): readonly string[] =>
  changes.map(({ kind, ...rest }) =>
    [kind, ...Object.entries(rest).flatMap(([key, value]) => (key === 'nightId' ? [] : [String(value)]))].join(' '),
  )

describe('somebody who is cold', () => {
  it.each(['too-cold-for-bag', 'too-cold-for-body'])(
    '%s: bedding not laid yet, bed heat, covers, a warmer cabin',
    (code) => {
      expect(brief(tried(withNight({ covers: false }), shortfall(code)))).toEqual([
        'bring-bedding winter-bag',
        'bring-bedding hot-bottles',
        'bed-heater underblanket',
        'covers',
        'set-point 2',
        'set-point 4',
        'set-point 6',
        'set-point 8',
      ])
    },
  )

  it('is not offered what is there already, nor what is not aboard', () => {
    const heating = { ...one.heating, bedHeaterIds: ['underblanket'] }
    const heater = { ...trip.vehicle.heater, kind: 'none' }
    expect(brief(tried(withNight({ heating, covers: true }, { heater }), shortfall('too-cold-for-bag')))).toEqual([
      'bring-bedding winter-bag',
      'bring-bedding hot-bottles',
    ])
    const pieces = trip.kit.pieces.filter(({ purpose }) => purpose !== 'window-covers')
    const bare = { ...withNight({ covers: false }), kit: { ...trip.kit, pieces } }
    expect(brief(tried(bare, shortfall('too-cold-for-bag')))).not.toContain('covers')
    expect(tried(trip, shortfall('too-cold-for-bag', {}, 'night-9'))).toEqual([])
  })
})

describe('a leg too long', () => {
  const leg = one.leg && { ...one.leg, fastChargers: [14_000, 50_000].map((atM) => ({ atM, powerW: 1e5 })) }
  it('asks for more charge, on its night or on one before', () => {
    const of = withNight({ covers: false })
    const night = ['charge-limit 1', 'current 12', 'covers', 'set-point -2', 'set-point -4', 'set-point -6']
    expect(
      brief(
        tried(
          { ...of, nights: [{ ...one, covers: false, heating: { ...one.heating, currentA: 8 } }, two] },
          shortfall('leg-too-long'),
        ),
      ),
    ).toEqual(night)
    const second = tried(trip, shortfall('leg-too-long', {}, 'night-2'))
    expect(second.map((change) => ('nightId' in change ? change.nightId : ''))).toEqual([
      ...Array.from({ length: 4 }, () => 'night-2'),
      ...Array.from({ length: 4 }, () => 'night-1'),
    ])
  })

  it('asks for no more current than whole amperes that may flow', () => {
    const current = (currentA: number | undefined) =>
      brief(tried(withNight({ heating: { ...one.heating, currentA } }), shortfall('leg-too-long'))).filter((said) =>
        said.startsWith('current'),
      )
    expect(current(11)).toEqual(['current 12'])
    expect(current(12)).toEqual([])
    expect(current(undefined)).toEqual([])
  })

  it('takes no heating down where there is none, and no limit up where it is up', () => {
    const cold = withNight({ heating: { ...one.heating, setPoints: [{ from: '18:00', tempC: null }] } })
    expect(brief(tried(cold, shortfall('leg-too-long')))).toEqual(['charge-limit 1'])
    const full = {
      ...plan,
      nights: [{ ...nightPlan('night-1'), input: { decisions: { chargeLimit01: 1 } } }],
    } as unknown as Plan
    expect(brief(neighbours(cold, full, shortfall('leg-too-long')))).toEqual([])
    const low = {
      ...plan,
      nights: [{ ...nightPlan('night-1'), input: { decisions: { chargeLimit01: 0.9 } } }],
    } as unknown as Plan
    expect(brief(neighbours(cold, low, shortfall('leg-too-long')))).toEqual(['charge-limit 0.95', 'charge-limit 1'])
  })

  it('offers other chargers where those agreed to do not do', () => {
    const stops = (acceptedStopsM: number[] | undefined) =>
      brief(tried(withNight({ leg: { ...leg, acceptedStopsM } }), shortfall('leg-too-long'))).filter((said) =>
        said.startsWith('stop'),
      )
    expect(stops([14_000])).toEqual(['stop-on-the-way 50000'])
    expect(stops([14_000, 50_000])).toEqual([])
    expect(stops([])).toEqual([])
    expect(stops(undefined)).toEqual([])
  })
})

describe('the clock', () => {
  it.each([
    ['leave-in-movement-ban', { lostS: 600 }, ['target-later 11']],
    ['leave-before-gate', { lostS: 601 }, ['target-later 12']],
    ['leave-after-check-out', { departUtc: 1000, checkOutUtc: 940 }, ['leave-earlier 2']],
    ['leave-after-check-out', { departUtc: 1000, checkOutUtc: 941 }, ['leave-earlier 1']],
    ['leave-after-check-out', { departUtc: 1000, checkOutUtc: 1001 }, []],
    ['arrive-after-check-in', { arriveUtc: 1000, closesUtc: 1000 }, ['arrive-earlier 1']],
    ['arrive-in-movement-ban', { arriveUtc: 1000, banFromUtc: 400 }, ['arrive-earlier 11']],
    ['arrive-after-gate', { arriveUtc: 1000, gateFromUtc: 400 }, ['arrive-earlier 11']],
  ])('%s of %o', (code, params, expected) => {
    expect(brief(tried(trip, shortfall(code, params)))).toEqual(expected)
  })

  it('airs a cabin by wider gaps than it has', () => {
    const gaps = (gapMm: number) =>
      brief(tried(withNight({ ventilation: { gapMm, sides: 2 } }), shortfall('night-co2-high')))
    expect(gaps(0)).toEqual(['window-gap 15', 'window-gap 30', 'window-gap 60'])
    expect(gaps(25)).toEqual(['window-gap 30', 'window-gap 60'])
    expect(gaps(60)).toEqual([])
  })

  it('has no target to put off where there is none', () => {
    expect(tried(withNight({ target: undefined }), shortfall('leave-before-gate', { lostS: 60 }))).toEqual([])
  })
})

describe('the post', () => {
  it('without earth is done without, an adapter at home is packed', () => {
    expect(brief(tried(trip, shortfall('night-earth-missing')))).toEqual(['without-hookup'])
    expect(tried(withNight({ hookup: undefined }), shortfall('night-earth-missing'))).toEqual([])
    const home = trip.kit.pieces.map((piece) => (piece.id === 'adapter' ? { ...piece, spare: true } : piece))
    const left = { ...trip, kit: { ...trip.kit, pieces: home } }
    expect(brief(tried(left, shortfall('adapter-not-on-board', {}, 'night-2')))).toEqual(['bring-piece adapter'])
    expect(tried(trip, shortfall('adapter-not-on-board', {}, 'night-2'))).toEqual([])
  })
})

describe('the load', () => {
  const box = (id: string, massG: number, edgeMm: number, over: object = {}) => ({
    ...trip.kit.pieces[14],
    id,
    massG,
    sizeMm: [edgeMm, edgeMm, edgeMm],
    access: [],
    traits: {},
    bedding: undefined,
    spare: false,
    upright: [0, 1, 2],
    locks: [],
    ...over,
  })
  const loaded = (...pieces: object[]): Trip => ({ ...trip, kit: { ...trip.kit, pieces } }) as unknown as Trip
  const nine = Array.from({ length: 9 }, (_, index) => box(`p${index}`, 1000 * (index + 1), 100 + index))

  it('without a place is turned, freed or left, or one of the six largest in its stead', () => {
    const stuck = box('stuck', 1, 10, { upright: [2], locks: [{ layout: 'drive', bayId: 'load-bay' }] })
    const found = shortfall('no-place-by-day', { rules: ['walls'] }, null, 'stuck')
    expect(brief(tried(loaded(stuck, ...nine), found))).toEqual([
      'turn-piece stuck',
      'unlock stuck',
      ...['p8', 'p7', 'p6', 'p5', 'p4', 'p3'].map((id) => `leave-behind ${id}`),
    ])
    const bin = shortfall('no-place-at-night', { rules: ['walls'] }, 'night-1', 'food-box')
    expect(brief(tried(loaded(box('p', 1, 1)), bin))).toEqual(['leave-behind dry-food,bread-bag', 'leave-behind p'])
  })

  it('keeps what must be carried, bedding, and what is for an emergency', () => {
    const kept = [
      box('must', 1, 50, { traits: { mustCarry: true } }),
      box('quilt', 1, 50, { bedding: { kind: 'quilt' } }),
      box('kit', 1, 50, { access: ['emergency'] }),
      box('may', 1, 5),
    ]
    expect(brief(tried(loaded(...kept), shortfall('changeover-stuck', {}, 'night-1', 'x')))).toEqual([
      'leave-behind may',
    ])
    expect(brief(tried(loaded(...kept), shortfall('over-payload', { overG: 1 }, null)))).toEqual(['leave-behind may'])
  })

  it('keeps the animal, what warns of gas and fire, and what the post wants, as its own unit too', () => {
    const purposes = [
      'pet',
      'co-alarm',
      'fire-blanket',
      'first-aid',
      'medicine',
      'snow-chains',
      'charging-unit',
      'lead',
    ]
    const kept = purposes.map((purpose, index) => box(purpose, 30_000 + index, 400, { purpose }))
    const chair = box('chair', 2000, 300, { purpose: 'other' })
    expect(brief(tried(loaded(...kept, chair), shortfall('over-payload', { overG: 1500 }, null)))).toEqual([
      'leave-behind chair',
    ])
    expect(brief(tried(loaded(...kept, chair), shortfall('no-place-by-day', { rules: [] }, null, 'x')))).toEqual([
      'leave-behind chair',
    ])
    // The unit that finds no place is a bin with bread and dry food: not to be left once one of them must ride along.
    const bin = shortfall('no-place-at-night', { rules: ['walls'] }, 'night-1', 'food-box')
    expect(brief(tried(loaded(box('dry-food', 1, 1, { purpose: 'medicine' })), bin))).toEqual([])
  })

  it('that freezes may be placed in a warmer cabin', () => {
    const frost = (rules: unknown, nightId: string | null) =>
      brief(tried(loaded(), shortfall('no-place-at-night', { rules } as object, nightId, 'x')))
    expect(frost(['walls', 'freezes'], 'night-1')).toEqual(['set-point 3', 'set-point 6'])
    expect(frost(['walls'], 'night-1')).toEqual([])
    expect(frost('freezes', 'night-1')).toEqual([])
    expect(frost(['freezes'], null)).toEqual([])
    const unheated = withNight({}, { heater: { ...trip.vehicle.heater, kind: 'none' } })
    const cold = shortfall('no-place-at-night', { rules: ['freezes'] } as object, 'night-1', 'x')
    expect(tried(unheated, cold).filter(({ kind }) => kind === 'set-point')).toEqual([])
  })

  it('too heavy leaves the lightest that is enough, then the heaviest; where none is, the fewest together', () => {
    const over = (overG: number) => brief(tried(loaded(...nine), shortfall('over-payload', { overG }, null)))
    expect(over(7000)).toEqual(['p6', 'p7', 'p8', 'p5', 'p4', 'p3'].map((id) => `leave-behind ${id}`))
    expect(over(10_000)).toEqual([
      ...['p8', 'p7', 'p6', 'p5', 'p4', 'p3'].map((id) => `leave-behind ${id}`),
      'leave-behind p8,p7',
    ])
    expect(over(17_000).at(-1)).toBe('leave-behind p8,p7')
    expect(over(17_001).at(-1)).toBe('leave-behind p8,p7,p6')
  })

  it('has nothing for a shortfall of another kind', () => {
    for (const code of ['bed-too-short', 'sleeping-not-allowed', 'food-locker-missing'])
      expect(tried(trip, shortfall(code))).toEqual([])
  })
})

describe('the cost of a remedy', () => {
  const planned = (of: {
    litresMm: number
    moves: number
    depart01: number | null
    total: number
    departUtc: number
    arriveUtc: number
  }) => ({
    trip: {
      ...trip,
      kit: { ...trip.kit, pieces: [{ ...trip.kit.pieces[14], spare: false, sizeMm: [1000, 100, of.litresMm] }] },
    } as unknown as Trip,
    plan: {
      nightVerdicts: [{ movesAtDusk: of.moves, depart01: of.depart01 }],
      ledger: { total: of.total },
      nights: [{ clock: { departUtc: of.departUtc, arriveUtc: of.arriveUtc } }],
    } as unknown as Plan,
  })
  const before = { litresMm: 100, moves: 3, depart01: 0.6, total: 20, departUtc: 6000, arriveUtc: 3000 }

  it('is what is more, and what of charge and warmth is less', () => {
    const after = { litresMm: 220, moves: 5, depart01: 0.5, total: 23, departUtc: 7200, arriveUtc: 2400 }
    const change = {
      kind: 'together',
      changes: [
        { kind: 'set-point', nightId: 'n', byK: -4 },
        { kind: 'covers', nightId: 'n' },
      ],
    } as const
    expect(costOf(planned(before), planned(after), change)).toEqual({
      litres: 12,
      moves: 2,
      degreesK: 4,
      charge01: expect.closeTo(0.1, 9),
      money: 3,
      minutes: 30,
    })
    const same = costOf(planned(before), planned({ ...before, depart01: null }), { kind: 'covers', nightId: 'n' })
    expect(same).toEqual({ litres: 0, moves: 0, degreesK: 0, charge01: expect.closeTo(0.6, 9), money: 0, minutes: 0 })
  })

  it('weighs a litre 0.2, a move and a degree 1, a per cent 0.6, money 0.5, a minute 0.3, a thing left behind 6', () => {
    const free = { litres: 0, moves: 0, degreesK: 0, charge01: 0, money: 0, minutes: 0 }
    const covers = { kind: 'covers', nightId: 'n' } as const
    const score = (over: object) => scoreOf({ ...free, ...over }, covers)
    expect([score({}), score({ litres: 10 }), score({ moves: 2 }), score({ degreesK: 3 })]).toEqual([0, 2, 2, 3])
    expect([score({ charge01: 0.05 }), score({ money: 4 }), score({ minutes: 10 })]).toEqual([3, 2, 3])
    expect(score({ litres: -1, moves: -1, degreesK: -1, charge01: -1, money: -1, minutes: -1 })).toBe(0)
    const left = { kind: 'leave-behind', pieceIds: ['a', 'b'] } as const
    expect(scoreOf(free, left)).toBe(12)
    expect(scoreOf({ ...free, moves: 1 }, { kind: 'together', changes: [left, covers] })).toBe(13)
  })
})
