/**
 * Blocks: boxes put together so that they stack as one. Simple ones repeat a box in a grid, compound ones join two blocks face to face.
 * Every box of a block rests wholly on the block's base or on boxes of the block; its top offers one flat rectangle.
 * Method after Fanslau and Bortfeldt 2010 (INFORMS J. Comput. 22) and Zhu et al. 2012 (Appl. Intell. 37).
 */
import type { BoxType, ContainerInput, PackedBox } from './types.ts'
import type { Vec3 } from '../types.ts'

/** Blocks joined with all others between two looks at the clock. */
const POLL_EACH = 16
/** Share of the footprint that the flat top covers at least. */
const LEAST_TOP_01 = 0.9

export type Block = {
  readonly size: Vec3
  readonly volume: number
  /** Flat top from the block's low corner. */
  readonly topX: number
  readonly topY: number
  /** Box type and count, alternating. */
  readonly uses: readonly number[]
  readonly parts: Grid | Joint
}

type Grid = { readonly kind: 'grid'; readonly type: number; readonly box: Vec3; readonly times: Vec3 }
type Joint = { readonly kind: 'joint'; readonly first: Block; readonly second: Block; readonly axis: 0 | 1 | 2 }

const TURNS: readonly Vec3[] = [
  [0, 1, 2],
  [1, 0, 2],
  [0, 2, 1],
  [2, 0, 1],
  [1, 2, 0],
  [2, 1, 0],
]

/** The distinct ways a box may stand. */
export function turnsOf(box: BoxType): readonly Vec3[] {
  const seen = new Set<string>()
  return TURNS.flatMap(([x, y, z]): Vec3[] => {
    if (box.upright[z as 0 | 1 | 2] !== true) return []
    const size: Vec3 = [box.sizeMm[x as 0 | 1 | 2], box.sizeMm[y as 0 | 1 | 2], box.sizeMm[z as 0 | 1 | 2]]
    const key = size.join()
    if (seen.has(key)) return []
    seen.add(key)
    return [size]
  })
}

export type BlocksWanted = {
  readonly most: number
  /** Share of a compound block's hull that boxes fill at least. */
  readonly leastFill01: number
  /** Asked now and then: what has been made by then must do. */
  readonly shouldStop: () => boolean
}

/** All blocks worth trying, largest volume first. */
export function blocksOf(input: ContainerInput, wanted: BlocksWanted): readonly Block[] {
  const simple = input.boxes.flatMap((box, type) => simpleBlocks(input, box, type))
  const singles = simple.toSorted(byVolume).slice(-wanted.most)
  return compound(input, singles, wanted).toSorted(byVolume)
}

const byVolume = (a: Block, b: Block): number => b.volume - a.volume || b.size[0] - a.size[0] || b.size[1] - a.size[1]

function simpleBlocks({ sizeMm: [length, width, height] }: ContainerInput, box: BoxType, type: number): Block[] {
  const blocks: Block[] = []
  for (const [x, y, z] of turnsOf(box)) {
    for (let nx = 1; nx * x <= length && nx <= box.count; nx += 1) {
      for (let ny = 1; ny * y <= width && nx * ny <= box.count; ny += 1) {
        for (let nz = 1; nz * z <= height && nx * ny * nz <= box.count; nz += 1) {
          const count = nx * ny * nz
          const size: Vec3 = [nx * x, ny * y, nz * z]
          blocks.push({
            size,
            volume: count * x * y * z,
            topX: size[0],
            topY: size[1],
            uses: [type, count],
            parts: { kind: 'grid', type, box: [x, y, z], times: [nx, ny, nz] },
          })
        }
      }
    }
  }
  return blocks
}

type Joining = {
  readonly input: ContainerInput
  readonly counts: readonly number[]
  readonly known: Set<string>
  readonly leastFill01: number
}

/** Joins blocks in rounds until nothing new comes or there are enough. Only partners that can pass are looked at: equal heights side by side, like lengths on top. */
function compound(
  input: ContainerInput,
  simple: readonly Block[],
  { most, leastFill01, shouldStop }: BlocksWanted,
): Block[] {
  const all: Block[] = []
  const byHeight = new Map<number, Block[]>()
  const byLength = new Map<number, Block[]>()
  const joining: Joining = { input, counts: input.boxes.map(({ count }) => count), known: new Set(), leastFill01 }
  let next: Block[] = []
  const admit = (block: Block | null): void => {
    if (block === null || all.length >= most) return
    all.push(block)
    next.push(block)
  }
  for (const block of simple) {
    const key = keyOf(block.size, block.topX, block.topY, block.uses)
    if (joining.known.has(key)) continue
    joining.known.add(key)
    admit(block)
  }
  let ended = false
  while (next.length > 0 && all.length < most && !ended) {
    const fresh = next
    next = []
    for (const block of fresh) {
      shelf(byHeight, block.size[2]).push(block)
      shelf(byLength, block.size[0]).push(block)
    }
    for (const [at, block] of fresh.entries()) {
      if (at % POLL_EACH === 0) ended = shouldStop()
      if (all.length >= most || ended) break
      for (const partner of shelf(byHeight, block.size[2])) {
        if (fillsBeside(block, partner, 0, joining)) {
          admit(join(joining, block, partner, 0))
          admit(join(joining, partner, block, 0))
        }
        if (fillsBeside(block, partner, 1, joining)) {
          admit(join(joining, block, partner, 1))
          admit(join(joining, partner, block, 1))
        }
      }
      for (let length = block.topX; length >= LEAST_TOP_01 * block.topX; length -= 1) {
        for (const partner of byLength.get(length) ?? []) admit(join(joining, block, partner, 2))
      }
      for (let length = block.size[0]; length <= block.size[0] / LEAST_TOP_01; length += 1) {
        for (const partner of byLength.get(length) ?? []) admit(join(joining, partner, block, 2))
      }
    }
  }
  return all
}

/** Whether two blocks of one height fill their hull side by side well enough, in either order. */
function fillsBeside(a: Block, b: Block, axis: 0 | 1, { input: { sizeMm }, leastFill01 }: Joining): boolean {
  const across = axis === 0 ? 1 : 0
  const along = a.size[axis] + b.size[axis]
  if (along > sizeMm[axis]) return false
  const wide = a.size[across] > b.size[across] ? a.size[across] : b.size[across]
  return a.volume + b.volume >= leastFill01 * along * wide * a.size[2]
}

function shelf(shelves: Map<number, Block[]>, key: number): Block[] {
  const known = shelves.get(key)
  if (known !== undefined) return known
  const made: Block[] = []
  shelves.set(key, made)
  return made
}

/** What makes two blocks the same to the search, one character a number. */
const keyOf = (size: Vec3, topX: number, topY: number, uses: readonly number[]): string =>
  String.fromCharCode(size[0], size[1], size[2], topX, topY, ...uses)

/** Two blocks face to face along an axis; null where they do not fit together well. Most pairs fail by their numbers alone, before anything is made. */
function join(
  { input: { sizeMm }, counts, known, leastFill01 }: Joining,
  first: Block,
  second: Block,
  axis: 0 | 1 | 2,
): Block | null {
  const [l1, w1, h1] = first.size
  const [l2, w2, h2] = second.size
  let length = l1
  let width = w1
  let height = h1
  let { topX, topY } = second
  if (axis === 2) {
    if (l2 > first.topX || w2 > first.topY) return null
    height += h2
  } else if (axis === 0) {
    if (first.topX !== l1) return null
    length += l2
    width = w1 > w2 ? w1 : w2
    topX += l1
    if (first.topY < topY) topY = first.topY
  } else {
    if (first.topY !== w1) return null
    length = l1 > l2 ? l1 : l2
    width += w2
    if (first.topX < topX) topX = first.topX
    topY += w1
  }
  const volume = first.volume + second.volume
  const base = length * width
  if (volume < leastFill01 * base * height || topX * topY < LEAST_TOP_01 * base) return null
  if (length > sizeMm[0] || width > sizeMm[1] || height > sizeMm[2]) return null
  const uses = addUses(first.uses, second.uses, counts)
  if (uses === null) return null
  const size: Vec3 = [length, width, height]
  const key = keyOf(size, topX, topY, uses)
  if (known.has(key)) return null
  known.add(key)
  return { size, volume, topX, topY, uses, parts: { kind: 'joint', first, second, axis } }
}

/** Sum of two use lists in order of type; null where there are not that many boxes. */
function addUses(a: readonly number[], b: readonly number[], counts: readonly number[]): readonly number[] | null {
  const sum: number[] = []
  let i = 0
  let j = 0
  while (i < a.length || j < b.length) {
    const left = a[i] ?? Infinity
    const right = b[j] ?? Infinity
    const type = Math.min(left, right)
    const count = (left === type ? (a[i + 1] ?? 0) : 0) + (right === type ? (b[j + 1] ?? 0) : 0)
    if (count > (counts[type] ?? 0)) return null
    sum.push(type, count)
    if (left === type) i += 2
    if (right === type) j += 2
  }
  return sum
}

/** The boxes of a block that stands at a place. */
export function boxesOf(block: Block, at: Vec3): readonly PackedBox[] {
  const { parts } = block
  if (parts.kind === 'joint') {
    const offset: [number, number, number] = [0, 0, 0]
    offset[parts.axis] = parts.first.size[parts.axis]
    return [
      ...boxesOf(parts.first, at),
      ...boxesOf(parts.second, [at[0] + offset[0], at[1] + offset[1], at[2] + offset[2]]),
    ]
  }
  const boxes: PackedBox[] = []
  const [x, y, z] = parts.box
  for (let i = 0; i < parts.times[0]; i += 1) {
    for (let j = 0; j < parts.times[1]; j += 1) {
      for (let k = 0; k < parts.times[2]; k += 1)
        boxes.push({ type: parts.type, atMm: [at[0] + i * x, at[1] + j * y, at[2] + k * z], sizeMm: parts.box })
    }
  }
  return boxes
}
