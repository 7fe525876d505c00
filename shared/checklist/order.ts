/** The order that phases and predecessors ask for; circles in it are named and opened. */
import type { OrderedTasks, Task } from './task.ts'

export type Circle = readonly string[]

export type Ordered = { readonly ordered: OrderedTasks; readonly circles: readonly Circle[] }

/**
 * Tasks sorted so that each comes after its predecessors, otherwise as given.
 * `tasks`: keys unique; predecessors that are not in the list are ignored.
 * The sorted tasks, the transitive predecessors, and each circle as its shortest ring of keys. A predecessor in a later
 * phase is a circle of two: phases pull one way, the rule the other. One link of each circle is dropped, so that the
 * rest can still be timed.
 * Source: A. B. Kahn (1962), topological sorting of large networks.
 */
export function orderTasks(tasks: readonly Task[]): Ordered {
  const links = linksOf(tasks)
  const circles: Circle[] = [...links.againstPhases]
  let sorted = sortTasks(tasks, links.before)
  while (sorted.left.length > 0) {
    const ring = shortestRing(sorted.left, links.before)
    circles.push(ring.map((index) => keyAt(tasks, index)))
    const [first, second] = [ring[0], ring[1] ?? ring[0]]
    if (first !== undefined && second !== undefined) links.before[second]?.delete(first)
    sorted = sortTasks(tasks, links.before)
  }
  return { ordered: withEarlier(tasks, sorted.order, links.before), circles }
}

const keyAt = (tasks: readonly Task[], index: number): string => tasks[index]?.key ?? ''

type Links = { readonly before: readonly Set<number>[]; readonly againstPhases: readonly Circle[] }

function linksOf(tasks: readonly Task[]): Links {
  const indexOf = new Map(tasks.map((task, index) => [task.key, index]))
  const againstPhases: Circle[] = []
  const before = tasks.map((task) => {
    const set = new Set<number>()
    for (const key of task.after) {
      const index = indexOf.get(key)
      const other = index === undefined ? undefined : tasks[index]
      if (index === undefined || other === undefined) continue
      if (other.rank > task.rank) againstPhases.push([task.key, key])
      else if (other.rank === task.rank) set.add(index)
    }
    return set
  })
  return { before, againstPhases }
}

type Sorted = { readonly order: readonly number[]; readonly left: readonly number[] }

/** Kahn's sort, rank by rank; of the tasks that are free the first given is next. */
function sortTasks(tasks: readonly Task[], before: readonly ReadonlySet<number>[]): Sorted {
  const order: number[] = []
  const left: number[] = []
  const done = new Set<number>()
  for (const group of groupsByRank(tasks)) {
    let waiting = group
    for (;;) {
      const next = waiting.find((index) => [...(before[index] ?? [])].every((one) => done.has(one)))
      if (next === undefined) break
      order.push(next)
      done.add(next)
      waiting = waiting.filter((index) => index !== next)
    }
    left.push(...waiting)
  }
  return { order, left }
}

function groupsByRank(tasks: readonly Task[]): readonly (readonly number[])[] {
  const groups = new Map<number, number[]>()
  for (const [index, task] of tasks.entries()) groups.set(task.rank, [...(groups.get(task.rank) ?? []), index])
  return [...groups].toSorted(([a], [b]) => a - b).map(([, group]) => group)
}

/** The shortest ring among tasks that cannot be sorted, each followed by one that must come after it. */
function shortestRing(left: readonly number[], before: readonly ReadonlySet<number>[]): readonly number[] {
  const among = new Set(left)
  let best: readonly number[] = []
  for (const start of left) {
    const ring = ringFrom(start, among, before)
    if (ring.length > 0 && (best.length === 0 || ring.length < best.length)) best = ring
  }
  return best
}

function ringFrom(
  start: number,
  among: ReadonlySet<number>,
  before: readonly ReadonlySet<number>[],
): readonly number[] {
  const cameFrom = new Map<number, number>()
  const queue = [start]
  for (const index of queue) {
    for (const earlier of before[index] ?? []) {
      if (earlier === start) return pathBack(index, start, cameFrom)
      if (!among.has(earlier) || cameFrom.has(earlier)) continue
      cameFrom.set(earlier, index)
      queue.push(earlier)
    }
  }
  return []
}

function pathBack(end: number, start: number, cameFrom: ReadonlyMap<number, number>): readonly number[] {
  const ring = [end]
  let at: number | undefined = end
  while (at !== start) {
    at = cameFrom.get(at)
    if (at === undefined) return []
    ring.push(at)
  }
  return [start, ...ring.slice(0, -1)]
}

function withEarlier(
  tasks: readonly Task[],
  order: readonly number[],
  before: readonly ReadonlySet<number>[],
): OrderedTasks {
  const placeOf = new Map(order.map((index, place) => [index, place]))
  const earlier: (readonly number[])[] = []
  for (const index of order) {
    const all = new Set<number>()
    for (const one of before[index] ?? []) {
      const place = placeOf.get(one)
      if (place === undefined) continue
      all.add(place)
      for (const further of earlier[place] ?? []) all.add(further)
    }
    earlier.push([...all])
  }
  return { tasks: order.flatMap((index) => tasks[index] ?? []), earlier }
}
