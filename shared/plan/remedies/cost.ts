/** What a remedy costs everywhere, and the one number by which remedies are ranked. */
import type { SingleChange, Trip } from '../../document/index.ts'
import { MM3_PER_LITRE, S_PER_MINUTE } from '../../units/index.ts'
import { loadedPieces } from '../load.ts'
import type { Plan, Remedy, RemedyChange } from '../types.ts'

type Planned = { readonly trip: Trip; readonly plan: Plan }

/** What one unit of each cost weighs in the ranking; a judgement of ours: a litre of room, a lift at dusk, a degree, a percent, money, a minute. */
const WEIGHTS = { litres: 0.2, moves: 1, degreesK: 1, charge01: 60, money: 0.5, minutes: 0.3 } as const
/** Something left at home is missed all trip long: more than its litres. */
const LEFT_BEHIND = 6

export const changesOf = (change: RemedyChange): readonly SingleChange[] =>
  change.kind === 'together' ? change.changes : [change]

/** Litres of load, moves at dusk over all nights, K of cabin warmth given up, share of charge, money and minutes that the change costs. */
export function costOf(before: Planned, after: Planned, change: RemedyChange): Remedy['cost'] {
  const more = (of: (planned: Planned) => number): number => of(after) - of(before)
  return {
    litres:
      more(({ trip }) => loadedPieces(trip).reduce((sum, { sizeMm: [l, w, h] }) => sum + l * w * h, 0)) / MM3_PER_LITRE,
    moves: more(({ plan }) => plan.nightVerdicts.reduce((sum, { movesAtDusk }) => sum + movesAtDusk, 0)),
    degreesK: changesOf(change).reduce((sum, one) => sum - (one.kind === 'set-point' ? one.byK : 0), 0),
    charge01: -more(({ plan }) => plan.nightVerdicts.reduce((sum, { depart01 }) => sum + (depart01 ?? 0), 0)),
    money: more(({ plan }) => plan.ledger.total),
    minutes:
      Math.abs(more(({ plan }) => plan.nights.reduce((sum, { clock }) => sum + clock.departUtc, 0))) / S_PER_MINUTE +
      Math.abs(more(({ plan }) => plan.nights.reduce((sum, { clock }) => sum + clock.arriveUtc, 0))) / S_PER_MINUTE,
  }
}

/** Least is best; what a change gains counts for nothing. */
export function scoreOf(cost: Remedy['cost'], change: RemedyChange): number {
  const left = changesOf(change).reduce((sum, one) => sum + (one.kind === 'leave-behind' ? one.pieceIds.length : 0), 0)
  const parts = [
    Math.max(0, cost.litres) * WEIGHTS.litres,
    Math.max(0, cost.moves) * WEIGHTS.moves,
    Math.max(0, cost.degreesK) * WEIGHTS.degreesK,
    Math.max(0, cost.charge01) * WEIGHTS.charge01,
    Math.max(0, cost.money) * WEIGHTS.money,
    Math.max(0, cost.minutes) * WEIGHTS.minutes,
  ]
  return parts.reduce((sum, part) => sum + part, left * LEFT_BEHIND)
}
