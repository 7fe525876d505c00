/** What the standards for people awake say of a night, in sentences: a value inside their range, "not known" beyond it. */
import type { NightPlan } from '../plan/index.ts'
import type { Text } from '../text/index.ts'

type Standards = NonNullable<NightPlan['standards']>

export function standardSentences({ standards, clock }: NightPlan, text: Text): readonly string[] {
  if (standards === undefined) return []
  const { zone } = clock
  return [
    saySitting(standards.sitting, zone, text),
    ...(standards.asleep.vote === null && standards.asleep.leastClo === null ? [text.t('cards.standards.asleep')] : []),
    ...standards.outside.map((work) => sayOutside(work, zone, text)),
  ]
}

function saySitting({ atUtc, vote, dissatisfied01 }: Standards['sitting'], zone: string, text: Text): string {
  if (vote === null || dissatisfied01 === null) return text.t('cards.standards.sittingUnknown', { atUtc, zone })
  const rounded = Math.round(vote * 10) / 10
  return text.t('cards.standards.sitting', { atUtc, zone, vote: rounded, share01: dissatisfied01 })
}

function sayOutside(work: Standards['outside'][number], zone: string, text: Text): string {
  const { atUtc, leastClo, neutralClo, windChillC } = work
  const clothes =
    leastClo === null || neutralClo === null
      ? text.t('cards.standards.outsideUnknown', { atUtc, zone })
      : text.t('cards.standards.outside', { atUtc, zone, leastClo, neutralClo })
  return windChillC === null ? clothes : `${clothes} ${text.t('cards.standards.windChill', { tempC: windChillC })}`
}
