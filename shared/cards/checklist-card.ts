/** The checklist card: every step by phase with a box to tick, its reason and its time. */
import type { Block, CardDocument } from './model.ts'
import { noticeBlocks } from './notices.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput, OneNight, Step } from './plan-parts.ts'
import { stepItem } from './step-words.ts'

export const PHASES = [
  'before-leaving',
  'on-the-road',
  'arriving',
  'before-dark',
  'bedtime',
  'in-the-night',
  'morning',
  'at-the-target',
  'check-out',
  'back-home',
] as const satisfies readonly Step['phase'][]

export function checklistCard(input: CardInput): CardDocument {
  const { trip, text, paper, nightId } = input
  const nights = nightsOf(input)
  return {
    title: text.t('cards.checklist.title'),
    subtitle: trip.title,
    footer: text.t('cards.footer', { title: trip.title }),
    language: text.language,
    paper,
    blocks: [
      ...noticeBlocks(input, ['checklist', 'clock'], nightId),
      ...nights.flatMap((one, index) => nightBlocks(one, index, input)),
    ],
  }
}

function nightBlocks(one: OneNight, index: number, input: CardInput): readonly Block[] {
  const { plan, text } = input
  const steps = plan.checklist.steps.filter((step) => step.nightId === one.night.id)
  const heading: Block = {
    kind: 'heading',
    level: 1,
    text: `${text.date(one.night.date)} \u00b7 ${one.night.site.name}`,
  }
  const phases = PHASES.flatMap((phase): readonly Block[] => {
    const items = steps.filter((step) => step.phase === phase).map((step) => stepItem(step, plan, text))
    if (items.length === 0) return []
    const title = text.t('cards.checklist.phase', { phase: text.t(`phase.${phase}`), count: items.length })
    return [
      { kind: 'heading', level: 2, text: title },
      { kind: 'ticks', items },
    ]
  })
  return [...(index === 0 ? [] : [{ kind: 'page-break' } as const]), heading, ...phases]
}
