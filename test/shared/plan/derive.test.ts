/** The plan of a small trip: what is carried from night to night, which fault is rehearsed, and what is told on the way. */
import { describe, expect, it } from 'vitest'
import { parseTrip } from '../../../shared/document/index.ts'
import type { Night, Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import type { PlanBudget } from '../../../shared/plan/index.ts'
import { faultAt, faultKinds } from '../../../shared/plan/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'
import { smallTrip } from '../../support/small-trip.ts'

const parsed = parseTrip(new TextEncoder().encode(smallTrip()))
if (!parsed.ok) throw new Error('the small trip is a trip')
const trip = parsed.value
const [night] = trip.nights
if (night === undefined) throw new Error('the trip has a night')

const BUDGET = { seed: 1, iterations: 0, remedies: false } as const
const told: (readonly [number, string])[] = []
const plan = derivePlan(trip, { ...BUDGET, onProgress: (done01, note) => told.push([done01, note]) })
/** Planned again while the load stands. */
const again = (of: Trip, over: Partial<PlanBudget> = {}) =>
  derivePlan(of, { ...BUDGET, previous: plan, keepLoad: true, ...over })
const withNights = (...nights: readonly Night[]): Trip => ({ ...trip, nights })

describe('progress', () => {
  it('goes from the nights over the load to the checklist, never backwards', () => {
    expect(told[0]).toEqual([0, 'night'])
    expect(told.at(-1)).toEqual([0.9, 'checklist'])
    const done = told.map(([done01]) => done01)
    expect(done).toEqual(done.toSorted((a, b) => a - b))
    const packing = told.filter(([, note]) => note === 'packing')
    expect(packing.every(([done01]) => done01 >= 0.1 && done01 <= 0.9)).toBe(true)
  })
})

describe('a fault asked for', () => {
  it('is the loss of the supply, at its clock on each night', () => {
    expect(plan.nights[0]?.input.fault).toBeNull()
    const { input, clock } = again(trip, { fault: { clock: '03:00' } }).nights[0] ?? {}
    expect(input?.fault?.kind).toBe('supply-lost')
    // Three hours after midnight by the site's clock: bedtime and waking lie on both sides of it.
    expect(input?.fault?.atUtc).toBeGreaterThan(clock?.bedtimeUtc ?? Infinity)
    expect(input?.fault?.atUtc).toBeLessThan(clock?.wakeUtc ?? 0)
  })

  it('is the heater where there is no supply to lose', () => {
    const { hookup: _post, ...bare } = night
    expect(again(withNights(bare), { fault: { clock: '03:00' } }).nights[0]?.input.fault?.kind).toBe('heater-fails')
  })
})

describe('charge carried over', () => {
  const leg: NonNullable<Night['leg']> = { distanceM: 60_000, fastChargers: [] }
  const { arriveCharge01: _said, leisureCharge01: _leisure, ...next } = { ...night, id: 'next', date: '2027-10-09' }
  const { leg: _leg, ...staying } = night
  const twoNights = (first: Night): ReturnType<typeof again>['nights'] => again(withNights(first, next)).nights

  it('is what the leg leaves', () => {
    const [before, after] = twoNights({ ...staying, leg })
    const usableWh = trip.vehicle.battery?.usableWh ?? Number.NaN
    const depart01 = before?.outcome.depart01 ?? Number.NaN
    const needWh = before?.outcome.leg?.needWh ?? Number.NaN
    expect(after?.input.battery?.arrive01).toBeCloseTo(depart01 - needWh / usableWh, 9)
  })

  it('is that on leaving where there is no leg', () => {
    const [before, after] = twoNights(staying)
    expect(after?.input.battery?.arrive01).toBe(before?.outcome.depart01)
  })

  it('is nothing, not less, after a leg that asks for more than there is', () => {
    const [before, after] = twoNights({ ...staying, leg: { ...leg, distanceM: 900_000 } })
    expect(before?.outcome.leg?.reachable).toBe(false)
    expect(after?.input.battery?.arrive01).toBe(0)
  })

  it('counts what is charged on the way', () => {
    const usableWh = trip.vehicle.battery?.usableWh ?? Number.NaN
    const fastChargers = [{ atM: 150_000, powerW: 50_000 }]
    const [before, after] = twoNights({ ...staying, leg: { ...leg, distanceM: 300_000, fastChargers } })
    const { leg: driven = null, depart01 = null } = before?.outcome ?? {}
    const gainedWh = (driven?.stops ?? []).reduce((sum, { energyWh }) => sum + energyWh, 0)
    expect(driven?.stops).toHaveLength(1)
    expect(after?.input.battery?.arrive01).toBeCloseTo(
      (depart01 ?? 0) + (gainedWh - (driven?.needWh ?? 0)) / usableWh,
      9,
    )
  })

  it('gives way to what the next night says itself', () => {
    const nights = again(withNights({ ...staying, leg }, { ...next, arriveCharge01: 0.33 })).nights
    expect(nights[1]?.input.battery?.arrive01).toBe(0.33)
  })
})

describe('an earlier plan', () => {
  it('lends its nights where nothing they rest on has changed, and its load while a dial turns', () => {
    const turned = again(trip)
    expect(turned.nights[0]?.outcome).toBe(plan.nights[0]?.outcome)
    expect(turned.packing).toBe(plan.packing)
    expect(turned.checklist).toBe(plan.checklist)
    const colder = again(
      withNights({ ...night, weather: { ...night.weather, coldMarginK: night.weather.coldMarginK + 3 } }),
    )
    expect(colder.nights[0]?.outcome).not.toBe(plan.nights[0]?.outcome)
    expect(colder.packing).toBe(plan.packing)
  })
})

describe('a breaker that trips', () => {
  const [some] = cardsPlan(cardsTrip()).nights
  if (some === undefined) throw new Error('the plan has a night')
  const trips = (minimumA: number, usableA: number, heldA: number | null = null) => {
    const { supply } = some.input
    const given = some.outcome.supply
    if (supply === null || given === null) throw new Error('the plan has a supply')
    const input = { ...some.input, supply: { ...supply, minimumA, heldA } }
    const fault = faultAt('breaker-trips', some.clock.bedtimeUtc, {
      ...some,
      input,
      outcome: { ...some.outcome, supply: { ...given, usableA } },
    })
    return fault.kind === 'breaker-trips' ? fault.heldA : 'another'
  }

  it('is trusted with whole amperes of three quarters, and with none below the least that the vehicle charges at', () => {
    expect([trips(6, 16), trips(6, 15.9), trips(6, 8), trips(6, 7.9)]).toEqual([12, 11, 6, null])
    // A vehicle that wants 10 A: of 13 A nine are trusted, too few; of 14 ten.
    expect([trips(10, 13), trips(10, 14)]).toEqual([null, 10])
    expect(trips(6, 8, 24)).toBe(24)
  })

  it('befalls a night on a post, a failing heater one with a heater', () => {
    expect(faultKinds(some)).toEqual(['supply-lost', 'breaker-trips', 'heater-fails'])
    const heater = { ...some.input.heater, kind: 'none' as const }
    expect(faultKinds({ ...some, input: { ...some.input, heater } })).toEqual(['supply-lost', 'breaker-trips'])
    expect(faultKinds({ ...some, input: { ...some.input, supply: null } })).toEqual(['heater-fails'])
  })
})
