/**
 * A bay as a carpenter draws a box: one plan for each layer, from above with the front to the right, and one view from the right side.
 * Units bear their number in loading order and their name; wheel arches are hatched; openings are gaps in the outline.
 */
import type { Bay } from '../document/index.ts'
import type { Text } from '../text/index.ts'
import { boxOnPaper, obstacleShapes, outlineWithGaps, slopeShapes } from './bay-frame.ts'
import type { Frame, PaperBox, View } from './bay-frame.ts'
import { layersOf } from './layers.ts'
import { wrapWords } from './lettering.ts'
import type { Drawing, Point, Shape } from './model.ts'
import type { Names } from './names.ts'
import type { Placement } from './plan-parts.ts'

export type BayDrawingInput = {
  readonly bay: Bay
  readonly placements: readonly Placement[]
  readonly names: Names
  readonly text: Text
  readonly widthMm: number
  /** All views in one row, however small. */
  readonly compact?: boolean
  /** Things that take room without being units, such as the made bed; bay frame. */
  readonly outlines: readonly BayOutline[]
}

export type BayOutline = { readonly label: string; readonly atMm: Vec3; readonly sizeMm: Vec3 }
type Vec3 = readonly [number, number, number]

const EDGE_MM = 5
const TITLE_MM = 4.2
const BETWEEN_MM = 4
const TALLEST_PANEL_MM = 68
/** A small bay is not drawn larger than one to eight. */
const LARGEST_SCALE = 1 / 8
/** A long bay would fill a page: one to fourteen. */
const LONG_SCALE = 1 / 14
const UNIT_OUTLINE_MM = 0.3
const GHOST_MM = 0.15

type Panel = { readonly view: View; readonly units: readonly Placement[]; readonly ghosts: readonly Placement[] }
/** Views side by side as far as the width goes; one drawing for each row, so that a page may end between them. */
export function bayDrawings(input: BayDrawingInput): readonly Drawing[] {
  const { bay, text, widthMm } = input
  const panels = panelsOf(input)
  const roomMm = widthMm - 2 * EDGE_MM
  const alone = panels.length === 1 || (input.compact !== true && (widthMm < NARROW_MM || isLong(bay)))
  const pairMm = alone ? roomMm : (widthMm - BETWEEN_MM) / 2 - 2 * EDGE_MM
  const tallest = Math.max(bay.sizeMm[1], bay.sizeMm[2])
  const scale = Math.min(isLong(bay) ? LONG_SCALE : LARGEST_SCALE, pairMm / bay.sizeMm[0], TALLEST_PANEL_MM / tallest)
  const panelMm = Math.max(bay.sizeMm[0] * scale, Math.min(pairMm, LEAST_PANEL_MM)) + 2 * EDGE_MM
  const perRow = Math.max(1, Math.floor((widthMm + BETWEEN_MM) / (panelMm + BETWEEN_MM)))
  const what = input.placements.map((unit) => `${input.names.number(unit.unitId)} ${input.names.unit(unit.unitId)}`)
  const description = text.t('cards.drawing.bay', { bay: bay.name, what: what.join(', ') })
  const rows = Array.from({ length: Math.ceil(panels.length / perRow) }, (_, row) =>
    panels.slice(row * perRow, (row + 1) * perRow),
  )
  return rows.map((row) => {
    const shapes = row.flatMap((panel, column) => {
      const originMm: Point = [EDGE_MM + column * (panelMm + BETWEEN_MM), TITLE_MM + EDGE_MM]
      return panelShapes(panel, { originMm, scale, view: panel.view, bay }, input)
    })
    const heightMm = TITLE_MM + 2 * EDGE_MM + Math.max(...row.map((panel) => bay.sizeMm[panel.view.down] * scale))
    return { kind: 'drawing', widthMm, heightMm, shapes, description }
  })
}

/** On a phone's width views stand one above the other. */
const NARROW_MM = 120
/** The title of a view needs this much. */
const LEAST_PANEL_MM = 34

const isLong = (bay: Bay): boolean => bay.sizeMm[0] > 2.2 * Math.max(bay.sizeMm[1], bay.sizeMm[2])

function panelsOf({ bay, placements, text }: BayDrawingInput): readonly Panel[] {
  const layers = layersOf(placements)
  const plans = (layers.length === 0 ? [[]] : layers).map((units, layer): Panel => {
    const key = layers.length < 2 ? 'cards.view.plan' : layer === 0 ? 'cards.view.floor' : 'cards.view.layer'
    return {
      view: { right: 0, down: 1, flip: false, title: text.t(key, { layer: layer + 1 }) },
      units,
      ghosts: layers[layer - 1] ?? [],
    }
  })
  const near = placements.toSorted((a, b) => a.atMm[1] + a.sizeMm[1] - b.atMm[1] - b.sizeMm[1])
  const flat = placements.length === 0 || bay.sizeMm[2] < 60
  const side: Panel = {
    view: { right: 0, down: 2, flip: true, title: text.t('cards.view.side') },
    units: near,
    ghosts: [],
  }
  return flat ? plans : [...plans, side]
}

function panelShapes(panel: Panel, frame: Frame, { names, text, outlines }: BayDrawingInput): readonly Shape[] {
  const [left, top] = frame.originMm
  const { bay, scale, view } = frame
  const width = bay.sizeMm[0] * scale
  const height = bay.sizeMm[view.down] * scale
  const title: Shape = {
    kind: 'label',
    atMm: [left, top - EDGE_MM - 0.4],
    text: view.title,
    heightMm: 3.1,
    anchor: 'start',
    bold: true,
  }
  const front: Shape = {
    kind: 'label',
    atMm: [left + width, top + height + 3.9],
    text: text.t('cards.view.front'),
    heightMm: 2.7,
    anchor: 'end',
  }
  return [
    title,
    ...obstacleShapes(frame),
    ...slopeShapes(frame),
    ...panel.ghosts.map((unit): Shape => ghost(boxOnPaper(unit.atMm, unit.sizeMm, frame))),
    ...panel.units.flatMap((unit, index) => unitShapes(unit, panel.units.slice(index + 1), frame, names)),
    ...outlines.flatMap((box) => outlineShapes(box, frame)),
    ...outlineWithGaps(frame),
    front,
  ]
}

const ghost = ({ at, size }: PaperBox): Shape => ({
  kind: 'rect',
  atMm: at,
  sizeMm: size,
  weightMm: GHOST_MM,
  fill: 'none',
  dashMm: [1.2, 0.9],
})

function unitShapes(unit: Placement, nearer: readonly Placement[], frame: Frame, names: Names): readonly Shape[] {
  const box = boxOnPaper(unit.atMm, unit.sizeMm, frame)
  const rect: Shape = { kind: 'rect', atMm: box.at, sizeMm: box.size, weightMm: UNIT_OUTLINE_MM, fill: 'paper' }
  const seen = largestSeen(
    box,
    nearer.map((other) => boxOnPaper(other.atMm, other.sizeMm, frame)),
  )
  return [rect, ...nameShapes(seen, String(names.number(unit.unitId)), names.unit(unit.unitId))]
}

/** The largest part of a box that nothing drawn later covers, found by cutting at each cover in turn. */
function largestSeen(box: PaperBox, covers: readonly PaperBox[]): PaperBox {
  return covers.reduce((seen, cover) => {
    const [left, top] = seen.at
    const [right, bottom] = [left + seen.size[0], top + seen.size[1]]
    const [coverRight, coverBottom] = [cover.at[0] + cover.size[0], cover.at[1] + cover.size[1]]
    if (cover.at[0] >= right || coverRight <= left || cover.at[1] >= bottom || coverBottom <= top) return seen
    const parts: readonly PaperBox[] = [
      { at: [left, top], size: [Math.max(0, cover.at[0] - left), bottom - top] },
      { at: [coverRight, top], size: [Math.max(0, right - coverRight), bottom - top] },
      { at: [left, top], size: [right - left, Math.max(0, cover.at[1] - top)] },
      { at: [left, coverBottom], size: [right - left, Math.max(0, bottom - coverBottom)] },
    ]
    return parts.reduce((best, part) => (part.size[0] * part.size[1] > best.size[0] * best.size[1] ? part : best))
  }, box)
}

const LARGEST_NUMERAL_MM = 6
const SMALLEST_NUMERAL_MM = 2.2
const NAME_MM = 2.9
const LINE = 1.15

/** Number and name in the middle of a box, turned where the box is tall and narrow; no name where it does not fit. */
function nameShapes({ at, size }: PaperBox, numeral: string, unitName: string): readonly Shape[] {
  const [width, height] = size
  if (width < SMALLEST_NUMERAL_MM || height < SMALLEST_NUMERAL_MM) return []
  const tall = height > 1.6 * width && width < 16
  const [along, across] = tall ? [height, width] : [width, height]
  const fits = Math.min(across * 0.45, along / (0.75 * numeral.length + 0.4))
  const numeralMm = Math.max(SMALLEST_NUMERAL_MM, Math.min(LARGEST_NUMERAL_MM, fits))
  const lines = Math.floor((across - numeralMm - 0.6) / (NAME_MM * LINE))
  const wrapped = lines < 1 ? [] : wrapWords(unitName, along - 1.4, NAME_MM, Math.min(3, lines))
  const name = wrapped.some((word) => word.endsWith('\u2026') && word.length < 5) ? [] : wrapped
  const first = -(numeralMm * 0.75 + name.length * NAME_MM * LINE) / 2 + numeralMm * 0.75
  const middle: Point = [at[0] + width / 2, at[1] + height / 2]
  const rows = [
    { text: numeral, heightMm: numeralMm, bold: true, down: first },
    ...name.map((text, index) => ({
      text,
      heightMm: NAME_MM,
      bold: false,
      down: first + (index + 1) * NAME_MM * LINE,
    })),
  ]
  return rows.map(({ down, ...row }): Shape => {
    const base = { kind: 'label', anchor: 'middle', ...row } as const
    return tall
      ? { ...base, atMm: [middle[0] + down, middle[1]], turnDeg: -90 }
      : { ...base, atMm: [middle[0], middle[1] + down] }
  })
}

/** A dashed outline with its name in the upper right corner, cut at the walls of the bay. */
function outlineShapes(box: BayOutline, frame: Frame): readonly Shape[] {
  const { at, size } = boxOnPaper(box.atMm, box.sizeMm, frame)
  return [
    { kind: 'rect', atMm: at, sizeMm: size, weightMm: 0.45, fill: 'none', dashMm: [3, 1.2] },
    {
      kind: 'label',
      atMm: [at[0] + size[0] - 1, at[1] + NAME_MM + 0.4],
      text: box.label,
      heightMm: NAME_MM,
      anchor: 'end',
      halo: true,
    },
  ]
}
