/** Renders each sheet of a plan to the bytes of a file. */
import { checklistCard, loadCard, nightCard, pocketSheet } from '../../shared/cards/index.ts'
import type { CardDocument, CardInput } from '../../shared/cards/index.ts'
import { ok } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'
import type { SheetFile, Sheets } from '../../shared/host/index.ts'
import { createText } from '../../shared/text/index.ts'
import { formatIso } from '../../shared/units/index.ts'
import type { Utc } from '../../shared/units/index.ts'
import { calendarOf } from './calendar.ts'
import { renderPdf } from './pdf/index.ts'

const utf8 = new TextEncoder()

export function createSheets(): Sheets {
  return {
    render: async (trip, plan, sheet, atUtc): Promise<Result<SheetFile>> => {
      const { language, units, paper } = trip.preferences
      const input: CardInput = { trip, plan, text: createText(language, units), nightId: null, paper }
      switch (sheet) {
        case 'load':
          return pdf('load', loadCard(input), atUtc)
        case 'night':
          return pdf('night', nightCard(input), atUtc)
        case 'checklist':
          return pdf('checklist', checklistCard(input), atUtc)
        case 'pocket':
          return text('pocket.html', 'text/html', pocketSheet(input))
        case 'calendar':
          return text('calendar.ics', 'text/calendar', calendarOf(input, atUtc))
        case 'plan':
          return text('plan.json', 'application/json', `${JSON.stringify(plan, null, 2)}\n`)
      }
    },
  }
}

async function pdf(name: string, document: CardDocument, atUtc: Utc): Promise<Result<SheetFile>> {
  return ok({ name: `${name}.pdf`, mediaType: 'application/pdf', bytes: await renderPdf(document, formatIso(atUtc)) })
}

const text = (name: string, mediaType: string, content: string): Result<SheetFile> =>
  ok({ name, mediaType, bytes: utf8.encode(content) })
