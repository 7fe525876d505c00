/** What the window and its plan worker say to each other. */
import type { Trip } from '../../shared/document/index.ts'
import type { Fault, FaultOutcome, Plan, WhatIf, WhatIfAmounts, WhatIfKind } from '../../shared/plan/index.ts'

export type PlanNote = 'packing' | 'night' | 'checklist' | 'remedies'

/** `quick` answers an edit at once; `thorough` searches and looks for remedies. */
export type PlanEffort = 'quick' | 'thorough'

/** A plan and the trip that it was made of. */
export type PlannedTrip = { readonly plan: Plan; readonly trip: Trip }

/** What a turn of a dial changes: load and checklist stand as they were until the dial rests. */
export type TurnedNights = Pick<Plan, 'nights' | 'findings' | 'verdict' | 'nightVerdicts' | 'ledger'>

/** What if: which change, how much of it, and the plan to set the other one beside. */
export type WhatIfAsked = {
  readonly kind: WhatIfKind
  readonly amounts: Partial<WhatIfAmounts>
  readonly trip: Trip
  /** The newest whole plan; of an older trip where a dial was turned since and the search was stopped. */
  readonly standing: PlannedTrip
}

export type Verdicts = Pick<Plan, 'verdict' | 'nightVerdicts'>

/** The second plan as far as it is read beside the first. */
export type WhatIfTold = Omit<WhatIf, 'plan'> & { readonly before: Verdicts; readonly after: Verdicts }

export type PlanRequest =
  | {
      readonly kind: 'plan'
      readonly id: number
      readonly trip: Trip
      readonly effort: PlanEffort
      /** A plan that another worker made, to go on from. Absent: the worker's own last one. */
      readonly previous?: PlannedTrip
    }
  /** The trip that the worker knows, with other nights. */
  | { readonly kind: 'turn'; readonly id: number; readonly nights: Trip['nights'] }
  /** One night of the newest plan, with a fault in it. */
  | { readonly kind: 'fault'; readonly id: number; readonly nightId: string; readonly fault: Fault }
  | { readonly kind: 'what-if'; readonly id: number; readonly asked: WhatIfAsked }
  /** A plan that another worker made, to turn from; it is not answered. */
  | { readonly kind: 'know'; readonly previous: PlannedTrip }

export type PlanAnswer =
  | { readonly kind: 'progress'; readonly id: number; readonly done01: number; readonly note: PlanNote }
  | { readonly kind: 'plan'; readonly id: number; readonly plan: Plan; readonly tookMs: number }
  | { readonly kind: 'turned'; readonly id: number; readonly turned: TurnedNights; readonly tookMs: number }
  | { readonly kind: 'faulted'; readonly id: number; readonly outcome: FaultOutcome | null }
  /** Null where the change has nothing to act on. */
  | { readonly kind: 'compared'; readonly id: number; readonly told: WhatIfTold | null }
  | { readonly kind: 'failed'; readonly id: number; readonly errorName: string; readonly message: string }
