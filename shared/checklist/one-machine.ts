/**
 * One person does one thing at a time: the order with the least lateness for tasks with releases, deadlines and
 * predecessors. A numeric kernel: arrays, one position per task.
 */

/** Tasks in a topological order. Seconds; `release` finite, `due` finite or +Infinity. */
export type Instance = {
  readonly duration: readonly number[]
  readonly release: readonly number[]
  readonly due: readonly number[]
  /** Positions that must precede each task (transitive within a rank); all lower than its own. */
  readonly earlier: readonly (readonly number[])[]
  readonly rank: readonly number[]
}

export type Sequence = {
  readonly order: readonly number[]
  /** Greatest lateness; -Infinity where nothing has a deadline. */
  readonly lateS: number
  /** True where no order can be less late. */
  readonly proven: boolean
}

type Bounds = { readonly release: readonly number[]; readonly due: readonly number[] }
type Trial = { readonly order: readonly number[]; readonly starts: readonly number[]; readonly lateS: number }

/**
 * The least late order.
 * `instance`: see above; `maxNodes`: how many trial orders the search may build.
 * An order of positions, its greatest lateness in s, and whether that is proven least. Stops at the first order that is
 * not late: then every deadline holds and nothing better is needed.
 * Source: J. Carlier (1982), The one-machine sequencing problem, EJOR 11: 42-47; Schrage's rule inside.
 */
export function leastLate(instance: Instance, maxNodes: number): Sequence {
  const root = consistent(instance, { release: instance.release, due: instance.due })
  let best: Trial = schrage(instance, root)
  const open = [{ bounds: root, floorS: -Infinity }]
  let nodes = 0
  while (best.lateS > 0) {
    const node = open.pop()
    if (node === undefined) return { order: best.order, lateS: best.lateS, proven: true }
    if (node.floorS >= best.lateS) continue
    if (nodes >= maxNodes) return { order: best.order, lateS: best.lateS, proven: false }
    nodes++
    const trial = schrage(instance, node.bounds)
    const trueLateS = lateness(instance, trial)
    if (trueLateS < best.lateS) best = { ...trial, lateS: trueLateS }
    const children = branch(instance, node.bounds, trial, node.floorS)
    // Deepest first; of the two the one with the lower floor is tried first.
    for (const child of children.toSorted((a, b) => b.floorS - a.floorS)) {
      if (child.floorS < best.lateS) open.push(child)
    }
  }
  return { order: best.order, lateS: best.lateS, proven: true }
}

/** Lateness against the true deadlines: a branch may have tightened them. */
function lateness(instance: Instance, trial: Trial): number {
  let lateS = -Infinity
  for (const [place, task] of trial.order.entries()) {
    const end = (trial.starts[place] ?? 0) + (instance.duration[task] ?? 0)
    lateS = Math.max(lateS, end - (instance.due[task] ?? Infinity))
  }
  return lateS
}

/** Pushes releases forward and deadlines back along ranks and predecessors. */
export function consistent(instance: Instance, bounds: Bounds): Bounds {
  const { duration, earlier, rank } = instance
  const release = [...bounds.release]
  const due = [...bounds.due]
  let floor = -Infinity
  let rankFloor = -Infinity
  for (let j = 0; j < release.length; j++) {
    if (j > 0 && rank[j] !== rank[j - 1]) floor = rankFloor
    let from = Math.max(release[j] ?? 0, floor)
    for (const i of earlier[j] ?? []) from = Math.max(from, (release[i] ?? 0) + (duration[i] ?? 0))
    release[j] = from
    rankFloor = Math.max(rankFloor, from + (duration[j] ?? 0))
  }
  let ceiling = Infinity
  let rankCeiling = Infinity
  for (let j = release.length - 1; j >= 0; j--) {
    if (j < release.length - 1 && rank[j] !== rank[j + 1]) ceiling = rankCeiling
    const to = Math.min(due[j] ?? Infinity, ceiling)
    due[j] = to
    rankCeiling = Math.min(rankCeiling, to - (duration[j] ?? 0))
    for (const i of earlier[j] ?? []) due[i] = Math.min(due[i] ?? Infinity, to - (duration[j] ?? 0))
  }
  return { release, due }
}

/** Always does the most urgent task that may start; ties by position. With consistent bounds it respects predecessors. */
function schrage(instance: Instance, bounds: Bounds): Trial {
  const { duration } = instance
  const { release, due } = bounds
  const byRelease = release.map((_, j) => j).toSorted((a, b) => (release[a] ?? 0) - (release[b] ?? 0) || a - b)
  const ready: number[] = []
  const order: number[] = []
  const starts: number[] = []
  let next = 0
  let now = -Infinity
  let lateS = -Infinity
  while (order.length < byRelease.length) {
    if (ready.length === 0) now = Math.max(now, release[byRelease[next] ?? 0] ?? 0)
    while (next < byRelease.length && (release[byRelease[next] ?? 0] ?? 0) <= now) ready.push(byRelease[next++] ?? 0)
    const task = takeMostUrgent(ready, due)
    order.push(task)
    starts.push(now)
    now += duration[task] ?? 0
    lateS = Math.max(lateS, now - (due[task] ?? Infinity))
  }
  return { order, starts, lateS }
}

function takeMostUrgent(ready: number[], due: readonly number[]): number {
  let at = 0
  for (let k = 1; k < ready.length; k++) {
    const [one, best] = [ready[k] ?? 0, ready[at] ?? 0]
    const [dueOne, dueBest] = [due[one] ?? Infinity, due[best] ?? Infinity]
    if (dueOne < dueBest || (dueOne === dueBest && one < best)) at = k
  }
  return ready.splice(at, 1)[0] ?? 0
}

type Node = { readonly bounds: Bounds; readonly floorS: number }

/** Carlier's two branches: the critical task goes after, or before, the whole group that it delays. */
function branch(instance: Instance, bounds: Bounds, trial: Trial, floorS: number): readonly Node[] {
  const { duration } = instance
  const block = criticalBlock(instance, bounds, trial)
  const last = block.at(-1) ?? 0
  const dueLast = bounds.due[last] ?? Infinity
  const at = block.findLastIndex((task) => (bounds.due[task] ?? Infinity) > dueLast)
  const critical = block[at]
  if (critical === undefined) return []
  const group = block.slice(at + 1)
  const from = Math.min(...group.map((task) => bounds.release[task] ?? 0))
  const total = group.reduce((sum, task) => sum + (duration[task] ?? 0), 0)
  const groupFloorS = Math.max(floorS, from + total - dueLast)
  const after = bounds.release.with(critical, Math.max(bounds.release[critical] ?? 0, from + total))
  const before = bounds.due.with(critical, Math.min(bounds.due[critical] ?? Infinity, dueLast - total))
  return [
    { release: after, due: bounds.due },
    { release: bounds.release, due: before },
  ].map((changed) => {
    const next = consistent(instance, changed)
    return { bounds: next, floorS: Math.max(groupFloorS, simpleFloor(instance, next)) }
  })
}

/** Tasks done without a pause up to the latest one, by the bounds of this node. */
function criticalBlock(instance: Instance, bounds: Bounds, trial: Trial): readonly number[] {
  const { duration } = instance
  const endAt = (place: number): number => (trial.starts[place] ?? 0) + (duration[trial.order[place] ?? 0] ?? 0)
  let last = 0
  let worst = -Infinity
  for (const [place, task] of trial.order.entries()) {
    const late = endAt(place) - (bounds.due[task] ?? Infinity)
    if (late >= worst) [last, worst] = [place, late]
  }
  let first = last
  while (first > 0 && endAt(first - 1) === trial.starts[first]) first--
  return trial.order.slice(first, last + 1)
}

/** No order can beat one task alone: its own release, duration and deadline. */
function simpleFloor(instance: Instance, bounds: Bounds): number {
  let floorS = -Infinity
  for (const [j, release] of bounds.release.entries()) {
    floorS = Math.max(floorS, release + (instance.duration[j] ?? 0) - (bounds.due[j] ?? Infinity))
  }
  return floorS
}
