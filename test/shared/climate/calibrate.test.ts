import { describe, expect, it } from 'vitest'
import { calibrate, calibrateLegs, legNeedWh, simulateNight } from '../../../shared/climate/index.ts'
import { TIME_LIMIT_MS, isDeep } from '../../support/generators/runs.ts'
import { at, fallingWeather, night, randomFrom, sleeper, supply, withDecisions } from './night-fixture.ts'
import type {
  LegParameters,
  MeasuredLeg,
  MeasuredNight,
  NightInput,
  NightOutcome,
} from '../../../shared/climate/index.ts'

/** Two hundred pairs in the deep run; a tenth of the nights, which cost the most, on each change. */
const PAIRS = 200
const NIGHT_PAIRS = isDeep ? 200 : 20
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

/** Median and nineteen in twenty of sorted errors. */
const told = (errors: readonly number[]): string =>
  [0.5, 0.95]
    .map((share) => `${(100 * (errors[Math.floor(errors.length * share)] ?? 0)).toFixed(1)} %`)
    .join(' in the median, ') + ' in nineteen of twenty'

const assume = (input: NightInput, lossScale = 1): NightInput => ({ ...input, cabin: { ...input.cabin, lossScale } })

/** One leg of a vehicle whose drag and tyres are known and whose true consumption is some multiple of what they say. */
function someLeg(random: () => number): LegParameters {
  const between = (low: number, high: number): number => low + (high - low) * random()
  return {
    distanceM: between(60_000, 220_000),
    whPerKm: 190,
    speedKmPerH: between(70, 110),
    climbM: between(-300, 600),
    outsideC: between(-15, 10),
    reserve01: 0.1,
    massG: 2_000_000,
    dragAreaM2: 0.72,
    rollingCoefficient: 0.009,
    auxiliaryW: between(200, 1500),
    fastChargers: [],
  }
}
const USABLE_WH = 65_000

/** What a driver reads of it: the charge in whole percent at both ends, and on some legs the vehicle's own figure within 2 %. */
function readLeg(leg: LegParameters, scale: number, random: () => number): MeasuredLeg {
  const wh = legNeedWh({ ...leg, consumptionScale: scale })
  const percent = (share01: number): number => Math.round(share01 * 100) / 100
  const from01 = 0.5 + 0.4 * random()
  const noise = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  return {
    leg,
    usableWh: USABLE_WH,
    usedWh: random() < 0.5 ? null : wh * (1 + 0.02 * noise),
    from01: percent(from01),
    to01: percent(from01 - wh / USABLE_WH),
  }
}

describe('calibration from the owner’s own legs', () => {
  it(`forecasts the next leg within 10 % in the median of ${PAIRS} pairs of legs, and knows its spread (seeds 1 to ${PAIRS})`, () => {
    const errors: number[] = []
    let covered = 0
    for (let seed = 1; seed <= PAIRS; seed += 1) {
      const random = randomFrom(seed)
      const truth = Math.exp((random() - 0.5) * 0.6)
      const legs = [someLeg(random), someLeg(random)].map((leg) => readLeg(leg, truth, random))
      const { consumption } = calibrate([], legs)
      const next = someLeg(random)
      const scale = consumption?.scale ?? 1
      errors.push(
        Math.abs(legNeedWh({ ...next, consumptionScale: scale }) / legNeedWh({ ...next, consumptionScale: truth }) - 1),
      )
      if (Math.abs(scale - truth) < 2 * (consumption?.scaleSpread ?? 0)) covered += 1
    }
    errors.sort((left, right) => left - right)
    console.log(`forecast of a leg after two legs: ${told(errors)}`)
    expect(errors[PAIRS / 2]).toBeLessThan(0.1)
    expect(errors[Math.floor(PAIRS * 0.95)]).toBeLessThan(0.1)
    expect(covered).toBeGreaterThan(PAIRS * 0.9)
  })

  it('says nothing of legs that were not given, and keeps the stated figure with 15 % where nothing was read', () => {
    expect(calibrate([]).consumption).toBeUndefined()
    const leg = { ...someLeg(randomFrom(3)), dragAreaM2: null }
    const unread = calibrateLegs([{ leg, usableWh: USABLE_WH, usedWh: null, from01: null, to01: null }])
    expect(unread.scale).toBe(1)
    expect(unread.scaleSpread).toBeCloseTo(0.15, 10)
    expect(unread.whPerKm).toBe(190)
    expect(unread.readings).toBe(0)
  })

  it('a second leg narrows the spread, and a leg too short to move the charge adds nothing', () => {
    const random = randomFrom(4)
    const [one, two] = [someLeg(random), someLeg(random)].map((leg) => readLeg(leg, 1.2, random))
    if (one === undefined || two === undefined) throw new Error('two legs were made')
    expect(calibrateLegs([one, two]).scaleSpread).toBeLessThan(calibrateLegs([one]).scaleSpread)
    const short = { ...two, usedWh: null, from01: 0.6, to01: 0.59 }
    expect(calibrateLegs([one, short]).scale).toBe(calibrateLegs([one]).scale)
  })
})

describe('calibration from the owner’s own nights', () => {
  it(
    `forecasts within 10 % in the median of ${NIGHT_PAIRS} pairs of nights (seeds 1 to ${NIGHT_PAIRS})`,
    () => {
      const errors: number[] = []
      const covered: boolean[] = []
      for (let seed = 1; seed <= NIGHT_PAIRS; seed += 1) {
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
      console.log(`forecast of heating after two nights: ${told(errors)}`)
      expect(errors[NIGHT_PAIRS / 2]).toBeLessThan(0.1)
      // Two standard deviations should hold the truth nearly always; the model's own share of the spread makes them wide.
      expect(covered.filter(Boolean).length).toBeGreaterThan(NIGHT_PAIRS * 0.9)
    },
    TIME_LIMIT_MS,
  )

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
    const fitted = calibrate([one])
    expect(calibrate([one, two]).lossScaleSpread).toBeLessThan(fitted.lossScaleSpread)
    // The loss in watts is as uncertain as its scale is.
    expect(fitted.lossWPerK).toBeGreaterThan(0)
    expect(fitted.lossSpreadWPerK / fitted.lossWPerK).toBeCloseTo(fitted.lossScaleSpread / fitted.lossScale, 9)
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
