/** Who keeps whom from moving, over rows of bits; the small cases worked out by hand. */
import { describe, expect, it } from 'vitest'
import {
  clearBit,
  conflictsOf,
  hasBit,
  holdsAll,
  meets,
  setBit,
  wouldBar,
} from '../../../../shared/packing/changeover/conflicts.ts'
import type { Conflicts } from '../../../../shared/packing/changeover/conflicts.ts'
import { away, cellBay, spot, taskOf } from '../../../support/generators/small-change.ts'

const rowOf = (words: number, ...bits: readonly number[]): Uint32Array => {
  const row = new Uint32Array(words)
  for (const bit of bits) setBit(row, bit)
  return row
}
const bitsIn = (row: Uint32Array | undefined): readonly number[] =>
  row === undefined ? [] : Array.from({ length: 32 * row.length }, (_, bit) => bit).filter((bit) => hasBit(row, bit))

describe('a row of bits', () => {
  it('holds each bit on its own, over the end of a word', () => {
    const row = rowOf(3, 0, 31, 32, 63, 64)
    expect([...row]).toEqual([0x8000_0001, 0x8000_0001, 1])
    expect(bitsIn(row)).toEqual([0, 31, 32, 63, 64])
    setBit(row, 31)
    expect(bitsIn(row)).toEqual([0, 31, 32, 63, 64])
    clearBit(row, 32)
    clearBit(row, 1)
    expect(bitsIn(row)).toEqual([0, 31, 63, 64])
    clearBit(row, 31)
    expect(bitsIn(row)).toEqual([0, 63, 64])
  })

  it('meets another that has a bit in common, in any word', () => {
    expect(meets(rowOf(2, 3, 40), rowOf(2, 4, 40))).toBe(true)
    expect(meets(rowOf(2, 31), rowOf(2, 31, 33))).toBe(true)
    expect(meets(rowOf(2, 3, 40), rowOf(2, 4, 41))).toBe(false)
    expect(meets(rowOf(2, 3), rowOf(2))).toBe(false)
  })

  it('holds all of another only where no bit of it is missing', () => {
    expect(holdsAll(rowOf(2, 3, 40, 50), rowOf(2, 3, 40))).toBe(true)
    expect(holdsAll(rowOf(2, 3), rowOf(2))).toBe(true)
    expect(holdsAll(rowOf(2, 40), rowOf(2, 3, 40))).toBe(false)
    expect(holdsAll(rowOf(2, 3), rowOf(2, 3, 40))).toBe(false)
    expect(holdsAll(rowOf(2, 3), new Uint32Array(0))).toBe(true)
  })
})

/** By place, by way: the opening and the places that must be empty. */
const waysOf = ({ ways }: Conflicts): unknown =>
  ways.map((each) => each.map(({ window, shut }) => [window, bitsIn(shut)]))

describe('conflicts', () => {
  const tunnel = cellBay('tunnel', [3, 1, 2], ['x-'])
  const pit = cellBay('pit', [3, 1, 2], ['z+'], { originCells: [50, 0, 0] })
  const near = [spot(0, [0, 0, 0]), spot(1, [0, 0, 0])] as const
  const middle = [spot(0, [1, 0, 0]), spot(1, [1, 0, 0])] as const
  const above = [spot(0, [1, 0, 1]), spot(1, [1, 0, 1])] as const

  it('number first and last places in turn and name what shuts each way: what stands before it or on it, never its own', () => {
    const found = conflictsOf(taskOf([tunnel, pit], [near, middle, above]))
    expect(found.words).toBe(1)
    expect(found.spots).toEqual([...near, ...middle, ...above])
    // In the tunnel the middle one has the near one before it and one on it; in the pit only what is on it bars it.
    expect(waysOf(found)).toEqual([[[0, []]], [[0, []]], [[0, [0, 4]]], [[0, [5]]], [[0, []]], [[0, []]]])
    expect(found.under.map(bitsIn)).toEqual([[], [], [], [], [], [3]])
  })

  it('need a last place beneath, not a first one, and only where it is touched', () => {
    const stays = conflictsOf(taskOf([tunnel, pit], [near, [middle[0], middle[0]], above]))
    expect(stays.under.map(bitsIn)).toEqual([[], [], [], [], [3], []])
    const aside = conflictsOf(
      taskOf(
        [pit],
        [
          [spot(0, [0, 0, 0]), spot(0, [0, 0, 0])],
          [spot(0, [2, 0, 0]), spot(0, [2, 0, 0], [1, 1, 2])],
          [away('bed'), spot(0, [1, 0, 1])],
        ],
      ),
    )
    expect(aside.under.map(bitsIn)).toEqual([[], [], [], [], [], []])
  })

  it('know a way for each opening, and none for what is away', () => {
    const through = cellBay('through', [3, 1, 1], ['x-', 'x+'])
    const found = conflictsOf(
      taskOf(
        [through],
        [
          [spot(0, [0, 0, 0]), away('bed')],
          [away('bed'), spot(0, [1, 0, 0])],
          [spot(0, [2, 0, 0]), away('bed')],
        ],
      ),
    )
    const by = (low: readonly number[], high: readonly number[]): unknown => [
      [0, low],
      [1, high],
    ]
    expect(waysOf(found)).toEqual([by([], [3, 4]), [], [], by([0], [4]), by([0, 3], []), []])
  })

  it('count places in two bays that share air, where the two overlap', () => {
    const load = cellBay('load', [3, 1, 1], ['z+'])
    const seat = cellBay('seat', [3, 1, 1], ['z+'], { originCells: [1, 0, 0] })
    const lie = [
      [spot(0, [0, 0, 0]), away('bed')],
      [spot(0, [1, 0, 0]), away('bed')],
      [away('bed'), spot(1, [0, 0, 0])],
      [away('bed'), spot(1, [2, 0, 0])],
    ] as const
    const task = taskOf([load, seat], lie)
    const found = conflictsOf(task)
    expect(waysOf(found)).toEqual([[[0, []]], [], [[0, [5]]], [], [], [[0, [2]]], [], [[0, []]]])
    expect(wouldBar(task, found, spot(0, [1, 0, 0]), spot(1, [0, 0, 0]))).toBe(true)
    expect(wouldBar(task, found, spot(0, [1, 0, 0]), spot(1, [1, 0, 0]))).toBe(false)
    const apart = { ...task, shareAir: [[], []] }
    expect(waysOf(conflictsOf(apart))).toEqual([[[0, []]], [], [[0, []]], [], [], [[0, []]], [], [[0, []]]])
    expect(wouldBar(apart, conflictsOf(apart), spot(0, [1, 0, 0]), spot(1, [0, 0, 0]))).toBe(false)
  })

  it('say whether something put down would be in the way to a place', () => {
    const task = taskOf([tunnel, pit], [near, middle])
    const found = conflictsOf(task)
    const bars = (x: number, z = 0): boolean => wouldBar(task, found, middle[0], spot(0, [x, 0, z]))
    expect([bars(0), bars(1), bars(2)]).toEqual([true, true, false])
    expect([bars(0, 1), bars(1, 1), bars(2, 1)]).toEqual([false, true, false])
    expect(wouldBar(task, found, middle[0], spot(1, [0, 0, 0]))).toBe(false)
    expect(wouldBar(task, found, middle[0], away('outside'))).toBe(false)
    expect(wouldBar(task, found, away('bed'), spot(0, [0, 0, 0]))).toBe(false)
  })

  it('take a second word for the seventeenth thing', () => {
    const row = cellBay('row', [17, 1, 1], ['x-'])
    const movers = Array.from({ length: 17 }, (_, x) => [spot(0, [x, 0, 0]), away('bed')] as const)
    const found = conflictsOf(taskOf([row], movers))
    expect(found.words).toBe(2)
    expect(conflictsOf(taskOf([row], movers.slice(1))).words).toBe(1)
    expect(bitsIn(found.ways[32]?.[0]?.shut)).toEqual(Array.from({ length: 16 }, (_, x) => 2 * x))
  })

  it('are not worked out once the host wants an end', () => {
    const found = conflictsOf(taskOf([tunnel, pit], [near, middle, above], { hostStops: () => true }))
    expect(waysOf(found)).toEqual([[], [], [], [], [], []])
  })

  it('ask the host at each sixty-fourth place only, and keep what is worked out by then', () => {
    const row = cellBay('row', [40, 1, 1], ['x-'])
    const movers = Array.from({ length: 40 }, (_, x) => [spot(0, [x, 0, 0]), away('bed')] as const)
    let asked = 0
    const found = conflictsOf(taskOf([row], movers, { hostStops: () => ++asked > 1 }))
    expect(asked).toBe(2)
    expect(found.ways.map((ways) => ways.length)).toEqual(movers.flatMap((_, x) => (x < 32 ? [1, 0] : [0, 0])))
  })
})
