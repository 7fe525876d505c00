/** Pieces that ride in a bin and are elsewhere at night: each is taken out, and put back, when its bin stands free. */
import { leaves } from './moves.ts'
import type { ChangeoverTask, Spot, Step } from './moves.ts'
import type { Unit } from '../units.ts'
import { stateOf } from '../units.ts'
import type { BinMove, PackNight } from '../types.ts'

/** `start` holds where each mover is before the steps; `units` are the movers' units, in their order. */
export const binMovesOf = (
  task: ChangeoverTask,
  units: readonly Unit[],
  nights: { readonly all: readonly PackNight[]; readonly night: PackNight },
  way: { readonly start: readonly Spot[]; readonly steps: readonly Step[] },
): readonly BinMove[] =>
  units.flatMap((unit, mover): readonly BinMove[] => {
    if (unit.bin === null) return []
    const binId = unit.id
    const out = unit.pieces.flatMap(({ id }) => {
      const state = stateOf(nights.night.states, id)
      const travels = nights.all.some((each) => stateOf(each.states, id) !== 'left-behind')
      return state === 'stored' || !travels ? [] : [{ pieceId: id, state }]
    })
    if (out.length === 0) return []
    const afterMoves = firstFree(task, way.start, way.steps, mover)
    return out.map(({ pieceId, state }) => ({ pieceId, binId, state, afterMoves }))
  })

/** After how many steps nothing stands on a mover or in its way; null where that never comes. */
const firstFree = (
  task: ChangeoverTask,
  start: readonly Spot[],
  steps: readonly Step[],
  mover: number,
): number | null => {
  const spots = start.slice()
  for (let done = 0; done <= steps.length; done++) {
    if (leaves(task, spots, mover) >= 0) return done
    const step = steps[done]
    if (step !== undefined) spots[step.mover] = step.to
  }
  return null
}
