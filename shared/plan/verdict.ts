/** Whether the plan holds, in the numbers of its one sentence. */
import type { PackingOutcome } from '../packing/index.ts'
import type { Finding, NightPlan, Verdict } from './types.ts'

/** Verdict on one night: its own shortfalls and those of the whole trip. */
export function nightVerdict(plan: NightPlan, packing: PackingOutcome, findings: readonly Finding[]): Verdict {
  const shortfalls = findings.filter(
    ({ severity, nightId }) => severity === 'shortfall' && (nightId === null || nightId === plan.nightId),
  ).length
  const { outcome } = plan
  return {
    holds: shortfalls === 0,
    shortfalls,
    depart01: outcome.depart01,
    legMarginWh: outcome.leg?.marginWh ?? null,
    coldestBedC: outcome.coldestBedC,
    coldestBedUtc: outcome.coldestBedUtc,
    movesAtDusk: packing.nights.find(({ nightId }) => nightId === plan.nightId)?.changeover.moves.length ?? 0,
  }
}

/** Verdict on the trip: the numbers of its hardest night, all shortfalls counted. */
export function tripVerdict(nights: readonly Verdict[], findings: readonly Finding[]): Verdict {
  const shortfalls = findings.filter(({ severity }) => severity === 'shortfall').length
  const hardest = nights.reduce((worst, next) => (harder(next, worst) ? next : worst))
  return { ...hardest, shortfalls, holds: shortfalls === 0 }
}

function harder(next: Verdict, than: Verdict): boolean {
  if (next.shortfalls !== than.shortfalls) return next.shortfalls > than.shortfalls
  if (next.legMarginWh !== null && than.legMarginWh !== null) return next.legMarginWh < than.legMarginWh
  return next.coldestBedC < than.coldestBedC
}
