/** Checklist: ticks, lessons, rules. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Checklist, UserRule } from '../schema/checklist.ts'
import type { Trip } from '../schema/document.ts'
import { changeOne, has, missing, omit, without } from './target.ts'

type Tick = Checklist['ticks'][number]
type Lesson = Checklist['lessons'][number]

export type TickStep = { readonly kind: 'tick'; readonly tick: Tick }
export type UntickStep = { readonly kind: 'untick'; readonly stepKey: string }
export type AddLesson = { readonly kind: 'add-lesson'; readonly lesson: Lesson }
export type RemoveLesson = { readonly kind: 'remove-lesson'; readonly lessonId: string }
/** The lesson becomes a rule for the nights to come. */
export type LessonToRule = { readonly kind: 'lesson-to-rule'; readonly lessonId: string; readonly rule: UserRule }
export type AddRule = { readonly kind: 'add-rule'; readonly rule: UserRule }
export type EditRule = { readonly kind: 'edit-rule'; readonly rule: UserRule }
export type RemoveRule = { readonly kind: 'remove-rule'; readonly ruleId: string }
/** An own rule by its `enabled`, a built-in one by the list of those switched off. */
export type SwitchRule = { readonly kind: 'switch-rule'; readonly ruleId: string; readonly on: boolean }

const withList = (trip: Trip, change: Partial<Checklist>): Result<Trip> =>
  ok({ ...trip, checklist: { ...trip.checklist, ...change } })

export const tickStep = (trip: Trip, { tick }: TickStep): Result<Trip> =>
  withList(trip, { ticks: [...trip.checklist.ticks.filter((one) => one.stepKey !== tick.stepKey), tick] })

export const untickStep = (trip: Trip, { stepKey }: UntickStep): Result<Trip> =>
  withList(trip, { ticks: trip.checklist.ticks.filter((one) => one.stepKey !== stepKey) })

export function addLesson(trip: Trip, { lesson }: AddLesson): Result<Trip> {
  if (has(trip.checklist.lessons, lesson.id)) return taken(lesson.id)
  return withList(trip, { lessons: [...trip.checklist.lessons, lesson] })
}

export function removeLesson(trip: Trip, { lessonId }: RemoveLesson): Result<Trip> {
  if (!has(trip.checklist.lessons, lessonId)) return missing('lesson', lessonId)
  return withList(trip, { lessons: without(trip.checklist.lessons, lessonId) })
}

export function lessonToRule(trip: Trip, { lessonId, rule }: LessonToRule): Result<Trip> {
  if (!has(trip.checklist.lessons, lessonId)) return missing('lesson', lessonId)
  if (has(trip.checklist.rules, rule.id)) return taken(rule.id)
  return withList(trip, {
    rules: [...trip.checklist.rules, rule],
    lessons: changeOne(trip.checklist.lessons, lessonId, (lesson) => ({ ...lesson, ruleId: rule.id })),
  })
}

export function addRule(trip: Trip, { rule }: AddRule): Result<Trip> {
  if (has(trip.checklist.rules, rule.id)) return taken(rule.id)
  return withList(trip, { rules: [...trip.checklist.rules, rule] })
}

export function editRule(trip: Trip, { rule }: EditRule): Result<Trip> {
  if (!has(trip.checklist.rules, rule.id)) return missing('rule', rule.id)
  return withList(trip, { rules: changeOne(trip.checklist.rules, rule.id, () => rule) })
}

export function removeRule(trip: Trip, { ruleId }: RemoveRule): Result<Trip> {
  if (!has(trip.checklist.rules, ruleId)) return missing('rule', ruleId)
  return withList(trip, {
    rules: without(trip.checklist.rules, ruleId),
    lessons: trip.checklist.lessons.map((lesson) => (lesson.ruleId === ruleId ? omit(lesson, 'ruleId') : lesson)),
  })
}

export function switchRule(trip: Trip, { ruleId, on }: SwitchRule): Result<Trip> {
  const { rules, switchedOffRuleIds } = trip.checklist
  if (has(rules, ruleId))
    return withList(trip, { rules: changeOne(rules, ruleId, (rule) => ({ ...rule, enabled: on })) })
  const others = switchedOffRuleIds.filter((id) => id !== ruleId)
  return withList(trip, { switchedOffRuleIds: on ? others : [...others, ruleId] })
}

const taken = (id: string): Result<never> => fail(problem('edit-id-taken', [], { id }))
