/** Blocks of boxes by trying everything: all grids, then all joins of any two, until nothing new comes. For few boxes only. */
import type { BoxType, ContainerInput, Vec3 } from '../../../shared/packing/index.ts'

/** A block as the search tells it from others: hull, flat top from its low corner, boxes used by type. */
export type PlainBlock = {
  readonly size: Vec3
  readonly top: readonly [number, number]
  readonly used: readonly number[]
}

const EDGES = [0, 1, 2] as const
/** Share of the footprint that the flat top covers at least. */
const LEAST_TOP_01 = 0.9

/** The distinct ways a box may stand. */
export function standing({ sizeMm, upright }: BoxType): readonly Vec3[] {
  const ways = EDGES.filter((edge) => upright[edge]).flatMap((edge): readonly Vec3[] => {
    const [a = 0, b = 0] = EDGES.filter((other) => other !== edge).map((other) => sizeMm[other])
    return [
      [a, b, sizeMm[edge]],
      [b, a, sizeMm[edge]],
    ]
  })
  return ways.filter((way, at) => ways.findIndex((other) => other.join() === way.join()) === at)
}

export const nameOf = ({ size, top, used }: PlainBlock): string =>
  [size.join('x'), top.join('x'), used.join()].join(' ')

/** All grids of one box that the container and the number of boxes allow. */
export function grids(input: ContainerInput): readonly PlainBlock[] {
  const found = new Map<string, PlainBlock>()
  for (const [type, box] of input.boxes.entries())
    for (const [x, y, z] of standing(box))
      for (let nx = 1; nx <= box.count; nx += 1)
        for (let ny = 1; ny <= box.count; ny += 1)
          for (let nz = 1; nz <= box.count; nz += 1) {
            const size: Vec3 = [nx * x, ny * y, nz * z]
            if (nx * ny * nz > box.count || EDGES.some((axis) => size[axis] > input.sizeMm[axis])) continue
            const used = input.boxes.map((_, each) => (each === type ? nx * ny * nz : 0))
            const block: PlainBlock = { size, top: [size[0], size[1]], used }
            found.set(nameOf(block), block)
          }
  return [...found.values()]
}

export const volumeOf = (input: ContainerInput, { used }: PlainBlock): number =>
  input.boxes.reduce((sum, { sizeMm: [a, b, c] }, type) => sum + (used[type] ?? 0) * a * b * c, 0)

/** The second block set on the first or against one of its far faces. */
function joined(first: PlainBlock, second: PlainBlock, axis: 0 | 1 | 2): PlainBlock | null {
  const used = first.used.map((count, type) => count + (second.used[type] ?? 0))
  const [length, width, height] = first.size
  if (axis === 2) {
    const stands = second.size[0] <= first.top[0] && second.size[1] <= first.top[1]
    return stands ? { size: [length, width, height + second.size[2]], top: second.top, used } : null
  }
  // Side by side the tops are one only where they are level and the first's reaches the joint.
  const across = axis === 0 ? 1 : 0
  if (height !== second.size[2] || first.top[axis] !== first.size[axis]) return null
  const along = first.size[axis] + second.size[axis]
  const wide = Math.max(first.size[across], second.size[across])
  const topAlong = first.size[axis] + second.top[axis]
  const topAcross = Math.min(first.top[across], second.top[across])
  return axis === 0
    ? { size: [along, wide, height], top: [topAlong, topAcross], used }
    : { size: [wide, along, height], top: [topAcross, topAlong], used }
}

function suits(input: ContainerInput, block: PlainBlock, leastFill01: number): boolean {
  const [length, width, height] = block.size
  return (
    EDGES.every((axis) => block.size[axis] <= input.sizeMm[axis]) &&
    block.used.every((count, type) => count <= (input.boxes[type]?.count ?? 0)) &&
    volumeOf(input, block) >= leastFill01 * length * width * height &&
    block.top[0] * block.top[1] >= LEAST_TOP_01 * length * width
  )
}

/** All blocks that joins reach. */
export function allBlocks(input: ContainerInput, leastFill01: number): readonly PlainBlock[] {
  const found = new Map(grids(input).map((block) => [nameOf(block), block]))
  for (let before = -1; before !== found.size;) {
    before = found.size
    const known = [...found.values()]
    for (const first of known)
      for (const second of known)
        for (const axis of EDGES) {
          const block = joined(first, second, axis)
          if (block !== null && suits(input, block, leastFill01)) found.set(nameOf(block), block)
        }
  }
  return [...found.values()]
}
