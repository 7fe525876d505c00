/** Why a unit was left out, bay by bay, and the smallest change found that places it. */
import { freeSpaces } from './bay-state.ts'
import type { BayState } from './bay-state.ts'
import { boxAt } from './geometry.ts'
import { stackRule } from './bay-state.ts'
import { posesOf, sizeWithin } from './poses.ts'
import { randomFrom } from './random.ts'
import type { PackModel, Scene } from './scene.ts'
import { insert } from './search/insert.ts'
import { SpotList } from './search/spot-list.ts'
import { branch, takeOut } from './search/state.ts'
import type { SceneState } from './search/state.ts'
import type { Unit } from './units.ts'
import type { RuleCode, UnitCure, Unplaced, Vec3 } from './types.ts'

/** Explains every unit in `units`. */
export const explainAll = (scene: Scene, state: SceneState, units: readonly number[]): readonly Unplaced[] =>
  units.map((unit) => ({
    unitId: scene.model.units[unit]?.id ?? '',
    layout: scene.layout,
    nightId: scene.night?.id ?? null,
    why: whyNot(scene, state, unit),
    cure: cureFor(scene, state, unit),
  }))

const whyNot = (scene: Scene, state: SceneState, unit: number): Unplaced['why'] => {
  const why = refusals(scene, state, unit)
  if (why.length > 0) return why
  // No bay is there at all: by night the bed has taken them, by day there is simply no room.
  const rule = scene.layout === 'bed' ? 'closed-by-bed' : 'no-room'
  return scene.model.bays.map((bay) => ({ bayId: bay.bay.id, rule, shortByMm: null }))
}

const refusals = (scene: Scene, state: SceneState, unit: number): Unplaced['why'] =>
  state.bays.flatMap((bay, index): Unplaced['why'] => {
    const admission = scene.admissions[unit]?.[index]
    if (admission === undefined || admission.rule === 'absent') return []
    const bayId = bay.model.bay.id
    if (admission.rule === 'does-not-fit')
      return [{ bayId, rule: 'does-not-fit', shortByMm: shortInBay(scene, bay, unit) }]
    if (admission.rule !== null) return [{ bayId, rule: admission.rule, shortByMm: null }]
    return [{ bayId, ...bestRefusal(scene, bay, unit) }]
  })

const shortInBay = (scene: Scene, bay: BayState, unit: number): number =>
  shortest(scene.model.units[unit], [bay.model.bay.sizeMm])

/** Least sum of missing millimetres over poses and rooms. */
const shortest = (unit: Unit | undefined, rooms: readonly Vec3[]): number => {
  let least = Infinity
  for (const pose of unit?.poses ?? []) {
    for (const room of rooms) {
      const missing = pose.sizeMm.reduce((sum, size, axis) => sum + Math.max(0, size - (room[axis] ?? 0)), 0)
      least = Math.min(least, missing)
    }
  }
  return Number.isFinite(least) ? least : 0
}

/** The rule met in the space that comes nearest to taking the unit. */
const bestRefusal = (
  scene: Scene,
  bay: BayState,
  unit: number,
): { readonly rule: RuleCode; readonly shortByMm: number | null } => {
  const item = scene.model.units[unit]
  const spaces = freeSpaces(bay)
  for (const space of spaces) {
    const room: Vec3 = [space.x2 - space.x1, space.y2 - space.y1, space.z2 - space.z1]
    for (const pose of item?.poses ?? []) {
      const size = sizeWithin(pose, room)
      if (size === null) continue
      const rule = stackRule(scene, bay, unit, boxAt([space.x1, space.y1, space.z1], size))
      if (rule !== null) return { rule, shortByMm: null }
    }
  }
  const massG = scene.traits[unit]?.massG ?? 0
  if (bay.massG + massG > bay.model.bay.loadLimitG) return { rule: 'bay-load-limit', shortByMm: null }
  const rooms = spaces.map((space): Vec3 => [space.x2 - space.x1, space.y2 - space.y1, space.z2 - space.z1])
  return { rule: 'no-room', shortByMm: rooms.length === 0 ? null : shortest(item, rooms) }
}

const EDGES = [0, 1, 2] as const
/** Presses tried, mm. */
const PRESSES = [10, 20, 30, 50, 80, 120] as const

/** Tries changes from the smallest up; each is verified by placing the unit with it. */
const cureFor = (scene: Scene, state: SceneState, unit: number): UnitCure | null => {
  const item = scene.model.units[unit]
  if (item === undefined) return null
  return (
    turned(scene, state, item) ??
    pressed(scene, state, item) ??
    without(scene, state, item) ??
    elsewhere(scene, state, item)
  )
}

const places = (scene: Scene, state: SceneState, unit: number): boolean =>
  insert(scene, branch(state), unit, new Set(), {
    random: randomFrom(1),
    noise01: 0,
    origin: null,
    list: new SpotList(),
  })

const withUnit = (scene: Scene, unit: Unit): Scene => {
  const model: PackModel = {
    ...scene.model,
    units: scene.model.units.map((each) => (each.index === unit.index ? unit : each)),
  }
  const admissions = scene.admissions.map((row, index) =>
    index === unit.index
      ? row.map((each) =>
          each.rule === 'does-not-fit' || each.rule === 'opening-too-small' ? { rule: null, tier: 0 } : each,
        )
      : row,
  )
  return { ...scene, model, admissions }
}

const turned = (scene: Scene, state: SceneState, unit: Unit): UnitCure | null => {
  const upright = new Set(unit.poses.map((pose) => pose.edges[2]))
  for (const edge of EDGES) {
    if (upright.has(edge)) continue
    const poses = posesOf(unit.sizeMm, [edge], unit.soft, 1)
    if (places(withUnit(scene, { ...unit, poses }), state, unit.index)) return { kind: 'turn', edge }
  }
  return null
}

const pressed = (scene: Scene, state: SceneState, unit: Unit): UnitCure | null => {
  for (const byMm of PRESSES) {
    const poses = unit.poses.flatMap((pose) =>
      EDGES.map((axis) => {
        const size: [number, number, number] = [...pose.sizeMm]
        const least: [number, number, number] = [...pose.leastMm]
        size[axis] = Math.max(1, pose.leastMm[axis] - byMm)
        least[axis] = size[axis]
        return { ...pose, sizeMm: size, leastMm: least }
      }),
    )
    if (unit.soft && places(withUnit(scene, { ...unit, poses }), state, unit.index)) return { kind: 'squeeze', byMm }
  }
  return null
}

/** The smallest single thing whose staying at home makes room. */
const without = (scene: Scene, state: SceneState, unit: Unit): UnitCure | null => {
  const others = scene.model.units
    .filter((other) => other.index !== unit.index && (state.where[other.index] ?? -1) >= 0)
    .sort((a, b) => a.volumeMm3 - b.volumeMm3)
  for (const other of others) {
    const bay = state.where[other.index] ?? -1
    if (scene.admissions[unit.index]?.[bay]?.rule !== null) continue
    const trial = branch(state)
    const owned = new Set<number>()
    const out = takeOut(scene, trial, new Set([other.index]), owned)
    const options = { random: randomFrom(1), noise01: 0, origin: null, list: new SpotList() }
    if (!insert(scene, trial, unit.index, owned, options)) continue
    if (out.every((each) => each === other.index || insert(scene, trial, each, owned, options))) {
      return { kind: 'leave-behind', unitIds: [other.id] }
    }
  }
  return null
}

/** A bay that would take it if one rule were let go. */
const elsewhere = (scene: Scene, state: SceneState, unit: Unit): UnitCure | null => {
  const row = scene.admissions[unit.index] ?? []
  for (let bay = 0; bay < row.length; bay++) {
    const rule = row[bay]?.rule
    if (rule === null || rule === undefined || rule === 'absent' || rule === 'does-not-fit') continue
    const open = row.map((each, index) =>
      index === bay ? { rule: null, tier: 0 } : { ...each, rule: each.rule ?? ('locked' as const) },
    )
    const admissions = scene.admissions.map((each, index) => (index === unit.index ? open : each))
    const locks = scene.locks.map((each, index) => (index === unit.index ? null : each))
    const bayId = scene.model.bays[bay]?.bay.id
    if (bayId !== undefined && places({ ...scene, admissions, locks }, state, unit.index))
      return { kind: 'other-bay', bayId, ignoring: rule }
  }
  return null
}
