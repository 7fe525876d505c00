/** Who keeps whom from moving, worked out once for the places a change knows of: where each thing stands and where it is to stand. */
import { moved, overlaps, sharedFootprint } from '../geometry.ts'
import { pathsOf, shuts } from '../passage.ts'
import type { Path } from '../passage.ts'
import type { ChangeoverTask, Spot } from './moves.ts'

/** Places numbered 2i (where mover i stands at first) and 2i + 1 (where it is to stand); bit rows over these numbers. */
export type Conflicts = {
  readonly words: number
  readonly spots: readonly Spot[]
  /** By place: one way for each opening it can be passed through, with all places that must be empty for that. */
  readonly ways: readonly (readonly Way[])[]
  /** By place: the final places it rests on, all of them needed. */
  readonly under: readonly Uint32Array[]
  /** How each place passes the openings of its bay, worked out when first asked for. */
  readonly paths: Map<Spot, readonly Path[]>
}

export type Way = { readonly window: number; readonly shut: Uint32Array }

type InBay = Extract<Spot, { kind: 'bay' }>

export const conflictsOf = (task: ChangeoverTask): Conflicts => {
  const spots = task.movers.flatMap((mover) => [mover.source, mover.target])
  const words = (spots.length + 31) >>> 5
  const paths: Conflicts['paths'] = new Map()
  const near = nearEachBay(task, spots)
  // Broken off, the rest has no known way: it will be told as stuck.
  let ended = false
  const waysFrom = (spot: Spot, index: number): readonly Way[] => {
    ended ||= index % POLL_EACH === 0 && task.hostStops()
    return spot.kind === 'away' || ended ? [] : waysOf(task, { spots, paths, words, near }, index, spot)
  }
  return {
    words,
    spots,
    paths,
    ways: spots.map(waysFrom),
    under: spots.map((_, index) => underOf(spots, near, index, words)),
  }
}

/** Places looked at between two looks at the host. */
const POLL_EACH = 64

/** By bay: the numbers of the places in it and in bays that share its air. */
const nearEachBay = (task: ChangeoverTask, spots: readonly Spot[]): readonly (readonly number[])[] =>
  task.bays.map((_, bay) =>
    spots.flatMap((spot, at) =>
      spot.kind === 'bay' && (spot.bay === bay || task.shareAir[bay]?.[spot.bay] === true) ? [at] : [],
    ),
  )

export const setBit = (bits: Uint32Array, bit: number): void => {
  bits[bit >>> 5] = (bits[bit >>> 5] ?? 0) | (1 << (bit & 31))
}

export const clearBit = (bits: Uint32Array, bit: number): void => {
  bits[bit >>> 5] = (bits[bit >>> 5] ?? 0) & ~(1 << (bit & 31))
}

export const hasBit = (bits: Uint32Array, bit: number): boolean => (((bits[bit >>> 5] ?? 0) >>> (bit & 31)) & 1) === 1

export const meets = (a: Uint32Array, b: Uint32Array): boolean => {
  for (let word = 0; word < a.length; word++) if (((a[word] ?? 0) & (b[word] ?? 0)) !== 0) return true
  return false
}

export const holdsAll = (whole: Uint32Array, part: Uint32Array): boolean => {
  for (let word = 0; word < part.length; word++) if (((part[word] ?? 0) & ~(whole[word] ?? 0)) !== 0) return false
  return true
}

const knownPaths = (task: ChangeoverTask, paths: Conflicts['paths'], spot: InBay): readonly Path[] => {
  const known = paths.get(spot)
  if (known !== undefined) return known
  const bay = task.bays[spot.bay]
  const found = bay === undefined ? [] : pathsOf(bay, spot.box)
  paths.set(spot, found)
  return found
}

const waysOf = (
  task: ChangeoverTask,
  known: Pick<Conflicts, 'spots' | 'paths' | 'words'> & { readonly near: readonly (readonly number[])[] },
  index: number,
  spot: InBay,
): readonly Way[] => {
  const { spots, paths, words, near } = known
  return knownPaths(task, paths, spot).map((path) => {
    const shut = new Uint32Array(words)
    for (const at of near[spot.bay] ?? []) {
      const other = spots[at]
      if (other === undefined || other.kind === 'away' || at >> 1 === index >> 1) continue
      const inWay = other.bay === spot.bay ? shuts(other.box, spot.box, path) : sharesAir(task, spot, other)
      if (inWay) setBit(shut, at)
    }
    return { window: path.index, shut }
  })
}

/** Whether two places of different bays take up the same air. */
const sharesAir = (task: ChangeoverTask, a: InBay, b: InBay): boolean => {
  if (task.shareAir[a.bay]?.[b.bay] !== true) return false
  const bayA = task.bays[a.bay]
  const bayB = task.bays[b.bay]
  if (bayA === undefined || bayB === undefined) return false
  return overlaps(moved(a.box, bayA.bay.originMm), moved(b.box, bayB.bay.originMm))
}

/** Whether something put down at `other` is in a way to the place, or in the place itself. */
export const wouldBar = (task: ChangeoverTask, conflicts: Conflicts, place: Spot, other: Spot): boolean => {
  if (place.kind === 'away' || other.kind === 'away') return false
  if (place.bay !== other.bay) return sharesAir(task, place, other)
  return knownPaths(task, conflicts.paths, place).some((path) => shuts(other.box, place.box, path))
}

const underOf = (
  spots: readonly Spot[],
  near: readonly (readonly number[])[],
  index: number,
  words: number,
): Uint32Array => {
  const under = new Uint32Array(words)
  const spot = spots[index]
  if (spot === undefined || spot.kind === 'away' || spot.box.z1 === 0) return under
  for (const at of near[spot.bay] ?? []) {
    const other = spots[at]
    if (at % 2 === 0 || other === undefined || other.kind === 'away') continue
    if (at >> 1 === index >> 1 || other.bay !== spot.bay) continue
    if (other.box.z2 === spot.box.z1 && sharedFootprint(other.box, spot.box) > 0) setBit(under, at)
  }
  return under
}
