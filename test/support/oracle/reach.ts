/** Reach and passage from their definitions alone: what lies in the straight way out, what rests on it, and what these need in turn. */
import type { PackBay, PackOpening } from '../../../shared/packing/index.ts'
import { axisOf, hi, intersect, lo, sharedFromAbove, solidOf, sweepOut } from './boxes.ts'
import type { Solid } from './boxes.ts'

/** A solid part of a bay; `face` is that of the leaning wall it stands for. */
export type Part = { readonly solid: Solid; readonly face: string | null }

/** What bars one box: the opening's place (-1 for none), what goes first, and whether a straight pull does it. */
export type Barred = { readonly opening: number; readonly before: readonly number[]; readonly straight: boolean }

type Bay = { readonly bay: PackBay; readonly parts: readonly Part[] }

const otherAxes = (opening: PackOpening): readonly number[] => [0, 1, 2].filter((axis) => axis !== axisOf(opening.face))
const bounds = (opening: PackOpening, at: number): readonly [number, number] => [
  opening.fromMm[at] ?? 0,
  opening.toMm[at] ?? 0,
]

/** Whether the outline of a box lies in an opening. */
export const inLine = (solid: Solid, opening: PackOpening): boolean =>
  otherAxes(opening).every((axis, at) => {
    const [low, high] = bounds(opening, at)
    return low <= lo(solid, axis) && hi(solid, axis) <= high
  })

const restsOn = (upper: Solid, lower: Solid): boolean =>
  lo(upper, 2) === hi(lower, 2) && sharedFromAbove(upper, lower) > 0

const partBars = ({ bay, parts }: Bay, solid: Solid, opening: PackOpening): boolean =>
  parts.some((part) => part.face !== opening.face && intersect(part.solid, sweepOut(solid, opening.face, bay)))

/** Boxes that must go before one, by one opening, each with those that must go before it. */
function needed(
  { bay }: Bay,
  solids: readonly Solid[],
  wanted: number,
  opening: PackOpening,
): { readonly set: ReadonlySet<number>; readonly circle: boolean } {
  const direct = (index: number): number[] => {
    const solid = solids[index]
    if (solid === undefined) return []
    return solids.flatMap((other, at) =>
      at !== index && (intersect(other, sweepOut(solid, opening.face, bay)) || restsOn(other, solid)) ? [at] : [],
    )
  }
  const set = new Set<number>()
  const queue = direct(wanted)
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    if (set.has(next)) continue
    set.add(next)
    queue.push(...direct(next))
  }
  const circle = set.delete(wanted)
  return { set, circle }
}

/** How far a box is moved aside to come into line; null where it is too large or lies wholly beside the opening. */
function aside(solid: Solid, opening: PackOpening): readonly number[] | null {
  const by = [0, 0, 0]
  for (const [at, axis] of otherAxes(opening).entries()) {
    const [low, high] = bounds(opening, at)
    const [from, to] = [lo(solid, axis), hi(solid, axis)]
    if (to - from > high - low || from >= high || to <= low) return null
    by[axis] = from < low ? low - from : to > high ? high - to : 0
  }
  return by
}

/** Reach of each box: straight by the opening that needs least, else by one it is in line with, else lifted round. */
export function barredIn(one: Bay, solids: readonly Solid[], preferInside: boolean): readonly Barred[] {
  const { openings } = one.bay
  const table = openings.map((opening) =>
    solids.map((solid, index) => {
      const own = inLine(solid, opening) && !partBars(one, solid, opening)
      return { own, ...needed(one, solids, index, opening) }
    }),
  )
  return solids.map((solid, index) => {
    const by = (may: (at: number) => boolean, inside: boolean): number => {
      const rank = (at: number): number =>
        (table[at]?.[index]?.set.size ?? 0) - (inside && openings[at]?.opensFromInside === true ? 0.5 : 0)
      return openings
        .map((_, at) => at)
        .filter(may)
        .reduce((best, at) => (best < 0 || rank(at) < rank(best) ? at : best), -1)
    }
    const clear = (at: number, each: number): boolean =>
      table[at]?.[each]?.own === true && table[at]?.[each]?.circle === false
    const straight = by(
      (at) => clear(at, index) && [...(table[at]?.[index]?.set ?? [])].every((each) => clear(at, each)),
      preferInside,
    )
    const own = by((at) => table[at]?.[index]?.own === true, preferInside)
    const round = by((at) => {
      const opening = openings[at]
      return opening !== undefined && aside(solid, opening) !== null
    }, false)
    const opening = straight >= 0 ? straight : own >= 0 ? own : round
    const all = solids.map((_, at) => at).filter((at) => at !== index)
    const before = opening < 0 ? all : [...(table[opening]?.[index]?.set ?? [])].toSorted((a, b) => a - b)
    return { opening, before, straight: straight >= 0 }
  })
}

/** Whether a box can leave the bay past the others that are in it: straight, or moved into line where it faces no opening. */
export function canLeave(one: Bay, box: Solid, others: readonly Solid[]): boolean {
  const { bay } = one
  if (others.some((other) => restsOn(other, box))) return false
  const faces = bay.openings.some((opening) => inLine(box, opening))
  return bay.openings.some((opening) => {
    const straight = sweepOut(box, opening.face, bay)
    if (others.some((other) => intersect(other, straight))) return false
    if (faces) return inLine(box, opening) && !partBars(one, box, opening)
    const by = aside(box, opening)
    if (by === null) return false
    const there = solidOf(
      [lo(box, 0) + (by[0] ?? 0), lo(box, 1) + (by[1] ?? 0), lo(box, 2) + (by[2] ?? 0)],
      [hi(box, 0) - lo(box, 0), hi(box, 1) - lo(box, 1), hi(box, 2) - lo(box, 2)],
    )
    const edge = (pick: (...values: number[]) => number, of: (solid: Solid, axis: number) => number) =>
      [0, 1, 2].map((axis) => pick(of(box, axis), of(there, axis)))
    const [x1 = 0, y1 = 0, z1 = 0] = edge(Math.min, lo)
    const [x2 = 0, y2 = 0, z2 = 0] = edge(Math.max, hi)
    const path: Solid = { lo: [x1, y1, z1], hi: [x2, y2, z2] }
    const out = sweepOut(there, opening.face, bay)
    if (others.some((other) => intersect(other, path) || intersect(other, out))) return false
    return !one.parts.some(({ solid }) => intersect(solid, path)) && !partBars(one, there, opening)
  })
}
