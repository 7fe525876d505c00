/**
 * A bay as a carpenter draws a box: one plan for each layer, from above with the front to the right, and one view from the right side.
 * Units bear their number in loading order and their name; wheel arches are hatched; openings are gaps in the outline.
 */
import type { Bay } from '../document/index.ts'
import type { Text } from '../text/index.ts'
import { hatchRect } from './hatch.ts'
import { layersOf } from './layers.ts'
import { wordsWidthMm, wrapWords } from './lettering.ts'
import type { Drawing, Point, Shape } from './model.ts'
import type { Names } from './names.ts'
import type { Placement } from './plan-parts.ts'

export type BayDrawingInput = {
  readonly bay: Bay
  readonly placements: readonly Placement[]
  readonly names: Names
  readonly text: Text
  readonly widthMm: number
}

const EDGE_MM = 5
const TITLE_MM = 4.2
const BETWEEN_MM = 4
const TALLEST_PANEL_MM = 74
/** A small bay is not drawn larger than one to six. */
const LARGEST_SCALE = 1 / 6
const OUTLINE_MM = 0.5
const UNIT_OUTLINE_MM = 0.3
const GHOST_MM = 0.15

/** One view: which axis runs right, which runs down the paper, and whether that one is turned over. */
type View = { readonly right: 0; readonly down: 1 | 2; readonly flip: boolean; readonly title: string }
type Panel = { readonly view: View; readonly units: readonly Placement[]; readonly ghosts: readonly Placement[] }
type Frame = { readonly originMm: Point; readonly scale: number; readonly view: View; readonly bay: Bay }

/** One drawing for each row of views, so that a page may end between them. */
export function bayDrawings(input: BayDrawingInput): readonly Drawing[] {
  const { bay, text, widthMm } = input
  const panels = panelsOf(input)
  const long = bay.sizeMm[0] > 2.2 * Math.max(bay.sizeMm[1], bay.sizeMm[2])
  const perRow = panels.length === 1 || long ? 1 : 2
  const roomMm = (widthMm - (perRow - 1) * BETWEEN_MM) / perRow - 2 * EDGE_MM
  const tallest = Math.max(bay.sizeMm[1], bay.sizeMm[2])
  const scale = Math.min(LARGEST_SCALE, roomMm / bay.sizeMm[0], TALLEST_PANEL_MM / tallest)
  const what = input.placements.map((unit) => `${input.names.number(unit.unitId)} ${input.names.unit(unit.unitId)}`)
  const description = text.t('cards.drawing.bay', { bay: bay.name, what: what.join(', ') })
  const rows = Array.from({ length: Math.ceil(panels.length / perRow) }, (_, row) =>
    panels.slice(row * perRow, (row + 1) * perRow),
  )
  return rows.map((row) => {
    const shapes = row.flatMap((panel, column) => {
      const originMm: Point = [EDGE_MM + column * (roomMm + 2 * EDGE_MM + BETWEEN_MM), TITLE_MM + EDGE_MM]
      return panelShapes(panel, { originMm, scale, view: panel.view, bay }, input)
    })
    const heightMm = TITLE_MM + 2 * EDGE_MM + Math.max(...row.map((panel) => bay.sizeMm[panel.view.down] * scale))
    return { kind: 'drawing', widthMm, heightMm, shapes, description }
  })
}

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

function panelShapes(panel: Panel, frame: Frame, { names, text }: BayDrawingInput): readonly Shape[] {
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
    ...panel.units.flatMap((unit) => unitShapes(unit, frame, names)),
    ...outlineWithGaps(frame),
    front,
  ]
}

type PaperBox = { readonly at: Point; readonly size: Point }

const ghost = ({ at, size }: PaperBox): Shape => ({
  kind: 'rect',
  atMm: at,
  sizeMm: size,
  weightMm: GHOST_MM,
  fill: 'none',
  dashMm: [1.2, 0.9],
})

function boxOnPaper(
  atMm: readonly [number, number, number],
  sizeMm: readonly [number, number, number],
  { originMm, scale, view, bay }: Frame,
): PaperBox {
  const down = view.flip ? bay.sizeMm[view.down] - atMm[view.down] - sizeMm[view.down] : atMm[view.down]
  return {
    at: [originMm[0] + atMm[0] * scale, originMm[1] + down * scale],
    size: [sizeMm[0] * scale, sizeMm[view.down] * scale],
  }
}

function unitShapes(unit: Placement, frame: Frame, names: Names): readonly Shape[] {
  const { at, size } = boxOnPaper(unit.atMm, unit.sizeMm, frame)
  const [width, height] = size
  const rect: Shape = { kind: 'rect', atMm: at, sizeMm: size, weightMm: UNIT_OUTLINE_MM, fill: 'paper' }
  const numeral = String(names.number(unit.unitId))
  const tall = height > 1.6 * width && width < 14
  const [along, across] = tall ? [height, width] : [width, height]
  const numeralMm = Math.max(2.2, Math.min(5.5, across * 0.45, along / (0.75 * numeral.length + 0.4)))
  const nameMm = 2.5
  const lines = Math.floor((across - numeralMm - 1) / (nameMm * 1.15))
  const words = lines < 1 ? [] : wrapWords(names.unit(unit.unitId), along - 1.4, nameMm, Math.min(3, lines))
  const name = words.some((word) => word.endsWith('\u2026') && word.length < 5) ? [] : words
  const block = numeralMm * 0.75 + name.length * nameMm * 1.15
  const middle: Point = [at[0] + width / 2, at[1] + height / 2]
  const rows = [
    { text: numeral, heightMm: numeralMm, bold: true, down: -block / 2 + numeralMm * 0.75 },
    ...name.map((text, index) => ({
      text,
      heightMm: nameMm,
      bold: false,
      down: -block / 2 + numeralMm * 0.75 + (index + 1) * nameMm * 1.15,
    })),
  ]
  const labels = rows.map((row): Shape => {
    const base = { kind: 'label', text: row.text, heightMm: row.heightMm, bold: row.bold, anchor: 'middle' } as const
    return tall
      ? { ...base, atMm: [middle[0] + row.down, middle[1]], turnDeg: -90 }
      : { ...base, atMm: [middle[0], middle[1] + row.down] }
  })
  return [rect, ...labels]
}

function obstacleShapes(frame: Frame): readonly Shape[] {
  return frame.bay.obstacles.flatMap((obstacle) => {
    const { at, size } = boxOnPaper(obstacle.atMm, obstacle.sizeMm, frame)
    return [...hatchRect(at, size, 1.3), { kind: 'rect', atMm: at, sizeMm: size, weightMm: 0.2, fill: 'none' } as const]
  })
}

const thinLine = (fromMm: Point, toMm: Point): Shape => ({
  kind: 'line',
  fromMm,
  toMm,
  weightMm: 0.2,
  dashMm: [2, 0.8],
})

/** A wall that leans in is a thin line from where it stands on the floor to where it ends at the top. */
function slopeShapes({ bay, originMm, scale, view }: Frame): readonly Shape[] {
  const [left, top] = originMm
  const width = bay.sizeMm[0] * scale
  const height = bay.sizeMm[view.down] * scale
  return bay.slopes.flatMap((slope): readonly Shape[] => {
    const floor = slope.insetFloorMm * scale
    const ceiling = slope.insetTopMm * scale
    const alongX = slope.face === 'x-' || slope.face === 'x+'
    const inward = slope.face === 'x-' || slope.face === 'y-' ? 1 : -1
    const wall = alongX ? (inward === 1 ? left : left + width) : inward === 1 ? top : top + height
    if (view.down === 2) {
      return alongX ? [thinLine([wall + inward * floor, top + height], [wall + inward * ceiling, top])] : []
    }
    const inset = wall + inward * Math.max(floor, ceiling)
    return alongX ? [thinLine([inset, top], [inset, top + height])] : [thinLine([left, inset], [left + width, inset])]
  })
}

type Gap = {
  readonly edge: 'left' | 'right' | 'top' | 'bottom'
  readonly fromMm: number
  readonly toMm: number
  readonly door: string
}

/** The four walls, each broken where an opening is; the door's name stands in the gap. */
function outlineWithGaps(frame: Frame): readonly Shape[] {
  const { bay, originMm, scale, view } = frame
  const [left, top] = originMm
  const width = bay.sizeMm[0] * scale
  const height = bay.sizeMm[view.down] * scale
  const gaps = bay.openings.flatMap((opening) => gapOf(opening, frame))
  return (['left', 'right', 'top', 'bottom'] as const).flatMap((edge) => {
    const upright = edge === 'left' || edge === 'right'
    const length = upright ? height : width
    const fixed = edge === 'left' ? left : edge === 'right' ? left + width : edge === 'top' ? top : top + height
    const point = (along: number): Point => (upright ? [fixed, top + along] : [left + along, fixed])
    const mine = gaps.filter((gap) => gap.edge === edge).toSorted((a, b) => a.fromMm - b.fromMm)
    const shapes: Shape[] = []
    let drawn = 0
    for (const gap of mine) {
      if (gap.fromMm > drawn) shapes.push(wall(point(drawn), point(gap.fromMm)))
      shapes.push(...gapLabel(gap, edge, point))
      drawn = Math.max(drawn, gap.toMm)
    }
    if (drawn < length) shapes.push(wall(point(drawn), point(length)))
    return shapes
  })
}

const wall = (fromMm: Point, toMm: Point): Shape => ({ kind: 'line', fromMm, toMm, weightMm: OUTLINE_MM })

function gapLabel(gap: Gap, edge: Gap['edge'], point: (along: number) => Point): readonly Shape[] {
  const [x, y] = point((gap.fromMm + gap.toMm) / 2)
  const heightMm = 2.5
  if (wordsWidthMm(gap.door, heightMm) > Math.max(gap.toMm - gap.fromMm, 12)) return []
  if (edge === 'left') return [{ ...labelOf(gap.door, heightMm), atMm: [x - 1.2, y], turnDeg: -90 }]
  if (edge === 'right') return [{ ...labelOf(gap.door, heightMm), atMm: [x + 3, y], turnDeg: -90 }]
  return [{ ...labelOf(gap.door, heightMm), atMm: [x, edge === 'top' ? y - 1.2 : y + 3] }]
}

const labelOf = (text: string, heightMm: number) => ({ kind: 'label', text, heightMm, anchor: 'middle' }) as const

function gapOf(opening: Bay['openings'][number], { bay, scale, view }: Frame): readonly Gap[] {
  const { face, fromMm, toMm, door } = opening
  const span = (from: number, to: number): { fromMm: number; toMm: number } => ({
    fromMm: from * scale,
    toMm: to * scale,
  })
  const upward = (from: number, to: number): { fromMm: number; toMm: number } =>
    span(bay.sizeMm[2] - to, bay.sizeMm[2] - from)
  if (face === 'x-' || face === 'x+') {
    const edge = face === 'x-' ? 'left' : 'right'
    return [{ edge, door, ...(view.down === 1 ? span(fromMm[0], toMm[0]) : upward(fromMm[1], toMm[1])) }]
  }
  if (face === 'z+') return view.down === 2 ? [{ edge: 'top', door, ...span(fromMm[0], toMm[0]) }] : []
  if (view.down === 2) return []
  return [{ edge: face === 'y-' ? 'top' : 'bottom', door, ...span(fromMm[0], toMm[0]) }]
}
