/** Planning again: what a change does not touch is taken from the plan before. */
import { describe, expect, it } from 'vitest'
import type { Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { sameLoad } from '../../../shared/plan/same-load.ts'
import { sample, withNight } from './trips.ts'

const trip = sample('bats-by-the-quarry')
const ROUNDS = 4
const plan = derivePlan(trip, { seed: 1, iterations: ROUNDS, remedies: false })
const bare = derivePlan(trip, { seed: 1, iterations: 0, remedies: false })

const colderBy = (byK: number): Trip =>
  withNight(trip, 0, (night) => ({
    ...night,
    weather: { ...night.weather, coldMarginK: night.weather.coldMarginK + byK },
  }))

const again = (changed: Trip, previous: Plan, iterations = ROUNDS): Plan =>
  derivePlan(changed, { seed: 1, iterations, remedies: false, previous })

describe('a change to one number', () => {
  it('keeps the load where the night forbids no more than before, and reckons the night anew', () => {
    const next = again(colderBy(0.2), plan)
    expect(next.packing).toBe(plan.packing)
    expect(next.nights[0]?.outcome).not.toBe(plan.nights[0]?.outcome)
    expect(next.nights[0]?.outcome.heatingWh ?? 0).toBeGreaterThan(plan.nights[0]?.outcome.heatingWh ?? 0)
  })

  it('packs anew where a bay comes under the limit of something that freezes', () => {
    const limitC = Math.max(...plan.packingInput.pieces.flatMap(({ traits }) => traits.freezesBelowC ?? []))
    const night = plan.packingInput.nights[0]
    const [bayId] = Object.entries(night?.lowTempC ?? {}).find(([, tempC]) => tempC >= limitC) ?? []
    if (night === undefined || bayId === undefined) throw new Error('the sample has no bay above the limit')
    const inputAt = (tempC: number) => ({
      ...plan.packingInput,
      nights: [{ ...night, lowTempC: { ...night.lowTempC, [bayId]: tempC } }, ...plan.packingInput.nights.slice(1)],
    })
    expect(sameLoad(inputAt(limitC + 0.3), inputAt(limitC))).toBe(true)
    expect(sameLoad(inputAt(limitC), inputAt(limitC - 0.1))).toBe(false)
  })

  it('keeps the night where only the load changes', () => {
    const heavier: Trip = {
      ...trip,
      kit: {
        ...trip.kit,
        pieces: trip.kit.pieces.map((piece) =>
          piece.bedding === undefined ? { ...piece, access: ['seldom', 'evening'] } : piece,
        ),
      },
    }
    const next = again(heavier, plan)
    expect(next.packing).not.toBe(plan.packing)
    next.nights.forEach((night, index) => {
      expect(night.outcome).toBe(plan.nights[index]?.outcome)
    })
  })
})

describe('the search', () => {
  it('goes on from the last load when more rounds are asked for, and stops asking once they were spent', () => {
    const quick = again(trip, plan, 0)
    expect(quick.packing).toBe(plan.packing)
    const longer = again(trip, bare, 3)
    expect(longer.packing).not.toBe(bare.packing)
    expect(longer.packing.iterations).toBeGreaterThan(0)
    expect(again(trip, longer, 3).packing).toBe(longer.packing)
  })

  it('leaves most units where they were when it goes on', () => {
    const spot = ({ packing }: Plan): ReadonlyMap<string, string> =>
      new Map(packing.drive.placements.map(({ unitId, bayId }) => [unitId, bayId]))
    const [before, after] = [spot(bare), spot(again(trip, bare, 3))]
    const stayed = [...before].filter(([unitId, bayId]) => after.get(unitId) === bayId).length
    expect(stayed / before.size).toBeGreaterThan(0.5)
  })
})

describe('with the load kept', () => {
  it('reckons nights, checklist and verdict anew while the load stands as it was', () => {
    const cold = colderBy(14)
    const kept = derivePlan(cold, { seed: 1, iterations: ROUNDS, remedies: false, previous: plan, keepLoad: true })
    expect(kept.packing).toBe(plan.packing)
    expect(kept.packingInput).toBe(plan.packingInput)
    expect(kept.nightVerdicts[0]?.depart01 ?? 1).toBeLessThan(plan.nightVerdicts[0]?.depart01 ?? 0)
    expect(kept.checklist.steps.length).toBeGreaterThan(0)
  })

  it('plans the load as usual where there is no plan before', () => {
    const first = derivePlan(trip, { seed: 1, iterations: ROUNDS, remedies: false, keepLoad: true })
    expect(first.packing).toEqual(plan.packing)
  })

  it('is no dead end: the next whole plan asks the new question', () => {
    const cold = colderBy(14)
    const kept = derivePlan(cold, { seed: 1, iterations: ROUNDS, remedies: false, previous: plan, keepLoad: true })
    const whole = again(cold, kept)
    expect(whole.packingInput).not.toBe(plan.packingInput)
    expect(whole.packingInput.nights[0]?.lowTempC).not.toEqual(plan.packingInput.nights[0]?.lowTempC)
  })
})
