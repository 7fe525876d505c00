/** The bays of a layout as drawings under their own headings. */
import type { Bay, Trip } from '../document/index.ts'
import { bayDrawings } from './bay-drawing.ts'
import type { BayOutline } from './bay-drawing.ts'
import { textWidthMm } from './model.ts'
import type { Block } from './model.ts'
import type { Names } from './names.ts'
import type { CardInput, Layout } from './plan-parts.ts'

/** One drawing for each bay that holds something; where `unlike` is given, only bays that differ from that layout. */
export function bayBlocks(input: CardInput, names: Names, layout: Layout, unlike: Layout | null): readonly Block[] {
  const { trip, plan, text, paper } = input
  const massOf = new Map(plan.packing.units.map((unit) => [unit.id, unit.massG]))
  return trip.vehicle.bays.flatMap((bay): readonly Block[] => {
    const placements = layout.placements.filter((one) => one.bayId === bay.id)
    if (placements.length === 0) return []
    if (
      unlike !== null &&
      sameBay(
        placements,
        unlike.placements.filter((one) => one.bayId === bay.id),
      )
    )
      return []
    const massG = placements.reduce((sum, one) => sum + (massOf.get(one.unitId) ?? 0), 0)
    const heading = text.t('cards.load.bay', {
      bay: bay.name,
      size: text.size(bay.sizeMm),
      massG,
      limitG: bay.loadLimitG,
    })
    const [first, ...more] = bayDrawings({
      bay,
      placements,
      names,
      text,
      widthMm: input.drawingWidthMm ?? textWidthMm(paper),
      outlines: unlike === null ? [] : bedIn(bay, trip.vehicle.bed, text.t('cards.bed')),
    })
    const head: Block = { kind: 'heading', level: 3, text: heading }
    return first === undefined ? [head] : [{ kind: 'together', blocks: [head, first] }, ...more]
  })
}

/** A heading that stays on the page of the block below it. */
export function headed(level: 1 | 2, text: string, blocks: readonly Block[]): readonly Block[] {
  const heading: Block = { kind: 'heading', level, text }
  const [first, ...rest] = blocks
  return first?.kind === 'together'
    ? [{ kind: 'together', blocks: [heading, ...first.blocks] }, ...rest]
    : [heading, ...blocks]
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
