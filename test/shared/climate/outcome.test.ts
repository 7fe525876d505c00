/** What is told of a night, read off its own columns anew: extremes and their instants, glass, prices, balance, humidity. */
import { describe, expect, it } from 'vitest'
import { simulateNight } from '../../../shared/climate/index.ts'
import { costOf, legOf } from '../../../shared/climate/simulate.ts'
import { saturationPa } from '../../../shared/climate/moisture-saturation.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import type { LegParameters, NightInput } from '../../../shared/climate/index.ts'
import { at, night, plainLeg, sleeper, steadyWeather, supply, withDecisions } from './night-fixture.ts'

/** A night with its coldest hour in the middle: 2 °C, -9 °C at seven hours, 4 °C; two people, a gap, heating until bedtime. */
const INPUT: NightInput = withDecisions(
  night({
    weather: [
      { atUtc: at(0), tempC: 2, windMPerS: 1, humidity01: 0.9, cloud01: 0.6 },
      { atUtc: at(7), tempC: -9, windMPerS: 2, humidity01: 0.9, cloud01: 0.2 },
      { atUtc: at(14), tempC: 4, windMPerS: 1, humidity01: 0.9, cloud01: 1 },
    ],
    sleepers: [sleeper({ id: 'a' }), sleeper({ id: 'b' })],
    stepS: 600,
  }),
  {
    setPoints: [
      { fromUtc: at(1), tempC: 15 },
      { fromUtc: at(4), tempC: null },
    ],
    windowGapMm: 4,
    windowSides: 1,
  },
)
const OUTCOME = simulateNight(INPUT)
const { series } = OUTCOME
const asleep = series.atUtc.flatMap((atUtc, row) => (atUtc > at(4) && atUtc <= at(12) ? [row] : []))
const meanOf = (column: readonly number[]): number => column.reduce((sum, value) => sum + value, 0) / column.length

describe('extremes', () => {
  it('of the bed are those of the hours asleep, of the outside those of the whole night', () => {
    const least = Math.min(...asleep.map((row) => series.bedAirC[row] ?? 99))
    expect(OUTCOME.coldestBedC).toBe(least)
    expect(OUTCOME.coldestBedUtc).toBe(series.atUtc[series.bedAirC.indexOf(least)])
    expect(OUTCOME.coldestOutsideC).toBeCloseTo(-9, 9)
    expect(OUTCOME.coldestOutsideUtc).toBe(at(7))
    expect(OUTCOME.co2MaxPpm).toBe(Math.max(...series.co2Ppm))
    expect(OUTCOME.condensateG).toBe(Math.max(...series.condensateG))
    expect(OUTCOME.frostG).toBe(Math.max(...series.frostG))
    expect(OUTCOME.condensateG).toBeGreaterThan(10)
    expect(OUTCOME.frostG).toBeGreaterThan(10)
  })

  it('of a bed that is as cold twice is told at the first', () => {
    const level = simulateNight({ ...INPUT, weather: steadyWeather(10), arriveInsideC: 10, sleepers: [] })
    expect(level.coldestOutsideUtc).toBe(level.series.atUtc[0])
  })
})

describe('air', () => {
  it('has the dew point and the humidity of its own vapour', () => {
    series.dewPointC.forEach((dewC, row) => {
      const humidity01 = series.relativeHumidity01[row] ?? Number.NaN
      expect(humidity01).toBeCloseTo(Math.min(1, saturationPa(dewC) / saturationPa(series.bedAirC[row] ?? 0)), 5)
      expect(humidity01).toBeLessThanOrEqual(1)
    })
    const { columns } = runNight(prepareNight(INPUT), INPUT.decisions)
    for (const row of [0, 30, 80])
      expect(saturationPa(series.dewPointC[row] ?? 0)).toBeCloseTo(columns.vapourPa[row] ?? 0, 2)
  })
})

describe('glass', () => {
  it('is told pane by pane: water while it is not below freezing, frost while it is', () => {
    const panes = OUTCOME.glass ?? []
    expect(panes.map(({ id }) => id)).toEqual(INPUT.cabin.panes.map(({ id }) => id))
    const run = runNight(prepareNight(INPUT), INPUT.decisions, true)
    panes.forEach((pane, index) => {
      pane.surfaceC.forEach((surfaceC, row) => {
        const grams = (run.panes[index]?.filmKg[row] ?? 0) * 1000
        expect(pane.condensateG[row]).toBeCloseTo(surfaceC < 0 ? 0 : grams, 9)
        expect(pane.frostG[row]).toBeCloseTo(surfaceC < 0 ? grams : 0, 9)
      })
      expect(pane.mostCondensateG).toBe(Math.max(...pane.condensateG))
      expect(pane.mostFrostG).toBe(Math.max(...pane.frostG))
      // Wet and frosted from 5 g/m2 on.
      const fogG = 5 * (INPUT.cabin.panes[index]?.areaM2 ?? 0)
      const first = (column: readonly number[]) => {
        const row = column.findIndex((grams) => grams > fogG)
        return row < 0 ? null : series.atUtc[row]
      }
      expect(pane.wetFromUtc).toBe(first(pane.condensateG))
      expect(pane.frostFromUtc).toBe(first(pane.frostG))
    })
    expect(panes.some(({ wetFromUtc }) => wetFromUtc !== null)).toBe(true)
    expect(panes.some(({ frostFromUtc }) => frostFromUtc !== null)).toBe(true)
    const dry = simulateNight({ ...INPUT, sleepers: [], weather: steadyWeather(12, { humidity01: 0.1 }) })
    for (const pane of dry.glass ?? [])
      expect([pane.wetFromUtc, pane.frostFromUtc, pane.mostFrostG]).toEqual([null, null, 0])
    expect(dry.glass?.length).toBe(INPUT.cabin.panes.length)
  })
})

describe('loss', () => {
  it('is shell and fresh air together, and a gap costs its air’s W/K times the mean difference', () => {
    const run = runNight(prepareNight(INPUT), INPUT.decisions)
    const { lossWPerK } = OUTCOME
    expect(lossWPerK.total).toBeCloseTo(lossWPerK.shell + lossWPerK.freshAir, 9)
    expect(lossWPerK.freshAir).toBe(run.freshWPerK)
    expect(OUTCOME.windowGapCostW).toBeCloseTo(run.gapWPerK * (meanOf(series.bedAirC) - meanOf(series.outsideC)), 9)
    expect(OUTCOME.windowGapCostW).toBeGreaterThan(0.5)
    const shut = simulateNight(withDecisions(INPUT, { windowGapMm: 0 }))
    expect(shut.windowGapCostW).toBe(0)
    // Warmer outside than in: a gap costs no heat.
    const hot = simulateNight({ ...INPUT, weather: steadyWeather(30), arriveInsideC: 15, sleepers: [] })
    expect(hot.windowGapCostW).toBe(0)
  })

  it('balances: what came in is what went out and what stayed, by way and in all', () => {
    const { balance } = OUTCOME
    expect(balance.heatOutWh).toBeCloseTo(balance.shellWh + balance.freshAirWh + balance.skyWh, 9)
    expect(balance.residualWh).toBeCloseTo(balance.heatInWh - balance.heatOutWh - balance.storedWh, 9)
    expect(Math.abs(balance.residualWh)).toBeLessThan(0.01)
    expect(balance.waterResidualG).toBeCloseTo(balance.waterInG - balance.waterOutG - balance.waterStoredG, 9)
    expect(Math.abs(balance.waterResidualG)).toBeLessThan(0.01)
    // Two people: 45 g an hour asleep for eight hours, 55 g awake for six.
    expect(balance.waterInG).toBeCloseTo(2 * (45 * 8 + 55 * 6), 6)
    for (const part of [balance.shellWh, balance.freshAirWh, balance.skyWh]) expect(part).toBeGreaterThan(0)
  })
})

describe('what is told only where there is any', () => {
  it('is what a coil drained, what was kept on, charges and the stop', () => {
    expect(OUTCOME).not.toHaveProperty('coilDrainG')
    expect(OUTCOME).not.toHaveProperty('keptOnWh')
    const cooled = simulateNight(
      withDecisions(
        { ...INPUT, weather: steadyWeather(30, { humidity01: 0.7 }), heater: { ...INPUT.heater, canCool: true } },
        { setPoints: [{ fromUtc: at(0), tempC: 22 }] },
      ),
    )
    expect(cooled.coilDrainG).toBeGreaterThan(100)
    // Damp air comes in from outside: less leaves on balance than the coil drains, and no gram is lost.
    expect(cooled.balance.waterOutG).toBeLessThan(cooled.coilDrainG ?? 0)
    expect(Math.abs(cooled.balance.waterResidualG)).toBeLessThan(0.01)
    const lit = simulateNight({ ...INPUT, keepsOnW: 10 })
    expect(lit.keptOnWh).toBeCloseTo(140, 6)
    expect(OUTCOME.arrive01).toBe(0.5)
    expect(OUTCOME.depart01).toBe(series.charge01.at(-1))
    expect(OUTCOME.leisureDepart01).toBeNull()
    const bare = simulateNight({ ...INPUT, battery: null, leisure: null, supply: null })
    expect(bare).toMatchObject({ arrive01: null, depart01: null, leisureDepart01: null, leg: null, stopsUtc: at(1) })
  })
})

describe('price', () => {
  it('is the fixed part and that of each kilowatt-hour, where there is one', () => {
    const priced = (over: Parameters<typeof supply>[0]): number => costOf({ ...INPUT, supply: supply(over) }, 2500)
    expect(priced({ fixedPrice: 3, pricePerKWh: 0.4 })).toBeCloseTo(4, 12)
    expect(priced({ fixedPrice: 3, pricePerKWh: null })).toBe(3)
    expect(costOf({ ...INPUT, supply: null }, 2500)).toBe(0)
    expect(OUTCOME.cost).toBeCloseTo((0.4 * OUTCOME.fromSiteWh) / 1000, 9)
  })
})

describe('the leg', () => {
  const leg: LegParameters = plainLeg()

  it('is judged from the charge at departure, and not without leg, battery or charge', () => {
    const input = { ...INPUT, leg }
    expect(legOf(input, 0.5)?.marginWh).toBeCloseTo(30_000 - 10_000 - 6000, 6)
    expect(legOf(input, null)).toBeNull()
    expect(legOf({ ...input, battery: null }, 0.5)).toBeNull()
    expect(legOf({ ...input, leg: null }, 0.5)).toBeNull()
    const outcome = simulateNight(input)
    expect(outcome.leg?.marginWh).toBeCloseTo((outcome.depart01 ?? 0) * 60_000 - 16_000, 6)
  })
})
