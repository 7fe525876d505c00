/** Freezing of a lead battery's acid: handbook values of starter batteries, from memory. */
import { describe, expect, it } from 'vitest'
import { acidFreezesC } from '../../../shared/climate/sources/lead-acid.ts'

describe('the acid of a lead battery', () => {
  it.each([
    [0, -8],
    [0.5, -24],
    [1, -57],
    // Straight between -24 °C at a half and -37 °C at three quarters.
    [0.6, -29.2],
    [-0.1, -8],
    [1.1, -57],
  ])('filled to %d freezes at %d °C', (charge01, tempC) => {
    expect(acidFreezesC(charge01)).toBeCloseTo(tempC, 9)
  })
})
