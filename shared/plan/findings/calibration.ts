/** What the trip's own nights have taught: the cabin's loss as fitted, and readings that fit no loss. */
import type { Finding, TripCalibration } from '../types.ts'
import { finding } from './finding.ts'

/** Readings three times as far off as they and the model are uncertain: something else happened than the plan knows of. */
const MISFIT_LIMIT = 3

export function calibrationFindings(calibration: TripCalibration | null): readonly Finding[] {
  if (calibration === null) return []
  const { lossScale, lossScaleSpread, readings, misfit, consumption } = calibration.fit
  const source = { area: 'night', nightId: null, path: ['measured'] } as const
  const found: Finding[] = []
  if (calibration.from.length > 0)
    found.push(
      finding(source, 'note', 'loss-fitted', { loss01: lossScale, spread01: lossScaleSpread, count: readings }),
    )
  if (consumption !== undefined && consumption.readings > 0)
    found.push(
      finding({ ...source, area: 'leg' }, 'note', 'consumption-fitted', {
        use01: consumption.scale,
        spread01: consumption.scaleSpread,
        count: consumption.readings,
      }),
    )
  if (misfit > MISFIT_LIMIT) found.push(finding(source, 'caution', 'readings-do-not-fit', { count: readings }))
  return found
}
