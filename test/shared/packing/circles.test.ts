/** Circles of things that wait for each other's places. */
import { describe, expect, it } from 'vitest'
import { circlesIn } from '../../../shared/packing/changeover/circles.ts'

describe('circles', () => {
  it.each([
    ['none in a chain', [[1], [2], []], 0],
    ['one where two trade places', [[1], [0]], 1],
    ['one through three, with a tail', [[1], [2], [0], [0]], 1],
    ['two that share nothing', [[1], [0, 2], [3], [2]], 2],
    ['one where two circles share a thing', [[1], [0, 2], [1]], 1],
    ['none in nothing', [], 0],
  ])('%s', (_, edges, circles) => {
    expect(circlesIn(edges)).toBe(circles)
  })
})
