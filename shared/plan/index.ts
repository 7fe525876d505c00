/** The plan's door: a trip goes in, a plan comes out. */
export { derivePlan } from './derive.ts'
export { compareWhatIf, WHAT_IF_AMOUNTS, WHAT_IF_KINDS } from './what-if.ts'
export type { WhatIf, WhatIfAmounts, WhatIfKind } from './what-if.ts'
export type { Difference } from './difference.ts'
export { nightClock } from './clock.ts'
export { phaseEnd, stepsOfNight, zoneOfStep } from './read-steps.ts'
export { loadedPieces } from './load.ts'
export { choicesOf } from './choices.ts'
export { faultAt, faultKinds } from './rehearsal.ts'
export { MOVE_S } from './inputs/move-steps.ts'
export { unitNames } from './findings/index.ts'
export { freeVolume, handScene, reachOf, settlingRounds, tryPose } from '../packing/index.ts'
export type { HandScene, PoseVerdict, Tried } from '../packing/index.ts'
export { csvHead, forecastHoursOf, hasTwoHotPoles, parseEpw, parseHourlyCsv, runFault } from '../climate/index.ts'
export type { CsvColumns, Fault, FaultOutcome, HourlyReading } from '../climate/index.ts'
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
export {
  BUILT_IN_RULES,
  MOMENT_NAMES,
  PHASES,
  fromCondition,
  readsOf,
  ruleFromLesson,
  toCondition,
  toICalendar,
} from '../checklist/index.ts'
export type { Calendar, CalendarEntry, Phase } from '../checklist/index.ts'
