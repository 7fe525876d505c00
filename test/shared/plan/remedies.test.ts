/**
 * Remedies: whenever one small change mends a planted shortfall (an exhaustive search by hand says so), one is offered; and
 * every remedy that is offered works when it is taken and the trip planned again.
 */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import type { Plan, Remedy } from '../../../shared/plan/index.ts'
import {
  planted,
  PLANTED,
  PLANTED_CODE,
  plantedShortfall,
  smallTrip,
} from '../../support/generators/planted-shortfall.ts'
import { runsOf, TIME_LIMIT_MS } from '../../support/generators/runs.ts'
import { everyNeighbour } from '../../support/oracle/remedies.ts'
import { codes, sample, withNight } from './trips.ts'

const SAMPLES = [sample('bats-by-the-quarry'), sample('ridge-run-with-a-dog')]
const BUDGET = { seed: 1, iterations: 0 }

const planOf = (trip: Trip): Plan => derivePlan(trip, { ...BUDGET, remedies: true })
const again = (trip: Trip, previous: Plan): Plan => derivePlan(trip, { ...BUDGET, remedies: false, previous })
const shortIds = (plan: Plan): readonly string[] =>
  plan.findings.filter(({ severity }) => severity === 'shortfall').map(({ id }) => id)

/** The shortfall is gone and none has come. */
const mended = (before: Plan, after: Plan, id: string): boolean =>
  !shortIds(after).includes(id) && shortIds(after).every((one) => shortIds(before).includes(one))

const taken = (trip: Trip, { change }: Remedy): Trip => {
  const edited = applyEdit(trip, { kind: 'take-remedy', change })
  if (!edited.ok) throw new Error(edited.problem.code)
  return edited.value
}

describe.each(PLANTED)('a planted shortfall: %s', (kind) => {
  it(
    'is mended by an offered remedy whenever one exists, and every remedy works',
    () => {
      let shortfalls = 0
      let mendable = 0
      fc.assert(
        fc.property(plantedShortfall(SAMPLES, kind), (trip) => {
          const plan = planOf(trip)
          const shortfall = plan.findings.filter(
            ({ severity, problem }) => severity === 'shortfall' && PLANTED_CODE[kind].test(problem.code),
          )
          for (const { id, nightId, problem } of shortfall) {
            shortfalls += 1
            const offered = plan.remedies.some(({ mends }) => mends.includes(id))
            if (offered) {
              mendable += 1
              continue
            }
            const missed = everyNeighbour(trip, problem.code, nightId).find(({ trip: next }) =>
              mended(plan, again(next, plan), id),
            )
            expect(missed?.name, id).toBeUndefined()
          }
          for (const remedy of plan.remedies) {
            const after = again(taken(trip, remedy), plan)
            for (const id of remedy.mends) expect(mended(plan, after, id), `${remedy.id} ${id}`).toBe(true)
          }
        }),
        // One easy plant in each sample; 200 random trips of each kind in the deep run.
        { ...runsOf(2, 200), examples: SAMPLES.map((trip) => [planted(trip, kind, { hard01: 0.05, pick: 1 })]) },
      )
      expect(shortfalls).toBeGreaterThan(0)
      expect(mendable).toBeGreaterThan(0)
    },
    TIME_LIMIT_MS,
  )
})

describe('remedies', () => {
  const bats = sample('bats-by-the-quarry')
  const heavy = planOf(planted(bats, 'payload', { hard01: 0.05, pick: 1 })).remedies
  const cold = planOf(planted(bats, 'cold', { hard01: 0.05, pick: 1 })).remedies

  it('stand in order: those that mend most first, then by what they cost', () => {
    expect(heavy.length).toBeGreaterThan(1)
    const order = heavy.toSorted((a, b) => b.mends.length - a.mends.length || a.score - b.score)
    expect(heavy.map(({ id }) => id)).toEqual(order.map(({ id }) => id))
  })

  it('tell their cost: bedding in litres, heat in charge or money, and never both less than nothing', () => {
    for (const { change, cost, score } of [...heavy, ...cold]) {
      if (change.kind === 'bring-bedding') expect(cost.litres).toBeGreaterThanOrEqual(0)
      if (change.kind === 'set-point' && change.byK > 0) expect(cost.charge01 + cost.money).toBeGreaterThanOrEqual(0)
      expect(score).toBeGreaterThanOrEqual(0)
      expect(Object.values(cost).every(Number.isFinite)).toBe(true)
    }
  })

  it('are taken together where no single one does: what adds up', () => {
    const ridge = planted(sample('ridge-run-with-a-dog'), 'cold', { hard01: 1, pick: 1 })
    const { remedies } = planOf(ridge)
    expect(remedies.map(({ change }) => change.kind)).toEqual(['together'])
    const [remedy] = remedies
    if (remedy?.change.kind !== 'together') throw new Error('no remedy')
    expect(remedy.change.changes.length).toBeGreaterThan(1)
    // None of its parts is enough by itself.
    for (const change of remedy.change.changes) {
      const part = taken(ridge, { ...remedy, change })
      expect(codes(again(part, planOf(ridge)), 'shortfall').some((code) => code.startsWith('too-cold'))).toBe(true)
    }
  })

  it('are taken together where one brings what the other mends: a warmer bed, and something left at home for its mass', () => {
    const cold = planted(sample('ridge-run-with-a-dog'), 'cold', { hard01: 1, pick: 1 })
    const inUse = cold.nights.flatMap(({ beddingPieceIds }) => beddingPieceIds)
    const pieces = cold.kit.pieces.map((piece) => ({
      ...piece,
      spare: piece.bedding !== undefined && !inUse.includes(piece.id),
    }))
    const ridge: Trip = { ...cold, kit: { ...cold.kit, pieces } }
    const { masses } = ridge.vehicle
    const { payloadG, loadG } = planOf(ridge).packing.mass
    const permittedG = masses.permittedG - (payloadG - loadG)
    const full: Trip = { ...ridge, vehicle: { ...ridge.vehicle, masses: { ...masses, permittedG } } }
    const plan = planOf(full)
    expect(codes(plan, 'shortfall')).toEqual(codes(planOf(ridge), 'shortfall'))
    const changes = plan.remedies.flatMap(({ change }) => (change.kind === 'together' ? change.changes : []))
    expect(changes.map(({ kind }) => kind)).toContain('leave-behind')
    expect(changes.map(({ kind }) => kind)).toContain('bring-bedding')
    for (const remedy of plan.remedies) expect(codes(again(taken(full, remedy), plan), 'shortfall')).toEqual([])
  })

  it('put the clock right: arriving before the gate shuts, leaving by check-out', () => {
    const [night] = bats.nights
    if (night === undefined) throw new Error('the sample has a night')
    const trip = withNight(smallTrip(bats, 1), 0, (one) => {
      const { target: _none, ...rest } = one
      return { ...rest, gateClosed: { from: '15:00', to: '23:00' }, checkOutBy: '06:00' }
    })
    const plan = planOf(trip)
    expect(codes(plan, 'shortfall')).toContain('arrive-after-gate')
    expect(codes(plan, 'shortfall')).toContain('leave-after-check-out')
    for (const kind of ['arrive-earlier', 'leave-earlier']) {
      const remedy = plan.remedies.find(({ change }) => change.kind === kind)
      expect(remedy?.cost.minutes, kind).toBeGreaterThan(0)
      if (remedy === undefined) continue
      const after = again(taken(trip, remedy), plan)
      for (const id of remedy.mends) expect(mended(plan, after, id)).toBe(true)
    }
  })

  it('show beforehand what else changes', () => {
    const [first] = cold
    expect(first?.preview.map(({ code }) => code)).toContain('shortfall-gone')
  })

  it('win charge on the night before, where a later leg is too long and the charge carries over', () => {
    const [first, second] = bats.nights
    if (first === undefined || second === undefined) throw new Error('the sample has two nights')
    const { arriveCharge01: _said, hookup: _none, ...bare } = second
    const base = smallTrip(bats, 1)
    const usableWh = base.vehicle.battery?.usableWh ?? 0
    const low: Trip = {
      ...base,
      nights: [
        { ...first, arriveCharge01: 0.4, heating: { ...first.heating, chargeLimit01: 0.55 } },
        { ...bare, leg: { distanceM: 60_000, whPerKm: 150, fastChargers: [] } },
      ],
    }
    const shortBy = (whPerKm: number): Trip =>
      withNight(low, 1, (night) => (night.leg === undefined ? night : { ...night, leg: { ...night.leg, whPerKm } }))
    const margin = derivePlan(low, { ...BUDGET, remedies: false }).nights[1]?.outcome.leg?.marginWh ?? 0
    const trip = shortBy(Math.round(150 + (margin + 0.03 * usableWh) / 60))
    const plan = planOf(trip)
    expect(codes(plan, 'shortfall')).toContain('leg-too-long')
    const earlier = plan.remedies.filter(({ change }) => 'nightId' in change && change.nightId === first.id)
    expect(earlier.map(({ change }) => change.kind)).toContain('charge-limit')
  })
})
