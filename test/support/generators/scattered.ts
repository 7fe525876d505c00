/** A layout with units at random legal places: nothing a search would make, yet all of it allowed. */
import { freeSpaces, poseRule, put } from '../../../shared/packing/bay-state.ts'
import { boxAt } from '../../../shared/packing/geometry.ts'
import type { Vec3 } from '../../../shared/packing/index.ts'
import type { Scene } from '../../../shared/packing/scene.ts'
import { clashes, emptyState } from '../../../shared/packing/search/state.ts'
import type { SceneState } from '../../../shared/packing/search/state.ts'
import { between, oneOf } from './small-load.ts'

/** Puts units in at random legal places, some of them nowhere. */
export const scattered = (scene: Scene, random: () => number): SceneState => {
  const state = emptyState(scene)
  for (const unit of scene.model.units) {
    if (scene.traits[unit.index] === null || random() < 0.1) continue
    for (let tried = 0; tried < 12; tried++) {
      const bay = oneOf(random, state.bays, undefined)
      if (bay === undefined || scene.admissions[unit.index]?.[bay.model.index]?.rule !== null) continue
      const space = oneOf(random, freeSpaces(bay), undefined)
      const pose = oneOf(random, unit.poses, undefined)
      if (space === undefined || pose === undefined) continue
      const along = (low: number, high: number, size: number): number =>
        random() < 0.5 ? low : between(random, low, Math.max(low, high - size))
      const [length, width] = pose.sizeMm
      const at: Vec3 = [along(space.x1, space.x2, length), along(space.y1, space.y2, width), space.z1]
      const box = boxAt(at, pose.sizeMm)
      if (poseRule(scene, bay, unit.index, box) !== null || clashes(scene, state, bay.model.index, box)) continue
      put(scene, bay, unit.index, { box, edges: pose.edges })
      state.where[unit.index] = bay.model.index
      break
    }
  }
  return state
}
