import { describe, expect, it } from 'vitest'
import { simulateNight } from '../../../shared/climate/index.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import { TIME_LIMIT_MS, isDeep } from '../../support/generators/runs.ts'
import { HOUR_S, at, fallingWeather, night, randomFrom, randomNight, supply, withDecisions } from './night-fixture.ts'
import { SCENARIO_NIGHTS } from './scenario-nights.ts'
import { scenarioInput } from './scenario-input.ts'
import type {
  BatteryParameters,
  HeaterParameters,
  NightInput,
  NightOutcome,
  WeatherStep,
} from '../../../shared/climate/index.ts'

/** Twenty on each change, a thousand in the deep run. */
const NIGHTS = isDeep ? 1000 : 20
const COLUMNS = ['frontAirC', 'bedAirC', 'massC', 'floorC', 'glassC', 'operativeC', 'feetC'] as const

/** Another thousand in the deep run, which no night of the first was mended by. */
const OTHERS_FROM = 1001
/**
 * Nights that once differed by up to 0.88 K. 123: the coil's aim was taken half way and met at the end. 215, 309, 571 and 689: a battery came to its
 * reserve some seconds early or late, as its heat was a mean that met the set-point only at the end of each part, on a network rounded by wind.
 */
const ONCE_BEYOND = [123, 215, 309, 571, 689]

function largestDifferenceK(coarse: NightOutcome, fine: NightOutcome): number {
  const rows = new Map(fine.series.atUtc.map((atUtc, row) => [atUtc, row]))
  let largest = 0
  let compared = 0
  coarse.series.atUtc.forEach((atUtc, row) => {
    const other = rows.get(atUtc)
    if (other === undefined) return
    compared += 1
    for (const name of COLUMNS)
      largest = Math.max(largest, Math.abs((coarse.series[name][row] ?? 0) - (fine.series[name][other] ?? 0)))
  })
  expect(compared).toBeGreaterThan(20)
  return largest
}

const pump = (over: Partial<HeaterParameters>): Partial<NightInput> => ({ heater: { ...night().heater, ...over } })

const CASES: readonly (readonly [string, NightInput])[] = [
  ['steady cold', night()],
  [
    'falling, off in the night',
    withDecisions(night({ weather: fallingWeather(2, -12) }), {
      setPoints: [
        { fromUtc: at(1), tempC: 14 },
        { fromUtc: at(6), tempC: null },
        { fromUtc: at(11), tempC: 18 },
      ],
    }),
  ],
  [
    'gap open, weak heater',
    withDecisions(night({ weather: fallingWeather(0, -15), ...pump({ maxHeatW: 700 }) }), {
      windowGapMm: 15,
      windowSides: 2,
    }),
  ],
  [
    'past the heat pump’s lower limit on a weak site, little before a row is told',
    atReserve({
      weather: fallingWeather(2, -12),
      ...pump({ lowerLimitC: 2 - (5.25 - 35 / HOUR_S) }),
      supply: supply({ siteLimitA: 6 }),
    }),
  ],
  [
    'frost begins while the charger alone carries the heater, little before a row is told',
    atReserve({
      weather: fallingWeather(3.5 - 35 / HOUR_S, -10.5 - 35 / HOUR_S),
      supply: supply({ siteLimitA: 6 }),
      battery: nearReserve({ arrive01: 0.1, overheadW: 150, coldOverheadW: 900 }),
    }),
  ],
  [
    'a hot car cooled less and less as the evening cools',
    withDecisions(night({ weather: fallingWeather(19.5, -15), ...pump({ canCool: true }), arriveInsideC: 48 }), {
      setPoints: [{ fromUtc: at(0.3), tempC: 20 }],
    }),
  ],
  [
    'a front whose hour lies between two steps',
    withDecisions(
      night({ weather: [-3.03, 4.04, 4.54, 9.07].map((hour, row) => turning(hour, [6, 5, -4, -6][row] ?? 0)) }),
      { setPoints: [] },
    ),
  ],
  ['covers put up between two steps', withDecisions(night(), { coversFromUtc: at(6.037) })],
  ['a reserve that stops the heater', night({ supply: null, battery: nearReserve({ arrive01: 0.16 }) })],
  ...SCENARIO_NIGHTS.map((of) => [`scenario ${of.name}`, scenarioInput(of, true, true)] as const),
]

/** A night that asks for more than the site gives with nothing in the battery. */
function atReserve(over: Partial<NightInput>): NightInput {
  return withDecisions(night({ battery: nearReserve({ arrive01: 0.1 }), ...over }), {
    setPoints: [{ fromUtc: at(0.2), tempC: 36 }],
  })
}

/** A driving battery little above its reserve. */
function nearReserve(over: Partial<BatteryParameters>): BatteryParameters | null {
  const { battery } = night()
  return battery === null ? null : { ...battery, arrive01: 0.11, ...over }
}

function turning(hour: number, tempC: number): WeatherStep {
  return { atUtc: at(hour), tempC, windMPerS: 2 + hour / 3, humidity01: 0.7, cloud01: 0.3 }
}

/** Fastest that weather turns from hour to hour: a sharp front (common practice); random rows alone would jump by 20 K. */
const FRONT_K = 5
const GUST_M_PER_S = 4

function asWeatherTurns(input: NightInput): NightInput {
  const weather: WeatherStep[] = []
  for (const row of input.weather) {
    const before = weather.at(-1)
    const near = (value: number, from: number | undefined, most: number): number =>
      from === undefined ? value : Math.min(from + most, Math.max(from - most, value))
    weather.push({
      ...row,
      tempC: near(row.tempC, before?.tempC, FRONT_K),
      windMPerS: near(row.windMPerS, before?.windMPerS, GUST_M_PER_S),
    })
  }
  return { ...input, weather }
}

/** A random night with all that may switch in it: covers and bed heaters at odd seconds, a reserve within reach, limits of cold, time and charge. */
function withSwitches(input: NightInput, seed: number): NightInput {
  const random = randomFrom(seed + 99_991)
  const sometimes = <T>(share01: number, value: T): T | null => (random() < share01 ? value : null)
  const { battery, leisure, heater } = input
  return {
    ...withDecisions(input, { coversFromUtc: at(2 + 6 * random()), bedHeatersFromUtc: at(3 + 5 * random()) }),
    arriveUtc: at(random() / 2),
    keepsOnW: 15,
    leisure: leisure === null ? null : { ...leisure, inverterMaxW: 800 },
    battery:
      battery === null
        ? null
        : {
            ...battery,
            arrive01: sometimes(0.5, 0.1 + 0.1 * random()) ?? battery.arrive01,
            overheadW: 200,
            coldOverheadW: sometimes(0.5, 500) ?? 0,
          },
    heater: {
      ...heater,
      lowerLimitC: sometimes(0.5, -5 * random()),
      switchesOffAfterS: sometimes(0.2, 600 + 5 * HOUR_S * random()),
      switchesOffBelow01: sometimes(0.2, 0.15 + 0.4 * random()),
      mayRunAllNight: random() < 0.8,
    },
  }
}

/** Largest change of any temperature of a random night when the night's own step or the integration's is halved, K. */
function worstOf(night: NightInput): number {
  const input = { ...asWeatherTurns(night), stepS: 300 }
  let worstK = largestDifferenceK(simulateNight(input), simulateNight({ ...input, stepS: 150 }))
  const coarse = runNight(prepareNight(input), input.decisions)
  const fine = runNight(prepareNight(input, 50), input.decisions)
  for (const name of COLUMNS)
    coarse.columns[name].forEach((tempC, row) => {
      worstK = Math.max(worstK, Math.abs(tempC - (fine.columns[name][row] ?? 0)))
    })
  return worstK
}

describe('independence from the step', () => {
  it.each(CASES)('%s: halving the default step moves no temperature by 0.05 K', (_, input) => {
    const coarse = simulateNight({ ...input, stepS: 300 })
    const fine = simulateNight({ ...input, stepS: 150 })
    expect(largestDifferenceK(coarse, fine)).toBeLessThan(0.05)
  })

  it.each(CASES)('%s: halving the integration step itself moves no temperature by 0.05 K', (_, input) => {
    const coarse = runNight(prepareNight(input), input.decisions)
    const fine = runNight(prepareNight(input, 50), input.decisions)
    for (const name of COLUMNS) {
      coarse.columns[name].forEach((tempC, row) =>
        expect(Math.abs(tempC - (fine.columns[name][row] ?? 0))).toBeLessThan(0.05),
      )
    }
  })

  it.each(ONCE_BEYOND)('random night %d: halving either step moves no temperature by 0.05 K', (seed) => {
    expect(worstOf(randomNight(seed))).toBeLessThan(0.05)
  })

  it.each(isDeep ? [1, OTHERS_FROM] : [1])(
    `halving either step moves no temperature by 0.05 K over ${NIGHTS} random nights (seeds from %d)`,
    (fromSeed) => {
      let worstK = 0
      for (let seed = fromSeed; seed < fromSeed + NIGHTS; seed += 1)
        worstK = Math.max(worstK, worstOf(randomNight(seed)))
      console.log(`halving the step over ${NIGHTS} random nights from seed ${fromSeed}: ${worstK.toFixed(4)} K at most`)
      expect(worstK).toBeLessThan(0.05)
    },
    TIME_LIMIT_MS,
  )

  it(
    `so it is over ${NIGHTS} random nights in which whatever can switch does (seeds 1 to ${NIGHTS})`,
    () => {
      let worstK = 0
      for (let seed = 1; seed <= NIGHTS; seed += 1)
        worstK = Math.max(worstK, worstOf(withSwitches(randomNight(seed), seed)))
      console.log(`halving the step over ${NIGHTS} random nights full of switches: ${worstK.toFixed(4)} K at most`)
      expect(worstK).toBeLessThan(0.05)
    },
    TIME_LIMIT_MS,
  )

  it('any step is stable: an hour-long step stays within 0.3 K of five minutes', () => {
    const input = night({ weather: fallingWeather(5, -12) })
    expect(
      largestDifferenceK(simulateNight({ ...input, stepS: 1800 }), simulateNight({ ...input, stepS: 300 })),
    ).toBeLessThan(0.3)
  })

  it('a set-point between two steps takes effect at its own second', () => {
    const early = simulateNight(withDecisions(night(), { setPoints: [{ fromUtc: at(3), tempC: 12 }] })).heatingWh
    const later = simulateNight(
      withDecisions(night(), { setPoints: [{ fromUtc: at(3 + 1 / 60), tempC: 12 }] }),
    ).heatingWh
    expect(later).toBeLessThan(early)
    expect(early - later).toBeLessThan(40)
  })
})
