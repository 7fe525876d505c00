/** A greedy walk from one arrangement to another for loads too large to search whole: settle what harms nobody, else clear the cheapest way. */
import { bars, enters, harmless, leaves, misplaced, sameSpot } from './changeover-moves.ts'
import type { ChangeoverTask, Spot, Step } from './changeover-moves.ts'
import { pickIndex } from './random.ts'
import type { Random } from './random.ts'

export type Walked = { readonly steps: readonly Step[]; readonly final: readonly Spot[] }

/** Walks tried where all come over; the first that needs no waiting ends it. */
const WALKS = 6
/** Walks tried before a unit is called stuck. */
const WALKS_WHILE_STUCK = 24
/** Times one unit may be put down on the way. */
const PUT_DOWNS = 3

/** The best of several walks: most units brought over, then fewest moves. */
export const walk = (task: ChangeoverTask, random: Random): Walked => {
  const start = task.movers.map((mover) => mover.source)
  const needed = misplaced(task, start).length
  let best: Walked = { steps: [], final: start }
  let left = needed
  for (let tried = 0; tried < (left === 0 ? WALKS : WALKS_WHILE_STUCK); tried++) {
    const walked = once(task, start, random)
    const stuck = misplaced(task, walked.final).length
    if (stuck < left || (stuck === left && walked.steps.length < best.steps.length)) {
      best = walked
      left = stuck
    }
    if ((left === 0 && best.steps.length <= needed) || task.shouldStop()) break
  }
  return best
}

type Trail = { readonly spots: Spot[]; readonly steps: Step[]; readonly putDowns: number[] }

const once = (task: ChangeoverTask, start: readonly Spot[], random: Random): Walked => {
  const trail: Trail = { spots: start.slice(), steps: [], putDowns: task.movers.map(() => 0) }
  const limit = task.movers.length * PUT_DOWNS
  let best: Walked = { steps: [], final: start }
  let least = Infinity
  while (trail.steps.length < limit) {
    const wrong = misplaced(task, trail.spots)
    if (wrong.length < least) {
      least = wrong.length
      best = { steps: trail.steps.slice(), final: trail.spots.slice() }
    }
    if (wrong.length === 0) break
    if (
      !settle(task, trail, wrong, true, random) &&
      !clear(task, trail, wrong, random) &&
      !settle(task, trail, wrong, false, random)
    )
      break
  }
  return best
}

const go = (task: ChangeoverTask, trail: Trail, mover: number, to: Spot): boolean => {
  const from = trail.spots[mover]
  if (from === undefined || sameSpot(from, to)) return false
  const out = leaves(task, trail.spots, mover)
  if (out < 0) return false
  const into = enters(task, trail.spots, mover, to)
  if (into < 0) return false
  trail.spots[mover] = to
  trail.steps.push({ mover, from, to, window: from.kind === 'bay' ? out : into })
  return true
}

/** Brings one misplaced unit to its final place; what becomes the bed goes last. */
const settle = (
  task: ChangeoverTask,
  trail: Trail,
  wrong: readonly number[],
  kindly: boolean,
  random: Random,
): boolean => {
  const from = pickIndex(random, wrong.length)
  const turned = [...wrong.slice(from), ...wrong.slice(0, from)]
  const order = [
    ...turned.filter((mover) => task.movers[mover]?.late !== true),
    ...turned.filter((mover) => task.movers[mover]?.late === true),
  ]
  for (const mover of order) {
    const target = task.movers[mover]?.target
    if (target === undefined) continue
    if (kindly && !harmless(task, trail.spots, mover, target, wrong)) continue
    if (go(task, trail, mover, target)) return true
  }
  return false
}

/** Clears the way of one misplaced unit, that with least in its way, until it is in its place. False where nothing could be moved. */
const clear = (task: ChangeoverTask, trail: Trail, wrong: readonly number[], random: Random): boolean => {
  const open = new Set(wrong)
  const ways = wrong.map((mover) => ({
    mover,
    cost: costOf(barriersOf(task, trail.spots, mover), open),
    luck: random(),
  }))
  ways.sort((a, b) => a.cost - b.cost || a.luck - b.luck)
  return ways.some(({ mover }) => bringOver(task, trail, mover))
}

/** Moves put to clearing one unit's way before another is tried. */
const CLEARING = 12

const bringOver = (task: ChangeoverTask, trail: Trail, mover: number): boolean => {
  const target = task.movers[mover]?.target
  if (target === undefined) return false
  let progress = false
  for (let step = 0; step < CLEARING && !task.shouldStop(); step++) {
    if (go(task, trail, mover, target)) return true
    const inWay = [...barriersOf(task, trail.spots, mover)].sort(
      (a, b) => dearness(task, trail, a) - dearness(task, trail, b),
    )
    if (![...inWay, mover].some((unit) => stepAside(task, trail, unit, mover, target))) return progress
    progress = true
  }
  return progress
}

/** What is in its place already is disturbed last. */
const dearness = (task: ChangeoverTask, trail: Trail, unit: number): number => {
  const spot = trail.spots[unit]
  const target = task.movers[unit]?.target
  return spot !== undefined && target !== undefined && sameSpot(spot, target) ? 1 : 0
}

/** Moves a unit to its own place or to a waiting place, neither of them in the way of `mover`. */
const stepAside = (task: ChangeoverTask, trail: Trail, unit: number, mover: number, target: Spot): boolean => {
  if ((trail.putDowns[unit] ?? 0) >= PUT_DOWNS || leaves(task, trail.spots, unit) < 0) return false
  const here = trail.spots[mover]
  const own = task.movers[unit]?.target
  const clearOf = (spot: Spot): boolean =>
    !bars(task, target, spot) && (unit === mover || here === undefined || !bars(task, here, spot))
  const places = [...(own === undefined || unit === mover ? [] : [own]), ...task.waitsFor(unit, trail.spots)]
  for (const to of places) {
    if (!clearOf(to) || !go(task, trail, unit, to)) continue
    trail.putDowns[unit] = (trail.putDowns[unit] ?? 0) + 1
    return true
  }
  return false
}

/** A unit that has to move anyway costs one more move; a settled one two. */
const costOf = (set: ReadonlySet<number>, open: ReadonlySet<number>): number => {
  let cost = 0
  for (const unit of set) cost += open.has(unit) ? 1 : 2
  return cost
}

const barriersOf = (task: ChangeoverTask, spots: readonly Spot[], mover: number): ReadonlySet<number> => {
  const found = new Set<number>()
  const here = spots[mover]
  const target = task.movers[mover]?.target
  const queue = [here, target].filter((place) => place !== undefined)
  for (let place = queue.pop(); place !== undefined; place = queue.pop()) {
    for (let other = 0; other < spots.length; other++) {
      const spot = spots[other]
      if (other === mover || spot === undefined || found.has(other) || !bars(task, place, spot)) continue
      found.add(other)
      queue.push(spot)
    }
  }
  return found
}
