/** Which plan of a front is kept, which is recommended and why, on plans of plain numbers: each rung and each border. */
import { describe, expect, it } from 'vitest'
import { comfortOf, lessTrouble, nonDominated } from '../../../shared/climate/optimise/front.ts'
import type { Scored } from '../../../shared/climate/optimise/front.ts'
import { reasonsFor } from '../../../shared/climate/optimise/reasons.ts'
import { recommend } from '../../../shared/climate/optimise/recommend.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
import { at, night } from './night-fixture.ts'

const input = night({ leg: {} as NightInput['leg'] })
const plan = (over: Partial<Scored> = {}): Scored => ({
  decisions: input.decisions,
  comfortMarginK: 4,
  depart01: 0.5,
  legMarginWh: 5000,
  cost: 10,
  moves: 0,
  beddingVolumeMm3: 0,
  risingC: 12,
  sleepers: 1,
  legNeedWh: 10_000,
  co2MaxPpm: 800,
  legReachable: true,
  heatingWh: 100,
  supplyWh: 0,
  wiringWh: 10,
  ...over,
})

describe('comfort', () => {
  it.each([
    [{ comfortMarginK: 2, risingC: 5 }, 2],
    [{ comfortMarginK: 2, risingC: 0 }, 2],
    [{ comfortMarginK: 2, risingC: 10 }, 2.5],
    [{ comfortMarginK: 2, risingC: 15 }, 3],
    [{ comfortMarginK: 2, risingC: 25 }, 3],
    [{ comfortMarginK: 9, risingC: 5 }, 6],
    [{ comfortMarginK: -3, risingC: 5 }, -3],
    [{ comfortMarginK: 2, risingC: 25, sleepers: 0 }, 2],
  ])('of %o is %d K', (over, expected) => {
    expect(comfortOf(plan(over))).toBeCloseTo(expected, 9)
  })
})

describe('the front', () => {
  const rises = { risingC: 5 }
  const base = plan({ ...rises, comfortMarginK: 2 })
  /** Whether each of two survives the other, in either order. */
  const kept = (over: Partial<Scored>): readonly boolean[] => {
    const other = { ...base, ...over }
    const [one, two] = [nonDominated([base, other]), nonDominated([other, base])]
    expect(new Set(two)).toEqual(new Set(one))
    return [one.includes(base), one.includes(other)]
  }
  const FIRST = [true, false]
  const SECOND = [false, true]
  const BOTH = [true, true]

  it.each<[string, Partial<Scored>, readonly boolean[]]>([
    ['warmer', { comfortMarginK: 2.06 }, SECOND],
    ['colder', { comfortMarginK: 1.94 }, FIRST],
    ['fuller', { depart01: 0.5006 }, SECOND],
    ['emptier', { depart01: 0.4994 }, FIRST],
    ['of no known charge', { depart01: null }, FIRST],
    ['cheaper', { cost: 9.99 }, SECOND],
    ['dearer', { cost: 10.01 }, FIRST],
    ['with a move more', { moves: 1 }, FIRST],
    ['warmer and dearer', { comfortMarginK: 2.06, cost: 10.01 }, BOTH],
    ['fuller with a move more', { depart01: 0.6, moves: 1 }, BOTH],
    ['cheaper and colder', { cost: 9.99, comfortMarginK: 1.94 }, BOTH],
    ['cheaper and emptier', { cost: 9.99, depart01: 0.4994 }, BOTH],
    ['as good, of larger bedding', { beddingVolumeMm3: 1 }, FIRST],
    ['as good, of more heating', { heatingWh: 101.1 }, FIRST],
    ['as good, of less heating', { heatingWh: 98.9 }, SECOND],
    ['as good, of more heat in the wiring', { wiringWh: 11 }, FIRST],
    ['a hair warmer, of more heating', { comfortMarginK: 2.04, heatingWh: 102 }, FIRST],
    ['a hair cheaper, of more heating', { cost: 9.996, heatingWh: 102 }, FIRST],
  ])('keeps against one %s what nothing beats', (_, over, expected) => {
    expect(kept(over)).toEqual(expected)
  })

  it('keeps the first of two equals, and stands in falling comfort', () => {
    const twin = { ...base }
    expect(nonDominated([base, twin])).toEqual([base])
    expect(nonDominated([base, twin])[0]).toBe(base)
    const warm = plan({ comfortMarginK: 5, cost: 20 })
    const cold = plan({ comfortMarginK: -1, cost: 1 })
    expect(nonDominated([cold, base, warm])).toEqual([warm, base, cold])
    expect(nonDominated([])).toEqual([])
  })

  it('weighs trouble by room, then heating beyond a watt-hour, then wiring', () => {
    const sign = (a: Partial<Scored>, b: Partial<Scored>) => Math.sign(lessTrouble(plan(a), plan(b)))
    expect(sign({ beddingVolumeMm3: 1, heatingWh: 0 }, { beddingVolumeMm3: 2, heatingWh: 99 })).toBe(-1)
    expect(sign({ heatingWh: 102, wiringWh: 0 }, {})).toBe(1)
    expect(sign({ heatingWh: 101, wiringWh: 0 }, {})).toBe(-1)
    expect(sign({}, {})).toBe(0)
  })
})

describe('the recommended plan', () => {
  const chosen = (...front: readonly Partial<Scored>[]) => {
    const { index, reason } = recommend(input, front.map(plan))
    return `${index} ${reason}`
  }

  it.each<[string, readonly Partial<Scored>[], string]>([
    [
      'warm, up in the warm, a tenth in hand',
      [
        { cost: 20, comfortMarginK: 3, legMarginWh: 1000, risingC: 10 },
        { cost: 1, risingC: 9 },
      ],
      '0 warm-and-leg',
    ],
    [
      'then without the rising',
      [
        { cost: 20, legMarginWh: 999 },
        { cost: 30, risingC: 9, legMarginWh: 1000 },
      ],
      '1 warm-and-leg',
    ],
    [
      'then a leg just so',
      [
        { cost: 20, legMarginWh: 0 },
        { cost: 1, comfortMarginK: 2.9 },
      ],
      '0 warm-and-leg',
    ],
    [
      'then warm just so',
      [
        { cost: 20, comfortMarginK: 0, legMarginWh: 0 },
        { cost: 1, legMarginWh: -1 },
      ],
      '0 warm-and-leg',
    ],
    [
      'then with a stop, warm in hand',
      [
        { cost: 20, legMarginWh: -1 },
        { cost: 1, comfortMarginK: 2.9, legMarginWh: -1 },
      ],
      '0 warm-with-stop',
    ],
    [
      'then with a stop, warm just so',
      [{ comfortMarginK: 0, legMarginWh: -1 }, { comfortMarginK: -0.1 }],
      '0 warm-with-stop',
    ],
    [
      'then the leg, the warmest of those',
      [{ comfortMarginK: -3 }, { comfortMarginK: -2, cost: 99 }, { comfortMarginK: -1, legMarginWh: -1 }],
      '1 leg-first',
    ],
    [
      'then the leg with a stop',
      [
        { comfortMarginK: -3, legMarginWh: -1 },
        { comfortMarginK: -1, legMarginWh: -1, legReachable: false },
      ],
      '0 leg-first',
    ],
    [
      'then the warmest',
      [
        { comfortMarginK: -3, legMarginWh: -1, legReachable: false },
        { comfortMarginK: -1, legMarginWh: -1, legReachable: false },
      ],
      '1 warmest',
    ],
  ])('is %s', (_, front, expected) => {
    expect(chosen(...front)).toBe(expected)
  })

  it('needs no leg where there is none to drive', () => {
    const none = { ...input, leg: null }
    expect(recommend(none, [plan({ legMarginWh: null, legNeedWh: 0 })]).reason).toBe('warm-no-leg')
    expect(recommend({ ...input, battery: null }, [plan({ legMarginWh: null, legNeedWh: 0 })]).reason).toBe(
      'warm-no-leg',
    )
    expect(recommend(input, [])).toEqual({ index: 0, reason: 'warmest' })
  })

  it('of those within a twentieth of the cheapest has the least effort: a handling is worth one per cent of charge', () => {
    expect(chosen({ cost: 10 }, { cost: 10.5, depart01: 0.52 })).toBe('1 warm-and-leg')
    expect(chosen({ cost: 10 }, { cost: 10.51, depart01: 0.52 })).toBe('0 warm-and-leg')
    expect(chosen({ moves: 1, depart01: 0.52 }, { moves: 0, depart01: 0.5 })).toBe('0 warm-and-leg')
    expect(chosen({ moves: 1, depart01: 0.505 }, { moves: 0, depart01: 0.5 })).toBe('1 warm-and-leg')
    expect(chosen({ cost: 10.2, heatingWh: 1 }, { cost: 10, heatingWh: 50 })).toBe('1 warm-and-leg')
    expect(chosen({ heatingWh: 50 }, { heatingWh: 1 })).toBe('1 warm-and-leg')
  })
})

describe('the reasons', () => {
  const heaters: NightInput['bedHeaters'] = [
    { id: 'a', kind: 'underblanket', powerW: 50 },
    { id: 'b', kind: 'underblanket', powerW: 30 },
  ]
  const given = (over: Partial<Scored>, from: Partial<NightInput> = {}, front: readonly Scored[] = []) =>
    reasonsFor({ ...input, ...from }, front, plan(over), { usableA: 10 } as never)
  const decided = (over: object): Partial<Scored> => ({ decisions: { ...input.decisions, ...over } })
  const basic = [
    { code: 'warm-in-hand', valueK: 4 },
    { code: 'leg-in-hand', valueWh: 5000 },
  ]

  it('are warmth and leg, in hand or short', () => {
    expect(given({})).toEqual(basic)
    expect(given({ comfortMarginK: 0, legMarginWh: 0 }).map(({ code }) => code)).toEqual([
      'warm-in-hand',
      'leg-in-hand',
    ])
    expect(given({ comfortMarginK: -1, legMarginWh: -300 })).toEqual([
      { code: 'too-cold-by', valueK: 1 },
      { code: 'stop-to-charge' },
    ])
    expect(given({ legMarginWh: -300, legReachable: false })).toContainEqual({ code: 'leg-short-by', valueWh: 300 })
    expect(given({ legMarginWh: null }, { sleepers: [] })).toEqual([])
  })

  it('are what it saves against the dearest and the busiest', () => {
    const front = [plan({ cost: 13, moves: 2 }), plan({ cost: 11, moves: 3 })]
    expect(given({ moves: 1 }, {}, front)).toEqual([
      ...basic,
      { code: 'saves-money', value: 3 },
      { code: 'saves-moves', value: 2 },
    ])
    expect(given({ cost: 13, moves: 3 }, {}, front)).toEqual(basic)
    expect(given({ cost: 12.996, moves: 3 }, {}, front)).toEqual(basic)
  })

  it('are bedding where there is a choice, and bed heat by its watts', () => {
    const beddingSets = [{ id: 'one' }, { id: 'two' }] as never as NightInput['beddingSets']
    expect(given(decided({ beddingSetId: 'two' }), { beddingSets: beddingSets ?? [] })).toEqual([
      ...basic,
      { code: 'bedding', setId: 'two' },
    ])
    expect(given(decided({ beddingSetId: 'two' }), { beddingSets: (beddingSets ?? []).slice(0, 1) })).toEqual(basic)
    expect(given(decided({}), { beddingSets: beddingSets ?? [] })).toEqual(basic)
    expect(given(decided({ bedHeaterIds: ['a', 'b'] }), { bedHeaters: heaters })).toContainEqual({
      code: 'bed-heat-first',
      valueW: 80,
    })
    expect(given(decided({ bedHeaterIds: ['b'] }), { bedHeaters: heaters })).toContainEqual({
      code: 'bed-heat-first',
      valueW: 30,
    })
  })

  it('are less current, a lower limit, covers and a window where they differ from now', () => {
    expect(given(decided({ currentA: 8 }))).toEqual([...basic, { code: 'less-current', valueA: 8 }])
    expect(given(decided({ currentA: 10 }))).toEqual(basic)
    expect(given(decided({ chargeLimit01: 0.8 }))).toEqual([...basic, { code: 'charge-enough', value01: 0.8 }])
    expect(given(decided({ chargeLimit01: 0.9 }))).toEqual(basic)
    expect(given(decided({ chargeLimit01: 0.8 }), { battery: null })).toEqual(basic)
    expect(given(decided({ covers: true, windowGapMm: 10 }))).toEqual([
      ...basic,
      { code: 'covers-up' },
      { code: 'window-open' },
    ])
    const already = { decisions: { ...input.decisions, covers: true, windowGapMm: 5 } }
    expect(given(decided({ covers: true, windowGapMm: 10 }), already)).toEqual(basic)
  })

  it('are a lower level asleep and the warming up before rising, on the site’s power or not', () => {
    // Asleep from hour 4 to 12; plugged in from half an hour after arriving to half an hour before leaving at 14.
    const shape = (...points: readonly (readonly [hour: number, tempC: number | null])[]) =>
      given(decided({ setPoints: points.map(([hour, tempC]) => ({ fromUtc: at(hour), tempC })) })).slice(2)
    expect(shape([3, 14], [4, 8], [11, 15])).toEqual([
      { code: 'lower-asleep', valueC: 8 },
      { code: 'pre-warm', fromUtc: at(11), onSite: true },
    ])
    expect(shape([3, 14], [4, null], [12, 15])).toEqual([{ code: 'pre-warm', fromUtc: at(12), onSite: true }])
    expect(shape([3, 14], [12.1, 15])).toEqual([])
    expect(shape([3, 14], [11, 14])).toEqual([])
    expect(shape([3, 14], [5, null], [11, 12])).toEqual([])
    const off = (from: Partial<NightInput>) =>
      given(
        decided({
          setPoints: [
            { fromUtc: at(4), tempC: 8 },
            { fromUtc: at(11), tempC: 15 },
          ],
        }),
        from,
      ).at(-1)
    const { supply } = input
    expect(off({ supply: null })).toEqual({ code: 'pre-warm', fromUtc: at(11), onSite: false })
    expect(off({ supply: supply && { ...supply, unplugUtc: at(11) } })).toMatchObject({ onSite: false })
    expect(off({ supply: supply && { ...supply, plugInUtc: at(11) } })).toMatchObject({ onSite: true })
    expect(off({ supply: supply && { ...supply, plugInUtc: at(11.1) } })).toMatchObject({ onSite: false })
  })
})
