/** A scene: one layout to be found, with the units in it and where each may go at all. */
import { bayModelOf } from './bay-model.ts'
import type { BayModel, Window } from './bay-model.ts'
import { moved, overlaps } from './geometry.ts'
import type { Box } from './geometry.ts'
import { stateOf, traitsOf, unitsOf } from './units.ts'
import type { Unit, UnitTraits } from './units.ts'
import { sizeWithin } from './poses.ts'
import type { AwayPlace, LayoutName, PackingInput, PackLock, PackNight, RuleCode, Vec3 } from './types.ts'

export type PackModel = {
  readonly input: PackingInput
  readonly bays: readonly BayModel[]
  readonly units: readonly Unit[]
  readonly bedding: ReadonlySet<string>
}

/** Whether a unit may go into a bay: `absent` where this layout has no such bay. */
export type Admission = { readonly rule: RuleCode | 'absent' | null; readonly tier: number }

export type Scene = {
  readonly layout: LayoutName
  readonly night: PackNight | null
  readonly model: PackModel
  /** By unit index; null where the unit is away. */
  readonly traits: readonly (UnitTraits | null)[]
  readonly away: readonly AwayPlace[]
  /** By unit index, then bay index. */
  readonly admissions: readonly (readonly Admission[])[]
  readonly locks: readonly (PackLock | null)[]
  /** By bay index: other bays of this layout that take up some of the same air. */
  readonly neighbours: readonly (readonly number[])[]
  /** By unit index, vehicle frame: where it had better not go, because what stands there can only leave after it. */
  readonly tangles: readonly (readonly Box[])[]
  /** By unit index: units that bar it by day. */
  readonly barredByDay: readonly (readonly number[])[]
}

export const packModelOf = (input: PackingInput): PackModel => ({
  input,
  bays: input.bays.map(bayModelOf),
  units: unitsOf(input),
  bedding: new Set(
    input.nights.flatMap((night) =>
      input.pieces.filter((piece) => stateOf(night.states, piece.id) === 'bed').map((piece) => piece.id),
    ),
  ),
})

/** The drive layout's scene (`night` null) or one night's. */
export const sceneOf = (model: PackModel, night: PackNight | null): Scene => {
  const layout: LayoutName = night === null ? 'drive' : 'bed'
  const away: AwayPlace[] = []
  const traits = model.units.map((unit): UnitTraits | null => {
    const gone = awayState(model, unit, night)
    if (gone !== null) {
      away.push({ unitId: unit.id, state: gone })
      return null
    }
    const here = night === null ? unit.pieces : unit.pieces.filter((p) => stateOf(night.states, p.id) === 'stored')
    return traitsOf(unit, here, layout, model.bedding)
  })
  const locks = model.units.map((unit) => unit.locks.find((lock) => lock.layout === layout) ?? null)
  const admissions = model.units.map((unit, index) => {
    const own = traits[index] ?? null
    const lock = locks[index] ?? null
    return model.bays.map((bay) => admissionOf(unit, own, lock, bay, layout, night))
  })
  const neighbours = model.bays.map((bay) =>
    model.bays.filter((other) => shareAir(bay, other, layout)).map((other) => other.index),
  )
  return { layout, night, model, traits, away, admissions, locks, neighbours, tangles: [], barredByDay: [] }
}

/** A loose piece is away as its state says; a bin always stays, with what is left in it. What stays home on every night never travels. */
const awayState = (model: PackModel, unit: Unit, night: PackNight | null): AwayPlace['state'] | null => {
  if (night === null) {
    const nights = unit.bin === null ? model.input.nights : []
    const stays = nights.length > 0 && nights.every((each) => stateOf(each.states, unit.id) === 'left-behind')
    return stays ? 'left-behind' : null
  }
  const state = stateOf(night.states, unit.id)
  return unit.bin !== null || state === 'stored' ? null : state
}

const shareAir = (bay: BayModel, other: BayModel, layout: LayoutName): boolean =>
  bay !== other &&
  bay.bay.usable[layout] &&
  other.bay.usable[layout] &&
  bay.bay.belongsTo === 'vehicle' &&
  other.bay.belongsTo === 'vehicle' &&
  overlaps(moved(bay.box, bay.bay.originMm), moved(other.box, other.bay.originMm))

const REFUSED_TIER = 0

const admissionOf = (
  unit: Unit,
  traits: UnitTraits | null,
  lock: PackLock | null,
  model: BayModel,
  layout: LayoutName,
  night: PackNight | null,
): Admission => {
  if (traits === null) return { rule: 'absent', tier: REFUSED_TIER }
  const presence = presenceRule(model, layout, night)
  if (presence !== null) return { rule: presence, tier: REFUSED_TIER }
  if (lock !== null && lock.bayId !== model.bay.id) return { rule: 'locked', tier: REFUSED_TIER }
  const rule =
    stowageRule(unit, traits, model) ??
    (night === null ? driveRule(traits, model) : nightRule(traits, model, night)) ??
    shapeRule(unit, model)
  if (rule !== null) return { rule, tier: REFUSED_TIER }
  return { rule: null, tier: tierOf(traits, model, layout) }
}

const presenceRule = (model: BayModel, layout: LayoutName, night: PackNight | null): RuleCode | 'absent' | null => {
  const { bay } = model
  if (night === null) {
    if (bay.belongsTo === 'site') return 'site-bay-while-driving'
    return bay.usable[layout] ? null : 'absent'
  }
  if (!bay.usable[layout]) return 'absent'
  if (bay.kind === 'outside') return night.outsideStorage ? null : 'outside-not-allowed'
  if (bay.belongsTo === 'site' && !(night.foodBayIds ?? []).includes(bay.id)) return 'absent'
  return null
}

const stowageRule = (unit: Unit, traits: UnitTraits, model: BayModel): RuleCode | null => {
  const { bay } = model
  if (bay.unitLimitG !== null && traits.massG > bay.unitLimitG) return 'unit-too-heavy'
  if (traits.massG > bay.loadLimitG) return 'bay-load-limit'
  if (bay.softOnly && !unit.soft) return 'soft-only'
  if (traits.valuable && !bay.lockable) return 'not-lockable'
  return null
}

const driveRule = (traits: UnitTraits, model: BayModel): RuleCode | null =>
  traits.mustBeHeld && model.bay.restraint === 'none' ? 'restraint' : null

const nightRule = (traits: UnitTraits, model: BayModel, night: PackNight): RuleCode | null => {
  const { bay } = model
  if (traits.fuel && bay.sleepingSpace) return 'fuel-in-sleeping-space'
  if (traits.larder && night.foodBayIds !== null && !night.foodBayIds.includes(bay.id)) return 'food-place'
  if (bay.kind === 'outside' && !traits.mayStandOutside) return 'outside-not-allowed'
  const lowC = night.lowTempC[bay.id]
  if (traits.freezesBelowC !== null && lowC !== undefined && lowC < traits.freezesBelowC) return 'freezes'
  const highC = night.highTempC[bay.id]
  if (traits.spoilsAboveC !== null && highC !== undefined && highC > traits.spoilsAboveC) return 'spoils'
  if (bay.closedByBed && traits.access.has('night')) return 'closed-by-bed'
  return null
}

const shapeRule = (unit: Unit, model: BayModel): RuleCode | null => {
  if (!unit.poses.some((pose) => sizeWithin(pose, model.bay.sizeMm) !== null)) return 'does-not-fit'
  return model.windows.length === 0 || model.windows.some((window) => passes(unit, window)) ? null : 'opening-too-small'
}

/** Whether a unit, turned as it may be and pressed along one edge if soft, goes through a window. */
export const passes = (unit: Unit, window: Window): boolean => {
  const room: [number, number, number] = [Infinity, Infinity, Infinity]
  const [first, second] =
    window.axis === 0 ? ([1, 2] as const) : window.axis === 1 ? ([0, 2] as const) : ([0, 1] as const)
  room[first] = window.aHigh - window.aLow
  room[second] = window.bHigh - window.bLow
  const roomMm: Vec3 = room
  return unit.poses.some((pose) => sizeWithin(pose, roomMm) !== null)
}

/** Legal but unwanted: 0 welcome, 1 better elsewhere, 2 only where nothing else is left. */
const tierOf = (traits: UnitTraits, model: BayModel, layout: LayoutName): number => {
  const { bay } = model
  if (bay.lastResort) return 2
  if (layout === 'drive') return traits.fuel && bay.sleepingSpace ? 2 : 0
  if (bay.closedByBed && (traits.access.has('evening') || traits.access.has('morning'))) return 1
  if (bay.belongsTo === 'site' && !traits.larder && bay.kind !== 'outside') return 1
  return 0
}
