/**
 * Loading by hand, a step a unit: a small plan and side view of the bay, what is in already in thin lines,
 * the unit that goes in now in full ink with its number. Several steps stand side by side in one drawing.
 */
import type { Bay } from '../document/index.ts'
import type { Text } from '../text/index.ts'
import { boxOnPaper, outlineWithGaps, slopeShapes } from './bay-frame.ts'
import type { Frame, View } from './bay-frame.ts'
import { wrapWords } from './lettering.ts'
import type { Drawing, Point, Shape } from './model.ts'
import type { Names } from './names.ts'
import type { Placement } from './plan-parts.ts'

export type StepDrawingInput = {
  readonly bay: Bay
  /** The bay's units, first in to last in. */
  readonly placements: readonly Placement[]
  readonly names: Names
  readonly text: Text
  readonly widthMm: number
}

const BETWEEN_MM = 5
const CAPTION_MM = 2.9
const CAPTION_LINES = 2
const CAPTION_HIGH_MM = 8
const GAP_MM = 2.5
/** Room for a line's own weight at the paper's edge. */
const EDGE_MM = 0.6
/** A step is this wide at least, so that its caption can be read. */
const LEAST_CELL_MM = 28
const MOST_CELL_MM = 44
const TALLEST_VIEW_MM = 34
/** A small bay is not drawn larger than one to sixteen. */
const LARGEST_SCALE = 1 / 16
const THIN_MM = 0.13
const WALLS = { weightMm: 0.4, named: false }
const STANDING_NUMERAL_MM = 2.2
const NEW_NUMERAL_MM = 3.6
/** Digits of a box's number need about this share of their height each. */
const DIGIT_WIDE_01 = 0.62

const PLAN: View = { right: 0, down: 1, flip: false, title: '' }
const SIDE: View = { right: 0, down: 2, flip: true, title: '' }

/** One drawing a row of steps, so that a page may end between rows. */
export function stepDrawings(input: StepDrawingInput): readonly Drawing[] {
  const { bay, placements, names, text, widthMm } = input
  const [long, wide, high] = bay.sizeMm
  const mostMm = Math.min(MOST_CELL_MM, widthMm)
  const scale = Math.min(
    LARGEST_SCALE,
    (mostMm - 2 * EDGE_MM) / long,
    TALLEST_VIEW_MM / wide,
    TALLEST_VIEW_MM / Math.max(high, 1),
  )
  const cellMm = Math.max(LEAST_CELL_MM, long * scale + 2 * EDGE_MM)
  const perRow = Math.max(1, Math.floor((widthMm + BETWEEN_MM) / (cellMm + BETWEEN_MM)))
  const heightMm = CAPTION_HIGH_MM + wide * scale + GAP_MM + high * scale + 2 * EDGE_MM
  const rows = Array.from({ length: Math.ceil(placements.length / perRow) }, (_, row) => row * perRow)
  return rows.map((from): Drawing => {
    const steps = placements.slice(from, from + perRow)
    const shapes = steps.flatMap((unit, column) =>
      stepShapes(unit, placements.slice(0, from + column), {
        leftMm: column * (cellMm + BETWEEN_MM) + EDGE_MM,
        widthMm: cellMm,
        scale,
        bay,
        names,
      }),
    )
    const what = steps.map((unit) => `${names.number(unit.unitId)} ${names.unit(unit.unitId)}`)
    const description = text.t('cards.drawing.steps', { bay: bay.name, what: what.join(', ') })
    return { kind: 'drawing', widthMm, heightMm, shapes, description }
  })
}

type Cell = {
  readonly leftMm: number
  readonly widthMm: number
  readonly scale: number
  readonly bay: Bay
  readonly names: Names
}

function stepShapes(unit: Placement, standing: readonly Placement[], cell: Cell): readonly Shape[] {
  const { leftMm, widthMm, scale, bay, names } = cell
  const caption = wrapWords(
    `${names.number(unit.unitId)} ${names.unit(unit.unitId)}`,
    widthMm,
    CAPTION_MM,
    CAPTION_LINES,
  )
  const lines = caption.map((words, line): Shape => ({
    kind: 'label',
    atMm: [leftMm, CAPTION_MM * (1 + 1.15 * line)],
    text: words,
    heightMm: CAPTION_MM,
    anchor: 'start',
    bold: true,
  }))
  const planAt: Point = [leftMm, CAPTION_HIGH_MM]
  const sideAt: Point = [leftMm, CAPTION_HIGH_MM + bay.sizeMm[1] * scale + GAP_MM]
  const plan = viewShapes(unit, standing, { originMm: planAt, scale, view: PLAN, bay }, names)
  const side = viewShapes(unit, standing, { originMm: sideAt, scale, view: SIDE, bay }, names)
  return [...lines, ...plan, ...side]
}

/** Farthest first: the lowest in the plan, the leftmost in the view from the right. The new unit is drawn over all, as what the eye must find. */
function viewShapes(unit: Placement, standing: readonly Placement[], frame: Frame, names: Names): readonly Shape[] {
  const axis = frame.view.down === 1 ? 2 : 1
  const far = standing.toSorted((a, b) => a.atMm[axis] + a.sizeMm[axis] - b.atMm[axis] - b.sizeMm[axis])
  const numbered = new Set(far.filter((one, at) => !far.slice(at + 1).some((other) => hides(other, one, frame))))
  return [
    ...crossedOut(frame),
    ...slopeShapes(frame),
    ...far.map((one) => outline(one, frame, THIN_MM)),
    ...far.filter((one) => numbered.has(one)).flatMap((one) => standingNumber(one, unit, frame, names)),
    ...outlineWithGaps(frame, WALLS),
    ...newUnit(unit, frame, names),
  ]
}

const outline = (unit: Placement, frame: Frame, weightMm: number): Shape => {
  const { at, size } = boxOnPaper(unit.atMm, unit.sizeMm, frame)
  return { kind: 'rect', atMm: at, sizeMm: size, weightMm, fill: 'none' }
}

/** Whether the middle of one unit lies under another on the paper. */
function hides(over: Placement, unit: Placement, { view }: Frame): boolean {
  return [view.right, view.down].every((axis) => {
    const middle = unit.atMm[axis] + unit.sizeMm[axis] / 2
    return middle > over.atMm[axis] && middle < over.atMm[axis] + over.sizeMm[axis]
  })
}

/** None where the unit that goes in now would cover part of it. */
function standingNumber(unit: Placement, over: Placement, frame: Frame, names: Names): readonly Shape[] {
  const { at, size } = boxOnPaper(unit.atMm, unit.sizeMm, frame)
  const text = String(names.number(unit.unitId))
  const half = [(DIGIT_WIDE_01 * STANDING_NUMERAL_MM * text.length) / 2 + 0.2, STANDING_NUMERAL_MM / 2] as const
  if (size[0] < 2 * half[0] || size[1] < 2 * half[1]) return []
  const cover = boxOnPaper(over.atMm, over.sizeMm, frame)
  const covered = ([0, 1] as const).every((axis) => {
    const middle = at[axis] + size[axis] / 2
    return middle + half[axis] > cover.at[axis] && middle - half[axis] < cover.at[axis] + cover.size[axis]
  })
  if (covered) return []
  return [numeral(text, at, size, STANDING_NUMERAL_MM)]
}

function newUnit(unit: Placement, frame: Frame, names: Names): readonly Shape[] {
  const { at, size } = boxOnPaper(unit.atMm, unit.sizeMm, frame)
  const text = String(names.number(unit.unitId))
  const label = numeral(text, at, size, NEW_NUMERAL_MM)
  // A number wider than its box stays on the paper.
  const leastX = frame.originMm[0] + (DIGIT_WIDE_01 * NEW_NUMERAL_MM * text.length) / 2
  return [
    { kind: 'rect', atMm: at, sizeMm: size, weightMm: 0, fill: 'ink' },
    { ...label, atMm: [Math.max(leastX, label.atMm[0]), label.atMm[1]], bold: true, halo: true, onInk: true },
  ]
}

/** Wheel arches and the like: crossed out, since nothing goes there. */
function crossedOut(frame: Frame): readonly Shape[] {
  return frame.bay.obstacles.flatMap((obstacle): readonly Shape[] => {
    const { at, size } = boxOnPaper(obstacle.atMm, obstacle.sizeMm, frame)
    const [right, bottom] = [at[0] + size[0], at[1] + size[1]]
    const thin = { kind: 'line', weightMm: THIN_MM } as const
    return [
      { kind: 'rect', atMm: at, sizeMm: size, weightMm: THIN_MM, fill: 'none' },
      { ...thin, fromMm: at, toMm: [right, bottom] },
      { ...thin, fromMm: [at[0], bottom], toMm: [right, at[1]] },
    ]
  })
}

const numeral = (text: string, at: Point, size: Point, heightMm: number) =>
  ({
    kind: 'label',
    atMm: [at[0] + size[0] / 2, at[1] + size[1] / 2 + heightMm * 0.36],
    text,
    heightMm,
    anchor: 'middle',
  }) as const
