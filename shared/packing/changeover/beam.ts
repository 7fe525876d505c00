/** Finds a short list of moves for a whole car: whatever can go where it belongs and harms nobody goes; else several ways of putting one thing aside are followed at once. */
import { clearBit, conflictsOf, hasBit, holdsAll, meets, setBit, wouldBar } from './conflicts.ts'
import type { Conflicts } from './conflicts.ts'
import { enters, leaves, sameSpot } from './moves.ts'
import type { ChangeoverTask, Spot, Step } from './moves.ts'

export type Walked = { readonly steps: readonly Step[]; readonly final: readonly Spot[]; readonly left: number }

/** Arrangements followed side by side. */
const WIDTH = 5
/** Things brought home in turn, from each arrangement. */
const TRIED = 5
/** Moves put to clearing the way of one thing. */
const CLEARING = 12

const AT_FIRST = 0
const ARRIVED = 1
const WAITING = 2

type Chain = { readonly step: Step; readonly before: Chain | null }

type Node = {
  readonly spots: Spot[]
  /** By mover: at its first place, arrived, or waiting. */
  readonly stage: Uint8Array
  /** Places taken, first and final ones. */
  readonly standing: Uint32Array
  chain: Chain | null
  count: number
  left: number
}

/** The shortest list found by a beam over arrangements; `left` things could not be brought over. Every move is checked as it is made. */
export const beamSearch = (task: ChangeoverTask, widen: number): Walked => {
  const conflicts = conflictsOf(task)
  const root = startOf(task, conflicts)
  settle(task, conflicts, root)
  let best = root
  let beam: readonly Node[] = [root]
  const most = 2 * root.left
  for (let level = 0; level < most && best.left > 0 && beam.length > 0 && !task.shouldStop(); level++) {
    const seen = new Map<string, Node>()
    for (const node of beam) {
      for (const child of childrenOf(task, conflicts, node)) {
        settle(task, conflicts, child)
        const key = keyOf(child)
        const known = seen.get(key)
        if (known === undefined || child.count < known.count) seen.set(key, child)
        if (child.left < best.left) best = child
      }
      if (task.shouldStop()) break
    }
    beam = [...seen.values()].sort((a, b) => promise(a) - promise(b) || a.left - b.left).slice(0, WIDTH * widen)
    best = beam.find((node) => node.left === 0) ?? best
  }
  return { steps: stepsOf(best), final: best.spots, left: best.left }
}

const promise = (node: Node): number => node.count + node.left

const startOf = (task: ChangeoverTask, conflicts: Conflicts): Node => {
  const stage = new Uint8Array(task.movers.length)
  const standing = new Uint32Array(conflicts.words)
  let left = 0
  task.movers.forEach((mover, index) => {
    const settled = sameSpot(mover.source, mover.target)
    stage[index] = settled ? ARRIVED : AT_FIRST
    if (!settled) left++
    setBit(standing, 2 * index + (settled ? 1 : 0))
  })
  return { spots: task.movers.map((mover) => mover.source), stage, standing, chain: null, count: 0, left }
}

const copyOf = (node: Node): Node => ({
  ...node,
  spots: node.spots.slice(),
  stage: node.stage.slice(),
  standing: node.standing.slice(),
})

const stepsOf = (node: Node): readonly Step[] => {
  const steps: Step[] = []
  for (let at = node.chain; at !== null; at = at.before) steps.push(at.step)
  return steps.toReversed()
}

const keyOf = (node: Node): string =>
  node.stage.reduce((key, stage, index) => {
    const spot = stage === WAITING ? node.spots[index] : undefined
    if (spot === undefined) return `${key}${stage}`
    return `${key}(${spot.kind === 'away' ? spot.name : `${spot.bay}:${spot.box.x1},${spot.box.y1},${spot.box.z1}`})`
  }, '')

/** Makes one move if it is legal. */
const go = (task: ChangeoverTask, node: Node, mover: number, to: Spot): boolean => {
  const from = node.spots[mover]
  const target = task.movers[mover]?.target
  if (from === undefined || target === undefined || sameSpot(from, to)) return false
  const out = leaves(task, node.spots, mover)
  const into = out < 0 ? -1 : enters(task, node.spots, mover, to)
  if (into < 0) return false
  const stage = node.stage[mover]
  if (stage !== WAITING) clearBit(node.standing, 2 * mover + (stage === ARRIVED ? 1 : 0))
  const arrives = sameSpot(to, target)
  if (arrives) setBit(node.standing, 2 * mover + 1)
  node.left += (stage === ARRIVED ? 1 : 0) - (arrives ? 1 : 0)
  node.stage[mover] = arrives ? ARRIVED : WAITING
  node.spots[mover] = to
  node.chain = { step: { mover, from, to, window: from.kind === 'bay' ? out : into }, before: node.chain }
  node.count++
  return true
}

const openTo = (conflicts: Conflicts, place: number, standing: Uint32Array): boolean =>
  conflicts.spots[place]?.kind === 'away' || (conflicts.ways[place] ?? []).some((way) => !meets(way.shut, standing))

/** Whether known things let a mover go straight where it belongs; what waits is left to the move itself. */
const mayArrive = (conflicts: Conflicts, node: Node, mover: number): boolean =>
  (node.stage[mover] === WAITING || openTo(conflicts, 2 * mover, node.standing)) &&
  holdsAll(node.standing, conflicts.under[2 * mover + 1] ?? new Uint32Array(0)) &&
  openTo(conflicts, 2 * mover + 1, node.standing)

/** Misplaced things, what becomes part of the bed last. */
const wrongIn = (task: ChangeoverTask, node: Node): readonly number[] => {
  const wrong: number[] = []
  for (const late of [false, true]) {
    task.movers.forEach((mover, index) => {
      if (mover.late === late && node.stage[index] !== ARRIVED) wrong.push(index)
    })
  }
  return wrong
}

/** Makes every move that brings something home and leaves all others a way. */
const settle = (task: ChangeoverTask, conflicts: Conflicts, node: Node): void => {
  for (let moves = -1; moves !== node.count;) {
    moves = node.count
    const arrived = arrivedBits(conflicts, node)
    for (const mover of wrongIn(task, node)) {
      const target = task.movers[mover]?.target
      if (target === undefined || !mayArrive(conflicts, node, mover)) continue
      if (!harmless(task, conflicts, node, mover, arrived)) continue
      if (go(task, node, mover, target)) setBit(arrived, 2 * mover + 1)
    }
  }
}

const arrivedBits = (conflicts: Conflicts, node: Node): Uint32Array => {
  const bits = new Uint32Array(conflicts.words)
  node.stage.forEach((stage, index) => {
    if (stage === ARRIVED) setBit(bits, 2 * index + 1)
  })
  return bits
}

/** Whether each misplaced thing keeps a way out and a way in past all that has arrived, this one among them. */
const harmless = (
  task: ChangeoverTask,
  conflicts: Conflicts,
  node: Node,
  mover: number,
  arrived: Uint32Array,
): boolean => {
  const target = conflicts.spots[2 * mover + 1]
  if (target === undefined || target.kind === 'away') return true
  const after = arrived.slice()
  setBit(after, 2 * mover + 1)
  for (let other = 0; other < task.movers.length; other++) {
    const stage = node.stage[other]
    if (other === mover || stage === ARRIVED) continue
    const closes = (place: number): boolean => openTo(conflicts, place, arrived) && !openTo(conflicts, place, after)
    if ((stage === AT_FIRST && closes(2 * other)) || closes(2 * other + 1)) return false
    const waits = stage === WAITING ? node.spots[other] : undefined
    if (waits !== undefined && wouldBar(task, conflicts, waits, target)) return false
  }
  return true
}

/** Neighbouring arrangements one decision on: each of the things with least in its way brought home, whatever that takes. */
const childrenOf = (task: ChangeoverTask, conflicts: Conflicts, node: Node): readonly Node[] => {
  const ways = wrongIn(task, node).map((mover) => ({ mover, cost: costOf(node, barriersOf(conflicts, node, mover)) }))
  ways.sort((a, b) => a.cost - b.cost)
  const children: Node[] = []
  for (const { mover } of ways) {
    if (children.length >= TRIED) break
    const child = bringHome(task, conflicts, node, mover)
    if (child !== null) children.push(child)
  }
  return children
}

/** What has to move anyway costs one more move; what is home already two. */
const costOf = (node: Node, barriers: ReadonlySet<number>): number => {
  let cost = 0
  for (const other of barriers) cost += node.stage[other] === ARRIVED ? 2 : 1
  return cost
}

/** The arrangement with one thing brought home and its way cleared for it; null where that cannot be done. */
const bringHome = (task: ChangeoverTask, conflicts: Conflicts, node: Node, mover: number): Node | null => {
  const target = task.movers[mover]?.target
  if (target === undefined) return null
  const child = copyOf(node)
  for (let cleared = 0; cleared < CLEARING; cleared++) {
    if (go(task, child, mover, target)) return child
    const inWay = [...barriersOf(conflicts, child, mover)]
    inWay.sort((a, b) => Number(child.stage[a] === ARRIVED) - Number(child.stage[b] === ARRIVED))
    if (![...inWay, mover].some((other) => stepAside(task, conflicts, child, other, mover))) return null
  }
  return null
}

/** Sends a thing home or aside, out of the way of `mover` in both cases. */
const stepAside = (task: ChangeoverTask, conflicts: Conflicts, node: Node, unit: number, mover: number): boolean => {
  if (leaves(task, node.spots, unit) < 0) return false
  const here = node.spots[mover]
  const own = task.movers[unit]?.target
  const home = task.movers[mover]?.target
  if (own === undefined || home === undefined) return false
  const inWayOf = (spot: Spot): boolean =>
    wouldBar(task, conflicts, home, spot) ||
    (unit !== mover && here !== undefined && wouldBar(task, conflicts, here, spot))
  if (unit !== mover && !inWayOf(own) && go(task, node, unit, own)) return true
  const places = task
    .waitsFor(unit, node.spots)
    .filter((spot) => !inWayOf(spot))
    .map((spot) => ({ spot, bars: barredBy(task, conflicts, node, spot) }))
  places.sort((a, b) => a.bars - b.bars)
  return places.some(({ spot }) => go(task, node, unit, spot))
}

/** All that must go before one thing can go home, by the way with least in it, and what bars those, and so on. */
const barriersOf = (conflicts: Conflicts, node: Node, mover: number): ReadonlySet<number> => {
  const found = new Set<number>()
  const queue = node.stage[mover] === AT_FIRST ? [2 * mover, 2 * mover + 1] : [2 * mover + 1]
  for (let place = queue.pop(); place !== undefined; place = queue.pop()) {
    for (const other of leastInWay(conflicts, node, place)) {
      if (other === mover || found.has(other)) continue
      found.add(other)
      if (node.stage[other] !== WAITING) queue.push(2 * other + (node.stage[other] === ARRIVED ? 1 : 0))
    }
  }
  return found
}

const leastInWay = (conflicts: Conflicts, node: Node, place: number): readonly number[] => {
  let least: readonly number[] | null = null
  for (const way of conflicts.ways[place] ?? []) {
    const inWay: number[] = []
    for (let bit = 0; bit < conflicts.spots.length; bit++) {
      if (hasBit(way.shut, bit) && hasBit(node.standing, bit)) inWay.push(bit >> 1)
    }
    if (least === null || inWay.length < least.length) least = inWay
  }
  return least ?? []
}

const barredBy = (task: ChangeoverTask, conflicts: Conflicts, node: Node, waits: Spot): number => {
  let barred = 0
  for (let other = 0; other < task.movers.length; other++) {
    const stage = node.stage[other]
    if (stage === ARRIVED) continue
    const home = conflicts.spots[2 * other + 1]
    const here = node.spots[other]
    if (home !== undefined && wouldBar(task, conflicts, home, waits)) barred++
    if (here !== undefined && wouldBar(task, conflicts, here, waits)) barred++
  }
  return barred
}
