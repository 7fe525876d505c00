/** The plans that none beats on comfort, charge, cost and moves together. */
import type { FrontPoint } from '../answers.ts'

/** More comfort than this is not worth anything: nobody is warmer than warm, K (engine's convention). */
const ENOUGH_COMFORT_K = 6
/** Getting up at 15 rather than 5 °C is worth this much of a margin asleep, K (engine's convention). */
const RISING_WORTH_K = 1
const RISING_COLD_C = 5
const RISING_WARM_C = 15
/** Differences below these count as equal: K, share of the battery, money, Wh (engine's convention). */
const SAME_K = 0.05
const SAME_CHARGE_01 = 0.0005
export const SAME_COST = 0.005
const SAME_WH = 1

export type Scored = FrontPoint & {
  readonly moves: number
  readonly beddingVolumeMm3: number
  readonly risingC: number
  readonly sleepers: number
  readonly legNeedWh: number
  readonly co2MaxPpm: number
  readonly legReachable: boolean
  readonly heatingWh: number
  readonly supplyWh: number
  readonly wiringWh: number
}

/** Comfort asleep as far as it counts, and what getting up warm adds, K; where nobody sleeps, the former alone. */
export function comfortOf(point: Scored): number {
  const asleep = Math.min(point.comfortMarginK, ENOUGH_COMFORT_K)
  if (point.sleepers === 0) return asleep
  const rising01 = (point.risingC - RISING_COLD_C) / (RISING_WARM_C - RISING_COLD_C)
  return asleep + RISING_WORTH_K * Math.min(Math.max(rising01, 0), 1)
}

/** Whether `left` is nowhere worse than `right` and somewhere clearly better; equals by room, heating and wiring heat, then the one found first. */
function beats(left: Scored, right: Scored): boolean {
  const warmer = comfortOf(left) - comfortOf(right)
  if (warmer < -SAME_K) return false
  const fuller = (left.depart01 ?? 0) - (right.depart01 ?? 0)
  if (fuller < -SAME_CHARGE_01) return false
  const dearer = left.cost - right.cost
  if (dearer > SAME_COST || left.moves > right.moves) return false
  if (warmer > SAME_K || fuller > SAME_CHARGE_01 || dearer < -SAME_COST || left.moves < right.moves) return true
  return lessTrouble(left, right) <= 0
}

/** Which of two equal plans takes less room, less heating, less heat in the wiring: below nought the first. */
export function lessTrouble(left: Scored, right: Scored): number {
  if (left.beddingVolumeMm3 !== right.beddingVolumeMm3) return left.beddingVolumeMm3 - right.beddingVolumeMm3
  if (Math.abs(left.heatingWh - right.heatingWh) > SAME_WH) return left.heatingWh - right.heatingWh
  return left.wiringWh - right.wiringWh
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
