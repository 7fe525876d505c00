/** What mends a plan that falls short: neighbouring trips are planned again, and those that truly work are ranked by their cost everywhere. */
import { applyEdit } from '../../document/index.ts'
import type { Trip } from '../../document/index.ts'
import { MM3_PER_LITRE, S_PER_MINUTE } from '../../units/index.ts'
import { loadedPieces } from '../load.ts'
import type { Finding, Plan, PlanBudget, Remedy, RemedyChange } from '../types.ts'
import { neighbours } from './neighbours.ts'

type Derive = (trip: Trip, budget: PlanBudget) => Plan

/** What one unit of each cost weighs in the ranking; a judgement of ours: a litre of room, a lift at dusk, a degree, a percent, money, a minute. */
const WEIGHTS = { litres: 0.2, moves: 1, degreesK: 1, charge01: 60, money: 0.5, minutes: 0.3 } as const
/** A neighbouring load starts from the plan's own, so that few rounds settle it. */
const ROUNDS_TO_VERIFY = 40
/** Something left at home is missed all trip long: more than its litres. */
const LEFT_BEHIND = 6

/** Remedies for every shortfall of a plan, each verified: the shortfall is gone and none has come. Best first. */
export function findRemedies(trip: Trip, plan: Plan, budget: PlanBudget, derive: Derive): readonly Remedy[] {
  const shortfalls = plan.findings.filter(({ severity }) => severity === 'shortfall')
  const tried = new Map<string, Remedy | null>()
  for (const shortfall of shortfalls) {
    for (const change of neighbours(trip, plan, shortfall)) {
      if (budget.shouldStop?.() === true) return ranked(tried)
      const id = changeId(change)
      if (!tried.has(id)) tried.set(id, verified(trip, plan, { change, budget, derive, shortfalls }))
    }
  }
  return ranked(tried)
}

const ranked = (tried: ReadonlyMap<string, Remedy | null>): readonly Remedy[] =>
  [...tried.values()]
    .filter((remedy) => remedy !== null)
    .toSorted((a, b) => b.mends.length - a.mends.length || a.score - b.score)

type Attempt = {
  readonly change: RemedyChange
  readonly budget: PlanBudget
  readonly derive: Derive
  readonly shortfalls: readonly Finding[]
}

function verified(trip: Trip, plan: Plan, attempt: Attempt): Remedy | null {
  const { change, budget, derive, shortfalls } = attempt
  const edited = applyEdit(trip, { kind: 'take-remedy', change })
  if (!edited.ok || edited.value === trip) return null
  const changed = edited.value
  const next = derive(changed, {
    ...budget,
    iterations: Math.min(budget.iterations, ROUNDS_TO_VERIFY),
    enoughSearched: () => false,
    remedies: false,
    previous: plan,
    onProgress: () => undefined,
  })
  const left = new Set(next.findings.filter(({ severity }) => severity === 'shortfall').map(({ id }) => id))
  const before = new Set(shortfalls.map(({ id }) => id))
  const mends = shortfalls.filter(({ id }) => !left.has(id)).map(({ id }) => id)
  if (mends.length === 0 || [...left].some((id) => !before.has(id))) return null
  const cost = costOf(trip, changed, plan, next, change)
  return { id: changeId(change), mends, change, cost, score: score(cost, change) }
}

const changeId = (change: RemedyChange): string => Object.values(change).flat().join(':')

function costOf(trip: Trip, changed: Trip, plan: Plan, next: Plan, change: RemedyChange): Remedy['cost'] {
  const litres = (of: Trip): number =>
    loadedPieces(of).reduce((sum, { sizeMm: [l, w, h] }) => sum + l * w * h, 0) / MM3_PER_LITRE
  const sum = (of: Plan, pick: (verdict: Plan['nightVerdicts'][number]) => number): number =>
    of.nightVerdicts.reduce((total, verdict) => total + pick(verdict), 0)
  const charge = (of: Plan): number => sum(of, ({ depart01 }) => depart01 ?? 0)
  const departed = (of: Plan): number => of.nights.reduce((total, { clock }) => total + clock.departUtc, 0)
  return {
    litres: litres(changed) - litres(trip),
    moves: sum(next, ({ movesAtDusk }) => movesAtDusk) - sum(plan, ({ movesAtDusk }) => movesAtDusk),
    degreesK: change.kind === 'set-point' ? -change.byK : 0,
    charge01: charge(plan) - charge(next),
    money: next.ledger.total - plan.ledger.total,
    minutes: (departed(next) - departed(plan)) / S_PER_MINUTE,
  }
}

function score(cost: Remedy['cost'], change: RemedyChange): number {
  const left = change.kind === 'leave-behind' ? LEFT_BEHIND * change.pieceIds.length : 0
  const parts = [
    Math.max(0, cost.litres) * WEIGHTS.litres,
    Math.max(0, cost.moves) * WEIGHTS.moves,
    Math.max(0, cost.degreesK) * WEIGHTS.degreesK,
    Math.max(0, cost.charge01) * WEIGHTS.charge01,
    Math.max(0, cost.money) * WEIGHTS.money,
    Math.max(0, cost.minutes) * WEIGHTS.minutes,
  ]
  return parts.reduce((sum, part) => sum + part, left)
}
