/** Takes needless stops out of a list of moves: a unit that waits goes straight where the whole list stays legal without the stop. */
import { enters, leaves, sameSpot } from './moves.ts'
import type { ChangeoverTask, Spot, Step } from './moves.ts'

/** The same change with as few stops as single strikes can reach; every state on the way legal. */
export const shortened = (task: ChangeoverTask, steps: readonly Step[]): readonly Step[] => {
  let best = steps
  for (let at = 0; at < best.length && !task.shouldStop(); at++) {
    const shorter = strike(task, best, at)
    if (shorter === null) continue
    best = shorter
    at = -1
  }
  return best
}

/** Joins the move at `at` with the next of the same unit, at the earlier or the later time; or drops a round trip. */
const strike = (task: ChangeoverTask, steps: readonly Step[], at: number): readonly Step[] | null => {
  const first = steps[at]
  if (first === undefined) return null
  const next = steps.findIndex((step, index) => index > at && step.mover === first.mover)
  const second = steps[next]
  if (second === undefined) return null
  const without = steps.filter((_, index) => index !== at && index !== next)
  if (sameSpot(first.from, second.to)) return replay(task, without)
  const joined: Step = { ...first, to: second.to }
  const early = [...without.slice(0, at), joined, ...without.slice(at)]
  const late = [...without.slice(0, next - 1), joined, ...without.slice(next - 1)]
  return replay(task, late) ?? replay(task, early)
}

/** Plays a list from the start, finding the openings used; null where a move is not legal. */
export const replay = (task: ChangeoverTask, steps: readonly Step[]): readonly Step[] | null => {
  const spots: Spot[] = task.movers.map((mover) => mover.source)
  const played: Step[] = []
  for (const step of steps) {
    const from = spots[step.mover]
    if (from === undefined || !sameSpot(from, step.from)) return null
    const out = leaves(task, spots, step.mover)
    const into = out < 0 ? -1 : enters(task, spots, step.mover, step.to)
    if (into < 0) return null
    spots[step.mover] = step.to
    played.push({ ...step, window: from.kind === 'bay' ? out : into })
  }
  return played
}
