/** Blocks of boxes and their table, against trying every grid and every join, and the boxes of each block against the oracle. */
import { describe, expect, it } from 'vitest'
import { blocksOf, boxesOf, turnsOf } from '../../../shared/packing/container/blocks.ts'
import type { Block } from '../../../shared/packing/container/blocks.ts'
import { blockTable } from '../../../shared/packing/container/table.ts'
import type { BoxType, ContainerInput } from '../../../shared/packing/index.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { allBlocks, grids, nameOf, standing, volumeOf } from '../../support/oracle/blocks.ts'
import type { PlainBlock } from '../../support/oracle/blocks.ts'
import { containerFaults } from '../../support/oracle/container.ts'
import { longestSum } from '../../support/oracle/fill.ts'

const CASES = 30
const FILLS_01 = [0.98, 0.75] as const
const never = (): boolean => false
const all = (leastFill01: number) => ({ most: 100_000, leastFill01, shouldStop: never })

const caseOf = (seed: number): ContainerInput => {
  const random = randomFrom(seed)
  const between = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1))
  const boxes = Array.from({ length: between(1, 3) }, (): BoxType => ({
    sizeMm: [between(1, 4), between(1, 3), between(1, 4)],
    upright: [random() < 0.5, random() < 0.4, true],
    count: between(1, 3),
  }))
  return { sizeMm: [between(4, 12), between(3, 8), between(3, 8)], boxes }
}

const plain = (input: ContainerInput, { size, topX, topY, uses }: Block): PlainBlock => ({
  size,
  top: [topX, topY],
  used: input.boxes.map((_, type) => uses.find((_use, at) => at % 2 === 1 && uses[at - 1] === type) ?? 0),
})

const names = (blocks: readonly PlainBlock[]): readonly string[] => blocks.map(nameOf).toSorted()

describe('the ways a box may stand', () => {
  it('are one for each turn on the floor of each edge that may stand upright', () => {
    const box: BoxType = { sizeMm: [3, 2, 1], upright: [false, false, true], count: 1 }
    const sizes = (upright: BoxType['upright'], sizeMm: BoxType['sizeMm'] = box.sizeMm): readonly string[] =>
      turnsOf({ ...box, sizeMm, upright })
        .map((size) => size.join('x'))
        .toSorted()
    expect(sizes([false, false, true])).toEqual(['2x3x1', '3x2x1'])
    expect(sizes([true, false, false])).toEqual(['1x2x3', '2x1x3'])
    expect(sizes([false, true, false])).toEqual(['1x3x2', '3x1x2'])
    expect(sizes([true, true, true])).toHaveLength(6)
    expect(sizes([true, true, true], [2, 2, 1])).toEqual(['1x2x2', '2x1x2', '2x2x1'])
    expect(sizes([true, true, true], [2, 2, 2])).toEqual(['2x2x2'])
  })
})

describe('blocks', () => {
  it(`are all that grids and joins reach, the largest first, in ${CASES} small cases`, () => {
    let compounds = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const input = caseOf(seed)
      for (const fill01 of FILLS_01) {
        const blocks = blocksOf(input, all(fill01))
        const expected = allBlocks(input, fill01)
        const label = `seed ${seed}, filled to ${fill01}`
        expect([label, names(blocks.map((block) => plain(input, block)))]).toEqual([label, names(expected)])
        const volumes = blocks.map(({ volume }) => volume)
        expect([label, volumes]).toEqual([label, blocks.map((block) => volumeOf(input, plain(input, block)))])
        expect([label, volumes]).toEqual([label, volumes.toSorted((a, b) => b - a)])
        compounds += blocks.length - grids(input).length
      }
    }
    expect(compounds).toBeGreaterThan(CASES * 5)
  })

  it('consist of boxes that lie in the hull, stand on it and on each other, and reach the flat top', () => {
    for (let seed = 1; seed <= CASES; seed++) {
      const input = caseOf(seed)
      for (const block of blocksOf(input, all(0.75))) {
        const { size, topX, topY, volume } = block
        const boxes = boxesOf(block, [0, 0, 0])
        const filled01 = volume / (size[0] * size[1] * size[2])
        const label = `seed ${seed}, ${size.join('x')}`
        const faults = containerFaults({ ...input, sizeMm: size }, { boxes, filled01, completions: 0 })
        expect([label, faults]).toEqual([label, []])
        const atTop = boxes.filter(({ atMm, sizeMm }) => atMm[2] + sizeMm[2] === size[2])
        const within = (at: number, edge: number, limit: number): number => Math.max(0, Math.min(at + edge, limit) - at)
        const covered = atTop.reduce(
          (sum, { atMm, sizeMm }) => sum + within(atMm[0], sizeMm[0], topX) * within(atMm[1], sizeMm[1], topY),
          0,
        )
        expect([label, covered]).toEqual([label, topX * topY])
        const away = boxesOf(block, [5, 6, 7]).map(({ atMm: [x, y, z] }) => [x - 5, y - 6, z - 7])
        expect([label, away]).toEqual([label, boxes.map(({ atMm }) => [...atMm])])
      }
    }
  })

  it('are no more than asked for, and the smallest single ones where not all of these go in', () => {
    const input: ContainerInput = {
      sizeMm: [8, 1, 1],
      boxes: [{ sizeMm: [1, 1, 1], upright: [true, true, true], count: 8 }],
    }
    const lengths = (most: number): readonly number[] =>
      blocksOf(input, { ...all(0.98), most }).map(({ size }) => size[0])
    expect(lengths(3)).toEqual([3, 2, 1])
    expect(lengths(8)).toEqual([8, 7, 6, 5, 4, 3, 2, 1])
    for (let seed = 1; seed <= CASES; seed++) {
      const one = caseOf(seed)
      const whole = new Set(names(allBlocks(one, 0.75)))
      for (const most of [1, 7, 20]) {
        const blocks = blocksOf(one, { ...all(0.75), most })
        expect(blocks).toHaveLength(Math.min(most, whole.size))
        expect(blocks.every((block) => whole.has(nameOf(plain(one, block))))).toBe(true)
      }
    }
  })

  it('are the grids alone where the host wants an end at once', () => {
    for (let seed = 1; seed <= CASES; seed++) {
      const input = caseOf(seed)
      const blocks = blocksOf(input, { ...all(0.75), shouldStop: () => true })
      expect(names(blocks.map((block) => plain(input, block)))).toEqual(names(grids(input)))
    }
  })
})

describe('the table of blocks', () => {
  it('holds what each block is and uses', () => {
    for (let seed = 1; seed <= CASES; seed++) {
      const input = caseOf(seed)
      const table = blockTable(input, all(0.75))
      expect(table.count).toBe(table.blocks.length)
      expect([...table.boxCounts]).toEqual(input.boxes.map(({ count }) => count))
      for (const [at, block] of table.blocks.entries()) {
        const row = [table.lengths[at], table.widths[at], table.heights[at], table.topXs[at], table.topYs[at]]
        expect(row).toEqual([...block.size, block.topX, block.topY])
        expect(table.volumes[at]).toBe(block.volume)
        expect([...table.uses.subarray(table.usesFrom[at], table.usesFrom[at + 1])]).toEqual(block.uses)
        const used = plain(input, block).used
        const mask = used.reduce((sum, count, type) => sum + (count > 0 ? 2 ** type : 0), 0)
        expect(table.typeMasks[at]).toBe(mask)
      }
    }
  })

  it('knows the lowest edge that may stand and what lengths edges add up to', () => {
    for (let seed = 1; seed <= CASES; seed++) {
      const input = caseOf(seed)
      const table = blockTable(input, all(0.98))
      const ways = input.boxes.map(standing)
      expect(table.lowestBox).toBe(Math.min(...ways.flat().map((way) => way[2])))
      for (const axis of [0, 1, 2] as const) {
        const edges = input.boxes.flatMap(({ count }, type) =>
          [...new Set(ways[type]?.map((way) => way[axis]))].map((size) => ({ size, count })),
        )
        const expected = Array.from({ length: input.sizeMm[axis] + 1 }, (_, length) => longestSum(length, edges))
        expect([seed, axis, [...table.reachable[axis]]]).toEqual([seed, axis, expected])
      }
    }
  })
})
