/** The cabin as the trip's own nights have shown it: its loss fitted once, and kept while nothing that was read changes. */
import { calibrate } from '../climate/index.ts'
import type { Trip } from '../document/index.ts'
import { measuredLegs, measuredNights } from './inputs/measured.ts'
import { same } from './same.ts'
import type { Plan, TripCalibration } from './types.ts'

/** Null where no night has been read. What was fitted is for this vehicle's loss as a whole: covers and wind stay as they are. */
export function tripCalibration(trip: Trip, previous: Plan | undefined): TripCalibration | null {
  const from = measuredNights(trip)
  const legs = measuredLegs(trip)
  if (from.length === 0 && legs.length === 0) return null
  const kept = previous?.calibration ?? null
  const stands = kept !== null && same(kept.from, from) && same(kept.legs, legs)
  return stands ? kept : { from, legs, fit: calibrate(from, legs) }
}

/** The trip with the fitted loss in the vehicle's own place for it. A fit from this trip's nights rules over one kept from before. */
export const withFittedLoss = (trip: Trip, calibration: TripCalibration | null): Trip =>
  calibration === null || calibration.from.length === 0
    ? trip
    : {
        ...trip,
        vehicle: { ...trip.vehicle, thermal: { ...trip.vehicle.thermal, lossScale: calibration.fit.lossScale } },
      }
