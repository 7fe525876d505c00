/** What a night is prepared with: bounds, knots, weather between its rows, sky and daylight at each, by hand. */
import { describe, expect, it } from 'vitest'
import { along, daylightAlong, passings, prepareNight } from '../../../shared/climate/night-prepare.ts'
import type { Prepared } from '../../../shared/climate/night-prepare.ts'
import { dewPointFromPa, saturationPa, saturationRatio } from '../../../shared/climate/moisture-saturation.ts'
import { daylightWPerM2, skyC, skyExchangeWPerM2K } from '../../../shared/climate/network-sky.ts'
import { buildNetwork } from '../../../shared/climate/network.ts'
import { sunPosition } from '../../../shared/climate/sun.ts'
import type { NightInput, WeatherStep } from '../../../shared/climate/index.ts'
import { HOUR_S, at, night, sleeper, steadyWeather } from './night-fixture.ts'

const row = (hour: number, tempC: number, over: Partial<WeatherStep> = {}): WeatherStep => ({
  atUtc: at(hour),
  tempC,
  windMPerS: 1,
  humidity01: 0.8,
  cloud01: 1,
  ...over,
})
const hourly = (weather: readonly WeatherStep[], over: Partial<NightInput> = {}): Prepared =>
  prepareNight(night({ weather, stepS: HOUR_S, departUtc: at(6), ...over }))
const hoursOf = (instants: Float64Array): number[] => Array.from(instants, (atUtc) => (atUtc - at(0)) / HOUR_S)

describe('steps and knots', () => {
  it('steps count from arrival, and the last ends at departure', () => {
    const whole = hourly(steadyWeather(0))
    expect(whole.steps).toBe(6)
    expect(hoursOf(whole.boundsUtc)).toEqual([0, 1, 2, 3, 4, 5, 6])
    const odd = hourly(steadyWeather(0), { departUtc: at(5.25) })
    expect(hoursOf(odd.boundsUtc)).toEqual([0, 1, 2, 3, 4, 5, 5.25])
    expect(hoursOf(hourly(steadyWeather(0), { stepS: 9 * HOUR_S }).boundsUtc)).toEqual([0, 6])
  })

  it('rows of the weather inside the night and off its bounds are knots too, each once and in order', () => {
    const prepared = hourly([row(5, 0), row(2.5, 0), row(-1, 0), row(2.25, 0), row(2.5, 0), row(6, 0), row(9, 0)])
    expect(hoursOf(prepared.knotsUtc)).toEqual([0, 1, 2, 2.25, 2.5, 3, 4, 5, 6])
    expect([...prepared.boundKnot]).toEqual([0, 1, 2, 5, 6, 7, 8])
    const plain = hourly([row(0, 0), row(3, 0)])
    expect([...plain.boundKnot]).toEqual([0, 1, 2, 3, 4, 5, 6])
  })

  it('a night that ends before it begins, has no step or no weather is a programmer’s error', () => {
    expect(() => hourly(steadyWeather(0), { departUtc: at(0) })).toThrow()
    expect(() => hourly(steadyWeather(0), { stepS: 0 })).toThrow()
    expect(() => hourly([])).toThrow()
  })
})

describe('the weather at a knot', () => {
  it('runs straight between rows, also from before arrival and to after departure, in whatever order they come', () => {
    const rows = [
      row(-2, 10, { windMPerS: 0, cloud01: 0 }),
      row(2, 2, { windMPerS: 4, cloud01: 1 }),
      row(10, -6, { windMPerS: 0, cloud01: 1 }),
    ]
    for (const weather of [rows, rows.toReversed()]) {
      const { outsideC, windMPerS } = hourly(weather)
      expect([...outsideC]).toEqual([6, 4, 2, 1, 0, -1, -2].map((tempC) => expect.closeTo(tempC, 9)))
      expect([...windMPerS]).toEqual([2, 3, 4, 3.5, 3, 2.5, 2].map((wind) => expect.closeTo(wind, 9)))
    }
  })

  it('is level before the first row and after the last', () => {
    expect([...hourly([row(2, 5), row(4, -5)]).outsideC]).toEqual([5, 5, 5, 0, -5, -5, -5])
  })

  it('holds humidity between nought and full, and wind at nought or more', () => {
    const ratioOf = (humidity01: number): number => hourly([row(0, 4, { humidity01 })]).outsideRatio[0] ?? Number.NaN
    const pa = hourly(steadyWeather(0)).pressurePa
    expect(ratioOf(1)).toBeCloseTo(saturationRatio(4, pa), 12)
    expect(ratioOf(0.5)).toBeCloseTo(saturationRatio(4, pa) / 2, 12)
    expect(ratioOf(1.3)).toBe(ratioOf(1))
    expect(ratioOf(-0.2)).toBe(0)
    expect(hourly([row(0, 4, { windMPerS: -3 })]).windMPerS[0]).toBe(0)
  })

  it('has the sky that air, dew point and cloud make, and what it draws at 0.88', () => {
    const prepared = hourly([row(0, 4, { humidity01: 0.5, cloud01: 0.25 })])
    const sky = skyC(4, dewPointFromPa(0.5 * saturationPa(4)), 0.25)
    expect(prepared.skyC[3]).toBeCloseTo(sky, 9)
    expect(prepared.skyWPerM2[3]).toBeCloseTo(0.88 * skyExchangeWPerM2K(4, sky) * (4 - sky), 9)
    // A clear sky draws more than a clouded one.
    const clear = hourly([row(0, 4, { humidity01: 0.5, cloud01: 0 })]).skyWPerM2[0] ?? 0
    expect(clear).toBeGreaterThan(prepared.skyWPerM2[0] ?? Infinity)
  })
})

describe('a place in the weather', () => {
  it('along a straight line is by its share of the way', () => {
    const values = Float64Array.of(3, 7, -1)
    expect([along(values, 0, 0), along(values, 0, 0.25), along(values, 0, 1), along(values, 1, 0.5)]).toEqual([
      3, 4, 7, 3,
    ])
  })

  it('passes a level where the straight line crosses it, down and up again, and at a knot that lies on it once', () => {
    const prepared = hourly([row(0, 4), row(2, -4), row(6, 4)])
    const hours = (levelC: number): number[] => passings(prepared, levelC).map((atUtc) => (atUtc - at(0)) / HOUR_S)
    // 4 K an hour down, 2 K an hour up.
    expect(hours(0.5)).toEqual([expect.closeTo(0.875, 9), expect.closeTo(4.25, 9)])
    expect(hours(-3)).toEqual([expect.closeTo(1.75, 9), expect.closeTo(2.5, 9)])
    expect(hours(0)).toEqual([expect.closeTo(1, 9), expect.closeTo(4, 9)])
    expect(hours(5)).toEqual([])
    expect(hours(-5)).toEqual([])
  })
})

describe('daylight', () => {
  /** Midsummer at 50 degrees south: the sun sets some three hours after arrival and rises again before departure. */
  const SUMMER = {
    latitudeDeg: -50,
    longitudeDeg: 8,
    weather: [row(0, 15, { cloud01: 0.2 }), row(14, 15, { cloud01: 0.9 })],
  }
  const summer = (over: Partial<NightInput> = {}): Prepared =>
    prepareNight(night({ ...SUMMER, stepS: HOUR_S, ...over }))
  const heightDeg = (hour: number): number =>
    sunPosition({ latitudeDeg: -50, longitudeDeg: 8, atUtc: at(hour) }).elevationDeg
  const cloud01 = (hour: number): number => 0.2 + (0.7 * hour) / 14
  /** Height on the straight line between the whole hours beside an instant. */
  const chordDeg = (hour: number): number => {
    const low = Math.floor(hour)
    return heightDeg(low) + (heightDeg(low + 1) - heightDeg(low)) * (hour - low)
  }

  it('at a whole hour is that of the sun’s own height under the cloud of the hour', () => {
    const { daylightWPerM2: columns } = summer()
    expect(columns.length).toBe(15)
    for (const [hour, watts] of columns.entries())
      expect(watts, `hour ${hour}`).toBeCloseTo(daylightWPerM2(heightDeg(hour), cloud01(hour)), 9)
    expect(columns[0]).toBeGreaterThan(50)
    expect(columns[7]).toBe(0)
    expect(columns[14]).toBeGreaterThan(50)
  })

  it('between hours goes by straight lines of the sun’s height, to the end of a night of odd length', () => {
    const { daylightWPerM2: columns, halfwayWPerM2, knotsUtc } = summer({ stepS: 1200, departUtc: at(13.5) })
    hoursOf(knotsUtc).forEach((hour, knot) => {
      expect(columns[knot], `hour ${hour}`).toBeCloseTo(daylightWPerM2(chordDeg(hour), cloud01(hour)), 6)
    })
    expect(hoursOf(knotsUtc).at(-1)).toBe(13.5)
    // Half way from knot 4 at 1 h 20 min to knot 5 at 1 h 40 min.
    expect(halfwayWPerM2[4]).toBeCloseTo(daylightWPerM2(chordDeg(1.5), cloud01(1.5)), 6)
  })

  it('half way is known wherever there is light at one end at least, and nothing at night', () => {
    const ends = { lit: 0, falling: 0, rising: 0 }
    for (const longitudeDeg of [-4, 0, 4, 8, 12, 16]) {
      const { daylightWPerM2: columns, halfwayWPerM2 } = summer({ longitudeDeg })
      const heightAt = (hour: number): number =>
        sunPosition({ latitudeDeg: -50, longitudeDeg, atUtc: at(hour) }).elevationDeg
      for (let knot = 0; knot < 14; knot += 1) {
        const [left, right] = [columns[knot] ?? 0, columns[knot + 1] ?? 0]
        const dark = left === 0 && right === 0
        const middle = daylightWPerM2((heightAt(knot) + heightAt(knot + 1)) / 2, cloud01(knot + 0.5))
        expect(halfwayWPerM2[knot], `${longitudeDeg} degrees, knot ${knot}`).toBeCloseTo(dark ? 0 : middle, 6)
        if (!dark) ends.lit += 1
        if (left > 0 && right === 0 && middle > 0) ends.falling += 1
        if (left === 0 && right > 0 && middle > 0) ends.rising += 1
      }
    }
    expect(ends.lit).toBeGreaterThan(24)
    expect(ends.lit).toBeLessThan(60)
    // Dusk and dawn both lie between two whole hours somewhere.
    expect(ends.falling).toBeGreaterThan(0)
    expect(ends.rising).toBeGreaterThan(0)
  })

  it('along the way is the parabola through both ends and the middle, never below nothing', () => {
    const prepared = summer()
    const [from, middle, to] = [prepared.daylightWPerM2[1], prepared.halfwayWPerM2[1], prepared.daylightWPerM2[2]]
    if (from === undefined || middle === undefined || to === undefined) throw new Error('two knots of daylight')
    expect(daylightAlong(prepared, 1, 0)).toBeCloseTo(from, 9)
    expect(daylightAlong(prepared, 1, 0.5)).toBeCloseTo(middle, 9)
    expect(daylightAlong(prepared, 1, 1)).toBeCloseTo(to, 9)
    // Lagrange at a quarter: 3/8, 3/4 and -1/8.
    expect(daylightAlong(prepared, 1, 0.25)).toBeCloseTo((3 * from) / 8 + (3 * middle) / 4 - to / 8, 9)
    for (let knot = 0; knot < 14; knot += 1)
      for (const share01 of [0.1, 0.3, 0.7, 0.9])
        expect(daylightAlong(prepared, knot, share01)).toBeGreaterThanOrEqual(0)
    const sinking = { ...prepared, daylightWPerM2: Float64Array.of(40, 0), halfwayWPerM2: Float64Array.of(0, 0) }
    // 40, 0 and 0 would dip below nothing: at three quarters to -5.
    expect(daylightAlong(sinking, 0, 0.75)).toBe(0)
  })
})

describe('what does not change over the night', () => {
  it('is air by volume and height, people awake and asleep, and a network for each wind and cover, built once', () => {
    const prepared = hourly(steadyWeather(0), { elevationM: 1500 })
    const { cabin } = prepared.input
    expect(prepared.pressurePa).toBeCloseTo(84_556, -2) // ICAO standard atmosphere at 1500 m.
    expect(prepared.airKg).toBeCloseTo(cabin.airVolumeM3 * prepared.airKgPerM3, 9)
    expect(prepared.airJPerM3K / prepared.airKgPerM3).toBeCloseTo(1006, -1)
    const [four, covered] = [prepared.networkAt(4, false), prepared.networkAt(4, true)]
    expect(four).toEqual(buildNetwork(cabin, 2, false, prepared.airJPerM3K))
    expect(covered).toEqual(buildNetwork(cabin, 2, true, prepared.airJPerM3K))
    expect(prepared.networkAt(4, false)).toBe(four)
    expect(prepared.networkAt(4, true)).toBe(covered)
    expect(prepared.awake.sensibleW).toBeGreaterThan(prepared.asleep.sensibleW)
    expect(hourly(steadyWeather(0), { sleepers: [sleeper(), sleeper()] }).asleep.sensibleW).toBeCloseTo(
      2 * prepared.asleep.sensibleW,
      9,
    )
    expect(prepared.supply?.usableA).toBe(10)
    expect(hourly(steadyWeather(0), { supply: null }).supply).toBeNull()
  })
})
