/** Comfort ratings and insulation, by hand: 46.6 W/m2 of which 78 % leave dry through bag, base layer and still air, from a skin of 33 °C. */
import { describe, expect, it } from 'vitest'
import { bagCloFromComfort, comfortFromClo } from '../../../shared/climate/index.ts'

describe('a bag', () => {
  it('of a comfort rating has the insulation that holds the heat at that cold', () => {
    // 33 K over 36.348 W/m2 are 0.90789 m2K/W; less 0.09 of air and 0.35 clo of clothes, in clo of 0.155.
    expect(bagCloFromComfort(0)).toBeCloseTo(4.9267, 3)
    expect(bagCloFromComfort(-10)).toBeCloseTo(6.7017, 3)
    expect(bagCloFromComfort(30)).toBe(0)
  })

  it('of an insulation has that rating again, and bare clothes are good for a warm room', () => {
    for (const comfortC of [-30, -10, -2, 0, 5, 15]) {
      expect(comfortFromClo(bagCloFromComfort(comfortC))).toBeCloseTo(comfortC, 9)
    }
    // 0.35 clo and the air layer are 0.14425 m2K/W, 5.243 K at 36.348 W/m2.
    expect(comfortFromClo(0)).toBeCloseTo(27.7568, 3)
  })
})
