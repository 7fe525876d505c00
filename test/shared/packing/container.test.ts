/** The container core on the open benchmark: the generator is the published one, every packing is legal, and seeds decide the answer. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { packContainer } from '../../../shared/packing/index.ts'
import { CLASSES, instance } from '../../bench/packing/instances.ts'
import { containerFaults } from '../../support/oracle/container.ts'

type Row = readonly [readonly number[], readonly number[], number]
const published: { classes: Record<string, readonly Row[]> } = JSON.parse(
  readFileSync(new URL('../../fixtures/first-instances.json', import.meta.url), 'utf8'),
)

describe('the instance generator', () => {
  it.each(CLASSES)(
    'makes the published first instance of %s (Bischoff and Ratcliff 1995, Davies and Bischoff 1999)',
    (name) => {
      const ours = instance(name, 1).boxes.map(({ sizeMm, upright, count }) => [sizeMm, upright.map(Number), count])
      expect(ours).toEqual(published.classes[name])
    },
  )
})

describe('a packed container', () => {
  it.each(['BR1', 'BR4', 'BR7', 'BR10', 'BR15'])(
    'is legal in %s, also past the published hundred, and fills more than a single greedy pass of the literature',
    (name) => {
      for (const number of [1, 57, 140]) {
        const input = instance(name, number)
        const packing = packContainer(input, { completions: 150 })
        expect(containerFaults(input, packing)).toEqual([])
        // Bischoff and Ratcliff 1995 reach 83.4 % on BR1 to BR7 with their layer heuristic; a handful of completions passes 80 % everywhere.
        expect(packing.filled01).toBeGreaterThan(0.8)
      }
    },
  )

  it('is the same again for the same budget, and no worse for a larger one', () => {
    const input = instance('BR5', 3)
    const once = packContainer(input, { completions: 60 })
    expect(packContainer(input, { completions: 60 })).toEqual(once)
    expect(packContainer(input, { completions: 240 }).filled01).toBeGreaterThanOrEqual(once.filled01)
  })

  it('stops when asked and tells how far it is', () => {
    const heard: number[] = []
    const packing = packContainer(instance('BR2', 1), {
      completions: 1_000_000,
      shouldStop: () => heard.length > 1,
      onProgress: (done01) => heard.push(done01),
    })
    expect(packing.completions).toBeLessThan(1_000_000)
    expect(heard.length).toBeGreaterThan(1)
  })
})
