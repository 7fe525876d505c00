/** The best place for one unit, by judging every place there is: quick judgement first, the twenty best of it looked at closely. */
import type { Placement, Vec3 } from '../../../shared/packing/index.ts'
import type { Scene } from '../../../shared/packing/scene.ts'
import { hi, intersect, lo, sharedFromAbove, solidOf, solidOfPlacement, sweepOut } from './boxes.ts'
import type { Solid } from './boxes.ts'
import { inLine } from './reach.ts'
import type { Part } from './reach.ts'

export type Place = { readonly bay: number; readonly atMm: Vec3; readonly sizeMm: Vec3 }
export type Judged = Place & { readonly cost: number }

export type PlaceCase = {
  readonly scene: Scene
  readonly unit: number
  readonly placements: readonly Placement[]
  /** By bay: free spaces. */
  readonly spaces: readonly (readonly Solid[])[]
  /** By bay: solid parts. */
  readonly parts: readonly (readonly Part[])[]
  readonly home: Placement | null
  /** By how much every quick judgement is off: 1 for the plain best. */
  readonly factor: number
  readonly allowed: (place: Place) => boolean
}

/** Places looked at closely. */
const CLOSE_LOOKS = 20
const TIER_COST = [0, 30, 1000]

type Unit = Scene['model']['units'][number]

/** All places judged to the end, the best first; none where the unit goes nowhere. */
export function bestPlaces(one: PlaceCase): readonly Judged[] {
  return quickly(one)
    .filter(one.allowed)
    .toSorted((a, b) => a.cost - b.cost)
    .slice(0, CLOSE_LOOKS)
    .map((place) => ({ ...place, cost: place.cost + wayCost(one, place) }))
    .filter(({ cost }) => cost < Infinity)
    .toSorted((a, b) => a.cost - b.cost)
}

/** Every place in the order of bays, ways to stand, spaces, and starts in them, with the quick judgement. */
function quickly(one: PlaceCase): readonly Judged[] {
  const { scene, unit, home } = one
  const item = scene.model.units[unit]
  const lock = scene.locks[unit] ?? null
  if (item === undefined) return []
  return scene.model.bays.flatMap(({ bay }, at): readonly Judged[] => {
    const admission = scene.admissions[unit]?.[at]
    if (admission === undefined || admission.rule !== null) return []
    const base = bayCost(one, at) + (TIER_COST[admission.tier] ?? 0)
    const fixed = lock?.atMm ?? null
    if (fixed !== null)
      return item.poses
        .map((pose) => ({ bay: at, atMm: fixed, sizeMm: lock?.sizeMm ?? pose.sizeMm, cost: base, pose }))
        .filter(({ sizeMm, pose }) => mayBe(pose, sizeMm))
    const found = item.poses.flatMap((pose) =>
      (one.spaces[at] ?? []).flatMap((space) => inSpace(one, { at, base, pose, space })),
    )
    if (lock !== null || home === null || home.bayId !== bay.id) return found
    if (!item.poses.some((pose) => mayBe(pose, home.sizeMm))) return found
    const cost = base - 5 * scene.model.input.weights.dusk * one.factor
    return [...found, { bay: at, atMm: home.atMm, sizeMm: home.sizeMm, cost }]
  })
}

/** A size that a way to stand may take: as stated, or one edge pressed as far as it yields. */
function mayBe({ sizeMm, leastMm }: Unit['poses'][number], size: Vec3): boolean {
  const axes = [0, 1, 2] as const
  const pressed = axes.filter((axis) => size[axis] !== sizeMm[axis])
  return pressed.length <= 1 && pressed.every((axis) => leastMm[axis] <= size[axis] && size[axis] < sizeMm[axis])
}

/** What the bay itself costs: room in it, being wanted from inside, taking the seat, being gone at night. */
function bayCost({ scene, unit, placements }: PlaceCase, at: number): number {
  const model = scene.model.bays[at]
  const traits = scene.traits[unit]
  if (model === undefined || traits === null || traits === undefined) return 0
  const { bay } = model
  const used = placements
    .filter(({ bayId }) => bayId === bay.id)
    .reduce((sum, { sizeMm: [a, b, c] }) => sum + a * b * c, 0)
  const emptiness = (model.freeMm3 - used) / 2e8
  const atNight = scene.layout === 'bed'
  const inside = atNight ? bay.reachFromBed : bay.reachFromDriverSeat
  const wanted = traits.access.has(atNight ? 'night' : 'en-route')
  const reach = wanted ? (inside ? 0 : atNight ? 500 : 12) : inside ? 1.5 : 0
  const id = scene.model.units[unit]?.id ?? ''
  const kept = scene.model.input.nights.some(({ states }) => (states[id] ?? 'stored') === 'stored')
  const homeless = !atNight && !bay.usable.bed && kept ? 6 * scene.model.input.weights.dusk : 0
  return emptiness + reach + homeless
}

type InSpace = {
  readonly at: number
  readonly base: number
  readonly pose: Unit['poses'][number]
  readonly space: Solid
}

function inSpace({ scene, unit, factor }: PlaceCase, { at, base, pose, space }: InSpace): readonly Judged[] {
  const model = scene.model.bays[at]
  const lock = scene.locks[unit] ?? null
  const room: Vec3 = [hi(space, 0) - lo(space, 0), hi(space, 1) - lo(space, 1), hi(space, 2) - lo(space, 2)]
  const pressed = pose.sizeMm.map((edge, axis) => Math.min(edge, room[axis] ?? 0))
  const size: Vec3 = [pressed[0] ?? 0, pressed[1] ?? 0, pressed[2] ?? 0]
  if (model === undefined || !mayBe(pose, size)) return []
  if (lock !== null && lock.sizeMm !== null && lock.sizeMm.join() !== size.join()) return []
  const flush = [0, 1].filter((axis) => size[axis] === room[axis]).length
  const ragged = 1 - (size[0] * size[1]) / (room[0] * room[1]) + 0.3 * (1 - size[2] / room[2]) - 0.4 * flush
  const tall = model.bay.sizeMm[2]
  const z = lo(space, 2)
  const high = 2 * (z / tall) + ((scene.traits[unit]?.massG ?? 0) / 1000) * 0.15 * ((z + size[2] / 2) / tall)
  const cost = (base + 4 * ragged + high) * factor
  const starts = (axis: 0 | 1): readonly number[] => {
    const [low, last] = [lo(space, axis), hi(space, axis) - size[axis]]
    const edges = openingEdges(model.bay, axis)
    const lined = edges.flatMap((edge) => [edge, edge - size[axis]]).filter((start) => low < start && start < last)
    return [low, ...(last === low ? [] : [last]), ...lined]
  }
  return starts(0).flatMap((x) => starts(1).map((y) => ({ bay: at, atMm: [x, y, z] as const, sizeMm: size, cost })))
}

/** Where openings begin or end along an edge of the floor, inside the bay. */
function openingEdges(bay: Scene['model']['bays'][number]['bay'], axis: 0 | 1): readonly number[] {
  const edges = bay.openings.flatMap(({ face, fromMm, toMm }) => {
    const own = face.startsWith('x') ? 0 : face.startsWith('y') ? 1 : 2
    if (own === axis) return []
    const others = [0, 1, 2].filter((other) => other !== own)
    const at = others.indexOf(axis) as 0 | 1
    return [fromMm[at], toMm[at]]
  })
  return [...new Set(edges.filter((edge) => edge > 0 && edge < bay.sizeMm[axis]))]
}

/** How much it matters that nothing stands in a unit's way. */
function want(scene: Scene, unit: number): number {
  const traits = scene.traits[unit]
  if (traits === null || traits === undefined) return 0
  const any = 0.05 + traits.uses
  if (scene.layout === 'bed') return any + (traits.access.has('night') ? 100 : 0)
  const bedding = scene.model.bedding.has(scene.model.units[unit]?.id ?? '')
  return (
    any + (traits.access.has('en-route') ? 2 : 0) + (traits.access.has('on-arrival') ? 0.5 : 0) + (bedding ? 0.6 : 0)
  )
}

/** The opening in line with a box that has least before it; a solid part counts as three things. */
function way(one: PlaceCase, at: number, box: Solid, others: readonly Solid[]): { opening: number; count: number } {
  const bay = one.scene.model.bays[at]?.bay
  let best = { opening: -1, count: Infinity }
  for (const [opening, hole] of (bay?.openings ?? []).entries()) {
    if (bay === undefined || !inLine(box, hole)) continue
    const out = sweepOut(box, hole.face, bay)
    const barred = (one.parts[at] ?? []).some((part) => part.face !== hole.face && intersect(part.solid, out))
    const count = (barred ? 3 : 0) + others.filter((other) => intersect(other, out)).length
    if (count < best.count) best = { opening, count }
  }
  return best
}

/** What is before it, and what it is before: infinite where it could not be got in by any opening. */
function wayCost(one: PlaceCase, { bay: at, atMm, sizeMm }: Place): number {
  const { scene, unit } = one
  const bay = scene.model.bays[at]?.bay
  if (bay === undefined || bay.openings.length === 0) return 0
  const box = solidOf(atMm, sizeMm)
  const held = one.placements.filter(({ bayId }) => bayId === bay.id)
  const solids = held.map(solidOfPlacement)
  const own = way(one, at, box, solids)
  const shifts = bay.openings.some(({ face, fromMm, toMm }) =>
    [0, 1, 2]
      .filter((axis) => axis !== (face.startsWith('x') ? 0 : face.startsWith('y') ? 1 : 2))
      .every((axis, place) => {
        const [low = 0, high = 0] = [fromMm[place], toMm[place]]
        return (sizeMm[axis] ?? 0) <= high - low && lo(box, axis) < high && hi(box, axis) > low
      }),
  )
  if (own.opening < 0 && !shifts) return Infinity
  const before = own.opening < 0 ? 8 : own.count * want(scene, unit) * 4
  const bars = held.map(({ unitId }, slot) => {
    const other = solids[slot]
    if (other === undefined) return 0
    const hole =
      bay.openings[
        way(
          one,
          at,
          other,
          solids.filter((each) => each !== other),
        ).opening
      ]
    if (hole === undefined) return 0
    const onTop = lo(box, 2) === hi(other, 2) && sharedFromAbove(box, other) > 0
    if (!onTop && !intersect(box, sweepOut(other, hole.face, bay))) return 0
    return (
      3 *
      want(
        scene,
        scene.model.units.findIndex(({ id }) => id === unitId),
      )
    )
  })
  return before + bars.reduce((sum, each) => sum + each, 0)
}
