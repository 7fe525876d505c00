/** Random trips, from document to plan, each layout, changeover and night judged by the oracle. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../shared/plan/index.ts'
import { arbitraryTrip } from '../support/generators/arbitrary-trip.ts'
import { sampleVariant } from '../support/generators/sample-variant.ts'
import { nightFaults } from '../support/oracle/night.ts'
import { packingFaults } from '../support/oracle/packing.ts'

const RUNS = process.env['KIPSTOW_DEEP'] === undefined ? 500 : 5000
const SEED = 20261125
/** Wild trips find what nobody thought of; one in ten is a sample changed, since wild vehicles hardly hold a thing. */
const anyTrip = fc.oneof({ weight: 9, arbitrary: arbitraryTrip() }, { weight: 1, arbitrary: sampleVariant })

describe('the plan of any valid trip', () => {
  it(`loses nothing, overlaps nothing and balances its energy (${RUNS} trips, seed ${SEED})`, () => {
    let placed = 0
    fc.assert(
      fc.property(anyTrip, (trip) => {
        const plan = derivePlan(trip, { seed: 1, iterations: 5, remedies: false })
        expect(packingFaults(plan.packingInput, plan.packing)).toEqual([])
        for (const night of plan.nights) expect(nightFaults(night.input, night.outcome)).toEqual([])
        placed += plan.packing.drive.placements.length
      }),
      { numRuns: RUNS, seed: SEED, endOnFailure: true },
    )
    expect(placed).toBeGreaterThan(RUNS)
  })
})
