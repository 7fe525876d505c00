/** The plan's door: a trip goes in, a plan comes out. */
export type {
  Finding,
  FindingArea,
  NightClock,
  NightPlan,
  PitchAdvice,
  Plan,
  PlanBudget,
  Remedy,
  RemedyChange,
  Verdict,
} from './types.ts'
