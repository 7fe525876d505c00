/** Engine 3: rules over the plan's facts become steps with a reason, an order and a deadline. */
export { buildChecklist } from './build.ts'
export { toICalendar } from './calendar.ts'
export { asFacts, MOMENT_NAMES, PURPOSE_NAMES } from './facts.ts'
export { fromCondition, toCondition } from './form.ts'
export { ruleFromLesson, ruleFromOwn, unusedPieces } from './lessons.ts'
export { PHASES, PHASE_TO } from './phases.ts'
export { readsOf } from './reads.ts'
export { BUILT_IN_RULES } from './rules/index.ts'
export type { Calendar, CalendarEntry } from './calendar.ts'
export type { BadRuleCode } from './evaluate.ts'
export type {
  AdapterNeed,
  ChecklistFacts,
  MomentName,
  NamedThing,
  PlacedThing,
  PurposeName,
  YesNoUnknown,
} from './facts.ts'
export type { ConditionForm, FormTest } from './form.ts'
export type { Lesson, LessonScope, OwnRule } from './lessons.ts'
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
