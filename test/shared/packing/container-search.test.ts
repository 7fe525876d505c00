/** The search for a packed container: what it always gives, how it counts and asks, and that more of it is no worse. */
import { describe, expect, it } from 'vitest'
import { packContainer } from '../../../shared/packing/index.ts'
import type { BoxType, ContainerInput, ContainerPacking } from '../../../shared/packing/index.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { containerFaults } from '../../support/oracle/container.ts'

/** Completions between two looks at the clock. */
const POLL_EACH = 16

const loadOf = (seed: number, types: number, most: number): ContainerInput => {
  const random = randomFrom(seed)
  const between = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1))
  const boxes = Array.from({ length: types }, (): BoxType => ({
    sizeMm: [between(5, 14), between(4, 10), between(4, 9)],
    upright: [random() < 0.5, random() < 0.5, true],
    count: between(1, most),
  }))
  return { sizeMm: [28, 20, 18], boxes }
}

const one = (sizeMm: BoxType['sizeMm'], count: number, upright: BoxType['upright'] = [true, true, true]): BoxType => ({
  sizeMm,
  upright,
  count,
})

const offered = ({ boxes }: ContainerInput): number =>
  boxes.reduce((sum, { sizeMm: [a, b, c], count }) => sum + a * b * c * count, 0)

const volume = ({ boxes }: ContainerPacking): number => boxes.reduce((sum, { sizeMm: [a, b, c] }) => sum + a * b * c, 0)

describe('a container', () => {
  it('stays empty where there are no boxes or none fits', () => {
    for (const boxes of [[], [one([5, 5, 5], 3)]]) {
      const packing = packContainer({ sizeMm: [4, 4, 4], boxes }, { completions: 50 })
      expect([packing.boxes, packing.filled01]).toEqual([[], 0])
    }
  })

  it('is filled to the last cell where boxes of one kind tile it', () => {
    const tiles = one([2, 3, 4], 100)
    for (const sizeMm of [
      [12, 12, 12],
      [8, 6, 4],
      [24, 2, 3],
    ] as const) {
      const packing = packContainer({ sizeMm, boxes: [tiles] }, { completions: 40 })
      expect(packing.filled01).toBe(1)
      expect(containerFaults({ sizeMm, boxes: [tiles] }, packing)).toEqual([])
    }
  })

  it('takes every box where there is ample room', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const input = loadOf(seed, 3, 2)
      const packing = packContainer(input, { completions: 60 })
      if (offered(input) > 0.4 * 28 * 20 * 18) continue
      expect([seed, volume(packing)]).toEqual([seed, offered(input)])
    }
  })

  it('is packed in one go at once, whatever the host wants, and legally', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const input = loadOf(seed, 5, 12)
      for (const budget of [{ completions: 1 }, { completions: 500, shouldStop: () => true }]) {
        const packing = packContainer(input, budget)
        expect([seed, packing.completions, containerFaults(input, packing)]).toEqual([seed, 1, []])
        // One greedy pass leaves less than half of the room, as long as there are boxes for it.
        expect(packing.filled01).toBeGreaterThan(Math.min(0.5, offered(input) / (28 * 20 * 18) / 2))
      }
    }
  })

  it('is no emptier for more of the search, spends what it is given and no more, and some are fuller', () => {
    let fuller = 0
    for (let seed = 1; seed <= 6; seed++) {
      const input = loadOf(seed, 5, 12)
      let before = 0
      for (const completions of [1, 30, 120]) {
        const packing = packContainer(input, { completions })
        expect([seed, packing.completions]).toEqual([seed, completions])
        expect([seed, containerFaults(input, packing)]).toEqual([seed, []])
        expect(packing.filled01).toBeGreaterThanOrEqual(before)
        if (before > 0 && packing.filled01 > before) fuller++
        before = packing.filled01
      }
    }
    expect(fuller).toBeGreaterThan(5)
  })

  it('of more types than fifty is packed legally too', () => {
    const input = loadOf(3, 55, 1)
    const packing = packContainer(input, { completions: 60 })
    expect(containerFaults(input, packing)).toEqual([])
    expect(packing.filled01).toBeGreaterThan(0.7)
  })
})

describe('the host', () => {
  it('is heeded within a few completions', () => {
    for (const seed of [1, 2, 3]) {
      let ended01 = 0
      const budget = {
        completions: 5000,
        shouldStop: () => ended01 > 0,
        onProgress: (done01: number) => (ended01 = done01),
      }
      const packing = packContainer(loadOf(seed, 5, 12), budget)
      expect(ended01).toBeGreaterThan(0)
      expect(packing.completions).toBeLessThanOrEqual(ended01 * 5000 + POLL_EACH)
    }
  })

  it('hears how far the search is, from little to the whole', () => {
    const heard: number[] = []
    packContainer(loadOf(4, 5, 12), { completions: 150, onProgress: (done01) => heard.push(done01) })
    expect(heard.length).toBeGreaterThan(1)
    expect(heard).toEqual(heard.toSorted((a, b) => a - b))
    expect(heard[0]).toBeGreaterThan(0)
    expect(heard[0]).toBeLessThan(1)
    expect(heard.at(-1)).toBe(1)
  })
})
