/** Blocks laid out in columns of numbers, so that the search scans them without touching an object. */
import { blocksOf } from './blocks.ts'
import type { Block, BlocksWanted } from './blocks.ts'
import { turnsOf } from './blocks.ts'
import type { ContainerInput } from './types.ts'

export type BlockTable = {
  readonly blocks: readonly Block[]
  readonly count: number
  readonly lengths: Int32Array
  readonly widths: Int32Array
  readonly heights: Int32Array
  readonly volumes: Float64Array
  readonly topXs: Int32Array
  readonly topYs: Int32Array
  /** Where each block's uses begin in `uses`; one more than blocks. */
  readonly usesFrom: Int32Array
  readonly uses: Int32Array
  /** One bit for each box type used, types past 32 folded: blocks without a common bit have no common type. */
  readonly typeMasks: Int32Array
  /** Longest length up to l that edges in that direction can add up to, by axis. */
  readonly reachable: readonly [Int32Array, Int32Array, Int32Array]
  /** Shortest edge that may stand upright: no level higher than the ceiling less this is of use. */
  readonly lowestBox: number
  readonly boxCounts: Int32Array
}

export function blockTable(input: ContainerInput, wanted: BlocksWanted): BlockTable {
  const blocks = blocksOf(input, wanted)
  const column = (pick: (block: Block) => number): Int32Array => Int32Array.from(blocks, pick)
  const usesFrom = new Int32Array(blocks.length + 1)
  blocks.forEach((block, at) => {
    usesFrom[at + 1] = (usesFrom[at] ?? 0) + block.uses.length
  })
  const turns = input.boxes.map(turnsOf)
  const edges = (axis: 0 | 1 | 2): readonly { size: number; count: number }[] =>
    input.boxes.flatMap((box, type) =>
      [...new Set(turns[type]?.map((size) => size[axis]) ?? [])].map((size) => ({ size, count: box.count })),
    )
  return {
    blocks,
    count: blocks.length,
    lengths: column(({ size }) => size[0]),
    widths: column(({ size }) => size[1]),
    heights: column(({ size }) => size[2]),
    volumes: Float64Array.from(blocks, ({ volume }) => volume),
    topXs: column(({ topX }) => topX),
    topYs: column(({ topY }) => topY),
    usesFrom,
    typeMasks: column(({ uses }) =>
      uses.reduce((mask, type, at) => (at % 2 === 0 ? mask | (1 << (type & 31)) : mask), 0),
    ),
    uses: Int32Array.from(blocks.flatMap(({ uses }) => uses)),
    reachable: [
      reachable(input.sizeMm[0], edges(0)),
      reachable(input.sizeMm[1], edges(1)),
      reachable(input.sizeMm[2], edges(2)),
    ],
    lowestBox: Math.min(...turns.flat().map((size) => size[2])),
    boxCounts: Int32Array.from(input.boxes, ({ count }) => count),
  }
}

/** Largest sum of edges, each used no more often than there are boxes, that fits in each length. */
function reachable(length: number, edges: readonly { size: number; count: number }[]): Int32Array {
  const can = new Uint8Array(length + 1)
  can[0] = 1
  for (const { size, count } of edges) {
    const used = new Int32Array(length + 1)
    for (let at = size; at <= length; at += 1) {
      if (can[at] === 0 && can[at - size] === 1 && (used[at - size] ?? 0) < count) {
        can[at] = 1
        used[at] = (used[at - size] ?? 0) + 1
      }
    }
  }
  const best = new Int32Array(length + 1)
  for (let at = 1; at <= length; at += 1) best[at] = can[at] === 1 ? at : (best[at - 1] ?? 0)
  return best
}
