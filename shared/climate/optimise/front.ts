/** The plans that none beats on comfort, charge and cost together. */
import type { FrontPoint } from '../types.ts'

/** More comfort than this is not worth anything: nobody is warmer than warm, K. */
const ENOUGH_COMFORT_K = 6
/** Differences below these count as equal: K, share of the battery, money. */
const SAME_K = 0.05
const SAME_CHARGE_01 = 0.0005
const SAME_COST = 0.005

export type Scored = FrontPoint & {
  readonly legNeedWh: number
  readonly co2MaxPpm: number
  readonly legReachable: boolean
  readonly heatingWh: number
}

const comfort = (point: FrontPoint): number => Math.min(point.comfortMarginK, ENOUGH_COMFORT_K)

/** Whether `left` is nowhere worse than `right` and somewhere clearly better; equals by heating energy, then the one found first. */
function beats(left: Scored, right: Scored): boolean {
  const warmer = comfort(left) - comfort(right)
  const fuller = (left.depart01 ?? 0) - (right.depart01 ?? 0)
  const dearer = left.cost - right.cost
  if (warmer < -SAME_K || fuller < -SAME_CHARGE_01 || dearer > SAME_COST) return false
  return warmer > SAME_K || fuller > SAME_CHARGE_01 || dearer < -SAME_COST || left.heatingWh <= right.heatingWh
}

/** The points that no other beats, in falling comfort. Quadratic in the number of points: a few hundred. */
export function nonDominated<T extends Scored>(points: readonly T[]): T[] {
  const kept: T[] = []
  for (const point of points) {
    if (kept.some((other) => beats(other, point))) continue
    for (let index = kept.length - 1; index >= 0; index -= 1) {
      const other = kept[index]
      if (other !== undefined && beats(point, other)) kept.splice(index, 1)
    }
    kept.push(point)
  }
  return kept.sort((left, right) => right.comfortMarginK - left.comfortMarginK)
}
