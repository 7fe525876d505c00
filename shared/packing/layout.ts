/** Between the search's own state and the layouts that everyone else reads. */
import { boxSize, plainBox, put } from './bay-state.ts'
import type { BayState } from './bay-state.ts'
import { boxAt } from './geometry.ts'
import { poseAllows } from './poses.ts'
import { reachesIn } from './reach.ts'
import type { Scene } from './scene.ts'
import { emptyState } from './search/state.ts'
import type { SceneState } from './search/state.ts'
import type { Unit } from './units.ts'
import type { AwayPlace, Layout, Placement, Reach } from './types.ts'

/** Placements by unit order, and what is away: units, and pieces that are out of their bin that night. */
export const layoutOf = (scene: Scene, state: SceneState): Layout => {
  const placements = state.bays.flatMap((bay) => bay.placed.map((item) => placementOf(scene, bay, item)))
  const order = new Map(scene.model.units.map((unit) => [unit.id, unit.index]))
  const found = placements.filter((each) => each !== null)
  found.sort((a, b) => (order.get(a.unitId) ?? 0) - (order.get(b.unitId) ?? 0))
  return { placements: found, away: [...scene.away, ...outOfBins(scene)] }
}

const outOfBins = (scene: Scene): readonly AwayPlace[] => {
  const { night } = scene
  if (night === null) return []
  return scene.model.units.flatMap((unit) => {
    if (unit.bin === null) return []
    return unit.pieces.flatMap((piece): readonly AwayPlace[] => {
      const state = night.states[piece.id] ?? 'stored'
      return state === 'stored' ? [] : [{ unitId: piece.id, state }]
    })
  })
}

const placementOf = (scene: Scene, bay: BayState, item: BayState['placed'][number]): Placement | null => {
  const id = scene.model.units[item.unit]?.id
  if (id === undefined) return null
  return {
    unitId: id,
    bayId: bay.model.bay.id,
    atMm: [item.x1, item.y1, item.z1],
    sizeMm: boxSize(item),
    edges: item.edges,
  }
}

/** Rebuilds a state from placements without judging them; unknown units and bays are left out. */
export const stateFrom = (scene: Scene, layout: Layout): SceneState => {
  const state = emptyState(scene)
  const unitAt = new Map(scene.model.units.map((unit) => [unit.id, unit]))
  const bayAt = new Map(scene.model.bays.map((bay) => [bay.bay.id, bay.index]))
  const low = layout.placements.slice().sort((a, b) => a.atMm[2] - b.atMm[2])
  for (const placement of low) {
    const unit = unitAt.get(placement.unitId)
    const bay = state.bays[bayAt.get(placement.bayId) ?? -1]
    if (unit === undefined || bay === undefined) continue
    put(scene, bay, unit.index, { box: boxAt(placement.atMm, placement.sizeMm), edges: placement.edges })
    state.where[unit.index] = bay.model.index
  }
  return state
}

/** Edges of a unit that a placed size can be; null where the unit cannot take that size. */
export const edgesFor = (unit: Unit, sizeMm: Placement['sizeMm']): Placement['edges'] | null =>
  unit.poses.find((pose) => poseAllows(pose, sizeMm))?.edges ?? null

/** Reach of every unit in a state, in placement order. */
export const reachOfState = (scene: Scene, state: SceneState): readonly Reach[] =>
  state.bays.flatMap((bay): readonly Reach[] => {
    if (bay.placed.length === 0) return []
    const { bay: data, windows } = bay.model
    const fromInside = scene.layout === 'bed' ? data.reachFromBed : data.reachFromDriverSeat
    const reaches = reachesIn(bay.model, bay.placed.map(plainBox), fromInside)
    return reaches.map((reach, slot) => {
      const blockers = reach.blockers.map((j) => bay.placed[j]).filter((each) => each !== undefined)
      const depth = windows[reach.window]
      const outermost = blockers.slice().sort((a, b) => outness(b, depth) - outness(a, depth) || b.z1 - a.z1)
      return {
        unitId: scene.model.units[bay.placed[slot]?.unit ?? -1]?.id ?? '',
        openingId: depth?.id ?? null,
        blockedBy: outermost.map((each) => scene.model.units[each.unit]?.id ?? ''),
        handledG: blockers.reduce((sum, each) => sum + (scene.traits[each.unit]?.massG ?? 0), 0),
        fromSeatOrBed: fromInside,
        liftNeeded: !reach.straight,
      }
    })
  })

const outness = (box: BayState['placed'][number], window: BayState['model']['windows'][number] | undefined): number => {
  if (window === undefined) return 0
  const low = window.axis === 0 ? box.x1 : window.axis === 1 ? box.y1 : box.z1
  const high = window.axis === 0 ? box.x2 : window.axis === 1 ? box.y2 : box.z2
  return window.outward > 0 ? high : -low
}

/** Use-weighted units to move, a day. */
export const weightedReach = (scene: Scene, reaches: readonly Reach[]): number => {
  const uses = new Map(scene.model.units.map((unit) => [unit.id, scene.traits[unit.index]?.uses ?? 0]))
  return reaches.reduce((sum, reach) => sum + (uses.get(reach.unitId) ?? 0) * reach.blockedBy.length, 0)
}
