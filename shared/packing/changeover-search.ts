/** The shortest list of moves from one arrangement to another: best-first over whole states, every state on the way legal. */
import type { BayModel } from './bay-model.ts'
import { inside, moved, overlaps, sharedFootprint } from './geometry.ts'
import type { Box } from './geometry.ts'
import { freeWindow } from './passage.ts'

/** A place: in a bay, or away under a name (made into the bed, outdoors, ...). */
export type Spot =
  | { readonly kind: 'bay'; readonly bay: number; readonly box: Box }
  | { readonly kind: 'away'; readonly name: string }

export type Mover = {
  readonly source: Spot
  readonly target: Spot
  /** Becomes part of the bed: rather last. */
  readonly late: boolean
  readonly massG: number
  readonly bearsG: number
}

export type ChangeoverTask = {
  readonly bays: readonly BayModel[]
  readonly movers: readonly Mover[]
  /** Places where a mover may wait in a given state, best first. */
  readonly waitsFor: (mover: number, spots: readonly Spot[]) => readonly Spot[]
  /** States looked at before the search settles for a good answer. */
  readonly nodeLimit: number
  /** Let any unit wait (small cases); else only what stands in a way. */
  readonly exhaustive: boolean
  readonly shouldStop: () => boolean
}

export type Step = { readonly mover: number; readonly from: Spot; readonly to: Spot; readonly window: number }

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

export const sameSpot = (a: Spot, b: Spot): boolean => {
  if (a.kind === 'away') return b.kind === 'away' && a.name === b.name
  return (
    b.kind === 'bay' &&
    a.bay === b.bay &&
    a.box.x1 === b.box.x1 &&
    a.box.y1 === b.box.y1 &&
    a.box.z1 === b.box.z1 &&
    a.box.x2 === b.box.x2 &&
    a.box.y2 === b.box.y2 &&
    a.box.z2 === b.box.z2
  )
}

const spotKey = (spot: Spot): string =>
  spot.kind === 'away' ? spot.name : `${spot.bay}:${spot.box.x1},${spot.box.y1},${spot.box.z1},${spot.box.x2},${spot.box.y2},${spot.box.z2}`

const inBay = (spots: readonly Spot[], bay: number, but: number): Box[] => {
  const boxes: Box[] = []
  spots.forEach((spot, mover) => {
    if (mover !== but && spot.kind === 'bay' && spot.bay === bay) boxes.push(spot.box)
  })
  return boxes
}

/** Window by which a mover can leave where it is; -1 where it cannot, 0 where it is away. */
export const leaves = (task: ChangeoverTask, spots: readonly Spot[], mover: number): number => {
  const spot = spots[mover]
  if (spot === undefined) return -1
  if (spot.kind === 'away') return 0
  const bay = task.bays[spot.bay]
  return bay === undefined ? -1 : freeWindow(bay, inBay(spots, spot.bay, mover), spot.box)
}

/** Window by which a mover can be put at a place; -1 where it cannot, 0 where the place is away. */
export const enters = (task: ChangeoverTask, spots: readonly Spot[], mover: number, to: Spot): number => {
  if (to.kind === 'away') return 0
  const bay = task.bays[to.bay]
  if (bay === undefined || !inside(to.box, bay.box)) return -1
  const others = inBay(spots, to.bay, mover)
  if (others.some((other) => overlaps(other, to.box))) return -1
  if (bay.solids.some((solid) => overlaps(solid.box, to.box))) return -1
  if (!stands(task, spots, mover, to, bay)) return -1
  if (meetsOtherBay(task, spots, mover, to, bay)) return -1
  return freeWindow(bay, others, to.box)
}

const stands = (
  task: ChangeoverTask,
  spots: readonly Spot[],
  mover: number,
  to: Extract<Spot, { kind: 'bay' }>,
  bay: BayModel,
): boolean => {
  if (to.box.z1 === 0) return true
  let heldMm2 = 0
  for (const solid of bay.solids) {
    if (solid.supports && solid.box.z2 === to.box.z1) heldMm2 += sharedFootprint(solid.box, to.box)
  }
  for (let other = 0; other < spots.length; other++) {
    const spot = spots[other]
    if (other === mover || spot === undefined || spot.kind === 'away' || spot.bay !== to.bay) continue
    if (spot.box.z2 !== to.box.z1) continue
    const area = sharedFootprint(spot.box, to.box)
    if (area > 0 && (task.movers[other]?.bearsG ?? 0) < (task.movers[mover]?.massG ?? 0) && !isTarget(task, mover, to)) return false
    heldMm2 += area
  }
  return heldMm2 >= (to.box.x2 - to.box.x1) * (to.box.y2 - to.box.y1)
}

const isTarget = (task: ChangeoverTask, mover: number, spot: Spot): boolean => {
  const target = task.movers[mover]?.target
  return target !== undefined && sameSpot(target, spot)
}

/** Two bays of the two layouts may be the same air: a folded seat back stands where the load bay was. */
const meetsOtherBay = (
  task: ChangeoverTask,
  spots: readonly Spot[],
  mover: number,
  to: Extract<Spot, { kind: 'bay' }>,
  bay: BayModel,
): boolean => {
  if (bay.bay.belongsTo === 'site') return false
  const here = moved(to.box, bay.bay.originMm)
  return spots.some((spot, other) => {
    if (other === mover || spot.kind === 'away' || spot.bay === to.bay) return false
    const bayThere = task.bays[spot.bay]
    if (bayThere === undefined || bayThere.bay.belongsTo === 'site') return false
    const apart =
      (bay.bay.usable.drive && bayThere.bay.usable.drive) || (bay.bay.usable.bed && bayThere.bay.usable.bed)
    return !apart && overlaps(here, moved(spot.box, bayThere.bay.originMm))
  })
}

const misplaced = (task: ChangeoverTask, spots: readonly Spot[]): number[] => {
  const wrong: number[] = []
  task.movers.forEach((mover, index) => {
    const spot = spots[index]
    if (spot !== undefined && !sameSpot(spot, mover.target)) wrong.push(index)
  })
  return wrong
}

/** Finds the moves. Complete and optimal within the node limit; else the best list found and a bound. */
export const searchChangeover = (task: ChangeoverTask): ChangeoverFound => {
  const start = task.movers.map((mover) => mover.source)
  const lowerBound = misplaced(task, start).length
  const exact = run(task, start, 1)
  if (exact.goal !== null) return resultOf(task, exact.goal, lowerBound, exact.proven)
  const greedy = run(task, start, GREED)
  if (greedy.goal !== null) return resultOf(task, greedy.goal, lowerBound, false)
  const nearest = greedy.nearest.left <= exact.nearest.left ? greedy.nearest : exact.nearest
  return resultOf(task, nearest, lowerBound, false)
}

/** Weight of the distance left when only a good answer is wanted. */
const GREED = 4

const resultOf = (task: ChangeoverTask, node: Node, lowerBound: number, proven: boolean): ChangeoverFound => {
  const steps: Step[] = []
  for (let at: Node | null = node; at !== null; at = at.parent) if (at.step !== null) steps.unshift(at.step)
  const complete = misplaced(task, node.spots).length === 0
  const optimal = complete && (proven || steps.length === lowerBound)
  return { steps, complete, optimal, lowerBound: optimal ? steps.length : lowerBound, final: node.spots }
}

const run = (
  task: ChangeoverTask,
  start: readonly Spot[],
  greed: number,
): { readonly goal: Node | null; readonly nearest: Node; readonly proven: boolean } => {
  const root: Node = { spots: start, spent: 0, left: misplaced(task, start).length, parent: null, step: null }
  const queue = new NodeQueue(greed)
  queue.push(root)
  const closed = new Map<string, number>()
  let nearest = root
  for (let looked = 0; looked < task.nodeLimit && !task.shouldStop(); looked++) {
    const node = queue.pop()
    if (node === null) return { goal: null, nearest, proven: false }
    if (node.left === 0) return { goal: node, nearest: node, proven: greed === 1 && task.exhaustive }
    const key = node.spots.map(spotKey).join('|')
    if ((closed.get(key) ?? Infinity) <= node.spent) continue
    closed.set(key, node.spent)
    if (node.left < nearest.left) nearest = node
    expand(task, node, queue)
  }
  return { goal: null, nearest, proven: false }
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
    if (harmless(task, node.spots, mover, item.target, wrong)) {
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

/** A final move that stands in nobody's way may as well be made now: no shorter list avoids it. */
const harmless = (
  task: ChangeoverTask,
  spots: readonly Spot[],
  mover: number,
  target: Spot,
  wrong: readonly number[],
): boolean => {
  if (target.kind === 'away') return true
  if (task.exhaustive) return false
  const after = spots.slice()
  after[mover] = target
  const bay = task.bays[target.bay]
  if (bay === undefined) return false
  const others = inBay(after, target.bay, -1)
  for (const other of wrong) {
    if (other === mover) continue
    const item = task.movers[other]
    const here = spots[other]
    if (item === undefined || here === undefined) continue
    if (here.kind === 'bay' && here.bay === target.bay && blocksNow(bay, inBay(spots, target.bay, other), inBay(after, target.bay, other), here.box)) return false
    const goal = item.target
    if (goal.kind !== 'bay' || goal.bay !== target.bay) continue
    const finals = task.movers.flatMap((each) => (each.target.kind === 'bay' && each.target.bay === target.bay ? [each.target.box] : []))
    const settled = others.filter((box) => finals.some((final) => sameBox(final, box)) && !sameBox(box, goal.box))
    if (settled.length > 0 && freeWindow(bay, settled, goal.box) < 0) return false
  }
  return true
}

const sameBox = (a: Box, b: Box): boolean =>
  a.x1 === b.x1 && a.y1 === b.y1 && a.z1 === b.z1 && a.x2 === b.x2 && a.y2 === b.y2 && a.z2 === b.z2

const blocksNow = (bay: BayModel, before: readonly Box[], after: readonly Box[], box: Box): boolean => {
  const was = freeWindow(bay, before, box)
  const is = freeWindow(bay, after, box)
  if (was >= 0) return is < 0
  return after.some((each) => !before.some((old) => sameBox(old, each)) && freeWindow(bay, [each], box) < 0)
}

/** Whatever keeps a misplaced unit from leaving or from its place. */
const inTheWay = (task: ChangeoverTask, spots: readonly Spot[], wrong: readonly number[]): number[] => {
  const found = new Set<number>()
  for (const mover of wrong) {
    const item = task.movers[mover]
    const here = spots[mover]
    if (item === undefined || here === undefined) continue
    found.add(mover)
    for (const place of [here, item.target]) {
      if (place.kind === 'away') continue
      spots.forEach((spot, other) => {
        if (other !== mover && spot.kind === 'bay' && spot.bay === place.bay) found.add(other)
      })
    }
  }
  return [...found]
}

/** A binary heap on cost so far plus weighted distance left; late movers and deeper nodes break ties. */
class NodeQueue {
  private readonly heap: Node[] = []
  private readonly greed: number

  constructor(greed: number) {
    this.greed = greed
  }

  private before(a: Node, b: Node): boolean {
    const costA = a.spent + this.greed * a.left
    const costB = b.spent + this.greed * b.left
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
