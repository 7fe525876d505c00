/** What switches itself in a night, and how long until then: each border and each time by hand. */
import { describe, expect, it } from 'vitest'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { NO_SUPPLY } from '../../../shared/climate/night-power.ts'
import { startRun } from '../../../shared/climate/night-state.ts'
import type { Run, Segment } from '../../../shared/climate/night-state.ts'
import { latch, untilSwitchS } from '../../../shared/climate/night-switches.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
import { HOUR_S, at, night } from './night-fixture.ts'

const HEATS: Segment = {
  supply: NO_SUPPLY,
  setC: 12,
  asleep: true,
  bedHeat: false,
  failed: false,
  covers: false,
}

type State = {
  readonly charge01?: number
  readonly leisure01?: number
  readonly batteryW?: number
  readonly leisureW?: number
  readonly sinceUtc?: number | null
  readonly switchedOff?: boolean
  readonly atReserve?: boolean
  readonly leisureEmpty?: boolean
}

/** A run of a night that stands where a test wants it; the battery of the fixture holds 60 kWh with 10 % in reserve. */
function runAt(input: NightInput, state: State): Run {
  const run = startRun(prepareNight(input), input.decisions, false)
  run.power.charge01 = state.charge01 ?? 0.5
  run.power.leisure01 = state.leisure01 ?? 0.5
  run.settled.intoBatteryW = state.batteryW ?? 0
  run.settled.intoLeisureW = state.leisureW ?? 0
  run.heatingSinceUtc = state.sinceUtc ?? null
  run.switchedOff = state.switchedOff ?? false
  run.atReserve = state.atReserve ?? false
  run.leisureEmpty = state.leisureEmpty ?? false
  return run
}

const withHeater = (over: Partial<NightInput['heater']>): NightInput =>
  night({ heater: { ...night().heater, ...over } })
const VAN = night({
  battery: null,
  leisure: { kind: 'lfp', usableWh: 1200, reserve01: 0.2, chargerW: 0, loadW: 30, arrive01: 1, inverterMaxW: 0 },
})
const BOTH = night({ leisure: VAN.leisure })

describe('what has switched', () => {
  it('a driving battery is at its reserve from there down, and clear of it 0.2 % above', () => {
    const run = runAt(night(), { charge01: 0.1001 })
    expect(latch(run, HEATS, at(5))).toBe(false)
    expect(run.atReserve).toBe(false)
    run.power.charge01 = 0.1
    expect(latch(run, HEATS, at(5))).toBe(true)
    expect(run.atReserve).toBe(true)
    run.power.charge01 = 0.1019
    expect(latch(run, HEATS, at(5))).toBe(false)
    expect(run.atReserve).toBe(true)
    run.power.charge01 = 0.1021
    expect(latch(run, HEATS, at(5))).toBe(true)
    expect(run.atReserve).toBe(false)
  })

  it('so is a leisure battery, each for itself', () => {
    const run = runAt(BOTH, { leisure01: 0.2001 })
    expect(latch(run, HEATS, at(5))).toBe(false)
    run.power.leisure01 = 0.2
    expect(latch(run, HEATS, at(5))).toBe(true)
    expect([run.leisureEmpty, run.atReserve]).toEqual([true, false])
    run.power.leisure01 = 0.2019
    expect(latch(run, HEATS, at(5))).toBe(false)
    run.power.leisure01 = 0.2021
    expect(latch(run, HEATS, at(5))).toBe(true)
    expect(run.leisureEmpty).toBe(false)
  })

  it('without a battery nothing is at a reserve', () => {
    const van = runAt(VAN, { charge01: 0 })
    expect(latch(van, HEATS, at(5))).toBe(false)
    const car = runAt(night(), { leisure01: 0 })
    expect(latch(car, HEATS, at(5))).toBe(false)
  })

  it('a heater goes off once it has run its time, not before, and not where it never began', () => {
    const input = withHeater({ switchesOffAfterS: 4 * HOUR_S })
    const run = runAt(input, { sinceUtc: at(3) })
    expect(latch(run, HEATS, at(7) - 1)).toBe(false)
    expect(latch(run, HEATS, at(7))).toBe(true)
    expect(run.switchedOff).toBe(true)
    // Once off it stays off, which is no switching.
    expect(latch(run, HEATS, at(8))).toBe(false)
    expect(run.switchedOff).toBe(true)
    expect(latch(runAt(input, {}), HEATS, at(13))).toBe(false)
    expect(latch(runAt(withHeater({ switchesOffAfterS: 0 }), {}), HEATS, at(13))).toBe(false)
  })

  it('a heater goes off at the charge it is told, where heat is wanted and it works', () => {
    const input = withHeater({ switchesOffBelow01: 0.4 })
    const off = (charge01: number, segment: Segment): boolean => {
      const run = runAt(input, { charge01 })
      return latch(run, segment, at(5)) && run.switchedOff
    }
    expect(off(0.401, HEATS)).toBe(false)
    expect(off(0.4, HEATS)).toBe(true)
    expect(off(0.3, HEATS)).toBe(true)
    expect(off(0.3, { ...HEATS, setC: null })).toBe(false)
    expect(off(0.3, { ...HEATS, failed: true })).toBe(false)
    const van = { ...VAN, heater: input.heater }
    expect(latch(runAt(van, { charge01: 0.3 }), HEATS, at(5))).toBe(false)
  })
})

describe('the time until something switches', () => {
  const until = (input: NightInput, state: State, segment: Segment = HEATS, atUtc: number = at(5)): number =>
    untilSwitchS(runAt(input, state), segment, atUtc)

  it('is endless where nothing is on its way', () => {
    expect(until(night(), {})).toBe(Infinity)
    expect(until(night(), { batteryW: 2000 })).toBe(Infinity)
    expect(until(VAN, { batteryW: -2000, leisureW: 100 })).toBe(Infinity)
    expect(until(night(), { leisureW: -100 })).toBe(Infinity)
  })

  it('to the battery’s reserve is the energy above it by the power, come up to by 95 % at a time', () => {
    // 0.4 x 60 kWh = 24 kWh at 2 kW: twelve hours.
    expect(until(night(), { batteryW: -2000 })).toBeCloseTo(12 * HOUR_S * 0.95, 6)
    expect(until(night(), { batteryW: -2000, atReserve: true })).toBe(Infinity)
  })

  it('is met in one when it is 0.2 s off or less', () => {
    // 0.2 s at 3600 W are 0.2 Wh.
    const near = (wh: number): number => until(night(), { batteryW: -3600, charge01: 0.1 + wh / 60_000 })
    expect(near(0.19)).toBeCloseTo(0.19, 6)
    expect(near(0.21)).toBeCloseTo(0.21 * 0.95, 6)
    // Never less than moves the clock.
    expect(near(0.001)).toBe(0.02)
  })

  it('to a heater’s least charge counts only while it heats', () => {
    const input = withHeater({ switchesOffBelow01: 0.4 })
    // 0.1 x 60 kWh at 2 kW: three hours; to the reserve twelve.
    expect(until(input, { batteryW: -2000 })).toBeCloseTo(3 * HOUR_S * 0.95, 6)
    expect(until(input, { batteryW: -2000, switchedOff: true })).toBeCloseTo(12 * HOUR_S * 0.95, 6)
    expect(until(input, { batteryW: -2000 }, { ...HEATS, setC: null })).toBeCloseTo(12 * HOUR_S * 0.95, 6)
    expect(until(input, { batteryW: -2000 }, { ...HEATS, failed: true })).toBeCloseTo(12 * HOUR_S * 0.95, 6)
    // Below it already: only the reserve is still to come. 0.2 x 60 kWh at 2 kW: six hours.
    expect(until(input, { batteryW: -2000, charge01: 0.3 })).toBeCloseTo(6 * HOUR_S * 0.95, 6)
    // The reserve comes first where it lies higher: 24 kWh above it, 27 kWh above the other.
    const low = withHeater({ switchesOffBelow01: 0.05 })
    expect(until(low, { batteryW: -2000 })).toBeCloseTo(12 * HOUR_S * 0.95, 6)
  })

  it('to the leisure battery’s reserve likewise', () => {
    // 0.3 x 1200 Wh at 90 W: four hours.
    expect(until(VAN, { leisureW: -90 })).toBeCloseTo(4 * HOUR_S * 0.95, 6)
    expect(until(VAN, { leisureW: -90, leisureEmpty: true })).toBe(Infinity)
    // The sooner of both rules, whichever it is.
    expect(until(BOTH, { batteryW: -2000, leisureW: -90 })).toBeCloseTo(4 * HOUR_S * 0.95, 6)
    expect(until(BOTH, { batteryW: -12_000, leisureW: -90 })).toBeCloseTo(2 * HOUR_S * 0.95, 6)
  })

  it('to the end of a heater’s time is what is left of it, to the second', () => {
    const input = withHeater({ switchesOffAfterS: 4 * HOUR_S })
    expect(until(input, { sinceUtc: at(3) })).toBeCloseTo(2 * HOUR_S, 6)
    expect(until(input, { sinceUtc: at(3) }, HEATS, at(7))).toBe(0.02)
    expect(until(input, {})).toBe(Infinity)
    expect(until(input, { sinceUtc: at(3), switchedOff: true })).toBe(Infinity)
    expect(until(input, { sinceUtc: at(3) }, { ...HEATS, setC: null })).toBe(Infinity)
    expect(until(input, { sinceUtc: at(3) }, { ...HEATS, failed: true })).toBe(Infinity)
    // Charge or time, whichever is sooner: 24 kWh at 24 kW are one hour.
    expect(until(input, { sinceUtc: at(3), batteryW: -24_000 })).toBeCloseTo(HOUR_S * 0.95, 6)
    expect(until(input, { sinceUtc: at(3), batteryW: -2000 })).toBeCloseTo(2 * HOUR_S, 6)
  })
})
