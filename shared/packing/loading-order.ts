/** The order to load by hand: nothing goes in that would bar the way of what still has to. */
import type { BayModel } from './bay-model.ts'
import type { Box } from './geometry.ts'
import { peeled } from './passage.ts'

export type Loaded = { readonly id: string; readonly bay: BayModel; readonly box: Box }

/**
 * First in to last in, bay by bay: the reverse of an order in which everything can be taken out.
 * Boxes that no order frees come first, the lowest before the others. Wells under the floor are filled before the bays above them.
 */
export const loadingOrder = (loads: readonly Loaded[]): readonly string[] => {
  const byBay = new Map<number, Loaded[]>()
  for (const load of loads) byBay.set(load.bay.index, [...(byBay.get(load.bay.index) ?? []), load])
  const height = (held: readonly Loaded[]): number => held[0]?.bay.bay.originMm[2] ?? 0
  return [...byBay.values()].sort((a, b) => height(a) - height(b)).flatMap(bayOrder)
}

const bayOrder = (held: readonly Loaded[]): readonly string[] => {
  const bay = held[0]?.bay
  if (bay === undefined) return []
  const { order, trapped } = peeled(
    bay,
    held.map((load) => load.box),
  )
  const low = trapped.slice().sort((a, b) => (held[a]?.box.z1 ?? 0) - (held[b]?.box.z1 ?? 0))
  return [...low, ...order.toReversed()].map((index) => held[index]?.id ?? '')
}
