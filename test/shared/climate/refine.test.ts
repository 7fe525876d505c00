/** The least heat that keeps people warm, and what a plan is worth: against trying it, and by hand. */
import { describe, expect, it } from 'vitest'
import { justWarmEnough } from '../../../shared/climate/optimise/refine.ts'
import { score, scoreOf, scoreSets } from '../../../shared/climate/optimise/score.ts'
import type { Scored } from '../../../shared/climate/optimise/front.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import { searchNight } from '../../../shared/climate/index.ts'
import type { Prepared } from '../../../shared/climate/night-prepare.ts'
import type { BeddingSet, LegParameters, NightInput } from '../../../shared/climate/index.ts'
import { at, night, plainLeg, sleeper, steadyWeather, supply, withDecisions } from './night-fixture.ts'

const STEP_S = 300
const prepare = (input: NightInput): Prepared => prepareNight(input, STEP_S)
/** Six hours at -8 °C, asleep from two to five, under a bag that asks for some 10 °C. */
const COLD: NightInput = night({
  sleepFromUtc: at(2),
  sleepToUtc: at(5),
  departUtc: at(6),
  weather: steadyWeather(-8),
  supply: null,
  stepS: STEP_S,
  sleepers: [sleeper({ bedding: { comfortC: 5, coverClo: 5, matM2KPerW: 1 } })],
})
const held = (prepared: Prepared, tempC: number, over: Partial<NightInput['decisions']> = {}): Scored =>
  score(prepared, { ...COLD.decisions, setPoints: [{ fromUtc: at(1), tempC }], ...over })

describe('the lowest set-point that is warm enough', () => {
  const prepared = prepare(COLD)

  it('is held from an hour before bed, and a twentieth of a kelvin less is too cold', () => {
    const { points, evaluated } = justWarmEnough(prepared, [held(prepared, 20)], false)
    expect(points.length).toBe(1)
    const [point] = points
    const [setPoint] = point?.decisions.setPoints ?? []
    const tempC = setPoint?.tempC ?? Number.NaN
    expect(setPoint?.fromUtc).toBe(at(1))
    expect(point?.comfortMarginK).toBeGreaterThanOrEqual(0)
    expect(held(prepared, tempC).comfortMarginK).toBe(point?.comfortMarginK)
    expect(held(prepared, tempC - 0.05).comfortMarginK).toBeLessThan(0)
    expect(tempC).toBeGreaterThan(5)
    expect(tempC).toBeLessThan(20)
    expect(evaluated).toBe(9)
  })

  it('keeps everything else of the warm plan that heats least', () => {
    const frugal = held(prepared, 18, { windowGapMm: 0 })
    const airy = held(prepared, 20, { windowGapMm: 20, windowSides: 2 })
    const cold = held(prepared, 5, { windowGapMm: 7, windowSides: 1 })
    expect(cold.comfortMarginK).toBeLessThan(0)
    for (const swept of [
      [airy, frugal, cold],
      [cold, frugal, airy],
    ]) {
      const { points } = justWarmEnough(prepared, swept, false)
      expect(points[0]?.decisions.windowGapMm).toBe(0)
    }
    expect(justWarmEnough(prepared, [airy, cold], false).points[0]?.decisions.windowGapMm).toBe(20)
  })

  it('is 5 °C where that is enough', () => {
    const mild = prepare({ ...COLD, sleepers: [sleeper({ bedding: { comfortC: -30, coverClo: 13, matM2KPerW: 2 } })] })
    const { points } = justWarmEnough(mild, [score(mild, COLD.decisions)], false)
    expect(points[0]?.decisions.setPoints).toEqual([{ fromUtc: at(1), tempC: 5 }])
  })

  it('is sought only where some plan is warm and something heats, and may not exist', () => {
    expect(justWarmEnough(prepared, [held(prepared, 5)], true)).toEqual({ points: [], evaluated: 0 })
    expect(justWarmEnough(prepared, [], true)).toEqual({ points: [], evaluated: 0 })
    const bare = prepare({ ...COLD, heater: { ...COLD.heater, kind: 'none' } })
    expect(justWarmEnough(bare, [held(prepared, 20)], true)).toEqual({ points: [], evaluated: 0 })
    // A plan said to be warm that no set-point up to 24 °C can match.
    const arctic = prepare({ ...COLD, sleepers: [sleeper({ bedding: { comfortC: 30, coverClo: 1, matM2KPerW: 0 } })] })
    expect(justWarmEnough(arctic, [held(prepared, 20)], false)).toEqual({ points: [], evaluated: 9 })
  })
})

describe('a set-point that follows the night', () => {
  const prepared = prepare({
    ...COLD,
    weather: [
      { atUtc: at(0), tempC: 2, windMPerS: 1, humidity01: 0.8, cloud01: 1 },
      { atUtc: at(6), tempC: -14, windMPerS: 1, humidity01: 0.8, cloud01: 1 },
    ],
  })
  const { points, evaluated } = justWarmEnough(prepared, [held(prepared, 20)], true)
  const [still, followed] = points

  it('takes less heat than the lowest held one, and leaves nobody cold by more than two thousandths', () => {
    expect(points.length).toBe(2)
    expect(followed?.heatingWh).toBeLessThan((still?.heatingWh ?? 0) * 0.98)
    expect(followed?.comfortMarginK).toBeGreaterThanOrEqual(-0.002)
    expect(followed?.comfortMarginK).toBeLessThan(0.1)
    expect(evaluated).toBeGreaterThanOrEqual(9 + 18)
    expect((evaluated - 9) % 18).toBe(0)
  })

  it('changes twelve times five minutes apart, then every quarter of an hour, and is off from rising on', () => {
    const set = followed?.decisions.setPoints ?? []
    const expected = [
      ...Array.from({ length: 12 }, (_, piece) => at(2) + 300 * (piece + 1)),
      ...Array.from({ length: 7 }, (_, piece) => at(3) + 900 * (piece + 1)),
    ]
    expect(set.slice(1, -1).map(({ fromUtc }) => fromUtc as number)).toEqual(expected)
    expect(set.at(-1)).toEqual({ fromUtc: at(5), tempC: null })
    // It begins before bed, by two hours at most.
    expect(set[0]?.fromUtc).toBeLessThanOrEqual(at(2))
    expect(set[0]?.fromUtc).toBeGreaterThanOrEqual(at(0))
    for (const { tempC } of set.slice(0, -1)) expect(tempC).toBeLessThanOrEqual(60)
  })

  it('leaves no piece of the later night with anything to spare', () => {
    const { columns } = runNight(prepared, followed?.decisions ?? COLD.decisions)
    // The rating rules: 5 °C comfort and 5 K in hand are 10 °C.
    const later = [...columns.atUtc.keys()].filter(
      (row) => (columns.atUtc[row] ?? 0) > at(3.5) && (columns.atUtc[row] ?? 0) <= at(5),
    )
    expect(later.length).toBe(18)
    const operative = later.map((row) => columns.operativeC[row] ?? 0)
    expect(Math.max(...operative) - Math.min(...operative)).toBeLessThan(0.25)
  })
})

describe('what a plan is worth', () => {
  const leg: LegParameters = plainLeg()

  it('is read off the run: charge, leg, price, and the last hour asleep', () => {
    const input = { ...COLD, leg, supply: supply({ plugInUtc: at(0), unplugUtc: at(6), fixedPrice: 3 }) }
    const prepared = prepare(input)
    const run = runNight(prepared, input.decisions)
    const scored = scoreOf(prepared, input.decisions, run)
    expect(scored.depart01).toBe(run.charge01)
    // 50 km at 200 Wh/km and a tenth of 60 kWh kept.
    expect(scored.legNeedWh).toBeCloseTo(10_000, 6)
    expect(scored.legMarginWh).toBeCloseTo(run.charge01 * 60_000 - 10_000 - 6000, 6)
    expect(scored.legReachable).toBe(true)
    expect(scored.cost).toBeCloseTo(3 + (0.4 * run.totals.supplyWh) / 1000, 9)
    const asleep = [...run.columns.atUtc.keys()].filter(
      (row) => (run.columns.atUtc[row] ?? 0) > at(2) && (run.columns.atUtc[row] ?? 0) <= at(5),
    )
    expect(scored.risingC).toBe(run.columns.operativeC[run.columns.atUtc.indexOf(at(5))])
    expect(scored.co2MaxPpm).toBe(Math.max(...asleep.map((row) => run.columns.co2Ppm[row] ?? 0)))
    expect(scored).toMatchObject({
      sleepers: 1,
      moves: 0,
      beddingVolumeMm3: 0,
      heatingWh: run.totals.heatingWh,
      supplyWh: run.totals.supplyWh,
      wiringWh: run.totals.wiringWh,
    })
  })

  it('knows no charge and no leg without them, and a leg out of reach', () => {
    const bare = prepare({ ...COLD, battery: null })
    expect(score(bare, COLD.decisions)).toMatchObject({
      depart01: null,
      legMarginWh: null,
      legReachable: true,
      legNeedWh: 0,
      cost: 0,
    })
    const far = prepare({ ...COLD, leg: { ...leg, distanceM: 500_000 } })
    expect(score(far, COLD.decisions).legReachable).toBe(false)
  })

  it('counts comfort by the coldest hour asleep of whoever is coldest, under the set’s own bedding', () => {
    const warm = { comfortC: -5, coverClo: 9, matM2KPerW: 1 }
    const sets: readonly BeddingSet[] = [
      { id: 'own', bySleeper: [], moves: 1, volumeMm3: 1e6 },
      { id: 'warm', bySleeper: [{ sleeperId: 'one', bedding: warm }], moves: 3, volumeMm3: 4e6 },
    ]
    const input = { ...COLD, beddingSets: sets }
    const prepared = prepare(input)
    const scored = scoreSets(prepared, { ...COLD.decisions, covers: true })
    expect(scored.map(({ decisions }) => decisions.beddingSetId)).toEqual(['own', 'warm'])
    expect(scored.map(({ moves }) => moves)).toEqual([1 + COLD.cabin.panes.length, 3 + COLD.cabin.panes.length])
    expect(scored.map(({ beddingVolumeMm3 }) => beddingVolumeMm3)).toEqual([1e6, 4e6])
    expect((scored[1]?.comfortMarginK ?? 0) - (scored[0]?.comfortMarginK ?? 0)).toBeGreaterThan(5)
    const none = scoreSets(prepare(COLD), COLD.decisions)
    expect(none.length).toBe(1)
    expect(none[0]?.decisions).not.toHaveProperty('beddingSetId')
  })

  it('without people is the lowest operative temperature over the hours of sleep', () => {
    const prepared = prepare({ ...COLD, sleepers: [] })
    const { columns } = runNight(prepared, COLD.decisions)
    const lowest = Math.min(
      ...[...columns.operativeC].filter(
        (_, row) => (columns.atUtc[row] ?? 0) > at(2) && (columns.atUtc[row] ?? 0) <= at(5),
      ),
    )
    expect(score(prepared, COLD.decisions).comfortMarginK).toBe(lowest)
  })

  it('on a hot night is what is left to 26 °C, and heat counts for nothing below 20 °C', () => {
    const under = (tempC: number): { readonly comfortK: number; readonly hottestC: number } => {
      const input = withDecisions(
        {
          ...COLD,
          weather: steadyWeather(tempC),
          arriveInsideC: tempC,
          sleepers: [sleeper({ bedding: { comfortC: -30, coverClo: 13, matM2KPerW: 3 } })],
        },
        { setPoints: [] },
      )
      const prepared = prepare(input)
      const { columns } = runNight(prepared, input.decisions)
      const asleep = [...columns.operativeC].filter(
        (_, row) => (columns.atUtc[row] ?? 0) > at(2) && (columns.atUtc[row] ?? 0) <= at(5),
      )
      return { comfortK: score(prepared, input.decisions).comfortMarginK, hottestC: Math.max(...asleep) }
    }
    const hot = under(28)
    expect(hot.hottestC).toBeGreaterThan(26)
    expect(hot.comfortK).toBeCloseTo(26 - hot.hottestC, 9)
    const mild = under(15)
    expect(mild.hottestC).toBeLessThan(20)
    expect(mild.comfortK).toBeGreaterThan(26 - mild.hottestC)
  })
})

describe('what the search tells', () => {
  it('is at most sixteen plans, more than a handful where there are many, the warmest, fullest and cheapest among them', () => {
    const input = {
      ...withDecisions(COLD, { windowGapMm: 15, windowSides: 2 }),
      coversOwned: true,
      bedHeaters: [
        { id: 'a', kind: 'underblanket', powerW: 40 },
        { id: 'b', kind: 'foot-pad', powerW: 20 },
      ],
    } as const satisfies NightInput
    const { front, evaluated } = searchNight({ ...input, stepS: 900 }, { gapsMm: [15] })
    expect(front.length).toBeGreaterThan(8)
    expect(front.length).toBeLessThanOrEqual(16)
    expect(evaluated).toBeGreaterThan(100)
    const margins = front.map(({ comfortMarginK }) => comfortMarginK)
    expect(margins).toEqual(margins.toSorted((left, right) => right - left))
    // The fullest battery is that of no heating at all: nothing but what stands still.
    expect(Math.max(...front.map(({ depart01 }) => depart01 ?? 0))).toBeCloseTo(0.5, 9)
    expect(Math.min(...front.map(({ moves }) => moves ?? Infinity))).toBe(0)
    // Spread over the field, not heaped at one end.
    const gaps = margins.slice(1).map((margin, index) => (margins[index] ?? margin) - margin)
    expect(Math.max(...gaps)).toBeLessThan(((margins[0] ?? 0) - (margins.at(-1) ?? 0)) / 2)
    expect(searchNight({ ...input, beddingSets: [] }, { setPointsC: [10], gapsMm: [15] }).front[0]).not.toHaveProperty(
      'beddingVolumeMm3',
    )
  })

  describe('the plans that it tries', () => {
    /** One temperature: the night's own profile, off, held, lowered and morning. */
    const tried = (input: NightInput, options: Parameters<typeof searchNight>[1]) => {
      const { evaluated, front } = searchNight({ ...input, stepS: 900 }, { setPointsC: [14], ...options })
      return { evaluated, front: front.length }
    }
    const AIRED = withDecisions(COLD, { windowGapMm: 15, windowSides: 2 })

    it('are five profiles, nine turns of the lowest set-point, and the front once more at full resolution', () => {
      const { evaluated, front } = tried(AIRED, { gapsMm: [15] })
      expect(evaluated - 5 - 9).toBeGreaterThanOrEqual(front)
      expect(evaluated - 5 - 9).toBeLessThanOrEqual(6)
    })

    it('open no window wider than the air asks for in the cold, and all the gaps on a warm night', () => {
      const narrow = tried(AIRED, { gapsMm: [15] })
      expect(tried(AIRED, { gapsMm: [15, 30, 50] })).toEqual(narrow)
      const warm = { ...AIRED, weather: steadyWeather(15) }
      expect(tried(warm, { gapsMm: [15, 30, 50] }).evaluated).toBeGreaterThanOrEqual(
        tried(warm, { gapsMm: [15] }).evaluated + 9,
      )
    })

    it('all keep to a current and a limit that are asked for', () => {
      const plugged = { ...AIRED, supply: supply({ plugInUtc: at(0), unplugUtc: at(6) }) }
      const { front } = searchNight(
        { ...plugged, stepS: 900 },
        { setPointsC: [14], gapsMm: [15], currentsA: [7], chargeLimits01: [0.7] },
      )
      for (const { decisions } of front) expect(decisions).toMatchObject({ currentA: 7, chargeLimit01: 0.7 })
      expect(front.length).toBeGreaterThan(0)
    })

    it('vary current and limit only away from what was tried already', () => {
      const plugged = { ...AIRED, supply: supply({ plugInUtc: at(0), unplugUtc: at(6) }) }
      const one = tried(plugged, { gapsMm: [15], currentsA: [null], chargeLimits01: [0.9] })
      expect(one.evaluated - 5 - 9).toBeLessThanOrEqual(6)
      const two = tried(plugged, { gapsMm: [15], currentsA: [null], chargeLimits01: [0.9, 0.55] })
      expect(two.evaluated).toBeGreaterThan(one.evaluated)
    })
  })

  it('what if it were five kelvins colder or the leg took a tenth more: as simulated', () => {
    const input: NightInput = {
      ...COLD,
      leg: plainLeg({ consumptionScale: 1.2 }),
    }
    const { front, recommendedIndex, sensitivity } = searchNight(input, { setPointsC: [12], gapsMm: [0] })
    const chosen = front[recommendedIndex]
    if (chosen === undefined || sensitivity === undefined) throw new Error('a plan and its what-ifs')
    const colder = prepareNight({ ...input, weather: steadyWeather(-13) })
    const there = score(colder, chosen.decisions)
    expect(sensitivity.colder.comfortMarginK).toBeCloseTo(there.comfortMarginK, 9)
    expect(sensitivity.colder.depart01).toBeCloseTo(there.depart01 ?? 0, 9)
    expect(sensitivity.colder.legMarginWh).toBeCloseTo(there.legMarginWh ?? 0, 6)
    // A tenth more of 50 km at 1.2 x 200 Wh/km: 1.2 kWh.
    expect((chosen.legMarginWh ?? 0) - (sensitivity.thirstier.legMarginWh ?? 0)).toBeCloseTo(1200, 6)
  })
})
