/** Engine 3: rules over the plan's facts become steps with a reason, an order and a deadline. */
export type {
  ChecklistInput,
  ChecklistNight,
  ChecklistOutcome,
  Condition,
  Conflict,
  Facts,
  GivenStep,
  Json,
  Moments,
  Phase,
  Rule,
  Step,
  Tick,
} from './types.ts'
