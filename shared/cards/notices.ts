/** Findings as notices on a card, worst first, each sentence once. */
import type { Text } from '../text/index.ts'
import type { Block } from './model.ts'
import { findingsOf } from './plan-parts.ts'
import type { CardInput, Finding } from './plan-parts.ts'

export const notice = (text: Text, tone: Finding['severity'], sentence: string): Block => ({
  kind: 'notice',
  tone,
  label: text.t(`cards.tone.${tone}`),
  text: sentence,
})

export function noticeBlocks(
  { plan, text }: CardInput,
  areas: readonly Finding['area'][],
  nightId: string | null,
): readonly Block[] {
  const seen = new Set<string>()
  return findingsOf(plan, areas, nightId).flatMap((finding): readonly Block[] => {
    const sentence = text.problem(finding.problem)
    if (seen.has(sentence)) return []
    seen.add(sentence)
    return [notice(text, finding.severity, sentence)]
  })
}
