/** Start times and latest starts along a fixed order. */
import type { Task } from './task.ts'

export type TaskTimes = { readonly startS: number | null; readonly latestStartS: number | null }

/**
 * When each task of a sequence starts.
 * `sequence`: tasks in the order to do them; `due`: deadlines in s, +Infinity for none, same order.
 * Latest start: the last instant at which beginning this task still lets it and all after it meet their deadlines; null
 * where no deadline follows. Start: as soon as its release and the task before allow. What comes before the first release
 * is done just in time for it, or at its latest start where that is earlier; null where nothing tells when.
 */
export function timesOf(sequence: readonly Task[], due: readonly number[]): readonly TaskTimes[] {
  const latest = latestStarts(sequence, due)
  const first = sequence.findIndex((task) => task.releaseS !== null)
  const lead = sequence.slice(0, Math.max(0, first))
  let now =
    first < 0 ? Infinity : (sequence[first]?.releaseS ?? 0) - lead.reduce((sum, task) => sum + task.durationS, 0)
  now = Math.min(now, latest[0] ?? Infinity)
  return sequence.map((task, index) => {
    const startS = Math.max(now, task.releaseS ?? -Infinity)
    now = startS + task.durationS
    return { startS: finite(startS), latestStartS: finite(latest[index] ?? Infinity) }
  })
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)

function latestStarts(sequence: readonly Task[], due: readonly number[]): readonly number[] {
  const latest: number[] = []
  let next = Infinity
  for (let index = sequence.length - 1; index >= 0; index--) {
    next = Math.min(due[index] ?? Infinity, next) - (sequence[index]?.durationS ?? 0)
    latest[index] = next
  }
  return latest
}
