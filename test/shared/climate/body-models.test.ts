/** Comfort of people: the vote against the standard's equations solved anew, ranges at their borders, a sleeper's balance by hand. */
import { describe, expect, it } from 'vitest'
import { nightStandards, simulateNight } from '../../../shared/climate/index.ts'
import { pmv, pmvInRange, ppdPercent } from '../../../shared/climate/sources/pmv.ts'
import { ireq } from '../../../shared/climate/sources/ireq.ts'
import { saturationPa } from '../../../shared/climate/moisture-saturation.ts'
import { bodySurfaceM2, releaseOf } from '../../../shared/climate/sleepers-body.ts'
import {
  balanceMarginK,
  feetMarginK,
  marginK,
  ratingMarginK,
  requiredClo,
  sleepRows,
  sleeperModel,
} from '../../../shared/climate/sleepers.ts'
import type { NightOutcome } from '../../../shared/climate/index.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import { at, night, randomFrom, sleeper, steadyWeather } from './night-fixture.ts'

type Point = Parameters<typeof pmv>[0]
const POINT: Point = { airC: 22, radiantC: 22, speedMPerS: 0.1, humidity01: 0.5, met: 1.2, clo: 0.5 }

/** ISO 7730:2005 equations 1 to 4 written out, the clothing's surface found by halving. */
function slowVote({ airC, radiantC, speedMPerS, humidity01, met, clo, workMet = 0 }: Point): number {
  const m = met * 58.15
  const w = workMet * 58.15
  const insulation = 0.155 * clo
  const factor = insulation <= 0.078 ? 1 + 1.29 * insulation : 1.05 + 0.645 * insulation
  const pa = humidity01 * 1000 * Math.exp(16.6536 - 4030.183 / (airC + 235))
  const convection = (surfaceC: number): number =>
    Math.max(2.38 * Math.abs(surfaceC - airC) ** 0.25, 12.1 * Math.sqrt(speedMPerS))
  const dry = (surfaceC: number): number =>
    3.96e-8 * factor * ((surfaceC + 273) ** 4 - (radiantC + 273) ** 4) +
    factor * convection(surfaceC) * (surfaceC - airC)
  let [low, high] = [-60, 80]
  for (let turn = 0; turn < 80; turn += 1) {
    const middle = (low + high) / 2
    if (35.7 - 0.028 * (m - w) - insulation * dry(middle) > middle) low = middle
    else high = middle
  }
  const skin = 3.05e-3 * (5733 - 6.99 * (m - w) - pa)
  const sweat = m - w > 58.15 ? 0.42 * (m - w - 58.15) : 0
  const breath = 1.7e-5 * m * (5867 - pa) + 0.0014 * m * (34 - airC)
  return (0.303 * Math.exp(-0.036 * m) + 0.028) * (m - w - skin - sweat - breath - dry(low))
}

describe('the predicted vote', () => {
  it('is what the equations give, with outside work and without clothes too (seeds 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const random = randomFrom(seed)
      const point: Point = {
        airC: 10 + 20 * random(),
        radiantC: 10 + 25 * random(),
        speedMPerS: random(),
        humidity01: random(),
        met: 0.8 + 2.5 * random(),
        clo: seed % 5 === 0 ? 0 : 2 * random(),
        ...(seed % 3 === 0 ? { workMet: 0.5 * random() } : {}),
      }
      expect(Math.abs(pmv(point) - slowVote(point)), `seed ${seed}`).toBeLessThan(0.003)
    }
  })

  it.each([
    ['met', 0.8, 4, 0.01],
    ['clo', 0, 2, 0.001],
    ['airC', 10, 30, 0.01],
    ['radiantC', 10, 40, 0.01],
    ['speedMPerS', 0, 1, 0.001],
  ] as const)('is known up to both ends of %s and not beyond', (name, least, most, beyond) => {
    // Beside each border a point whose vote lies within two.
    const near: readonly Point[] = [
      POINT,
      { ...POINT, airC: 28, radiantC: 28, clo: 0.3 },
      { ...POINT, airC: 18, radiantC: 18, met: 2, clo: 1 },
      { ...POINT, airC: 14, radiantC: 14, met: 3.5, clo: 0.4 },
      { ...POINT, met: 1.6, clo: 1.2, airC: 16, radiantC: 12 },
    ]
    const known = (value: number): boolean => near.some((point) => pmvInRange({ ...point, [name]: value }) !== null)
    expect([known(least), known(most)]).toEqual([true, true])
    expect([known(least - beyond), known(most + beyond)]).toEqual([false, false])
  })

  it('is not told beyond two either way', () => {
    expect(pmvInRange({ ...POINT, airC: 10, radiantC: 10 })).toBeNull()
    expect(pmvInRange({ ...POINT, airC: 30, radiantC: 40, met: 2 })).toBeNull()
    expect(pmvInRange(POINT)).toBe(pmv(POINT))
  })
})

describe('the time that worn clothing allows in the cold', () => {
  it('grows with clothing, is told up to eight hours, and is none where nothing is lost', () => {
    const limits = Array.from({ length: 56 }, (_, index) => 0.5 + index / 10).map(
      (wornClo) =>
        ireq({
          metabolicWPerM2: 116,
          workWPerM2: 0,
          airC: -15,
          radiantC: -15,
          permeabilityLPerM2S: 8,
          walkMPerS: 0.3,
          windMPerS: 1,
          humidity01: 0.8,
          wornClo,
        })?.minimal.limitH,
    )
    const told = limits.filter((limit) => typeof limit === 'number')
    expect(told.length).toBeGreaterThan(5)
    expect(told).toEqual(told.toSorted((left, right) => left - right))
    expect(Math.min(...told)).toBeGreaterThan(0)
    expect(Math.max(...told)).toBeLessThanOrEqual(8)
    // Once it is over eight hours or endless it stays so.
    expect(limits.slice(told.length).every((limit) => limit === null)).toBe(true)
    expect(limits.length - told.length).toBeGreaterThan(5)
  })
})

describe('what the standards read off a night', () => {
  const input = night({ stepS: 3600 })
  const outcome = simulateNight(input)
  const air = [20, 21, 22, 23, 24, 25, 26]
  /** A night of seven rows with temperatures of its own; the surroundings a kelvin below the air. */
  const rows = (atHours: readonly number[]): NightOutcome => ({
    ...outcome,
    series: {
      ...outcome.series,
      atUtc: atHours.map(at),
      bedAirC: air,
      operativeC: air.map((tempC) => tempC - 1),
      relativeHumidity01: air.map(() => 0.4),
    },
  })
  const voteAtC = (airC: number): number | null =>
    pmvInRange({ airC, radiantC: airC - 2, speedMPerS: 0.1, humidity01: 0.4, met: 1, clo: 1 })

  it('is the vote in the first row that ends at or after bedtime', () => {
    const sitting = (hours: readonly number[]) => nightStandards(input, rows(hours)).sitting
    // Bedtime is at four.
    expect(sitting([1, 2, 3, 4, 5, 6, 7]).vote).toBe(voteAtC(23))
    expect(sitting([1, 2, 3.5, 4.5, 5, 6, 7]).vote).toBe(voteAtC(23))
    expect(sitting([4, 5, 6, 7, 8, 9, 10]).vote).toBe(voteAtC(20))
    expect(sitting([0.1, 0.2, 0.3, 1, 2, 3, 3.5]).vote).toBe(voteAtC(26))
    const { vote, dissatisfied01 } = sitting([1, 2, 3, 4, 5, 6, 7])
    expect(dissatisfied01).toBeCloseTo(ppdPercent(vote ?? 9) / 100, 12)
  })

  it('is the weather of the last row before an instant, the first where there is none', () => {
    const cold = steadyWeather(-20, { windMPerS: 5 })[0]
    const mild = steadyWeather(-5, { windMPerS: 5, atUtc: at(7) })[0]
    if (cold === undefined || mild === undefined) throw new Error('two rows')
    const chill = (weather: readonly (typeof cold)[]) =>
      nightStandards({ ...input, weather }, outcome).outside.map(({ windChillC }) => windChillC)
    const [arriving = 0, leaving = 0] = chill([cold, mild])
    expect(leaving ?? 0).toBeGreaterThan((arriving ?? 0) + 10)
    // -20 °C at 18 km/h by the published formula.
    expect(arriving).toBeCloseTo(13.12 - 12.43 + (-11.37 - 7.93) * 18 ** 0.16, 9)
    expect(chill([mild])[0]).toBe(leaving)
    expect(chill([{ ...cold, tempC: 10 }])[0]).not.toBeNull()
    expect(chill([{ ...cold, tempC: 10.1 }])[0]).toBeNull()
    expect(chill([{ ...cold, windMPerS: 4.8 / 3.6 + 1e-9 }])[0]).not.toBeNull()
    expect(chill([{ ...cold, windMPerS: 4.79 / 3.6 }])[0]).toBeNull()
  })
})

describe('a sleeper’s balance by hand', () => {
  const bedding = { comfortC: null, coverClo: 5, matM2KPerW: 0.8 }
  const climate = { operativeC: 2, floorC: -1, feetC: 1, bedAirC: 3, vapourPa: 500 }
  const HEATERS = [
    { id: 'a', kind: 'underblanket', powerW: 60 },
    { id: 'b', kind: 'foot-pad', powerW: 20 },
  ] as const

  /** Heat made less heat lost, over what each kelvin costs. */
  function slowMarginK(madeWPerM2: number, coverClo = 5, matM2KPerW = 0.8, operativeC = 2): number {
    const cover = coverClo * 0.155
    const over = 0.73 / (cover + 0.1)
    const under = 0.27 / (matM2KPerW + 0.05)
    const breath = 0.0014 * madeWPerM2 * (34 - 3) + 1.7e-5 * madeWPerM2 * (5867 - 500)
    const skin = (0.06 * (saturationPa(33) - 500)) / 1000 / ((cover + 0.1) / (0.38 * 16.5))
    return (madeWPerM2 - breath - skin - over * (33 - operativeC) - under * (33 + 1)) / (over + under)
  }

  it('closes at the same shift of the surroundings, for each kind of sleeper', () => {
    for (const [sleeps, made] of [
      ['cold', 40],
      ['average', 43.5],
      ['warm', 47],
    ] as const)
      expect(balanceMarginK(sleeperModel(sleeper({ sleeps, bedding }), 1, []), climate)).toBeCloseTo(
        slowMarginK(made),
        9,
      )
    const bare = { comfortC: null, coverClo: -1, matM2KPerW: -1 }
    expect(balanceMarginK(sleeperModel(sleeper({ bedding: bare }), 1, []), climate)).toBeCloseTo(
      slowMarginK(43.5, 0, 0),
      9,
    )
  })

  it('counts two fifths of an underblanket and a quarter of a foot pad, shared, up to 8 K', () => {
    const skinM2 = bodySurfaceM2(sleeper())
    const perK = 0.73 / (0.775 + 0.1) + 0.27 / 0.85
    const reliefK = (sharedBy: number, powerScale = 1): number =>
      balanceMarginK(
        sleeperModel(
          sleeper({ bedding }),
          sharedBy,
          HEATERS.map((heater) => ({ ...heater, powerW: heater.powerW * powerScale })),
        ),
        climate,
      ) - slowMarginK(43.5)
    expect(reliefK(3)).toBeCloseTo((60 * 0.4 + 20 * 0.25) / 3 / skinM2 / perK, 9)
    expect(reliefK(0, 0.3)).toBeCloseTo((0.3 * (60 * 0.4 + 20 * 0.25)) / skinM2 / perK, 9)
    expect(reliefK(1, 3)).toBeCloseTo(8, 9)
  })

  it('a rating asks for five kelvins over its comfort, eight of those who sleep cold, less what a bed heater brings', () => {
    const rated = { comfortC: -4, coverClo: 5, matM2KPerW: 0.8 }
    const of = (sleeps: 'cold' | 'average' | 'warm', heaters: readonly (typeof HEATERS)[number][] = []) =>
      ratingMarginK(sleeperModel(sleeper({ sleeps, bedding: rated }), 4, heaters), climate)
    expect([of('cold'), of('average'), of('warm')]).toEqual([-2, 1, 1])
    const reliefK = (60 * 0.4 + 20 * 0.25) / 4 / bodySurfaceM2(sleeper()) / (0.73 / 0.875)
    expect(of('average', HEATERS)).toBeCloseTo(1 + reliefK, 9)
    expect(ratingMarginK(sleeperModel(sleeper({ bedding }), 1, []), climate)).toBeNull()
  })

  it('the colder of both rules, and feet ask for three kelvins more, less twelve by a foot pad', () => {
    const of = (comfortC: number | null, heaters: readonly (typeof HEATERS)[number][] = []) =>
      sleeperModel(sleeper({ bedding: { ...bedding, comfortC } }), 1, heaters)
    expect(marginK(of(null), climate)).toEqual({
      marginK: expect.closeTo(slowMarginK(43.5), 9),
      ruledBy: 'heat-balance',
    })
    expect(marginK(of(20), climate)).toEqual({ marginK: -23, ruledBy: 'bag-rating' })
    expect(marginK(of(-60), climate).ruledBy).toBe('heat-balance')
    // Feet at 1 °C are a kelvin under the operative 2 °C.
    const plain = feetMarginK(of(null), climate)
    expect(plain).toBeCloseTo(slowMarginK(43.5, 5, 0.8, 1) - 3, 9)
    // A foot pad takes twelve off, and warms the body besides by a quarter of its 20 W.
    const perK = 0.73 / 0.875 + 0.27 / 0.85
    const bodyK = (20 * 0.25) / bodySurfaceM2(sleeper()) / perK
    expect(feetMarginK(of(null, [HEATERS[1]]), climate) - plain).toBeCloseTo(12 + bodyK, 9)
    // The best of several heaters counts for the feet, not their sum.
    const both =
      feetMarginK(of(null, HEATERS), climate) - marginK(of(null, HEATERS), { ...climate, operativeC: 1 }).marginK
    expect(both).toBeCloseTo(12 - 3, 9)
  })

  it('asks for no cover where none is needed and for fifteen clo where none would do', () => {
    const model = sleeperModel(sleeper({ bedding: { ...bedding, matM2KPerW: 3 } }), 1, [])
    const all = (tempC: number) => ({ operativeC: tempC, floorC: tempC, feetC: tempC, bedAirC: tempC, vapourPa: 500 })
    expect(requiredClo(model, all(33))).toBe(0)
    expect(requiredClo(model, all(-60))).toBe(15)
  })

  it('counts the rows that end in the hours of sleep, both borders as they should be, and the last where there is none', () => {
    const input = night({ stepS: 3600 })
    const { columns } = runNight(prepareNight(input), input.decisions)
    // Asleep from four to twelve: rows that end at five to twelve.
    expect(sleepRows(input, columns)).toEqual([4, 5, 6, 7, 8, 9, 10, 11])
    expect(sleepRows({ ...input, sleepFromUtc: at(20), sleepToUtc: at(21) }, columns)).toEqual([13])
  })

  it('gives off heat by its skin, less what leaves as water', () => {
    const one = sleeper()
    const skinM2 = bodySurfaceM2(one)
    expect(releaseOf([one], true).sensibleW).toBeCloseTo(0.75 * 58.15 * skinM2 - (45 * 2430) / 3600, 6)
    expect(releaseOf([one], false)).toEqual({
      sensibleW: expect.closeTo(58.15 * skinM2 - (55 * 2430) / 3600, 6),
      waterKgPerS: expect.closeTo(0.055 / 3600, 12),
      co2LPerH: 17,
    })
    expect(releaseOf([], true)).toEqual({ sensibleW: 0, waterKgPerS: 0, co2LPerH: 0 })
    expect(releaseOf([one, one, one], true).co2LPerH).toBe(39)
  })
})
