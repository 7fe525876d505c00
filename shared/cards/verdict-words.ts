/** The verdict in one sentence with its numbers. */
import type { Plan } from '../plan/index.ts'
import type { Text } from '../text/index.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput } from './plan-parts.ts'

/** Of the whole trip, or of the one night the card is about. */
export function verdictWords(input: CardInput): string {
  const { plan, trip, text, nightId } = input
  const index = trip.nights.findIndex((night) => night.id === nightId)
  const verdict = index === -1 ? plan.verdict : (plan.nightVerdicts[index] ?? plan.verdict)
  const zone = nightsOf(input)[0]?.plan.clock.zone ?? 'UTC'
  return sayVerdict(verdict, zone, text)
}

function sayVerdict(verdict: Plan['verdict'], zone: string, text: Text): string {
  const parts: string[] = []
  if (verdict.depart01 !== null) parts.push(text.t('cards.verdict.charge', { depart01: verdict.depart01 }))
  if (verdict.legMarginWh !== null) {
    parts.push(
      verdict.legMarginWh >= 0
        ? text.t('cards.verdict.inHand', { marginWh: verdict.legMarginWh })
        : text.t('cards.verdict.short', { shortWh: -verdict.legMarginWh }),
    )
  }
  parts.push(
    text.t('cards.verdict.coldest', { coldestC: verdict.coldestBedC, atUtc: verdict.coldestBedUtc, zone }),
    text.t('cards.verdict.moves', { count: verdict.movesAtDusk }),
  )
  const head = verdict.holds
    ? text.t('cards.verdict.holds')
    : text.t('cards.verdict.fails', { count: verdict.shortfalls })
  return `${head} ${parts.join('; ')}.`
}
