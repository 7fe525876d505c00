/** What the search and the fault nights give back: plans with their reasons, consequences with what to do. */
import type { Utc } from '../units/index.ts'
import type { Fault, NightDecisions, NightOutcome } from './types.ts'

/** One plan of the search that no other beats on comfort, charge, cost and moves together. */
export type FrontPoint = {
  readonly decisions: NightDecisions
  readonly comfortMarginK: number
  readonly depart01: number | null
  readonly legMarginWh: number | null
  readonly cost: number
  /** Handlings that covers and bedding ask for at dusk. */
  readonly moves?: number
  /** Room that the bedding takes, mm3; absent where there are no sets to choose from. */
  readonly beddingVolumeMm3?: number
  /** Operative temperature on rising, °C. */
  readonly risingC?: number
}

/** One reason for the recommended plan, with its number in the unit named; text by `night.because.` + code. */
export type SearchReason =
  | { readonly code: 'warm-in-hand' | 'too-cold-by'; readonly valueK: number }
  | { readonly code: 'leg-in-hand' | 'leg-short-by'; readonly valueWh: number }
  | { readonly code: 'stop-to-charge' }
  /** Cheaper than the dearest plan of the front by this, in the trip's currency. */
  | { readonly code: 'saves-money'; readonly value: number }
  /** Fewer handlings than the most of the front. */
  | { readonly code: 'saves-moves'; readonly value: number }
  | { readonly code: 'bedding'; readonly setId: string }
  | { readonly code: 'bed-heat-first'; readonly valueW: number }
  | { readonly code: 'lower-asleep'; readonly valueC: number }
  | { readonly code: 'pre-warm'; readonly fromUtc: Utc; readonly onSite: boolean }
  | { readonly code: 'less-current'; readonly valueA: number }
  | { readonly code: 'charge-enough'; readonly value01: number }
  | { readonly code: 'covers-up' | 'window-open' }

export type NightSearch = {
  readonly front: readonly FrontPoint[]
  readonly recommendedIndex: number
  /** Why that one; text by `night.reason.` + value. */
  readonly reason?: 'warm-and-leg' | 'warm-with-stop' | 'warm-no-leg' | 'leg-first' | 'warmest'
  /** The same in full, most weighty first. */
  readonly reasons?: readonly SearchReason[]
  /** The recommended plan where things turn out worse. */
  readonly sensitivity?: {
    /** Outside 5 K colder all night. */
    readonly colder: {
      readonly comfortMarginK: number
      readonly depart01: number | null
      readonly legMarginWh: number | null
    }
    /** The leg takes 10 % more. */
    readonly thirstier: { readonly legMarginWh: number | null }
  }
  readonly evaluated: number
}

/** One row an hour after a fault, the fault's own instant first and departure last. */
export type FaultHour = {
  readonly atUtc: Utc
  readonly outsideC: number
  readonly bedAirC: number
  readonly feetC: number
  /** Least margin of anyone asleep then, K; null while nobody sleeps. */
  readonly marginK: number | null
  readonly heatW: number
  readonly charge01: number | null
  readonly leisure01: number | null
}

/** One thing to do about a fault; text by `night.action.` + code. */
export type FaultAction =
  | { readonly code: 'heating-off' | 'bed-heaters-on' | 'covers-up' | 'move-indoors' }
  | { readonly code: 'lower-heating'; readonly tempC: number }
  | { readonly code: 'warmer-bedding'; readonly setId: string }
  /** Reset at what the breaker holds; null: not known, take the current down first. */
  | { readonly code: 'reset-lower'; readonly heldA: number | null }

export type FaultAdvice = {
  /** Together, in this order; empty where the night holds without. */
  readonly actions: readonly FaultAction[]
  /** Whether everyone stays warm enough and the leg within reach, with the actions taken at once. */
  readonly holds: boolean
  readonly marginK: number | null
  readonly depart01: number | null
  readonly legMarginWh: number | null
  /** Latest instant at which the actions still do so; to move indoors, when someone turns cold; null where nothing need be done. */
  readonly byUtc: Utc | null
  /** The same for warmth alone, whatever becomes of the leg; null where nobody turns cold. */
  readonly byColdUtc: Utc | null
}

export type FaultOutcome = {
  readonly fault: Fault
  readonly coldestBedC: number
  readonly depart01: number | null
  readonly legMarginWh: number | null
  /** Latest instant to wake and act so that the leg still works; null where acting is not needed. */
  readonly actByUtc: Utc | null
  readonly hoursOfHeatLeft: number | null
  /** Hour by hour from the fault to departure. */
  readonly hours?: readonly FaultHour[]
  /** What to do, for warmth and leg together, and until when. */
  readonly advice?: FaultAdvice
  readonly outcome: NightOutcome
}
