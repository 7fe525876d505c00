/**
 * Beam search over blocks: the free space nearest a corner is filled next, each child is valued by completing it greedily,
 * and the beam widens with each restart. Numeric kernel.
 * Method after Araya, Guerrero and Nunez 2017 (Comput. Oper. Res. 82), with full support: the state is a height map.
 */
import { boxesOf } from './blocks.ts'
import type { Block } from './blocks.ts'
import { FillState } from './state.ts'
import { blockTable } from './table.ts'
import type { BlockTable } from './table.ts'
import type { ContainerBudget, ContainerInput, ContainerPacking, PackedBox } from './types.ts'

const MOST_BLOCKS = 10_000
const WIDER = Math.SQRT2
/** Faces this near each other, as a share of the container's edge, count as touching. */
const NEAR_01 = 0.04
const CONTACT_POWER = 2
const LOSS_POWER = 1

type Corner = { x: number; y: number; mirrorX: boolean; mirrorY: boolean }

type Search = {
  readonly table: BlockTable
  readonly size: readonly [number, number, number]
  readonly alive: Int32Array
  readonly near: { x: number; y: number; z: number }
  readonly scratch: FillState
  readonly best: { volume: number; state: FillState }
  readonly corner: Corner
  readonly around: Int32Array
  completions: number
}

export function packContainer(input: ContainerInput, budget: ContainerBudget): ContainerPacking {
  const table = blockTable(input, MOST_BLOCKS)
  const [length, width, height] = input.sizeMm
  const empty = (): FillState => new FillState(table, length, width, height)
  const search: Search = {
    table,
    size: input.sizeMm,
    alive: new Int32Array(table.count),
    near: { x: NEAR_01 * length, y: NEAR_01 * width, z: NEAR_01 * height },
    scratch: empty(),
    best: { volume: 0, state: empty() },
    corner: { x: 0, y: 0, mirrorX: false, mirrorY: false },
    around: new Int32Array(512),
    completions: 0,
  }
  const stop = (): boolean => search.completions >= budget.completions || budget.shouldStop?.() === true
  // Whatever the time, there is one packing.
  complete(search, empty())
  const pool: FillState[] = []
  let beam = 1
  while (!stop()) {
    runBeam(search, Math.max(1, Math.round(beam)), { stop, pool, empty })
    budget.onProgress?.(Math.min(1, search.completions / budget.completions))
    beam *= WIDER
    if (beam > 4096) break
  }
  return {
    boxes: placedBoxes(search.best.state, table),
    filled01: search.best.volume / (length * width * height),
    completions: search.completions,
  }
}

type BeamTools = { readonly stop: () => boolean; readonly pool: FillState[]; readonly empty: () => FillState }

/** One pass with a fixed width: every state of a generation grows by one block. */
function runBeam(search: Search, beam: number, tools: BeamTools): void {
  const take = (): FillState => tools.pool.pop() ?? tools.empty()
  const root = take()
  root.copyFrom(tools.empty())
  let generation: FillState[] = [root]
  while (generation.length > 0 && !tools.stop()) {
    const children: { state: FillState; value: number; volume: number }[] = []
    for (const state of generation) {
      for (const block of expand(search, state, beam)) {
        if (tools.stop()) break
        const child = take()
        child.copyFrom(state)
        put(search, child, block)
        const value = complete(search, child)
        if (children.some((other) => other.value === value && other.volume === child.volume)) tools.pool.push(child)
        else children.push({ state: child, value, volume: child.volume })
      }
    }
    children.sort((a, b) => b.value - a.value || b.volume - a.volume)
    for (const state of generation) tools.pool.push(state)
    for (const { state } of children.slice(beam)) tools.pool.push(state)
    generation = children.slice(0, beam).map(({ state }) => state)
  }
  for (const state of generation) tools.pool.push(state)
}

/** The best blocks for the next space of a state; spaces that take none are dropped from it. */
function expand(search: Search, state: FillState, most: number): number[] {
  const count = aliveBlocks(search, state, null)
  while (state.spaces > 0) {
    const space = nextSpace(search, state)
    const found = bestBlocks(search, state, space, { count, most })
    if (found.length > 0) return found
    state.dropSpace(space)
  }
  return []
}

/** Fills a copy of a state greedily and keeps it if it is the best yet; returns the volume reached. */
function complete(search: Search, from: FillState): number {
  const { scratch, best } = search
  scratch.copyFrom(from)
  search.completions += 1
  let count = aliveBlocks(search, scratch, null)
  while (scratch.spaces > 0 && count > 0) {
    const space = nextSpace(search, scratch)
    const block = bestBlock(search, scratch, space, count)
    if (block < 0) {
      scratch.dropSpace(space)
      continue
    }
    put(search, scratch, block, space)
    count = aliveBlocks(search, scratch, count)
  }
  if (scratch.volume > best.volume) {
    best.volume = scratch.volume
    best.state.copyFrom(scratch)
  }
  return scratch.volume
}

/** Blocks that the boxes left can still make, kept in order of volume. */
function aliveBlocks(search: Search, state: FillState, known: number | null): number {
  const { alive, table } = search
  let count = 0
  const to = known ?? table.count
  for (let at = 0; at < to; at += 1) {
    const block = known === null ? at : (alive[at] as number)
    if (state.affords(block)) {
      alive[count] = block
      count += 1
    }
  }
  return count
}

/** The space whose nearest bottom corner lies nearest a corner of the container; the corner is kept in `search.corner`. */
function nextSpace(search: Search, state: FillState): number {
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

function put(search: Search, state: FillState, block: number, space = nextSpace(search, state)): void {
  const { corner, table } = search
  const x = corner.mirrorX ? corner.x - (table.lengths[block] as number) : corner.x
  const y = corner.mirrorY ? corner.y - (table.widths[block] as number) : corner.y
  state.place(block, x, y, state.sz[space] as number, corner.mirrorX, corner.mirrorY)
}

function bestBlock(search: Search, state: FillState, space: number, count: number): number {
  const { table, alive } = search
  const roomX = (state.sx2[space] as number) - (state.sx1[space] as number)
  const roomY = (state.sy2[space] as number) - (state.sy1[space] as number)
  const roomZ = state.height - (state.sz[space] as number)
  const neighbours = gatherAround(search, state, space)
  let best = -1
  let bestScore = 0
  for (let at = 0; at < count; at += 1) {
    const block = alive[at] as number
    const volume = table.volumes[block] as number
    if (volume <= bestScore) break
    if (
      (table.lengths[block] as number) > roomX ||
      (table.widths[block] as number) > roomY ||
      (table.heights[block] as number) > roomZ
    )
      continue
    const score =
      volume * worth(search, state, block, { roomX, roomY, roomZ, z: state.sz[space] as number, neighbours })
    if (score > bestScore) {
      bestScore = score
      best = block
    }
  }
  return best
}

function bestBlocks(
  search: Search,
  state: FillState,
  space: number,
  wanted: { count: number; most: number },
): number[] {
  const { table, alive } = search
  const { count, most } = wanted
  const roomX = (state.sx2[space] as number) - (state.sx1[space] as number)
  const roomY = (state.sy2[space] as number) - (state.sy1[space] as number)
  const roomZ = state.height - (state.sz[space] as number)
  const neighbours = gatherAround(search, state, space)
  const found: { block: number; score: number }[] = []
  for (let at = 0; at < count; at += 1) {
    const block = alive[at] as number
    const volume = table.volumes[block] as number
    const least = found.length < most ? 0 : (found.at(-1)?.score ?? 0)
    if (volume <= least) break
    if (
      (table.lengths[block] as number) > roomX ||
      (table.widths[block] as number) > roomY ||
      (table.heights[block] as number) > roomZ
    )
      continue
    const score =
      volume * worth(search, state, block, { roomX, roomY, roomZ, z: state.sz[space] as number, neighbours })
    if (score <= least) continue
    let into = found.length
    while (into > 0 && (found[into - 1]?.score ?? Infinity) < score) into -= 1
    found.splice(into, 0, { block, score })
    if (found.length > most) found.pop()
  }
  return found.map(({ block }) => block)
}

type Room = { roomX: number; roomY: number; roomZ: number; z: number; neighbours: number }

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

/** Share of a block's surface that touches walls and blocks, and share of the space's lengths that stays of use. */
function worth(search: Search, state: FillState, block: number, room: Room): number {
  const { table, corner, near, size, around } = search
  const l = table.lengths[block] as number
  const w = table.widths[block] as number
  const h = table.heights[block] as number
  const x1 = corner.mirrorX ? corner.x - l : corner.x
  const y1 = corner.mirrorY ? corner.y - w : corner.y
  const x2 = x1 + l
  const y2 = y1 + w
  const z1 = room.z
  const z2 = z1 + h
  let touchX1 = x1 <= near.x ? w * h : 0
  let touchX2 = size[0] - x2 <= near.x ? w * h : 0
  let touchY1 = y1 <= near.y ? l * h : 0
  let touchY2 = size[1] - y2 <= near.y ? l * h : 0
  const top = size[2] - z2 <= near.z ? l * w : 0
  for (let k = 0; k < room.neighbours; k += 1) {
    const at = around[k] as number
    const a1 = state.px1[at] as number
    const a2 = state.px2[at] as number
    const b1 = state.py1[at] as number
    const b2 = state.py2[at] as number
    const tall = Math.min(z2, state.pz2[at] as number) - Math.max(z1, state.pz1[at] as number)
    if (tall <= 0) continue
    const spanY = Math.min(y2, b2) - Math.max(y1, b1)
    const spanX = Math.min(x2, a2) - Math.max(x1, a1)
    if (spanY > 0) {
      if (a2 <= x1 && x1 - a2 <= near.x) touchX1 += spanY * tall
      else if (a1 >= x2 && a1 - x2 <= near.x) touchX2 += spanY * tall
    }
    if (spanX > 0) {
      if (b2 <= y1 && y1 - b2 <= near.y) touchY1 += spanX * tall
      else if (b1 >= y2 && b1 - y2 <= near.y) touchY2 += spanX * tall
    }
  }
  const side = w * h
  const front = l * h
  const base = l * w
  const touched =
    base + top + Math.min(side, touchX1) + Math.min(side, touchX2) + Math.min(front, touchY1) + Math.min(front, touchY2)
  const contact = touched / (2 * (side + front + base))
  const [reachX, reachY, reachZ] = table.reachable
  const useful =
    ((l + (reachX[room.roomX - l] as number)) *
      (w + (reachY[room.roomY - w] as number)) *
      (h + (reachZ[room.roomZ - h] as number))) /
    (room.roomX * room.roomY * room.roomZ)
  return contact ** CONTACT_POWER * useful ** LOSS_POWER
}

/** The boxes of all blocks; a block put into a far corner is mirrored so that its flat top lies at that corner. */
function placedBoxes(state: FillState, table: BlockTable): readonly PackedBox[] {
  const boxes: PackedBox[] = []
  for (let at = 0; at < state.placed; at += 1) {
    const code = state.placedBlock[at] as number
    const block = table.blocks[code >> 2] as Block
    const low = [state.px1[at] as number, state.py1[at] as number, state.pz1[at] as number] as const
    const high = [state.px2[at] as number, state.py2[at] as number] as const
    for (const box of boxesOf(block, low)) {
      const [x, y, z] = box.atMm
      const [l, w] = box.sizeMm
      const mirroredX = (code & 1) === 1 ? low[0] + high[0] - x - l : x
      const mirroredY = (code & 2) === 2 ? low[1] + high[1] - y - w : y
      boxes.push({ ...box, atMm: [mirroredX, mirroredY, z] })
    }
  }
  return boxes
}
