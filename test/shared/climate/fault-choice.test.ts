/** Which handlings a fault calls for, on nights made so that only one answer is right. */
import { describe, expect, it } from 'vitest'
import { adviseOn } from '../../../shared/climate/fault-advice.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { FaultAdvice } from '../../../shared/climate/answers.ts'
import type { BeddingSet, Fault, LegParameters, NightInput, Sleeper } from '../../../shared/climate/index.ts'
import { at, night, sleeper, steadyWeather, supply, withDecisions } from './night-fixture.ts'

const WH_PER_KM = 200
const leg = (distanceM: number): LegParameters => ({
  distanceM,
  whPerKm: WH_PER_KM,
  speedKmPerH: null,
  climbM: 0,
  outsideC: 20,
  reserve01: 0.1,
  massG: 1_800_000,
  dragAreaM2: null,
  rollingCoefficient: null,
  auxiliaryW: null,
  fastChargers: [],
})
const WARM_BAG = { comfortC: -25, coverClo: 12, matM2KPerW: 1 }
const THIN_BAG = { comfortC: 12, coverClo: 3, matM2KPerW: 0.9 }

/** At -12 °C, heated to 16 °C until eight hours after arrival and to 18 °C from ten, 0.55 in the battery, warm in any case. */
const HEATED: NightInput = withDecisions(
  night({
    weather: steadyWeather(-12),
    sleepers: [sleeper({ bedding: WARM_BAG })],
    stepS: 900,
    battery: {
      usableWh: 60_000,
      reserve01: 0.1,
      chargeLimit01: 0.9,
      efficiency01: 0.88,
      overheadW: 0,
      coldOverheadW: 0,
      arrive01: 0.55,
      fastMaxW: 100_000,
    },
  }),
  {
    setPoints: [
      { fromUtc: at(3), tempC: 16 },
      { fromUtc: at(8), tempC: null },
      { fromUtc: at(10), tempC: 18 },
    ],
  },
)
const LOST: Fault = { kind: 'supply-lost', atUtc: at(5) }
const FAILED: Fault = { kind: 'heater-fails', atUtc: at(6) }
const codes = ({ actions }: FaultAdvice): readonly string[] => actions.map(({ code }) => code)

/** Energy left at departure, Wh, where the heating is taken down to a level at an instant: later set-points too, and off where it is off. */
function leftWh(levelC: number | null, fromHour = 5): number {
  const key = `${levelC} ${fromHour}`
  const known = leftKnown.get(key)
  if (known !== undefined) return known
  const least = (tempC: number) => (levelC === null ? null : Math.min(tempC, levelC))
  const outcome = simulateNight({
    ...withDecisions(HEATED, {
      setPoints: [
        { fromUtc: at(3), tempC: 16 },
        { fromUtc: at(fromHour), tempC: least(16) },
        { fromUtc: at(8), tempC: null },
        { fromUtc: at(10), tempC: least(18) },
      ],
    }),
    fault: LOST,
  })
  const wh = (outcome.depart01 ?? 0) * 60_000
  leftKnown.set(key, wh)
  return wh
}
const leftKnown = new Map<string, number>()
/** A leg that a battery with so much in it just makes, with the tenth in reserve kept. */
const legOfWh = (wh: number): LegParameters => leg(((wh - 6000) / WH_PER_KM) * 1000)

describe('the heating after the supply is lost', () => {
  it.each([
    ['down to 12 °C where that saves the leg and no change does not', 12, 99],
    ['down to 8 °C where that saves the leg and 12 °C does not', 8, 12],
    ['down to 5 °C where that saves the leg and 8 °C does not', 5, 8],
    ['off where that saves the leg and 5 °C does not', null, 5],
  ] as const)('is taken %s', (_, levelC, warmerC) => {
    const enoughWh = leftWh(levelC)
    const tooLittleWh = leftWh(warmerC)
    expect(enoughWh).toBeGreaterThan(tooLittleWh + 100)
    const advice = adviseOn({ ...HEATED, leg: legOfWh((enoughWh + tooLittleWh) / 2) }, LOST)
    expect(advice.actions).toEqual(
      levelC === null ? [{ code: 'heating-off' }] : [{ code: 'lower-heating', tempC: levelC }],
    )
    expect(advice.holds).toBe(true)
    expect(advice.byColdUtc).toBeNull()
    expect(advice.depart01 ?? 0).toBeCloseTo(enoughWh / 60_000, 3)
    expect(advice.legMarginWh).toBeGreaterThanOrEqual(0)
    expect(advice.byUtc).toBeGreaterThanOrEqual(at(5))
    expect(advice.byUtc ?? Infinity).toBeLessThan(at(14))
  })

  it('may stay until the last instant at which taking it down still saves the leg', () => {
    // A leg that wants the heating off by seven hours after arrival.
    const advice = adviseOn({ ...HEATED, leg: legOfWh(leftWh(null, 7)) }, LOST)
    expect(codes(advice)).toEqual(['heating-off'])
    expect(Math.abs((advice.byUtc ?? 0) - at(7))).toBeLessThan(300)
  })

  it('is left alone where the leg holds anyway, and where nothing saves it and all are warm', () => {
    const fine = adviseOn({ ...HEATED, leg: leg(10_000) }, LOST)
    expect(fine).toMatchObject({ actions: [], holds: true, byUtc: null, byColdUtc: null })
    const lost = adviseOn({ ...HEATED, leg: leg(300_000) }, LOST)
    expect(lost).toMatchObject({ actions: [], holds: false, byUtc: null, byColdUtc: null })
    expect(lost.legMarginWh).toBeLessThan(-1000)
  })

  it('is not taken down to a level that it never had', () => {
    const low = withDecisions({ ...HEATED, leg: leg(300_000) }, { setPoints: [{ fromUtc: at(3), tempC: 9 }] })
    const bare = simulateNight({ ...low, fault: LOST }).leg?.marginWh ?? 0
    const far = { ...low, leg: leg(300_000 + ((bare + 300) / WH_PER_KM) * 1000) }
    // 300 Wh short: 8 °C is the first level below the 9 °C that were set.
    const advice = adviseOn(far, LOST)
    expect(advice.actions).toEqual([{ code: 'lower-heating', tempC: 8 }])
  })

  it('is off where it had not begun: set-points after the fault fall with it', () => {
    const later = withDecisions({ ...HEATED, leg: null }, { setPoints: [{ fromUtc: at(9), tempC: 20 }] })
    const heatedWh = (simulateNight({ ...later, fault: LOST }).depart01 ?? 0) * 60_000
    const restedWh = (simulateNight(withDecisions({ ...later, fault: LOST }, { setPoints: [] })).depart01 ?? 0) * 60_000
    const advice = adviseOn({ ...later, leg: legOfWh(restedWh - 100) }, LOST)
    expect(restedWh).toBeGreaterThan(heatedWh + 1000)
    expect(codes(advice)).toEqual(['heating-off'])
    expect(advice.depart01 ?? 0).toBeCloseTo(restedWh / 60_000, 5)
  })
})

/** Cold without the heating; the heater fails two hours into the night. */
const cold = (over: Partial<NightInput> = {}, decisions: Partial<NightInput['decisions']> = {}): NightInput =>
  withDecisions({ ...HEATED, sleepers: [sleeper({ bedding: THIN_BAG })], ...over }, decisions)
const set = (id: string, bySleeper: Readonly<Record<string, Sleeper['bedding']>>, moves = 1): BeddingSet => ({
  id,
  bySleeper: Object.entries(bySleeper).map(([sleeperId, bedding]) => ({ sleeperId, bedding })),
  moves,
  volumeMm3: 1e7,
})

describe('bedding when the heater fails', () => {
  const THIN = set('thin', { one: THIN_BAG })
  const WARM = set('warm', { one: WARM_BAG })
  const asked = (beddingSets: readonly BeddingSet[], over: Partial<NightInput> = {}): FaultAdvice =>
    adviseOn(cold({ beddingSets, ...over }, { beddingSetId: 'thin' }), FAILED)

  it('is changed for the warm set, before anybody is cold', () => {
    const advice = asked([THIN, WARM])
    expect(advice.actions).toEqual([{ code: 'warmer-bedding', setId: 'warm' }])
    expect(advice).toMatchObject({ holds: true, depart01: null, legMarginWh: null })
    expect(advice.marginK).toBeGreaterThanOrEqual(0)
    expect(advice.byUtc).toBe(advice.byColdUtc)
    expect(advice.byUtc).toBeGreaterThanOrEqual(at(6))
  })

  it('that lies at home, warms nobody or leaves somebody colder is no help: people go indoors', () => {
    const two = [sleeper({ bedding: THIN_BAG }), sleeper({ id: 'two', bedding: THIN_BAG })]
    const robbed = set('robbed', { one: WARM_BAG, two: { ...THIN_BAG, coverClo: 1 } })
    for (const advice of [
      asked([THIN, { ...WARM, aboard: false }]),
      asked([THIN, set('same', { one: THIN_BAG })]),
      asked([THIN, robbed], { sleepers: two }),
    ]) {
      expect(codes(advice)).toEqual(['move-indoors'])
      expect(advice.holds).toBe(false)
      expect(advice.byUtc).toBe(advice.byColdUtc)
    }
  })

  it('counts the mat as well as the cover', () => {
    // A mat of 0.1 m2K/W loses most of the heat downwards: a sound mat alone mends it.
    const cover = { comfortC: null, coverClo: 12 }
    const bad = set('thin', { one: { ...cover, matM2KPerW: 0 } })
    const mat = set('mat', { one: { ...cover, matM2KPerW: 3 } })
    const advice = adviseOn(
      cold({ beddingSets: [bad, mat], weather: steadyWeather(-2) }, { beddingSetId: 'thin' }),
      FAILED,
    )
    expect(advice.actions).toEqual([{ code: 'warmer-bedding', setId: 'mat' }])
  })

  it('is the set that warms the one who is cold, though another adds more in all', () => {
    const people = [sleeper({ bedding: THIN_BAG }), sleeper({ id: 'two', bedding: { ...WARM_BAG, coverClo: 8 } })]
    const thin = set('thin', { one: THIN_BAG, two: { ...WARM_BAG, coverClo: 8 } })
    const right = set('right', { one: WARM_BAG }, 1)
    const wrong = set('wrong', { two: { ...WARM_BAG, coverClo: 30 } }, 5)
    const advice = asked([thin, wrong, right], { sleepers: people })
    expect(advice.actions).toEqual([{ code: 'warmer-bedding', setId: 'right' }])
  })

  it('of two that would do is the warmer one, as long as it is one handling', () => {
    const fair = set('fair', { one: { ...WARM_BAG, comfortC: -20, coverClo: 9 } })
    expect(asked([THIN, fair, WARM]).actions).toEqual([{ code: 'warmer-bedding', setId: 'warm' }])
    expect(asked([THIN, WARM, fair]).actions).toEqual([{ code: 'warmer-bedding', setId: 'warm' }])
  })

  it('that is not enough still comes first, and then people go indoors', () => {
    const better = set('better', { one: { ...THIN_BAG, comfortC: 6, coverClo: 4 } })
    const advice = asked([THIN, better])
    expect(codes(advice)).toEqual(['warmer-bedding', 'move-indoors'])
    expect(advice.holds).toBe(false)
    expect(advice.marginK).toBeLessThan(0)
  })
})

describe('bed heaters when the heater fails', () => {
  const BED = [{ id: 'bed', kind: 'underblanket', powerW: 60 }] as const
  /** A bag that leaves the sleeper three kelvins short: within what an underblanket gives. */
  const shortBy = (kelvin: number, over: Partial<NightInput> = {}): NightInput => {
    const bag = { comfortC: 0, coverClo: 14, matM2KPerW: 2 }
    const input = cold({ sleepers: [sleeper({ bedding: bag })], bedHeaters: BED, supply: null, ...over })
    const margin = simulateNight({ ...input, fault: FAILED }).sleepers[0]?.marginK ?? 0
    return { ...input, sleepers: [sleeper({ bedding: { ...bag, comfortC: margin + kelvin } })] }
  }

  it('are put on where that is enough, from bedtime where the fault comes before', () => {
    const before: Fault = { kind: 'heater-fails', atUtc: at(2) }
    const input = { ...shortBy(3), leg: leg(10_000) }
    const advice = adviseOn(input, before)
    expect(advice.actions).toEqual([{ code: 'bed-heaters-on' }])
    expect(advice.holds).toBe(true)
    // Never heated before the fault: 60 W over the eight hours asleep.
    expect(advice.depart01).toBeCloseTo(0.55 - (60 * 8) / 60_000, 9)
    const after = adviseOn(input, FAILED)
    expect(after.actions).toEqual([{ code: 'bed-heaters-on' }])
  })

  it('are no help where they are on already, or hang on no battery', () => {
    const on = withDecisions(shortBy(14), { bedHeaterIds: ['bed'] })
    expect(codes(adviseOn(on, FAILED))).toEqual(['move-indoors'])
    const mains = { ...shortBy(3), battery: null, leisure: null }
    expect(codes(adviseOn(mains, FAILED))).toEqual(['move-indoors'])
    const leisure = {
      kind: 'lead',
      usableWh: 2000,
      reserve01: 0.2,
      chargerW: 0,
      loadW: 0,
      arrive01: 1,
      inverterMaxW: 0,
    } as const
    expect(codes(adviseOn({ ...mains, leisure }, FAILED))).toEqual(['bed-heaters-on'])
  })
})

describe('covers', () => {
  const LOST_EARLY: Fault = { kind: 'supply-lost', atUtc: at(3) }

  /** A heater of 900 W that warms the car enough with covers up and not without; what the bag asks lies half way, or as much above covers as told. */
  function between(over: Partial<NightInput>, aboveCoveredK: number | null = null): NightInput {
    const base = cold({
      heater: { ...HEATED.heater, kind: 'resistance', maxHeatW: 900 },
      ...over,
    })
    const held = withDecisions(base, { setPoints: [{ fromUtc: at(0), tempC: 25 }] })
    const bag = { comfortC: 0, coverClo: 20, matM2KPerW: 3 }
    const marginOf = (coversFromUtc: ReturnType<typeof at>): number =>
      simulateNight(withDecisions({ ...held, sleepers: [sleeper({ bedding: bag })] }, { coversFromUtc })).sleepers[0]
        ?.marginK ?? 0
    const [bare, covered] = [marginOf(at(13.9)), marginOf(at(3))]
    expect(covered).toBeGreaterThan(bare + 1)
    const comfortC = aboveCoveredK === null ? (bare + covered) / 2 : covered + aboveCoveredK
    return { ...held, sleepers: [sleeper({ bedding: { ...bag, comfortC } })] }
  }

  it('go up where they are aboard and enough', () => {
    const advice = adviseOn(between({ coversOwned: true }), LOST_EARLY)
    expect(advice.actions).toEqual([{ code: 'covers-up' }])
    expect(advice.holds).toBe(true)
  })

  it('and a better bag together are not asked for where a bed heater alone does it', () => {
    // Half a kelvin short with covers up; a bag of one kelvin more would make it up, an underblanket alone does.
    const short = between({ coversOwned: true, bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 60 }] }, 0.5)
    const own = short.sleepers[0]?.bedding
    if (own?.comfortC === undefined || own.comfortC === null) throw new Error('a rated bag')
    const better = { ...own, comfortC: own.comfortC - 1, coverClo: own.coverClo + 1 }
    const choice = withDecisions(
      { ...short, beddingSets: [set('own', { one: own }), set('better', { one: better })] },
      { beddingSetId: 'own' },
    )
    expect(adviseOn(choice, LOST_EARLY).actions).toEqual([{ code: 'bed-heaters-on' }])
    expect(codes(adviseOn({ ...choice, bedHeaters: [] }, LOST_EARLY))).toEqual(['warmer-bedding', 'covers-up'])
  })

  it('are not named where they are not aboard', () => {
    expect(codes(adviseOn(between({}), LOST_EARLY))).toEqual(['move-indoors'])
  })
})

describe('a tripped breaker', () => {
  const trip = (resetUtc: ReturnType<typeof at> | null): Fault => ({
    kind: 'breaker-trips',
    atUtc: at(5),
    heldA: 8,
    resetUtc,
  })
  const plugged = { ...HEATED, supply: supply({ plugInUtc: at(0), unplugUtc: at(14) }) }
  const departWh = (fault: Fault): number => (simulateNight({ ...plugged, fault }).depart01 ?? 0) * 60_000

  it('is reset at once where the leg needs what it brings, and left alone where it is reset anyway', () => {
    const [never, now] = [departWh(trip(null)), departWh(trip(at(5)))]
    expect(now).toBeGreaterThan(never + 5000)
    const advice = adviseOn({ ...plugged, leg: legOfWh(now - 200) }, trip(null))
    expect(advice.actions).toContainEqual({ code: 'reset-lower', heldA: 8 })
    expect(advice.holds).toBe(true)
    // Nothing else resets it: heating off saves an hour of heat, not the eight hours of charging that the leg needs.
    const brief = withDecisions(
      { ...plugged, sleepers: [] },
      {
        setPoints: [
          { fromUtc: at(3), tempC: 16 },
          { fromUtc: at(6), tempC: null },
        ],
      },
    )
    const resetWh = (simulateNight({ ...brief, fault: trip(at(5)) }).depart01 ?? 0) * 60_000
    expect(adviseOn({ ...brief, leg: legOfWh(resetWh - 200) }, trip(null)).actions).toEqual([
      { code: 'reset-lower', heldA: 8 },
    ])
    const far = { ...plugged, leg: legOfWh(departWh(trip(at(9))) + 200) }
    expect(codes(adviseOn(far, trip(at(9))))).not.toContain('reset-lower')
  })
})

describe('who counts', () => {
  it('nobody is cold before bedtime, after rising or where nobody sleeps: then there is nothing to do', () => {
    const late: Fault = { kind: 'heater-fails', atUtc: at(12) }
    expect(adviseOn(cold(), late)).toMatchObject({ actions: [], holds: true, marginK: null })
    expect(adviseOn(cold({ sleepers: [] }), FAILED)).toMatchObject({ actions: [], holds: true, marginK: null })
    expect(adviseOn(cold(), { kind: 'heater-fails', atUtc: at(11) }).marginK).not.toBeNull()
  })

  it('people who are cold already are to go indoors at the fault itself', () => {
    const fault: Fault = { kind: 'heater-fails', atUtc: (at(6) + 100) as ReturnType<typeof at> }
    const freezing = cold({}, { setPoints: [] })
    expect(adviseOn(freezing, fault).byUtc).toBe(fault.atUtc)
  })

  it('people who turn cold later have until the start of the quarter of an hour in which they do', () => {
    const input = cold({ stepS: 300, sleepers: [sleeper({ bedding: { comfortC: 2, coverClo: 5, matM2KPerW: 0.9 } })] })
    const advice = adviseOn(input, FAILED)
    const coldUtc = simulateNight({ ...input, fault: FAILED }).sleepers[0]?.coldFromUtc ?? 0
    expect(codes(advice)).toEqual(['move-indoors'])
    expect(((advice.byUtc ?? 0) - at(0)) % 900).toBe(0)
    expect(coldUtc - (advice.byUtc ?? 0)).toBeGreaterThan(0)
    expect(coldUtc - (advice.byUtc ?? 0)).toBeLessThanOrEqual(1200)
  })
})
