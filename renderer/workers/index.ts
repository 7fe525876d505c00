/** Work that would hold up the window runs here. */
export { createPlanCaller } from './plan-caller.ts'
export { differsOnlyInNights, joinTurn } from './turn.ts'
export type { PlanCall, PlanCaller, PlanOutcome, WhatIfOutcome } from './plan-caller.ts'
export type { PlanEffort, PlanNote, PlannedTrip, WhatIfAsked, WhatIfTold } from './messages.ts'
