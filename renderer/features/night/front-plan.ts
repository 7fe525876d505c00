/** A point of the comfort-against-charge front, with its instants turned back into the clocks that a trip keeps. */
import type { Plan } from '../../../shared/plan/index.ts'
import { formatLocalTime } from '../../../shared/units/index.ts'

type FrontPoint = NonNullable<Plan['nights'][number]['search']>['front'][number]

export type FrontPlan = {
  readonly setPoints: readonly { readonly from: string; readonly tempC: number | null }[]
  readonly bedHeaterIds: readonly string[]
  readonly currentA: number | null
  readonly chargeLimit01: number
  readonly covers: boolean
  readonly windowGapMm: number
  readonly windowSides: number
}

export const frontPlanOf = ({ decisions }: FrontPoint, zone: string): FrontPlan => ({
  setPoints: decisions.setPoints.map(({ fromUtc, tempC }) => ({ from: formatLocalTime(fromUtc, zone), tempC })),
  bedHeaterIds: decisions.bedHeaterIds,
  currentA: decisions.currentA,
  chargeLimit01: decisions.chargeLimit01,
  covers: decisions.covers,
  windowGapMm: decisions.windowGapMm,
  windowSides: decisions.windowSides,
})
