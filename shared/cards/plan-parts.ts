/** Short names for the parts of plan and trip that cards show (the doors of plan and document are all that cards may open). */
import type { Night, Trip } from '../document/index.ts'
import type { NightPlan, Plan } from '../plan/index.ts'
import type { Text } from '../text/index.ts'
import type { Paper } from './model.ts'

export type CardInput = {
  readonly plan: Plan
  readonly trip: Trip
  readonly text: Text
  /** One night, or null for the whole trip. */
  readonly nightId: string | null
  readonly paper: Paper
  /** Width of drawings where it is not the paper's; below 120 mm views stand one above the other. */
  readonly drawingWidthMm?: number
}

export type Packing = Plan['packing']
export type Layout = Packing['drive']
export type Placement = Layout['placements'][number]
export type AwayPlace = Layout['away'][number]
export type NightPacking = Packing['nights'][number]
export type Move = NightPacking['changeover']['moves'][number]
export type Step = Plan['checklist']['steps'][number]
export type Finding = Plan['findings'][number]

export type OneNight = { readonly night: Night; readonly plan: NightPlan; readonly packing: NightPacking | null }

/** The nights a card speaks of, in the trip's order. */
export const nightsOf = ({ plan, trip, nightId }: CardInput): readonly OneNight[] =>
  trip.nights
    .filter((night) => nightId === null || night.id === nightId)
    .flatMap((night) => {
      const found = plan.nights.find((one) => one.nightId === night.id)
      if (found === undefined) return []
      return [{ night, plan: found, packing: plan.packing.nights.find((one) => one.nightId === night.id) ?? null }]
    })

const ORDER = { shortfall: 0, caution: 1, note: 2 } as const

/** Findings of a night or of the whole trip, worst first. */
export const findingsOf = (plan: Plan, areas: readonly Finding['area'][], nightId: string | null): readonly Finding[] =>
  plan.findings
    .filter(
      (finding) =>
        areas.includes(finding.area) && (finding.nightId === null || nightId === null || finding.nightId === nightId),
    )
    .toSorted((a, b) => ORDER[a.severity] - ORDER[b.severity])
