/** The plan: everything computed from a trip, in one value that every screen, card and command shows. */
import type { ChecklistOutcome } from '../checklist/index.ts'
import type { Difference } from './difference.ts'
import type {
  BeddingSet,
  Calibration,
  FaultOutcome,
  MeasuredLeg,
  MeasuredNight,
  NightInput,
  NightOutcome,
  NightSearch,
  NightStandards,
  SunTimes,
} from '../climate/index.ts'
import type { ProposedChange } from '../document/index.ts'
import type { Problem } from '../result/index.ts'
import type { PackingInput, PackingOutcome } from '../packing/index.ts'
import type { Utc } from '../units/index.ts'

/** Where a shortfall or a fact belongs. */
export type FindingArea = 'load' | 'night' | 'leg' | 'site' | 'clock' | 'checklist'

/** One thing that falls short (`shortfall`), must be minded (`caution`) or is worth knowing (`note`). Text by `code` in `shared/text`. */
export type Finding = {
  readonly id: string
  readonly severity: 'shortfall' | 'caution' | 'note'
  readonly area: FindingArea
  readonly nightId: string | null
  readonly problem: Problem
}

/** The clock of one night. All instants; `zone` for display. */
export type NightClock = {
  readonly zone: string
  readonly sun: SunTimes
  readonly arriveUtc: Utc
  readonly bedtimeUtc: Utc
  readonly wakeUtc: Utc
  readonly departUtc: Utc
  readonly beAtTargetUtc: Utc | null
  readonly quietFromUtc: Utc | null
  readonly quietToUtc: Utc | null
  readonly banFromUtc: Utc | null
  readonly banToUtc: Utc | null
  readonly gateFromUtc: Utc | null
  readonly gateToUtc: Utc | null
  readonly checkOutUtc: Utc | null
}

/** How the pitch wants the vehicle to stand. */
export type PitchAdvice = {
  readonly park: 'nose-in' | 'nose-out' | 'either' | 'not-known'
  readonly headUphill: boolean | null
  readonly rampUnder: 'front' | 'rear' | 'left' | 'right' | null
  readonly rampMm: number
  readonly riseOverBedMm: number
  readonly leadReaches: boolean | null
}

export type NightPlan = {
  readonly nightId: string
  readonly clock: NightClock
  readonly input: NightInput
  readonly outcome: NightOutcome
  /** What the standards for people awake say of it; on every derived plan. */
  readonly standards?: NightStandards
  /** Bedding that could be laid, the chosen one first; empty where there is nothing to choose. */
  readonly beddingSets: readonly BeddingSet[]
  readonly search: NightSearch | null
  readonly faults: readonly FaultOutcome[]
  readonly pitch: PitchAdvice
  readonly cost: number
}

/** A change of the trip that mends a shortfall, verified by planning again. */
export type Remedy = {
  readonly id: string
  readonly mends: readonly string[]
  readonly change: RemedyChange
  readonly cost: {
    readonly litres: number
    readonly moves: number
    readonly degreesK: number
    readonly charge01: number
    readonly money: number
    readonly minutes: number
  }
  readonly score: number
  /** What else would be different. */
  readonly preview: readonly Difference[]
}

/** One small change of the trip, or a few together; the document's edit `take-remedy` makes it. */
export type RemedyChange = ProposedChange

/** What a night finds on board, what it uses, and what is missing. */
export type NightStores = {
  readonly nightId: string
  /** On arriving. */
  readonly waterMl: number
  /** Missing until the next site. */
  readonly waterShortMl: number
  readonly waterLeftMl: number
  readonly foodG: number
  readonly foodShortG: number
  readonly foodLeftG: number
  /** Worn clothes to be kept apart by the morning. */
  readonly dirtyG: number
  /** Load on leaving in the morning, before anything is taken on. */
  readonly loadG: number
  readonly payloadMarginG: number
}

export type Verdict = {
  readonly holds: boolean
  readonly shortfalls: number
  readonly depart01: number | null
  readonly legMarginWh: number | null
  readonly coldestBedC: number
  readonly coldestBedUtc: Utc
  readonly movesAtDusk: number
}

/** The cabin's loss and the consumption as the trip's own nights and legs have shown them, and what they were fitted to. */
export type TripCalibration = {
  readonly fit: Calibration
  readonly from: readonly MeasuredNight[]
  readonly legs: readonly MeasuredLeg[]
}

export type ZonedInstant = { readonly atUtc: Utc; readonly zone: string }

/** Null where the trip does not set it. */
export type PlanHome = { readonly leave: ZonedInstant | null; readonly back: ZonedInstant | null }

export type Plan = {
  readonly planVersion: 1
  readonly home: PlanHome
  readonly verdict: Verdict
  readonly nightVerdicts: readonly Verdict[]
  readonly packing: PackingOutcome
  readonly packingInput: PackingInput
  readonly nights: readonly NightPlan[]
  /** Null where no night has been read yet. */
  readonly calibration: TripCalibration | null
  readonly stores: readonly NightStores[]
  readonly checklist: ChecklistOutcome
  readonly findings: readonly Finding[]
  readonly remedies: readonly Remedy[]
  readonly ledger: {
    readonly perNight: readonly {
      readonly nightId: string
      readonly total: number
      readonly chargingEstimate: number
      readonly perTraveller: number
    }[]
    readonly total: number
    readonly perTraveller: number
    /** What each traveller has paid, and what that leaves to pay (positive) or to get back (negative) of what was paid by anyone. */
    readonly people: readonly { readonly travellerId: string; readonly paid: number; readonly owes: number }[]
  }
  readonly budget: {
    readonly seed: number
    /** Rounds that the packing search spent. */
    readonly iterations: number
    readonly cancelled: boolean
    /** Rounds that were asked for when this load was searched. */
    readonly askedIterations: number
  }
}

export type PlanBudget = {
  readonly seed: number
  readonly iterations: number
  readonly shouldStop?: () => boolean
  /** Ends the search for the load alone: nights, checklist and remedies still follow. */
  readonly enoughSearched?: () => boolean
  readonly onProgress?: (done01: number, note: 'packing' | 'night' | 'checklist' | 'remedies') => void
  /** Earlier plan of nearly the same trip: what has not changed is kept. */
  readonly previous?: Plan
  /** While a dial turns: load and checklist of `previous` stand as they are, though the trip may ask others; nights and verdict are new. */
  readonly keepLoad?: boolean
  readonly remedies: boolean
  /** Every night with its supply lost at this wall clock; where there is none, its heater fails then. */
  readonly fault?: { readonly clock: string }
}
