import { describe, expect, it } from 'vitest'
import { cabinDefaults, simulateNight } from '../../../shared/climate/index.ts'
import { at, night, steadyWeather, withDecisions } from './night-fixture.ts'
import type { NightOutcome } from '../../../shared/climate/index.ts'

/** A parked electric car held warm all night: default body and heater, bare glass, nobody in it, on its own battery. */
function parked(bodyClass: 'estate' | 'crossover', outsideC: number, insideC: number): NightOutcome {
  const input = night({
    cabin: cabinDefaults(bodyClass),
    weather: steadyWeather(outsideC),
    sleepers: [],
    supply: null,
    battery: {
      usableWh: 75_000,
      reserve01: 0.1,
      chargeLimit01: 1,
      efficiency01: 0.88,
      overheadW: 0,
      coldOverheadW: 0,
      arrive01: 0.9,
      fastMaxW: 100_000,
    },
  })
  return simulateNight(withDecisions(input, { setPoints: [{ fromUtc: at(0), tempC: insideC }] }))
}

const lastKW = (outcome: NightOutcome): number => (outcome.series.heatingElectricW.at(-1) ?? 0) / 1000

describe('parked-car tests, end to end', () => {
  // Two motor clubs, chamber and field: 1.5 to 2 kWh an hour at -10 °C outside and 20 °C inside.
  it.each(['estate', 'crossover'] as const)('the default %s takes 1.5 to 2.0 kWh an hour at -10/20 °C', (bodyClass) => {
    const perHour = lastKW(parked(bodyClass, -10, 20))
    expect(perHour).toBeGreaterThanOrEqual(1.5)
    expect(perHour).toBeLessThanOrEqual(2)
  })

  // A magazine: 1.6 kWh an hour held 18 °C at about -9 °C.
  it.each(['estate', 'crossover'] as const)(
    'the default %s takes 1.6 kWh an hour at -9/18 °C, within 20 %%',
    (bodyClass) => {
      const perHour = lastKW(parked(bodyClass, -9, 18))
      expect(Math.abs(perHour / 1.6 - 1)).toBeLessThan(0.2)
    },
  )

  it('shell, fresh air and overhead are told apart and make up the whole', () => {
    const outcome = parked('estate', -10, 20)
    const { balance, lossWPerK } = outcome
    expect(balance.shellWh).toBeGreaterThan(0)
    expect(balance.freshAirWh).toBeGreaterThan(0)
    expect(lossWPerK.total).toBeCloseTo(lossWPerK.shell + lossWPerK.freshAir, 9)
    // Shell near the agency's 33 W/K; the drawn air the next largest; 250 W of overhead on top.
    expect(lossWPerK.shell).toBeGreaterThan(28)
    expect(lossWPerK.shell).toBeLessThan(38)
    // Heat out by shell, fresh air and sky is what came in, less what the trim took up.
    expect(balance.shellWh + balance.freshAirWh + balance.skyWh + balance.storedWh).toBeCloseTo(balance.heatInWh, 3)
    // Near 1.22 of heat per electricity at -10 °C, and 250 W for fan and controls: together the whole of what was drawn.
    expect(outcome.overheadWh).toBeCloseTo(250 * 14, 6)
    const pumpedWh = outcome.heatingWh - (outcome.overheadWh ?? 0)
    const heatWh = outcome.series.heatW.reduce((sum, watts) => sum + watts, 0) * (300 / 3600)
    expect(heatWh / pumpedWh).toBeCloseTo(1.22, 2)
    const shares = [balance.shellWh, balance.freshAirWh].map((wh) => wh / (balance.shellWh + balance.freshAirWh))
    expect(shares[0]).toBeGreaterThan(0.5)
    expect(shares[1]).toBeGreaterThan(0.3)
  })

  it('shows its range: shell and fresh air 30 % better or worse span what the two clubs measured, 1.5 to 2 kWh an hour', () => {
    const { lossWPerK } = parked('estate', -10, 20)
    expect(lossWPerK.shellSpread01).toBe(0.3)
    const standard = cabinDefaults('estate')
    const perHour = (scale: number): number => {
      const input = night({
        cabin: { ...standard, lossScale: scale, freshAirM3PerH: standard.freshAirM3PerH * scale },
        weather: steadyWeather(-10),
        sleepers: [],
        supply: null,
      })
      return lastKW(
        simulateNight({
          ...input,
          battery: input.battery === null ? null : { ...input.battery, arrive01: 0.9, usableWh: 75_000 },
          decisions: { ...input.decisions, setPoints: [{ fromUtc: at(0), tempC: 20 }] },
        }),
      )
    }
    expect(perHour(0.7)).toBeLessThan(1.5)
    expect(perHour(1.3)).toBeGreaterThan(1.9)
  })

  it('electricity per kelvin lies in the 50 to 90 W that the tests imply', () => {
    const perK = (lastKW(parked('estate', -10, 20)) * 1000) / 30
    expect(perK).toBeGreaterThan(50)
    expect(perK).toBeLessThan(90)
  })

  it('covers cut about a quarter to a third of the shell', () => {
    const shell = (covers: boolean): number => simulateNight(withDecisions(night(), { covers })).lossWPerK.shell
    const cut = 1 - shell(true) / shell(false)
    expect(cut).toBeGreaterThan(0.2)
    expect(cut).toBeLessThan(0.35)
  })
})
