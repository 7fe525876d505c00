/** What every card has alike: its title, footer, language and paper, and how a night is headed. */
import type { Block, CardDocument } from './model.ts'
import type { CardInput, OneNight } from './plan-parts.ts'

type CardName = 'load' | 'night' | 'site' | 'checklist'

export const cardOf = (
  { trip, text, paper }: CardInput,
  name: CardName,
  subtitle: string,
  blocks: readonly Block[],
): CardDocument => ({
  title: text.t(`cards.${name}.title`),
  subtitle,
  footer: text.t('cards.footer', { title: trip.title }),
  language: text.language,
  paper,
  blocks,
})

export const nightHeading = ({ night }: OneNight, { text }: CardInput): Block => ({
  kind: 'heading',
  level: 1,
  text: `${text.date(night.date)} \u00b7 ${night.site.name}`,
})
