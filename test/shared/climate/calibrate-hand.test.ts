/** What a reading of a night teaches, by hand: nights with nothing left open, read exactly or off by a known amount. */
import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../shared/climate/calibrate.ts'
import type { MeasuredNight } from '../../../shared/climate/calibrate.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
import { at, night, steadyWeather, supply, withDecisions } from './night-fixture.ts'

/** Six hours at -5 °C, held at 12 °C from the start. */
const NIGHT: NightInput = withDecisions(
  night({ departUtc: at(6), sleepFromUtc: at(2), sleepToUtc: at(5), sleepers: [], supply: null, stepS: 900 }),
  { setPoints: [{ fromUtc: at(0), tempC: 12 }] },
)
const FROM = at(2)
const TO = at(5)
/** The same night as the fit runs it, at a multiple of the cabin's loss. */
const run = (lossScale: number, input = NIGHT) =>
  runNight(prepareNight({ ...input, cabin: { ...input.cabin, lossScale } }, 300), input.decisions).columns
const rows = (lossScale: number, input = NIGHT): number[] => {
  const { atUtc } = run(lossScale, input)
  return [...atUtc.keys()].filter((row) => (atUtc[row] ?? 0) >= FROM && (atUtc[row] ?? 0) <= TO)
}
/** Energy between both moments, Wh: a row's mean holds for the quarter before it, so the first is left out. */
const energyWh = (column: 'heatingElectricW' | 'supplyW', lossScale: number, input = NIGHT): number =>
  rows(lossScale, input)
    .slice(1)
    .reduce((sum, row) => sum + (run(lossScale, input)[column][row] ?? 0) / 4, 0)
const measured = (over: Partial<MeasuredNight>): MeasuredNight => ({
  input: NIGHT,
  fromUtc: FROM,
  toUtc: TO,
  heatingWh: null,
  siteWh: null,
  from01: null,
  to01: null,
  lowestInsideC: null,
  meanInsideC: null,
  ...over,
})

describe('a night that is read', () => {
  it('exactly as the body class says changes nothing but the spread', () => {
    const fit = calibrate([measured({ heatingWh: energyWh('heatingElectricW', 1) })])
    expect(fit.lossScale).toBeCloseTo(1, 6)
    expect(fit.misfit).toBeCloseTo(0, 6)
    expect(fit).toMatchObject({ nights: 1, readings: 1 })
    // A per cent more loss takes so many Wh more; a reading is good to 2 and 4 %: the prior's 30 % and that together.
    const wh = energyWh('heatingElectricW', 1)
    const slope = (energyWh('heatingElectricW', Math.exp(0.02)) - wh) / 0.02 / (wh * Math.hypot(0.02, 0.04))
    expect(fit.lossScaleSpread).toBeCloseTo(1 / Math.sqrt(1 / 0.3 ** 2 + slope ** 2), 3)
  })

  it('as half as leaky again moves the loss most of the way there, and further the more was read', () => {
    const readings: readonly Partial<MeasuredNight>[] = [
      { heatingWh: energyWh('heatingElectricW', 1.5) },
      {
        heatingWh: energyWh('heatingElectricW', 1.5),
        lowestInsideC: Math.min(...rows(1.5).map((row) => run(1.5).bedAirC[row] ?? 99)),
      },
    ]
    const scales = readings.map((over) => calibrate([measured(over)]).lossScale)
    for (const scale of scales) {
      expect(scale).toBeGreaterThan(1.4)
      expect(scale).toBeLessThan(1.5)
    }
    expect(scales[1]).toBeGreaterThan(scales[0] ?? 9)
    const fit = calibrate([measured(readings[0] ?? {})])
    expect(fit.misfit).toBeGreaterThan(0)
    expect(fit.misfit).toBeLessThan(1)
  })

  it('by any one of its meters finds the loss again', () => {
    const idle = withDecisions(NIGHT, { setPoints: [] })
    const bedC = (lossScale: number): number[] =>
      rows(lossScale, idle).map((row) => run(lossScale, idle).bedAirC[row] ?? 99)
    const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
    const plugged = {
      ...withDecisions(NIGHT, { chargeLimit01: 0.5 }),
      supply: supply({ plugInUtc: at(0), unplugUtc: at(6) }),
    }
    const charge = (lossScale: number, which: 0 | -1): number => {
      const list = rows(lossScale)
      return run(lossScale).charge01[list.at(which) ?? 0] ?? 0
    }
    const TRUE = 1.3
    const cases: readonly (readonly [string, MeasuredNight])[] = [
      ['lowest inside', measured({ input: idle, lowestInsideC: Math.min(...bedC(TRUE)) })],
      ['mean inside', measured({ input: idle, meanInsideC: mean(bedC(TRUE)) })],
      ['meter of the site', measured({ input: plugged, siteWh: energyWh('supplyW', TRUE, plugged) })],
      ['charge at both moments', measured({ from01: charge(TRUE, 0), to01: charge(TRUE, -1) })],
    ]
    for (const [name, night_] of cases) {
      const fit = calibrate([night_])
      expect(fit.readings, name).toBe(1)
      expect(fit.lossScale, name).toBeGreaterThan(1.01)
      expect(fit.lossScale, name).toBeLessThan(TRUE + 0.01)
      expect(fit.lossScaleSpread / fit.lossScale, name).toBeLessThan(0.3)
    }
  })

  it('with the charge at one moment only, or in a vehicle without a driving battery, was not read', () => {
    for (const night_ of [
      measured({ from01: 0.5 }),
      measured({ to01: 0.4 }),
      measured({ input: { ...NIGHT, battery: null }, from01: 0.5, to01: 0.4 }),
      measured({}),
    ]) {
      const fit = calibrate([night_])
      expect(fit).toMatchObject({ readings: 0, nights: 1, lossScale: 1, misfit: 0 })
      expect(fit.lossScaleSpread).toBeCloseTo(0.3, 9)
    }
  })

  it('tells loss and electricity per kelvin of that night', () => {
    const fit = calibrate([measured({ heatingWh: energyWh('heatingElectricW', 1) })])
    const columns = run(1)
    const heated = rows(1).filter((row) => (columns.heatW[row] ?? 0) > 0)
    const sum = (of: (row: number) => number): number => heated.reduce((total, row) => total + of(row), 0)
    expect(fit.electricWPerK).toBeCloseTo(
      sum((row) => columns.heatingElectricW[row] ?? 0) /
        sum((row) => (columns.frontAirC[row] ?? 0) - (columns.outsideC[row] ?? 0)),
      4,
    )
    expect(fit.electricSpreadWPerK).toBeGreaterThan(0)
    expect(fit.lossSpreadWPerK).toBeCloseTo((fit.lossWPerK * fit.lossScaleSpread) / fit.lossScale, 9)
    const cold = calibrate([measured({ input: withDecisions(NIGHT, { setPoints: [] }) })])
    expect(cold).toMatchObject({ electricWPerK: null, electricSpreadWPerK: null })
    expect(
      calibrate([measured({ input: { ...NIGHT, weather: steadyWeather(-5, { windMPerS: 8 }) } })]).lossWPerK,
    ).toBeGreaterThan(fit.lossWPerK)
  })

  it('of a van begins from a wider spread than that of a car', () => {
    const van = measured({ input: { ...NIGHT, cabin: { ...NIGHT.cabin, bodyClass: 'van-bare' } } })
    expect(calibrate([van]).lossScaleSpread).toBeCloseTo(0.4, 9)
  })

  it('however far off stays between a quarter and five times the body class', () => {
    expect(calibrate([measured({ heatingWh: 60_000 })]).lossScale).toBeLessThanOrEqual(5)
    expect(calibrate([measured({ heatingWh: 1 })]).lossScale).toBeGreaterThanOrEqual(0.25)
  })
})
