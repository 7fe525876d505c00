/** The bed itself: does each sleeper fit, is it level enough, can one sit up. */
import type { Trip } from '../../document/index.ts'
import type { Finding } from '../types.ts'
import { finding } from './finding.ts'

/** Least useful width for one sleeper, published and common practice. */
const SLEEPER_WIDTH_MM = 500
/** Flat length wanted beyond the sleeper's height, common practice 80 to 100 mm. */
const LENGTH_TO_SPARE_MM = 80
/** Largest step felt through a mat, common practice. */
const STEP_LIMIT_MM = 20
/** Under this one can only lie, common practice. */
const SITTING_HEADROOM_MM = 650

export function bedFindings(trip: Trip): readonly Finding[] {
  const { bed } = trip.vehicle
  const source = { area: 'load', nightId: null, path: ['vehicle', 'bed'] } as const
  const found: Finding[] = []
  trip.travellers.forEach((traveller) => {
    const params = { traveller: traveller.label, heightMm: traveller.heightMm, flatMm: bed.flatLengthMm }
    if (traveller.heightMm > bed.flatLengthMm)
      found.push(finding(source, 'shortfall', 'bed-too-short', params, traveller.id))
    else if (traveller.heightMm + LENGTH_TO_SPARE_MM > bed.flatLengthMm)
      found.push(finding(source, 'note', 'bed-just-long-enough', params, traveller.id))
  })
  const neededMm = SLEEPER_WIDTH_MM * trip.travellers.length
  if (neededMm > bed.sizeMm[1])
    found.push(finding(source, 'shortfall', 'bed-too-narrow', { neededMm, widthMm: bed.sizeMm[1] }))
  if (bed.stepMm > STEP_LIMIT_MM)
    found.push(finding(source, 'caution', 'bed-step', { stepMm: bed.stepMm, limitMm: STEP_LIMIT_MM }))
  const headroomMm = bed.headroomMm - bed.sizeMm[2]
  if (headroomMm < SITTING_HEADROOM_MM) found.push(finding(source, 'note', 'lie-only', { headroomMm }))
  return found
}
