/** Start times and latest starts along a fixed order. */
import type { Task } from './task.ts'

export type TaskTimes = { readonly startS: number | null; readonly latestStartS: number | null }

/**
 * When each task of a sequence starts.
 * `sequence`: tasks in the order to do them; `due`: deadlines in s, +Infinity for none, same order.
 * Latest start: the last instant at which beginning this task still lets it and all after it meet their deadlines; null
 * where no deadline follows. Start: as soon as its release and the task before allow; a task that nothing holds back
 * starts at its latest.
 */
export function timesOf(sequence: readonly Task[], due: readonly number[]): readonly TaskTimes[] {
  const latest = latestStarts(sequence, due)
  let now: number | null = null
  return sequence.map((task, index) => {
    const latestS = latest[index] ?? Infinity
    const latestStartS = Number.isFinite(latestS) ? latestS : null
    const startS: number | null =
      task.releaseS === null && now === null ? latestStartS : Math.max(task.releaseS ?? -Infinity, now ?? -Infinity)
    now = startS === null ? null : startS + task.durationS
    return { startS, latestStartS }
  })
}

function latestStarts(sequence: readonly Task[], due: readonly number[]): readonly number[] {
  const latest: number[] = []
  let next = Infinity
  for (let index = sequence.length - 1; index >= 0; index--) {
    next = Math.min(due[index] ?? Infinity, next) - (sequence[index]?.durationS ?? 0)
    latest[index] = next
  }
  return latest
}
