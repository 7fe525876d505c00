/** Changes worth taking together where no single one mends a shortfall: several add up, or one mends what another brings. */
import type { SingleChange } from '../../document/index.ts'
import type { Finding, Plan, RemedyChange } from '../types.ts'
import { changesOf } from './cost.ts'
import { neighbours } from './neighbours.ts'
import { changedTrip, changeId, nightsAgain, shortfallsOf } from './try-change.ts'
import type { Attempts, Tried } from './try-change.ts'

export type TriedChange = { readonly change: RemedyChange; readonly tried: Tried }

/** How many changes that bring another shortfall are followed, and how many of that one's own cures. */
const FOLLOWED = 3
const CURES = 6
/** How many changes are added up at most. */
const AT_MOST = 4

/** Something left behind for a warmer bag that no longer fits: cures for what the changes that bring least have brought. */
export function cured({ plan }: Attempts, done: readonly TriedChange[]): readonly RemedyChange[] {
  const known = new Set(shortfallsOf(plan).map(({ id }) => id))
  return done
    .flatMap(({ change, tried }) => {
      if (tried.kind !== 'brings-others') return []
      const brought = shortfallsOf(tried.plan).filter(({ id }) => !known.has(id))
      return [{ changes: changesOf(change), tried, brought }]
    })
    .toSorted((a, b) => a.brought.length - b.brought.length)
    .slice(0, FOLLOWED)
    .flatMap(({ changes, tried, brought: [first] }) =>
      first === undefined
        ? []
        : neighbours(tried.trip, tried.plan, first)
            .filter((cure) => !changes.some((change) => undoes(cure, change) || slot(cure) === slot(change)))
            .slice(0, CURES)
            .map((cure) => ({ kind: 'together', changes: [...changes, cure] }) as const),
    )
}

/** A cure must not take away what was just brought, nor bring what was left behind. */
const undoes = (cure: SingleChange, change: SingleChange): boolean => leaves(cure, change) || leaves(change, cure)

const leaves = (one: SingleChange, other: SingleChange): boolean =>
  one.kind === 'leave-behind' && 'pieceId' in other && one.pieceIds.includes(other.pieceId)

/** One change of a kind after the other, each time the one that leaves least missing, until nothing is. */
export function addedUp(at: Attempts, shortfall: Finding, singles: readonly SingleChange[]): readonly RemedyChange[] {
  const taken: SingleChange[] = []
  let left = missing(at.plan, shortfall) ?? 0
  while (taken.length < AT_MOST && left > 0) {
    const best = singles
      .filter((change) => !taken.some((one) => slot(one) === slot(change)))
      .map((change) => ({ change, left: leftWith(at, shortfall, [...taken, change]) }))
      .toSorted((a, b) => a.left - b.left)[0]
    if (best === undefined || best.left >= left) break
    taken.push(best.change)
    left = best.left
  }
  return left > 0 || taken.length < 2 ? [] : [{ kind: 'together', changes: taken }]
}

/** The first two, three and four of the pieces that may stay at home. */
export function leftTogether({ area }: Finding, singles: readonly SingleChange[]): readonly RemedyChange[] {
  if (area !== 'load') return []
  const pieceIds = [
    ...new Set(singles.flatMap((change) => (change.kind === 'leave-behind' ? change.pieceIds.slice(0, 1) : []))),
  ]
  return [2, 3, 4]
    .filter((count) => count <= pieceIds.length)
    .map((count) => ({ kind: 'leave-behind', pieceIds: pieceIds.slice(0, count) }) as const)
}

/** Changes of one slot replace one another: a night has one set-point, but many pieces of bedding. */
function slot(change: SingleChange): string {
  if (change.kind === 'bring-bedding' || change.kind === 'bed-heater' || change.kind === 'stop-on-the-way')
    return changeId(change)
  return `${change.kind}:${'nightId' in change ? change.nightId : ''}`
}

function leftWith(at: Attempts, shortfall: Finding, changes: readonly SingleChange[]): number {
  const changed = changedTrip(at.trip, { kind: 'together', changes })
  return changed === null ? Infinity : (missing(nightsAgain(at, changed), shortfall) ?? Infinity)
}

/** How much a plan lacks, in a unit of the shortfall's own; 0 where it is gone, null where no number tells. */
function missing(plan: Plan, { id, nightId, problem }: Finding): number | null {
  const outcome = plan.nights.find((night) => night.nightId === nightId)?.outcome
  if (problem.code === 'leg-too-long') return Math.max(0, -(outcome?.leg?.marginWh ?? 0))
  // Whether bag or body rules may change on the way: the sleeper counts.
  const sleeper = outcome?.sleepers.find(({ sleeperId }) => id.endsWith(`:${sleeperId}`))
  return problem.code.startsWith('too-cold') && sleeper !== undefined ? Math.max(0, -sleeper.marginK) : null
}
