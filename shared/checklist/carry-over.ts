/** What was put off on one night comes again on the next. */
import type { Draft } from './expand.ts'
import type { ChecklistNight, Rule, Tick } from './types.ts'

/** Marks the night in the key of a step that came over; no id of a night contains it. */
const FROM_BEFORE = '+'

/**
 * Steps that come over from the night before.
 * `drafts`: the steps of all nights; `ticks`: the last tick of each step key.
 * For each step that was skipped and whose rule carries over, one step on the following night, open again, unless that
 * night asks for the same step anyway; skipped there too, it goes on to the night after. Nothing follows the last night.
 */
export function carryOver(
  drafts: readonly Draft[],
  rules: readonly Rule[],
  nights: readonly ChecklistNight[],
  ticks: ReadonlyMap<string, Tick>,
): readonly Draft[] {
  const ruleOf = new Map(rules.map((rule) => [rule.id, rule]))
  const keys = new Set(drafts.map((draft) => draft.key))
  const carried: Draft[] = []
  for (const [index, night] of nights.entries()) {
    const next = nights[index + 1]
    if (next === undefined) break
    for (const draft of [...drafts, ...carried]) {
      const phase = ruleOf.get(draft.ruleId)?.carriesTo
      if (draft.nightId !== night.nightId || phase === undefined) continue
      if (ticks.get(draft.key)?.state !== 'skipped') continue
      const [ruleId, , ...thing] = draft.key.split(':')
      if (keys.has([ruleId, next.nightId, ...thing].join(':'))) continue
      carried.push({
        ...draft,
        key: [ruleId, `${next.nightId}${FROM_BEFORE}`, ...thing].join(':'),
        nightId: next.nightId,
        phase,
        after: [],
        notBeforeUtc: null,
        deadlineUtc: null,
        deadlineName: null,
      })
    }
  }
  return carried
}
