/** Judges a container packing: inside, not overlapping, wholly supported, standing as allowed, and of no more boxes than there are. */
import type { ContainerInput, ContainerPacking } from '../../../shared/packing/index.ts'
import { covered01, hi, intersect, solidOf } from './boxes.ts'

export function containerFaults(input: ContainerInput, packing: ContainerPacking): readonly string[] {
  const faults: string[] = []
  const solids = packing.boxes.map(({ atMm, sizeMm }) => solidOf(atMm, sizeMm))
  solids.forEach((solid, at) => {
    const box = packing.boxes[at]
    const type = input.boxes[box?.type ?? -1]
    if (box === undefined || type === undefined) return faults.push(`box ${at} is of no known type`)
    const sorted = (size: readonly number[]): string => size.toSorted((a, b) => a - b).join()
    if (sorted(box.sizeMm) !== sorted(type.sizeMm)) faults.push(`box ${at} has another size`)
    if (!type.sizeMm.some((edge, axis) => type.upright[axis] === true && edge === box.sizeMm[2]))
      faults.push(`box ${at} stands on a wrong edge`)
    if (solid.lo.some((edge) => edge < 0) || [0, 1, 2].some((axis) => hi(solid, axis) > (input.sizeMm[axis] ?? 0)))
      faults.push(`box ${at} sticks out`)
    const under = solids.filter((other) => other.hi[2] === solid.lo[2])
    if (solid.lo[2] > 0 && covered01(solid, under) < 1) faults.push(`box ${at} hangs`)
    for (let next = at + 1; next < solids.length; next += 1) {
      const other = solids[next]
      if (other !== undefined && intersect(solid, other)) faults.push(`box ${at} overlaps box ${next}`)
    }
    return 0
  })
  input.boxes.forEach(({ count }, type) => {
    const used = packing.boxes.filter((box) => box.type === type).length
    if (used > count) faults.push(`${used} of ${count} boxes of type ${type}`)
  })
  const [length, width, height] = input.sizeMm
  const filled = packing.boxes.reduce((sum, { sizeMm: [l, w, h] }) => sum + l * w * h, 0) / (length * width * height)
  if (Math.abs(filled - packing.filled01) > 1e-9) faults.push(`fills ${filled}, said ${packing.filled01}`)
  return faults
}
