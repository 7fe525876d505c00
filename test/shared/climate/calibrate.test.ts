import { describe, expect, it } from 'vitest'
import { calibrate, simulateNight } from '../../../shared/climate/index.ts'
import { at, fallingWeather, night, randomFrom, sleeper, supply, withDecisions } from './night-fixture.ts'
import type { MeasuredNight, NightInput, NightOutcome } from '../../../shared/climate/index.ts'

const PAIRS = 200
const FROM = at(4)
const TO = at(12)

const rowAt = (outcome: NightOutcome, atUtc: number): number =>
  outcome.series.atUtc.findIndex((instant) => instant >= atUtc)
const spanWh = (column: readonly number[], outcome: NightOutcome): number =>
  column.slice(rowAt(outcome, FROM) + 1, rowAt(outcome, TO) + 1).reduce((sum, watts) => sum + watts * (300 / 3600), 0)

/** What a traveller reads of a night: energy within 2 %, temperature within 0.5 K, charge in whole percent. */
function read(input: NightInput, assumed: NightInput, random: () => number): MeasuredNight {
  const outcome = simulateNight(input)
  const noise = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const { series } = outcome
  const percent = (row: number): number => Math.round((series.charge01[row] ?? 0) * 100) / 100
  const lowest = Math.min(...series.bedAirC.slice(rowAt(outcome, FROM), rowAt(outcome, TO)))
  return {
    input: assumed,
    fromUtc: FROM,
    toUtc: TO,
    heatingWh: null,
    siteWh: input.supply === null ? null : spanWh(series.supplyW, outcome) * (1 + 0.02 * noise()),
    from01: percent(rowAt(outcome, FROM)),
    to01: percent(rowAt(outcome, TO)),
    lowestInsideC: lowest + 0.5 * noise(),
    meanInsideC: null,
  }
}

/** One vehicle's night: a body and its real loss, any weather, heated on battery or post. */
function someNight(random: () => number, lossScale: number): NightInput {
  const between = (low: number, high: number): number => low + (high - low) * random()
  const start = between(-8, 8)
  const base = night()
  return withDecisions(
    {
      ...base,
      weather: fallingWeather(start, start - between(2, 10), { windMPerS: between(0, 5), cloud01: random() }),
      cabin: { ...base.cabin, lossScale },
      sleepers: [sleeper()],
      supply: random() < 0.5 ? null : supply({ siteLimitA: 10 }),
      battery:
        base.battery === null
          ? null
          : { ...base.battery, usableWh: 65_000, arrive01: between(0.4, 0.7), overheadW: 200 },
    },
    { setPoints: [{ fromUtc: at(3), tempC: between(10, 18) }] },
  )
}

const assume = (input: NightInput, lossScale = 1): NightInput => ({ ...input, cabin: { ...input.cabin, lossScale } })

describe('calibration from the owner’s own nights', () => {
  it(`forecasts within 10 % in the median of ${PAIRS} pairs of nights (seeds 1 to ${PAIRS})`, () => {
    const errors: number[] = []
    const covered: boolean[] = []
    for (let seed = 1; seed <= PAIRS; seed += 1) {
      const random = randomFrom(seed)
      const truth = Math.exp((random() - 0.5) * 1.2)
      const nights = [someNight(random, truth), someNight(random, truth)]
      const fitted = calibrate(nights.map((input) => read(input, assume(input), random)))
      const next = someNight(random, truth)
      const real = simulateNight(next).heatingWh
      const forecast = simulateNight(assume(next, fitted.lossScale)).heatingWh
      errors.push(Math.abs(forecast / real - 1))
      covered.push(Math.abs(fitted.lossScale - truth) < 2 * fitted.lossScaleSpread)
    }
    errors.sort((left, right) => left - right)
    expect(errors[PAIRS / 2]).toBeLessThan(0.1)
    // Two standard deviations should hold the truth nearly always; the model's own share of the spread makes them wide.
    expect(covered.filter(Boolean).length).toBeGreaterThan(PAIRS * 0.9)
  })

  it('forecasts better after calibration than before', () => {
    const random = randomFrom(77)
    const nights = [someNight(random, 1.6), someNight(random, 1.6)]
    const fitted = calibrate(nights.map((input) => read(input, assume(input), random)))
    expect(Math.abs(fitted.lossScale - 1.6)).toBeLessThan(0.25)
  })

  it('gives back the body class with its 30 % where nothing was read', () => {
    const fitted = calibrate([])
    expect(fitted.lossScale).toBe(1)
    expect(fitted.lossScaleSpread).toBeCloseTo(0.3, 10)
    expect(fitted.electricWPerK).toBeNull()
  })

  it('a second night narrows the spread', () => {
    const random = randomFrom(5)
    const [one, two] = [someNight(random, 1.2), someNight(random, 1.2)].map((input) =>
      read(input, assume(input), random),
    )
    if (one === undefined || two === undefined) throw new Error('two nights were made')
    expect(calibrate([one, two]).lossScaleSpread).toBeLessThan(calibrate([one]).lossScaleSpread)
  })

  it('learns from an unheated night by how far the inside fell', () => {
    const random = randomFrom(9)
    const input = withDecisions(
      { ...someNight(random, 1.5), supply: null },
      {
        setPoints: [
          { fromUtc: at(0), tempC: 20 },
          { fromUtc: at(4), tempC: null },
        ],
      },
    )
    const fitted = calibrate([{ ...read(input, assume(input), random), from01: null, to01: null }])
    expect(fitted.readings).toBe(1)
    expect(fitted.lossScaleSpread).toBeLessThan(0.45)
  })
})
