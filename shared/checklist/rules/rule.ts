/** How a built-in rule is written: its texts and the facts it reads follow from the rest. */
import type { MomentName } from '../facts.ts'
import type { Condition, Phase, Rule } from '../types.ts'
import { readsOf } from '../reads.ts'

type RuleBody = {
  readonly when: Condition
  readonly durationS: number
  readonly forEach?: string
  readonly params?: Readonly<Record<string, string>>
  readonly after?: readonly string[]
  readonly notBefore?: MomentName
  readonly notBeforeOffsetS?: number
  readonly deadline?: MomentName
  readonly deadlineOffsetS?: number
  readonly caution?: boolean
  readonly carriesTo?: Phase
  /** For the whole trip, whichever night asks first. */
  readonly once?: boolean
}

/** What is asked for the first or last night only belongs to the trip, whichever night that is after a change. */
const TRIP_FACTS: ReadonlySet<string> = new Set(['trip.firstNight', 'trip.lastNight'])

/** A maker of rules for one phase. */
export const rulesOf =
  (phase: Phase) =>
  (id: string, body: RuleBody): Rule => {
    const reads = readsOf(body)
    return {
      ...body,
      id,
      phase,
      text: { kind: 'key', step: `steps.${id}.step`, reason: `steps.${id}.reason` },
      after: body.after ?? [],
      reads,
      once:
        body.once ??
        ((phase === 'before-leaving' || phase === 'back-home') && reads.some((path) => TRIP_FACTS.has(path))),
    }
  }
