/** Random and planted loads, each packing judged by the oracle. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { packLoad } from '../../shared/packing/index.ts'
import { plantedLoad } from '../support/generators/planted-load.ts'
import { packingFaults } from '../support/oracle/packing.ts'

const RUNS = process.env['KIPSTOW_DEEP'] === undefined ? 150 : 2000
const SEED = 20261125

describe('a load cut from a legal layout', () => {
  it(`is packed whole and without a fault (${RUNS} loads, seed ${SEED})`, () => {
    let pieces = 0
    fc.assert(
      fc.property(plantedLoad, (input) => {
        pieces += input.pieces.length
        const outcome = packLoad(input, { seed: 1, iterations: 100 })
        expect(packingFaults(input, outcome)).toEqual([])
        expect(outcome.driveUnplaced).toEqual([])
      }),
      { numRuns: RUNS, seed: SEED, endOnFailure: true },
    )
    expect(pieces).toBeGreaterThan(RUNS)
  })
})
