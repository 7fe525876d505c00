/** Free spaces of a bay against trying every box of whole cells, from nothing and after each thing put in. */
import { describe, expect, it } from 'vitest'
import type { BayModel } from '../../../shared/packing/bay-model.ts'
import { bayModelOf } from '../../../shared/packing/bay-model.ts'
import { overlaps } from '../../../shared/packing/geometry.ts'
import type { Box } from '../../../shared/packing/geometry.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { spacesAfter, spacesOf } from '../../../shared/packing/spaces.ts'
import { plainBay } from '../../support/generators/planted-load.ts'
import { spacesByCells } from '../../support/oracle/spaces.ts'
import type { CellBay } from '../../support/oracle/spaces.ts'

const CASES = 24
/** Two cells are just wide enough for a space, one is not. */
const CELL_MM = 10
const CELLS = [7, 6, 5] as const

const key = (box: Box): string => [box.x1, box.y1, box.z1, box.x2, box.y2, box.z2].join(' ')
const listed = (spaces: readonly Box[]): readonly string[] => spaces.map(key).toSorted()

const bayOf = (random: () => number): BayModel => {
  const pick = (count: number): number => Math.floor(random() * count)
  const obstacles = Array.from({ length: pick(3) }, (_, at) => ({
    label: `part ${at}`,
    atMm: [pick(5) * CELL_MM, pick(4) * CELL_MM, pick(4) * CELL_MM] as const,
    sizeMm: [(2 + pick(2)) * CELL_MM, (2 + pick(2)) * CELL_MM, (1 + pick(2)) * CELL_MM] as const,
  }))
  const [length, width, height] = CELLS
  const size = [length * CELL_MM, width * CELL_MM, height * CELL_MM] as const
  // Upright walls stand in for leaning ones: they too give no footing, and their edges lie on cells.
  const slopes = random() < 0.3 ? [{ face: 'y+' as const, insetFloorMm: CELL_MM, insetTopMm: CELL_MM }] : ([] as const)
  return bayModelOf(plainBay('bay', [0, 0, 0], size, { obstacles, slopes }), 0)
}

const cellBay = (bay: BayModel, placed: readonly Box[]): CellBay => ({
  cellMm: CELL_MM,
  cells: CELLS,
  things: [
    ...bay.solids.map(({ box, supports }) => ({ box, holds: supports })),
    ...placed.map((box) => ({ box, holds: true })),
  ],
})

/** A box of whole cells somewhere in a space, two cells across at least: the whole top of one thing is a space however narrow. */
const boxIn = (space: Box, random: () => number): Box => {
  const part = (low: number, high: number): readonly [number, number] => {
    const cells = (high - low) / CELL_MM
    const size = 2 + Math.floor(random() * Math.min(2, cells - 1))
    const at = Math.floor(random() * (cells - size + 1))
    return [low + at * CELL_MM, low + (at + size) * CELL_MM]
  }
  const [x1, x2] = part(space.x1, space.x2)
  const [y1, y2] = part(space.y1, space.y2)
  const high = space.z1 + CELL_MM * (1 + Math.floor(random() * Math.min(3, (space.z2 - space.z1) / CELL_MM)))
  return { x1, x2, y1, y2, z1: space.z1, z2: high }
}

describe('the free spaces of a bay', () => {
  it(`are all that stand on their whole base and cannot grow, in ${CASES} bays filled step by step`, () => {
    let steps = 0
    let below = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const random = randomFrom(seed)
      const bay = bayOf(random)
      const placed: Box[] = []
      let spaces = spacesOf(bay, placed)
      for (let step = 0; step < 6; step++) {
        const label = `seed ${seed}, step ${step}`
        const expected = listed(spacesByCells(cellBay(bay, placed)))
        expect([label, listed(spacesOf(bay, placed))]).toEqual([label, expected])
        expect([label, listed(spaces)]).toEqual([label, expected])
        const space = spaces[Math.floor(random() * spaces.length)]
        if (space === undefined) break
        if (space.z2 < bay.box.z2) below++
        const added = boxIn(space, random)
        placed.push(added)
        spaces = spacesAfter(bay, spaces, placed, added)
        steps++
      }
    }
    expect(steps).toBeGreaterThan(CASES * 4)
    expect(below).toBeGreaterThan(0)
  })

  it('reach under what hangs over them, and not where that is lower than two fingers', () => {
    const part = (z: number) => ({ label: 'shelf', atMm: [0, 0, z] as const, sizeMm: [40, 60, 10] as const })
    const under = (z: number): readonly string[] =>
      listed(spacesOf(bayModelOf(plainBay('bay', [0, 0, 0], [70, 60, 50], { obstacles: [part(z)] }), 0), []))
    // Beside the shelf 30 mm of floor up to the ceiling, the whole floor up to the shelf's underside, and the shelf's top.
    const beside = '40 0 0 70 60 50'
    expect(under(20)).toEqual(['0 0 0 70 60 20', '0 0 30 40 60 50', beside])
    expect(under(19)).toEqual(['0 0 29 40 60 50', beside])
  })

  it('never share room with what is in the bay', () => {
    const bay = bayModelOf(plainBay('bay', [0, 0, 0], [500, 400, 300]), 0)
    const random = randomFrom(7)
    const placed: Box[] = []
    let spaces = spacesOf(bay, placed)
    for (let step = 0; step < 25; step++) {
      const space = spaces[Math.floor(random() * spaces.length)]
      if (space === undefined) break
      const added = boxIn(space, random)
      placed.push(added)
      spaces = spacesAfter(bay, spaces, placed, added)
      expect(spaces.some((each) => placed.some((box) => overlaps(each, box)))).toBe(false)
    }
    expect(placed).toHaveLength(25)
  })
})
