/** Each caution of a night in the situation that calls for it, and not in the plain night beside it. */
import { describe, expect, it } from 'vitest'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { NightCautionCode, NightInput } from '../../../shared/climate/index.ts'
import { LEISURE, at, night, sleeper, steadyWeather, supply, withDecisions } from './night-fixture.ts'

const codesOf = (input: NightInput): readonly NightCautionCode[] =>
  simulateNight(input).cautions.map(({ code }) => code)

/** One warm sleeper, two windows ajar, a measured round-pin post that hardly sags: nothing to mind but fire. */
const PLAIN: NightInput = withDecisions(
  night({
    weather: steadyWeather(8, { windMPerS: 3 }),
    supply: supply({
      siteLimitA: null,
      readings: [
        { currentA: 0, volts: 232 },
        { currentA: 10, volts: 230 },
      ],
    }),
    heater: { ...night().heater, maxHeatW: 1000 },
  }),
  { windowGapMm: 15, windowSides: 2 },
)

const withSupply = (over: Parameters<typeof supply>[0]): NightInput => ({
  ...PLAIN,
  supply: { ...supply(), ...PLAIN.supply, ...over },
})

const SITUATIONS: readonly (readonly [NightCautionCode, string, NightInput])[] = [
  [
    'shared-wiring',
    'volts that sag by more than 3 % under the load',
    withSupply({
      readings: [
        { currentA: 0, volts: 232 },
        { currentA: 10, volts: 222 },
      ],
    }),
  ],
  ['adapter', 'an adapter with a rating', withSupply({ adapterLimitA: 10 })],
  ['adapter', 'an adapter whose rating nobody knows', withSupply({ usesAdapter: true })],
  ['extension-lead', 'a lead with a rating', withSupply({ leadLimitA: 10 })],
  ['extension-lead', 'an extension lead whose rating nobody knows', withSupply({ usesExtension: true })],
  ['domestic-socket', 'a household outlet', withSupply({ connector: 'cee-7-3-schuko' })],
  ['polarity-reversed', 'live and neutral swapped', withSupply({ polarityReversed: 'yes' })],
  ['earth-missing', 'no earth', withSupply({ earthOk: 'no' })],
  ['earth-not-known', 'an earth that nobody tested', withSupply({ earthOk: 'not-known' })],
  ['below-minimum-current', 'a site that allows 4 A', withSupply({ siteLimitA: 4 })],
  [
    'two-loads',
    'a fan heater and charging on a 6 A post',
    {
      ...withSupply({ breakerA: 6 }),
      heater: { ...PLAIN.heater, kind: 'mains-fan-heater', maxHeatW: 1000 },
    },
  ],
  ['two-loads', 'a kettle and charging on a 6 A post', withSupply({ breakerA: 6, otherLoadW: 1000 })],
  [
    'two-loads',
    'a kettle and a fan heater on a 6 A post, without any charging',
    {
      ...withSupply({ breakerA: 6, otherLoadW: 1000 }),
      battery: null,
      heater: { ...PLAIN.heater, kind: 'mains-fan-heater', maxHeatW: 1000 },
    },
  ],
  [
    'co2-high',
    'three people in a shut car without heating',
    {
      ...withDecisions(PLAIN, { windowGapMm: 0, setPoints: [] }),
      sleepers: ['a', 'b', 'c'].map((id) => sleeper({ id })),
      weather: steadyWeather(15, { windMPerS: 0 }),
    },
  ],
  [
    'no-fresh-air',
    'a shut car without heating',
    {
      ...withDecisions(PLAIN, { windowGapMm: 0, setPoints: [] }),
      weather: steadyWeather(15, { windMPerS: 0 }),
    },
  ],
  [
    'cold-illness',
    'a thin bag at -18 °C without heating',
    {
      ...withDecisions(PLAIN, { setPoints: [] }),
      weather: steadyWeather(-18),
      sleepers: [sleeper({ bedding: { comfortC: 8, coverClo: 2.5, matM2KPerW: 0.3 } })],
    },
  ],
  [
    'heat-illness',
    'a night that stays at 34 °C',
    {
      ...withDecisions(PLAIN, { setPoints: [] }),
      weather: steadyWeather(34, { cloud01: 1 }),
    },
  ],
  [
    'heater-stops',
    'heating from a battery that reaches its reserve',
    {
      ...PLAIN,
      supply: null,
      weather: steadyWeather(-12),
      heater: { ...PLAIN.heater, maxHeatW: 4000 },
      battery: { ...(PLAIN.battery ?? never()), usableWh: 20_000, arrive01: 0.15 },
    },
  ],
  [
    'leisure-frost',
    'a lithium leisure battery in a cabin below freezing',
    {
      ...withDecisions(PLAIN, { setPoints: [] }),
      weather: steadyWeather(-15),
      battery: null,
      leisure: LEISURE,
    },
  ],
  [
    'leisure-acid-frost',
    'a lead leisure battery a fifth full in a cabin near -15 °C, without supply',
    {
      ...withDecisions(PLAIN, { setPoints: [] }),
      supply: null,
      weather: steadyWeather(-22),
      battery: null,
      leisure: { ...LEISURE, kind: 'lead', arrive01: 0.2, reserve01: 0 },
    },
  ],
]

function never(): never {
  throw new Error('the plain night has a battery')
}

describe('cautions where they are called for', () => {
  it.each(SITUATIONS)('%s: %s', (code, _, input) => {
    expect(codesOf(input)).toContain(code)
    expect(codesOf(PLAIN)).not.toContain(code)
  })

  it('carbon monoxide is named on every night that somebody sleeps inside, heated or not, and on no empty one', () => {
    expect(codesOf(PLAIN)).toContain('carbon-monoxide')
    expect(codesOf(withDecisions({ ...PLAIN, heater: { ...PLAIN.heater, kind: 'none' } }, {}))).toContain(
      'carbon-monoxide',
    )
    expect(codesOf({ ...PLAIN, sleepers: [] })).not.toContain('carbon-monoxide')
  })

  it('volts under the step-down (210 of 230) and under the stop (205) are told apart', () => {
    const reading = (noLoadV: number): NightInput =>
      withSupply({
        readings: [
          { currentA: 0, volts: noLoadV },
          { currentA: 10, volts: noLoadV - 1 },
        ],
      })
    const sags = (input: NightInput) => codesOf(input).filter((code) => code.startsWith('sag-'))
    expect([sags(reading(214)), sags(reading(208)), sags(reading(203))]).toEqual([[], ['sag-step-down'], ['sag-stop']])
  })

  it('the acid of a full battery stands the cold in which an empty one freezes', () => {
    const charged = (arrive01: number): NightInput => ({
      ...withDecisions(PLAIN, { setPoints: [] }),
      supply: null,
      weather: steadyWeather(-22),
      battery: null,
      leisure: { ...LEISURE, kind: 'lead', arrive01, reserve01: 0, loadW: 0 },
    })
    expect(codesOf(charged(0.95))).not.toContain('leisure-acid-frost')
    expect(codesOf(charged(0.1))).toContain('leisure-acid-frost')
  })

  it('no code is without a situation here', () => {
    const all: Readonly<Record<NightCautionCode, true>> = {
      'co2-high': true,
      'no-fresh-air': true,
      'shared-wiring': true,
      'domestic-socket': true,
      adapter: true,
      'polarity-reversed': true,
      'earth-missing': true,
      'earth-not-known': true,
      'sag-step-down': true,
      'sag-stop': true,
      'cold-illness': true,
      'heat-illness': true,
      'heater-stops': true,
      'carbon-monoxide': true,
      'leisure-frost': true,
      'leisure-acid-frost': true,
      'extension-lead': true,
      'below-minimum-current': true,
      'two-loads': true,
    }
    const elsewhere = ['carbon-monoxide', 'sag-step-down', 'sag-stop']
    expect(new Set([...SITUATIONS.map(([code]) => code), ...elsewhere])).toEqual(new Set(Object.keys(all)))
  })

  it('each code stands once, with its instant inside the night where it has one', () => {
    for (const [, , input] of SITUATIONS) {
      const { cautions } = simulateNight(input)
      expect(new Set(cautions.map(({ code }) => code)).size).toBe(cautions.length)
      for (const { atUtc } of cautions) {
        if (atUtc === null) continue
        expect(atUtc).toBeGreaterThanOrEqual(at(0))
        expect(atUtc).toBeLessThanOrEqual(input.departUtc)
      }
    }
  })
})
