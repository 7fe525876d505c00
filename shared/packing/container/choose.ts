/** Which space of a state is filled next, and with which block: volume, contact with what stands, and lengths that stay of use. Numeric kernel. */
import type { FillState } from './state.ts'
import type { BlockTable } from './table.ts'

type Corner = { x: number; y: number; mirrorX: boolean; mirrorY: boolean }

/** What one pass over the spaces works with: the table, lists of blocks and scratch made once. */
export type Search = {
  readonly table: BlockTable
  readonly size: readonly [number, number, number]
  readonly alive: Int32Array
  /** Blocks that the state being expanded can still afford. */
  readonly parentAlive: Int32Array
  readonly near: { x: number; y: number; z: number }
  readonly scratch: FillState
  readonly corner: Corner
  readonly around: Int32Array
  readonly room: { x: number; y: number; z: number; height: number; volume: number; neighbours: number }
}

/** The space whose nearest bottom corner lies nearest a corner of the container; the corner is kept in `search.corner`. */
export function nextSpace(search: Search, state: FillState): number {
  const [length, width] = search.size
  let best = -1
  let bestKey = Infinity
  for (let at = 0; at < state.spaces; at += 1) {
    const left = state.sx1[at] as number
    const right = length - (state.sx2[at] as number)
    const low = state.sy1[at] as number
    const high = width - (state.sy2[at] as number)
    const dx = left <= right ? left : right
    const dy = low <= high ? low : high
    const z = state.sz[at] as number
    const area =
      ((state.sx2[at] as number) - (state.sx1[at] as number)) * ((state.sy2[at] as number) - (state.sy1[at] as number))
    const key = (dx + dy + z) * 1e6 - area
    if (key < bestKey) {
      bestKey = key
      best = at
    }
  }
  setCorner(search, state, best)
  return best
}

function setCorner(search: Search, state: FillState, space: number): void {
  const [length, width] = search.size
  const { corner } = search
  corner.mirrorX = (state.sx1[space] as number) > length - (state.sx2[space] as number)
  corner.mirrorY = (state.sy1[space] as number) > width - (state.sy2[space] as number)
  corner.x = corner.mirrorX ? (state.sx2[space] as number) : (state.sx1[space] as number)
  corner.y = corner.mirrorY ? (state.sy2[space] as number) : (state.sy1[space] as number)
}

/** The best block of the search's list for a space; -1 where none fits. Nothing is allocated here. */
export function bestBlock(search: Search, state: FillState, space: number, count: number): number {
  const { table, alive, room } = search
  enterRoom(search, state, space)
  const { lengths, widths, heights, volumes } = table
  const roomX = room.x
  const roomY = room.y
  const roomZ = room.height
  let best = -1
  let bestScore = 0
  for (let at = firstWithin(search, alive, count); at < count; at += 1) {
    const block = alive[at] as number
    const volume = volumes[block] as number
    if (volume <= bestScore) break
    if ((lengths[block] as number) > roomX || (widths[block] as number) > roomY || (heights[block] as number) > roomZ)
      continue
    const most = volume * useful(search, block)
    if (most <= bestScore) continue
    const touch = contact(search, state, block)
    const score = most * touch * touch
    if (score > bestScore) {
      bestScore = score
      best = block
    }
  }
  return best
}

/** Where a list in order of volume comes down to what the room could hold. */
function firstWithin({ table, room }: Search, list: Int32Array, count: number): number {
  let low = 0
  let high = count
  while (low < high) {
    const middle = (low + high) >> 1
    if ((table.volumes[list[middle] as number] as number) > room.volume) low = middle + 1
    else high = middle
  }
  return low
}

function enterRoom(search: Search, state: FillState, space: number): void {
  const { room } = search
  room.x = (state.sx2[space] as number) - (state.sx1[space] as number)
  room.y = (state.sy2[space] as number) - (state.sy1[space] as number)
  room.z = state.sz[space] as number
  room.height = state.height - room.z
  room.volume = room.x * room.y * room.height
  room.neighbours = gatherAround(search, state, space)
}

/** The best blocks of the parent's list for a space, best first. */
export function bestBlocks(
  search: Search,
  state: FillState,
  space: number,
  wanted: { count: number; most: number },
): number[] {
  const { table, parentAlive, room } = search
  const { count, most } = wanted
  enterRoom(search, state, space)
  const found: { block: number; score: number }[] = []
  for (let at = firstWithin(search, parentAlive, count); at < count; at += 1) {
    const block = parentAlive[at] as number
    const volume = table.volumes[block] as number
    const least = found.length < most ? 0 : (found.at(-1)?.score ?? 0)
    if (volume <= least) break
    if (
      (table.lengths[block] as number) > room.x ||
      (table.widths[block] as number) > room.y ||
      (table.heights[block] as number) > room.height
    )
      continue
    const limit = volume * useful(search, block)
    if (limit <= least) continue
    const score = limit * contact(search, state, block) ** 2
    if (score <= least) continue
    let into = found.length
    while (into > 0 && (found[into - 1]?.score ?? Infinity) < score) into -= 1
    found.splice(into, 0, { block, score })
    if (found.length > most) found.pop()
  }
  return found.map(({ block }) => block)
}

/** Placed blocks that reach above the space's level and lie near its rectangle: all that a block there may touch. */
function gatherAround(search: Search, state: FillState, space: number): number {
  const { around, near } = search
  const x1 = (state.sx1[space] as number) - near.x
  const y1 = (state.sy1[space] as number) - near.y
  const x2 = (state.sx2[space] as number) + near.x
  const y2 = (state.sy2[space] as number) + near.y
  const z = state.sz[space] as number
  let count = 0
  for (let at = 0; at < state.placed && count < 512; at += 1) {
    if (
      (state.pz2[at] as number) > z &&
      (state.px1[at] as number) <= x2 &&
      (state.px2[at] as number) >= x1 &&
      (state.py1[at] as number) <= y2 &&
      (state.py2[at] as number) >= y1
    ) {
      around[count] = at
      count += 1
    }
  }
  return count
}

/** Share of the space's lengths that stays of use beside a block. */
function useful(search: Search, block: number): number {
  const { table, room } = search
  const [reachX, reachY, reachZ] = table.reachable
  const l = table.lengths[block] as number
  const w = table.widths[block] as number
  const h = table.heights[block] as number
  return (
    ((l + (reachX[room.x - l] as number)) *
      (w + (reachY[room.y - w] as number)) *
      (h + (reachZ[room.height - h] as number))) /
    room.volume
  )
}

/** Share of a block's surface that touches walls and blocks. */
function contact(search: Search, state: FillState, block: number): number {
  const { table, corner, near, size, around, room } = search
  const l = table.lengths[block] as number
  const w = table.widths[block] as number
  const h = table.heights[block] as number
  const x1 = corner.mirrorX ? corner.x - l : corner.x
  const y1 = corner.mirrorY ? corner.y - w : corner.y
  const x2 = x1 + l
  const y2 = y1 + w
  const z1 = room.z
  const z2 = z1 + h
  const side = w * h
  const front = l * h
  const base = l * w
  let touchX1 = x1 <= near.x ? side : 0
  let touchX2 = size[0] - x2 <= near.x ? side : 0
  let touchY1 = y1 <= near.y ? front : 0
  let touchY2 = size[1] - y2 <= near.y ? front : 0
  const top = size[2] - z2 <= near.z ? base : 0
  for (let k = 0; k < room.neighbours; k += 1) {
    const at = around[k] as number
    const over = state.pz2[at] as number
    const under = state.pz1[at] as number
    const tall = (z2 < over ? z2 : over) - (z1 > under ? z1 : under)
    if (tall <= 0) continue
    const a1 = state.px1[at] as number
    const a2 = state.px2[at] as number
    const b1 = state.py1[at] as number
    const b2 = state.py2[at] as number
    const spanY = (y2 < b2 ? y2 : b2) - (y1 > b1 ? y1 : b1)
    const spanX = (x2 < a2 ? x2 : a2) - (x1 > a1 ? x1 : a1)
    if (spanY > 0) {
      if (a2 <= x1 && x1 - a2 <= near.x) touchX1 += spanY * tall
      else if (a1 >= x2 && a1 - x2 <= near.x) touchX2 += spanY * tall
    }
    if (spanX > 0) {
      if (b2 <= y1 && y1 - b2 <= near.y) touchY1 += spanX * tall
      else if (b1 >= y2 && b1 - y2 <= near.y) touchY2 += spanX * tall
    }
  }
  const touched =
    base +
    top +
    (touchX1 < side ? touchX1 : side) +
    (touchX2 < side ? touchX2 : side) +
    (touchY1 < front ? touchY1 : front) +
    (touchY2 < front ? touchY2 : front)
  return touched / (2 * (side + front + base))
}
