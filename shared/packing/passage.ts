/** Whether a box can be taken out of a bay, or put in, as the bay stands now. */
import type { BayModel, Window } from './bay-model.ts'
import { hull, moved, overlaps } from './geometry.ts'
import type { Box } from './geometry.ts'
import { facesWindow, hinders, inSweep, restsOn, shiftTo } from './reach.ts'

/**
 * Index of a window through which `box` passes with `others` in the bay: straight, or shifted into line first where it faces none;
 * the straight way out must be empty of other boxes in both cases, as reach counts them.
 * -1 where none is free or something rests on it.
 */
export const freeWindow = (bay: BayModel, others: readonly Box[], box: Box): number => {
  for (const other of others) if (restsOn(other, box)) return -1
  let faces = false
  for (let w = 0; w < bay.windows.length; w++) {
    const window = bay.windows[w]
    if (window === undefined || !facesWindow(box, window)) continue
    faces = true
    if (pullsOut(bay, others, box, window)) return w
  }
  if (faces) return -1
  for (let w = 0; w < bay.windows.length; w++) {
    const window = bay.windows[w]
    if (window === undefined || others.some((other) => inSweep(other, box, window))) continue
    const shift = shiftTo(box, window)
    if (shift === null) continue
    const there = moved(box, shift)
    const way = hull(box, there)
    const barred = others.some((other) => overlaps(other, way)) || bay.solids.some((solid) => overlaps(solid.box, way))
    if (!barred && pullsOut(bay, others, there, window)) return w
  }
  return -1
}

const pullsOut = (bay: BayModel, others: readonly Box[], box: Box, window: Window): boolean => {
  for (const other of others) if (inSweep(other, box, window)) return false
  for (const solid of bay.solids) if (hinders(solid, box, window)) return false
  return true
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
