/** Pieces that ride in a bin and are elsewhere at night are taken out when the bin stands free, and put back; the oracle plays it. */
import { describe, expect, it } from 'vitest'
import { packLoad } from '../../../shared/packing/index.ts'
import type { PackBin, PackingInput, PackingOutcome } from '../../../shared/packing/index.ts'
import { plainBay, plainBin, plainInput, plainPiece } from '../../support/generators/planted-load.ts'
import { packingFaults } from '../../support/oracle/packing.ts'

const bin: PackBin = plainBin('crate', [400, 300, 200], [390, 290, 190], { massG: 1000 })
const night = { lowTempC: {}, highTempC: {}, outsideStorage: false, foodBayIds: null }

/** The crate fills the bay's floor and a board that becomes the bed lies on it. */
const input: PackingInput = plainInput(
  [plainBay('boot', [0, 0, 0], [400, 300, 260], { usable: { drive: true, bed: true } })],
  [
    plainPiece('lamp', [100, 100, 100], { binId: 'crate' }),
    plainPiece('rope', [100, 100, 100], { binId: 'crate' }),
    plainPiece('board', [400, 300, 60], { uprightEdges: [2] }),
  ],
  {
    bins: [bin],
    nights: [
      { ...night, id: 'first', states: { lamp: 'in-use', board: 'bed' } },
      { ...night, id: 'second', states: { board: 'bed', rope: 'left-behind' } },
    ],
  },
)
const outcome = packLoad(input, { seed: 1, iterations: 20 })

describe('a piece that leaves its bin for the night', () => {
  it('is taken out once nothing lies on the bin, and put back before something does', () => {
    const [first, second] = outcome.nights
    expect(outcome.driveUnplaced).toEqual([])
    expect(first?.changeover.binMoves).toEqual([{ pieceId: 'lamp', binId: 'crate', state: 'in-use', afterMoves: 1 }])
    expect(first?.changeback.binMoves).toEqual([{ pieceId: 'lamp', binId: 'crate', state: 'in-use', afterMoves: 0 }])
    expect(second?.changeover.binMoves?.map(({ pieceId }) => pieceId)).toEqual(['rope'])
  })

  it('is checked by the oracle', () => {
    expect(packingFaults(input, outcome)).toEqual([])
    const silent: PackingOutcome = {
      ...outcome,
      nights: outcome.nights.map((one) => ({ ...one, changeover: { ...one.changeover, binMoves: [] } })),
    }
    const early: PackingOutcome = {
      ...outcome,
      nights: outcome.nights.map((one) => ({
        ...one,
        changeover: {
          ...one.changeover,
          binMoves: (one.changeover.binMoves ?? []).map((move) => ({ ...move, afterMoves: 0 })),
        },
      })),
    }
    expect(packingFaults(input, silent)).toHaveLength(2)
    expect(packingFaults(input, early)).toHaveLength(2)
  })
})
