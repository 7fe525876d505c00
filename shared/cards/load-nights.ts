/** The nights on the load card: the bays as they stand at night, the moves there and back; then where every piece is. */
import { bayBlocks, headed } from './bay-blocks.ts'
import { moveNumbers, withBinMoves } from './bin-move-rows.ts'
import type { MoveRow } from './bin-move-rows.ts'
import type { Block, Column } from './model.ts'
import type { Names } from './names.ts'
import { notice } from './notices.ts'
import { placementWords, placeWords } from './places.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput, Layout, Move, NightPacking, OneNight, Placement } from './plan-parts.ts'

function bedNightBlocks(input: CardInput, names: Names, one: OneNight): readonly Block[] {
  const { text, plan } = input
  const { packing } = one
  if (packing === null) return []
  const { drive } = plan.packing
  const there = duskRows(packing, drive, names, input)
  const back = dawnRows(packing, names, input)
  const count = (moves: readonly Move[]): string => text.t('cards.moves.count', { count: moves.length })
  return [
    { kind: 'page-break' },
    { kind: 'heading', level: 1, text: nightTitle(input, one) },
    { kind: 'heading', level: 2, text: `${text.t('cards.moves.dusk')}: ${count(packing.changeover.moves)}` },
    ...moveTable(there, input),
    ...packing.changeover.stuckUnitIds.map((id) =>
      notice(text, 'shortfall', text.t('cards.moves.stuck', { unit: names.unit(id) })),
    ),
    ...headed(2, text.t('cards.load.bed'), bayBlocks(input, names, packing.bed, drive)),
    { kind: 'paragraph', text: text.t('cards.load.sameBays'), tone: 'small' },
    { kind: 'heading', level: 2, text: `${text.t('cards.moves.morning')}: ${count(packing.changeback.moves)}` },
    ...moveTable(back, input),
  ]
}

/** Each night; one that stands and moves as an earlier one is told in a line. */
export function nightBlocks(input: CardInput, names: Names): readonly Block[] {
  const { text } = input
  const nights = nightsOf(input)
  return nights.flatMap((one, index) => {
    const like = nights.slice(0, index).find((earlier) => sameNight(earlier, one))
    if (like === undefined) return bedNightBlocks(input, names, one)
    const date = text.date(like.night.date)
    return [
      { kind: 'heading', level: 1, text: nightTitle(input, one) },
      { kind: 'paragraph', text: text.t('cards.load.likeNight', { date }), tone: 'plain' },
    ] as const
  })
}

const nightTitle = ({ text }: CardInput, { night }: OneNight): string =>
  text.t('cards.load.night', { date: text.date(night.date), site: night.site.name })

const sameNight = ({ packing: a }: OneNight, { packing: b }: OneNight): boolean =>
  a !== null &&
  b !== null &&
  JSON.stringify([a.bed.placements, a.bed.away, a.changeover, a.changeback]) ===
    JSON.stringify([b.bed.placements, b.bed.away, b.changeover, b.changeback])

/** Moves at dusk in order, pieces taken out of bins among them. */
export const duskRows = (packing: NightPacking, drive: Layout, names: Names, input: CardInput): readonly MoveRow[] =>
  withBinMoves(moveRows(packing.changeover.moves, drive, names, input), packing.changeover, names, input, 'out')

/** Moves in the morning in order, pieces put back into bins among them. */
export const dawnRows = (packing: NightPacking, names: Names, input: CardInput): readonly MoveRow[] =>
  withBinMoves(moveRows(packing.changeback.moves, packing.bed, names, input), packing.changeback, names, input, 'back')

/** Moves in order, each place told as it is at that moment. */
function moveRows(moves: readonly Move[], start: Layout, names: Names, { text }: CardInput): readonly MoveRow[] {
  let standing: readonly Placement[] = start.placements
  return moves.map((move) => {
    const from = placementWords(move.from, standing, names, text)
    standing = standing.filter((unit) => unit.unitId !== move.unitId)
    if ('bayId' in move.to) standing = [...standing, move.to]
    const place = placementWords(move.to, standing, names, text)
    return {
      number: String(names.number(move.unitId)),
      unit: names.unit(move.unitId),
      from,
      to: move.waits ? text.t('cards.moves.waits', { place }) : place,
      door: move.door ?? '',
    }
  })
}

function moveTable(rows: readonly MoveRow[], { text }: CardInput): readonly Block[] {
  if (rows.length === 0) return [{ kind: 'paragraph', text: text.t('cards.moves.none'), tone: 'plain' }]
  const numbers = moveNumbers(rows)
  const columns: readonly Column[] = [
    { title: '', share: 5, align: 'left' },
    { title: text.t('cards.column.unit'), share: 28, align: 'left', strong: true },
    { title: text.t('cards.column.from'), share: 27, align: 'left' },
    { title: text.t('cards.column.to'), share: 27, align: 'left', strong: true },
    { title: text.t('cards.column.door'), share: 15, align: 'left' },
  ]
  return [
    {
      kind: 'table',
      columns,
      rows: rows.map((row, index) => [
        numbers[index] ?? '',
        row.number === null ? row.unit : `${row.number} ${row.unit}`,
        row.from,
        row.to,
        row.door,
      ]),
    },
  ]
}

/** Nights that stand beside one another in one table. */
const NIGHTS_A_TABLE = 3

/** Every piece by name, with the bin it rides in and its place by day and on each night. */
export function whereBlocks(input: CardInput, names: Names): readonly Block[] {
  const { plan, trip, text } = input
  const nights = nightsOf(input).flatMap(({ night, packing }) =>
    packing === null ? [] : [{ night, bed: packing.bed }],
  )
  const collator = new Intl.Collator(trip.preferences.language)
  const pieces = wherePieces(plan.packing.units, names.piece).toSorted((a, b) =>
    collator.compare(names.piece(a.pieceId), names.piece(b.pieceId)),
  )
  const tables = Array.from({ length: Math.ceil(nights.length / NIGHTS_A_TABLE) }, (_, at): Block => {
    const some = nights.slice(at * NIGHTS_A_TABLE, (at + 1) * NIGHTS_A_TABLE)
    const nightTitleOf = (date: string): string =>
      nights.length === 1 ? text.t('cards.column.night') : text.t('cards.column.nightOf', { date: text.date(date) })
    const columns: readonly Column[] = [
      { title: text.t('cards.column.piece'), share: 25, align: 'left', strong: true },
      { title: text.t('cards.column.in'), share: 17, align: 'left' },
      { title: text.t('cards.column.drive'), share: 27, align: 'left' },
      ...some.map(({ night }) => ({ title: nightTitleOf(night.date), share: 27, align: 'left' }) as const),
    ]
    const rows = pieces.map(({ pieceId, unitId, inBin }) => [
      names.piece(pieceId),
      inBin ? `${names.number(unitId)} ${names.unit(unitId)}` : text.t('cards.loose', { number: names.number(unitId) }),
      placeWords(unitId, plan.packing.drive, names, text),
      ...some.map(({ bed }) => placeWords(pieceOrBin(pieceId, unitId, bed), bed, names, text)),
    ])
    return { kind: 'table', columns, rows }
  })
  return tables.length === 0 ? [] : [{ kind: 'heading', level: 1, text: text.t('cards.load.where') }, ...tables]
}

type WherePiece = { readonly pieceId: string; readonly unitId: string; readonly inBin: boolean }

export const wherePieces = (
  units: CardInput['plan']['packing']['units'],
  name: (pieceId: string) => string,
): readonly WherePiece[] =>
  units
    .flatMap((unit) => unit.pieceIds.map((pieceId) => ({ pieceId, unitId: unit.id, inBin: unit.kind === 'bin' })))
    .toSorted((a, b) => (name(a.pieceId) < name(b.pieceId) ? -1 : 1))

/** A piece that is taken out of its bin at night has a place of its own. */
export const pieceOrBin = (pieceId: string, unitId: string, bed: Layout): string =>
  bed.away.some((one) => one.unitId === pieceId) || bed.placements.some((one) => one.unitId === pieceId)
    ? pieceId
    : unitId
