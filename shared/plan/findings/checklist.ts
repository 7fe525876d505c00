/** The checklist's own conflicts: steps that do not fit before their deadline, circles, rules that cannot be read. */
import type { ChecklistOutcome, Conflict } from '../../checklist/index.ts'
import type { Night } from '../../document/index.ts'
import type { Finding } from '../types.ts'
import { finding } from './finding.ts'

export function checklistFindings(nights: readonly Night[], checklist: ChecklistOutcome): readonly Finding[] {
  return checklist.conflicts.map((conflict) => conflictFinding(nights, checklist, conflict))
}

function conflictFinding(nights: readonly Night[], checklist: ChecklistOutcome, conflict: Conflict): Finding {
  const source = { area: 'checklist', nightId: null, path: ['checklist'] } as const
  switch (conflict.kind) {
    case 'bad-rule':
      return finding(
        source,
        'caution',
        'rule-unreadable',
        { rule: conflict.ruleId, message: conflict.message },
        conflict.ruleId,
      )
    case 'circle':
      return finding(
        source,
        'caution',
        'steps-in-a-circle',
        { count: conflict.stepKeys.length },
        conflict.stepKeys[0] ?? '',
      )
    case 'window': {
      const step = checklist.steps.find(({ key }) => key === conflict.stepKeys.at(-1))
      const nightId = step?.nightId ?? null
      const index = nights.findIndex(({ id }) => id === nightId)
      const params = { phase: step?.phase ?? 'morning', lateS: conflict.lateByS, count: conflict.stepKeys.length }
      return finding(
        { ...source, nightId, path: index < 0 ? ['checklist'] : ['nights', index] },
        'caution',
        'steps-too-long',
        params,
        step?.phase ?? '',
      )
    }
  }
}
