/** What the scene draws: boxes in the vehicle frame, without a colour and without a camera. */
import type { Plan } from '../../shared/plan/index.ts'

export type Vec3 = readonly [number, number, number]
export type PackBay = Plan['packingInput']['bays'][number]
export type PackOpening = PackBay['openings'][number]
export type PackedUnit = Plan['packing']['units'][number]
export type Placement = Plan['packing']['drive']['placements'][number]
export type AwayPlace = Plan['packing']['drive']['away'][number]
export type Reach = Plan['packing']['driveReach'][number]
export type Move = Plan['packing']['nights'][number]['changeover']['moves'][number]
export type NightClock = Plan['nights'][number]['clock']

/** A box by its low corner, vehicle frame: x forward, y to the right, z up; mm. */
export type Box = { readonly atMm: Vec3; readonly sizeMm: Vec3 }

export type Segment = readonly [Vec3, Vec3]

/** How densely a unit is hatched: open is at hand, dense is deep. */
export type HatchRank = 0 | 1 | 2 | 3

export type SceneUnit = {
  readonly id: string
  readonly name: string
  readonly box: Box
  readonly rank: HatchRank
  readonly role: 'plain' | 'chosen' | 'in-the-way' | 'moved'
}

export type SceneBay = {
  readonly id: string
  readonly name: string
  readonly box: Box
  readonly outside: boolean
  readonly edges: readonly Segment[]
  readonly jambs: readonly Segment[]
  readonly hatched: readonly Box[]
}

export type SceneDescription = {
  readonly bays: readonly SceneBay[]
  readonly bed: Box | null
  readonly units: readonly SceneUnit[]
  /** What is lifted out of the way of the chosen unit, shown where it would be held. */
  readonly ghosts: readonly SceneUnit[]
  readonly wheels: readonly { readonly centreMm: Vec3; readonly radiusMm: number }[]
  /** The vehicle around the bays, in faint lines. */
  readonly body: readonly Segment[]
  readonly bounds: Box
  /** Points that the drawing must keep in view. */
  readonly outline: readonly Vec3[]
}
