/** Changes of the trip that the checklist asks for: ticks, skipped steps, lessons and own rules. */
import type { Trip } from '../../../shared/document/index.ts'

type Tick = Trip['checklist']['ticks'][number]
type Lesson = Trip['checklist']['lessons'][number]
type UserRule = Trip['checklist']['rules'][number]
type Change = (trip: Trip) => Trip

const withChecklist = (trip: Trip, change: Partial<Trip['checklist']>): Trip => ({ ...trip, checklist: { ...trip.checklist, ...change } })

export const withTick = (tick: Tick): Change => (trip) =>
  withChecklist(trip, { ticks: [...trip.checklist.ticks.filter(({ stepKey }) => stepKey !== tick.stepKey), tick] })

export const untick = (stepKey: string): Change => (trip) =>
  withChecklist(trip, { ticks: trip.checklist.ticks.filter((tick) => tick.stepKey !== stepKey) })

export const withLesson = (lesson: Lesson): Change => (trip) => withChecklist(trip, { lessons: [...trip.checklist.lessons, lesson] })

export const withoutLesson = (id: string): Change => (trip) =>
  withChecklist(trip, { lessons: trip.checklist.lessons.filter((lesson) => lesson.id !== id) })

/** A lesson becomes a rule that asks the same thing on every night to come. */
export const lessonToRule = (lessonId: string, rule: UserRule): Change => (trip) =>
  withChecklist(trip, {
    rules: [...trip.checklist.rules, rule],
    lessons: trip.checklist.lessons.map((lesson) => (lesson.id === lessonId ? { ...lesson, ruleId: rule.id } : lesson)),
  })

export const withRule = (rule: UserRule): Change => (trip) => withChecklist(trip, { rules: [...trip.checklist.rules, rule] })

export const withoutRule = (id: string): Change => (trip) =>
  withChecklist(trip, {
    rules: trip.checklist.rules.filter((rule) => rule.id !== id),
    lessons: trip.checklist.lessons.map(({ ruleId, ...lesson }) => (ruleId === undefined || ruleId === id ? lesson : { ...lesson, ruleId })),
  })

export const ruleEnabled = (id: string, enabled: boolean): Change => (trip) =>
  withChecklist(trip, { rules: trip.checklist.rules.map((rule) => (rule.id === id ? { ...rule, enabled } : rule)) })

/** The next id with this stem that the trip does not use: `lesson-3` after `lesson-2`. */
export function freshId(stem: string, taken: readonly { readonly id: string }[]): string {
  let number = taken.length + 1
  while (taken.some(({ id }) => id === `${stem}-${number}`)) number += 1
  return `${stem}-${number}`
}
