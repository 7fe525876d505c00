/** Conversion factors against their definitions. Sources: BIPM SI brochure (2019); NIST SP 811 (2008), appendix B. */
import { describe, expect, it } from 'vitest'
import {
  CLO_M2K_PER_W,
  FEET_PER_M,
  G_PER_KG,
  G_PER_POUND,
  J_PER_WH,
  KELVIN_OFFSET,
  MET_W_PER_M2,
  MM3_PER_LITRE,
  MM_PER_INCH,
  MM_PER_KM,
  MM_PER_M,
  M_PER_MILE,
  PA_PER_HPA,
  R_US_M2K_PER_W,
  STANDARD_GRAVITY_M_PER_S2,
  S_PER_DAY,
  S_PER_HOUR,
  S_PER_MINUTE,
  TOG_M2K_PER_W,
  WH_PER_KWH,
  fromFahrenheit,
  toFahrenheit,
} from '../../../shared/units/index.ts'

describe('a factor', () => {
  it.each([
    ['MM_PER_INCH', MM_PER_INCH, 25.4],
    ['MM_PER_M', MM_PER_M, 1000],
    ['MM_PER_KM', MM_PER_KM, 1_000_000],
    ['M_PER_MILE', M_PER_MILE, 1609.344],
    ['G_PER_KG', G_PER_KG, 1000],
    ['G_PER_POUND', G_PER_POUND, 453.59237],
    ['S_PER_MINUTE', S_PER_MINUTE, 60],
    ['S_PER_HOUR', S_PER_HOUR, 3600],
    ['S_PER_DAY', S_PER_DAY, 86_400],
    ['J_PER_WH', J_PER_WH, 3600],
    ['WH_PER_KWH', WH_PER_KWH, 1000],
    ['PA_PER_HPA', PA_PER_HPA, 100],
    ['KELVIN_OFFSET', KELVIN_OFFSET, 273.15],
    ['MM3_PER_LITRE', MM3_PER_LITRE, 1_000_000],
    ['STANDARD_GRAVITY_M_PER_S2', STANDARD_GRAVITY_M_PER_S2, 9.80665],
  ])('%s is %d by definition', (_name, ours, value) => {
    expect(ours).toBe(value)
  })

  it('of length fits the others: 5,280 feet are a mile, 12 inches a foot', () => {
    expect(M_PER_MILE * FEET_PER_M).toBeCloseTo(5280, 9)
    expect(MM_PER_M / MM_PER_INCH / FEET_PER_M).toBeCloseTo(12, 12)
  })

  it('of insulation fits the others: a tog is 0.645 clo, a US R unit 1.761 tog', () => {
    expect(TOG_M2K_PER_W / CLO_M2K_PER_W).toBeCloseTo(0.645, 3)
    expect(R_US_M2K_PER_W / TOG_M2K_PER_W).toBeCloseTo(1.761, 3)
    // ISO 7730:2005: 1 met = 58.15 W/m2.
    expect(MET_W_PER_M2).toBe(58.15)
  })
})

describe('a temperature', () => {
  it.each([
    [0, 32],
    [100, 212],
    [-40, -40],
    [37, 98.6],
  ])('of %d °C is %d °F, and back', (tempC, tempF) => {
    expect(toFahrenheit(tempC)).toBeCloseTo(tempF, 10)
    expect(fromFahrenheit(tempF)).toBeCloseTo(tempC, 10)
  })
})
