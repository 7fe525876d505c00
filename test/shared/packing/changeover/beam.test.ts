/** The quick search for moves: small changes whose list is written down by hand, and drawn ones against the known way back. */
import { describe, expect, it } from 'vitest'
import { beamSearch } from '../../../../shared/packing/changeover/beam.ts'
import { misplaced, sameSpot } from '../../../../shared/packing/changeover/moves.ts'
import type { ChangeoverTask, Spot, Step } from '../../../../shared/packing/changeover/moves.ts'
import { replay } from '../../../../shared/packing/changeover/shorten.ts'
import { drawnCase, drawnTask } from '../../../support/generators/move-case.ts'
import { away, cellBay, spot, taskOf } from '../../../support/generators/small-change.ts'
import { stirred } from '../../../support/generators/stirred-load.ts'
import { fewestMoves } from '../../../support/oracle/fewest-moves.ts'

/** Open at its near end: one thing bars the next. */
const tunnel = cellBay('tunnel', [4, 1, 2], ['x-'])
/** Open on top: only what lies on a thing bars it. */
const pit = cellBay('pit', [4, 1, 2], ['z+'], { originCells: [50, 0, 0] })
const bays = [tunnel, pit]
const deep = (x: number, z = 0): Spot => spot(0, [x, 0, z])
const free = (x: number, z = 0): Spot => spot(1, [x, 0, z])
const walk = (task: ChangeoverTask, widen = 1): readonly (readonly [number, Spot])[] =>
  beamSearch(task, widen).steps.map(({ mover, to }: Step) => [mover, to])

describe('a change of few things', () => {
  it('takes what is on top first and puts what is beneath down first', () => {
    const under = [free(0), deep(2)] as const
    const top = [free(0, 1), free(3)] as const
    expect(walk(taskOf(bays, [under, top]))).toEqual([
      [1, free(3)],
      [0, deep(2)],
    ])
    expect(
      walk(
        taskOf(
          bays,
          [
            [deep(0, 1), free(0, 1)],
            [deep(0), free(0)],
            [deep(1), deep(1)],
          ],
          { waitsFor: () => [free(3)] },
        ),
      ),
    ).toEqual([
      [0, free(3)],
      [1, free(0)],
      [0, free(0, 1)],
    ])
  })

  it('takes the nearest first out of a tunnel and sends the farthest in first', () => {
    expect(
      walk(
        taskOf(bays, [
          [deep(2), free(0)],
          [deep(1), free(1)],
          [deep(0), free(2)],
        ]),
      ),
    ).toEqual([
      [2, free(2)],
      [1, free(1)],
      [0, free(0)],
    ])
    expect(
      walk(
        taskOf(bays, [
          [free(0), deep(0)],
          [free(1), deep(1)],
          [free(2), deep(2)],
        ]),
      ),
    ).toEqual([
      [2, deep(2)],
      [1, deep(1)],
      [0, deep(0)],
    ])
  })

  it('waits for a place to be left', () => {
    expect(
      walk(
        taskOf(bays, [
          [free(0), free(1)],
          [free(1), free(2)],
          [free(2), free(3)],
        ]),
      ),
    ).toEqual([
      [2, free(3)],
      [1, free(2)],
      [0, free(1)],
    ])
  })

  it('moves what becomes part of the bed last, where nothing else decides', () => {
    const late = { late: true }
    const task = taskOf(bays, [
      [free(0), away('bed'), late],
      [free(1), away('outside')],
      [free(2), away('bed'), late],
      [free(3), away('outside')],
    ])
    expect(walk(task).map(([mover]) => mover)).toEqual([1, 3, 0, 2])
    const barring = taskOf(bays, [
      [deep(0), away('bed'), late],
      [deep(1), away('outside')],
    ])
    expect(walk(barring).map(([mover]) => mover)).toEqual([0, 1])
  })

  it('makes no move where all is in its place', () => {
    const found = beamSearch(
      taskOf(bays, [
        [free(0), free(0)],
        [away('bed'), away('bed')],
      ]),
      1,
    )
    expect(found).toEqual({ steps: [], final: [free(0), away('bed')], left: 0 })
  })

  it('lets one of two that trade places wait', () => {
    const trade = [
      [free(0), free(1)],
      [free(1), free(0)],
    ] as const
    const found = beamSearch(taskOf(bays, trade, { waitsFor: () => [free(3)] }), 1)
    expect(found.left).toBe(0)
    expect(found.final).toEqual([free(1), free(0)])
    expect(found.steps).toHaveLength(3)
    expect(found.steps[0]?.to).toEqual(free(3))
    expect(beamSearch(taskOf(bays, trade), 1)).toEqual({ steps: [], final: [free(0), free(1)], left: 2 })
  })

  it('takes out what is in its place and puts it back, where something must go in behind it', () => {
    const task = taskOf(
      bays,
      [
        [deep(0), deep(0)],
        [free(0), deep(1)],
      ],
      {
        waitsFor: (mover) => (mover === 0 ? [free(3)] : []),
      },
    )
    expect(walk(task)).toEqual([
      [0, free(3)],
      [1, deep(1)],
      [0, deep(0)],
    ])
  })

  it('digs through two to the third and puts both back', () => {
    const task = taskOf(
      bays,
      [
        [deep(0), deep(0)],
        [deep(1), deep(1)],
        [deep(2), free(0)],
      ],
      {
        waitsFor: (mover, spots) =>
          [free(2), free(3)].filter((place) => !spots.some((each, other) => other !== mover && sameSpot(each, place))),
      },
    )
    const found = beamSearch(task, 1)
    expect(found.left).toBe(0)
    expect(found.steps.map(({ mover }) => mover)).toEqual([0, 1, 2, 1, 0])
  })

  it.each([
    ['low', 1, [0]],
    ['high', 2, [3]],
  ] as const)('digs by the opening with least before the thing: the %s one', (_, x, aside) => {
    // Four in a row, all but one at home: one stands before it on this side, two on the other.
    const through = cellBay('through', [4, 1, 1], ['x-', 'x+'])
    const row = [0, 1, 2, 3].map((at) => spot(0, [at, 0, 0]))
    const task = taskOf(
      [through, pit],
      row.map((place, at) => [place, at === x ? free(0) : place] as const),
      {
        waitsFor: (mover, spots) =>
          [free(2), free(3)].filter((place) => !spots.some((each, other) => other !== mover && sameSpot(each, place))),
      },
    )
    expect(walk(task).map(([mover]) => mover)).toEqual([...aside, x, ...aside])
  })

  it('keeps clear of places that another still has to pass', () => {
    // The first could go straight to the tunnel's mouth, and would shut the second out.
    const task = taskOf(bays, [
      [free(0), deep(0)],
      [free(1), away('bed')],
      [free(2), deep(3)],
    ])
    expect(walk(task).map(([mover]) => mover)).toEqual([1, 2, 0])
  })

  it('does not put a waiting thing where it bars the one that is to be freed', () => {
    // Offered the tunnel's mouth first, the thing in the way goes to the pit.
    const task = taskOf(
      bays,
      [
        [deep(0, 0), deep(0, 0)],
        [deep(2), free(0)],
      ],
      {
        waitsFor: (mover) => (mover === 0 ? [deep(1), free(3)] : []),
      },
    )
    expect(walk(task)).toEqual([
      [0, free(3)],
      [1, free(0)],
      [0, deep(0)],
    ])
  })

  it('tells as left what cannot be brought over, and brings the rest', () => {
    // Nothing may wait, so the two that stand before the third's place stay, and the fourth goes.
    const found = beamSearch(
      taskOf(bays, [
        [deep(0), deep(0)],
        [free(0), deep(1)],
        [free(2), away('bed')],
      ]),
      1,
    )
    expect(found.left).toBe(1)
    expect(found.steps.map(({ mover, to }) => [mover, to])).toEqual([[2, away('bed')]])
    expect(found.final).toEqual([deep(0), free(0), away('bed')])
  })

  it('brings over what takes waiting, though another thing stays stuck', () => {
    const task = taskOf(
      bays,
      [
        [free(0), free(1)],
        [free(1), free(0)],
        [deep(0), deep(0)],
        [free(3), deep(1)],
      ],
      { waitsFor: (mover) => (mover < 2 ? [free(2)] : []) },
    )
    const found = beamSearch(task, 1)
    expect(found.left).toBe(1)
    expect(found.final).toEqual([free(1), free(0), deep(0), free(3)])
    expect(found.steps).toHaveLength(3)
  })

  it('names the opening each move uses', () => {
    const through = cellBay('through', [3, 1, 1], ['x-', 'x+'])
    // The middle one stays: the near end's leaves by the low opening, the far end's by the high one, and so comes in what takes its place.
    const task = taskOf(
      [through, pit],
      [
        [spot(0, [1, 0, 0]), spot(0, [1, 0, 0])],
        [spot(0, [0, 0, 0]), free(0)],
        [spot(0, [2, 0, 0]), away('bed')],
        [away('bed'), spot(0, [2, 0, 0])],
      ],
    )
    const found = beamSearch(task, 1)
    expect(found.left).toBe(0)
    expect(new Map(found.steps.map(({ mover, window }) => [mover, window]))).toEqual(
      new Map([
        [1, 0],
        [2, 1],
        [3, 1],
      ]),
    )
  })

  it('goes home at once where that frees the way of another, the host wanting an end or not', () => {
    const task = taskOf(
      bays,
      [
        [deep(1), free(1)],
        [deep(0), free(0)],
      ],
      { shouldStop: () => true },
    )
    expect(walk(task)).toEqual([
      [1, free(0)],
      [0, free(1)],
    ])
    // One of two openings is enough.
    const through = cellBay('through', [3, 1, 1], ['x-', 'x+'])
    const oneSide = taskOf(
      [through, pit],
      [
        [spot(0, [0, 0, 0]), spot(0, [0, 0, 0])],
        [spot(0, [1, 0, 0]), free(0)],
      ],
      { shouldStop: () => true },
    )
    expect(walk(oneSide)).toEqual([[1, free(0)]])
    const trade = taskOf(
      bays,
      [
        [free(0), free(1)],
        [free(1), free(0)],
      ],
      { waitsFor: () => [free(3)], shouldStop: () => true },
    )
    expect(beamSearch(trade, 1)).toEqual({ steps: [], final: [free(0), free(1)], left: 2 })
  })
})

/** The list is legal from the start, names each opening rightly, and ends in what is told. */
const checkWalk = (label: string, task: ChangeoverTask): { readonly left: number; readonly moves: number } => {
  const { steps, final, left } = beamSearch(task, 1)
  expect([label, replay(task, steps)]).toEqual([label, steps])
  const end = task.movers.map(({ source }) => source)
  for (const { mover, to } of steps) end[mover] = to
  expect([label, final]).toEqual([label, end])
  expect([label, left]).toEqual([label, misplaced(task, end).length])
  return { left, moves: steps.length }
}

describe('drawn changes', () => {
  it('are found legally where there is a way and nowhere else, but for one in thirty, and in hardly more moves than there must be', () => {
    let solved = 0
    let missed = 0
    let extra = 0
    for (let seed = 1; solved < 30; seed++) {
      const one = drawnCase(seed)
      const fewest = fewestMoves(one)
      const { left, moves } = checkWalk(`drawn ${seed}`, drawnTask(one))
      if (fewest === null) {
        expect([seed, left > 0]).toEqual([seed, true])
        continue
      }
      solved++
      if (left > 0) missed++
      else {
        expect([seed, moves >= fewest]).toEqual([seed, true])
        extra += moves - fewest
      }
    }
    expect(missed).toBeLessThanOrEqual(solved / 30)
    expect(extra).toBeLessThanOrEqual(solved / 10)
  })

  it('of ten things stirred by twelve moves are undone in no more, and in nearly as few as things are misplaced', () => {
    const LOADS = 30
    let missed = 0
    let misplacedThings = 0
    let moves = 0
    for (let seed = 1; seed <= LOADS; seed++) {
      const { task, moves: made } = stirred(seed, 10, 12)
      const found = checkWalk(`stirred ${seed}`, task)
      if (found.left > 0) {
        missed++
        continue
      }
      expect([seed, found.moves <= made]).toEqual([seed, true])
      moves += found.moves
      misplacedThings += misplaced(
        task,
        task.movers.map(({ source }) => source),
      ).length
    }
    expect(missed).toBeLessThanOrEqual(LOADS / 20)
    expect(moves).toBeLessThanOrEqual(1.1 * misplacedThings)
    expect(misplacedThings).toBeGreaterThan(4 * LOADS)
  })
})
