/** The bays of a layout as drawings under their own headings. */
import type { Bay, Trip } from '../document/index.ts'
import { bayDrawings } from './bay-drawing.ts'
import type { BayOutline } from './bay-drawing.ts'
import { COLUMN_GAP_MM, textWidthMm } from './model.ts'
import type { Block } from './model.ts'
import type { Names } from './names.ts'
import type { CardInput, Layout } from './plan-parts.ts'

/** A bay with so few units is drawn half as wide, two bays side by side. */
const FEW_UNITS = 3
/** Paper is wide enough for two bays side by side; a phone is not. */
const TWO_BAYS_MM = 150

/** One drawing for each bay that holds something; where `unlike` is given, only bays that differ from that layout. */
export function bayBlocks(input: CardInput, names: Names, layout: Layout, unlike: Layout | null): readonly Block[] {
  const { trip, paper } = input
  const wholeMm = input.drawingWidthMm ?? textWidthMm(paper)
  const halfMm = (wholeMm - COLUMN_GAP_MM) / 2
  const placementsIn = (bay: Bay, of: Layout): Layout['placements'] =>
    of.placements.filter((one) => one.bayId === bay.id)
  const shown = trip.vehicle.bays
    .map((bay) => ({ bay, placements: placementsIn(bay, layout) }))
    .filter(
      ({ bay, placements }) =>
        placements.length > 0 && (unlike === null || !sameBay(placements, placementsIn(bay, unlike))),
    )
  const isSmall = ({ placements }: BayShown): boolean => wholeMm >= TWO_BAYS_MM && placements.length <= FEW_UNITS
  const small = shown
    .filter(isSmall)
    .map((one) => bayCell(input, names, { ...one, ofBed: unlike !== null, widthMm: halfMm, compact: true }))
  const pairs = Array.from({ length: Math.ceil(small.length / 2) }, (_, row): Block => ({
    kind: 'beside',
    columns: small.slice(2 * row, 2 * row + 2),
  }))
  return [
    ...shown
      .filter((one) => !isSmall(one))
      .flatMap((one): readonly Block[] => {
        const [head, first, ...more] = bayCell(input, names, {
          ...one,
          ofBed: unlike !== null,
          widthMm: wholeMm,
          compact: false,
        })
        return head === undefined || first === undefined ? [] : [{ kind: 'together', blocks: [head, first] }, ...more]
      }),
    ...pairs,
  ]
}

type BayShown = { readonly bay: Bay; readonly placements: Layout['placements'] }
type BayCell = BayShown & { readonly ofBed: boolean; readonly widthMm: number; readonly compact: boolean }

/** Heading and drawings of one bay. */
function bayCell({ trip, plan, text }: CardInput, names: Names, cell: BayCell): readonly Block[] {
  const { bay, placements, ofBed, widthMm, compact } = cell
  const massOf = new Map(plan.packing.units.map((unit) => [unit.id, unit.massG]))
  const massG = placements.reduce((sum, one) => sum + (massOf.get(one.unitId) ?? 0), 0)
  const params = { bay: bay.name, size: text.size(bay.sizeMm), massG, limitG: bay.loadLimitG }
  return [
    { kind: 'heading', level: 3, text: text.t('cards.load.bay', params) },
    ...bayDrawings({
      bay,
      placements,
      names,
      text,
      widthMm,
      compact,
      outlines: ofBed ? bedIn(bay, trip.vehicle.bed, text.t('cards.bed')) : [],
    }),
  ]
}

/** A heading that stays on the page of the block below it. */
export function headed(level: 1 | 2, text: string, blocks: readonly Block[]): readonly Block[] {
  const heading: Block = { kind: 'heading', level, text }
  const [first, ...rest] = blocks
  if (first === undefined) return [heading]
  return [{ kind: 'together', blocks: [heading, ...(first.kind === 'together' ? first.blocks : [first])] }, ...rest]
}

type Vec3 = readonly [number, number, number]

/** The part of the made bed that lies in a bay, in the bay's frame. */
function bedIn(bay: Bay, bed: Trip['vehicle']['bed'], label: string): readonly BayOutline[] {
  const from = at3((axis) => Math.max(0, bed.atMm[axis] - bay.originMm[axis]))
  const to = at3((axis) => Math.min(bay.sizeMm[axis], bed.atMm[axis] + bed.sizeMm[axis] - bay.originMm[axis]))
  const sizeMm = at3((axis) => to[axis] - from[axis])
  return sizeMm.every((edge) => edge > 0) ? [{ label, atMm: from, sizeMm }] : []
}

const at3 = (value: (axis: 0 | 1 | 2) => number): Vec3 => [value(0), value(1), value(2)]

const sameBay = (a: Layout['placements'], b: Layout['placements']): boolean =>
  a.length === b.length &&
  a.every((one) =>
    b.some(
      (other) =>
        other.unitId === one.unitId &&
        other.atMm.every((at, axis) => at === one.atMm[axis]) &&
        other.sizeMm.every((size, axis) => size === one.sizeMm[axis]),
    ),
  )
