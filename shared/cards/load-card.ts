/** The load card: masses, drive layout with drawings, order to load, what each bin holds, and each night's bed layout, moves and places. */
import { bayBlocks, headed } from './bay-blocks.ts'
import { cardOf } from './card-of.ts'
import { nightBlocks, whereBlocks } from './load-nights.ts'
import { leftOutBlocks } from './left-out-blocks.ts'
import { massBlocks } from './load-masses.ts'
import type { Block, CardDocument, Column } from './model.ts'
import { namesOf } from './names.ts'
import type { Names } from './names.ts'
import { noticeBlocks } from './notices.ts'
import type { CardInput } from './plan-parts.ts'
import { placeWords } from './places.ts'
import { stepBlocks } from './step-blocks.ts'
import { verdictWords } from './verdict-words.ts'

export function loadCard(input: CardInput): CardDocument {
  const { plan, trip, text, nightId } = input
  const names = namesOf(trip, plan.packing)
  const blocks: Block[] = [
    { kind: 'paragraph', text: verdictWords(input), tone: 'strong' },
    ...noticeBlocks(input, ['load'], nightId),
    ...leftOutBlocks(input, names),
    ...massBlocks(input, names),
    ...headed(1, text.t('cards.load.drive'), bayBlocks(input, names, plan.packing.drive, null)),
    ...orderBlocks(input, names),
    ...stepBlocks(input, names),
    ...binBlocks(input, names),
    ...nightBlocks(input, names),
    ...whereBlocks(input, names),
    { kind: 'paragraph', text: text.t('cards.load.caution'), tone: 'small' },
  ]
  return cardOf(input, 'load', `${trip.title} \u00b7 ${trip.vehicle.name}`, blocks)
}

/** First in to last in; what must come out first to reach it stands beside it. */
function orderBlocks({ plan, text }: CardInput, names: Names): readonly Block[] {
  const { packing } = plan
  const units = new Map(packing.units.map((unit) => [unit.id, unit]))
  const placed = packing.loadingOrder.filter((id) => packing.drive.placements.some((one) => one.unitId === id))
  const rows = placed.map((id) => {
    const unit = units.get(id)
    const reach = packing.driveReach.find((one) => one.unitId === id)
    const first = reach === undefined ? [] : reach.blockedBy.map((other) => String(names.number(other)))
    return [
      String(names.number(id)),
      names.unit(id),
      placeWords(id, packing.drive, names, text),
      first.join(', '),
      unit === undefined ? '' : text.mass(unit.massG).text,
    ]
  })
  if (rows.length === 0) return []
  const columns: readonly Column[] = [
    { title: text.t('cards.column.number'), share: 6, align: 'right', strong: true },
    { title: text.t('cards.column.unit'), share: 30, align: 'left', strong: true },
    { title: text.t('cards.column.place'), share: 40, align: 'left' },
    { title: text.t('cards.column.first'), share: 15, align: 'left' },
    { title: text.t('cards.column.mass'), share: 11, align: 'right' },
  ]
  return [
    { kind: 'heading', level: 2, text: text.t('cards.load.order') },
    { kind: 'paragraph', text: text.t('cards.load.orderHow'), tone: 'small' },
    { kind: 'table', columns, rows },
  ]
}

function binBlocks({ plan, text }: CardInput, names: Names): readonly Block[] {
  const rows = plan.packing.units
    .filter((unit) => unit.kind === 'bin')
    .toSorted((a, b) => names.number(a.id) - names.number(b.id))
    .map((unit) => [
      String(names.number(unit.id)),
      names.unit(unit.id),
      unit.pieceIds.map((id) => names.piece(id)).join(' \u00b7 '),
      text.mass(unit.massG).text,
    ])
  if (rows.length === 0) return []
  const columns: readonly Column[] = [
    { title: text.t('cards.column.number'), share: 6, align: 'right', strong: true },
    { title: text.t('cards.column.bin'), share: 22, align: 'left', strong: true },
    { title: text.t('cards.column.contents'), share: 60, align: 'left' },
    { title: text.t('cards.column.mass'), share: 12, align: 'right' },
  ]
  return [
    { kind: 'heading', level: 2, text: text.t('cards.load.bins') },
    { kind: 'table', columns, rows },
  ]
}
