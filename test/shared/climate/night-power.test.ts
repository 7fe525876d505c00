/** Electricity of one step worked out by hand: what the post gives, what the heater may take of it, and what goes where. */
import { describe, expect, it } from 'vitest'
import {
  NO_SUPPLY,
  builtInLimitW,
  carOfferW,
  heatsFromSupply,
  inverterHeaterW,
  mainsHeaterW,
  settle,
  supplyNow,
} from '../../../shared/climate/night-power.ts'
import type { Loads, PowerState, Settled, SupplyNow } from '../../../shared/climate/night-power.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import type { Fault, LeisureParameters, NightInput } from '../../../shared/climate/index.ts'
import { HOUR_S, LEISURE, at, night, supply } from './night-fixture.ts'

/** 232 V without load and 0.7 ohm behind it; the site allows 10 A: 232 - 7 = 225 V and 2250 W. */
const FULL: SupplyNow = { currentA: 10, wattsW: 2250, volts: 225 }
const van = (leisure: Partial<LeisureParameters> = {}, over: Partial<NightInput> = {}): NightInput =>
  night({ battery: null, leisure: { ...LEISURE, ...leisure }, ...over })
const heater = (over: Partial<NightInput['heater']>): Pick<NightInput, 'heater'> => ({
  heater: { ...night().heater, ...over },
})
const FAN = heater({ kind: 'mains-fan-heater', maxHeatW: 750 })
const battery = (over: Partial<NonNullable<NightInput['battery']>>): NightInput['battery'] => {
  const own = night().battery
  return own === null ? null : { ...own, ...over }
}

function expectClose(actual: SupplyNow, expected: SupplyNow): void {
  expect(actual.currentA).toBeCloseTo(expected.currentA, 9)
  expect(actual.wattsW).toBeCloseTo(expected.wattsW, 9)
  expect(actual.volts).toBeCloseTo(expected.volts, 9)
}

describe('the supply at an instant', () => {
  const now = (over: Partial<NightInput>, hour: number, currentA: number | null = null): SupplyNow => {
    const input = night(over)
    return supplyNow(prepareNight(input), { ...input.decisions, currentA }, at(hour))
  }
  const failing = (fault: Fault, hour: number): SupplyNow => now({ fault }, hour)

  it('gives from the second of plugging in to the second before unplugging', () => {
    expect(now({}, 0.499)).toEqual(NO_SUPPLY)
    expectClose(now({}, 0.5), FULL)
    expectClose(now({}, 13.499), FULL)
    expect(now({}, 13.5)).toEqual(NO_SUPPLY)
    expect(now({ supply: null }, 5)).toEqual(NO_SUPPLY)
  })

  it('gives at the current asked for, at the volts that stand there, and no more than the post can', () => {
    // 8 A: 232 - 5.6 = 226.4 V, 1811.2 W.
    expectClose(now({}, 5, 8), { currentA: 8, volts: 226.4, wattsW: 1811.2 })
    expectClose(now({}, 5, 20), FULL)
    expect(now({}, 5, 0)).toEqual(NO_SUPPLY)
  })

  it('gives nothing where nobody may plug in, for want of an earth', () => {
    expect(now({ supply: supply({ earthOk: 'no' }) }, 5)).toEqual(NO_SUPPLY)
    expectClose(now({ supply: supply({ earthOk: 'not-known' }) }, 5), FULL)
  })

  it('gives what other loads on the same post leave', () => {
    expect(now({ supply: supply({ otherLoadW: 300 }) }, 5).wattsW).toBeCloseTo(1950, 9)
    expect(now({ supply: supply({ otherLoadW: 3000 }) }, 5).wattsW).toBe(0)
  })

  it('is gone from the second it is lost', () => {
    const lost: Fault = { kind: 'supply-lost', atUtc: at(6) }
    expectClose(failing(lost, 5.999), FULL)
    expect(failing(lost, 6)).toEqual(NO_SUPPLY)
    expectClose(failing({ kind: 'heater-fails', atUtc: at(6) }, 7), FULL)
  })

  it('is gone from a tripped breaker to its reset, and then gives what it holds', () => {
    const trip = (heldA: number | null, resetHour: number | null): Fault => ({
      kind: 'breaker-trips',
      atUtc: at(6),
      heldA,
      resetUtc: resetHour === null ? null : at(resetHour),
    })
    expectClose(failing(trip(8, 9), 5.999), FULL)
    expect(failing(trip(8, 9), 6)).toEqual(NO_SUPPLY)
    expect(failing(trip(8, 9), 8.999)).toEqual(NO_SUPPLY)
    expectClose(failing(trip(8, 9), 9), { currentA: 8, volts: 226.4, wattsW: 1811.2 })
    expectClose(failing(trip(null, 9), 9), FULL)
    expectClose(failing(trip(12, 9), 9), FULL)
    expect(failing(trip(8, null), 13)).toEqual(NO_SUPPLY)
  })
})

describe('the heater’s share', () => {
  it('hangs on the supply itself where it is a fan heater or there is no driving battery', () => {
    expect(heatsFromSupply(night())).toBe(false)
    expect(heatsFromSupply(night(FAN))).toBe(true)
    expect(heatsFromSupply(van())).toBe(true)
  })

  it('falls with voltage squared from the volts it is rated for, and ends at what the post gives', () => {
    const taken = (over: Partial<NightInput>, now = FULL): number => mainsHeaterW(prepareNight(night(over)), now)
    expect(taken(FAN)).toBeCloseTo(750 * (225 / 230) ** 2, 9)
    expect(taken({ ...FAN, supply: supply({ ratedV: 240 }) })).toBeCloseTo(750 * (225 / 240) ** 2, 9)
    expect(taken(heater({ kind: 'mains-fan-heater', maxHeatW: 5000 }))).toBe(2250)
    // Any other heater there settles its own power: all of the post is its limit.
    expect(taken({ ...heater({ kind: 'resistance', maxHeatW: 500 }), battery: null })).toBe(2250)
    expect(taken(FAN, NO_SUPPLY)).toBe(0)
    expect(taken({ ...FAN, supply: null })).toBe(0)
  })

  it('comes out of the leisure battery through its inverter: what lies above the reserve, less the loads, at 88 %', () => {
    const taken = (over: Partial<NightInput>, leisure01 = 0.5, bedW = 0, stepS = HOUR_S, now = NO_SUPPLY): number =>
      inverterHeaterW(prepareNight(van({ inverterMaxW: 1000 }, { ...FAN, ...over })), now, { leisure01, bedW, stepS })
    // 0.3 x 1200 Wh over an hour are 360 W; 30 W of loads leave 330 W.
    expect(taken({})).toBeCloseTo(330 * 0.88, 9)
    expect(taken({}, 0.5, 50)).toBeCloseTo(280 * 0.88, 9)
    expect(taken({ keepsOnW: 10 })).toBeCloseTo(320 * 0.88, 9)
    // Half an hour may take twice as much: 720 - 30 = 690 W.
    expect(taken({}, 0.5, 0, HOUR_S / 2)).toBeCloseTo(690 * 0.88, 9)
    // With a driving battery bed heaters and what is kept on hang on that.
    expect(taken({ battery: battery({}), keepsOnW: 10 }, 0.5, 50)).toBeCloseTo(330 * 0.88, 9)
    expect(taken({}, 0.2)).toBe(0)
    expect(taken({}, 0.1)).toBe(0)
  })

  it('takes no more through the inverter than heater and inverter are made for, and nothing while the post gives', () => {
    const taken = (leisure: Partial<LeisureParameters>, over: Partial<NightInput>, now = NO_SUPPLY): number =>
      inverterHeaterW(prepareNight(van(leisure, over)), now, { leisure01: 1, bedW: 0, stepS: 100 })
    expect(taken({ inverterMaxW: 1000 }, FAN)).toBe(750)
    expect(taken({ inverterMaxW: 600 }, FAN)).toBe(600)
    const least = (minHeatW: number) => heater({ kind: 'mains-fan-heater', maxHeatW: 750, minHeatW })
    expect(taken({ inverterMaxW: 600 }, least(600))).toBe(600)
    expect(taken({ inverterMaxW: 600 }, least(601))).toBe(0)
    expect(taken({ inverterMaxW: 0 }, FAN)).toBe(0)
    expect(taken({ inverterMaxW: 600 }, heater({ kind: 'resistance', maxHeatW: 750 }))).toBe(0)
    expect(taken({ inverterMaxW: 600 }, FAN, FULL)).toBe(0)
    expect(taken({ inverterMaxW: 600 }, { ...FAN, leisure: null })).toBe(0)
  })

  it('of a built-in heater has no limit above the reserve, and is what the charger brings at it', () => {
    const input = night({ battery: battery({ overheadW: 200, coldOverheadW: 300 }) })
    const prepared = prepareNight(input)
    expect(builtInLimitW(prepared, FULL, false, 5)).toBe(Infinity)
    expect(builtInLimitW(prepared, FULL, true, 5)).toBeCloseTo((2250 - 200) * 0.88, 9)
    expect(builtInLimitW(prepared, FULL, true, -5)).toBeCloseTo((2250 - 500) * 0.88, 9)
    expect(builtInLimitW(prepared, NO_SUPPLY, true, 5)).toBe(0)
    expect(builtInLimitW(prepareNight(van()), FULL, false, 5)).toBe(0)
  })
})

describe('what is offered to the car', () => {
  const offered = (heaterW: number, over: Partial<NightInput['supply'] & object> = {}, now = FULL): number =>
    carOfferW(prepareNight(night({ supply: supply(over) })), now, heaterW)

  it('is what the heater leaves, as long as that is the least current that charging may ask for', () => {
    expect(offered(0)).toBe(2250)
    // 900 W of 2250 W leave six of ten amperes.
    expect(offered(900)).toBeCloseTo(1350, 9)
    expect(offered(901)).toBe(0)
    // 450 W leave eight.
    expect(offered(450, { minimumA: 8 })).toBeCloseTo(1800, 9)
    expect(offered(460, { minimumA: 8 })).toBe(0)
    // Control by the pilot cannot ask for less than six, whatever the car would take.
    expect(offered(1000, { minimumA: 3 })).toBe(0)
  })

  it('is nothing where charging is not allowed, nothing flows or nothing is plugged in', () => {
    expect(offered(0, { chargeAllowed: false })).toBe(0)
    expect(offered(0, {}, NO_SUPPLY)).toBe(0)
    expect(carOfferW(prepareNight(night({ supply: null })), FULL, 0)).toBe(0)
  })

  it('is no more than the whole amperes that are set and asked for', () => {
    // 80 % of 16 A is 12.8 A; 12 A are set: 232 - 0.7 x 12 = 223.6 V and 2683.2 W.
    const input = night({ supply: supply({ siteLimitA: null }) })
    const prepared = prepareNight(input)
    const full = supplyNow(prepared, input.decisions, at(5))
    expect(full.currentA).toBeCloseTo(12.8, 9)
    expect(carOfferW(prepared, full, 0)).toBeCloseTo(2683.2, 6)
    // A heater on the same post takes its share of what is left beyond them first.
    expect(carOfferW(prepared, full, 100)).toBeCloseTo(2683.2, 6)
    expect(carOfferW(prepared, full, 500)).toBeCloseTo(full.wattsW - 500, 6)
  })
})

/** One settled step; an hour long, so that W are Wh. */
function settled(
  input: NightInput,
  step: {
    readonly now?: SupplyNow
    readonly loads?: Partial<Loads>
    readonly charge01?: number
    readonly leisure01?: number
    readonly floorC?: number
    readonly stepS?: number
  },
): Settled & PowerState {
  const state: PowerState = { charge01: step.charge01 ?? 0.5, leisure01: step.leisure01 ?? 0.5 }
  const out: Settled = { supplyW: -1, wiringW: -1, intoBatteryW: -1, intoLeisureW: -1, keptOnW: -1 }
  settle(
    {
      prepared: prepareNight(input),
      decisions: input.decisions,
      now: step.now ?? FULL,
      loads: { heatingW: 0, bedW: 0, ...step.loads },
      outsideC: 5,
      floorC: step.floorC ?? 10,
      stepS: step.stepS ?? HOUR_S,
    },
    state,
    out,
  )
  return { ...out, ...state }
}

describe('a step of a car', () => {
  it('puts what charger and load leave into the battery: 2250 W at 88 % less 1000 W', () => {
    const out = settled(night(), { loads: { heatingW: 1000 } })
    expect(out.intoBatteryW).toBeCloseTo(2250 * 0.88 - 1000, 6)
    expect(out.charge01).toBeCloseTo(0.5 + 980 / 60_000, 12)
    expect(out.supplyW).toBeCloseTo(2250, 6)
    // 10 A through 0.7 ohm.
    expect(out.wiringW).toBeCloseTo(70, 6)
    expect(out.intoLeisureW).toBe(0)
    expect(out.keptOnW).toBe(0)
  })

  it('carries bed heaters and what is kept on from the same battery', () => {
    const out = settled(night({ keepsOnW: 30 }), { loads: { heatingW: 1000, bedW: 50 } })
    expect(out.intoBatteryW).toBeCloseTo(1980 - 1080, 6)
    expect(out.keptOnW).toBe(30)
  })

  it('draws on the battery alone while unplugged', () => {
    const out = settled(night({ keepsOnW: 30 }), { now: NO_SUPPLY, loads: { heatingW: 1000, bedW: 50 } })
    expect(out.intoBatteryW).toBeCloseTo(-1080, 6)
    expect(out.charge01).toBeCloseTo(0.5 - 1080 / 60_000, 12)
    expect(out.supplyW).toBe(0)
    expect(out.wiringW).toBe(0)
  })

  it('keeps nothing on once the battery is empty, unless the post carries it', () => {
    expect(settled(night({ keepsOnW: 30 }), { now: NO_SUPPLY, charge01: 0 }).keptOnW).toBe(0)
    expect(settled(night({ keepsOnW: 30 }), { now: FULL, charge01: 0 }).keptOnW).toBe(30)
  })

  it('gives a fan heater its power from the post first and the car what is left', () => {
    const out = settled(night(FAN), { loads: { heatingW: 900 } })
    expect(out.intoBatteryW).toBeCloseTo(1350 * 0.88, 6)
    expect(out.supplyW).toBeCloseTo(2250, 6)
    // 901 W leave less than six amperes: the car takes nothing, 901 W flow.
    const crowded = settled(night(FAN), { loads: { heatingW: 901 } })
    expect(crowded.intoBatteryW).toBeCloseTo(0, 9)
    expect(crowded.supplyW).toBeCloseTo(901, 6)
  })

  it('draws for the load alone once the limit is reached', () => {
    const out = settled(night(), { charge01: 0.9, loads: { heatingW: 1000 } })
    expect(out.intoBatteryW).toBeCloseTo(0, 9)
    expect(out.supplyW).toBeCloseTo(1000 / 0.88, 6)
  })

  it('warms the path by other loads on the post too', () => {
    const shared = night({ supply: supply({ otherLoadW: 300 }) })
    // 1950 W for the car and 300 W for the others are the 10 A of 2250 W.
    const out = settled(shared, { now: { ...FULL, wattsW: 1950 } })
    expect(out.supplyW).toBeCloseTo(1950, 6)
    expect(out.wiringW).toBeCloseTo(70, 6)
    // What only others draw is not this night's heat.
    expect(settled(shared, { now: { ...FULL, wattsW: 1950 }, charge01: 0.9 }).wiringW).toBe(0)
  })

  it('warms three lines on three phases', () => {
    const red = supply({
      connector: 'iec-60309-16-red',
      nominalV: 400,
      readings: [
        { currentA: 0, volts: 400 },
        { currentA: 10, volts: 396 },
      ],
    })
    const wattsW = Math.sqrt(3) * 396 * 10
    const out = settled(night({ supply: red }), { now: { currentA: 10, wattsW, volts: 396 } })
    expect(out.supplyW).toBeCloseTo(wattsW, 6)
    // sqrt(3) x 0.4 ohm x 10 A squared.
    expect(out.wiringW).toBeCloseTo(Math.sqrt(3) * 40, 6)
  })
})

describe('a step of a van with a leisure battery', () => {
  it('charges it with what its charger brings above the loads: 235 W at 86 % less 80 W', () => {
    const out = settled(van(), { loads: { bedW: 50 } })
    expect(out.intoLeisureW).toBeCloseTo(235 * 0.86 - 80, 9)
    expect(out.leisure01).toBeCloseTo(0.5 + (235 * 0.86 - 80) / 1200, 12)
    expect(out.supplyW).toBeCloseTo(235, 9)
    expect(out.intoBatteryW).toBe(0)
  })

  it('draws for the loads alone once it is full, and no more than fits before', () => {
    const full = settled(van(), { leisure01: 1, loads: { bedW: 50 } })
    expect(full.intoLeisureW).toBe(0)
    expect(full.supplyW).toBeCloseTo(80 / 0.86, 9)
    // 0.05 x 1200 Wh = 60 Wh of room.
    const nearly = settled(van(), { leisure01: 0.95, loads: { bedW: 50 } })
    expect(nearly.intoLeisureW).toBeCloseTo(60, 9)
    expect(nearly.leisure01).toBeCloseTo(1, 12)
    expect(nearly.supplyW).toBeCloseTo(140 / 0.86, 9)
  })

  it('takes no charge into lithium cells on a floor below 0 °C, yet carries the loads; lead does charge', () => {
    const frozen = settled(van(), { floorC: -0.1, loads: { bedW: 50 } })
    expect(frozen.intoLeisureW).toBe(0)
    expect(frozen.supplyW).toBeCloseTo(80 / 0.86, 9)
    expect(settled(van(), { floorC: 0 }).intoLeisureW).toBeGreaterThan(100)
    expect(settled(van({ kind: 'lead' }), { floorC: -5 }).intoLeisureW).toBeGreaterThan(100)
  })

  it('gives the loads while unplugged, down to its reserve', () => {
    const out = settled(van(), { now: NO_SUPPLY, loads: { bedW: 50 } })
    expect(out.intoLeisureW).toBeCloseTo(-80, 9)
    expect(out.supplyW).toBe(0)
    // 40 Wh above the reserve of 0.2.
    const last = settled(van(), { now: NO_SUPPLY, leisure01: 0.2 + 40 / 1200, loads: { bedW: 50 } })
    expect(last.intoLeisureW).toBeCloseTo(-40, 9)
    expect(last.leisure01).toBeCloseTo(0.2, 12)
    expect(settled(van(), { now: NO_SUPPLY, leisure01: 0.15, loads: { bedW: 50 } }).leisure01).toBe(0.15)
  })

  it('gives more than a weak charger brings: 100 W at 86 % against 130 W', () => {
    const out = settled(van({ chargerW: 100 }), { loads: { bedW: 100 } })
    expect(out.intoLeisureW).toBeCloseTo(86 - 130, 9)
    expect(out.supplyW).toBeCloseTo(100, 9)
  })

  it('shares the post with a fan heater: the heater first, then the charger', () => {
    const out = settled(van({}, FAN), { now: { currentA: 3.4, wattsW: 750, volts: 229 }, loads: { heatingW: 700 } })
    // 50 W at the wall are 43 W, of which the loads take 30 W.
    expect(out.intoLeisureW).toBeCloseTo(13, 9)
    expect(out.supplyW).toBeCloseTo(750, 9)
  })

  it('runs a fan heater through the inverter while unplugged: 440 W of heat take 500 W', () => {
    const out = settled(van({ inverterMaxW: 600 }, FAN), { now: NO_SUPPLY, loads: { heatingW: 440 }, leisure01: 0.9 })
    expect(out.intoLeisureW).toBeCloseTo(-530, 9)
    expect(out.supplyW).toBe(0)
  })

  it('keeps lights and the like on from it, above its reserve or with the post behind it', () => {
    const lit = van({}, { keepsOnW: 15 })
    const on = settled(lit, { now: NO_SUPPLY })
    expect(on.keptOnW).toBe(15)
    expect(on.intoLeisureW).toBeCloseTo(-45, 9)
    expect(settled(lit, { now: NO_SUPPLY, leisure01: 0.2 }).keptOnW).toBe(0)
    expect(settled(lit, { now: FULL, leisure01: 0.2 }).keptOnW).toBe(15)
  })

  it('beside a driving battery carries its own loads only; bed heaters and lights hang on the driving battery', () => {
    const both = van({}, { battery: battery({}), keepsOnW: 15 })
    const out = settled(both, { now: NO_SUPPLY, loads: { heatingW: 200, bedW: 50 } })
    expect(out.intoLeisureW).toBeCloseTo(-30, 9)
    expect(out.intoBatteryW).toBeCloseTo(-265, 6)
    const plugged = settled(both, { now: { ...FULL, wattsW: 3000 }, charge01: 0.9, leisure01: 1, loads: { bedW: 50 } })
    // 65 W behind the charger at 88 %, and 30 W behind the other at 86 %.
    expect(plugged.supplyW).toBeCloseTo(65 / 0.88 + 30 / 0.86, 6)
  })
})

describe('a step of a vehicle with no battery at all', () => {
  const bare = night({ battery: null, leisure: null, keepsOnW: 15, ...FAN })

  it('runs bed heaters on the post beside the heater, as far as it goes, and keeps nothing on', () => {
    const out = settled(bare, { loads: { heatingW: 500, bedW: 50 } })
    expect(out.supplyW).toBeCloseTo(550, 9)
    expect(out.keptOnW).toBe(0)
    expect(out.intoBatteryW).toBe(0)
    expect(out.intoLeisureW).toBe(0)
    const tight = settled(bare, { now: { ...FULL, wattsW: 520 }, loads: { heatingW: 500, bedW: 50 } })
    expect(tight.supplyW).toBeCloseTo(520, 9)
    expect(settled(bare, { now: NO_SUPPLY, loads: { bedW: 50 } }).supplyW).toBe(0)
  })
})
