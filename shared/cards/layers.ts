/** Units of a bay in layers, as hands load them: what stands on the floor, what stands on that, and so on. */
import type { Placement } from './plan-parts.ts'

/** Layer of each placement: 0 on the floor, else one more than the highest it lies above. */
export function layersOf(placements: readonly Placement[]): readonly (readonly Placement[])[] {
  const sorted = placements.toSorted((a, b) => a.atMm[2] - b.atMm[2] || a.atMm[0] - b.atMm[0] || a.atMm[1] - b.atMm[1])
  const layerOf = new Map<Placement, number>()
  for (const unit of sorted) {
    const below = [...layerOf].filter(
      ([other]) => other.atMm[2] + other.sizeMm[2] <= unit.atMm[2] && coversPart(other, unit),
    )
    layerOf.set(unit, below.length === 0 ? 0 : 1 + Math.max(...below.map(([, layer]) => layer)))
  }
  const layers: Placement[][] = []
  for (const [unit, layer] of layerOf) {
    const list = layers[layer] ?? []
    list.push(unit)
    layers[layer] = list
  }
  return layers
}

/** Units that a placement rests on. */
export const restsOn = (unit: Placement, all: readonly Placement[]): readonly Placement[] =>
  all.filter(
    (other) =>
      other.bayId === unit.bayId && other.atMm[2] + other.sizeMm[2] === unit.atMm[2] && coversPart(other, unit),
  )

const coversPart = (a: Placement, b: Placement): boolean =>
  [0, 1].every((axis) => {
    const [aFrom, bFrom] = [a.atMm[axis] ?? 0, b.atMm[axis] ?? 0]
    return aFrom < bFrom + (b.sizeMm[axis] ?? 0) && bFrom < aFrom + (a.sizeMm[axis] ?? 0)
  })
