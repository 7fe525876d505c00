/** The container core on cases small enough to try every packing. */
import { describe, expect, it } from 'vitest'
import { packContainer } from '../../../shared/packing/index.ts'
import type { BoxType, ContainerInput } from '../../../shared/packing/index.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { containerFaults } from '../../support/oracle/container.ts'
import { fullestVolume } from '../../support/oracle/fullest.ts'

const CASES = 200
const CONTAINERS = [
  [3, 3, 3],
  [4, 3, 2],
  [5, 2, 2],
  [3, 2, 4],
] as const

const caseOf = (seed: number): ContainerInput => {
  const random = randomFrom(seed)
  const pick = (count: number): number => Math.floor(random() * count)
  const units = 2 + pick(6)
  const boxes = Array.from({ length: units }, (): BoxType => ({
    sizeMm: [1 + pick(3), 1 + pick(2), 1 + pick(3)],
    upright: [random() < 0.6, random() < 0.6, true],
    count: 1,
  }))
  return { sizeMm: CONTAINERS[pick(CONTAINERS.length)] ?? [3, 3, 3], boxes }
}

describe('a container of few boxes', () => {
  it(`is filled as full as any packing fills it, in all of ${CASES} cases`, () => {
    let full = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const input = caseOf(seed)
      const packing = packContainer(input, { completions: 1000 })
      const cells = input.sizeMm[0] * input.sizeMm[1] * input.sizeMm[2]
      const filled = Math.round(packing.filled01 * cells)
      expect({ seed, faults: containerFaults(input, packing) }).toEqual({ seed, faults: [] })
      expect({ seed, filled }).toEqual({ seed, filled: fullestVolume(input) })
      const offered = input.boxes.reduce((sum, { sizeMm: [a, b, c] }) => sum + a * b * c, 0)
      if (filled < offered) full++
    }
    console.log(`${full} of ${CASES} could not take every box`)
    expect(full).toBeGreaterThan(CASES / 10)
  })
})
