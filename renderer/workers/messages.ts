/** What the window and the plan worker say to each other. */
import type { Trip } from '../../shared/document/index.ts'
import type { Plan } from '../../shared/plan/index.ts'

export type PlanNote = 'packing' | 'night' | 'checklist' | 'remedies'

/** `quick` answers a dial at once; `thorough` searches and looks for remedies. */
export type PlanEffort = 'quick' | 'thorough'

/** A plan and the trip that it was made of. */
export type PlannedTrip = { readonly plan: Plan; readonly trip: Trip }

export type PlanRequest = {
  readonly id: number
  readonly trip: Trip
  readonly effort: PlanEffort
  /** A plan that another worker made, to go on from. Absent: the worker's own last one. */
  readonly previous?: PlannedTrip
}

export type PlanAnswer =
  | { readonly kind: 'progress'; readonly id: number; readonly done01: number; readonly note: PlanNote }
  /** `whole`: load and checklist are made anew too. */
  | {
      readonly kind: 'plan'
      readonly id: number
      readonly plan: Plan
      readonly whole: boolean
      readonly tookMs: number
    }
  | { readonly kind: 'failed'; readonly id: number; readonly errorName: string; readonly message: string }
