/** The verdict in one sentence with its numbers. */
import type { Plan } from '../plan/index.ts'
import type { Text } from '../text/index.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput } from './plan-parts.ts'

/** Of the whole trip, or of the one night the card is about. */
export function verdictWords(input: CardInput): string {
  const { plan, trip, text, nightId } = input
  const index = trip.nights.findIndex((night) => night.id === nightId)
  const zone = nightsOf(input)[0]?.plan.clock.zone ?? 'UTC'
  const night = plan.nightVerdicts[index]
  if (night !== undefined) return sayVerdict(night, zone, text)
  const said = sayVerdict(plan.verdict, zone, text)
  return trip.nights.length === 1 ? said : `${text.t('verdict.worst', { count: trip.nights.length })} ${said}`
}

/** Holds or not, and the numbers that say why; also the headless command's first line. */
export function sayVerdict(verdict: Plan['verdict'], zone: string, text: Text): string {
  const parts = [
    verdict.depart01 === null ? null : text.t('verdict.depart', { depart01: verdict.depart01 }),
    verdict.legMarginWh === null ? null : margin(verdict.legMarginWh, text),
    text.t('verdict.coldest', { coldestC: verdict.coldestBedC, coldestUtc: verdict.coldestBedUtc, zone }),
    verdict.movesAtDusk === 0 ? text.t('verdict.movesNone') : text.t('verdict.moves', { count: verdict.movesAtDusk }),
  ].filter((part) => part !== null)
  const head = verdict.holds ? text.t('verdict.holds') : text.t('verdict.fails', { count: verdict.shortfalls })
  return `${head} ${parts.join('; ')}.`
}

const margin = (marginWh: number, text: Text): string =>
  marginWh >= 0 ? text.t('verdict.margin', { marginWh }) : text.t('verdict.short', { shortWh: -marginWh })
