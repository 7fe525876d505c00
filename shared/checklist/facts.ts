/**
 * Every fact that a built-in rule reads, one set for each night. `shared/plan` fills it from the plan.
 * Plain JSON. Units end the names: C °C, K difference, Mm, M, G, A, V, W, Wh, Min minutes, H hours, Mm3, Ppm, 01 a fraction.
 * A number that is not known is null (never 0); a list without members is empty. Nothing is left out.
 */
import type { Facts } from './types.ts'

/** A thing of the load that a step names. `id` becomes part of the step's key. */
export type NamedThing = { readonly id: string; readonly name: string }

/** A piece, or several of one place named together, and the name of the bay they are in during the layout that the list speaks of. */
export type PlacedThing = { readonly id: string; readonly name: string; readonly place: string }

export type YesNoUnknown = 'yes' | 'no' | 'not-known'

export type AdapterNeed = {
  /** Piece id; where no piece does the job, the connector's name. */
  readonly id: string
  readonly name: string
  readonly nightId: string
  readonly nightNumber: number
  readonly siteName: string
  readonly connector: string
  /** False where the trip needs one and the kit has none that fits. */
  readonly onBoard: boolean
}

export type ChecklistFacts = {
  readonly trip: {
    /** 1 for the first night. */
    readonly nightNumber: number
    readonly nightCount: number
    readonly firstNight: boolean
    readonly lastNight: boolean
    readonly travellers: number
    /** A piece of purpose `pet` is on board. */
    readonly pets: boolean
    /** Adapters wanted on any night of the trip: the leaving list of the first night reads it. */
    readonly adapters: readonly AdapterNeed[]
    /** Adapters wanted on the following night. */
    readonly nextAdapters: readonly AdapterNeed[]
    /** Lowest outside temperature planned on any night. */
    readonly lowestC: number
  }
  readonly vehicle: {
    readonly drive: 'electric' | 'combustion'
    readonly heaterKind: 'heat-pump' | 'resistance' | 'mains-fan-heater' | 'none'
    readonly heaterMayRunAllNight: boolean
    readonly heaterStopsAfterH: number | null
    /** Negative: over the limit. */
    readonly payloadMarginG: number
    /** How much the load is over the payload; 0 where it is not. */
    readonly payloadOverG: number
    readonly frontAxleMarginG: number | null
    readonly rearAxleMarginG: number | null
    readonly roofMarginG: number | null
    readonly roofLoadG: number
    readonly leisureKind: 'lfp' | 'lead' | null
    /** What must be folded, slid or bridged to make the bed, in order. */
    readonly bedPrepare: readonly NamedThing[]
    readonly keepClear: readonly NamedThing[]
    readonly exitDoor: string | null
  }
  /** Whether a piece of each purpose rides along (spares left at home do not count). */
  readonly onBoard: Readonly<Record<PurposeName, boolean>>
  readonly load: {
    /** Heavy and held by nothing in the drive layout. */
    readonly unrestrained: readonly PlacedThing[]
    readonly aboveSeatBack: readonly PlacedThing[]
    /** Fuel or pressure, in a cabin bay while driving. */
    readonly fuelInCabin: readonly PlacedThing[]
    /** Fuel or pressure; `place` is the bay at night. */
    readonly fuel: readonly PlacedThing[]
    /** Pieces that no layout of this night could place. */
    readonly unplaced: readonly NamedThing[]
    /** Pieces that frost would harm tonight; `place` is where they sleep. */
    readonly freezing: readonly (PlacedThing & { readonly freezesBelowC: number })[]
    /** Pieces that heat would harm today. */
    readonly spoiling: readonly (PlacedThing & { readonly spoilsAboveC: number })[]
    /** Food and scented goods; `place` is where the site's rules want them, or the planned bay. */
    readonly food: readonly PlacedThing[]
    readonly lithium: readonly NamedThing[]
    readonly wet: readonly NamedThing[]
    readonly bed: readonly NamedThing[]
    /** Mounted, worn or plugged in at night. */
    readonly inUse: readonly NamedThing[]
    /** Stands outdoors at night. */
    readonly outside: readonly NamedThing[]
    readonly mustCarry: readonly PlacedThing[]
    readonly emergency: readonly PlacedThing[]
    /** Wanted from the bed at night, with its place. */
    readonly nightReach: readonly PlacedThing[]
    readonly valuables: readonly NamedThing[]
    /** Bins over their lifting limit. */
    readonly heavyBins: readonly (NamedThing & { readonly massG: number })[]
    readonly looseAtNightBesideDriver: boolean
    readonly movesAtDusk: number
    readonly movesInMorning: number
    /** Not used on the last three nights, by the lessons. */
    readonly unused: readonly NamedThing[]
  }
  readonly site: {
    readonly name: string
    readonly sleepAllowed: YesNoUnknown
    readonly chargeAllowed: YesNoUnknown
    readonly fireAllowed: YesNoUnknown
    readonly outsideStorage: boolean
    readonly tentOrAwning: boolean
    readonly foodLockerRequired: boolean
    readonly foodLockerPresent: boolean
    readonly mustStandOnHardPad: boolean
    readonly phone: string | null
    readonly gateCode: string | null
    /** The gate is shut for some hours. */
    readonly gateCloses: boolean
    readonly indoorFallback: string | null
    readonly nearestCharger: string | null
    /** The sheet for no coverage lacks the phone, the fallback or the charger. */
    readonly coverageSheetGaps: boolean
    readonly coordinates: string
    readonly toToiletsM: number
  }
  readonly clock: {
    /** Negative: before sunset. Null where the sun does not set that day. */
    readonly arriveAfterSunsetMin: number | null
    /** Arrival after civil dusk, or the sun does not rise. */
    readonly arriveInDark: boolean
    readonly hasQuietHours: boolean
    /** Arrival later than the check-in hours end. */
    readonly arriveAfterCheckInMin: number | null
    readonly arriveBeforeCheckInMin: number | null
    /** Leaving this long before the movement ban ends; null or 0: no clash. */
    readonly departInBanMin: number | null
    readonly departInGateMin: number | null
    readonly departInQuietMin: number | null
    readonly arriveInQuietMin: number | null
    /** The planned unplugging is this much later than leaving needs. */
    readonly unplugAfterDepartMin: number | null
    /** Check-out falls while the party is away at the target. */
    readonly checkOutWhileAway: boolean
    readonly returnsAfterTarget: boolean
  }
  readonly target: {
    readonly present: boolean
    readonly name: string | null
    readonly driveMin: number
    readonly walkMin: number
  }
  readonly weather: {
    readonly lowC: number
    readonly highC: number
    readonly windMPerS: number
    readonly humidity01: number
    readonly snowMm: number
    readonly rainMm: number
  }
  readonly pitch: {
    readonly surface: string
    /** Ground that may not carry: grass, mud, sand, snow. */
    readonly soft: boolean
    readonly slope01: number
    readonly rampMm: number
    readonly rampUnder: 'front' | 'rear' | 'left' | 'right' | null
    readonly headDownhill: boolean | null
    readonly park: 'nose-in' | 'nose-out' | 'either' | 'not-known'
  }
  readonly hookup: {
    readonly present: boolean
    readonly connector: string | null
    /** A household socket by type: NEMA 5-15/5-20, CEE 7, BS 1363, AS/NZS 3112. */
    readonly domesticSocket: boolean
    /** Round pin to IEC 60309. */
    readonly roundPin: boolean
    /** NEMA TT-30, 120 V. */
    readonly tt30: boolean
    /** NEMA 14-50 or 14-30, 6-50: a range or dryer type. */
    readonly splitPhase: boolean
    /** A vehicle connector to IEC 62196. */
    readonly chargingPoint: boolean
    readonly nominalV: number | null
    readonly breakerA: number | null
    readonly siteLimitA: number | null
    readonly usableA: number | null
    readonly limitedBy: string | null
    readonly voltsAtLoad: number | null
    readonly stepDownV: number | null
    readonly stopV: number | null
    readonly sag01: number | null
    readonly wiringHeatW: number | null
    readonly belowMinimum: boolean
    readonly minimumA: number | null
    readonly measured: boolean
    readonly earth: YesNoUnknown
    readonly polarityReversed: YesNoUnknown
    readonly resetReachable: YesNoUnknown
    readonly trippedBefore: boolean
    readonly heldA: number | null
    readonly otherLoadW: number
    /** Charging and the other load together pass what the post carries. */
    readonly twoLoadsTooMuch: boolean
    readonly adapterNeeded: boolean
    readonly adapterName: string | null
    readonly adapterOnBoard: boolean
    readonly extensionNeeded: boolean
    readonly extensionName: string | null
    readonly extensionOnBoard: boolean
    readonly leadName: string | null
    readonly cableRunMm: number | null
    readonly leadReaches: boolean | null
    readonly meteredPerKWh: boolean
    readonly tariffKnown: boolean
  }
  readonly energy: {
    readonly arrive01: number | null
    readonly depart01: number | null
    readonly reserve01: number | null
    readonly chargeLimit01: number | null
    readonly coldBattery: boolean
    /** Battery or heater gives out in the night. */
    readonly runsOutInNight: boolean
    /** With the supply lost at 03:00: hours of heat left. */
    readonly heatLeftOnFaultH: number | null
    readonly leisureDepart01: number | null
  }
  readonly leg: {
    readonly present: boolean
    readonly marginWh: number | null
    readonly stops: readonly (NamedThing & { readonly atM: number; readonly leave01: number })[]
    readonly outsideC: number | null
  }
  readonly heating: {
    readonly set: boolean
    readonly setPointC: number | null
    readonly bedHeater: boolean
  }
  readonly air: {
    readonly covers: boolean
    readonly windowGapMm: number
    readonly windowSides: number
    readonly co2MaxPpm: number
    readonly condensateG: number
    readonly frostG: number
  }
  readonly sleepers: {
    readonly coldestBedC: number
    readonly hottestBedC: number | null
    readonly anyCold: boolean
    readonly anyFeetCold: boolean
    /** Sleepers whose bedding falls short: `shortK` below what is wanted. */
    readonly cold: readonly (NamedThing & { readonly shortK: number })[]
    readonly feetCold: readonly NamedThing[]
    readonly sleepsCold: readonly NamedThing[]
    readonly hotBottle: boolean
  }
  readonly supplies: {
    /** Water on board. */
    readonly waterMm3: number
    readonly waterWantedMm3: number
    readonly stoveOnBoard: boolean
    readonly coolBox: boolean
    /** Worn clothes by the morning. */
    readonly dirtyG: number
  }
  /** What the next night will lack, seen today. */
  readonly tomorrow: {
    /** Null after the last night. */
    readonly site: string | null
    readonly waterShortMm3: number
    readonly foodShortG: number
    /** The leg after the next night cannot be driven: this much is missing. */
    readonly legShortWh: number
    /** Battery or heater gives out on the next night. */
    readonly heatRunsOut: boolean
  }
  readonly money: { readonly nightCost: number; readonly currency: string }
}

export const PURPOSE_NAMES = [
  'adapter',
  'lead',
  'charging-unit',
  'supply-tester',
  'window-covers',
  'co-alarm',
  'light',
  'stove',
  'water',
  'food',
  'cool-box',
  'first-aid',
  'shovel',
  'snow-chains',
  'traction-mats',
  'levelling',
  'chocks',
  'scraper',
  'screen-wash',
  'toilet',
  'documents',
  'warning-triangle',
  'clothes',
  'sleepwear',
  'footwear',
  'tools',
  'phone-power',
  'medicine',
  'fan-heater',
  'cargo-net',
  'rubbish',
  'pet',
  'target-kit',
  'fire-blanket',
  'other',
] as const

export type PurposeName = (typeof PURPOSE_NAMES)[number]

/** Instants that rules name. A night without one (no quiet hours, no target) leaves it out; the rule then has no deadline. */
export const MOMENT_NAMES = [
  'leaveHome',
  'arrive',
  'checkInFrom',
  'checkInTo',
  'sunset',
  'civilDusk',
  'quietFrom',
  'quietTo',
  'banFrom',
  'banTo',
  'gateFrom',
  'gateTo',
  'plugIn',
  'bedtime',
  'wake',
  'unplug',
  'depart',
  'civilDawn',
  'sunrise',
  'beAtTarget',
  'backFromTarget',
  'checkOutBy',
  'backHome',
] as const

export type MomentName = (typeof MOMENT_NAMES)[number]

/** Ids of rules whose step was skipped that night; the engine adds it to the facts it is given. */
export const SKIPPED_FACT = 'checklist.skippedRuleIds'

/** The engine reads facts as plain JSON: this is the one place where the typed set becomes that. */
export const asFacts = (facts: ChecklistFacts): Facts => facts
