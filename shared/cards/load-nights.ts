/** One night on the load card: the bays as they stand at night, the moves there and back, and where every piece is. */
import { bayBlocks, headed } from './bay-blocks.ts'
import type { Block, Column } from './model.ts'
import type { Names } from './names.ts'
import { notice } from './notices.ts'
import { placementWords, placeWords } from './places.ts'
import type { CardInput, Layout, Move, OneNight, Placement } from './plan-parts.ts'

export function bedNightBlocks(input: CardInput, names: Names, one: OneNight): readonly Block[] {
  const { text, plan } = input
  const { packing, night } = one
  if (packing === null) return []
  const { drive } = plan.packing
  const there = moveRows(packing.changeover.moves, drive, names, input)
  const back = moveRows(packing.changeback.moves, packing.bed, names, input)
  const title = text.t('cards.load.night', { date: text.date(night.date), site: night.site.name })
  const count = (moves: readonly Move[]): string => text.t('cards.moves.count', { count: moves.length })
  return [
    { kind: 'page-break' },
    { kind: 'heading', level: 1, text: title },
    { kind: 'heading', level: 2, text: `${text.t('cards.moves.dusk')}: ${count(packing.changeover.moves)}` },
    ...moveTable(there, input),
    ...packing.changeover.stuckUnitIds.map((id) =>
      notice(text, 'shortfall', text.t('cards.moves.stuck', { unit: names.unit(id) })),
    ),
    ...headed(2, text.t('cards.load.bed'), bayBlocks(input, names, packing.bed, drive)),
    { kind: 'paragraph', text: text.t('cards.load.sameBays'), tone: 'small' },
    { kind: 'heading', level: 2, text: `${text.t('cards.moves.morning')}: ${count(packing.changeback.moves)}` },
    ...moveTable(back, input),
    { kind: 'heading', level: 2, text: text.t('cards.load.where') },
    whereTable(input, names, packing.bed),
  ]
}

export type MoveRow = {
  readonly number: string
  readonly unit: string
  readonly from: string
  readonly to: string
  readonly door: string
}

/** Moves in order, each place told as it is at that moment. */
export function moveRows(moves: readonly Move[], start: Layout, names: Names, { text }: CardInput): readonly MoveRow[] {
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
      rows: rows.map((row, index) => [`${index + 1}.`, `${row.number} ${row.unit}`, row.from, row.to, row.door]),
    },
  ]
}

/** Every piece by name, with the bin it rides in and its place by day and by night. */
function whereTable({ plan, trip, text }: CardInput, names: Names, bed: Layout): Block {
  const rows = wherePieces(plan.packing.units, (id) => names.piece(id)).map(({ pieceId, unitId, inBin }) => [
    names.piece(pieceId),
    inBin ? `${names.number(unitId)} ${names.unit(unitId)}` : text.t('cards.loose', { number: names.number(unitId) }),
    placeWords(unitId, plan.packing.drive, names, text),
    placeWords(pieceOrBin(pieceId, unitId, bed), bed, names, text),
  ])
  const collator = new Intl.Collator(trip.preferences.language)
  const columns: readonly Column[] = [
    { title: text.t('cards.column.piece'), share: 25, align: 'left', strong: true },
    { title: text.t('cards.column.in'), share: 19, align: 'left' },
    { title: text.t('cards.column.drive'), share: 28, align: 'left' },
    { title: text.t('cards.column.night'), share: 28, align: 'left' },
  ]
  return { kind: 'table', columns, rows: rows.toSorted((a, b) => collator.compare(a[0] ?? '', b[0] ?? '')) }
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
