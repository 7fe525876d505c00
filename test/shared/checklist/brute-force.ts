/** The slow, obvious twin of the scheduler: every order is tried. */
import type { Task } from '../../../shared/checklist/task.ts'

/** Whether task `a` must come before task `b` among `tasks`, directly or through others. */
export function mustPrecede(tasks: readonly Task[], a: Task, b: Task): boolean {
  if (a.rank !== b.rank) return a.rank < b.rank
  const seen = new Set<string>()
  const queue = [...b.after]
  for (const key of queue) {
    if (key === a.key) return true
    if (seen.has(key)) continue
    seen.add(key)
    queue.push(...(tasks.find((task) => task.key === key)?.after ?? []))
  }
  return false
}

/** The least possible greatest lateness of `part`, under the order that `all` imposes; -Infinity without deadlines. */
export function leastLateness(all: readonly Task[], part: readonly Task[]): number {
  const before = part.map((b) => part.map((a) => a !== b && mustPrecede(all, a, b)))
  const used = part.map(() => false)
  let best = Infinity
  const place = (count: number, now: number, late: number): void => {
    if (late >= best) return
    if (count === part.length) best = late
    for (const [index, task] of part.entries()) {
      if (used[index] || part.some((_, other) => before[index]?.[other] && !used[other])) continue
      used[index] = true
      const end = Math.max(now, task.releaseS ?? -1e9) + task.durationS
      place(count + 1, end, Math.max(late, task.dueS === null ? -Infinity : end - task.dueS))
      used[index] = false
    }
  }
  place(0, -1e9, -Infinity)
  return best
}

/** Whether the links and phases can all be obeyed. */
export function hasCircle(tasks: readonly Task[]): boolean {
  const left = new Set(tasks)
  for (;;) {
    const free = [...left].find(
      (task) =>
        [...left].every((other) => other === task || (!task.after.includes(other.key) && !(other.rank < task.rank))) &&
        !task.after.includes(task.key),
    )
    if (free === undefined) return left.size > 0
    left.delete(free)
  }
}

/** A small reproducible stream of numbers in [0, 1). Source: T. Ettinger's mulberry32, public domain. */
export function stream(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

export type GraphShape = {
  readonly tasks: number
  readonly ranks: number
  readonly links: number
  readonly tight: number
}

/** A random step graph. `links`: chance of a link to an earlier task; `tight`: chance of a deadline. */
export function randomTasks(next: () => number, shape: GraphShape, circles = false): readonly Task[] {
  const pick = (limit: number): number => Math.floor(next() * limit)
  const ranks = Array.from({ length: shape.tasks }, () => pick(shape.ranks)).toSorted((a, b) => a - b)
  const tasks: Task[] = []
  for (const [index, rank] of ranks.entries()) {
    const others = circles ? shape.tasks : index
    const after = Array.from({ length: others }, (_, other) => `t${other}`).filter(() => next() < shape.links)
    const releaseS = next() < 0.5 ? pick(20) : null
    const durationS = pick(6)
    const dueS = next() < shape.tight ? pick(30) + 2 : null
    tasks.push({ key: `t${index}`, rank, durationS, releaseS, dueS, after })
  }
  return tasks
}
