import { describe, expect, it } from 'vitest'
import { simulateNight } from '../../../shared/climate/index.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import { TIME_LIMIT_MS, isDeep } from '../../support/generators/runs.ts'
import { at, fallingWeather, night, randomNight, withDecisions } from './night-fixture.ts'
import { SCENARIO_NIGHTS } from './scenario-nights.ts'
import { scenarioInput } from './scenario-input.ts'
import type { NightInput, NightOutcome, WeatherStep } from '../../../shared/climate/index.ts'

/** Twenty on each change, a thousand in the deep run. */
const NIGHTS = isDeep ? 1000 : 20
const COLUMNS = ['frontAirC', 'bedAirC', 'massC', 'floorC', 'glassC', 'operativeC', 'feetC'] as const

/** The front air falls by kelvins within seconds of a battery's reserve: a second's shift there is no error of temperature. */
const AFTER_STOP_S = 120
const justStopped = ({ stopsUtc }: { readonly stopsUtc: number | null }, atUtc: number): boolean =>
  stopsUtc !== null && atUtc > stopsUtc - AFTER_STOP_S && atUtc < stopsUtc + AFTER_STOP_S

function largestDifferenceK(coarse: NightOutcome, fine: NightOutcome): number {
  const rows = new Map(fine.series.atUtc.map((atUtc, row) => [atUtc, row]))
  let largest = 0
  let compared = 0
  coarse.series.atUtc.forEach((atUtc, row) => {
    const other = rows.get(atUtc)
    if (other === undefined || justStopped(fine, atUtc)) return
    compared += 1
    for (const name of COLUMNS)
      largest = Math.max(largest, Math.abs((coarse.series[name][row] ?? 0) - (fine.series[name][other] ?? 0)))
  })
  expect(compared).toBeGreaterThan(20)
  return largest
}

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
    withDecisions(night({ weather: fallingWeather(0, -15), heater: { ...night().heater, maxHeatW: 700 } }), {
      windowGapMm: 15,
      windowSides: 2,
    }),
  ],
  ...SCENARIO_NIGHTS.map((of) => [`scenario ${of.name}`, scenarioInput(of, true, true)] as const),
]

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

  it(
    `halving either step moves no temperature by 0.05 K over ${NIGHTS} random nights (seeds 1 to ${NIGHTS})`,
    () => {
      let worstK = 0
      for (let seed = 1; seed <= NIGHTS; seed += 1) {
        const input = { ...asWeatherTurns(randomNight(seed)), stepS: 300 }
        worstK = Math.max(worstK, largestDifferenceK(simulateNight(input), simulateNight({ ...input, stepS: 150 })))
        const coarse = runNight(prepareNight(input), input.decisions)
        const fine = runNight(prepareNight(input, 50), input.decisions)
        for (const name of COLUMNS)
          coarse.columns[name].forEach((tempC, row) => {
            if (justStopped(fine, fine.columns.atUtc[row] ?? 0)) return
            worstK = Math.max(worstK, Math.abs(tempC - (fine.columns[name][row] ?? 0)))
          })
      }
      console.log(`halving the step over ${NIGHTS} random nights: ${worstK.toFixed(4)} K at most`)
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
