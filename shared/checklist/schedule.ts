/** Tasks in the order to do them, with times; circles and impossible windows named. */
import { instanceOf, settleConflicts } from './conflicts.ts'
import { leastLate } from './one-machine.ts'
import type { Instance } from './one-machine.ts'
import { orderTasks } from './order.ts'
import { timesOf } from './times.ts'
import type { OrderedTasks, Task } from './task.ts'

export type ScheduledTask = {
  readonly key: string
  readonly startS: number | null
  readonly latestStartS: number | null
}

export type Schedule = {
  readonly tasks: readonly ScheduledTask[]
  readonly circles: readonly (readonly string[])[]
  readonly impossible: readonly { readonly keys: readonly string[]; readonly lateByS: number }[]
}

const MAX_NODES = 3000 // as for one conflict

/**
 * The schedule of one person.
 * `tasks`: keys unique, whole seconds; phases follow one another by rank.
 * Every task once, in order, with its start and latest start (null where no window bears on it); circles; impossible
 * sets, each minimal. The given order is kept wherever it meets the deadlines.
 * Source: topological sort (Kahn 1962), one-machine sequencing (Carlier 1982).
 */
export function schedule(tasks: readonly Task[]): Schedule {
  const { ordered, circles } = orderTasks(tasks)
  const { impossible, due } = settleConflicts(ordered)
  const order = readableOrder(ordered, due)
  const sequence = order.flatMap((index) => ordered.tasks[index] ?? [])
  const times = timesOf(
    sequence,
    order.map((index) => due[index] ?? Infinity),
  )
  return {
    tasks: sequence.map((task, place) => ({
      key: task.key,
      ...(times[place] ?? { startS: null, latestStartS: null }),
    })),
    circles,
    impossible: impossible.map((one) => ({
      keys: one.members.flatMap((index) => ordered.tasks[index]?.key ?? []),
      lateByS: one.lateByS,
    })),
  }
}

/** The order as given, phase by phase, unless a deadline asks for another. */
function readableOrder(ordered: OrderedTasks, due: readonly number[]): readonly number[] {
  const instance = instanceOf(ordered, due)
  const given = asGiven(instance)
  if (lateness(given, instance) <= 0) return given
  const urgent = leastLate(instance, MAX_NODES)
  let order = urgent.order
  const allowed = Math.max(0, urgent.lateS)
  for (const rank of new Set(instance.rank)) {
    const part = given.filter((index) => instance.rank[index] === rank)
    let next = 0
    const trial = order.map((index) => (instance.rank[index] === rank ? (part[next++] ?? index) : index))
    if (lateness(trial, instance) <= allowed) order = trial
  }
  return order
}

/** Does the first task in the given order that may start; waits only where none may. Tasks are sorted by rank. */
function asGiven({ release, duration, earlier, rank }: Instance): readonly number[] {
  const order: number[] = []
  const done = new Set<number>()
  let now = -Infinity
  for (let from = 0; from < rank.length;) {
    const end = rank.findIndex((one, index) => index > from && one !== rank[from])
    let left = Array.from({ length: (end < 0 ? rank.length : end) - from }, (_, place) => from + place)
    from += left.length
    while (left.length > 0) {
      const free = left.filter((index) => (earlier[index] ?? []).every((one) => done.has(one)))
      now = Math.max(now, Math.min(...free.map((index) => release[index] ?? 0)))
      const next = free.find((index) => (release[index] ?? 0) <= now) ?? left[0] ?? 0
      order.push(next)
      done.add(next)
      now += duration[next] ?? 0
      left = left.filter((index) => index !== next)
    }
  }
  return order
}

function lateness(order: readonly number[], instance: Instance): number {
  let now = -Infinity
  let lateS = -Infinity
  for (const index of order) {
    now = Math.max(now, instance.release[index] ?? 0) + (instance.duration[index] ?? 0)
    lateS = Math.max(lateS, now - (instance.due[index] ?? Infinity))
  }
  return lateS
}
