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
    // One reading with a decimal betrays the finer meter.
    expect(fitSource(pair(232, 225.5, 10), 230, 12.8).sourceOhmSpread).toBeCloseTo(fine.sourceOhmSpread, 9)
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

describe('each part of the path', () => {
  const limitOf = (changes: Partial<SupplyParameters>) => {
    const { usableA, limitedBy, limits } = supplyOutcome(supply({ breakerA: 40, connector: 'other', ...changes }))
    return { usableA, limitedBy, parts: limits.map(({ part }) => part) }
  }

  it.each([
    ['site', { siteLimitA: 11 }],
    ['lead', { leadLimitA: 11 }],
    ['adapter', { adapterLimitA: 11 }],
    ['charging-unit', { chargingUnitLimitA: 11 }],
    ['held', { heldA: 11 }],
    ['onboard', { onboardMaximumA: 11 }],
  ] as const)('limits the current where it is the weakest: %s', (part, changes) => {
    expect(limitOf(changes)).toEqual({ usableA: 11, limitedBy: part, parts: ['breaker', part] })
  })

  it('is the breaker at 80 % where nothing else is known, and the socket where it carries less', () => {
    expect(limitOf({})).toEqual({ usableA: 32, limitedBy: 'breaker', parts: ['breaker'] })
    expect(limitOf({ connector: 'iec-60309-16-blue' })).toEqual({
      usableA: 16,
      limitedBy: 'socket',
      parts: ['breaker', 'socket'],
    })
    // NEMA 5-15 carries 12 A for hours, an old household outlet of 10 A just those.
    expect(limitOf({ connector: 'nema-5-15', nominalV: 120 }).usableA).toBeCloseTo(12, 9)
    expect(limitOf({ connector: 'as-nzs-3112' }).usableA).toBe(10)
  })

  it('of two that are alike names the one nearer the breaker', () => {
    expect(limitOf({ siteLimitA: 11, leadLimitA: 11 }).limitedBy).toBe('site')
  })

  it('is the volts only where they were measured and fall at all', () => {
    // (232 - 210) V over 2 ohm: 11 A.
    expect(limitOf({ readings: pair(232, 212, 10) })).toMatchObject({ usableA: 11, limitedBy: 'voltage' })
    expect(limitOf({ readings: pair(232, 232, 10) }).parts).not.toContain('voltage')
    expect(limitOf({}).parts).not.toContain('voltage')
    // Already under the floor without load: nothing is left.
    expect(limitOf({ readings: pair(209, 207, 10) }).usableA).toBe(0)
  })

  it('keeps no unit that asks for 8 A from a 9 A breaker, but lets none ask for less than its own least', () => {
    expect(supplyOutcome(supply({ breakerA: 9, minimumA: 8 })).usableA).toBe(8)
    expect(supplyOutcome(supply({ breakerA: 7, minimumA: 8 }))).toMatchObject({ usableA: 7, belowMinimum: true })
    expect(supplyOutcome(supply({ breakerA: 7 })).usableA).toBe(6)
    // Six amperes are the pilot's least even where a unit would do with two.
    expect(supplyOutcome(supply({ siteLimitA: 5.9, minimumA: 2 })).belowMinimum).toBe(true)
    expect(supplyOutcome(supply({ siteLimitA: 6, minimumA: 2 })).belowMinimum).toBe(false)
    expect(supplyOutcome(supply({ siteLimitA: 7, minimumA: 8 })).belowMinimum).toBe(true)
  })

  it('asks for the whole ampere that floating sums just miss', () => {
    // (0.1 + 0.7) x 10 is 7.999999999999999 to a computer.
    expect(supplyOutcome(supply({ siteLimitA: (0.1 + 0.7) * 10 })).askA).toBe(8)
    expect(supplyOutcome(supply({ siteLimitA: 8.999999 })).askA).toBe(8)
  })

  it('tells the sag as a share of the volts without load, and the heat of three lines', () => {
    // 0.7 ohm at 10 A: 7 of 232 V.
    expect(supplyOutcome(supply({ siteLimitA: 10, readings: pair(232, 225, 10) })).sag01).toBeCloseTo(7 / 232, 12)
    const red = supplyOutcome(
      supply({ connector: 'iec-60309-16-red', nominalV: 400, siteLimitA: 10, readings: pair(400, 396, 10) }),
    )
    expect(red.phaseFactor).toBeCloseTo(Math.sqrt(3), 12)
    expect(red.heatInWiringW).toBeCloseTo(Math.sqrt(3) * 0.4 * 100, 9)
    // Read at 230 V a red connector is used on one phase.
    expect(supplyOutcome(supply({ connector: 'iec-60309-16-red', nominalV: 230 })).phaseFactor).toBe(1)
    expect(supplyOutcome(supply({ connector: 'iec-60309-16-red', nominalV: 380 })).phaseFactor).toBeGreaterThan(1)
    expect(supplyOutcome(supply({ connector: 'iec-60309-16-blue', nominalV: 400 })).phaseFactor).toBe(1)
  })

  it('holds no more heat in the known leads than there is in the whole path', () => {
    // 100 m of 1.5 mm2 are 2.66 ohm, but 0.7 ohm were measured.
    const outcome = supplyOutcome(
      supply({ siteLimitA: 10, readings: pair(232, 225, 10), leads: [{ lengthMm: 100_000, areaMm2: 1.5 }] }),
    )
    expect(outcome.pathOhm).toBeCloseTo(2.66, 9)
    expect(outcome.heatInPathW).toBeCloseTo(70, 9)
  })

  it('without volts or a breaker is a programmer’s error', () => {
    expect(() => supplyOutcome(supply({ nominalV: 0 }))).toThrow()
    expect(() => supplyOutcome(supply({ breakerA: 0 }))).toThrow()
  })
})

describe('readings that fix less than a line', () => {
  it('one without load sets the volts, and the drop is assumed: 5 % at what may flow', () => {
    const fit = fitSource([{ currentA: 0, volts: 226 }], 230, 10, 0.2)
    expect(fit).toMatchObject({ noLoadV: 226, measured: false })
    expect(fit.sourceOhm).toBeCloseTo(11.5 / 10 + 0.2, 12)
    expect(fit.sourceOhmSpread).toBeCloseTo(fit.sourceOhm, 12)
  })

  it('one under load is taken to fall from the nominal volts, and from no less than the known path asks', () => {
    const fit = fitSource([{ currentA: 8, volts: 222 }], 230, 10)
    expect(fit.sourceOhm).toBeCloseTo(1, 12)
    expect(fit.noLoadV).toBeCloseTo(230, 12)
    expect(fit.sourceOhmSpread).toBeCloseTo(1.15, 12)
    expect(fit.measured).toBe(false)
    // 240 V under load: the path of 0.3 ohm still lost 2.4 V on the way.
    const high = fitSource([{ currentA: 8, volts: 240 }], 230, 10, 0.3)
    expect(high.sourceOhm).toBeCloseTo(0.3, 12)
    expect(high.noLoadV).toBeCloseTo(242.4, 12)
    // A deep sag is wider than what would be assumed.
    expect(fitSource([{ currentA: 8, volts: 206 }], 230, 10).sourceOhmSpread).toBeCloseTo(3, 12)
  })

  it('several at one current count as their mean', () => {
    const twice = [
      { currentA: 8, volts: 221 },
      { currentA: 8, volts: 223 },
    ]
    expect(fitSource(twice, 230, 10)).toEqual(fitSource([{ currentA: 8, volts: 222 }], 230, 10))
  })

  it('none leaves the nominal volts, at a current of one ampere at least', () => {
    expect(fitSource([], 230, 10)).toEqual({
      noLoadV: 230,
      sourceOhm: expect.closeTo(1.15, 12),
      sourceOhmSpread: expect.closeTo(1.15, 12),
      measured: false,
    })
    expect(fitSource([], 230, 0.5).sourceOhm).toBeCloseTo(11.5, 12)
  })

  it('three that scatter spread by what the line leaves, and volts that rise under load show no resistance', () => {
    const three = [
      { currentA: 0, volts: 232.5 },
      { currentA: 5, volts: 226 },
      { currentA: 10, volts: 225.5 },
    ]
    const fit = fitSource(three, 230, 10)
    // Slope -0.7; at 5 A the line stands at 228: residuals 1, -2, 1, sum of squares 6, one degree of freedom, spread of currents 50.
    expect(fit.sourceOhm).toBeCloseTo(0.7, 12)
    expect(fit.noLoadV).toBeCloseTo(231.5, 12)
    expect(fit.sourceOhmSpread).toBeCloseTo(Math.sqrt(6) / Math.sqrt(50), 12)
    const rising = fitSource(pair(225, 232, 10), 230, 10)
    expect(rising).toMatchObject({ sourceOhm: 0, noLoadV: 228.5, measured: true })
  })

  it('three that lie on a line spread no less than the meter shows', () => {
    const three = [0, 5, 10].map((currentA) => ({ currentA, volts: 232 - currentA }))
    expect(fitSource(three, 230, 10).sourceOhmSpread).toBeCloseTo(1 / Math.sqrt(12) / Math.sqrt(50), 12)
  })
})

describe('borders', () => {
  it('two loads are carried up to the very current that may flow', () => {
    const source = { noLoadV: 232, sourceOhm: 0.7, usableA: 10 }
    expect(twoLoads(source, 2000, 250)).toEqual({ currentA: expect.closeTo(10, 9), carried: true })
    expect(twoLoads(source, 2000, 251).carried).toBe(false)
    expect(twoLoads(source, 1e6, 0)).toEqual({ currentA: null, carried: false })
  })

  it('a source without resistance gives power over volts, and another up to a quarter of V2/R', () => {
    expect(currentForPower({ noLoadV: 230, sourceOhm: 0 }, 2300)).toBe(10)
    expect(currentForPower({ noLoadV: 200, sourceOhm: 1 }, 10_000)).toBe(100)
    expect(currentForPower({ noLoadV: 200, sourceOhm: 1 }, 10_001)).toBeNull()
  })

  it('three phases count in the watts, and volts end at none', () => {
    expect(wattsAt({ noLoadV: 400, sourceOhm: 0.4, phaseFactor: Math.sqrt(3) }, 10)).toBeCloseTo(Math.sqrt(3) * 3960, 9)
    expect(voltsAt({ noLoadV: 10, sourceOhm: 2 }, 4)).toBe(2)
    expect(voltsAt({ noLoadV: 10, sourceOhm: 2 }, 6)).toBe(0)
  })

  it('two systems are told apart within a tenth of 2 and of the root of 3', () => {
    expect([1.91, 2.09, 1.89, 2.11].map((ratio) => lineSystem(100 * ratio, 100))).toEqual([
      'split-phase-240',
      'split-phase-240',
      'not-known',
      'not-known',
    ])
    expect([1.64, 1.82, 1.62, 1.84].map((ratio) => lineSystem(100 * ratio, 100))).toEqual([
      'two-of-three-208',
      'two-of-three-208',
      'not-known',
      'not-known',
    ])
  })
})
