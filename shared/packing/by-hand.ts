/** What dragging by hand asks: may it stand here, where nearest may it, what must move to reach things, what room is left. */
import { freeSpaces, poseRule } from './bay-state.ts'
import type { BayState } from './bay-state.ts'
import { boxAt } from './geometry.ts'
import type { Box } from './geometry.ts'
import { edgesFor, reachOfState, stateFrom } from './layout.ts'
import { sizeWithin } from './poses.ts'
import type { Pose } from './poses.ts'
import { packModelOf, sceneOf } from './scene.ts'
import type { Scene } from './scene.ts'
import { MM3_PER_LITRE } from '../units/index.ts'
import { clashes, takeOut } from './search/state.ts'
import type { SceneState } from './search/state.ts'
import type { Layout, LayoutName, PackingInput, Placement, PoseVerdict, Reach, RuleCode, Vec3 } from './types.ts'

/** A layout made ready to be asked many times. */
export type HandScene = { readonly scene: Scene; readonly layout: Layout }

/** Prepares one layout of a load for `tryPose` and `reachOf`; `nightId` null is the drive layout. */
export const handScene = (input: PackingInput, layout: Layout, nightId: string | null): HandScene => {
  const night = input.nights.find((each) => each.id === nightId) ?? null
  return { scene: sceneOf(packModelOf(input), night), layout }
}

/** A pose asked about: low corner and size as placed, mm in the bay's frame. */
export type Tried = { readonly unitId: string; readonly bayId: string; readonly atMm: Vec3; readonly sizeMm: Vec3 }

/**
 * Whether a unit may stand at a pose in a layout, all others staying where they are.
 * A unit that carries others may only stay. Millimetres in the bay's frame. Gives the first rule broken (`null` when legal) and the nearest legal pose in that bay, if any.
 * An unknown unit or bay is `does-not-fit`. Under a millisecond for a car's load once `handScene` is made.
 */
export const tryPose = (hand: HandScene, tried: Tried): PoseVerdict => {
  const { scene } = hand
  const unit = scene.model.units.find((each) => each.id === tried.unitId)
  const bayModel = scene.model.bays.find((each) => each.bay.id === tried.bayId)
  if (unit === undefined || bayModel === undefined) return { legal: false, rule: 'does-not-fit', nearest: null }
  const state = stateFrom(scene, hand.layout)
  const fallen = (state.where[unit.index] ?? -1) >= 0 ? takeOut(scene, state, new Set([unit.index]), new Set()) : []
  if (fallen.length > 1) return carrying(hand.layout, tried)
  const admission = scene.admissions[unit.index]?.[bayModel.index]
  if (admission === undefined || admission.rule !== null) {
    const rule = admission?.rule ?? 'does-not-fit'
    return { legal: false, rule: rule === 'absent' ? 'does-not-fit' : rule, nearest: null }
  }
  const bay = state.bays[bayModel.index]
  if (bay === undefined) return { legal: false, rule: 'does-not-fit', nearest: null }
  const box = boxAt(tried.atMm, tried.sizeMm)
  const edges = edgesFor(unit, tried.sizeMm)
  const rule = edges === null ? 'does-not-fit' : ruleAt(scene, state, bay, unit.index, box)
  if (rule === null && edges !== null) {
    return { legal: true, rule: null, nearest: { ...tried, edges } }
  }
  return { legal: false, rule, nearest: nearestIn(scene, state, unit.index, bayModel.index, tried) }
}

const ruleAt = (scene: Scene, state: SceneState, bay: BayState, unit: number, box: Box): RuleCode | null =>
  poseRule(scene, bay, unit, box) ?? (clashes(scene, state, bay.model.index, box) ? 'no-room' : null)

/** What something else stands on stays where it is. */
const carrying = (layout: Layout, tried: Tried): PoseVerdict => {
  const nearest = layout.placements.find(({ unitId }) => unitId === tried.unitId) ?? null
  const stays = nearest !== null && nearest.bayId === tried.bayId && sameTriple(nearest.atMm, tried.atMm)
  const legal = stays && sameTriple(nearest.sizeMm, tried.sizeMm)
  return { legal, rule: legal ? null : 'load-on-top', nearest }
}

const nearestIn = (scene: Scene, state: SceneState, unit: number, index: number, tried: Tried): Placement | null => {
  const bay = state.bays[index]
  if (bay === undefined) return null
  let best: Placement | null = null
  let least = Infinity
  for (const space of freeSpaces(bay)) {
    for (const pose of scene.model.units[unit]?.poses ?? []) {
      const near = nearestInSpace(space, pose, tried)
      if (near === null) continue
      const away = distance(near.atMm, tried.atMm) + (sameTriple(near.sizeMm, tried.sizeMm) ? 0 : TURN_MM)
      if (away >= least || ruleAt(scene, state, bay, unit, boxAt(near.atMm, near.sizeMm)) !== null) continue
      least = away
      best = { unitId: tried.unitId, bayId: tried.bayId, ...near, edges: pose.edges }
    }
  }
  return best
}

/** A turn of the hand counts as this far, mm: the same turn is preferred unless much farther off. */
const TURN_MM = 150

const nearestInSpace = (
  space: Box,
  pose: Pose,
  tried: Tried,
): { readonly atMm: Vec3; readonly sizeMm: Vec3 } | null => {
  const sizeMm = sizeWithin(pose, [space.x2 - space.x1, space.y2 - space.y1, space.z2 - space.z1])
  if (sizeMm === null) return null
  const clamp = (value: number, low: number, high: number): number => Math.round(Math.min(high, Math.max(low, value)))
  const atMm: Vec3 = [
    clamp(tried.atMm[0], space.x1, space.x2 - sizeMm[0]),
    clamp(tried.atMm[1], space.y1, space.y2 - sizeMm[1]),
    space.z1,
  ]
  return { atMm, sizeMm }
}

const sameTriple = (a: Vec3, b: Vec3): boolean => a.every((value, axis) => value === b[axis])

const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** Reach of every unit of a layout, exact for the layout as it is given. */
export const reachOf = (hand: HandScene): readonly Reach[] =>
  reachOfState(hand.scene, stateFrom(hand.scene, hand.layout))

/** Free volume of each bay usable in a layout, litres, obstacles taken off. */
export const freeVolume = (
  input: PackingInput,
  layout: Layout,
  name: LayoutName,
): readonly { readonly bayId: string; readonly freeL: number; readonly wholeL: number }[] => {
  const model = packModelOf(input)
  return model.bays
    .filter((bay) => bay.bay.usable[name])
    .map((bay) => {
      const used = layout.placements
        .filter((placement) => placement.bayId === bay.bay.id)
        .reduce((sum, { sizeMm }) => sum + sizeMm[0] * sizeMm[1] * sizeMm[2], 0)
      return { bayId: bay.bay.id, freeL: (bay.freeMm3 - used) / MM3_PER_LITRE, wholeL: bay.freeMm3 / MM3_PER_LITRE }
    })
}
