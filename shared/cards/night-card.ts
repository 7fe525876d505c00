/** The night card: verdict, times, charts, supply, sleepers, next leg, fault nights, pitch and cautions of each night. */
import { askedA } from './asked-current.ts'
import { cardOf, nightHeading } from './card-of.ts'
import { adviceBlocks, drillBlocks, glassBlocks, sleeperSentences } from './night-advice.ts'
import { nightCharts } from './night-charts.ts'
import { faultBlocks, legBlocks, pitchBlocks, sleeperBlocks, supplyBlocks } from './night-blocks.ts'
import type { Block, CardDocument, Column } from './model.ts'
import { namesOf } from './names.ts'
import { noticeBlocks } from './notices.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput, OneNight } from './plan-parts.ts'
import { standardSentences } from './standard-words.ts'
import { verdictWords } from './verdict-words.ts'

export function nightCard(input: CardInput): CardDocument {
  const { trip, text, plan } = input
  const names = namesOf(trip, plan.packing)
  const nights = nightsOf(input)
  const blocks = nights.flatMap((one, index): readonly Block[] => {
    const alone: CardInput = { ...input, nightId: one.night.id }
    return [
      ...(index === 0 ? [] : [{ kind: 'page-break' } as const]),
      nightHeading(one, input),
      { kind: 'paragraph', text: verdictWords(alone), tone: 'strong' },
      { kind: 'figures', items: figuresOf(one, input) },
      ...noticeBlocks(alone, ['night', 'leg', 'site', 'clock'], one.night.id),
      { kind: 'paragraph', text: text.t('cards.night.caution'), tone: 'small' },
      { kind: 'heading', level: 2, text: text.t('cards.night.times') },
      timesTable(one, input),
      ...nightCharts(one, input),
      ...supplyBlocks(one, input),
      ...sleeperBlocks(one, input, names),
      ...sleeperSentences(one, input),
      ...standardSentences(one.plan, text).map((line) => ({ kind: 'paragraph', tone: 'small', text: line }) as const),
      ...glassBlocks(one, input),
      ...legBlocks(one, input),
      ...adviceBlocks(one, input),
      ...faultBlocks(one, input),
      ...drillBlocks(one, input),
      ...pitchBlocks(one, input),
    ]
  })
  return cardOf(input, 'night', `${trip.title} \u00b7 ${trip.vehicle.name}`, blocks)
}

export function figuresOf({ plan }: OneNight, { text }: CardInput): readonly { label: string; value: string }[] {
  const { outcome } = plan
  const items = [
    { label: text.t('cards.figure.coldestOut'), value: text.temperature(outcome.coldestOutsideC).text },
    { label: text.t('cards.figure.coldestBed'), value: text.temperature(outcome.coldestBedC).text },
  ]
  if (outcome.supply !== null) {
    items.push({ label: text.t('cards.figure.ask'), value: text.current(askedA(plan)).text })
  }
  const depart01 = outcome.depart01 ?? outcome.leisureDepart01
  if (depart01 !== null) items.push({ label: text.t('cards.figure.depart'), value: text.percent(depart01).text })
  if (outcome.leg !== null)
    items.push({ label: text.t('cards.figure.inHand'), value: text.energy(outcome.leg.marginWh).text })
  return items
}

export function timesOf({ plan }: OneNight, { text }: CardInput): readonly (readonly [label: string, clock: string])[] {
  const { clock } = plan
  const { zone } = clock
  const moments = [
    ['arrive', clock.arriveUtc],
    ['sunset', clock.sun.sunsetUtc],
    ['dusk', clock.sun.civilDuskUtc],
    ['quietFrom', clock.quietFromUtc],
    ['gateFrom', clock.gateFromUtc],
    ['banFrom', clock.banFromUtc],
    ['bedtime', clock.bedtimeUtc],
    ['wake', clock.wakeUtc],
    ['dawn', clock.sun.civilDawnUtc],
    ['gateTo', clock.gateToUtc],
    ['banTo', clock.banToUtc],
    ['quietTo', clock.quietToUtc],
    ['depart', clock.departUtc],
    ['target', clock.beAtTargetUtc],
    ['sunrise', clock.sun.sunriseUtc],
    ['checkOut', clock.checkOutUtc],
  ] as const
  return moments
    .flatMap(([key, at]) => (at === null ? [] : [{ key, at }]))
    .toSorted((a, b) => a.at - b.at)
    .map(({ key, at }) => [text.t(`cards.time.${key}`), text.clock(at, zone)] as const)
}

/** Two pairs of columns, read downwards. */
function timesTable(one: OneNight, input: CardInput): Block {
  const times = timesOf(one, input)
  const half = Math.ceil(times.length / 2)
  const rows = times.slice(0, half).map((left, index) => {
    const right = times[half + index]
    return [left[1], left[0], right?.[1] ?? '', right?.[0] ?? '']
  })
  const time: Column = { title: '', share: 14, align: 'right', strong: true }
  const what: Column = { title: '', share: 36, align: 'left' }
  return { kind: 'table', columns: [time, what, time, what], rows }
}
