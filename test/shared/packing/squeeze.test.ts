/** A soft thing is pressed to its share to the millimetre, whatever the share looks like in binary. */
import { describe, expect, it } from 'vitest'
import { posesOf } from '../../../shared/packing/poses.ts'

describe('a soft thing', () => {
  it('is pressed to exactly so many hundredths where these make a whole millimetre', () => {
    for (let hundredths = 1; hundredths <= 100; hundredths++) {
      // Of 300 mm each hundredth is 3 mm; of 200 mm, 2 mm; of 100 mm, 1 mm.
      const [pose] = posesOf([300, 200, 100], [2], true, hundredths / 100)
      expect([hundredths, pose?.leastMm]).toEqual([hundredths, [3 * hundredths, 2 * hundredths, hundredths]])
    }
  })

  it('is pressed no further than its share where that is no whole millimetre', () => {
    // 0.333 of 100, 10 and 1 mm: 33.3, 3.33 and 0.333.
    expect(posesOf([100, 10, 1], [2], true, 0.333)[0]?.leastMm).toEqual([34, 4, 1])
  })
})
