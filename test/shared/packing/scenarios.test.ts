/** The two field loads, converted from test/fixtures/scenarios: each is known to be solvable. */
import { describe, expect, it } from 'vitest'
import { packLoad } from '../../../shared/packing/index.ts'
import { packingFaults } from '../../support/oracle/packing.ts'
import { scenarioLoad } from '../../support/scenario-load.ts'

describe.each(['scenario-a', 'scenario-b'] as const)('the load of %s', (name) => {
  const input = scenarioLoad(name)
  const outcome = packLoad(input, { seed: 1, iterations: 300 })

  it('is wholly placed by day and on both nights', () => {
    expect(outcome.driveUnplaced).toEqual([])
    expect(outcome.nights.map((night) => night.unplaced)).toEqual([[], []])
  })

  it('breaks no rule the oracle knows', () => {
    expect(packingFaults(input, outcome)).toEqual([])
  })

  it('passes no limit of payload, axles or roof', () => {
    expect(outcome.faults.filter((fault) => fault.rule !== 'reach')).toEqual([])
  })

  it('has everything wanted in the night at hand from the bed with nothing to move', () => {
    expect(outcome.faults.filter((fault) => fault.rule === 'reach')).toEqual([])
    for (const night of outcome.nights) {
      for (const piece of input.pieces.filter((each) => each.access.includes('night'))) {
        const reach = night.reach.find((each) => each.unitId === piece.id)
        if (reach === undefined) continue
        expect([piece.id, reach.blockedBy, reach.fromSeatOrBed]).toEqual([piece.id, [], true])
      }
    }
  })

  it('comes over to each bed layout and back with nothing stuck', () => {
    for (const night of outcome.nights) {
      expect(night.changeover.stuckUnitIds).toEqual([])
      expect(night.changeback.stuckUnitIds).toEqual([])
      expect(night.changeover.moves.length).toBeGreaterThanOrEqual(night.changeover.lowerBound)
    }
  })

  it('names each placed unit once in the loading order', () => {
    expect(outcome.loadingOrder.toSorted()).toEqual(outcome.drive.placements.map((each) => each.unitId).toSorted())
  })
})
