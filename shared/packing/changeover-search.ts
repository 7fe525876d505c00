/** The shortest list of moves from one arrangement to another: best-first over whole states, every state on the way legal. */
import { enters, harmless, inTheWay, leaves, misplaced, sameSpot } from './changeover-moves.ts'
import type { ChangeoverTask, Spot, Step } from './changeover-moves.ts'
import { replay, shortened } from './changeover-shorten.ts'
import { walk } from './changeover-walk.ts'
import type { Random } from './random.ts'

export type ChangeoverFound = {
  readonly steps: readonly Step[]
  readonly complete: boolean
  readonly optimal: boolean
  readonly lowerBound: number
  readonly final: readonly Spot[]
}

type Node = {
  readonly spots: readonly Spot[]
  readonly spent: number
  readonly left: number
  readonly parent: Node | null
  readonly step: Step | null
}

const spotKey = (spot: Spot): string =>
  spot.kind === 'away'
    ? spot.name
    : `${spot.bay}:${spot.box.x1},${spot.box.y1},${spot.box.z1},${spot.box.x2},${spot.box.y2},${spot.box.z2}`

/**
 * Finds the moves: greedy walks, shortened; where those miss the lower bound and the case is small, best-first over whole states.
 * `optimal` where the best-first search ran over all states, or the list meets the lower bound.
 */
export const searchChangeover = (task: ChangeoverTask, random: Random): ChangeoverFound => {
  const start = task.movers.map((mover) => mover.source)
  const lowerBound = misplaced(task, start).length
  const walked = walk(task, random)
  const complete = misplaced(task, walked.final).length === 0
  const steps = complete ? shortened(task, walked.steps) : walked.steps
  if (complete && steps.length === lowerBound)
    return { steps, complete, optimal: true, lowerBound, final: walked.final }
  const exact = task.nodeLimit > 0 ? run(task, start) : { goal: null, proven: false }
  if (exact.goal === null) return { steps, complete, optimal: false, lowerBound, final: walked.final }
  const best = stepsTo(exact.goal)
  const optimal = exact.proven || best.length === lowerBound
  return {
    steps: best,
    complete: true,
    optimal,
    lowerBound: optimal ? best.length : lowerBound,
    final: exact.goal.spots,
  }
}

/**
 * The same change there and back. Every legal list is legal backwards, move by move, so the better of the two searches serves both ways.
 */
export const searchBothWays = (
  task: ChangeoverTask,
  random: Random,
): { readonly there: ChangeoverFound; readonly back: ChangeoverFound } => {
  const backTask: ChangeoverTask = {
    ...task,
    movers: task.movers.map((mover) => ({ ...mover, source: mover.target, target: mover.source, late: false })),
  }
  const there = searchChangeover(task, random)
  if (there.optimal) return { there, back: turnedRound(backTask, there) ?? searchChangeover(backTask, random) }
  const back = searchChangeover(backTask, random)
  const there2 = better(back, there) ? turnedRound(task, back) : null
  const back2 = better(there, back) ? turnedRound(backTask, there) : null
  return { there: there2 ?? there, back: back2 ?? back }
}

const better = (a: ChangeoverFound, b: ChangeoverFound): boolean =>
  a.complete && (!b.complete || a.steps.length < b.steps.length)

const turnedRound = (task: ChangeoverTask, found: ChangeoverFound): ChangeoverFound | null => {
  const steps = replay(
    task,
    found.steps.toReversed().map((step) => ({ ...step, from: step.to, to: step.from })),
  )
  return steps === null ? null : { ...found, steps, final: task.movers.map((mover) => mover.target) }
}

const stepsTo = (node: Node): readonly Step[] => {
  const steps: Step[] = []
  for (let at: Node | null = node; at !== null; at = at.parent) if (at.step !== null) steps.unshift(at.step)
  return steps
}

const run = (
  task: ChangeoverTask,
  start: readonly Spot[],
): { readonly goal: Node | null; readonly proven: boolean } => {
  const root: Node = { spots: start, spent: 0, left: misplaced(task, start).length, parent: null, step: null }
  const queue = new NodeQueue()
  queue.push(root)
  const closed = new Map<string, number>()
  for (let looked = 0; looked < task.nodeLimit && !task.shouldStop(); looked++) {
    const node = queue.pop()
    if (node === null) return { goal: null, proven: false }
    if (node.left === 0) return { goal: node, proven: task.exhaustive }
    const key = node.spots.map(spotKey).join('|')
    if ((closed.get(key) ?? Infinity) <= node.spent) continue
    closed.set(key, node.spent)
    expand(task, node, queue)
  }
  return { goal: null, proven: false }
}

const expand = (task: ChangeoverTask, node: Node, queue: NodeQueue): void => {
  const wrong = misplaced(task, node.spots)
  const direct: Step[] = []
  for (const mover of wrong) {
    const item = task.movers[mover]
    const from = node.spots[mover]
    if (item === undefined || from === undefined) continue
    const out = leaves(task, node.spots, mover)
    if (out < 0) continue
    const into = enters(task, node.spots, mover, item.target)
    if (into < 0) continue
    const step: Step = { mover, from, to: item.target, window: from.kind === 'bay' ? out : into }
    if (!task.exhaustive && harmless(task, node.spots, mover, item.target, wrong)) {
      queue.push(childOf(node, step, node.left - 1))
      return
    }
    direct.push(step)
  }
  for (const step of direct) queue.push(childOf(node, step, node.left - 1))
  const waiters = task.exhaustive ? task.movers.map((_, mover) => mover) : inTheWay(task, node.spots, wrong)
  for (const mover of waiters) {
    const from = node.spots[mover]
    const item = task.movers[mover]
    if (from === undefined || item === undefined) continue
    const out = leaves(task, node.spots, mover)
    if (out < 0) continue
    for (const to of task.waitsFor(mover, node.spots)) {
      if (sameSpot(from, to) || sameSpot(to, item.target)) continue
      const into = enters(task, node.spots, mover, to)
      if (into < 0) continue
      const added = sameSpot(from, item.target) ? 1 : 0
      queue.push(childOf(node, { mover, from, to, window: from.kind === 'bay' ? out : into }, node.left + added))
    }
  }
}

const childOf = (node: Node, step: Step, left: number): Node => {
  const spots = node.spots.slice()
  spots[step.mover] = step.to
  return { spots, spent: node.spent + 1, left, parent: node, step }
}

/** A binary heap on cost so far plus distance left; deeper nodes break ties. */
class NodeQueue {
  private readonly heap: Node[] = []
  private before(a: Node, b: Node): boolean {
    const costA = a.spent + a.left
    const costB = b.spent + b.left
    return costA < costB || (costA === costB && a.left < b.left)
  }

  push(node: Node): void {
    const heap = this.heap
    heap.push(node)
    let at = heap.length - 1
    while (at > 0) {
      const up = (at - 1) >> 1
      const parent = heap[up]
      if (parent === undefined || !this.before(node, parent)) break
      heap[at] = parent
      at = up
    }
    heap[at] = node
  }

  pop(): Node | null {
    const heap = this.heap
    const top = heap[0]
    const last = heap.pop()
    if (top === undefined || last === undefined) return null
    if (heap.length === 0) return top
    let at = 0
    for (;;) {
      let child = 2 * at + 1
      const left = heap[child]
      if (left === undefined) break
      const right = heap[child + 1]
      let pick = left
      if (right !== undefined && this.before(right, left)) {
        child++
        pick = right
      }
      if (!this.before(pick, last)) break
      heap[at] = pick
      at = child
    }
    heap[at] = last
    return top
  }
}
