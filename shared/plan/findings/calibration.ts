/** What the trip's own nights have taught: the cabin's loss as fitted, and readings that fit no loss. */
import type { Finding, TripCalibration } from '../types.ts'
import { finding } from './finding.ts'

/** Readings three times as far off as they and the model are uncertain: something else happened than the plan knows of. */
const MISFIT_LIMIT = 3

export function calibrationFindings(calibration: TripCalibration | null): readonly Finding[] {
  if (calibration === null) return []
  const { lossScale, lossScaleSpread, readings, misfit } = calibration.fit
  const source = { area: 'night', nightId: null, path: ['measured'] } as const
  const fitted = finding(source, 'note', 'loss-fitted', {
    loss01: lossScale,
    spread01: lossScaleSpread,
    count: readings,
  })
  return misfit > MISFIT_LIMIT
    ? [fitted, finding(source, 'caution', 'readings-do-not-fit', { count: readings })]
    : [fitted]
}
