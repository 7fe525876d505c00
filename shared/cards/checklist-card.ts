/** The checklist card: every step by phase with a box to tick, its reason and its time. */
import { PHASES } from '../plan/index.ts'
import { cardOf, nightHeading } from './card-of.ts'
import type { Block, CardDocument } from './model.ts'
import { noticeBlocks } from './notices.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput, OneNight } from './plan-parts.ts'
import { stepItem } from './step-words.ts'

export function checklistCard(input: CardInput): CardDocument {
  const nights = nightsOf(input)
  return cardOf(input, 'checklist', input.trip.title, [
    ...noticeBlocks(input, ['checklist', 'clock'], input.nightId),
    ...nights.flatMap((one, index) => nightBlocks(one, index, input)),
  ])
}

function nightBlocks(one: OneNight, index: number, input: CardInput): readonly Block[] {
  const { plan, text } = input
  const steps = plan.checklist.steps.filter((step) => step.nightId === one.night.id)
  const phases = PHASES.flatMap((phase): readonly Block[] => {
    const items = steps.filter((step) => step.phase === phase).map((step) => stepItem(step, plan, text))
    if (items.length === 0) return []
    const title = text.t('cards.checklist.phase', { phase: text.t(`phase.${phase}`), count: items.length })
    return [
      { kind: 'heading', level: 2, text: title },
      { kind: 'ticks', items },
    ]
  })
  return [...(index === 0 ? [] : [{ kind: 'page-break' } as const]), nightHeading(one, input), ...phases]
}
