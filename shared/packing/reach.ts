/** Reach: what must be moved to draw each thing out of its bay, through the one opening that needs least. */
import type { BayModel, Solid, Window } from './bay-model.ts'
import type { Box } from './geometry.ts'
import type { Vec3 } from './types.ts'

/** Reach of one box in a bay: which opening, what goes first, and whether a straight pull does it. */
export type BoxReach = {
  /** Index into the bay's windows; -1 where no opening lets it out. */
  readonly window: number
  /** Indexes of the boxes to move first. */
  readonly blockers: readonly number[]
  readonly straight: boolean
}

/** For one window: who must go before whom. */
export type Retrieval = {
  /** Bit rows, `words` to a row: the closure without the row itself. */
  readonly closure: Uint32Array
  readonly words: number
  /** 1 where the box, and all that goes before it, come straight out. */
  readonly out: Uint8Array
  /** 1 where only the box itself passes the window straight. */
  readonly ownOut: Uint8Array
  /** 1 where the closure runs in a circle: lift needed. */
  readonly circular: Uint8Array
}

const lowOf = (box: Box, axis: 0 | 1 | 2): number => (axis === 0 ? box.x1 : axis === 1 ? box.y1 : box.z1)
const highOf = (box: Box, axis: 0 | 1 | 2): number => (axis === 0 ? box.x2 : axis === 1 ? box.y2 : box.z2)

/** The two axes of a face, in order. */
export const faceAxes = (axis: 0 | 1 | 2): readonly [0 | 1 | 2, 0 | 1 | 2] =>
  axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1]

/** Whether `other` meets the volume that `box` sweeps on its way straight out through a window, from its outer face on. */
export const inSweep = (other: Box, box: Box, window: Window): boolean => {
  if (window.axis === 0) {
    if (window.outward > 0 ? other.x2 <= box.x2 : other.x1 >= box.x1) return false
    return other.y1 < box.y2 && box.y1 < other.y2 && other.z1 < box.z2 && box.z1 < other.z2
  }
  if (window.axis === 1) {
    if (window.outward > 0 ? other.y2 <= box.y2 : other.y1 >= box.y1) return false
    return other.x1 < box.x2 && box.x1 < other.x2 && other.z1 < box.z2 && box.z1 < other.z2
  }
  return other.z2 > box.z2 && other.x1 < box.x2 && box.x1 < other.x2 && other.y1 < box.y2 && box.y1 < other.y2
}

/** Whether a solid part bars the straight way out. A leaning tailgate does not bar its own opening: it swings away. */
export const hinders = (solid: Solid, box: Box, window: Window): boolean =>
  solid.face !== window.face && inSweep(solid.box, box, window)

/** Whether the box's outline lies inside the window, seen along its axis. */
export const facesWindow = (box: Box, window: Window): boolean => {
  if (window.axis === 0) return within(box.y1, box.y2, box.z1, box.z2, window)
  if (window.axis === 1) return within(box.x1, box.x2, box.z1, box.z2, window)
  return within(box.x1, box.x2, box.y1, box.y2, window)
}

const within = (a1: number, a2: number, b1: number, b2: number, window: Window): boolean =>
  a1 >= window.aLow && a2 <= window.aHigh && b1 >= window.bLow && b2 <= window.bHigh

export const restsOn = (upper: Box, lower: Box): boolean =>
  upper.z1 === lower.z2 && upper.x1 < lower.x2 && lower.x1 < upper.x2 && upper.y1 < lower.y2 && lower.y1 < upper.y2

const meetsSolid = (bay: BayModel, box: Box, window: Window): boolean => {
  for (const solid of bay.solids) if (hinders(solid, box, window)) return true
  return false
}

/** Retrieval sets of all boxes through one window. */
export const retrievalOf = (bay: BayModel, boxes: readonly Box[], window: Window): Retrieval => {
  const count = boxes.length
  const words = (count + 31) >>> 5
  const closure = new Uint32Array(count * words)
  const ownOut = new Uint8Array(count)
  for (let i = 0; i < count; i++) {
    const box = boxes[i]
    if (box === undefined) continue
    ownOut[i] = facesWindow(box, window) && !meetsSolid(bay, box, window) ? 1 : 0
    for (let j = 0; j < count; j++) {
      const other = boxes[j]
      if (j === i || other === undefined) continue
      if (inSweep(other, box, window) || restsOn(other, box)) setBit(closure, i * words + (j >>> 5), j)
    }
  }
  close(closure, count, words)
  return finish(closure, count, words, ownOut)
}

const setBit = (bits: Uint32Array, word: number, bit: number): void => {
  bits[word] = (bits[word] ?? 0) | (1 << (bit & 31))
}

const hasBit = (bits: Uint32Array, row: number, words: number, bit: number): boolean =>
  (((bits[row * words + (bit >>> 5)] ?? 0) >>> (bit & 31)) & 1) === 1

/** Transitive closure on bit rows. */
const close = (bits: Uint32Array, count: number, words: number): void => {
  for (let via = 0; via < count; via++) {
    for (let row = 0; row < count; row++) {
      if (row === via || !hasBit(bits, row, words, via)) continue
      for (let word = 0; word < words; word++) {
        const at = row * words + word
        bits[at] = (bits[at] ?? 0) | (bits[via * words + word] ?? 0)
      }
    }
  }
}

const finish = (closure: Uint32Array, count: number, words: number, ownOut: Uint8Array): Retrieval => {
  const out = new Uint8Array(count)
  const circular = new Uint8Array(count)
  for (let i = 0; i < count; i++) if (hasBit(closure, i, words, i)) circular[i] = 1
  for (let i = 0; i < count; i++) {
    let free = ownOut[i] === 1 && circular[i] === 0
    for (let j = 0; j < count && free; j++) {
      if (j !== i && hasBit(closure, i, words, j) && (ownOut[j] === 0 || circular[j] === 1)) free = false
    }
    out[i] = free ? 1 : 0
    const word = i * words + (i >>> 5)
    closure[word] = (closure[word] ?? 0) & ~(1 << (i & 31))
  }
  return { closure, words, out, ownOut, circular }
}

export const blockersIn = (retrieval: Retrieval, row: number, count: number): number[] => {
  const found: number[] = []
  for (let j = 0; j < count; j++) if (hasBit(retrieval.closure, row, retrieval.words, j)) found.push(j)
  return found
}

const countIn = (retrieval: Retrieval, row: number): number => {
  let total = 0
  for (let word = 0; word < retrieval.words; word++) {
    let bits = retrieval.closure[row * retrieval.words + word] ?? 0
    while (bits !== 0) {
      bits &= bits - 1
      total++
    }
  }
  return total
}

/** Fewest boxes first; an opening that opens from inside wins a tie where `preferInside`. */
export const reachesIn = (bay: BayModel, boxes: readonly Box[], preferInside: boolean): readonly BoxReach[] => {
  const retrievals = bay.windows.map((window) => retrievalOf(bay, boxes, window))
  return boxes.map((_, index) => {
    const straight = bestWindow(bay, retrievals, index, preferInside, 'out')
    if (straight >= 0) return found(retrievals, straight, index, boxes.length, true)
    const own = bestWindow(bay, retrievals, index, preferInside, 'ownOut')
    if (own >= 0) return found(retrievals, own, index, boxes.length, false)
    return roundabout(bay, boxes, retrievals, index)
  })
}

const found = (
  retrievals: readonly Retrieval[],
  window: number,
  index: number,
  count: number,
  straight: boolean,
): BoxReach => {
  const retrieval = retrievals[window]
  return { window, blockers: retrieval === undefined ? [] : blockersIn(retrieval, index, count), straight }
}

const bestWindow = (
  bay: BayModel,
  retrievals: readonly Retrieval[],
  index: number,
  preferInside: boolean,
  by: 'out' | 'ownOut',
): number => {
  let best = -1
  let least = Infinity
  for (let w = 0; w < retrievals.length; w++) {
    const retrieval = retrievals[w]
    if (retrieval === undefined || retrieval[by][index] !== 1) continue
    const count = countIn(retrieval, index) - (preferInside && bay.windows[w]?.opensFromInside === true ? 0.5 : 0)
    if (count < least) {
      least = count
      best = w
    }
  }
  return best
}

/**
 * In line with no opening as it stands: it must be lifted round into one large enough for it.
 * Counted is what lies in the straight sweep, as the definition has it; the opening with the least of that.
 */
const roundabout = (
  bay: BayModel,
  boxes: readonly Box[],
  retrievals: readonly Retrieval[],
  index: number,
): BoxReach => {
  const box = boxes[index]
  let best = -1
  let least = Infinity
  for (let w = 0; w < bay.windows.length; w++) {
    const window = bay.windows[w]
    const retrieval = retrievals[w]
    if (box === undefined || window === undefined || retrieval === undefined || shiftTo(box, window) === null) continue
    const count = countIn(retrieval, index)
    if (count >= least) continue
    least = count
    best = w
  }
  if (best >= 0) return found(retrievals, best, index, boxes.length, false)
  return { window: -1, blockers: boxes.map((_, j) => j).filter((j) => j !== index), straight: false }
}

/** How far a box must shift to lie in line with a window; null where it is too large for it or lies wholly beside it. */
export const shiftTo = (box: Box, window: Window): Vec3 | null => {
  const shift: [number, number, number] = [0, 0, 0]
  const [a, b] = faceAxes(window.axis)
  for (const [axis, low, high] of [
    [a, window.aLow, window.aHigh],
    [b, window.bLow, window.bHigh],
  ] as const) {
    if (highOf(box, axis) - lowOf(box, axis) > high - low) return null
    if (lowOf(box, axis) >= high || highOf(box, axis) <= low) return null
    if (lowOf(box, axis) < low) shift[axis] = low - lowOf(box, axis)
    else if (highOf(box, axis) > high) shift[axis] = high - highOf(box, axis)
  }
  return shift
}
