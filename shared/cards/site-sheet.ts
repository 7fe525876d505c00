/** The sheet for no coverage: where one is in two forms, whom to call, how to get in, where to charge, where to sleep indoors. */
import { cardOf, nightHeading } from './card-of.ts'
import { decimalCoordinates, sexagesimalCoordinates } from './coordinates.ts'
import type { Block, CardDocument, Column } from './model.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput, OneNight } from './plan-parts.ts'

const PAIR: readonly Column[] = [
  { title: '', share: 32, align: 'left' },
  { title: '', share: 68, align: 'left', strong: true },
]

export function siteSheet(input: CardInput): CardDocument {
  const { trip, text } = input
  const blocks = nightsOf(input).flatMap((one): readonly Block[] => [
    {
      kind: 'together',
      blocks: [nightHeading(one, input), { kind: 'table', columns: PAIR, rows: siteRows(one, input) }],
    },
  ])
  return cardOf(input, 'site', trip.title, [
    ...blocks,
    { kind: 'paragraph', tone: 'strong', text: text.t('cards.site.emergency') },
    { kind: 'paragraph', tone: 'plain', text: text.t('cards.site.emergencyHow') },
    {
      kind: 'blanks',
      labels: [text.t('cards.blank.number'), text.t('cards.blank.contact'), text.t('cards.blank.worry')],
    },
  ])
}

/** What is not known is said, so that one asks before leaving. */
export function siteRows({ night, plan }: OneNight, { text }: CardInput): readonly (readonly [string, string])[] {
  const { site } = night
  const unknown = text.t('word.not-known')
  const span = ({ from, to }: { readonly from: string; readonly to: string }): string =>
    `${text.clockText(from)} \u2013 ${text.clockText(to)}`
  const rows: (readonly [string, string])[] = [
    [text.t('cards.site.decimal'), decimalCoordinates(site.latitudeDeg, site.longitudeDeg)],
    [text.t('cards.site.sexagesimal'), sexagesimalCoordinates(site.latitudeDeg, site.longitudeDeg, text)],
    [text.t('cards.site.elevation'), text.elevation(site.elevationM).text],
    [text.t('cards.site.phone'), site.phone ?? unknown],
    [text.t('cards.site.gate'), site.gateCode ?? unknown],
    [text.t('cards.site.charger'), site.nearestCharger ?? unknown],
    [text.t('cards.site.indoor'), site.indoorFallback ?? unknown],
    [text.t('cards.time.arrive'), text.clock(plan.clock.arriveUtc, plan.clock.zone)],
  ]
  if (night.checkIn !== undefined) rows.push([text.t('cards.site.checkIn'), span(night.checkIn)])
  if (night.gateClosed !== undefined) {
    rows.push([text.t('cards.site.gateClosed'), span(night.gateClosed)])
  }
  if (night.target !== undefined) rows.push([text.t('cards.site.target'), night.target.name])
  return rows
}
