/** What the trip costs: entries paid, and an estimate of charging by tariff where nothing was paid yet; a night, a person. */
import type { Trip } from '../document/index.ts'
import type { NightPlan, Plan } from './types.ts'

const CENTS = 100

type Entry = Trip['ledger'][number]

const paidOf = (entries: readonly Entry[]): number =>
  entries.reduce((sum, { amountCents }) => sum + amountCents, 0) / CENTS

export function ledger(trip: Trip, nights: readonly NightPlan[]): Plan['ledger'] {
  const people = trip.travellers.length
  const perNight = nights.map(({ nightId, cost }) => {
    const entries = trip.ledger.filter((entry) => entry.nightId === nightId)
    const charged = entries.some(({ kind }) => kind === 'charging')
    const total = paidOf(entries) + (charged ? 0 : cost)
    return { nightId, chargingEstimate: cost, total, perTraveller: total / people }
  })
  const known = new Set(perNight.map(({ nightId }) => nightId))
  const unassigned = trip.ledger.filter(({ nightId }) => nightId === undefined || !known.has(nightId))
  const total = perNight.reduce((sum, night) => sum + night.total, 0) + paidOf(unassigned)
  return { perNight, total, perTraveller: total / people, people: peopleOf(trip) }
}

/** Who paid what; what nobody is named for is taken as shared already. */
function peopleOf(trip: Trip): Plan['ledger']['people'] {
  const paidBy = (id: string): number => paidOf(trip.ledger.filter(({ paidByTravellerId }) => paidByTravellerId === id))
  const paid = trip.travellers.map(({ id }) => ({ travellerId: id, paid: paidBy(id) }))
  const share = paid.reduce((sum, one) => sum + one.paid, 0) / paid.length
  return paid.map((one) => ({ ...one, owes: share - one.paid }))
}
