/** The checklist card: every step by phase with a box to tick, its reason and its time. */
import { PHASES, stepsOfNight } from '../plan/index.ts'
import { cardOf, nightHeading } from './card-of.ts'
import type { Block, CardDocument, TickItem } from './model.ts'
import { noticeBlocks } from './notices.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput, OneNight } from './plan-parts.ts'
import { phaseWords, stepItem } from './step-words.ts'

export function checklistCard(input: CardInput): CardDocument {
  const nights = nightsOf(input)
  return cardOf(input, 'checklist', input.trip.title, [
    ...noticeBlocks(input, ['checklist', 'clock'], input.nightId),
    ...nights.flatMap((one, index) => nightBlocks(one, index, input)),
  ])
}

function nightBlocks(one: OneNight, index: number, input: CardInput): readonly Block[] {
  const { plan, text } = input
  const steps = stepsOfNight(plan, one.night.id)
  const phases = PHASES.flatMap((phase): readonly Block[] => {
    const items = sayingOnce(steps.filter((step) => step.phase === phase).map((step) => stepItem(step, plan, text)))
    if (items.length === 0) return []
    const named = phaseWords(plan, { nightId: one.night.id, phase }, text)
    const title = text.t('cards.checklist.phase', { phase: named, count: items.length })
    return [
      { kind: 'heading', level: 2, text: title },
      { kind: 'ticks', items },
    ]
  })
  return [...(index === 0 ? [] : [{ kind: 'page-break' } as const]), nightHeading(one, input), ...phases]
}

/** A reason that the step before has just given is not said again: twenty moves are made for one. */
const sayingOnce = (items: readonly TickItem[]): readonly TickItem[] =>
  items.map((item, index) => (item.detail === items[index - 1]?.detail ? { ...item, detail: null } : item))
