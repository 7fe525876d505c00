/** The one plan to recommend out of the front, and why. */
import type { NightInput, NightSearch } from '../types.ts'
import type { Scored } from './front.ts'

/** Comfort wanted in hand, K: forecast, bedding and people all vary. */
const WANTED_K = 3
/** Share of the leg's need wanted in hand. */
const WANTED_LEG_01 = 0.1

type Reason = NonNullable<NightSearch['reason']>
type Rung = { readonly reason: Reason; readonly warmest: boolean; readonly fits: (point: Scored) => boolean }

/**
 * Warm with something in hand and the leg with something in hand; then either just so; then with a stop; then the leg before
 * warmth; then the warmest. On each rung the cheapest, then the fullest; where warmth is short, the warmest.
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
  const reachable = (point: Scored): boolean => point.legReachable
  return [
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
  let best: number | null = null
  front.forEach((point, index) => {
    if (!rung.fits(point)) return
    const holder = best === null ? undefined : front[best]
    if (holder === undefined || better(point, holder, rung.warmest)) best = index
  })
  return best
}

function better(point: Scored, holder: Scored, warmest: boolean): boolean {
  if (warmest && point.comfortMarginK !== holder.comfortMarginK) return point.comfortMarginK > holder.comfortMarginK
  if (point.cost !== holder.cost) return point.cost < holder.cost
  if (point.depart01 !== holder.depart01) return (point.depart01 ?? 0) > (holder.depart01 ?? 0)
  return point.heatingWh < holder.heatingWh
}
