/** What one bay holds while the search runs: boxes, what rests on what, the load each carries, the free spaces. */
import type { BayModel } from './bay-model.ts'
import { inside, overlaps, sharedFootprint } from './geometry.ts'
import type { Box } from './geometry.ts'
import type { Scene } from './scene.ts'
import { spacesAfter, spacesOf } from './spaces.ts'
import type { Placement, RuleCode, Vec3 } from './types.ts'

export type Placed = Box & {
  readonly unit: number
  readonly edges: Placement['edges']
  readonly supporters: readonly Support[]
}

/** One thing that something rests on: its place in the bay's list and its share of the contact. */
type Support = { readonly slot: number; readonly share01: number }

export type BayState = {
  readonly model: BayModel
  readonly placed: Placed[]
  /** Mass that rests on each, g, by place in `placed`, shared by the area of contact. */
  readonly loadsG: number[]
  /** Null while nobody has asked for them. */
  spaces: Box[] | null
  massG: number
  usedMm3: number
  /** By place in `placed`, as far as asked for: the opening with least before it when it was put in; -1 where it is in line with none. */
  readonly outBy: number[]
  /** Cached judgement of the bay; null after a change. */
  score: BayScore | null
}

/** What the objective sums over bays. */
export type BayScore = {
  readonly hard: number
  readonly reach: number
  readonly low: number
  readonly momentX: number
  readonly momentY: number
  /** By place in `placed`: units to move first. */
  readonly counts: readonly number[]
  /** By place in `placed`: share of `hard`. */
  readonly faults: readonly number[]
  /** By place in `placed`: units that bar it. */
  readonly barredBy: readonly (readonly number[])[]
}

export type Pose3 = { readonly box: Box; readonly edges: Placement['edges'] }

export const emptyBay = (model: BayModel): BayState => ({
  model,
  placed: [],
  loadsG: [],
  spaces: null,
  massG: 0,
  usedMm3: 0,
  outBy: [],
  score: null,
})

export const copyBay = (bay: BayState): BayState => ({
  ...bay,
  placed: bay.placed.slice(),
  loadsG: bay.loadsG.slice(),
  outBy: bay.outBy.slice(),
  spaces: bay.spaces === null ? null : bay.spaces.slice(),
  score: null,
})

export const freeSpaces = (bay: BayState): readonly Box[] => (bay.spaces ??= spacesOf(bay.model, bay.placed))

const boxVolume = (box: Box): number => (box.x2 - box.x1) * (box.y2 - box.y1) * (box.z2 - box.z1)

/** What a box would rest on, or null where any of its base hangs in the air. */
export const supportersOf = (bay: BayState, box: Box): Support[] | null => {
  if (box.z1 === 0) return []
  const baseMm2 = (box.x2 - box.x1) * (box.y2 - box.y1)
  let heldMm2 = 0
  for (const solid of bay.model.solids) {
    if (solid.supports && solid.box.z2 === box.z1) heldMm2 += sharedFootprint(solid.box, box)
  }
  const supporters: Support[] = []
  for (let slot = 0; slot < bay.placed.length; slot++) {
    const other = bay.placed[slot]
    if (other === undefined || other.z2 !== box.z1) continue
    const area = sharedFootprint(other, box)
    if (area === 0) continue
    heldMm2 += area
    supporters.push({ slot, share01: area / baseMm2 })
  }
  return heldMm2 >= baseMm2 ? supporters : null
}

/** The rule that stops a unit from standing at `pose`, beyond those of the bay as a whole; null where none does. */
export const poseRule = (scene: Scene, bay: BayState, unit: number, box: Box): RuleCode | null => {
  if (!inside(box, bay.model.box)) return 'does-not-fit'
  for (const solid of bay.model.solids) if (overlaps(solid.box, box)) return 'no-room'
  for (const other of bay.placed) if (overlaps(other, box)) return 'no-room'
  return stackRule(scene, bay, unit, box)
}

/** As `poseRule`, for a box already known to lie in free space. */
export const stackRule = (scene: Scene, bay: BayState, unit: number, box: Box): RuleCode | null => {
  const traits = scene.traits[unit]
  if (traits === null || traits === undefined) return 'does-not-fit'
  if (bay.massG + traits.massG > bay.model.bay.loadLimitG) return 'bay-load-limit'
  if (scene.layout === 'drive' && traits.mustBeHeld && rollsOver(scene, bay, box)) return 'above-seat-back'
  if (isApart(scene, bay, unit)) return 'apart'
  const supporters = supportersOf(bay, box)
  if (supporters === null) return 'no-room'
  if (!carries(scene, bay, supporters, traits.massG)) return 'load-on-top'
  if (traits.liquid && dripsOnto(scene, bay, supporters, box)) return 'liquid-above'
  if (traits.spoiltByLiquid && isDrippedOn(scene, bay, box)) return 'liquid-above'
  return null
}

/** Above the seat backs only a net, a partition or a lid stops a heavy thing. */
const rollsOver = (scene: Scene, bay: BayState, box: Box): boolean => {
  const { restraint, originMm } = bay.model.bay
  if (restraint === 'barrier' || restraint === 'net' || restraint === 'lid') return false
  return originMm[2] + box.z2 > scene.model.input.vehicle.seatBackHeightMm
}

const isApart = (scene: Scene, bay: BayState, unit: number): boolean => {
  const own = scene.traits[unit]
  if (own === null || own === undefined) return false
  for (const other of bay.placed) {
    if (other.unit === unit) continue
    const traits = scene.traits[other.unit]
    if (traits === null || traits === undefined) continue
    if (own.apartFrom.size > 0 && names(scene, other.unit, own.apartFrom)) return true
    if (traits.apartFrom.size > 0 && names(scene, unit, traits.apartFrom)) return true
  }
  return false
}

/** Whether a set of piece ids names a unit or a piece in it. */
export const names = (scene: Scene, unit: number, ids: ReadonlySet<string>): boolean => {
  const item = scene.model.units[unit]
  if (item === undefined) return false
  return ids.has(item.id) || item.pieces.some((piece) => ids.has(piece.id))
}

/** Adds `massG` on the supporters and all below; false where one would carry more than it bears. */
const carries = (scene: Scene, bay: BayState, supporters: readonly Support[], massG: number): boolean => {
  if (supporters.length === 0) return true
  const added = new Map<number, number>()
  spread(bay, supporters, massG, added)
  for (const [slot, extraG] of added) {
    const bearsG = scene.model.units[bay.placed[slot]?.unit ?? -1]?.bearsG ?? 0
    if ((bay.loadsG[slot] ?? 0) + extraG > bearsG + LOAD_ROUNDING_G) return false
  }
  return true
}

/** Shares of a gram that divide unevenly are forgiven, g. */
const LOAD_ROUNDING_G = 1e-6

const spread = (bay: BayState, supporters: readonly Support[], massG: number, into: Map<number, number>): void => {
  for (const { slot, share01 } of supporters) {
    const partG = massG * share01
    into.set(slot, (into.get(slot) ?? 0) + partG)
    spread(bay, bay.placed[slot]?.supporters ?? [], partG, into)
  }
}

const dripsOnto = (scene: Scene, bay: BayState, supporters: readonly Support[], box: Box): boolean => {
  for (const other of bay.placed) {
    if (other.z2 <= box.z1 && scene.traits[other.unit]?.spoiltByLiquid === true && sharedFootprint(other, box) > 0) {
      return true
    }
  }
  return supporters.some(({ slot }) => leansOnSpoilt(scene, bay, slot))
}

const leansOnSpoilt = (scene: Scene, bay: BayState, slot: number): boolean => {
  const item = bay.placed[slot]
  if (item === undefined) return false
  return (
    scene.traits[item.unit]?.spoiltByLiquid === true ||
    item.supporters.some((next) => leansOnSpoilt(scene, bay, next.slot))
  )
}

const isDrippedOn = (scene: Scene, bay: BayState, box: Box): boolean =>
  bay.placed.some(
    (other) => other.z1 >= box.z2 && scene.traits[other.unit]?.liquid === true && sharedFootprint(other, box) > 0,
  )

/** Puts a unit in. The caller has checked the pose. */
export const put = (scene: Scene, bay: BayState, unit: number, pose: Pose3): Placed => {
  const supporters = supportersOf(bay, pose.box) ?? []
  const item: Placed = { ...pose.box, unit, edges: pose.edges, supporters }
  const massG = scene.traits[unit]?.massG ?? 0
  const added = new Map<number, number>()
  spread(bay, supporters, massG, added)
  for (const [slot, extraG] of added) bay.loadsG[slot] = (bay.loadsG[slot] ?? 0) + extraG
  bay.placed.push(item)
  bay.loadsG.push(0)
  bay.massG += massG
  bay.usedMm3 += boxVolume(pose.box)
  if (bay.spaces !== null) bay.spaces = spacesAfter(bay.model, bay.spaces, bay.placed, item)
  bay.score = null
  return item
}

/** A bay with only the items that `keep` accepts and that still stand on something; those that fell are returned too. */
export const rebuiltBay = (
  scene: Scene,
  from: BayState,
  keep: (item: Placed) => boolean,
): { readonly bay: BayState; readonly fallen: readonly number[] } => {
  const bay = emptyBay(from.model)
  const fallen: number[] = []
  const ordered = from.placed.slice().sort((a, b) => a.z1 - b.z1)
  for (const item of ordered) {
    if (!keep(item)) continue
    if (supportersOf(bay, item) === null) fallen.push(item.unit)
    else put(scene, bay, item.unit, { box: plainBox(item), edges: item.edges })
  }
  return { bay, fallen }
}

export const plainBox = (box: Box): Box => ({
  x1: box.x1,
  y1: box.y1,
  z1: box.z1,
  x2: box.x2,
  y2: box.y2,
  z2: box.z2,
})

export const boxSize = (box: Box): Vec3 => [box.x2 - box.x1, box.y2 - box.y1, box.z2 - box.z1]
