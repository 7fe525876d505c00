/** The order to load by hand: nothing goes in that would bar the way of what still has to. */
import type { BayModel } from './bay-model.ts'
import type { Box } from './geometry.ts'
import { freeWindow } from './passage.ts'

export type Loaded = { readonly id: string; readonly bay: BayModel; readonly box: Box }

/**
 * First in to last in, bay by bay: the reverse of an order in which everything can be taken out.
 * Boxes that no order frees come first, lowest and deepest before the others.
 */
export const loadingOrder = (loads: readonly Loaded[]): readonly string[] => {
  const byBay = new Map<number, Loaded[]>()
  for (const load of loads) byBay.set(load.bay.index, [...(byBay.get(load.bay.index) ?? []), load])
  return [...byBay.values()].flatMap((held) => bayOrder(held))
}

const bayOrder = (held: readonly Loaded[]): readonly string[] => {
  const left = held.slice().sort((a, b) => b.box.z1 - a.box.z1)
  const out: string[] = []
  while (left.length > 0) {
    const at = left.findIndex(({ bay, box }, index) => {
      const others = left.filter((_, other) => other !== index).map((each) => each.box)
      return freeWindow(bay, others, box) >= 0
    })
    const [next] = left.splice(Math.max(0, at), 1)
    if (next !== undefined) out.unshift(next.id)
  }
  return out
}
