/** What the checklist engine is given and what it gives back: rules over facts become ordered, timed steps. */
import type { Utc } from '../units/index.ts'

export type Phase =
  | 'before-leaving'
  | 'on-the-road'
  | 'arriving'
  | 'before-dark'
  | 'bedtime'
  | 'in-the-night'
  | 'morning'
  | 'at-the-target'
  | 'check-out'
  | 'back-home'

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

/** JsonLogic: https://jsonlogic.com */
export type Condition = Json

/** Facts are plain JSON; each rule lists the paths it reads. */
export type Facts = { readonly [key: string]: Json }

export type Rule = {
  readonly id: string
  readonly phase: Phase
  /** Text keys for a built-in rule; the user's own rules carry `text` instead. */
  readonly text:
    | { readonly kind: 'key'; readonly step: string; readonly reason: string }
    | { readonly kind: 'own'; readonly step: string; readonly reason: string }
  /** Fact paths it reads, dotted. */
  readonly reads: readonly string[]
  readonly when: Condition
  /** Dotted path of a list: one step for each element that passes `when` (the element is `item`). */
  readonly forEach?: string
  /** Dotted paths whose values the text shows, by placeholder name. */
  readonly params?: Readonly<Record<string, string>>
  readonly after: readonly string[]
  readonly durationS: number
  /** Names of moments in `Moments`. */
  readonly notBefore?: string
  readonly notBeforeOffsetS?: number
  readonly deadline?: string
  readonly deadlineOffsetS?: number
  readonly caution?: boolean
  /** One step for the whole trip: its key, and so its tick, outlives a change of first or last night. */
  readonly once?: boolean
  /** Skipped on one night, the step comes again on the next, in this phase. */
  readonly carriesTo?: Phase
  readonly source?: string
}

/** Named instants of one night: arrival, sunset, quietFrom, bedtime, wake, depart, checkOutBy and so on. */
export type Moments = Readonly<Record<string, Utc>>

/** A step that another engine asks for, such as one move of the changeover. */
export type GivenStep = Omit<Step, 'state' | 'startUtc' | 'latestStartUtc' | 'skipReason'>

export type ChecklistNight = {
  readonly nightId: string
  readonly facts: Facts
  readonly moments: Moments
  readonly given: readonly GivenStep[]
}

export type Tick = {
  readonly stepKey: string
  readonly state: 'done' | 'skipped'
  readonly atUtc: number
  readonly reason?: string
}

export type ChecklistInput = {
  readonly rules: readonly Rule[]
  readonly switchedOffRuleIds: readonly string[]
  readonly nights: readonly ChecklistNight[]
  readonly ticks: readonly Tick[]
  /** The night's rest at home before leaving: work that would run into it is done before. */
  readonly homeRest?: { readonly fromUtc: Utc; readonly toUtc: Utc }
}

export type Step = {
  /** Stable over re-planning: rule, night (`*` for the whole trip, `+` after a night the step came over to), thing. */
  readonly key: string
  readonly ruleId: string
  readonly nightId: string
  readonly phase: Phase
  readonly text: Rule['text']
  readonly params: Readonly<Record<string, string | number>>
  readonly after: readonly string[]
  readonly durationS: number
  readonly notBeforeUtc: Utc | null
  readonly deadlineUtc: Utc | null
  readonly deadlineName: string | null
  readonly caution: boolean
  readonly startUtc: Utc | null
  readonly latestStartUtc: Utc | null
  readonly state: 'open' | 'done' | 'skipped'
  /** Why it was skipped, in the user's words. */
  readonly skipReason: string | null
}

export type Conflict =
  | { readonly kind: 'circle'; readonly stepKeys: readonly string[] }
  /** A smallest set of steps that cannot be done in time; with all others done too they end `lateByS` late. */
  | { readonly kind: 'window'; readonly stepKeys: readonly string[]; readonly lateByS: number }
  /** `message` is a code of `BadRuleCode`, said by the text key `steps.conflict.<code>` with `{at}`. */
  | { readonly kind: 'bad-rule'; readonly ruleId: string; readonly message: string; readonly at: string }

export type ChecklistOutcome = {
  /** In the order to do them. */
  readonly steps: readonly Step[]
  readonly conflicts: readonly Conflict[]
}
