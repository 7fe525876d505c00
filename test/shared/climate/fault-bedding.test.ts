/** Bedding, bed heaters and covers after a fault, on nights made so that only one answer is right. */
import { describe, expect, it } from 'vitest'
import { adviseOn } from '../../../shared/climate/fault-advice.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { FaultAdvice } from '../../../shared/climate/answers.ts'
import type { BeddingSet, Fault, NightInput } from '../../../shared/climate/index.ts'
import { FAILED, HEATED, THIN_BAG, WARM_BAG, codes, cold, leg, set } from './fault-fixture.ts'
import { at, sleeper, steadyWeather, withDecisions } from './night-fixture.ts'

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
