/** Phases that wait for their end: bedtime for the evening, the work at home for the hour of leaving. */
import { momentAt } from './expand.ts'
import type { Draft } from './expand.ts'
import { PHASE_TO } from './phases.ts'
import type { ChecklistInput, ChecklistNight, Phase, Tick } from './types.ts'
import { S_PER_MINUTE } from '../units/index.ts'
import type { Utc } from '../units/index.ts'

/** Time in hand before the end of a phase when its steps begin, common practice. */
const SPARE_S: Readonly<Partial<Record<Phase, number>>> = {
  bedtime: 10 * S_PER_MINUTE,
  'before-leaving': 30 * S_PER_MINUTE,
}

type Steps = {
  readonly drafts: readonly Draft[]
  readonly nights: readonly ChecklistNight[]
  readonly tickOf: ReadonlyMap<string, Tick>
  readonly homeRest: ChecklistInput['homeRest']
}

/**
 * The steps, those of a phase that waits not before the instant at which it begins: then all that are open just end
 * before the earliest deadline among them, with a little in hand. Work at home that would run into the rest before
 * leaving is done before that rest.
 */
export function withLateStart(steps: Steps): readonly Draft[] {
  const homeFromUtc = homeStart(steps)
  const bedFromUtc = new Map(
    steps.nights.map(({ nightId, moments }) => {
      const drafts = steps.drafts.filter((draft) => draft.nightId === nightId)
      return [nightId, startOf('bedtime', momentAt(moments, PHASE_TO.bedtime), { ...steps, drafts })?.fromUtc ?? null]
    }),
  )
  return steps.drafts.map((draft) => {
    if (draft.phase === 'bedtime') return waiting(draft, bedFromUtc.get(draft.nightId) ?? null)
    return draft.phase === 'before-leaving' ? waiting(draft, homeFromUtc) : draft
  })
}

function homeStart(steps: Steps): Utc | null {
  const leaveUtc = steps.nights.map(({ moments }) => momentAt(moments, 'leaveHome')).find((at) => at !== null) ?? null
  const start = startOf('before-leaving', leaveUtc, steps)
  if (start === null) return null
  const { homeRest: rest } = steps
  return rest === undefined || start.fromUtc >= rest.toUtc
    ? start.fromUtc
    : (Math.min(start.fromUtc, rest.fromUtc - start.takesS) as Utc)
}

/** When the open steps of a phase begin so that they end in time, and how long they take; null where nothing tells. */
function startOf(
  phase: Phase,
  endUtc: Utc | null,
  { drafts, tickOf }: Pick<Steps, 'drafts' | 'tickOf'>,
): { readonly fromUtc: Utc; readonly takesS: number } | null {
  if (endUtc === null) return null
  const open = drafts.filter((draft) => draft.phase === phase && !tickOf.has(draft.key))
  const takesS = open.reduce((sum, { durationS }) => sum + durationS, 0)
  const dueUtc = Math.min(endUtc, ...open.flatMap(({ deadlineUtc }) => deadlineUtc ?? []))
  return { fromUtc: (dueUtc - takesS - (SPARE_S[phase] ?? 0)) as Utc, takesS }
}

const waiting = (draft: Draft, fromUtc: Utc | null): Draft =>
  fromUtc === null || (draft.notBeforeUtc !== null && draft.notBeforeUtc >= fromUtc)
    ? draft
    : { ...draft, notBeforeUtc: fromUtc }
