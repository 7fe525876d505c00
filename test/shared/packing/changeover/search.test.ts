/** The search for the fewest moves: what it says of lists found, and of those that cannot be. */
import { describe, expect, it } from 'vitest'
import { misplaced, sameSpot } from '../../../../shared/packing/changeover/moves.ts'
import type { ChangeoverTask, Spot } from '../../../../shared/packing/changeover/moves.ts'
import { searchBothWays, searchChangeover } from '../../../../shared/packing/changeover/search.ts'
import type { ChangeoverFound } from '../../../../shared/packing/changeover/search.ts'
import { replay } from '../../../../shared/packing/changeover/shorten.ts'
import { drawnCase, drawnTask } from '../../../support/generators/move-case.ts'
import { away, cellBay, spot, startOf, taskOf } from '../../../support/generators/small-change.ts'
import { stirred } from '../../../support/generators/stirred-load.ts'

const tunnel = cellBay('tunnel', [4, 1, 1], ['x-'])
const pit = cellBay('pit', [6, 1, 1], ['z+'], { originCells: [50, 0, 0] })
const bays = [tunnel, pit]
const deep = (x: number): Spot => spot(0, [x, 0, 0])
const free = (x: number): Spot => spot(1, [x, 0, 0])

/** Free places of the pit, for whoever must wait. */
const inPit = (...xs: readonly number[]): Pick<ChangeoverTask, 'waitsFor'> => ({
  waitsFor: (mover, spots) =>
    xs.map(free).filter((place) => !spots.some((each, other) => other !== mover && sameSpot(each, place))),
})

/** Told of a search: moves, whether complete, whether surely fewest, and how few there can be. */
const told = ({ steps, complete, optimal, lowerBound }: ChangeoverFound) => ({
  moves: steps.length,
  complete,
  optimal,
  lowerBound,
})

describe('the fewest moves', () => {
  it('are none where all is in its place', () => {
    const found = searchChangeover(taskOf(bays, [[free(0), free(0)]]))
    expect(told(found)).toEqual({ moves: 0, complete: true, optimal: true, lowerBound: 0 })
    expect(found.final).toEqual([free(0)])
  })

  it('are one for each thing misplaced, and surely so', () => {
    const task = taskOf(bays, [
      [free(0), free(1)],
      [free(1), free(2)],
      [free(3), away('bed')],
      [free(4), free(4)],
    ])
    expect(told(searchChangeover(task))).toEqual({ moves: 3, complete: true, optimal: true, lowerBound: 3 })
  })

  it('are one more for each circle of things that wait for one another, however many things are in it', () => {
    const circle = taskOf(
      bays,
      [
        [free(0), free(1)],
        [free(1), free(2)],
        [free(2), free(0)],
      ],
      inPit(5),
    )
    expect(told(searchChangeover(circle))).toEqual({ moves: 4, complete: true, optimal: true, lowerBound: 4 })
    const two = taskOf(
      bays,
      [
        [free(0), free(1)],
        [free(1), free(0)],
        [free(2), free(3)],
        [free(3), free(2)],
        [free(4), away('bed')],
      ],
      inPit(5),
    )
    expect(told(searchChangeover(two))).toEqual({ moves: 7, complete: true, optimal: true, lowerBound: 7 })
    // Overlapping by half is waiting too: a box of two cells and two of one trade the same two cells.
    const halves = taskOf(
      bays,
      [
        [spot(1, [0, 0, 0], [2, 1, 1]), spot(1, [2, 0, 0], [2, 1, 1])],
        [free(2), free(0)],
        [free(3), free(1)],
      ],
      { waitsFor: (mover) => (mover === 0 ? [spot(1, [4, 0, 0], [2, 1, 1])] : []) },
    )
    expect(told(searchChangeover(halves))).toEqual({ moves: 4, complete: true, optimal: true, lowerBound: 4 })
  })

  it('do not count a circle between places of the same numbers in two bays', () => {
    const task = taskOf(bays, [
      [deep(0), free(1)],
      [deep(1), free(0)],
    ])
    expect(told(searchChangeover(task))).toEqual({ moves: 2, complete: true, optimal: true, lowerBound: 2 })
  })

  it('are surely fewest only where every shorter list has been looked at', () => {
    // One has to be taken out of the tunnel's mouth and put back for another: three moves, though one thing is misplaced.
    const through = (nodeLimit: number): ChangeoverTask =>
      taskOf(
        bays,
        [
          [deep(0), deep(0)],
          [free(0), deep(1)],
        ],
        { ...inPit(4, 5), nodeLimit },
      )
    expect(told(searchChangeover(through(0)))).toEqual({ moves: 3, complete: true, optimal: false, lowerBound: 1 })
    expect(told(searchChangeover(through(1000)))).toEqual({ moves: 3, complete: true, optimal: true, lowerBound: 3 })
    const cut = searchChangeover(through(1))
    expect(told(cut)).toMatchObject({ moves: 3, complete: true, optimal: false })
    expect(cut.lowerBound).toBeLessThan(3)
    expect(cut.lowerBound).toBeGreaterThanOrEqual(1)
    const ended = searchChangeover({ ...through(1000), shouldStop: () => true })
    expect(ended.optimal).toBe(false)
  })

  it('are not told where there is no way at all', () => {
    const trade = taskOf(
      bays,
      [
        [free(0), free(1)],
        [free(1), free(0)],
        [free(3), away('bed')],
      ],
      { nodeLimit: 1000 },
    )
    const found = searchChangeover(trade)
    expect(found).toMatchObject({ complete: false, optimal: false })
    expect(found.steps.map(({ mover, to }) => [mover, to])).toEqual([[2, away('bed')]])
    expect(found.final).toEqual([free(0), free(1), away('bed')])
  })
})

describe('the way there and back', () => {
  const reversed = (task: ChangeoverTask): ChangeoverTask => ({
    ...task,
    movers: task.movers.map((mover) => ({ ...mover, source: mover.target, target: mover.source, late: false })),
  })
  const legal = (label: string, task: ChangeoverTask, found: ChangeoverFound): void => {
    const end = [...startOf(task)]
    for (const { mover, to } of found.steps) end[mover] = to
    expect([label, replay(task, found.steps)]).toEqual([label, found.steps])
    expect([label, found.final]).toEqual([label, end])
    expect([label, found.complete]).toEqual([label, misplaced(task, end).length === 0])
  }

  it('is the same list backwards, each move with the opening it then uses', () => {
    const late = { late: true }
    const task = taskOf(bays, [
      [deep(0), away('bed'), late],
      [deep(1), free(0)],
      [free(5), free(5)],
    ])
    const { there, back } = searchBothWays(task)
    expect(there.steps.map(({ mover, to }) => [mover, to])).toEqual([
      [0, away('bed')],
      [1, free(0)],
    ])
    expect(back.steps.map(({ mover, from, to }) => [mover, from, to])).toEqual([
      [1, free(0), deep(1)],
      [0, away('bed'), deep(0)],
    ])
    expect(there.final).toEqual([away('bed'), free(0), free(5)])
    expect(back.final).toEqual([deep(0), deep(1), free(5)])
    expect([told(there), told(back)]).toEqual([
      { moves: 2, complete: true, optimal: true, lowerBound: 2 },
      { moves: 2, complete: true, optimal: true, lowerBound: 2 },
    ])
  })

  it('puts back first what went last, where any order would do', () => {
    const task = taskOf(bays, [
      [free(0), free(3)],
      [free(1), free(4)],
      [free(2), away('outside')],
    ])
    const { there, back } = searchBothWays(task)
    expect(back.steps.map(({ mover }) => mover)).toEqual(there.steps.map(({ mover }) => mover).toReversed())
  })

  it('is as long there as back, and no longer than the quick search finds it from either end', () => {
    const tasks = [
      ...Array.from({ length: 24 }, (_, at) => ({ ...drawnTask(drawnCase(at + 1)), nodeLimit: 0 })),
      ...Array.from({ length: 6 }, (_, at) => ({ ...stirred(at + 1, 8, 12).task, thorough: false })),
    ]
    let helped = 0
    tasks.forEach((task, at) => {
      const label = `task ${at}`
      const other = reversed(task)
      const { there, back } = searchBothWays(task)
      legal(label, task, there)
      legal(label, other, back)
      const alone = [searchChangeover(task), searchChangeover(other)]
      const least = Math.min(...alone.map(({ complete, steps }) => (complete ? steps.length : Infinity)))
      const counted = ({ complete, steps }: ChangeoverFound): number => (complete ? steps.length : Infinity)
      expect([label, counted(there), counted(back)]).toEqual([label, least, least])
      if (alone.some((each) => counted(each) > least)) helped++
    })
    expect(helped).toBeGreaterThan(0)
  })
})
