/** What the trip costs: entries paid, and an estimate of charging by tariff where nothing was paid yet. */
import type { Trip } from '../document/index.ts'
import type { NightPlan, Plan } from './types.ts'

const CENTS = 100

export function ledger(trip: Trip, nights: readonly NightPlan[]): Plan['ledger'] {
  const perNight = nights.map(({ nightId, cost }) => {
    const entries = trip.ledger.filter((entry) => entry.nightId === nightId)
    const paid = entries.reduce((sum, { amountCents }) => sum + amountCents, 0) / CENTS
    const charged = entries.some(({ kind }) => kind === 'charging')
    return { nightId, chargingEstimate: cost, total: paid + (charged ? 0 : cost) }
  })
  const unassigned =
    trip.ledger.filter(({ nightId }) => nightId === undefined).reduce((sum, { amountCents }) => sum + amountCents, 0) /
    CENTS
  const total = perNight.reduce((sum, night) => sum + night.total, 0) + unassigned
  return { perNight, total, perTraveller: total / trip.travellers.length }
}
