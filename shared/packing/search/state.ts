/** The whole of one layout while it is searched: every bay, and who is where. */
import { copyBay, emptyBay, rebuiltBay } from '../bay-state.ts'
import type { BayState } from '../bay-state.ts'
import { moved, overlaps } from '../geometry.ts'
import type { Box } from '../geometry.ts'
import type { Scene } from '../scene.ts'

export type SceneState = {
  readonly bays: BayState[]
  /** Bay index by unit index; -1 where nothing holds it. */
  readonly where: Int32Array
}

export const emptyState = (scene: Scene): SceneState => ({
  bays: scene.model.bays.map(emptyBay),
  where: new Int32Array(scene.model.units.length).fill(-1),
})

/** A state that shares bays with another until they are changed through `ownBay`. */
export const branch = (state: SceneState): SceneState => ({ bays: state.bays.slice(), where: state.where.slice() })

/** Replaces a shared bay by a copy that may be changed. `owned` remembers which were copied. */
export const ownBay = (state: SceneState, bay: number, owned: Set<number>): BayState | null => {
  const held = state.bays[bay]
  if (held === undefined) return null
  if (owned.has(bay)) return held
  const copy = copyBay(held)
  state.bays[bay] = copy
  owned.add(bay)
  return copy
}

/** Takes units out; what stood on them comes out as well. Returns all that are out. */
export const takeOut = (
  scene: Scene,
  state: SceneState,
  units: ReadonlySet<number>,
  owned: Set<number>,
): readonly number[] => {
  const out = new Set(units)
  const bays = new Set([...units].map((unit) => state.where[unit] ?? -1).filter((bay) => bay >= 0))
  for (const index of bays) {
    const held = state.bays[index]
    if (held === undefined) continue
    const { bay, fallen } = rebuiltBay(scene, held, (item) => !out.has(item.unit))
    state.bays[index] = bay
    owned.add(index)
    for (const unit of fallen) out.add(unit)
  }
  for (const unit of out) state.where[unit] = -1
  return [...out]
}

/** Whether a box in one bay would stand in the air of a unit in another bay that overlaps it. */
export const clashes = (scene: Scene, state: SceneState, bay: number, box: Box): boolean => {
  const neighbours = scene.neighbours[bay]
  const origin = scene.model.bays[bay]?.bay.originMm
  if (neighbours === undefined || neighbours.length === 0 || origin === undefined) return false
  return neighbours.some((index) => {
    const other = state.bays[index]
    if (other === undefined || other.placed.length === 0) return false
    const there = other.model.bay.originMm
    const here = moved(box, [origin[0] - there[0], origin[1] - there[1], origin[2] - there[2]])
    return other.placed.some((item) => overlaps(item, here))
  })
}
