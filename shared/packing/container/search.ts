/**
 * Beam search over blocks: the free space nearest a corner is filled next, each child is valued by completing it greedily,
 * and the beam widens with each restart. Numeric kernel.
 * Method after Araya, Guerrero and Nunez 2017 (Comput. Oper. Res. 82), with full support: the state is a height map.
 */
import { boxesOf } from './blocks.ts'
import type { Block } from './blocks.ts'
import { bestBlock, bestBlocks, nextSpace } from './choose.ts'
import type { Search } from './choose.ts'
import { FillState, MOST_PLACED } from './state.ts'
import { blockTable } from './table.ts'
import type { ContainerBudget, ContainerInput, ContainerPacking, PackedBox } from './types.ts'

const MOST_BLOCKS = 10_000
/** Blocks of the table made first: a packing stands before the large table is made. */
const FEW_BLOCKS = 1500
const WIDER = Math.SQRT2
const WIDEST = 4096
/** Completions between two looks at the clock: under 10 ms. */
const POLL_EACH = 16
/** Faces this near each other, as a share of the container's edge, count as touching. */
const NEAR_01 = 0.04
/** Share of a compound block's hull that boxes fill at least, in each of the searches that take turns. */
const FILLS_01 = [0.98] as const
/** Boxes of many types pair less exactly: looser blocks come first, and two tables find more than one. Tuned on instances past the published hundred. */
const MANY_TYPES = 50
const FILLS_OF_MANY_01 = [0.97, 0.98] as const
/** Completions before the second table is made, which takes a while. */
const FIRST_ALONE = 3000

/** What the searches have in common: the best packing, completions spent, and whether to stop. */
type Progress = {
  readonly budget: ContainerBudget
  readonly best: { volume: number; state: FillState | null }
  completions: number
  /** Completions at which the host is asked again. */
  asked: number
  stopped: boolean
}

type Turn = {
  readonly search: Search
  readonly start: FillState
  readonly pool: FillState[]
  readonly progress: Progress
}

export function packContainer(input: ContainerInput, budget: ContainerBudget): ContainerPacking {
  const [length, width, height] = input.sizeMm
  const progress: Progress = { budget, best: { volume: 0, state: null }, completions: 0, asked: 0, stopped: false }
  const fills01 = input.boxes.length < MANY_TYPES ? FILLS_01 : FILLS_OF_MANY_01
  const few = turnOf(input, { leastFill01: fills01[0], most: FEW_BLOCKS }, progress)
  // Whatever the time, there is one packing.
  complete(few, few.search.table.count)
  runBeam(few, 1)
  const whole = { leastFill01: fills01[0], most: MOST_BLOCKS }
  const turns = [few.search.table.count < FEW_BLOCKS || mustStop(progress) ? few : turnOf(input, whole, progress)]
  for (let beam = 1; beam <= WIDEST && !mustStop(progress); beam *= WIDER) {
    if (progress.completions >= FIRST_ALONE && turns.length < fills01.length)
      turns.push(...fills01.slice(1).map((leastFill01) => turnOf(input, { leastFill01, most: MOST_BLOCKS }, progress)))
    for (const turn of turns) {
      if (mustStop(progress)) break
      runBeam(turn, Math.max(1, Math.round(beam)))
      budget.onProgress?.(Math.min(1, progress.completions / budget.completions))
    }
  }
  const { state, volume } = progress.best
  return {
    boxes: state === null ? [] : placedBoxes(state),
    filled01: volume / (length * width * height),
    completions: progress.completions,
  }
}

function mustStop(progress: Progress): boolean {
  if (progress.stopped || progress.completions >= progress.budget.completions) return true
  if (progress.completions < progress.asked) return false
  progress.asked = progress.completions + POLL_EACH
  progress.stopped = progress.budget.shouldStop?.() === true
  return progress.stopped
}

function turnOf(input: ContainerInput, wanted: { leastFill01: number; most: number }, progress: Progress): Turn {
  const table = blockTable(input, { ...wanted, shouldStop: () => progress.budget.shouldStop?.() === true })
  const [length, width, height] = input.sizeMm
  const search: Search = {
    table,
    size: input.sizeMm,
    alive: Int32Array.from({ length: table.count }, (_, at) => at),
    parentAlive: new Int32Array(table.count),
    near: { x: NEAR_01 * length, y: NEAR_01 * width, z: NEAR_01 * height },
    scratch: new FillState(table, length, width, height),
    corner: { x: 0, y: 0, mirrorX: false, mirrorY: false },
    around: new Int32Array(MOST_PLACED),
    room: { x: 0, y: 0, z: 0, height: 0, volume: 0, neighbours: 0 },
  }
  return { search, start: new FillState(table, length, width, height), pool: [], progress }
}

type Child = { readonly parent: FillState; readonly block: number; readonly value: number; readonly volume: number }

/** One pass with a fixed width: every state of a generation grows by one block. Children are values only; the best of them become states. */
function runBeam(turn: Turn, beam: number): void {
  const { search, start, pool, progress } = turn
  const take = (from: FillState): FillState => {
    const state = pool.pop() ?? new FillState(search.table, from.length, from.width, from.height)
    state.copyFrom(from)
    return state
  }
  let generation: FillState[] = [take(start)]
  while (generation.length > 0 && !mustStop(progress)) {
    const children: Child[] = []
    const seen = new Set<string>()
    for (const parent of generation) {
      const count = aliveInAll(search, parent)
      for (const block of expand(search, parent, { count, most: beam })) {
        if (mustStop(progress)) break
        const { value, volume } = tryChild(turn, parent, block, count)
        const key = `${value} ${volume}`
        if (seen.has(key)) continue
        seen.add(key)
        children.push({ parent, block, value, volume })
      }
    }
    children.sort((a, b) => b.value - a.value || b.volume - a.volume)
    const next = children.slice(0, beam).map(({ parent, block }) => {
      const state = take(parent)
      put(search, state, block)
      return state
    })
    pool.push(...generation)
    generation = next
  }
  pool.push(...generation)
}

/** The best blocks for the next space of a state; spaces that take none are dropped from it. */
function expand(search: Search, state: FillState, wanted: { count: number; most: number }): number[] {
  while (state.spaces > 0 && state.placed < MOST_PLACED) {
    const space = nextSpace(search, state)
    const found = bestBlocks(search, state, space, wanted)
    if (found.length > 0) return found
    state.dropSpace(space)
  }
  return []
}

/** Volume of a state with one block more, and of that completed greedily. */
function tryChild(turn: Turn, parent: FillState, block: number, count: number): { value: number; volume: number } {
  const { search } = turn
  const { scratch, parentAlive } = search
  scratch.copyFrom(parent)
  put(search, scratch, block)
  const { volume } = scratch
  return { value: complete(turn, aliveAfter(search, parentAlive, count, block)), volume }
}

/** Fills the scratch state greedily and keeps it if it is the best yet; returns the volume reached. */
function complete({ search, progress }: Turn, known: number): number {
  const { scratch } = search
  let count = known
  progress.completions += 1
  while (scratch.spaces > 0 && count > 0 && scratch.placed < MOST_PLACED) {
    const space = nextSpace(search, scratch)
    const block = bestBlock(search, scratch, space, count)
    if (block < 0) {
      scratch.dropSpace(space)
      continue
    }
    put(search, scratch, block, space)
    count = aliveAfter(search, search.alive, count, block)
  }
  if (scratch.volume > progress.best.volume) {
    const { table, length, width, height } = scratch
    progress.best.volume = scratch.volume
    progress.best.state = new FillState(table, length, width, height)
    progress.best.state.copyFrom(scratch)
  }
  return scratch.volume
}

/** Blocks that the boxes left can still make, in order of volume, into the parent's list. */
function aliveInAll(search: Search, state: FillState): number {
  const { parentAlive, table } = search
  let count = 0
  for (let block = 0; block < table.count; block += 1) {
    if (!state.affords(block)) continue
    parentAlive[count] = block
    count += 1
  }
  return count
}

/** Those of a list that are still to be had after a block was placed in the scratch state: only blocks that share a type with it can have gone. */
function aliveAfter(search: Search, from: Int32Array, known: number, placed: number): number {
  const { alive, scratch } = search
  const { typeMasks } = search.table
  const changed = typeMasks[placed] as number
  let count = 0
  for (let at = 0; at < known; at += 1) {
    const block = from[at] as number
    if (((typeMasks[block] as number) & changed) !== 0 && !scratch.affords(block)) continue
    alive[count] = block
    count += 1
  }
  return count
}

/** Puts a block into a space at its corner; the space is the next one where none is named. */
function put(search: Search, state: FillState, block: number, space = nextSpace(search, state)): void {
  const { corner, table } = search
  const x = corner.mirrorX ? corner.x - (table.lengths[block] as number) : corner.x
  const y = corner.mirrorY ? corner.y - (table.widths[block] as number) : corner.y
  state.place(block, x, y, state.sz[space] as number, corner.mirrorX, corner.mirrorY)
}

/** The boxes of all blocks; a block put into a far corner is mirrored so that its flat top lies at that corner. */
function placedBoxes(state: FillState): readonly PackedBox[] {
  const boxes: PackedBox[] = []
  for (let at = 0; at < state.placed; at += 1) {
    const code = state.placedBlock[at] as number
    const block = state.table.blocks[code >> 2] as Block
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
