/** A point of the comfort-against-charge front, with its instants turned back into the clocks that a trip keeps. */
import type { Plan } from '../../../shared/plan/index.ts'
import { formatLocalTime } from '../../../shared/units/index.ts'

type NightPlan = Plan['nights'][number]
type FrontPoint = NonNullable<NightPlan['search']>['front'][number]

export type FrontPlan = {
  readonly setPoints: readonly { readonly from: string; readonly tempC: number | null }[]
  readonly bedHeaterIds: readonly string[]
  readonly currentA: number | null
  readonly chargeLimit01: number
  readonly covers: boolean
  readonly windowGapMm: number
  readonly windowSides: number
  /** Absent where the bedding stays as it is. */
  readonly beddingPieceIds?: readonly string[]
}

export function frontPlanOf({ decisions }: FrontPoint, { beddingSets, clock }: NightPlan): FrontPlan {
  const [now] = beddingSets
  const set = beddingSets.find(({ id }) => id === decisions.beddingSetId)
  return {
    setPoints: decisions.setPoints.map(({ fromUtc, tempC }) => ({ from: formatLocalTime(fromUtc, clock.zone), tempC })),
    bedHeaterIds: decisions.bedHeaterIds,
    currentA: decisions.currentA,
    chargeLimit01: decisions.chargeLimit01,
    covers: decisions.covers,
    windowGapMm: decisions.windowGapMm,
    windowSides: decisions.windowSides,
    ...(set?.pieceIds === undefined || set === now ? {} : { beddingPieceIds: set.pieceIds }),
  }
}
