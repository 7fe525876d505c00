/** Nights whose energy can be worked out on paper: a fixed power, switched at odd seconds, is that power times the time. */
import { describe, expect, it } from 'vitest'
import { daylightAlong, prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { NightRun } from '../../../shared/climate/night-run.ts'
import type { LeisureParameters, NightInput, NightOutcome } from '../../../shared/climate/index.ts'
import {
  BATTERY,
  HOUR_S,
  at,
  fallingWeather,
  night,
  sleeper,
  steadyWeather,
  supply,
  withDecisions,
} from './night-fixture.ts'

/** An instant some seconds after the hour, where no step and no row of the weather ends. */
const odd = (hour: number, seconds: number) => at(hour + seconds / HOUR_S)
const run = (input: NightInput): NightRun => runNight(prepareNight(input), input.decisions)

/** 300 W of heat at most, which never reach 30 °C inside at -5 °C outside: whenever it is on, it gives all it can. */
const HEATER: NightInput['heater'] = {
  ...night().heater,
  kind: 'resistance',
  maxHeatW: 300,
  awakeLoadW: 40,
}
/** Fourteen hours, nothing plugged in, nobody inside; heat wanted from 3 h 137 s to 9 h 41 s. */
const FIXED: NightInput = withDecisions(
  night({ heater: HEATER, battery: BATTERY, supply: null, sleepers: [], stepS: 600 }),
  {
    setPoints: [
      { fromUtc: odd(3, 137), tempC: 30 },
      { fromUtc: odd(9, 41), tempC: null },
    ],
  },
)
/** 6 h less 96 s. */
const HEATED_H = 6 - 96 / HOUR_S

/** Energy of a column of mean powers, Wh. */
function energyWh({ series }: NightOutcome, column: readonly number[]): number {
  return column.reduce((sum, watts, row) => {
    const from = series.atUtc[row - 1] ?? at(0)
    return sum + (watts * ((series.atUtc[row] ?? 0) - from)) / HOUR_S
  }, 0)
}

describe('a heater at its full 300 W', () => {
  it('takes 340 W with its fan for just as long as it is told to, and the battery gives that', () => {
    const outcome = simulateNight(FIXED)
    expect(outcome.heatingWh).toBeCloseTo(340 * HEATED_H, 4)
    expect(outcome.overheadWh).toBeCloseTo(40 * HEATED_H, 4)
    expect(energyWh(outcome, outcome.series.heatW)).toBeCloseTo(300 * HEATED_H, 4)
    expect(energyWh(outcome, outcome.series.heatingElectricW)).toBeCloseTo(340 * HEATED_H, 4)
    expect(outcome.depart01).toBeCloseTo(0.5 - (340 * HEATED_H) / 60_000, 9)
    expect(outcome.intoBatteryWh).toBe(0)
    expect(outcome.stopsUtc).toBeNull()
  })

  it('shows the mean over the step in which it is switched on: 463 of 600 s', () => {
    const { series } = simulateNight(FIXED)
    const row = series.atUtc.indexOf(at(3 + 600 / HOUR_S))
    expect(series.heatW[row - 1]).toBe(0)
    expect(series.heatW[row]).toBeCloseTo((300 * 463) / 600, 6)
    expect(series.heatW[row + 1]).toBeCloseTo(300, 6)
    expect(series.chargeW[row]).toBeCloseTo((-340 * 463) / 600, 6)
  })

  it('has the last step shorter where the night is no multiple of it', () => {
    const outcome = simulateNight({ ...FIXED, departUtc: odd(13, 1000), stepS: 900 })
    expect(outcome.series.atUtc.slice(-2)).toEqual([odd(13, 900), odd(13, 1000)])
    expect(outcome.heatingWh).toBeCloseTo(340 * HEATED_H, 4)
  })

  it('goes by the last set-point before an instant, in whatever order they are told', () => {
    const [on, off] = FIXED.decisions.setPoints
    if (on === undefined || off === undefined) throw new Error('two set-points')
    const backwards = simulateNight(withDecisions(FIXED, { setPoints: [off, on] }))
    expect(backwards.heatingWh).toBeCloseTo(340 * HEATED_H, 4)
    const early = simulateNight(withDecisions(FIXED, { setPoints: [{ fromUtc: at(-2), tempC: 30 }] }))
    expect(early.heatingWh).toBeCloseTo(340 * 14, 4)
  })

  it('fails at the second it fails', () => {
    const outcome = simulateNight({ ...FIXED, fault: { kind: 'heater-fails', atUtc: odd(5, 19) } })
    expect(outcome.heatingWh).toBeCloseTo(340 * (2 - 118 / HOUR_S), 4)
    expect(outcome.stopsUtc).toBe(odd(5, 19))
  })

  it('that may not run all night stops from bedtime to rising', () => {
    const heater = { ...HEATER, mayRunAllNight: false }
    const times = { sleepFromUtc: odd(4, 77), sleepToUtc: odd(8, 203) }
    const outcome = simulateNight({ ...FIXED, ...times, heater })
    // From 3 h 137 s to 4 h 77 s, and from 8 h 203 s to 9 h 41 s.
    expect(outcome.heatingWh).toBeCloseTo((340 * (3540 + 3438)) / HOUR_S, 4)
    expect(outcome.stopsUtc).toBe(odd(4, 77))
  })

  it('switches itself off after its time, to the second', () => {
    const outcome = simulateNight({ ...FIXED, heater: { ...HEATER, switchesOffAfterS: 7001 } })
    expect(outcome.heatingWh).toBeCloseTo((340 * 7001) / HOUR_S, 3)
    expect(outcome.stopsUtc).toBe(odd(3, 137 + 7001))
  })

  it('switches itself off at its least charge, and at the reserve, to the watt-hour', () => {
    // 0.01 x 60 kWh = 600 Wh.
    const outcome = simulateNight({ ...FIXED, heater: { ...HEATER, switchesOffBelow01: 0.49 } })
    expect(outcome.heatingWh).toBeCloseTo(600, 1)
    expect(outcome.depart01).toBeCloseTo(0.49, 6)
    const reserve = simulateNight({ ...FIXED, battery: { ...BATTERY, arrive01: 0.11 } })
    expect(reserve.heatingWh).toBeCloseTo(600, 1)
    expect(reserve.depart01).toBeCloseTo(0.1, 6)
    expect(Math.abs((reserve.stopsUtc ?? 0) - odd(3, 137 + (600 / 340) * HOUR_S))).toBeLessThan(2)
  })

  it('is named with the reason for which it stops', () => {
    const reasonOf = (over: Partial<NightInput>): string | null => run({ ...FIXED, ...over }).stopReason
    expect(reasonOf({})).toBeNull()
    expect(reasonOf({ fault: { kind: 'heater-fails', atUtc: at(5) } })).toBe('failed')
    expect(reasonOf({ heater: { ...HEATER, switchesOffAfterS: 60 } })).toBe('switched-off')
    expect(reasonOf({ heater: { ...HEATER, mayRunAllNight: false } })).toBe('may-not-run')
    expect(reasonOf({ battery: { ...BATTERY, arrive01: 0.11 } })).toBe('reserve')
    const fan = { heater: { ...HEATER, kind: 'mains-fan-heater' } } as const
    expect(reasonOf(fan)).toBe('no-supply')
    const leisure: LeisureParameters = {
      kind: 'lead',
      usableWh: 200,
      reserve01: 0.2,
      chargerW: 0,
      loadW: 0,
      arrive01: 0.9,
      inverterMaxW: 500,
    }
    expect(reasonOf({ ...fan, battery: null, leisure })).toBe('reserve')
    expect(reasonOf({ ...fan, battery: null, leisure: { ...leisure, inverterMaxW: 0 } })).toBe('no-supply')
  })
})

describe('a heat pump’s electricity', () => {
  it('is its heat by the curve, and by one below its lower limit, from the second the outside air passes it', () => {
    // From 5 to -5 °C over 14 h: 0 °C after seven hours, -2 °C after 9.8 h.
    const heater: NightInput['heater'] = {
      ...HEATER,
      kind: 'heat-pump',
      cop: [{ outsideC: 0, value: 2.5 }],
      lowerLimitC: -2,
    }
    const outcome = simulateNight({
      ...withDecisions(FIXED, { setPoints: [{ fromUtc: at(0), tempC: 40 }] }),
      weather: fallingWeather(5, -5),
      heater,
    })
    expect(outcome.heatingWh).toBeCloseTo(40 * 14 + (300 / 2.5) * 9.8 + 300 * 4.2, 3)
  })
})

describe('a charger at what the post gives', () => {
  // 232 V and 0.7 ohm, 10 A: 2250 W; from 30 min 11 s to 13 h 1817 s.
  const PLUGGED: NightInput = {
    ...withDecisions(FIXED, { setPoints: [] }),
    battery: { ...BATTERY, arrive01: 0.4 },
    supply: supply({ plugInUtc: odd(0, 1811), unplugUtc: odd(13, 1817) }),
  }
  const PLUGGED_H = 13 + 6 / HOUR_S

  it('fills the battery for as long as it is plugged in, at 88 % of 2250 W', () => {
    const outcome = simulateNight(PLUGGED)
    expect(outcome.fromSiteWh).toBeCloseTo(2250 * PLUGGED_H, 3)
    expect(outcome.intoBatteryWh).toBeCloseTo(1980 * PLUGGED_H, 3)
    expect(outcome.depart01).toBeCloseTo(0.4 + (1980 * PLUGGED_H) / 60_000, 9)
    // 10 A through 0.7 ohm: 70 W.
    expect(outcome.wiringLossWh).toBeCloseTo(70 * PLUGGED_H, 3)
    expect(outcome.cost).toBeCloseTo(0.4 * 2.25 * PLUGGED_H, 6)
  })

  it('spends more on a cold battery from the second that the air falls below 0 °C', () => {
    const outcome = simulateNight({
      ...PLUGGED,
      weather: fallingWeather(5, -5),
      battery: { ...BATTERY, arrive01: 0.4, overheadW: 100, coldOverheadW: 300 },
    })
    // Freezing after seven hours: 23,389 s of 2150 W before and 23,417 s of 1850 W after, at 88 %.
    expect(outcome.intoBatteryWh).toBeCloseTo((0.88 * (2150 * 23_389 + 1850 * 23_417)) / HOUR_S, 2)
  })

  it('stops at the second the supply is lost or the breaker trips, and goes on at its reset', () => {
    const lost = simulateNight({ ...PLUGGED, fault: { kind: 'supply-lost', atUtc: odd(6, 307) } })
    expect(lost.fromSiteWh).toBeCloseTo((2250 * (6 * HOUR_S + 307 - 1811)) / HOUR_S, 3)
    const tripped = simulateNight({
      ...PLUGGED,
      fault: { kind: 'breaker-trips', atUtc: odd(6, 307), heldA: 8, resetUtc: odd(8, 55) },
    })
    // After the reset 8 A at 226.4 V.
    const afterS = 5 * HOUR_S + 1817 - 55
    expect(tripped.fromSiteWh).toBeCloseTo((2250 * (6 * HOUR_S + 307 - 1811) + 1811.2 * afterS) / HOUR_S, 3)
  })
})

describe('bed heaters of 50 W', () => {
  const bed = { bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }] } as const
  const WARM: NightInput = withDecisions(
    { ...FIXED, ...bed, sleepFromUtc: odd(4, 77), sleepToUtc: odd(12, 203) },
    { setPoints: [], bedHeaterIds: ['bed'] },
  )
  const ASLEEP_S = 8 * HOUR_S + 126

  it('run from bedtime to rising, from the driving battery', () => {
    const outcome = simulateNight(WARM)
    expect(outcome.heatingWh).toBeCloseTo((50 * ASLEEP_S) / HOUR_S, 4)
    expect(energyWh(outcome, outcome.series.bedHeatW)).toBeCloseTo((50 * ASLEEP_S) / HOUR_S, 4)
    expect(outcome.depart01).toBeCloseTo(0.5 - (50 * ASLEEP_S) / HOUR_S / 60_000, 9)
    // Nobody inside, no sun and nothing that condenses: nothing else warms the car.
    expect(outcome.balance.heatInWh).toBeCloseTo((50 * ASLEEP_S) / HOUR_S, 2)
  })

  it('run only where chosen, and from the instant that the plan puts them on', () => {
    expect(simulateNight(withDecisions(WARM, { bedHeaterIds: [] })).heatingWh).toBe(0)
    const later = simulateNight(withDecisions(WARM, { bedHeatersFromUtc: odd(7, 33) }))
    expect(later.heatingWh).toBeCloseTo((50 * (5 * HOUR_S + 170)) / HOUR_S, 4)
  })

  it('go off with the battery at its reserve, and not while the post carries them', () => {
    const empty: NightInput = { ...WARM, battery: { ...BATTERY, arrive01: 0.1 } }
    expect(simulateNight(empty).heatingWh).toBe(0)
    const carried = { ...empty, supply: supply({ plugInUtc: at(0), unplugUtc: at(14), chargeAllowed: false }) }
    expect(simulateNight(carried).heatingWh).toBeCloseTo((50 * ASLEEP_S) / HOUR_S, 4)
  })

  it('run from the leisure battery of a van until its reserve, and not at all with no battery and no post', () => {
    const leisure: LeisureParameters = {
      kind: 'lead',
      usableWh: 1000,
      reserve01: 0.5,
      chargerW: 0,
      loadW: 0,
      arrive01: 0.7,
      inverterMaxW: 0,
    }
    const van: NightInput = { ...WARM, battery: null, leisure }
    const outcome = simulateNight(van)
    expect(outcome.heatingWh).toBeCloseTo(200, 1)
    expect(outcome.leisureDepart01).toBeCloseTo(0.5, 6)
    expect(simulateNight({ ...van, leisure: null }).heatingWh).toBe(0)
  })
})

describe('what people give off', () => {
  it('is 55 g of water an hour awake and that of a sleeper asleep, each for its own hours', () => {
    const two = { ...FIXED, sleepers: [sleeper({ id: 'a' }), sleeper({ id: 'b' })] }
    const waterG = (over: Partial<NightInput>): number => simulateNight({ ...two, ...over }).balance.waterInG
    const whole = waterG({})
    // An hour less asleep is an hour more awake, to the gram and second.
    const shorter = waterG({ sleepFromUtc: odd(5, 77) })
    const asleepH = 8 - (1 + 77 / HOUR_S)
    const perAsleepHourG = whole - 2 * 55 * 6
    expect(shorter).toBeCloseTo(2 * 55 * (14 - asleepH) + (perAsleepHourG / 8) * asleepH, 6)
    expect(perAsleepHourG / 8 / 2).toBeGreaterThan(20)
    expect(perAsleepHourG / 8 / 2).toBeLessThan(55)
    expect(waterG({ sleepers: [sleeper()] })).toBeCloseTo(whole / 2, 9)
    expect(waterG({ sleepers: [] })).toBe(0)
  })
})

describe('air', () => {
  it('of a shut and unheated car is its leakage all night: the least fresh air, and the same W/K', () => {
    const idle = { ...withDecisions(FIXED, { setPoints: [] }), elevationM: 0 }
    const shut = run(idle)
    const perM3KJ = prepareNight(idle).airJPerM3K
    expect(shut.freshWPerK).toBeCloseTo((shut.leastFreshM3PerH * perM3KJ) / HOUR_S, 9)
    expect(shut.gapWPerK).toBe(0)
    // A heater that draws fresh air adds its flow while it runs, and only then.
    const drawing = run({ ...FIXED, elevationM: 0, cabin: { ...FIXED.cabin, freshAirM3PerH: 70 } })
    const addedWPerK = (70 * perM3KJ * HEATED_H) / HOUR_S / 14
    expect(drawing.freshWPerK - shut.freshWPerK).toBeCloseTo(addedWPerK, 6)
    expect(drawing.leastFreshM3PerH).toBeCloseTo(shut.leastFreshM3PerH, 9)
  })
})

describe('the least fresh air', () => {
  it('is that of the hours asleep: a calm before bedtime does not count', () => {
    const weather = [0, 3, 3.5, 14].map((hour) => ({
      atUtc: at(hour),
      tempC: -5,
      windMPerS: hour < 3.2 ? 0 : 8,
      humidity01: 0.8,
      cloud01: 1,
    }))
    const open = withDecisions({ ...FIXED, weather }, { setPoints: [], windowGapMm: 15, windowSides: 2 })
    const asleepLater = run(open).leastFreshM3PerH
    const asleepEarly = run({ ...open, sleepFromUtc: at(1) }).leastFreshM3PerH
    expect(asleepLater).toBeGreaterThan(asleepEarly * 1.5)
  })
})

describe('the sun', () => {
  /** Midsummer at 50 degrees south, dry and empty: light at both ends of the night is all that warms it. */
  const SUNNY: NightInput = {
    ...withDecisions(FIXED, { setPoints: [] }),
    latitudeDeg: -50,
    weather: steadyWeather(15, { humidity01: 0, cloud01: 0.3 }),
  }
  /** Daylight of the whole night on level ground, Wh/m2, by many small steps. */
  function daylightWh(input: NightInput): number {
    const prepared = prepareNight(input)
    const pieces = 50
    let sum = 0
    for (let knot = 0; knot + 1 < prepared.knotsUtc.length; knot += 1) {
      const lengthS = (prepared.knotsUtc[knot + 1] ?? 0) - (prepared.knotsUtc[knot] ?? 0)
      for (let piece = 0; piece < pieces; piece += 1)
        sum += (daylightAlong(prepared, knot, (piece + 0.5) / pieces) * lengthS) / pieces / HOUR_S
    }
    return sum
  }

  it('warms by 45 % of the daylight on all the glass, and by a tenth of that behind covers', () => {
    const glassM2 = SUNNY.cabin.panes.reduce((sum, pane) => sum + pane.areaM2, 0)
    const expectedWh = daylightWh(SUNNY) * glassM2 * 0.45
    expect(expectedWh).toBeGreaterThan(500)
    expect(simulateNight(SUNNY).balance.heatInWh / expectedWh).toBeCloseTo(1, 2)
    const covered = simulateNight(withDecisions(SUNNY, { covers: true })).balance.heatInWh
    expect(covered / expectedWh).toBeCloseTo(0.1, 3)
  })
})

describe('covers', () => {
  it('that go up at an instant are the uncovered night until then and hold heat better after', () => {
    const cold = withDecisions(
      { ...FIXED, weather: steadyWeather(-12) },
      { setPoints: [{ fromUtc: at(0), tempC: 30 }] },
    )
    const bare = simulateNight(cold)
    const later = simulateNight(withDecisions(cold, { coversFromUtc: odd(6, 333) }))
    const before = bare.series.atUtc.indexOf(at(6))
    expect(later.series.bedAirC.slice(0, before + 1)).toEqual(bare.series.bedAirC.slice(0, before + 1))
    expect(later.series.bedAirC.at(-1) ?? 0).toBeGreaterThan((bare.series.bedAirC.at(-1) ?? 0) + 1)
    const always = simulateNight(withDecisions(cold, { covers: true }))
    expect(always.series.bedAirC.at(-1) ?? 0).toBeCloseTo(later.series.bedAirC.at(-1) ?? 0, 0)
    // The loss told is that of the night's own choice of covers.
    expect(always.lossWPerK.shell).toBeLessThan(bare.lossWPerK.shell)
    expect(later.lossWPerK.shell).toBe(bare.lossWPerK.shell)
  })
})
