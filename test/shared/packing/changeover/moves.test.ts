/** Single moves on bays of a few cells: what keeps a thing from leaving or from being put down, each case worked out by hand. */
import { describe, expect, it } from 'vitest'
import { enters, leaves, misplaced, sameSpot } from '../../../../shared/packing/changeover/moves.ts'
import type { Mover, Spot } from '../../../../shared/packing/changeover/moves.ts'
import { boxAt } from '../../../../shared/packing/geometry.ts'
import { away, cellBay, spot, startOf, taskOf } from '../../../support/generators/small-change.ts'

/** Three cells deep, one wide, two high, open at the near end. */
const tunnel = cellBay('tunnel', [3, 1, 2], ['x-'])
const pit = cellBay('pit', [3, 1, 2], ['z+'], { originCells: [50, 0, 0] })
const still = (place: Spot, change: Partial<Mover> = {}) => [place, place, change] as const

describe('a thing that is to leave', () => {
  const task = taskOf([tunnel], [still(spot(0, [0, 0, 0])), still(spot(0, [1, 0, 0])), still(spot(0, [1, 0, 1]))])

  it('is held by what stands before it and by what stands on it, not by what stands under or behind it', () => {
    expect(leaves(task, startOf(task), 0)).toBe(0)
    expect(leaves(task, startOf(task), 1)).toBe(-1)
    expect(leaves(task, startOf(task), 2)).toBe(0)
    const nothingBefore = [away('bed'), spot(0, [1, 0, 0]), spot(0, [1, 0, 1])]
    expect(leaves(task, nothingBefore, 1)).toBe(-1)
    const nothingOn = [spot(0, [0, 0, 0]), spot(0, [1, 0, 0]), away('bed')]
    expect(leaves(task, nothingOn, 1)).toBe(-1)
    const alone = [away('bed'), spot(0, [1, 0, 0]), away('bed')]
    expect(leaves(task, alone, 1)).toBe(0)
  })

  it('goes by the first opening that is free', () => {
    const through = cellBay('through', [3, 1, 1], ['x-', 'x+'])
    const row = taskOf([through], [still(spot(0, [0, 0, 0])), still(spot(0, [1, 0, 0])), still(spot(0, [2, 0, 0]))])
    expect([0, 1, 2].map((mover) => leaves(row, startOf(row), mover))).toEqual([0, -1, 1])
    const [, middle, last] = startOf(row)
    expect(middle && last && leaves(row, [away('bed'), middle, last], 1)).toBe(0)
    expect(leaves(row, [spot(0, [0, 0, 0]), spot(0, [1, 0, 0]), away('bed')], 1)).toBe(1)
  })

  it('may always leave where it is away, and never a bay that is not there', () => {
    expect(leaves(task, [away('bed'), away('outside'), away('bed')], 1)).toBe(0)
    expect(leaves(task, [spot(7, [0, 0, 0])], 0)).toBe(-1)
    expect(leaves(task, [], 0)).toBe(-1)
  })

  it('is not held by things in another bay', () => {
    const two = taskOf([tunnel, pit], [still(spot(0, [1, 0, 0])), still(spot(1, [0, 0, 0])), still(spot(1, [1, 0, 1]))])
    expect(leaves(two, startOf(two), 0)).toBe(0)
  })
})

describe('a thing that is to be put down', () => {
  const empty = taskOf([tunnel, pit], [[away('outside'), away('outside')]])
  const put = (place: Spot): number => enters(empty, [away('outside')], 0, place)

  it('may go anywhere away, and not into a bay that is not there', () => {
    expect(put(away('bed'))).toBe(0)
    expect(put(spot(2, [0, 0, 0]))).toBe(-1)
  })

  it('must lie inside the bay on every side', () => {
    expect(put(spot(0, [0, 0, 0], [3, 1, 2]))).toBe(0)
    for (const at of [
      [-1, 0, 0],
      [3, 0, 0],
      [0, -1, 0],
      [0, 1, 0],
      [0, 0, -1],
      [0, 0, 2],
    ] as const)
      expect([at, put(spot(0, at))]).toEqual([at, -1])
  })

  it('may touch others and solid parts but overlap none', () => {
    const walled = cellBay('walled', [3, 1, 1], ['z+'], {
      obstacles: [{ label: 'arch', atMm: [200, 0, 0], sizeMm: [100, 100, 50] }],
    })
    const task = taskOf([walled], [[away('outside'), away('outside')], still(spot(0, [0, 0, 0]))])
    const from = startOf(task)
    expect(enters(task, from, 0, spot(0, [1, 0, 0]))).toBe(0)
    expect(enters(task, from, 0, { kind: 'bay', bay: 0, box: boxAt([99, 0, 0], [100, 100, 100]) })).toBe(-1)
    expect(enters(task, from, 0, { kind: 'bay', bay: 0, box: boxAt([101, 0, 0], [100, 100, 100]) })).toBe(-1)
  })

  it('is not in its own way', () => {
    const task = taskOf([pit], [still(spot(0, [0, 0, 0], [2, 1, 1]))])
    expect(enters(task, startOf(task), 0, spot(0, [1, 0, 0], [2, 1, 1]))).toBe(0)
  })

  it('must be held under all of its base, by things and solid parts together', () => {
    const floor = cellBay('floor', [3, 1, 2], ['z+'], {
      obstacles: [{ label: 'step', atMm: [0, 0, 0], sizeMm: [100, 100, 100] }],
    })
    const task = taskOf([floor], [[away('outside'), away('outside')], still(spot(0, [1, 0, 0]))])
    const from = startOf(task)
    const on = (at: number, long: number): number => enters(task, from, 0, spot(0, [at, 0, 1], [long, 1, 1]))
    expect(on(0, 1)).toBe(0)
    expect(on(1, 1)).toBe(0)
    expect(on(0, 2)).toBe(0)
    expect(on(1, 2)).toBe(-1)
    expect(on(2, 1)).toBe(-1)
    expect(on(0, 3)).toBe(-1)
    const half = boxAt([0, 0, 50], [100, 100, 100])
    expect(enters(task, [away('outside'), away('outside')], 0, { kind: 'bay', bay: 0, box: half })).toBe(-1)
  })

  it('is not held by what stands as high in another bay, or by what is away', () => {
    const task = taskOf([tunnel, pit], [[away('outside'), away('outside')], still(spot(1, [0, 0, 0]))])
    expect(enters(task, startOf(task), 0, spot(1, [0, 0, 1]))).toBe(0)
    expect(enters(task, startOf(task), 0, spot(0, [0, 0, 1]))).toBe(-1)
    expect(enters(task, [away('outside'), away('bed')], 0, spot(1, [0, 0, 1]))).toBe(-1)
  })

  it('finds no footing on a leaning wall', () => {
    // 200 mm high in four steps of 50: the wall stands 100, 75, 50 and 25 mm into the bay; 25 mm of the second step's top are bare.
    const leaning = cellBay('leaning', [2, 1, 2], ['z+'], {
      slopes: [{ face: 'x+', insetFloorMm: 100, insetTopMm: 0 }],
    })
    const task = taskOf([leaning], [[away('outside'), away('outside')]])
    const place: Spot = { kind: 'bay', bay: 0, box: boxAt([125, 0, 100], [25, 100, 50]) }
    expect(enters(task, startOf(task), 0, place)).toBe(-1)
    const shelf = taskOf(
      [{ ...leaning, slopes: [], obstacles: [{ label: 'shelf', atMm: [100, 0, 0], sizeMm: [100, 100, 100] }] }],
      [[away('outside'), away('outside')]],
    )
    expect(enters(shelf, startOf(shelf), 0, place)).toBe(0)
  })

  it('does not wait on what bears less than it weighs; its own last place is judged with the layout', () => {
    const on = (bearsG: number, target: Spot): number => {
      const task = taskOf([pit], [[away('outside'), target], still(spot(0, [0, 0, 0]), { bearsG })])
      return enters(task, startOf(task), 0, spot(0, [0, 0, 1]))
    }
    expect(on(100, away('bed'))).toBe(0)
    expect(on(99, away('bed'))).toBe(-1)
    expect(on(99, spot(0, [0, 0, 1]))).toBe(0)
    expect(on(99, spot(0, [1, 0, 1]))).toBe(-1)
    // A frail thing of the same height that it only stands beside carries nothing.
    const beside = taskOf(
      [pit],
      [[away('outside'), away('bed')], still(spot(0, [0, 0, 0])), still(spot(0, [1, 0, 0]), { bearsG: 0 })],
    )
    expect(enters(beside, startOf(beside), 0, spot(0, [0, 0, 1]))).toBe(0)
  })

  it('needs a free way in, and goes under nothing', () => {
    const task = taskOf(
      [tunnel],
      [[away('outside'), away('outside')], still(spot(0, [0, 0, 0])), still(spot(0, [2, 0, 0]))],
    )
    expect(enters(task, startOf(task), 0, spot(0, [1, 0, 0]))).toBe(-1)
    expect(enters(task, startOf(task), 0, spot(0, [0, 0, 1]))).toBe(0)
    const bridge = taskOf(
      [cellBay('wide', [1, 3, 2], ['x-'])],
      [
        [away('outside'), away('outside')],
        still(spot(0, [0, 0, 0])),
        still(spot(0, [0, 2, 0])),
        still(spot(0, [0, 0, 1], [1, 3, 1])),
      ],
    )
    expect(enters(bridge, startOf(bridge), 0, spot(0, [0, 1, 0]))).toBe(-1)
    expect(enters(bridge, [...startOf(bridge).slice(0, 3), away('bed')], 0, spot(0, [0, 1, 0]))).toBe(0)
  })

  it('is told the opening it goes in by', () => {
    const through = cellBay('through', [3, 1, 1], ['x-', 'x+'])
    const task = taskOf([through], [[away('outside'), away('outside')], still(spot(0, [0, 0, 0]))])
    expect(enters(task, startOf(task), 0, spot(0, [1, 0, 0]))).toBe(1)
    expect(enters(task, [away('outside'), spot(0, [2, 0, 0])], 0, spot(0, [1, 0, 0]))).toBe(0)
  })
})

describe('bays that lie over one another', () => {
  // The seat bay begins one cell into the load bay: its first two cells are the load bay's second and third.
  const load = cellBay('load', [3, 1, 1], ['z+'])
  const seat = cellBay('seat', [3, 1, 1], ['z+'], { originCells: [1, 0, 0] })
  const far = cellBay('far', [3, 1, 1], ['z+'], { originCells: [9, 0, 0] })

  it('hold one thing in the same air, whichever bay it is in', () => {
    const task = taskOf([load, seat, far], [[away('outside'), away('outside')], still(spot(0, [1, 0, 0]))])
    const from = startOf(task)
    expect([0, 1, 2].map((x) => enters(task, from, 0, spot(1, [x, 0, 0])))).toEqual([-1, 0, 0])
    expect(enters(task, from, 0, spot(2, [0, 0, 0]))).toBe(0)
    const other = [away('outside'), spot(1, [1, 0, 0])]
    expect([0, 1, 2].map((x) => enters(task, other, 0, spot(0, [x, 0, 0])))).toEqual([0, 0, -1])
  })

  it('let a thing go from one to the other where only itself was in the way', () => {
    const task = taskOf([load, seat], [still(spot(0, [1, 0, 0]))])
    expect(enters(task, startOf(task), 0, spot(1, [0, 0, 0]))).toBe(0)
  })

  it('are two where one of them belongs to the site', () => {
    const site = cellBay('site', [3, 1, 1], ['z+'], { belongsTo: 'site' })
    const task = taskOf([load, site], [[away('outside'), away('outside')], still(spot(0, [1, 0, 0]))])
    expect(task.shareAir).toEqual([
      [false, false],
      [false, false],
    ])
    expect(enters(task, startOf(task), 0, spot(1, [1, 0, 0]))).toBe(0)
    const shared = taskOf([load, seat, far], [])
    expect(shared.shareAir).toEqual([
      [false, true, false],
      [true, false, false],
      [false, false, false],
    ])
  })
})

describe('places', () => {
  it('are the same with the same bay and box, or away under the same name', () => {
    const one = boxAt([1, 2, 3], [4, 5, 6])
    const here: Spot = { kind: 'bay', bay: 0, box: one }
    expect(sameSpot(here, { kind: 'bay', bay: 0, box: { ...one } })).toBe(true)
    expect(sameSpot(here, { kind: 'bay', bay: 1, box: one })).toBe(false)
    for (const edge of ['x1', 'y1', 'z1', 'x2', 'y2', 'z2'] as const)
      expect([edge, sameSpot(here, { kind: 'bay', bay: 0, box: { ...one, [edge]: 99 } })]).toEqual([edge, false])
    expect(sameSpot(away('bed'), away('bed'))).toBe(true)
    expect(sameSpot(away('bed'), away('outside'))).toBe(false)
    expect(sameSpot(away('bed'), here)).toBe(false)
    expect(sameSpot(here, away('bed'))).toBe(false)
  })

  it('that are not the last ones of their things are named', () => {
    const task = taskOf(
      [pit],
      [
        [spot(0, [0, 0, 0]), spot(0, [1, 0, 0])],
        [spot(0, [2, 0, 0]), spot(0, [2, 0, 0])],
        [away('bed'), away('outside')],
      ],
    )
    expect(misplaced(task, startOf(task))).toEqual([0, 2])
    expect(misplaced(task, [spot(0, [1, 0, 0]), spot(0, [0, 0, 0]), away('outside')])).toEqual([1])
  })
})
