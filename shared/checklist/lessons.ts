/** What was learned on one night becomes a rule for the nights to come, or a piece less to carry. */
import { toCondition } from './form.ts'
import type { ConditionForm, FormTest } from './form.ts'
import { readsOf } from './reads.ts'
import { valueAt } from './evaluate.ts'
import type { Condition, Facts, Json, Phase, Rule } from './types.ts'

/** A rule as the user keeps it in the trip. */
export type OwnRule = {
  readonly id: string
  readonly phase: Phase
  readonly step: string
  readonly reason: string
  readonly when: Condition
  readonly after: readonly string[]
  readonly durationMin: number
  readonly enabled: boolean
}

/** On which nights a lesson speaks again. */
export type LessonScope =
  'every-night' | 'as-cold' | 'as-warm' | 'wet' | 'same-connector' | 'food-locker' | 'with-target'

export type Lesson = {
  readonly id: string
  readonly text: string
  readonly phase: Phase
  readonly scope: LessonScope
  /** Shown as the reason, for example which night taught it. */
  readonly reason: string
}

const DEFAULT_MINUTES = 2 // common practice for one thing to see to
const SAME_COLD_K = 2 // a forecast is not finer than this, common practice

/**
 * The rule that a lesson makes.
 * `lesson`: its words, when in the day, and on which nights; `facts`: those of the night that taught it.
 * An enabled rule of the user's own; its id follows from the lesson's, so that the same lesson makes the same rule.
 */
export function ruleFromLesson(lesson: Lesson, facts: Facts): OwnRule {
  return {
    id: `lesson-${lesson.id}`,
    phase: lesson.phase,
    step: lesson.text,
    reason: lesson.reason,
    when: toCondition(formOf(lesson.scope, facts)),
    after: [],
    durationMin: DEFAULT_MINUTES,
    enabled: true,
  }
}

const all = (...tests: readonly FormTest[]): ConditionForm => ({ join: 'all', tests })

function formOf(scope: LessonScope, facts: Facts): ConditionForm {
  const lowC = numberOf(valueAt(facts, 'weather.lowC'))
  const highC = numberOf(valueAt(facts, 'weather.highC'))
  const connector = valueAt(facts, 'hookup.connector')
  switch (scope) {
    case 'every-night':
      return all()
    case 'as-cold':
      return lowC === null ? all() : all({ path: 'weather.lowC', is: 'at-most', value: lowC + SAME_COLD_K })
    case 'as-warm':
      return highC === null ? all() : all({ path: 'weather.highC', is: 'at-least', value: highC - SAME_COLD_K })
    case 'wet':
      return {
        join: 'any',
        tests: [
          { path: 'weather.rainMm', is: 'above', value: 0 },
          { path: 'weather.snowMm', is: 'above', value: 0 },
        ],
      }
    case 'same-connector':
      return typeof connector === 'string'
        ? all({ path: 'hookup.connector', is: 'equals', value: connector })
        : all({ path: 'hookup.present', is: 'false' })
    case 'food-locker':
      return all({ path: 'site.foodLockerRequired', is: 'true' })
    case 'with-target':
      return all({ path: 'target.present', is: 'true' })
  }
}

const numberOf = (value: Json | undefined): number | null => (typeof value === 'number' ? value : null)

const SECONDS_A_MINUTE = 60

/** A rule of the user's own as the engine reads it; what is switched off is left out by the caller. */
export const ruleFromOwn = (own: OwnRule): Rule => ({
  id: own.id,
  phase: own.phase,
  text: { kind: 'own', step: own.step, reason: own.reason },
  when: own.when,
  reads: readsOf(own),
  after: own.after,
  durationS: own.durationMin * SECONDS_A_MINUTE,
})

const NIGHTS_UNUSED = 3 // field practice: three nights without a use

/**
 * Pieces to leave at home.
 * `nights`: for each night that has been lived through, in order, the ids of pieces not used; `keep`: ids that stay
 * whatever happens (emergency, required by law).
 * Ids not used on each of the last three such nights, sorted; none before three nights are noted.
 */
export function unusedPieces(
  nights: readonly { readonly unusedPieceIds: readonly string[] }[],
  keep: ReadonlySet<string>,
): readonly string[] {
  const last = nights.slice(-NIGHTS_UNUSED)
  const [first, ...others] = last
  if (first === undefined || last.length < NIGHTS_UNUSED) return []
  return [...new Set(first.unusedPieceIds)]
    .filter((id) => !keep.has(id) && others.every((night) => night.unusedPieceIds.includes(id)))
    .toSorted()
}
