import { describe, expect, it } from 'vitest'
import { copAt, coolingCopAt, electricPerHeat } from '../../../shared/climate/heater.ts'
import { PLANNING_COP } from '../../../shared/climate/sources/hvac.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { LeisureParameters, NightInput, NightOutcome } from '../../../shared/climate/index.ts'
import { at, night, sleeper, steadyWeather, supply, withDecisions } from './night-fixture.ts'

const pump = {
  ...night().heater,
  cop: [
    { outsideC: -20, value: 1.1 },
    { outsideC: -10, value: 1.4 },
    { outsideC: 0, value: 1.8 },
  ],
}

describe('the heater', () => {
  it('takes heat per electricity from the table: lines between points, level beyond', () => {
    expect(copAt(pump, -5)).toBeCloseTo(1.6, 10)
    expect(copAt(pump, -30)).toBe(1.1)
    expect(copAt(pump, 20)).toBe(1.8)
  })

  it('is resistance below a heat pump’s lower limit, and never worse than resistance', () => {
    expect(copAt({ ...pump, lowerLimitC: -15 }, -16)).toBe(1)
    expect(copAt({ ...pump, lowerLimitC: -15 }, -14)).toBeGreaterThan(1)
    expect(copAt({ ...pump, cop: [{ outsideC: -10, value: 0.73 }] }, -10)).toBe(1)
  })

  it('falls back on the planning curve where the owner gives no table; resistance is 1', () => {
    for (const point of PLANNING_COP) expect(copAt({ ...pump, cop: [] }, point.outsideC)).toBe(point.value)
    expect(copAt({ ...pump, kind: 'resistance', cop: [] }, -10)).toBe(1)
  })

  it('cools at 1.8 at 45.4 °C outside, within a tenth (bench test, read)', () => {
    expect(Math.abs(coolingCopAt(45.4) / 1.8 - 1)).toBeLessThan(0.1)
  })

  it('below its least output a heat pump pays for cycling, yet less heat never costs more', () => {
    const cycling = { ...pump, minHeatW: 1000 }
    expect(electricPerHeat(cycling, 2, 500)).toBeGreaterThan(electricPerHeat(cycling, 2, 1000))
    let before = 0
    for (let heatW = 50; heatW <= 1500; heatW += 50) {
      const electricW = heatW * electricPerHeat(cycling, 2, heatW)
      expect(electricW).toBeGreaterThan(before)
      before = electricW
    }
  })

  it('holds the set-point at the front where it has the power', () => {
    const { series } = simulateNight(night())
    const held = series.frontAirC.filter((_, row) => (series.atUtc[row] ?? 0) > at(4))
    expect(held.length).toBeGreaterThan(0)
    for (const frontC of held) expect(frontC).toBeCloseTo(12, 6)
  })

  it('switches itself off after its hours, and says when', () => {
    const input = night({ heater: { ...night().heater, switchesOffAfterS: 4 * 3600 } })
    const outcome = simulateNight(input)
    expect(outcome.series.heatW.at(-1)).toBe(0)
    const stop = outcome.cautions.find((caution) => caution.code === 'heater-stops')
    expect(stop?.atUtc).toBeGreaterThanOrEqual(at(7))
    expect(stop?.atUtc).toBeLessThan(at(7.5))
  })

  it('switches itself off below a charge and stays off', () => {
    const input = night({ supply: null, heater: { ...night().heater, switchesOffBelow01: 0.45 } })
    const outcome = simulateNight(input)
    const stops = outcome.series.atUtc.findIndex((atUtc) => atUtc >= (outcome.stopsUtc ?? Infinity))
    expect(outcome.series.charge01[stops]).toBeCloseTo(0.45, 2)
    expect(Math.max(...outcome.series.heatW.slice(stops + 1))).toBe(0)
    expect(outcome.depart01).toBeGreaterThan(0.44)
  })

  it('a heater that may not run all night runs only while people are awake', () => {
    const { series } = simulateNight(night({ heater: { ...night().heater, mayRunAllNight: false } }))
    series.atUtc.forEach((atUtc, row) => {
      if (atUtc > at(4) && atUtc <= at(12)) expect(series.heatW[row]).toBe(0)
    })
    expect(Math.max(...series.heatW)).toBeGreaterThan(0)
  })

  it('stops at the battery’s reserve and leaves the reserve', () => {
    const base = night({ supply: null, weather: steadyWeather(-15) })
    const outcome = simulateNight({
      ...base,
      battery: base.battery === null ? null : { ...base.battery, arrive01: 0.2 },
    })
    expect(outcome.stopsUtc).not.toBeNull()
    expect(outcome.depart01).toBeGreaterThan(0.095)
    expect(outcome.cautions.map((caution) => caution.code)).toContain('heater-stops')
  })

  it('a mains fan heater runs only while the supply is on and falls with voltage squared', () => {
    const van = night({
      battery: null,
      leisure: { kind: 'lfp', usableWh: 1000, reserve01: 0.2, chargerW: 0, loadW: 0, arrive01: 1, inverterMaxW: 0 },
      heater: { ...night().heater, kind: 'mains-fan-heater', maxHeatW: 750, awakeLoadW: 0, cop: [] },
      supply: supply({
        readings: [
          { currentA: 0, volts: 223 },
          { currentA: 6, volts: 217 },
        ],
        siteLimitA: 6,
        unplugUtc: at(10),
      }),
      weather: steadyWeather(-10),
    })
    const { series } = simulateNight(van)
    const running = series.heatW[series.atUtc.indexOf(at(8))] ?? 0
    // 750 W at 230 V gives about 670 W at 217 V.
    expect(Math.abs(running - 750 * (217 / 230) ** 2)).toBeLessThan(5)
    expect(series.heatW.at(-1)).toBe(0)
  })

  it('a fan heater runs on from the leisure battery through its inverter, within what that carries, down to the reserve', () => {
    const van = (over: Partial<LeisureParameters>, minHeatW = 500): NightInput =>
      night({
        battery: null,
        leisure: {
          kind: 'lfp',
          usableWh: 2500,
          reserve01: 0.2,
          chargerW: 0,
          loadW: 20,
          arrive01: 1,
          inverterMaxW: 1000,
          ...over,
        },
        heater: { ...night().heater, kind: 'mains-fan-heater', maxHeatW: 2000, minHeatW, awakeLoadW: 0, cop: [] },
        supply: supply({ unplugUtc: at(6) }),
        weather: steadyWeather(-10),
      })
    const heatAfter = (outcome: NightOutcome): number[] =>
      outcome.series.heatW.filter((_, row) => (outcome.series.atUtc[row] ?? 0) > at(6.1))
    const inverted = simulateNight(van({}))
    expect(Math.max(...heatAfter(inverted))).toBeCloseTo(1000, 0)
    expect(inverted.leisureDepart01).toBeGreaterThanOrEqual(0.2 - 1e-9)
    // (1 - 0.2) x 2500 Wh, less 20 W all night, through 88 %: the heat that came out of the battery, no more.
    const fromBatteryWh = heatAfter(inverted).reduce((sum, watts) => sum + watts / 12, 0)
    expect(fromBatteryWh).toBeGreaterThan(1200)
    expect(fromBatteryWh).toBeLessThan((0.8 * 2500 - 20 * 6) * 0.88 + 1)
    expect(inverted.stopsUtc).toBeGreaterThan(at(6))
    // None without an inverter, none where its least setting is more than the inverter carries.
    expect(Math.max(...heatAfter(simulateNight(van({ inverterMaxW: 0 }))))).toBe(0)
    expect(Math.max(...heatAfter(simulateNight(van({ inverterMaxW: 700 }, 800))))).toBe(0)
    expect(simulateNight(van({ inverterMaxW: 700 }, 800)).stopsUtc).toBe(at(6))
  })

  it('a fan heater is not said to stop where it ends with unplugging in the morning, but is where that leaves sleepers cold', () => {
    const van = (unplugHour: number): NightInput =>
      night({
        battery: null,
        heater: { ...night().heater, kind: 'mains-fan-heater', maxHeatW: 750, awakeLoadW: 0, cop: [] },
        supply: supply({ unplugUtc: at(unplugHour) }),
        weather: steadyWeather(-10),
      })
    // Asleep from hour 4 to 12.
    const morning = simulateNight(van(13))
    expect(morning.stopsUtc).toBeNull()
    expect(morning.cautions.map(({ code }) => code)).not.toContain('heater-stops')
    const asleep = simulateNight(van(9))
    expect(asleep.stopsUtc).toBe(at(9))
    expect(asleep.cautions).toContainEqual({ code: 'heater-stops', atUtc: at(9), value: null })
    // A post that fails at night is a stop, whatever was planned for the morning.
    expect(simulateNight({ ...van(13), fault: { kind: 'supply-lost', atUtc: at(7) } }).stopsUtc).toBe(at(7))
  })

  it('what the vehicle keeps on all night comes out of its battery, by the watt-hour', () => {
    const quiet = simulateNight(night({ supply: null }))
    const lit = simulateNight(night({ supply: null, keepsOnW: 30 }))
    expect(lit.keptOnWh).toBeCloseTo(30 * 14, 6)
    expect(quiet.keptOnWh).toBeUndefined()
    expect(((quiet.depart01 ?? 0) - (lit.depart01 ?? 0)) * 60_000).toBeCloseTo(30 * 14, 6)
    expect(lit.heatingWh).toBeCloseTo(quiet.heatingWh, 9)
    const leisure = {
      kind: 'lead',
      usableWh: 1000,
      reserve01: 0.5,
      chargerW: 0,
      loadW: 0,
      arrive01: 1,
      inverterMaxW: 0,
    } as const
    const van = simulateNight(
      night({ supply: null, battery: null, leisure, heater: { ...night().heater, kind: 'none' }, keepsOnW: 10 }),
    )
    expect(van.leisureDepart01).toBeCloseTo(1 - (10 * 14) / 1000, 9)
  })

  it('fresh air that the running heater draws is its least flow: it costs heat even at part load', () => {
    const drawing = simulateNight(night())
    const closed = simulateNight(night({ cabin: { ...night().cabin, freshAirM3PerH: 0 } }))
    const heat = (outcome: NightOutcome): number => outcome.series.heatW.at(-1) ?? 0
    // 70 m3/h at 0.34 Wh/m3K and some 17 K.
    expect(heat(drawing) - heat(closed)).toBeGreaterThan(300)
    expect(heat(drawing) - heat(closed)).toBeLessThan(450)
  })

  it('warming up on site power before unplugging leaves more for the road than warming up after', () => {
    const heated = (fromH: number, toH: number): NightOutcome =>
      simulateNight(
        withDecisions(night({ supply: supply({ unplugUtc: at(13) }) }), {
          chargeLimit01: 0.5,
          setPoints: [
            { fromUtc: at(fromH), tempC: 18 },
            { fromUtc: at(toH), tempC: null },
          ],
        }),
      )
    expect(heated(12, 13).depart01).toBeGreaterThan(heated(13, 14).depart01 ?? 1)
  })

  it('air-conditioning holds a hot night down, and draws about what heating draws in mild cold', () => {
    const hot = night({
      weather: steadyWeather(32, { humidity01: 0.4 }),
      heater: { ...night().heater, canCool: true },
      sleepers: [sleeper()],
    })
    const cooled = simulateNight(withDecisions(hot, { setPoints: [{ fromUtc: at(0), tempC: 22 }] }))
    expect(Math.max(...cooled.series.frontAirC.slice(12))).toBeLessThan(22.1)
    const warmed = simulateNight(
      withDecisions(night({ weather: steadyWeather(2) }), { setPoints: [{ fromUtc: at(0), tempC: 18 }] }),
    )
    // Row NGT-090: 0.7 to 1.4, common practice.
    const ratio = (cooled.series.heatingElectricW.at(-1) ?? 0) / (warmed.series.heatingElectricW.at(-1) ?? 1)
    expect(ratio).toBeGreaterThan(0.5)
    expect(ratio).toBeLessThan(1.4)
  })
})
