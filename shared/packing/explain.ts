/** Why a unit was left out, bay by bay, and the smallest change found that places it. */
import { freeSpaces } from './bay-state.ts'
import type { BayState } from './bay-state.ts'
import { boxAt } from './geometry.ts'
import { stackRule } from './bay-state.ts'
import { posesOf, sizeWithin } from './poses.ts'
import type { Pose } from './poses.ts'
import { randomFrom } from './random.ts'
import type { PackModel, Scene } from './scene.ts'
import { ENDED_WHOLE, missingFrom } from './search/build.ts'
import { improve } from './search/improve.ts'
import { insert } from './search/insert.ts'
import { costOf } from './search/objective.ts'
import { SpotList } from './search/spot-list.ts'
import { branch, takeOut } from './search/state.ts'
import type { SceneState } from './search/state.ts'
import type { Unit } from './units.ts'
import type { RuleCode, UnitCure, Unplaced, Vec3 } from './types.ts'

/** Explains every unit in `units`; the layout is solved again for each change offered, until the rounds for that are spent. */
export const explainAll = (
  scene: Scene,
  state: SceneState,
  units: readonly number[],
  resolve: Resolve,
): readonly Unplaced[] => {
  const rounds = Math.ceil(ROUNDS_TIMES_UNITS / Math.max(1, scene.model.units.length))
  const trial: Trial = { scene, state, resolve, purse: { rounds } }
  return units.map((unit) => {
    const hurried = resolve.shouldStop()
    return {
      unitId: scene.model.units[unit]?.id ?? '',
      layout: scene.layout,
      nightId: scene.night?.id ?? null,
      // Of a great load broken off there is no reason to tell: most were not tried.
      why: hurried && units.length > ENDED_WHOLE ? [] : whyNot(scene, state, unit),
      cure: hurried ? null : cureFor(trial, unit),
    }
  })
}

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

/** Rounds times units that re-solving may take for all that one layout leaves out: some tenths of a second. */
const ROUNDS_TIMES_UNITS = 1500
/** Rounds given to one change that a plain insertion does not make work. */
const ROUNDS_A_TRY = 12
/** What solving wholly again counts for, in rounds. */
const ROUNDS_OF_AGAIN = 60
const EDGES = [0, 1, 2] as const
/** Presses tried, mm; the least that works is then looked for below the first that does. */
const PRESSES = [10, 20, 30, 50, 80, 120] as const
/** Presses are told to this, mm. */
const PRESS_STEP_MM = 5

/** What one unit's changes are tried on: the layout as found, and how many rounds are left to solve it again. */
type Trial = {
  readonly scene: Scene
  readonly state: SceneState
  readonly resolve: Resolve
  readonly purse: { rounds: number }
}

/** How the host's own call would solve a changed scene, starting from the layout found. */
export type Resolve = { readonly again: (scene: Scene) => SceneState; readonly shouldStop: () => boolean }

/** Tries changes from the smallest up; each is verified by solving the layout again with it. */
const cureFor = (trial: Trial, unit: number): UnitCure | null => {
  const item = trial.scene.model.units[unit]
  if (item === undefined) return null
  return turned(trial, item) ?? pressed(trial, item) ?? without(trial, item) ?? elsewhere(trial, item)
}

/** Whether a changed scene takes the unit with all that had a place keeping one: put in as all stands, else by solving again from there. */
const solvesAgain = ({ state, purse, resolve }: Trial, scene: Scene, unit: number): boolean => {
  const placed = branch(state)
  const owned = new Set<number>()
  const options = { random: randomFrom(1), noise01: 0, origin: null, list: new SpotList() }
  const fallen = takeAway(scene, placed, owned)
  if (
    insert(scene, placed, unit, owned, options) &&
    fallen.every((each) => insert(scene, placed, each, owned, options))
  )
    return true
  const rounds = Math.min(ROUNDS_A_TRY, purse.rounds)
  if (rounds === 0 || resolve.shouldStop()) return false
  const outBefore = new Set(missingFrom(scene, state))
  const takes = (found: SceneState): boolean => {
    const out = missingFrom(scene, found)
    return !out.includes(unit) && out.every((each) => outBefore.has(each))
  }
  const found = improve(
    { state: placed, cost: costOf(scene, placed, null) },
    { scene, origin: null, random: randomFrom(1), rounds, shouldStop: resolve.shouldStop, onRound: () => undefined },
  )
  purse.rounds -= found.spent
  // A lucky find is offered only if the user's own next call finds it too.
  if (!takes(found.state)) return false
  purse.rounds = Math.max(0, purse.rounds - ROUNDS_OF_AGAIN)
  return takes(resolve.again(scene))
}

/** Takes out what the changed scene no longer holds; gives what fell with it. */
const takeAway = (scene: Scene, state: SceneState, owned: Set<number>): readonly number[] => {
  const gone = scene.traits.flatMap((traits, unit) => (traits === null && (state.where[unit] ?? -1) >= 0 ? [unit] : []))
  if (gone.length === 0) return []
  return takeOut(scene, state, new Set(gone), owned).filter((unit) => !gone.includes(unit))
}

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

/** A bin stands on its floor. */
const turned = (trial: Trial, unit: Unit): UnitCure | null => {
  const upright = new Set(unit.poses.map((pose) => pose.edges[2]))
  for (const edge of unit.bin === null ? EDGES : []) {
    if (upright.has(edge)) continue
    const poses = [...unit.poses, ...posesOf(unit.sizeMm, [edge], unit.soft, unit.pieces[0]?.squeezeTo01 ?? 1)]
    if (solvesAgain(trial, withUnit(trial.scene, { ...unit, poses }), unit.index)) return { kind: 'turn', edge }
  }
  return null
}

const pressed = (trial: Trial, unit: Unit): UnitCure | null => {
  if (!unit.soft) return null
  const works = (byMm: number): boolean => {
    const poses = unit.poses.flatMap((pose) => EDGES.map((axis) => pressedAlong(pose, axis, byMm)))
    return solvesAgain(trial, withUnit(trial.scene, { ...unit, poses }), unit.index)
  }
  let over = 0
  for (const byMm of PRESSES) {
    if (!works(byMm)) {
      over = byMm
      continue
    }
    let least: number = byMm
    for (let middle = halfway(over, least); middle > over && middle < least; middle = halfway(over, least)) {
      if (works(middle)) least = middle
      else over = middle
    }
    return { kind: 'squeeze', byMm: least }
  }
  return null
}

const halfway = (over: number, least: number): number => PRESS_STEP_MM * Math.round((over + least) / 2 / PRESS_STEP_MM)

const pressedAlong = (pose: Pose, axis: 0 | 1 | 2, byMm: number): Pose => {
  const size: [number, number, number] = [...pose.sizeMm]
  const least: [number, number, number] = [...pose.leastMm]
  size[axis] = Math.max(1, pose.leastMm[axis] - byMm)
  least[axis] = size[axis]
  return { ...pose, sizeMm: size, leastMm: least }
}

/** The smallest single thing whose staying at home makes room. */
const without = (trial: Trial, unit: Unit): UnitCure | null => {
  const { scene, state } = trial
  const others = scene.model.units
    .filter((other) => other.index !== unit.index && (state.where[other.index] ?? -1) >= 0)
    .sort((a, b) => a.volumeMm3 - b.volumeMm3)
  for (const other of others) {
    const bay = state.where[other.index] ?? -1
    if (scene.admissions[unit.index]?.[bay]?.rule !== null) continue
    const traits = scene.traits.map((each, index) => (index === other.index ? null : each))
    if (solvesAgain(trial, { ...scene, traits }, unit.index)) return { kind: 'leave-behind', unitIds: [other.id] }
  }
  return null
}

/** A bay that would take it if one rule were let go. */
const elsewhere = (trial: Trial, unit: Unit): UnitCure | null => {
  const { scene } = trial
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
    if (bayId !== undefined && solvesAgain(trial, { ...scene, admissions, locks }, unit.index))
      return { kind: 'other-bay', bayId, ignoring: rule }
  }
  return null
}
