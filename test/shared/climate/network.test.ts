import { describe, expect, it } from 'vitest'
import { airJPerM3K, gapM3PerH, pressurePa } from '../../../shared/climate/network-air.ts'
import { buildNetwork, glassUWPerM2K, shellFromPartsWPerK } from '../../../shared/climate/network.ts'
import { daylightWPerM2, skyC } from '../../../shared/climate/network-sky.ts'
import { cabinDefaults } from '../../../shared/climate/index.ts'

const AIR = airJPerM3K(101_325)

/** Shell of body classes at winds 0, 1, 3, 5 m/s and covered at 1 m/s with the leakage taken out. Source: cabin_defaults.json, UA_W_K less 0.335 V n. */
const PUBLISHED = [
  ['hatchback', 2.7, 0.5, [23.4, 25, 27, 28.1]],
  ['estate', 3.8, 0.5, [31.2, 33.2, 35.6, 37]],
  ['van-bare', 9.5, 1, [126.8, 128.4, 130.3, 131.4]],
  ['van-insulated', 9, 0.7, [42.5, 44.3, 46.5, 47.8]],
] as const

describe('the cabin as conductances', () => {
  it.each(PUBLISHED)('a %s adds up to its published loss by wind within 2 %%', (bodyClass, volume, leakage, totals) => {
    ;[0, 1, 3, 5].forEach((wind, index) => {
      const ours = buildNetwork(cabinDefaults(bodyClass), wind, false, AIR).shellWPerK + 0.335 * volume * leakage
      expect(Math.abs(ours / (totals[index] ?? 0) - 1)).toBeLessThan(0.02)
    })
  })

  it('glass without a cover loses 5.75 W/m2K at an outer film of 25 and 3.92 in still air', () => {
    // EN 673 pair (from memory): 1 / (1/25 + 0.004 + 1/7.7); the still film is 8.23.
    expect(1 / (1 / 25 + 0.004 + 1 / 7.7)).toBeCloseTo(5.75, 2)
    expect(glassUWPerM2K(0, 0)).toBeCloseTo(3.92, 2)
  })

  it('a cover of 0.2 m2K/W takes 5.75 W/m2K down to 2.67', () => {
    expect(1 / (1 / 5.75 + 0.2)).toBeCloseTo(2.67, 2)
    const still = glassUWPerM2K(3, 0)
    expect(glassUWPerM2K(3, 0.2)).toBeCloseTo(1 / (1 / still + 0.2), 10)
  })

  it('the owner’s own loss rules over the parts, bare and covered, and grows with wind as stated', () => {
    const cabin = { ...cabinDefaults('estate'), lossBareWPerK: 52, lossCoveredWPerK: 38, windFactorPerMPerS: 0.012 }
    expect(buildNetwork(cabin, 0, false, AIR).shellWPerK).toBeCloseTo(52, 6)
    expect(buildNetwork(cabin, 4, false, AIR).shellWPerK).toBeCloseTo(52 * 1.048, 6)
    expect(buildNetwork(cabin, 4, true, AIR).shellWPerK).toBeCloseTo(38 * 1.048, 6)
  })

  it('knowing only the bare loss, covers take off the share that they take off the parts', () => {
    const cabin = { ...cabinDefaults('estate'), lossBareWPerK: 60 }
    const share = shellFromPartsWPerK(cabin, 0, true) / shellFromPartsWPerK(cabin, 0, false)
    expect(buildNetwork(cabin, 0, true, AIR).shellWPerK).toBeCloseTo(60 * share, 6)
  })

  it('the calibrated scale multiplies the whole shell', () => {
    const plain = buildNetwork(cabinDefaults('crossover'), 2, false, AIR).shellWPerK
    const scaled = buildNetwork({ ...cabinDefaults('crossover'), lossScale: 1.4 }, 2, false, AIR).shellWPerK
    expect(scaled / plain).toBeCloseTo(1.4, 10)
  })
})

describe('air exchange', () => {
  it('a cubic metre an hour costs 0.34 W/K at sea level', () => {
    expect(airJPerM3K(101_325) / 3600).toBeCloseTo(0.336, 2)
  })

  it('pressure falls to 77.9 kPa at 2130 m', () => {
    // Standard atmosphere, ASHRAE Fundamentals 2017 ch. 1 eq. 3; psychrolib GetStandardAtmPressure(2130) = 78 214 Pa.
    expect(pressurePa(2130)).toBeCloseTo(78_214, -2)
  })

  it('a closed window lets nothing through; a wider gap, a second side, wind and difference each let more through', () => {
    expect(gapM3PerH(0, 2, 5, 20)).toBe(0)
    expect(gapM3PerH(20, 2, 2, 15)).toBeGreaterThan(gapM3PerH(10, 2, 2, 15))
    expect(gapM3PerH(10, 2, 2, 15)).toBeGreaterThan(gapM3PerH(10, 1, 2, 15))
    expect(gapM3PerH(10, 2, 4, 15)).toBeGreaterThan(gapM3PerH(10, 2, 2, 15))
    expect(gapM3PerH(10, 2, 2, 25)).toBeGreaterThan(gapM3PerH(10, 2, 2, 5))
  })

  it('gives what the formula of EN 16798-7 gives by hand: half the area times the root of wind and stack', () => {
    // 0.01 m by 0.9 m of edge is 0.009 m2; 0.001 * 2^2 + 0.0035 * 0.15 * 15 = 0.011875, its root 0.10897.
    expect(gapM3PerH(10, 1, 2, 15)).toBeCloseTo(1.76536, 4)
    expect(gapM3PerH(10, 1, 2, -15)).toBeCloseTo(1.76536, 4)
    // No wind, 20 K: the root of 0.0105 is 0.10247; a wind from nowhere counts as none.
    expect(gapM3PerH(10, 1, 0, 20)).toBeCloseTo(1.66001, 4)
    expect(gapM3PerH(10, 1, -3, 20)).toBeCloseTo(1.66001, 4)
    // Across: 0.6 * 0.009 / 2^0.5 * 0.5 * 2 * 0.5^0.5 = 0.0027 m3/s, beside twice the single flow, 0.00098 m3/s, at right angles.
    expect(gapM3PerH(10, 2, 2, 15)).toBeCloseTo(10.3414, 3)
  })

  it('two gaps of 12 mm in a light wind give one sleeper about what practice says, 10 to 40 m3/h', () => {
    const flow = gapM3PerH(12, 2, 3, 15)
    expect(flow).toBeGreaterThan(10)
    expect(flow).toBeLessThan(40)
  })
})

describe('sky and sun', () => {
  // Rows CAB-036, CAB-037, CAB-039 of the checks: Clark-Allen and Walton.
  it.each([
    [20, 10, 0, 5.38],
    [0, -5, 0, -17],
    [10, 5, 0.5, -1.36],
  ])('air %d, dew point %d, cloud %d gives a sky of %d °C', (airC, dewC, cloud01, expected) => {
    expect(Math.abs(skyC(airC, dewC, cloud01) - expected)).toBeLessThan(0.3)
  })

  it('the sky is never warmer than the air', () => {
    for (let cloud = 0; cloud <= 1; cloud += 0.1) expect(skyC(15, 14.9, cloud)).toBeLessThanOrEqual(15)
  })

  it('no daylight below the horizon, less under cloud', () => {
    expect(daylightWPerM2(-3, 0)).toBe(0)
    expect(daylightWPerM2(20, 1)).toBeLessThan(daylightWPerM2(20, 0))
  })
})
