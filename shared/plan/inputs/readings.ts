/** Single values that the traveller read on the trip's own nights. */
import type { SupplyReading } from '../../climate/index.ts'
import type { Measured, Trip } from '../../document/index.ts'

export type Moment = Measured['moment']
export const MOMENTS: readonly Moment[] = ['at-the-post', 'bedtime', 'morning']

/** The last reading of a moment that has the wanted value: what is read again replaces what was read before. */
export function lastRead(trip: Trip, nightId: string, moment: Moment, key: keyof Measured): Measured | undefined {
  return trip.measured.findLast((one) => one.nightId === nightId && one.moment === moment && one[key] !== undefined)
}

/** Volts at a current, read on the night itself: they tell the sag as the readings of the hookup do. */
export const readAtThePost = (trip: Trip, nightId: string): readonly SupplyReading[] =>
  trip.measured.flatMap(({ nightId: id, volts, currentA }) =>
    id === nightId && volts !== undefined && currentA !== undefined ? [{ currentA, volts }] : [],
  )

/** Charge that the vehicle showed at a moment of a night; null where nobody read it. */
export const readCharge = (trip: Trip, nightId: string, moment: Moment): number | null =>
  lastRead(trip, nightId, moment, 'charge01')?.charge01 ?? null
