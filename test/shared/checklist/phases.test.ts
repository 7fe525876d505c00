/** The place of a step in the whole trip. */
import { describe, expect, it } from 'vitest'
import { PHASES, phaseRank } from '../../../shared/checklist/phases.ts'

describe('the place of a step in the whole trip', () => {
  it('is home first, then night after night, phase by phase, and home again last', () => {
    const nights = [0, 1, 2]
    const between = PHASES.filter((phase) => phase !== 'before-leaving' && phase !== 'back-home')
    const along = nights.flatMap((night) => between.map((phase) => phaseRank(phase, night, nights.length)))
    const all = [phaseRank('before-leaving', 2, 3), ...along, phaseRank('back-home', 0, 3)]
    expect(all).toEqual(all.toSorted((left, right) => left - right))
    expect(new Set(all).size).toBe(2 + nights.length * between.length)
  })

  it('is one for all nights for what is done at home', () => {
    for (const phase of ['before-leaving', 'back-home'] as const) {
      expect(new Set([0, 1, 2].map((night) => phaseRank(phase, night, 3))).size).toBe(1)
    }
  })
})
