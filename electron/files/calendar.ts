/** The steps that have a deadline, as a calendar file: the other few hundred would only bury them. */
import { createHash } from 'node:crypto'
import type { CardInput } from '../../shared/cards/index.ts'
import { stepWords } from '../../shared/cards/step-words.ts'
import { toICalendar } from '../../shared/host/index.ts'
import type { CalendarEntry } from '../../shared/host/index.ts'
import type { Utc } from '../../shared/units/index.ts'

/** A reminder this long before the start, s. */
const REMIND_S = 600

export function calendarOf({ plan, trip, text }: CardInput, stampUtc: Utc): string {
  const sites = new Map(trip.nights.map((night) => [night.id, night.site.name]))
  const entries = plan.checklist.steps.flatMap((step): readonly CalendarEntry[] => {
    if (step.deadlineUtc === null || step.startUtc === null || step.state !== 'open') return []
    const words = stepWords(step, plan, text)
    return [
      {
        key: step.key,
        startUtc: step.startUtc,
        durationS: step.durationS,
        summary: words.step,
        description: words.reason,
        categories: [],
        location: sites.get(step.nightId) ?? null,
        alarmBeforeS: REMIND_S,
      },
    ]
  })
  return toICalendar({ name: trip.title, language: text.language, tripId: idOf(trip), stampUtc, entries })
}

/** The same for the same trip however it is edited, as long as its title and first night stay. */
const idOf = (trip: CardInput['trip']): string =>
  createHash('sha256')
    .update(`${trip.title} ${trip.nights[0]?.date ?? ''}`)
    .digest('hex')
    .slice(0, 16)
