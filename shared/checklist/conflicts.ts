/** Windows that cannot all be kept: the smallest sets of tasks that are impossible on their own. */
import { leastLate } from './one-machine.ts'
import type { Instance } from './one-machine.ts'
import type { OrderedTasks } from './task.ts'

export type Impossible = {
  /** Positions, in order. Leave any one out and the rest, taken alone, can be done in time. */
  readonly members: readonly number[]
  /** How late the deadlines of the members are missed at best, with everything else done too. */
  readonly lateByS: number
}

export type Settled = {
  readonly impossible: readonly Impossible[]
  /** Deadlines as far as they can be kept: those in a conflict are put off by as much as it is late. */
  readonly due: readonly number[]
}

const MAX_NODES = 3000 // trial orders for one question; random graphs of ten tasks need under fifty
const MAX_CONFLICTS = 20 // more would not be read

/** Seconds before everything else: where tasks that may start at any time begin. */
function originS(tasks: OrderedTasks['tasks']): number {
  let first = Infinity
  let total = 0
  for (const task of tasks) {
    first = Math.min(first, task.releaseS ?? Infinity, task.dueS ?? Infinity)
    total += task.durationS
  }
  return Number.isFinite(first) ? first - total : 0
}

/** The whole problem as arrays. */
export function instanceOf({ tasks, earlier }: OrderedTasks, due: readonly number[] | null = null): Instance {
  const origin = originS(tasks)
  return {
    duration: tasks.map((task) => task.durationS),
    release: tasks.map((task) => task.releaseS ?? origin),
    due: due ?? tasks.map((task) => task.dueS ?? Infinity),
    rank: tasks.map((task) => task.rank),
    earlier,
  }
}

/** The same problem for some of its tasks: their own windows, and the order among them. */
function partOf(whole: Instance, members: readonly number[]): Instance {
  const placeOf = new Map(members.map((index, place) => [index, place]))
  const pick = (values: readonly number[]): readonly number[] => members.map((index) => values[index] ?? 0)
  return {
    duration: pick(whole.duration),
    release: pick(whole.release),
    due: members.map((index) => whole.due[index] ?? Infinity),
    rank: pick(whole.rank),
    earlier: members.map((index) => (whole.earlier[index] ?? []).flatMap((one) => placeOf.get(one) ?? [])),
  }
}

/** How late the tasks are at best, taken alone; null where that is not proven to be late. */
function provenLateS(whole: Instance, members: readonly number[]): number | null {
  const found = leastLate(members.length === whole.rank.length ? whole : partOf(whole, members), MAX_NODES)
  return found.proven && found.lateS > 0 ? found.lateS : null
}

/**
 * Names every impossible window.
 * `ordered`: tasks with releases, deadlines, predecessors, s.
 * The conflicts, each minimal, and deadlines that can be kept together. Nothing is named that is not proven impossible.
 * Source: deletion filter, J. W. Chinneck, E. W. Dravnieks (1991), ORSA J. Comput. 3: 157-168.
 */
export function settleConflicts(ordered: OrderedTasks): Settled {
  let whole = instanceOf(ordered)
  const all = whole.duration.map((_, index) => index)
  const impossible: Impossible[] = []
  while (impossible.length < MAX_CONFLICTS && provenLateS(whole, all) !== null) {
    const members = smallestImpossible(whole, all)
    const missed = new Set(members.map((index) => whole.due[index]))
    const only = whole.due.map((due) => (missed.has(due) ? due : Infinity))
    const lateByS = provenLateS({ ...whole, due: only }, all)
    if (lateByS === null) break
    impossible.push({ members, lateByS })
    // Everything that shares the missed deadline is late with it: one window, one conflict.
    whole = { ...whole, due: whole.due.map((due) => (missed.has(due) ? due + lateByS : due)) }
  }
  return { impossible, due: whole.due }
}

function smallestImpossible(whole: Instance, all: readonly number[]): readonly number[] {
  const alone = all.find((one) => (whole.release[one] ?? 0) + (whole.duration[one] ?? 0) > (whole.due[one] ?? Infinity))
  if (alone !== undefined) return [alone]
  let members = narrowed(whole, aroundFirstLate(whole, all))
  // The short ones go first: what stays are the fewest, longest steps.
  for (const one of members.toSorted((a, b) => (whole.duration[a] ?? 0) - (whole.duration[b] ?? 0))) {
    const without = members.filter((index) => index !== one)
    if (provenLateS(whole, without) !== null) members = without
  }
  return members
}

/** The phases done without a pause up to the first late task, where they are impossible on their own; else everything. */
function aroundFirstLate(whole: Instance, all: readonly number[]): readonly number[] {
  const { order } = leastLate(whole, MAX_NODES)
  let now = -Infinity
  let busyFrom = 0
  for (const task of order) {
    const release = whole.release[task] ?? 0
    if (release > now) busyFrom = whole.rank[task] ?? 0
    now = Math.max(now, release) + (whole.duration[task] ?? 0)
    if (now <= (whole.due[task] ?? Infinity)) continue
    const last = whole.rank[task] ?? 0
    const part = all.filter((index) => (whole.rank[index] ?? 0) >= busyFrom && (whole.rank[index] ?? 0) <= last)
    return provenLateS(whole, part) === null ? all : part
  }
  return all
}

/** Leaves out phases from either end while the rest stays impossible, so that the filter starts small. */
function narrowed(whole: Instance, all: readonly number[]): readonly number[] {
  const ranks = [...new Set(all.map((index) => whole.rank[index] ?? 0))]
  let members = all
  for (const rank of [...ranks, ...ranks.toReversed()]) {
    const without = members.filter((index) => whole.rank[index] !== rank)
    if (without.length > 0 && without.length < members.length && provenLateS(whole, without) !== null) members = without
  }
  return members
}
