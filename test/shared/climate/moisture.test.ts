import { describe, expect, it } from 'vitest'
import psychrolib from 'psychrolib'
import { coolingCopAt } from '../../../shared/climate/heater.ts'
import { co2After } from '../../../shared/climate/moisture.ts'
import { dewPointFromPa, saturationPa, saturationRatio, vapourPa } from '../../../shared/climate/moisture-saturation.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { NightOutcome } from '../../../shared/climate/index.ts'
import { at, fallingWeather, night, sleeper, steadyWeather, withDecisions } from './night-fixture.ts'

describe('saturation against psychrolib 1.1.1', () => {
  psychrolib.SetUnitSystem(psychrolib.SI)

  it('the vapour pressure agrees to a millionth from -40 to 50 °C, over ice below the triple point', () => {
    for (let tempC = -40; tempC <= 50; tempC += 0.37) {
      expect(saturationPa(tempC) / psychrolib.GetSatVapPres(tempC)).toBeCloseTo(1, 6)
    }
  })

  it('the ratio of water agrees at three pressures', () => {
    for (const pressure of [101_325, 90_000, 75_000]) {
      for (let tempC = -30; tempC <= 40; tempC += 1.3) {
        expect(saturationRatio(tempC, pressure) / psychrolib.GetHumRatioFromRelHum(tempC, 1, pressure)).toBeCloseTo(
          1,
          5,
        )
      }
    }
  })

  it('the dew point is the inverse of saturation, across the triple point', () => {
    for (let tempC = -45; tempC <= 40; tempC += 0.43) expect(dewPointFromPa(saturationPa(tempC))).toBeCloseTo(tempC, 5)
    expect(dewPointFromPa(0)).toBe(-60)
  })

  it('vapour pressure and ratio are inverse', () => {
    expect(vapourPa(saturationRatio(12, 95_000), 95_000)).toBeCloseTo(saturationPa(12), 6)
  })
})

describe('air and water in the cabin', () => {
  it('CO2 tends to release over flow, and rises in a straight line where nothing flows', () => {
    expect(co2After(425, 425, 4, 25, 13, 1e6)).toBeCloseTo(425 + 13_000 / 25, 6)
    expect(co2After(425, 425, 4, 0, 13, 3600)).toBeCloseTo(425 + 13_000 / 4, 6)
  })

  it('a sleeper in a shut unheated cabin wets the glass, and frost forms when it is below freezing', () => {
    const cold = simulateNight(withDecisions(night({ weather: steadyWeather(-10) }), { setPoints: [] }))
    expect(cold.frostG).toBeGreaterThan(50)
    const mild = simulateNight(withDecisions(night({ weather: steadyWeather(6) }), { setPoints: [] }))
    expect(mild.condensateG).toBeGreaterThan(50)
    expect(mild.frostG).toBe(0)
  })

  it('what is on the glass dries again when the heating draws dry air through', () => {
    const input = withDecisions(night({ weather: steadyWeather(-5) }), {
      setPoints: [
        { fromUtc: at(0), tempC: null },
        { fromUtc: at(8), tempC: 20 },
      ],
    })
    const { series } = simulateNight(input)
    const film = series.condensateG.map((grams, row) => grams + (series.frostG[row] ?? 0))
    const most = Math.max(...film)
    expect(most).toBeGreaterThan(30)
    expect(film.at(-1) ?? most).toBeLessThan(most / 4)
  })

  it('fresh air drawn by the heating keeps one sleeper’s CO2 near what 25 m3/h give: 945 ppm', () => {
    const input = night({ sleepers: [sleeper()] })
    const { series } = simulateNight({ ...input, cabin: { ...input.cabin, freshAirM3PerH: 25, leakagePerH: 0 } })
    const asleep = series.co2Ppm[series.atUtc.indexOf(at(11))] ?? 0
    expect(Math.abs(asleep - (425 + 13_000 / 25))).toBeLessThan(15)
  })

  it('covers keep water off the glass but leave it colder', () => {
    const off = withDecisions(night({ weather: steadyWeather(-5) }), { covers: false })
    const bare = simulateNight(off)
    const covered = simulateNight(withDecisions(off, { covers: true }))
    expect(covered.series.glassC.at(-1) ?? 0).toBeLessThan(bare.series.glassC.at(-1) ?? 0)
    const onGlass = (outcome: NightOutcome): number =>
      (outcome.glass ?? []).reduce((sum, pane) => sum + pane.mostCondensateG + pane.mostFrostG, 0)
    expect(onGlass(covered)).toBeLessThan(onGlass(bare))
    expect(onGlass(covered)).toBeGreaterThan(0)
  })

  it('water and frost are told pane by pane: with the lining they are the whole, frost only below 0 °C', () => {
    const { glass = [], series } = simulateNight(
      withDecisions(night({ weather: steadyWeather(-4) }), { setPoints: [] }),
    )
    expect(glass.map(({ id }) => id)).toEqual(['windscreen', 'front-sides', 'rear-sides', 'tailgate'])
    series.atUtc.forEach((_, row) => {
      const onPanes = glass.reduce((sum, pane) => sum + (pane.condensateG[row] ?? 0) + (pane.frostG[row] ?? 0), 0)
      expect(onPanes).toBeLessThanOrEqual((series.condensateG[row] ?? 0) + (series.frostG[row] ?? 0) + 1e-9)
      for (const pane of glass) {
        if ((pane.surfaceC[row] ?? 0) < 0) expect(pane.condensateG[row]).toBe(0)
        else expect(pane.frostG[row]).toBe(0)
      }
    })
    for (const pane of glass) {
      expect(pane.mostFrostG).toBeGreaterThan(0)
      expect(pane.mostFrostG).toBe(Math.max(...pane.frostG))
      expect(pane.frostFromUtc).toBeGreaterThan(at(0))
    }
    // The pane with the most view of the sky is the coldest, so that it frosts first.
    const [windscreen, sides] = glass
    expect(windscreen?.surfaceC.at(-1) ?? 0).toBeLessThanOrEqual((sides?.surfaceC.at(-1) ?? 0) + 0.5)
  })

  it('what a gap costs is its air times 0.34 times the difference, rises with the gap, and is what simulating it costs', () => {
    const shut = withDecisions(night(), { windowSides: 2 })
    const costs = simulateNight(shut).windowCosts ?? []
    expect(costs.map(({ gapMm }) => gapMm)).toEqual([5, 10, 15, 20, 30, 50])
    costs.forEach(({ airM3PerH, heatW, electricW }, index) => {
      // Bed and front held near 12 °C against -5 °C: about 17 K; 0.33 Wh/m3K at 200 m.
      expect(heatW / airM3PerH / 0.33).toBeGreaterThan(14)
      expect(heatW / airM3PerH / 0.33).toBeLessThan(18)
      expect(electricW ?? 0).toBeLessThan(heatW)
      expect(heatW).toBeGreaterThan(costs[index - 1]?.heatW ?? 0)
    })
    const asleepW = (gapMm: number): number => {
      const { series } = simulateNight(withDecisions(shut, { windowGapMm: gapMm }))
      const rows = series.atUtc.flatMap((atUtc, row) => (atUtc > at(5) && atUtc <= at(12) ? [row] : []))
      return rows.reduce((sum, row) => sum + (series.heatW[row] ?? 0), 0) / rows.length
    }
    const cost = costs.find(({ gapMm }) => gapMm === 10)?.heatW ?? 0
    // Fresh air also takes a little of what it would have cost as drawn air: within a fifth.
    expect(Math.abs((asleepW(10) - asleepW(0)) / cost - 1)).toBeLessThan(0.2)
  })

  it('a gap costs no electricity where nothing heats', () => {
    const costs = simulateNight(night({ heater: { ...night().heater, kind: 'none' } })).windowCosts ?? []
    expect(costs.map(({ electricW }) => electricW)).toEqual(costs.map(() => null))
  })

  it('never condenses more than people give off and air brings in: by hand, over a warm humid night at 19 to 12 °C and 95 %', () => {
    const weather = fallingWeather(19, 12, { humidity01: 0.95 })
    for (const windowGapMm of [0, 10, 30])
      for (const setPoints of [[], [{ fromUtc: at(3), tempC: 14 }]]) {
        const input = withDecisions(night({ weather, heater: { ...night().heater, canCool: true } }), {
          setPoints,
          windowGapMm,
          windowSides: 2,
        })
        const { condensateG, liningG = 0, balance } = simulateNight(input)
        // Eight hours asleep at 45 g and six awake at 55 g; outdoor air at 19 °C carries less than the cabin's own, so that it only takes away.
        expect(balance.waterInG).toBeCloseTo(8 * 45 + 6 * 55, 0)
        expect(condensateG + liningG).toBeLessThan(8 * 45 + 6 * 55)
        expect(balance.waterOutG).toBeGreaterThan(0)
      }
  })

  it('takes the Lewis relation for what one pane gathers, by hand: h/cp times the difference of ratios', () => {
    const { glass = [], series } = simulateNight(withDecisions(night({ weather: steadyWeather(8) }), { setPoints: [] }))
    const row = series.atUtc.indexOf(at(10))
    const pane = glass[0]
    const grams = (pane?.condensateG[row + 1] ?? 0) - (pane?.condensateG[row] ?? 0)
    const areaM2 = night().cabin.panes[0]?.areaM2 ?? 0
    const mid = (values: readonly number[]): number => ((values[row] ?? 0) + (values[row + 1] ?? 0)) / 2
    const difference =
      saturationRatio(mid(series.dewPointC), 98_945) - saturationRatio(mid(pane?.surfaceC ?? []), 98_945)
    const byHandG = (3.4 / 1006) * areaM2 * difference * 300 * 1000
    expect(byHandG).toBeGreaterThan(0.1)
    expect(Math.abs(grams / byHandG - 1)).toBeLessThan(0.05)
  })
})

describe('cooling', () => {
  const hot = (humidity01: number, tempC = 22) =>
    simulateNight(
      withDecisions(
        night({
          weather: fallingWeather(35, 25, { humidity01 }),
          heater: { ...night().heater, canCool: true },
        }),
        { setPoints: [{ fromUtc: at(0.5), tempC }] },
      ),
    )

  it('drains what it takes out of the air, so that no kilograms settle inside at 35 to 25 °C', () => {
    const { condensateG, liningG = 0, coilDrainG = 0, balance } = hot(0.6)
    expect(condensateG + liningG).toBeLessThan(50)
    expect(coilDrainG).toBeGreaterThan(1000)
    expect(Math.abs(balance.waterResidualG)).toBeLessThan(0.001 * balance.waterInG)
  })

  it('pays for the drying: sensible and latent heat stand in the ratio of the line to the coil’s dew point', () => {
    const { series } = hot(0.6)
    const row = series.atUtc.indexOf(at(10))
    const sensibleW = -(series.heatW[row] ?? 0)
    const electricW = (series.heatingElectricW[row] ?? 0) - 250
    const ratio = saturationRatio(series.dewPointC[row] ?? 0, 98_945) - saturationRatio(8, 98_945)
    const latentPerSensible = (2.501e6 * ratio) / (1006 * ((series.bedAirC[row] ?? 0) - 8))
    expect(latentPerSensible).toBeGreaterThan(0.2)
    const byHandW = (sensibleW * (1 + latentPerSensible)) / coolingCopAt(series.outsideC[row] ?? 0)
    expect(Math.abs(electricW / byHandW - 1)).toBeLessThan(0.02)
  })

  it('takes more electricity the wetter the air, and leaves it drier than outside', () => {
    const [dry, wet] = [hot(0.3), hot(0.9)]
    expect(wet.heatingWh).toBeGreaterThan(dry.heatingWh * 1.2)
    expect(wet.series.dewPointC.at(-1) ?? 99).toBeLessThan(23)
  })

  it('does not cool to a set-point that was meant for heating', () => {
    const { series } = hot(0.6, 12)
    expect(Math.min(...series.frontAirC)).toBeGreaterThan(17.9)
  })
})
