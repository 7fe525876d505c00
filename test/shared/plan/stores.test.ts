/** What carries over from night to night: water, food, worn clothes, charge and costs. */
import { describe, expect, it } from 'vitest'
import type { Night, Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { sample, withNight } from './trips.ts'

const bats = sample('bats-by-the-quarry')
const [firstNight, secondNight] = bats.nights
if (firstNight === undefined || secondNight === undefined) throw new Error('the sample has two nights')

const WATER_ML = 12_000
const FOOD_G = 5000

/** The sample with a third night, and water and food in round numbers. */
const third: Night = { ...secondNight, id: 'night-3', date: nextDay(secondNight.date) }
const people = bats.travellers.length
const trip: Trip = {
  ...bats,
  nights: [firstNight, secondNight, third],
  kit: {
    ...bats.kit,
    pieces: bats.kit.pieces.map((piece) => {
      const { liquidMl: _water, ...traits } = piece.traits
      const only = bats.kit.pieces.find(({ purpose, spare }) => purpose === piece.purpose && !spare)?.id === piece.id
      if (piece.purpose === 'water') return { ...piece, traits: only ? { ...traits, liquidMl: WATER_ML } : traits }
      if (piece.purpose === 'food') return { ...piece, massG: only ? FOOD_G : 0 }
      return piece
    }),
  },
}

function nextDay(date: string): string {
  const day = new Date(`${date}T00:00:00Z`)
  day.setUTCDate(day.getUTCDate() + 1)
  return day.toISOString().slice(0, 10)
}

const first = derivePlan(trip, { seed: 1, iterations: 0, remedies: false })
const planOf = (changed: Trip): Plan =>
  derivePlan(changed, { seed: 1, iterations: 0, remedies: false, previous: first })
const stepsOf = (plan: Plan, ruleId: string): readonly string[] =>
  plan.checklist.steps.filter((step) => step.ruleId === ruleId).map(({ nightId }) => nightId)
const found = (plan: Plan, code: string) => plan.findings.filter(({ problem }) => problem.code === code)

describe('water and food', () => {
  const dayWaterMl = people * 4000
  const dayFoodG = people * 850

  it('go down night by night by what each person uses', () => {
    expect(first.stores.map(({ waterMl }) => waterMl)).toEqual(
      [0, 1, 2].map((nights) => Math.max(0, WATER_ML - nights * dayWaterMl)),
    )
    expect(first.stores.map(({ foodG }) => foodG)).toEqual(
      [0, 1, 2].map((nights) => Math.max(0, FOOD_G - nights * dayFoodG)),
    )
  })

  it('make the load lighter, and the margin of payload wider by as much', () => {
    const [one, two] = first.stores
    expect(one === undefined ? 0 : first.packing.mass.loadG - one.loadG).toBe(
      Math.min(WATER_ML, dayWaterMl) + Math.min(FOOD_G, dayFoodG),
    )
    expect((two?.payloadMarginG ?? 0) - (one?.payloadMarginG ?? 0)).toBe((one?.loadG ?? 0) - (two?.loadG ?? 0))
  })

  it('that will not last are named on the night that lacks them, and mended by a step the day before', () => {
    const short = first.stores.filter(({ waterShortMl }) => waterShortMl > 0).map(({ nightId }) => nightId)
    expect(short.length).toBeGreaterThan(0)
    expect(
      [...found(first, 'water-short'), ...found(first, 'water-short-from-home')].map(({ nightId }) => nightId),
    ).toEqual(short)
    const before = trip.nights.flatMap(({ id }, index) =>
      short.includes(trip.nights[index + 1]?.id ?? '') ? [id] : [],
    )
    expect(stepsOf(first, 'water-refill')).toEqual(before)
  })

  it('taken on at a site are there the next night, cans holding no more than they held', () => {
    const refilled = planOf(withNight(trip, 0, (night) => ({ ...night, takenOn: { waterMl: 400_000, foodG: 700 } })))
    expect(refilled.stores[1]?.waterMl).toBe(WATER_ML)
    expect((refilled.stores[1]?.foodG ?? 0) - (first.stores[1]?.foodG ?? 0)).toBe(700)
  })

  it('count for nothing where the load has none: then people drink and eat elsewhere', () => {
    const bare: Trip = {
      ...trip,
      kit: {
        ...trip.kit,
        pieces: trip.kit.pieces.map((piece) =>
          piece.purpose === 'water' || piece.purpose === 'food' ? { ...piece, spare: true } : piece,
        ),
      },
    }
    expect(planOf(bare).stores.map(({ waterShortMl, foodShortG }) => waterShortMl + foodShortG)).toEqual([0, 0, 0])
  })
})

describe('worn clothes', () => {
  it('grow to all clothes by the last night, and are kept apart from the second morning on', () => {
    const clothesG = trip.kit.pieces
      .filter(({ purpose, spare }) => purpose === 'clothes' && !spare)
      .reduce((sum, { massG }) => sum + massG, 0)
    const dirty = first.stores.map(({ dirtyG }) => dirtyG)
    expect(clothesG).toBeGreaterThan(0)
    expect(dirty.at(-1)).toBe(clothesG)
    expect(dirty).toEqual(dirty.toSorted((a, b) => a - b))
    expect(stepsOf(first, 'laundry-apart')).toEqual(trip.nights.slice(1).map(({ id }) => id))
  })
})

describe('charge', () => {
  it('carries over the leg to the next night where that night does not say otherwise', () => {
    const unsaid: Trip = {
      ...trip,
      nights: trip.nights.map((night, index) => {
        const { arriveCharge01: _said, ...rest } = night
        return index === 0 ? night : rest
      }),
    }
    const plan = planOf(unsaid)
    const [one, two] = plan.nights.map(({ outcome }) => outcome)
    const usableWh = trip.vehicle.battery?.usableWh ?? 1
    const gainedWh = (one?.leg?.stops ?? []).reduce((sum, { energyWh }) => sum + energyWh, 0)
    const expected = (one?.depart01 ?? 0) + (gainedWh - (one?.leg?.needWh ?? 0)) / usableWh
    expect(two?.arrive01).toBeCloseTo(expected, 6)
  })

  it('that will not last tomorrow is said tonight', () => {
    const far = withNight(trip, 1, (night) => ({
      ...night,
      leg: { distanceM: 900_000, fastChargers: [] },
    }))
    const plan = planOf(far)
    expect(plan.nights[1]?.outcome.leg?.reachable).toBe(false)
    expect(stepsOf(plan, 'tomorrow-short-of-charge')).toContain(firstNight.id)
    expect(stepsOf(first, 'tomorrow-short-of-charge')).not.toContain(firstNight.id)
  })
})

describe('the ledger', () => {
  const entry = (id: string, amountCents: number, more: Partial<Trip['ledger'][number]> = {}) => ({
    id,
    date: firstNight.date,
    kind: 'site' as const,
    label: id,
    amountCents,
    ...more,
  })
  const two: Trip = {
    ...trip,
    ledger: [
      entry('pitch', 3000, { nightId: firstNight.id, paidByTravellerId: trip.travellers[0]?.id ?? '' }),
      entry('toll', 1000, trip.travellers[1] === undefined ? {} : { paidByTravellerId: trip.travellers[1].id }),
    ],
  }
  const { ledger } = planOf(two)

  it('adds up a night, a person and the trip, with charging by tariff where it was not paid', () => {
    const estimate = ledger.perNight.reduce((sum, { chargingEstimate }) => sum + chargingEstimate, 0)
    expect(ledger.perNight[0]?.total).toBeCloseTo(30 + (ledger.perNight[0]?.chargingEstimate ?? 0), 6)
    expect(ledger.total).toBeCloseTo(40 + estimate, 6)
    for (const night of ledger.perNight) expect(night.perTraveller).toBeCloseTo(night.total / people, 6)
    expect(ledger.perTraveller).toBeCloseTo(ledger.total / people, 6)
  })

  it('leaves each person what is theirs to pay: the sum is nil', () => {
    expect(ledger.people.reduce((sum, { owes }) => sum + owes, 0)).toBeCloseTo(0, 6)
    if (people === 2) expect(ledger.people.map(({ owes }) => owes)).toEqual([-10, 10])
    expect(ledger.people[0]?.paid).toBe(30)
  })

  it('counts charging once it was paid, and not its estimate as well', () => {
    const paid = planOf({
      ...trip,
      ledger: [entry('kWh', 700, { kind: 'charging', nightId: firstNight.id })],
    }).ledger
    expect(paid.perNight[0]?.total).toBeCloseTo(7, 6)
  })
})
