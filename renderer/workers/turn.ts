/** A turn of a dial on the window's side: whether an edit is one, and how its answer joins the plan that stands. */
import type { Trip } from '../../shared/document/index.ts'
import type { NightPlan, Plan } from '../../shared/plan/index.ts'
import type { TurnedNights } from './messages.ts'

/** Whether two trips differ in nothing but what is decided for their nights; an edit leaves equal parts the same objects. */
export const differsOnlyInNights = (a: Trip, b: Trip): boolean =>
  a !== b &&
  a.vehicle === b.vehicle &&
  a.travellers === b.travellers &&
  a.kit === b.kit &&
  a.checklist === b.checklist &&
  a.measured === b.measured &&
  a.ledger === b.ledger &&
  a.preferences === b.preferences &&
  a.nights.length === b.nights.length &&
  a.nights.every((night, index) => night.id === b.nights[index]?.id)

/** The whole plan with its nights anew; what only a search finds stands until the next one. */
export function joinTurn(whole: Plan, turned: TurnedNights): Plan {
  const nights = turned.nights.map((night): NightPlan => {
    const before = whole.nights.find(({ nightId }) => nightId === night.nightId)
    return {
      ...night,
      search: night.search ?? before?.search ?? null,
      faults: night.faults.length > 0 ? night.faults : (before?.faults ?? []),
    }
  })
  return {
    ...whole,
    ...turned,
    nights,
    remedies: whole.remedies.filter((remedy) =>
      remedy.mends.some((id) => turned.findings.some((finding) => finding.id === id)),
    ),
  }
}
