/** The named reference: an open packing library from the npm registry on the same instance, its boxes tried in several orders, the best kept. */
import { pack3D, RotationType } from 'binpackingjs/3d'
import type { Item3D } from 'binpackingjs/3d'
import type { ContainerInput, ContainerPacking } from '../../../shared/packing/index.ts'
import { intersect, solidOf } from '../../support/oracle/boxes.ts'

export const LIBRARY = 'binpackingjs 4.1.0'

export type LibraryResult = {
  readonly volumePercent: number
  readonly seconds: number
  /** Pairs that overlap and boxes that stick out or stand wrongly: the library's own placements, judged as ours are, support aside. */
  readonly illegal: number
  /** Share of boxes with less than four fifths of their base held. */
  readonly hanging01: number
}

/** Height upright: the rotations by which an edge of the box lies along the container's height. */
const UPRIGHT: readonly (readonly RotationType[])[] = [
  [RotationType.HWD, RotationType.DWH],
  [RotationType.WHD, RotationType.DHW],
  [RotationType.HDW, RotationType.WDH],
]

type Order = (a: Item3D, b: Item3D) => number
const volume = (item: Item3D): number => item.width * item.height * item.depth
const ORDERS: readonly Order[] = [
  (a, b) => volume(b) - volume(a),
  (a, b) => b.width * b.height - a.width * a.height || volume(b) - volume(a),
  (a, b) => Math.max(b.width, b.height, b.depth) - Math.max(a.width, a.height, a.depth) || volume(b) - volume(a),
]

/** Runs the library; its bin is width × height × depth, ours length × width × height. */
export function byLibrary(input: ContainerInput): LibraryResult {
  const began = performance.now()
  const [length, width, height] = input.sizeMm
  const items = input.boxes.flatMap(({ sizeMm, upright, count }, type) =>
    Array.from({ length: count }, (): Item3D => ({
      name: String(type),
      width: sizeMm[0],
      height: sizeMm[1],
      depth: sizeMm[2],
      weight: 0,
      allowedRotations: UPRIGHT.flatMap((rotations, edge) => (upright[edge] === true ? rotations : [])),
    })),
  )
  const bin = { name: 'container', width: length, height, depth: width, maxWeight: 1 }
  const packings = ORDERS.map((order) => {
    const { packedBins } = pack3D({ bins: [bin], items: items.toSorted(order) })
    const boxes = (packedBins[0]?.items ?? []).map(({ name, position: [x, z, y], dimension: [l, h, w] }) => ({
      type: Number(name),
      atMm: [x, y, z] as const,
      sizeMm: [l, w, h] as const,
    }))
    const filled = boxes.reduce((sum, { sizeMm }) => sum + sizeMm[0] * sizeMm[1] * sizeMm[2], 0)
    return { boxes, filled01: filled / (length * width * height) }
  })
  const best = packings.reduce((a, b) => (b.filled01 > a.filled01 ? b : a))
  const seconds = (performance.now() - began) / 1000
  return { volumePercent: best.filled01 * 100, seconds, ...judged(input, best.boxes) }
}

function judged(input: ContainerInput, boxes: ContainerPacking['boxes']): Pick<LibraryResult, 'illegal' | 'hanging01'> {
  const solids = boxes.map(({ atMm, sizeMm }) => solidOf(atMm, sizeMm))
  let illegal = 0
  let hanging = 0
  solids.forEach((solid, at) => {
    const box = boxes[at]
    const type = input.boxes[box?.type ?? -1]
    const stands = type?.sizeMm.some((edge, axis) => type.upright[axis] === true && edge === box?.sizeMm[2]) ?? false
    const inside =
      solid.lo.every((edge) => edge >= 0) && solid.hi.every((edge, axis) => edge <= (input.sizeMm[axis] ?? 0))
    if (!stands || !inside) illegal++
    for (const other of solids.slice(at + 1)) if (intersect(solid, other)) illegal++
    if (solid.lo[2] === 0) return
    const held = solids.reduce((sum, under) => {
      if (under.hi[2] !== solid.lo[2]) return sum
      const x = Math.min(under.hi[0], solid.hi[0]) - Math.max(under.lo[0], solid.lo[0])
      const y = Math.min(under.hi[1], solid.hi[1]) - Math.max(under.lo[1], solid.lo[1])
      return sum + Math.max(0, x) * Math.max(0, y)
    }, 0)
    const base = (solid.hi[0] - solid.lo[0]) * (solid.hi[1] - solid.lo[1])
    if (held < 0.8 * base) hanging++
  })
  return { illegal, hanging01: boxes.length === 0 ? 0 : hanging / boxes.length }
}
