/** Legs by hand: what a reading teaches, which chargers count, and the energy of a leg. */
import { describe, expect, it } from 'vitest'
import { calibrateLegs } from '../../../shared/climate/calibrate-legs.ts'
import type { MeasuredLeg } from '../../../shared/climate/calibrate-legs.ts'
import { auxiliaryAtW, legNeedWh, legOutcome, legWhPerKm } from '../../../shared/climate/leg.ts'
import type { BatteryParameters, LegParameters } from '../../../shared/climate/index.ts'
import { plainLeg, BATTERY } from './night-fixture.ts'

const LEG: LegParameters = plainLeg()
const read = (over: Partial<MeasuredLeg>): MeasuredLeg => ({
  leg: LEG,
  usableWh: 60_000,
  usedWh: null,
  from01: null,
  to01: null,
  ...over,
})

describe('what a measured leg teaches', () => {
  const PRIOR = 1 / 0.15 ** 2

  it('is the mean of what was stated and what was read, by the weight of each, on a logarithm', () => {
    // 12 kWh where 10 were stated: the vehicle's reading is good to 2 %, a leg to 5 %.
    const weight = 1 / (0.02 ** 2 + 0.05 ** 2)
    const fit = calibrateLegs([read({ usedWh: 12_000 })])
    const scale = Math.exp((weight * Math.log(1.2)) / (PRIOR + weight))
    expect(fit).toEqual({
      scale: expect.closeTo(scale, 12),
      scaleSpread: expect.closeTo(scale / Math.sqrt(PRIOR + weight), 12),
      whPerKm: expect.closeTo(200 * scale, 9),
      whPerKmSpread: expect.closeTo((200 * scale) / Math.sqrt(PRIOR + weight), 9),
      legs: 1,
      readings: 1,
    })
  })

  it('comes from charges in whole percent where no energy was read', () => {
    // 0.5 to 0.3 of 60 kWh: 12 kWh, each end good to 0.01 / sqrt(12).
    const spread01 = (0.01 * Math.sqrt(2 / 12)) / 0.2
    const weight = 1 / (spread01 ** 2 + 0.05 ** 2)
    const scale = Math.exp((weight * Math.log(1.2)) / (PRIOR + weight))
    expect(calibrateLegs([read({ from01: 0.5, to01: 0.3 })]).scale).toBeCloseTo(scale, 12)
    // Both read: the energy counts, and only once.
    const both = calibrateLegs([read({ usedWh: 11_000, from01: 0.5, to01: 0.3 })])
    expect(both).toEqual(calibrateLegs([read({ usedWh: 11_000 })]))
    expect(calibrateLegs([read({ usedWh: 0, from01: 0.5, to01: 0.3 })]).scale).toBeCloseTo(scale, 12)
  })

  it('is nothing where nothing was read, one end is missing, the charge hardly moved or the leg needs nothing', () => {
    const blank = [
      read({}),
      read({ from01: 0.5 }),
      read({ to01: 0.3 }),
      read({ from01: 0.5, to01: 0.485 }),
      read({ from01: 0.3, to01: 0.5 }),
      read({ usedWh: 5000, leg: { ...LEG, climbM: -5000 } }),
    ]
    for (const measured of blank) {
      const fit = calibrateLegs([measured])
      expect(fit).toMatchObject({ scale: 1, readings: 0, legs: 1 })
      expect(fit.scaleSpread).toBeCloseTo(0.15, 12)
    }
    expect(calibrateLegs([read({ from01: 0.5, to01: 0.475 })]).readings).toBe(1)
    expect(calibrateLegs([])).toMatchObject({ scale: 1, whPerKm: null, whPerKmSpread: null, legs: 0 })
  })

  it('sets aside a scale that the leg carries already, and tells the last leg’s consumption', () => {
    const scaled = { ...LEG, consumptionScale: 1.5 }
    expect(calibrateLegs([read({ usedWh: 12_000, leg: scaled })])).toEqual(calibrateLegs([read({ usedWh: 12_000 })]))
    const thirsty = { ...LEG, whPerKm: 300 }
    const fit = calibrateLegs([read({ usedWh: 10_000 }), read({ usedWh: 15_000, leg: thirsty })])
    expect(fit.scale).toBeCloseTo(1, 12)
    expect(fit.whPerKm).toBeCloseTo(300, 9)
    expect(fit).toMatchObject({ legs: 2, readings: 2 })
  })
})

describe('the energy of a leg', () => {
  it('is distance by consumption by scale, and the climb by weight over 0.88, or 0.7 of it back', () => {
    expect(legNeedWh({ ...LEG, consumptionScale: 1.1 })).toBeCloseTo(11_000, 9)
    // 1800 kg x 9.80665 x 500 m / 3600 = 2451.66 Wh.
    const liftWh = (1800 * 9.80665 * 500) / 3600
    expect(legNeedWh({ ...LEG, climbM: 500 })).toBeCloseTo(10_000 + liftWh / 0.88, 6)
    expect(legNeedWh({ ...LEG, climbM: -500 })).toBeCloseTo(10_000 - liftWh * 0.7, 6)
    expect(legNeedWh({ ...LEG, climbM: -50_000 })).toBe(0)
  })

  it('follows the road load by hand where all of it is known, else what is stated', () => {
    const known: LegParameters = { ...LEG, speedKmPerH: 90, dragAreaM2: 0.7, rollingCoefficient: 0.01, auxiliaryW: 500 }
    const wang = (tempC: number): number => 1.9e-6 * tempC ** 2 - 2.1e-4 * tempC + 0.013 + 5.4e-5 * 90
    const density = 101_325 / (287.05 * 283.15)
    const forceN = 0.5 * density * 0.7 * 25 ** 2 + 1800 * 9.80665 * 0.01 * (wang(10) / wang(20))
    // (N / 0.88 + W / (m/s)) x 1000 m / 3600.
    const expected = (forceN / 0.88 + 500 / 25) / 3.6
    expect(legWhPerKm(known)).toBeCloseTo(expected, 9)
    expect(legWhPerKm({ ...known, consumptionScale: 1.2 })).toBeCloseTo(1.2 * expected, 9)
    const unsaid = legWhPerKm({ ...known, auxiliaryW: null })
    expect(unsaid - expected).toBeCloseTo((auxiliaryAtW(10) - 500) / 25 / 3.6, 9)
    for (const missing of [{ speedKmPerH: null }, { dragAreaM2: null }, { rollingCoefficient: null }])
      expect(legWhPerKm({ ...known, ...missing })).toBe(200)
  })
})

describe('chargers on the way', () => {
  const battery: BatteryParameters = { ...BATTERY, reserve01: 0.05 }
  const far = (fastChargers: LegParameters['fastChargers'], over: Partial<LegParameters> = {}): LegParameters => ({
    ...LEG,
    distanceM: 300_000,
    fastChargers,
    ...over,
  })
  const GOOD = { atM: 150_000, powerW: 100_000, name: 'half way' }

  it('count between the ends and with power, in order of the road, and are told by name', () => {
    const plain = legOutcome({ leg: far([GOOD]), battery, depart01: 0.9 })
    expect(plain.stops.map(({ atM, name }) => [atM, name])).toEqual([[150_000, 'half way']])
    // 0.9 less 150 km at 200 Wh/km of 60 kWh is 0.4; 0.6 is needed on to the end, the reserve of a tenth with it.
    const [stop] = plain.stops
    expect(stop?.arrive01).toBeCloseTo(0.4, 9)
    expect(stop?.leave01).toBeCloseTo(0.6, 9)
    expect(stop?.energyWh).toBeCloseTo(12_000, 6)
    const useless = [
      { atM: 0, powerW: 100_000, name: 'at the start' },
      { atM: -5, powerW: 100_000, name: 'behind' },
      { atM: 300_000, powerW: 100_000, name: 'at the end' },
      { atM: 400_000, powerW: 100_000, name: 'beyond' },
      { atM: 140_000, powerW: 0, name: 'dead' },
    ]
    expect(legOutcome({ leg: far([...useless, GOOD]), battery, depart01: 0.9 })).toEqual(plain)
    expect(legOutcome({ leg: far(useless), battery, depart01: 0.9 })).toMatchObject({ reachable: false, stops: [] })
    // Neither alone carries 340 km from the first or 200 km to the second.
    const two = [
      { atM: 200_000, powerW: 100_000, name: 'second' },
      { atM: 100_000, powerW: 100_000, name: 'first' },
    ]
    const both = legOutcome({ leg: far(two, { distanceM: 440_000 }), battery, depart01: 0.5 })
    expect(both.stops.map(({ name }) => name)).toEqual(['first', 'second'])
  })

  it('are reached with the reserve to spare, to the very percent', () => {
    // 0.6 less 0.5 for 150 km leaves just the tenth.
    expect(legOutcome({ leg: far([GOOD]), battery, depart01: 0.6 }).reachable).toBe(true)
    expect(legOutcome({ leg: far([GOOD]), battery, depart01: 0.599 }).reachable).toBe(false)
    // Full at the stop and 270 km on: 0.9 of it and the tenth.
    expect(legOutcome({ leg: far([GOOD], { distanceM: 420_000 }), battery, depart01: 0.6 }).reachable).toBe(true)
    expect(legOutcome({ leg: far([GOOD], { distanceM: 421_000 }), battery, depart01: 0.6 }).reachable).toBe(false)
  })

  it('keep the larger of both reserves', () => {
    const outcome = legOutcome({ leg: far([]), battery: { ...battery, reserve01: 0.2 }, depart01: 0.9 })
    expect(outcome).toMatchObject({ needWh: 60_000, reserveWh: 12_000, reachable: false })
    expect(outcome.marginWh).toBeCloseTo(54_000 - 72_000, 6)
    expect(legOutcome({ leg: far([]), battery, depart01: 0.9 }).reserveWh).toBeCloseTo(6000, 9)
    // Nothing in hand is enough.
    expect(legOutcome({ leg: { ...LEG, distanceM: 120_000 }, battery, depart01: 0.5 }).reachable).toBe(true)
  })
})
