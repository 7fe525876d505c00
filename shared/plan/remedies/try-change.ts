/** One change of the trip tried: the trip is planned again with it, and what came of that is told. */
import { applyEdit } from '../../document/index.ts'
import type { Trip } from '../../document/index.ts'
import { differencesOf } from '../differences.ts'
import type { Finding, Plan, PlanBudget, Remedy, RemedyChange } from '../types.ts'
import { costOf, scoreOf } from './cost.ts'

export type Derive = (trip: Trip, budget: PlanBudget) => Plan

export type Attempts = {
  readonly trip: Trip
  readonly plan: Plan
  readonly budget: PlanBudget
  readonly derive: Derive
}

export type Tried =
  | { readonly kind: 'works'; readonly remedy: Remedy }
  /** The shortfall is gone, but others have come. */
  | { readonly kind: 'brings-others'; readonly trip: Trip; readonly plan: Plan }
  | { readonly kind: 'no-use' }

/** A neighbouring load starts from the plan's own, so that few rounds settle it. */
const ROUNDS_TO_VERIFY = 40

export const changeId = (change: RemedyChange): string =>
  change.kind === 'together' ? change.changes.map(changeId).join('+') : Object.values(change).flat().join(':')

export const shortfallsOf = (plan: Plan): readonly Finding[] =>
  plan.findings.filter(({ severity }) => severity === 'shortfall')

const has = (plan: Plan, id: string): boolean => shortfallsOf(plan).some((one) => one.id === id)

/** Whether the change mends the shortfall without bringing another, with its cost and what else it changes. */
export function tryChange(at: Attempts, shortfall: Finding, change: RemedyChange): Tried {
  const { trip, plan } = at
  const changed = changedTrip(trip, change)
  if (changed === null) return { kind: 'no-use' }
  // A look at the nights alone shows where the shortfall stays; what it reckoned serves the whole plan too.
  const looked = shownByNights(shortfall) ? nightsAgain(at, changed) : null
  if (looked !== null && has(looked, shortfall.id)) return { kind: 'no-use' }
  const next = planAgain(at, changed, looked ?? plan)
  const before = shortfallsOf(plan)
  const mends = before.filter(({ id }) => !has(next, id)).map(({ id }) => id)
  if (mends.length === 0) return { kind: 'no-use' }
  const known = new Set(before.map(({ id }) => id))
  if (shortfallsOf(next).some(({ id }) => !known.has(id)))
    return mends.includes(shortfall.id) ? { kind: 'brings-others', trip: changed, plan: next } : { kind: 'no-use' }
  const cost = costOf({ trip, plan }, { trip: changed, plan: next }, change)
  const preview = differencesOf(changed, plan, next)
  return { kind: 'works', remedy: { id: changeId(change), mends, change, cost, score: scoreOf(cost, change), preview } }
}

/** The trip with the change; null where it changes nothing or the trip refuses it. */
export function changedTrip(trip: Trip, change: RemedyChange): Trip | null {
  const edited = applyEdit(trip, { kind: 'take-remedy', change })
  return edited.ok && edited.value !== trip ? edited.value : null
}

const planAgain = ({ budget, derive }: Attempts, changed: Trip, previous: Plan): Plan =>
  derive(changed, {
    ...budget,
    iterations: Math.min(budget.iterations, ROUNDS_TO_VERIFY),
    enoughSearched: () => false,
    remedies: false,
    previous,
    onProgress: () => undefined,
  })

/** The plan with its nights anew while the load stands: quick, and enough to see whether night, leg, clock or site are mended. */
export const nightsAgain = ({ plan, budget, derive }: Attempts, changed: Trip): Plan =>
  derive(changed, { ...budget, keepLoad: true, remedies: false, previous: plan, onProgress: () => undefined })

const shownByNights = ({ area }: Finding): boolean => area !== 'load' && area !== 'checklist'
