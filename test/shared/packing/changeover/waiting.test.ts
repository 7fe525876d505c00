/** Where a thing waits while there is no floor to spare. */
import { describe, expect, it } from 'vitest'
import { changeoversBetween } from '../../../../shared/packing/changeover/between.ts'
import { packModelOf } from '../../../../shared/packing/scene.ts'
import type { PackNight, Placement } from '../../../../shared/packing/index.ts'
import { plainInput, plainNight, plainPiece } from '../../../support/generators/planted-load.ts'
import { cellBay } from '../../../support/generators/small-change.ts'

const night: PackNight = plainNight('night')
const at = (unitId: string, bayId: string, x: number, z = 0): Placement => ({
  unitId,
  bayId,
  atMm: [100 * x, 0, 100 * z],
  sizeMm: [100, 100, 100],
  edges: [0, 1, 2],
})

describe('a thing that has to wait where no floor is to spare', () => {
  it('goes on another or where something belongs, and is not held to be waiting where it stands', () => {
    // d lies under a, a waits for b's place, b for d's; beside them is only the one cell where d belongs.
    const pit = cellBay('pit', [2, 1, 2], ['z+'])
    const spare = cellBay('spare', [1, 1, 1], ['z+'], { originCells: [20, 0, 0] })
    const { there, back } = changeoversBetween({
      model: packModelOf(
        plainInput(
          [pit, spare],
          ['a', 'b', 'd'].map((id) => plainPiece(id, [100, 100, 100], { uprightEdges: [2] })),
          { nights: [night] },
        ),
      ),
      from: { placements: [at('d', 'pit', 0), at('a', 'pit', 0, 1), at('b', 'pit', 1)], away: [] },
      to: { placements: [at('d', 'spare', 0), at('a', 'pit', 1), at('b', 'pit', 0)], away: [] },
      night,
      massG: () => 1000,
      shouldStop: () => false,
    })
    // One way: b to the cell, a to its place, d on a, b to its place, d to the cell. Each of the three waits for another, so three moves are too few.
    for (const way of [there, back]) {
      expect(way.stuckUnitIds).toEqual([])
      expect(way.moves.length).toBeLessThanOrEqual(5)
      expect(way.moves.length).toBeGreaterThan(3)
    }
  })
})
