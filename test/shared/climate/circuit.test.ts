/** The supply: limits, sag, floors, two loads, and which system two hot lines come from. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  currentForPower,
  fitSource,
  lineSystem,
  resistivePowerW,
  supplyOutcome,
  twoLoads,
  voltsAt,
  wattsAt,
} from '../../../shared/climate/index.ts'
import type { SupplyParameters } from '../../../shared/climate/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

const supply = (changes: Partial<SupplyParameters>): SupplyParameters => ({
  connector: 'iec-60309-16-blue',
  nominalV: 230,
  breakerA: 16,
  siteLimitA: null,
  leadLimitA: null,
  adapterLimitA: null,
  chargingUnitLimitA: null,
  heldA: null,
  onboardMaximumA: null,
  minimumA: 6,
  readings: [],
  earthOk: 'yes',
  polarityReversed: 'no',
  otherLoadW: 0,
  plugInUtc: 0 as Utc,
  unplugUtc: 43_200 as Utc,
  pricePerKWh: null,
  fixedPrice: 0,
  chargeAllowed: true,
  ...changes,
})

const pair = (noLoadV: number, volts: number, currentA: number) => [
  { currentA: 0, volts: noLoadV },
  { currentA, volts },
]

describe('the supply', () => {
  // Reference answers of the two field scenarios: loop ohm, usable A, volts and watts there, heat in the path.
  it.each([
    [
      'a site cap of 10 A on a 16 A round pin',
      supply({ siteLimitA: 10, leadLimitA: 16, chargingUnitLimitA: 16, readings: pair(232, 225, 10) }),
      0.7,
      10,
      'site',
      225,
      2250,
      70,
    ],
    [
      'an adapter of 8 A on a household outlet',
      supply({
        connector: 'cee-7-3-schuko',
        breakerA: 13,
        adapterLimitA: 8,
        leadLimitA: 16,
        chargingUnitLimitA: 10,
        readings: pair(229, 219, 8),
      }),
      1.25,
      8,
      'adapter',
      219,
      1752,
      80,
    ],
    [
      'a 30 A travel post at 120 V',
      supply({
        connector: 'nema-tt-30',
        nominalV: 120,
        breakerA: 30,
        leadLimitA: 30,
        chargingUnitLimitA: 24,
        readings: pair(122, 113, 24),
      }),
      0.375,
      24,
      'breaker',
      113,
      2712,
      216,
    ],
    [
      'a breaker that held at 24 A',
      supply({
        connector: 'nema-14-50',
        nominalV: 240,
        breakerA: 50,
        leadLimitA: 40,
        chargingUnitLimitA: 32,
        heldA: 24,
        readings: pair(243, 235, 32),
      }),
      0.25,
      24,
      'held',
      237,
      5688,
      144,
    ],
  ] as const)('answers %s as the reference does', (_, given, ohm, usableA, part, volts, watts, heatW) => {
    const outcome = supplyOutcome(given)
    expect(outcome.sourceOhm).toBeCloseTo(ohm, 9)
    expect(outcome.usableA).toBeCloseTo(usableA, 9)
    expect(outcome.limitedBy).toBe(part)
    expect(outcome.voltsAtLoad).toBeCloseTo(volts, 6)
    expect(outcome.wattsAtLoad).toBeCloseTo(watts, 6)
    expect(outcome.heatInWiringW).toBeCloseTo(heatW, 6)
    expect(outcome.belowMinimum).toBe(false)
  })

  it('shows what one weak contact would take at worst, and claims none where nothing was measured', () => {
    // 1.25 ohm at 8 A; a sound path of a 13 A breaker drops 3 % of 230 V at 10.4 A: 0.663 ohm.
    const household = supply({
      connector: 'cee-7-3-schuko',
      breakerA: 13,
      adapterLimitA: 8,
      readings: pair(229, 219, 8),
    })
    expect(supplyOutcome(household).contactAtWorstW).toBeCloseTo((1.25 - 6.9 / 10.4) * 64, 6)
    expect(supplyOutcome(supply({ readings: pair(230, 229, 10) })).contactAtWorstW).toBe(0)
    expect(supplyOutcome(supply({})).contactAtWorstW).toBe(0)
  })

  it('adds known leads and an adapter to the drop assumed up to the outlet, there and back', () => {
    // Row HKP-039: 25 m of 2.5 mm2 at 7.98 ohm/km lose 6.38 V at 16 A. An adapter: two contacts of 5 milliohm.
    const leads = [{ lengthMm: 25_000, areaMm2: 2.5 }]
    const bare = supplyOutcome(supply({ readings: [] }))
    const led = supplyOutcome(supply({ readings: [], leads, usesAdapter: true }))
    expect(led.pathOhm).toBeCloseTo(6.384 / 16 + 0.01, 6)
    expect(led.sourceOhm - bare.sourceOhm).toBeCloseTo(led.pathOhm ?? Number.NaN, 9)
    expect(led.voltsAtLoad).toBeLessThan(bare.voltsAtLoad)
    expect(led.heatInPathW).toBeCloseTo((led.pathOhm ?? Number.NaN) * led.usableA ** 2, 9)
    expect([bare.pathOhm, bare.heatInPathW]).toEqual([0, 0])
  })

  it('a thicker or shorter lead never loses more', () => {
    const ohm = (lengthMm: number, areaMm2: number): number =>
      supplyOutcome(supply({ readings: [], leads: [{ lengthMm, areaMm2 }] })).pathOhm ?? Number.NaN
    for (const areaMm2 of [0.75, 1, 1.5, 2, 2.5, 3.3, 4, 5.26, 6, 8.4, 10, 13.3]) {
      expect(ohm(10_000, areaMm2 * 1.05)).toBeLessThan(ohm(10_000, areaMm2))
      expect(ohm(9000, areaMm2)).toBeLessThan(ohm(10_000, areaMm2))
    }
  })

  it('readings under load hold the path already, and only what is beyond it can sit in a weak contact', () => {
    const measured = { connector: 'cee-7-3-schuko', breakerA: 13, adapterLimitA: 8, readings: pair(229, 219, 8) }
    const bare = supplyOutcome(supply(measured))
    const led = supplyOutcome(supply({ ...measured, leads: [{ lengthMm: 25_000, areaMm2: 2.5 }] }))
    expect(led.sourceOhm).toBe(bare.sourceOhm)
    expect(bare.contactAtWorstW - led.contactAtWorstW).toBeCloseTo((6.384 / 16) * 64, 6)
  })

  it('names the pilot duty cycle of the current to ask for, and none below 6 A', () => {
    // IEC 61851-1: amperes over 0.6 up to 51 A.
    const asked = (siteLimitA: number) => supplyOutcome(supply({ breakerA: 40, connector: 'other', siteLimitA }))
    expect(asked(24)).toMatchObject({ askA: 24, pilotDutyPercent: expect.closeTo(40, 9) })
    expect(asked(6).pilotDutyPercent).toBeCloseTo(10, 9)
    expect(asked(5).pilotDutyPercent).toBeNull()
  })

  it('asks for whole amperes, not above what may flow for hours', () => {
    const outcome = supplyOutcome(supply({}))
    expect(outcome.usableA).toBeCloseTo(12.8, 9)
    expect(outcome.askA).toBe(12)
  })

  it('runs a European 6 A post in full, since charging control cannot ask for less, and a smaller one not at all', () => {
    expect(supplyOutcome(supply({ breakerA: 6 }))).toMatchObject({ usableA: 6, belowMinimum: false })
    expect(supplyOutcome(supply({ breakerA: 5 })).belowMinimum).toBe(true)
    expect(supplyOutcome(supply({ breakerA: 6, siteLimitA: 4 })).belowMinimum).toBe(true)
  })

  it('keeps the North American 80 % whatever is left of it', () => {
    expect(supplyOutcome(supply({ connector: 'nema-5-15', nominalV: 120, breakerA: 7 })).belowMinimum).toBe(true)
  })

  it('holds a household outlet to 10 A for hours and a round pin to its breaker', () => {
    expect(supplyOutcome(supply({ connector: 'bs-1363', breakerA: 32 })).usableA).toBe(10)
    expect(supplyOutcome(supply({ connector: 'iec-60309-32-blue', breakerA: 40 })).usableA).toBe(32)
  })

  it('lets a measured sag limit the current where it would fall below the step-down voltage', () => {
    const outcome = supplyOutcome(
      supply({ connector: 'nema-tt-30', nominalV: 120, breakerA: 30, readings: pair(118, 110, 16) }),
    )
    expect(outcome.limitedBy).toBe('voltage')
    expect(outcome.voltsAtLoad).toBeCloseTo(outcome.stepDownV, 9)
  })

  it('keeps floors of 215, 210 and 205 of 230 V, and of 112, 110 and 105 of 120 V', () => {
    expect(supplyOutcome(supply({}))).toMatchObject({ holdV: 215, stepDownV: 210, stopV: 205 })
    const american = supplyOutcome(supply({ connector: 'nema-5-20', nominalV: 120, breakerA: 20 }))
    expect([american.holdV, american.stepDownV, american.stopV]).toEqual([
      expect.closeTo(112, 9),
      expect.closeTo(110, 9),
      expect.closeTo(105, 9),
    ])
  })

  it('counts a TT-30 at 120 V, never at 240', () => {
    const outcome = supplyOutcome(
      supply({ connector: 'nema-tt-30', nominalV: 120, breakerA: 30, readings: pair(120, 120, 10) }),
    )
    expect(outcome.wattsAtLoad).toBeCloseTo(2880, 6)
  })

  it('counts all phases of a three-phase connector', () => {
    const outcome = supplyOutcome(
      supply({ connector: 'iec-60309-16-red', nominalV: 400, breakerA: 16, readings: pair(400, 400, 10) }),
    )
    expect(outcome.wattsAtLoad).toBeCloseTo(Math.sqrt(3) * 400 * 12.8, 6)
  })

  it('does not call an assumed sag measured, and spreads it widely', () => {
    const outcome = supplyOutcome(supply({}))
    expect(outcome.measured).toBe(false)
    expect(outcome.sourceOhmSpread).toBe(outcome.sourceOhm)
    expect(outcome.sourceOhm * 12.8).toBeCloseTo(0.05 * 230, 9)
  })

  it('takes the spread of two readings from the resolution of the meter', () => {
    const coarse = fitSource(pair(232, 225, 10), 230, 12.8)
    const fine = fitSource(pair(232.1, 225.1, 10), 230, 12.8)
    expect(coarse.sourceOhmSpread).toBeCloseTo((1 / Math.sqrt(12)) * (Math.sqrt(2) / 10), 9)
    expect(fine.sourceOhmSpread).toBeCloseTo(coarse.sourceOhmSpread / 10, 9)
  })

  it('finds a straight line again from any two or more readings on it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 250, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 6 }),
        (noLoadV, ohm, currents) => {
          const fit = fitSource(
            currents.map((currentA) => ({ currentA, volts: noLoadV - ohm * currentA })),
            230,
            16,
          )
          expect(fit.measured).toBe(true)
          expect(fit.noLoadV).toBeCloseTo(noLoadV, 6)
          expect(fit.sourceOhm).toBeCloseTo(ohm, 6)
        },
      ),
      { seed: 20_270_212 },
    )
  })

  it('never takes more for hours when any limit is lower', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 6, max: 63 }),
        fc.integer({ min: 6, max: 63 }),
        fc.integer({ min: 1, max: 10 }),
        (breakerA, leadLimitA, less) => {
          const most = supplyOutcome(supply({ breakerA, leadLimitA })).usableA
          expect(
            supplyOutcome(supply({ breakerA: Math.max(1, breakerA - less), leadLimitA })).usableA,
          ).toBeLessThanOrEqual(most)
          expect(
            supplyOutcome(supply({ breakerA, leadLimitA: Math.max(1, leadLimitA - less) })).usableA,
          ).toBeLessThanOrEqual(most)
        },
      ),
      { seed: 7 },
    )
  })
})

describe('loads on the supply', () => {
  const source = { noLoadV: 232, sourceOhm: 0.7, usableA: 10 }

  it('let a resistive heater fall with voltage squared: 750 W at 230 V gives about 670 W at 217 V', () => {
    expect(resistivePowerW(750, 230, 217)).toBeCloseTo(667.6, 1)
  })

  it('carry either a fan heater or charging, not both, where the post cannot', () => {
    expect(twoLoads(source, 2000, 0).carried).toBe(true)
    expect(twoLoads(source, 2000, 1400).carried).toBe(false)
  })

  it('find the current that gives a power, and none where the source cannot give it', () => {
    const currentA = currentForPower(source, 2250)
    expect(currentA).toBeCloseTo(10, 9)
    expect(wattsAt(source, currentA ?? 0)).toBeCloseTo(2250, 6)
    expect(currentForPower(source, 1e6)).toBeNull()
    expect(voltsAt(source, 1e6)).toBe(0)
  })
})

describe('two hot lines', () => {
  it('are told apart by line to line over line to neutral, else not known', () => {
    expect(lineSystem(240, 120)).toBe('split-phase-240')
    expect(lineSystem(207, 119.5)).toBe('two-of-three-208')
    expect(lineSystem(230, 124)).toBe('not-known')
  })
})
