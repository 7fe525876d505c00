/** Lists of moves played from the start, and needless stops struck from them. */
import { describe, expect, it } from 'vitest'
import { replay, shortened } from '../../../../shared/packing/changeover/shorten.ts'
import type { Spot, Step } from '../../../../shared/packing/changeover/moves.ts'
import { away, cellBay, spot, taskOf } from '../../../support/generators/small-change.ts'

/** Open on top: anything may go anywhere free. */
const pit = cellBay('pit', [4, 1, 2], ['z+'])
/** Open at its near end: one thing bars the next. */
const tunnel = cellBay('tunnel', [3, 1, 1], ['x-'], { originCells: [50, 0, 0] })
const at = (x: number): Spot => spot(0, [x, 0, 0])
const deep = (x: number): Spot => spot(1, [x, 0, 0])
const step = (mover: number, from: Spot, to: Spot, window = 0): Step => ({ mover, from, to, window })

describe('a list of moves played from the start', () => {
  it('is given back with the opening each move uses: the one it leaves by, or from away the one it comes in by', () => {
    const through = cellBay('through', [3, 1, 1], ['x-', 'x+'], { originCells: [80, 0, 0] })
    const there = (x: number): Spot => spot(1, [x, 0, 0])
    const task = taskOf(
      [pit, through],
      [
        [there(0), there(0)],
        [there(2), at(0)],
        [away('bed'), there(1)],
      ],
    )
    const steps = [step(1, there(2), at(0), 9), step(2, away('bed'), there(1), 9)]
    expect(replay(task, steps)).toEqual([step(1, there(2), at(0), 1), step(2, away('bed'), there(1), 1)])
    expect(replay(task, [])).toEqual([])
  })

  it('is refused where a move starts elsewhere, cannot leave or cannot land', () => {
    const task = taskOf(
      [pit, tunnel],
      [
        [deep(0), at(0)],
        [deep(1), at(1)],
      ],
    )
    const first = step(0, deep(0), at(0))
    expect(replay(task, [first, step(1, deep(1), at(1))])).toHaveLength(2)
    expect(replay(task, [step(1, deep(1), at(1))])).toBe(null)
    expect(replay(task, [first, step(1, deep(1), at(0))])).toBe(null)
    expect(replay(task, [first, step(1, deep(2), at(1))])).toBe(null)
    expect(replay(task, [first, step(0, deep(0), at(1))])).toBe(null)
    expect(replay(task, [step(7, deep(0), at(0))])).toBe(null)
  })
})

describe('a list of moves with a stop too many', () => {
  it('goes straight where that is legal', () => {
    const task = taskOf([pit], [[at(0), at(2)]])
    expect(shortened(task, [step(0, at(0), at(1)), step(0, at(1), at(2))])).toEqual([step(0, at(0), at(2))])
  })

  it('loses a round trip', () => {
    const task = taskOf(
      [pit],
      [
        [at(0), at(0)],
        [at(2), at(3)],
      ],
    )
    const trip = [step(0, at(0), at(1)), step(1, at(2), at(3)), step(0, at(1), at(0))]
    expect(shortened(task, trip)).toEqual([step(1, at(2), at(3))])
  })

  it('goes straight at the later time where its last place is taken till then', () => {
    const task = taskOf(
      [pit],
      [
        [at(0), at(1)],
        [at(1), at(3)],
      ],
    )
    const list = [step(0, at(0), at(2)), step(1, at(1), at(3)), step(0, at(2), at(1))]
    expect(shortened(task, list)).toEqual([step(1, at(1), at(3)), step(0, at(0), at(1))])
  })

  it('goes straight at the earlier time where something is wanted in its first place meanwhile', () => {
    const task = taskOf(
      [pit],
      [
        [at(0), at(1)],
        [at(3), at(0)],
      ],
    )
    const list = [step(0, at(0), at(2)), step(1, at(3), at(0)), step(0, at(2), at(1))]
    expect(shortened(task, list)).toEqual([step(0, at(0), at(1)), step(1, at(3), at(0))])
  })

  it('keeps the stop that two things trading places need', () => {
    const task = taskOf(
      [pit],
      [
        [at(0), at(1)],
        [at(1), at(0)],
      ],
    )
    const list = [step(0, at(0), at(2)), step(1, at(1), at(0)), step(0, at(2), at(1))]
    expect(shortened(task, list)).toEqual(list)
  })

  it('loses one stop after another, also those that come free only when a later one is struck', () => {
    // The second's stop in the first's last place keeps the first waiting; struck, the first need not wait either.
    const task = taskOf(
      [pit],
      [
        [at(0), at(1)],
        [away('bed'), at(3)],
      ],
    )
    const list = [step(1, away('bed'), at(1)), step(0, at(0), at(2)), step(1, at(1), at(3)), step(0, at(2), at(1))]
    expect(shortened(task, list)).toHaveLength(2)
    const long = [
      step(0, at(0), at(2)),
      step(0, at(2), at(3)),
      step(0, at(3), away('outside')),
      step(0, away('outside'), at(1)),
    ]
    expect(shortened(task, long)).toEqual([step(0, at(0), at(1))])
  })

  it('is left as it is once the host wants an end', () => {
    const list = [step(0, at(0), at(1)), step(0, at(1), at(2))]
    expect(shortened(taskOf([pit], [[at(0), at(2)]], { shouldStop: () => true }), list)).toEqual(list)
  })
})
