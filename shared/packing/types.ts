/**
 * What the packing engine is given and what it gives back.
 * Vehicle frame: x forward from the inside of the rear sill, y across from the left inner wall, z up from the load floor.
 * Bay frame: the same axes from the bay's own corner. Integer mm and g throughout.
 */
import type { Problem } from '../result/index.ts'

export type Vec3 = readonly [number, number, number]
export type LayoutName = 'drive' | 'bed'
export type Face = 'x-' | 'x+' | 'y-' | 'y+' | 'z+'
export type AccessClass = 'en-route' | 'on-arrival' | 'evening' | 'night' | 'morning' | 'seldom' | 'emergency'
export type NightState = 'stored' | 'bed' | 'in-use' | 'outside' | 'left-behind'
export type Restraint = 'barrier' | 'belt' | 'strap' | 'net' | 'lid' | 'wedge' | 'none'

export type PackOpening = {
  readonly id: string
  readonly face: Face
  /** Rectangle on the face, bay frame, on the two other axes in x, y, z order. */
  readonly fromMm: readonly [number, number]
  readonly toMm: readonly [number, number]
  readonly door: string
  readonly opensFromInside: boolean
}

export type PackBay = {
  readonly id: string
  readonly kind:
    | 'cargo'
    | 'seat'
    | 'footwell'
    | 'under-floor'
    | 'front-compartment'
    | 'roof-box'
    | 'pocket'
    | 'bedside'
    | 'shelf'
    | 'outside'
    | 'locker'
  readonly originMm: Vec3
  readonly sizeMm: Vec3
  readonly obstacles: readonly { readonly label: string; readonly atMm: Vec3; readonly sizeMm: Vec3 }[]
  readonly slopes: readonly {
    readonly face: 'x-' | 'x+' | 'y-' | 'y+'
    readonly insetFloorMm: number
    readonly insetTopMm: number
  }[]
  readonly openings: readonly PackOpening[]
  readonly usable: { readonly drive: boolean; readonly bed: boolean }
  readonly belongsTo: 'vehicle' | 'site'
  readonly loadLimitG: number
  readonly unitLimitG: number | null
  readonly softOnly: boolean
  readonly lastResort: boolean
  readonly lockable: boolean
  readonly heatedAtNight: boolean
  readonly sleepingSpace: boolean
  readonly closedByBed: boolean
  readonly restraint: Restraint
  readonly reachFromBed: boolean
  readonly reachFromDriverSeat: boolean
}

export type PackTraits = {
  readonly liquidMl: number
  readonly freezesBelowC: number | null
  readonly spoilsAboveC: number | null
  readonly food: boolean
  readonly scented: boolean
  readonly valuable: boolean
  readonly fragile: boolean
  readonly needsRestraint: boolean
  readonly wetAfterUse: boolean
  readonly fuel: boolean
  readonly lithiumWh: number
  readonly mayStandOutside: boolean
}

export type PackLock = {
  readonly layout: LayoutName
  readonly bayId: string
  readonly atMm: Vec3 | null
  readonly sizeMm: Vec3 | null
}

export type PackPiece = {
  readonly id: string
  readonly sizeMm: Vec3
  readonly massG: number
  readonly form: 'rigid' | 'soft'
  /** Smallest share of one edge that a soft piece may be squeezed to. */
  readonly squeezeTo01: number
  /** Which edges of `sizeMm` (0 length, 1 width, 2 height) may stand upright. */
  readonly uprightEdges: readonly (0 | 1 | 2)[]
  /** Load it carries on top; null where nothing limits it. */
  readonly bearsG: number | null
  readonly access: readonly AccessClass[]
  /** How often it is wanted while this layout stands, times a day. */
  readonly uses: { readonly drive: number; readonly bed: number }
  readonly traits: PackTraits
  readonly belongsWith: readonly string[]
  readonly apartFrom: readonly string[]
  readonly binId: string | null
  readonly locks: readonly PackLock[]
}

export type PackBin = {
  readonly id: string
  readonly sizeMm: Vec3
  readonly innerMm: Vec3
  readonly massG: number
  readonly form: 'rigid' | 'soft'
  readonly squeezeTo01: number
  readonly bearsG: number | null
  readonly liftLimitG: number
  readonly lid: boolean
  readonly locks: readonly PackLock[]
}

/** What one night changes: each night gets a bed layout of its own from the one drive layout. */
export type PackNight = {
  readonly id: string
  readonly states: Readonly<Record<string, NightState>>
  /** Lowest temperature expected in each bay that night, °C. */
  readonly lowTempC: Readonly<Record<string, number>>
  readonly highTempC: Readonly<Record<string, number>>
  readonly outsideStorage: boolean
  /** Food and scented goods must sleep in these bays (a locker); null where the site has no such rule. */
  readonly foodBayIds: readonly string[] | null
}

export type PackVehicle = {
  /** Permitted mass less ready mass and people beyond the driver included. */
  readonly payloadG: number
  readonly frontAxle: { readonly limitG: number; readonly readyG: number } | null
  readonly rearAxle: { readonly limitG: number; readonly readyG: number } | null
  readonly rearAxleXMm: number | null
  readonly wheelbaseMm: number | null
  readonly roofLimitG: number | null
  readonly seatBackHeightMm: number
  readonly driverSide: 'left' | 'right'
}

export type PackWeights = {
  readonly reach: number
  readonly dusk: number
  readonly lowAndCentral: number
  readonly baysKeptFree: number
}

export type PackingInput = {
  readonly vehicle: PackVehicle
  readonly bays: readonly PackBay[]
  readonly bins: readonly PackBin[]
  readonly pieces: readonly PackPiece[]
  readonly nights: readonly PackNight[]
  readonly freeShare01: number
  readonly weights: PackWeights
}

export type PackBudget = {
  readonly seed: number
  /** Improvement rounds; the same number gives the same answer on any machine. */
  readonly iterations: number
  readonly shouldStop?: () => boolean
  readonly onProgress?: (done01: number, note: 'drive' | 'bed' | 'changeover') => void
  /** A plan of nearly the same load to start from. */
  readonly startFrom?: PackingOutcome
}

/** A bin with its pieces, or a loose piece, as packed. A loose piece's unit has the piece's own id; a bin's unit has the bin's. */
export type PackedUnit = {
  readonly id: string
  readonly kind: 'bin' | 'piece'
  readonly pieceIds: readonly string[]
  readonly sizeMm: Vec3
  readonly massG: number
}

export type Placement = {
  readonly unitId: string
  readonly bayId: string
  /** Low corner, bay frame. */
  readonly atMm: Vec3
  /** Size as placed, after turning and squeezing. */
  readonly sizeMm: Vec3
  /** Edge of the stated size that lies along x, y, z. */
  readonly edges: readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2]
}

/** Where a unit is that no bay holds in this layout: made into the bed, mounted, worn, outdoors, or at home. */
export type AwayPlace = { readonly unitId: string; readonly state: Exclude<NightState, 'stored'> }

export type Layout = { readonly placements: readonly Placement[]; readonly away: readonly AwayPlace[] }

export type Reach = {
  readonly unitId: string
  readonly openingId: string | null
  /** Units to move first, outermost first. */
  readonly blockedBy: readonly string[]
  readonly handledG: number
  /** From the driver's seat or the bed where the bay allows it. */
  readonly fromSeatOrBed: boolean
  /** True where no straight pull exists and the unit must be lifted round. */
  readonly liftNeeded: boolean
}

export type Move = {
  readonly unitId: string
  readonly from: Placement | AwayPlace
  readonly to: Placement | AwayPlace
  /** True where the unit waits here and moves again later. */
  readonly waits: boolean
  readonly door: string | null
}

/** A piece taken out of its bin for the night, or put back: the bin itself need not move. */
export type BinMove = {
  readonly pieceId: string
  readonly binId: string
  /** Where the piece is that night. */
  readonly state: AwayPlace['state']
  /** After how many of the moves the bin first stands free; null where something is in its way all along. */
  readonly afterMoves: number | null
}

export type Changeover = {
  readonly moves: readonly Move[]
  /** Pieces that leave their bin for the night, or come back to it; none where the search was broken off. */
  readonly binMoves?: readonly BinMove[]
  /** No sequence can be shorter than this. */
  readonly lowerBound: number
  readonly optimal: boolean
  /** Units that cannot be brought over by any legal sequence found. */
  readonly stuckUnitIds: readonly string[]
}

export type RuleCode =
  | 'does-not-fit'
  | 'no-room'
  | 'opening-too-small'
  | 'bay-load-limit'
  | 'unit-too-heavy'
  | 'payload'
  | 'front-axle'
  | 'rear-axle'
  | 'roof-load'
  | 'soft-only'
  | 'freezes'
  | 'spoils'
  | 'fuel-in-sleeping-space'
  | 'fuel-in-cabin'
  | 'food-place'
  | 'outside-not-allowed'
  | 'not-lockable'
  | 'restraint'
  | 'above-seat-back'
  | 'load-on-top'
  | 'liquid-above'
  | 'apart'
  | 'locked'
  | 'closed-by-bed'
  | 'reach'
  | 'site-bay-while-driving'

export type UnitCure =
  | { readonly kind: 'turn'; readonly edge: 0 | 1 | 2 }
  | { readonly kind: 'squeeze'; readonly byMm: number }
  | { readonly kind: 'leave-behind'; readonly unitIds: readonly string[] }
  | { readonly kind: 'other-bay'; readonly bayId: string; readonly ignoring: RuleCode }
  | { readonly kind: 'other-bin'; readonly binId: string }
  | { readonly kind: 'empty-bin'; readonly binId: string }

export type Unplaced = {
  readonly unitId: string
  readonly layout: LayoutName
  readonly nightId: string | null
  readonly why: readonly { readonly bayId: string; readonly rule: RuleCode; readonly shortByMm: number | null }[]
  /** Smallest change that places it, verified by solving again; null where none was found. */
  readonly cure: UnitCure | null
}

export type MassReport = {
  readonly loadG: number
  readonly payloadG: number
  readonly frontAxleG: number | null
  readonly rearAxleG: number | null
  readonly roofG: number
  readonly bayG: Readonly<Record<string, number>>
  /** Centre of the load, vehicle frame. */
  readonly centreMm: Vec3
}

/** A limit that the load as a whole passes. */
export type PackFault = {
  readonly rule: RuleCode
  readonly amount: number
  readonly limit: number
  readonly bayId: string | null
  /** The unit that is wanted at night and cannot be had; null for limits of the whole load. */
  readonly unitId: string | null
  readonly nightId: string | null
}

/** Things that are legal but want saying: heavy and unrestrained, fuel in the cabin by day. */
export type PackCaution = {
  readonly code: 'fuel-in-cabin' | 'unrestrained' | 'above-seat-back' | 'heavy-high'
  readonly unitId: string
  readonly bayId: string
  readonly forceKn: readonly [number, number] | null
}

export type NightPacking = {
  readonly nightId: string
  readonly bed: Layout
  readonly reach: readonly Reach[]
  readonly changeover: Changeover
  readonly changeback: Changeover
  readonly unplaced: readonly Unplaced[]
}

export type InnerPacking = { readonly binId: string; readonly placements: readonly Placement[] }

export type PackingOutcome = {
  readonly units: readonly PackedUnit[]
  readonly bins: readonly InnerPacking[]
  readonly drive: Layout
  readonly driveReach: readonly Reach[]
  readonly driveUnplaced: readonly Unplaced[]
  readonly mass: MassReport
  readonly faults: readonly PackFault[]
  readonly cautions: readonly PackCaution[]
  readonly nights: readonly NightPacking[]
  /** Order to load by hand, first in to last in. */
  readonly loadingOrder: readonly string[]
  /** Use-weighted reach over the day, moves. */
  readonly weightedReach: number
  readonly iterations: number
  readonly cancelled: boolean
}

/** Answer to "may it stand here?" while a unit is dragged. */
export type PoseVerdict = {
  readonly legal: boolean
  readonly rule: RuleCode | null
  readonly nearest: Placement | null
}

export type PackResult =
  { readonly ok: true; readonly value: PackingOutcome } | { readonly ok: false; readonly problem: Problem }
