/** What mends a plan that falls short: neighbouring trips are planned again, and those that truly work are ranked by their cost everywhere. */
import type { SingleChange, Trip } from '../../document/index.ts'
import type { Finding, Plan, PlanBudget, Remedy, RemedyChange } from '../types.ts'
import { addedUp, cured, leftTogether } from './together.ts'
import type { TriedChange } from './together.ts'
import { neighbours } from './neighbours.ts'
import { changeId, shortfallsOf, tryChange } from './try-change.ts'
import type { Attempts, Derive, Tried } from './try-change.ts'

/** Remedies for every shortfall of a plan, each verified: the shortfall is gone and none has come. Best first. */
export function findRemedies(trip: Trip, plan: Plan, budget: PlanBudget, derive: Derive): readonly Remedy[] {
  const at: Attempts = { trip, plan, budget, derive }
  const tried = new Map<string, Tried>()
  for (const shortfall of shortfallsOf(plan)) {
    const changes = neighbours(trip, plan, shortfall)
    for (const change of changes) {
      if (budget.shouldStop?.() === true) return ranked(tried)
      trySingle(at, shortfall, change, tried)
    }
    // Only where no one change does, a few are taken together.
    if (changes.length > 0 && !isMended(shortfall, tried)) tryTogether(at, shortfall, changes, tried)
  }
  return ranked(tried)
}

function trySingle(at: Attempts, shortfall: Finding, change: SingleChange, tried: Map<string, Tried>): void {
  const id = changeId(change)
  const before = tried.get(id)
  // What was turned down early for another shortfall's sake may still mend this one.
  if (before === undefined || before.kind === 'no-use') tried.set(id, tryChange(at, shortfall, change))
}

function tryTogether(
  at: Attempts,
  shortfall: Finding,
  changes: readonly SingleChange[],
  tried: Map<string, Tried>,
): void {
  const singles = changes.flatMap((change): TriedChange[] => {
    const found = tried.get(changeId(change))
    return found === undefined ? [] : [{ change, tried: found }]
  })
  /** Tries until one works: null then, or where time is up; else what came of each. */
  const failed = (list: readonly RemedyChange[]): readonly TriedChange[] | null => {
    const done: TriedChange[] = []
    for (const change of list) {
      if (at.budget.shouldStop?.() === true) return null
      const found = tryChange(at, shortfall, change)
      tried.set(changeId(change), found)
      if (found.kind === 'works') return null
      done.push({ change, tried: found })
    }
    return done
  }
  const several = failed([...addedUp(at, shortfall, changes), ...leftTogether(shortfall, changes)])
  if (several !== null) failed(cured(at, [...singles, ...several]))
}

const isMended = ({ id }: Finding, tried: ReadonlyMap<string, Tried>): boolean =>
  [...tried.values()].some((one) => one.kind === 'works' && one.remedy.mends.includes(id))

const ranked = (tried: ReadonlyMap<string, Tried>): readonly Remedy[] =>
  [...tried.values()]
    .flatMap((one) => (one.kind === 'works' ? one.remedy : []))
    .toSorted((a, b) => b.mends.length - a.mends.length || a.score - b.score)
