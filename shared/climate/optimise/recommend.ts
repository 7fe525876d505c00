/** The one plan to recommend out of the front. */
import { SAME_COST, lessTrouble } from './front.ts'
import type { NightInput } from '../types.ts'
import type { NightSearch } from '../answers.ts'
import type { Scored } from './front.ts'

/** Comfort wanted in hand, K: forecast, bedding and people all vary (engine's convention). */
const WANTED_K = 3
/** Share of the leg's need wanted in hand (common practice 10 to 15 %). */
const WANTED_LEG_01 = 0.1
/** Wanted on rising, °C (common practice 10 to 15). */
const WANTED_RISING_C = 10
/** Plans within this of the cheapest count as cheap: then moves decide (engine's convention). */
const NEARLY_01 = 0.05
/** One handling at dusk is worth this share of the battery (engine's convention), and efforts this close are equal. */
const HANDLING_01 = 0.01
const SAME_EFFORT = 0.1

type Reason = NonNullable<NightSearch['reason']>
type Rung = { readonly reason: Reason; readonly warmest: boolean; readonly fits: (point: Scored) => boolean }

/**
 * Warm asleep and on rising with something in hand and the leg with something in hand; then without the rising; then either just so;
 * then with a stop; then the leg before warmth; then the warmest. On each rung the cheap ones, of those the fewest moves and the
 * fullest battery weighed together, then the least trouble; where warmth is short, the warmest.
 */
export function recommend(
  input: NightInput,
  front: readonly Scored[],
): { readonly index: number; readonly reason: Reason } {
  for (const rung of rungs(input.leg !== null && input.battery !== null)) {
    const index = bestOf(front, rung)
    if (index !== null) return { index, reason: rung.reason }
  }
  return { index: 0, reason: 'warmest' }
}

function rungs(hasLeg: boolean): readonly Rung[] {
  const legBy = (share01: number) => (point: Scored) => (point.legMarginWh ?? 0) >= share01 * point.legNeedWh
  const direct: Reason = hasLeg ? 'warm-and-leg' : 'warm-no-leg'
  const rung = (reason: Reason, warmK: number, leg: (point: Scored) => boolean): Rung => ({
    reason,
    warmest: reason === 'leg-first' || reason === 'warmest',
    fits: (point) => point.comfortMarginK >= warmK && leg(point),
  })
  const alsoRising = (of: Rung): Rung => ({
    ...of,
    fits: (point) => of.fits(point) && point.risingC >= WANTED_RISING_C,
  })
  const reachable = (point: Scored): boolean => point.legReachable
  return [
    alsoRising(rung(direct, WANTED_K, legBy(WANTED_LEG_01))),
    rung(direct, WANTED_K, legBy(WANTED_LEG_01)),
    rung(direct, WANTED_K, legBy(0)),
    rung(direct, 0, legBy(0)),
    rung('warm-with-stop', WANTED_K, reachable),
    rung('warm-with-stop', 0, reachable),
    rung('leg-first', -Infinity, legBy(0)),
    rung('leg-first', -Infinity, reachable),
    rung('warmest', -Infinity, () => true),
  ]
}

function bestOf(front: readonly Scored[], rung: Rung): number | null {
  const fitting = front.filter(rung.fits)
  const cheapest = fitting.reduce((least, point) => Math.min(least, point.cost), Infinity)
  const warmest = fitting.reduce((most, point) => Math.max(most, point.comfortMarginK), -Infinity)
  const nearly = fitting.filter((point) =>
    rung.warmest ? point.comfortMarginK >= warmest : point.cost <= cheapest * (1 + NEARLY_01) + SAME_COST,
  )
  const best = nearly.toSorted(byTrouble)[0]
  return best === undefined ? null : front.indexOf(best)
}

function byTrouble(left: Scored, right: Scored): number {
  const effort = effortOf(left) - effortOf(right)
  if (Math.abs(effort) > SAME_EFFORT) return effort
  if (Math.abs(left.cost - right.cost) > SAME_COST) return left.cost - right.cost
  return lessTrouble(left, right)
}

/** Handlings, and charge not gained counted as such. */
const effortOf = (point: Scored): number => point.moves - (point.depart01 ?? 0) / HANDLING_01
