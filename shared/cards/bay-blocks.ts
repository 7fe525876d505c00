/** The bays of a layout as drawings under their own headings. */
import { bayDrawings } from './bay-drawing.ts'
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
    const [first, ...more] = bayDrawings({ bay, placements, names, text, widthMm: textWidthMm(paper) })
    const head: Block = { kind: 'heading', level: 3, text: heading }
    return first === undefined ? [head] : [{ kind: 'together', blocks: [head, first] }, ...more]
  })
}

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
