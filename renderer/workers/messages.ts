/** What the window and the plan worker say to each other. */
import type { Trip } from '../../shared/document/index.ts'
import type { Plan } from '../../shared/plan/index.ts'

export type PlanNote = 'packing' | 'night' | 'checklist' | 'remedies'

/** `quick` answers a dial at once; `thorough` searches and looks for remedies. */
export type PlanEffort = 'quick' | 'thorough'

export type PlanRequest = {
  readonly id: number
  readonly trip: Trip
  readonly effort: PlanEffort
  /** Absent: the worker goes on from its own last plan. */
  readonly previous?: Plan
}

export type PlanAnswer =
  | { readonly kind: 'progress'; readonly id: number; readonly done01: number; readonly note: PlanNote }
  | { readonly kind: 'plan'; readonly id: number; readonly plan: Plan; readonly tookMs: number }
  | { readonly kind: 'failed'; readonly id: number; readonly errorName: string; readonly message: string }
