/** Whether a box can be taken out of a bay, or put in, as the bay stands now. */
import type { BayModel, Window } from './bay-model.ts'
import { hull, moved, overlaps } from './geometry.ts'
import type { Box } from './geometry.ts'
import { facesWindow, hinders, inSweep, restsOn, shiftTo } from './reach.ts'

/** How a box passes through an opening: straight, or shifted into line first where it faces none. */
export type Path = {
  /** Place of the opening among the bay's. */
  readonly index: number
  readonly window: Window
  readonly there: Box
  readonly sweep: Box
}

/** The ways out that the empty bay leaves a box. */
export const pathsOf = (bay: BayModel, box: Box): readonly Path[] => {
  const faces = bay.windows.some((window) => facesWindow(box, window))
  return bay.windows.flatMap((window, index) => {
    if (faces && !facesWindow(box, window)) return []
    const shift = faces ? ([0, 0, 0] as const) : shiftTo(box, window)
    if (shift === null) return []
    const there = moved(box, shift)
    const sweep = hull(box, there)
    if (!faces && bay.solids.some((solid) => overlaps(solid.box, sweep))) return []
    if (bay.solids.some((solid) => hinders(solid, there, window))) return []
    return [{ window, there, sweep, index }]
  })
}

/** Whether a box keeps another from passing along a path. The straight way out must be empty in both cases, as reach counts it. */
export const shuts = (other: Box, box: Box, path: Path): boolean =>
  overlaps(other, path.sweep) ||
  restsOn(other, box) ||
  inSweep(other, box, path.window) ||
  inSweep(other, path.there, path.window)

/** Index of a window through which `box` passes with `others`, none of which it overlaps, in the bay; -1 where none is free or something rests on it. */
export const freeWindow = (bay: BayModel, others: readonly Box[], box: Box): number => {
  for (const other of others) if (restsOn(other, box)) return -1
  const free = pathsOf(bay, box).find((path) => !others.some((other) => shuts(other, box, path)))
  return free?.index ?? -1
}

/**
 * An order in which all boxes can be taken out one after another, and those that no order frees.
 * Whatever can be taken out in some order can be put in by the reverse.
 */
export const peeled = (
  bay: BayModel,
  boxes: readonly Box[],
): { readonly order: readonly number[]; readonly trapped: readonly number[] } => {
  const order: number[] = []
  let left = boxes.map((_, index) => index)
  for (;;) {
    const before = left.length
    for (let at = left.length - 1; at >= 0; at--) {
      const index = left[at] ?? -1
      const box = boxes[index]
      if (box === undefined) continue
      const others = left.flatMap((each) => (each === index ? [] : [boxes[each] ?? box]))
      if (freeWindow(bay, others, box) < 0) continue
      order.push(index)
      left = left.filter((each) => each !== index)
    }
    if (left.length === before || left.length === 0) return { order, trapped: left }
  }
}
