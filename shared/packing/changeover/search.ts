/** The shortest list of moves from one arrangement to another: best-first over whole states, every state on the way legal. */
import { overlaps } from '../geometry.ts'
import { enters, leaves, misplaced, sameSpot } from './moves.ts'
import type { ChangeoverTask, Spot, Step } from './moves.ts'
import { beamSearch } from './beam.ts'
import { circlesIn } from './circles.ts'
import { replay, shortened } from './shorten.ts'

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

/**
 * No list is shorter: each misplaced thing moves once, and of things that each wait for another's place in a circle one moves twice.
 * Circles are counted by strongly connected sets, which share no thing.
 */
const leastMoves = (task: ChangeoverTask, start: readonly Spot[]): number => {
  const wrong = misplaced(task, start)
  const waitsFor = wrong.map((mover) => {
    const target = task.movers[mover]?.target
    return wrong.flatMap((other, at) => {
      const stands = start[other]
      return other !== mover && target !== undefined && stands !== undefined && sameRoom(target, stands) ? [at] : []
    })
  })
  return wrong.length + circlesIn(waitsFor)
}

const sameRoom = (a: Spot, b: Spot): boolean =>
  a.kind === 'bay' && b.kind === 'bay' && a.bay === b.bay && overlaps(a.box, b.box)

const spotKey = (spot: Spot): string =>
  spot.kind === 'away'
    ? spot.name
    : `${spot.bay}:${spot.box.x1},${spot.box.y1},${spot.box.z1},${spot.box.x2},${spot.box.y2},${spot.box.z2}`

/** Times as many arrangements are followed where something was stuck. */
const WIDER = 4

/**
 * Finds the moves: a beam search, shortened; where that misses the lower bound and the case is small, best-first over whole states.
 * `optimal` where the best-first search left no shorter list to be looked at, or the list meets the lower bound.
 */
export const searchChangeover = (task: ChangeoverTask): ChangeoverFound => {
  const start = task.movers.map((mover) => mover.source)
  const lowerBound = leastMoves(task, start)
  const first = beamSearch(task, 1)
  const walked = first.left === 0 || !task.thorough ? first : beamSearch(task, WIDER)
  const complete = walked.left === 0
  const steps = complete ? shortened(task, walked.steps) : walked.steps
  if (complete && steps.length === lowerBound)
    return { steps, complete, optimal: true, lowerBound, final: walked.final }
  if (task.nodeLimit === 0) return { steps, complete, optimal: false, lowerBound, final: walked.final }
  const exact = run(task, start, complete ? steps.length : Infinity)
  if (exact.goal !== null) {
    const best = stepsTo(exact.goal)
    return { steps: best, complete: true, optimal: true, lowerBound: best.length, final: exact.goal.spots }
  }
  const optimal = complete && exact.exhausted
  return { steps, complete, optimal, lowerBound: optimal ? steps.length : exact.bound, final: walked.final }
}

/**
 * The same change there and back. Every legal list is legal backwards, move by move, so the better of the two searches serves both ways.
 */
export const searchBothWays = (
  task: ChangeoverTask,
): { readonly there: ChangeoverFound; readonly back: ChangeoverFound } => {
  const backTask: ChangeoverTask = {
    ...task,
    movers: task.movers.map((mover) => ({ ...mover, source: mover.target, target: mover.source, late: false })),
  }
  const there = searchChangeover(task)
  if (there.optimal) return { there, back: turnedRound(backTask, there) ?? searchChangeover(backTask) }
  const back = searchChangeover(backTask)
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

type Exact = {
  readonly goal: Node | null
  /** True where no list shorter than the one in hand is left to be looked at. */
  readonly exhausted: boolean
  /** No list can be shorter. */
  readonly bound: number
}

/** Best-first over whole states, for lists shorter than `below` only. The first that arrives is the shortest there is. */
const run = (task: ChangeoverTask, start: readonly Spot[], below: number): Exact => {
  const root: Node = { spots: start, spent: 0, left: misplaced(task, start).length, parent: null, step: null }
  const queue = new NodeQueue()
  const push = (node: Node): void => {
    if (node.spent + node.left < below) queue.push(node)
  }
  push(root)
  const closed = new Map<string, number>()
  let bound = root.left
  for (let looked = 0; ;) {
    const node = queue.pop()
    if (node === null) return { goal: null, exhausted: true, bound: Number.isFinite(below) ? below : bound }
    bound = Math.max(bound, node.spent + node.left)
    if (node.left === 0) return { goal: node, exhausted: true, bound }
    const key = node.spots.map(spotKey).join('|')
    if ((closed.get(key) ?? Infinity) <= node.spent) continue
    closed.set(key, node.spent)
    if (looked++ >= task.nodeLimit || task.shouldStop()) return { goal: null, exhausted: false, bound }
    expand(task, node, below, push)
  }
}

/** Every legal move from a state: home, or to a waiting place. */
const expand = (task: ChangeoverTask, node: Node, below: number, push: (child: Node) => void): void => {
  task.movers.forEach((item, mover) => {
    const from = node.spots[mover]
    const out = from === undefined ? -1 : leaves(task, node.spots, mover)
    if (from === undefined || out < 0) return
    const home = sameSpot(from, item.target)
    // A wait makes the list longer by one at least; where no longer one is wanted it is not asked for.
    const mayWait = node.spent + node.left + 1 < below
    for (const to of [...(home ? [] : [item.target]), ...(mayWait ? task.waitsFor(mover, node.spots) : [])]) {
      if (sameSpot(from, to)) continue
      const into = enters(task, node.spots, mover, to)
      if (into < 0) continue
      const step: Step = { mover, from, to, window: from.kind === 'bay' ? out : into }
      push(childOf(node, step, node.left + (home ? 1 : 0) - (sameSpot(to, item.target) ? 1 : 0)))
    }
  })
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
