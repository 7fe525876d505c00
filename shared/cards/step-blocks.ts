/** The order to load by hand as drawings, bay by bay, first in to last in. */
import { textWidthMm } from './model.ts'
import type { Block } from './model.ts'
import type { Names } from './names.ts'
import type { CardInput } from './plan-parts.ts'
import { stepDrawings } from './step-drawing.ts'

/** A heading for each bay in the order in which bays are loaded, and below it a drawing for each row of steps. */
export function stepBlocks(input: CardInput, names: Names): readonly Block[] {
  const { plan, text, paper } = input
  const { drive, loadingOrder } = plan.packing
  const placed = loadingOrder.flatMap((id) => drive.placements.filter((one) => one.unitId === id))
  const bayIds = [...new Set(placed.map((one) => one.bayId))]
  const bays = bayIds.flatMap((bayId): readonly Block[] => {
    const bay = names.bayOf(bayId)
    if (bay === null) return []
    const placements = placed.filter((one) => one.bayId === bayId)
    const widthMm = input.drawingWidthMm ?? textWidthMm(paper)
    const [first, ...more] = stepDrawings({ bay, placements, names, text, widthMm })
    const head: Block = { kind: 'heading', level: 3, text: bay.name }
    return first === undefined ? [head] : [{ kind: 'together', blocks: [head, first] }, ...more]
  })
  if (bays.length === 0) return []
  const note: Block = { kind: 'paragraph', text: text.t('cards.load.stepsHow'), tone: 'small' }
  const title: Block = { kind: 'heading', level: 2, text: text.t('cards.load.steps') }
  const [first, ...rest] = bays
  return first?.kind === 'together'
    ? [{ kind: 'together', blocks: [title, note, ...first.blocks] }, ...rest]
    : [title, note, ...bays]
}
