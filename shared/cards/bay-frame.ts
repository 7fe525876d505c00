/** A bay's view on paper: its frame, where a box of the bay lies on it, and what is fixed: walls with their openings, slopes, wheel arches. */
import type { Bay } from '../document/index.ts'
import { hatchRect } from './hatch.ts'
import { wordsWidthMm } from './lettering.ts'
import type { Point, Shape } from './model.ts'

/** How the walls are drawn, and whether doors are named in their gaps. */
export type Walls = { readonly weightMm: number; readonly named: boolean }
const NAMED_WALLS: Walls = { weightMm: 0.5, named: true }

/** One view: which axis runs right, which runs down the paper, and whether that one is turned over. */
export type View = { readonly right: 0; readonly down: 1 | 2; readonly flip: boolean; readonly title: string }
export type Frame = { readonly originMm: Point; readonly scale: number; readonly view: View; readonly bay: Bay }

export type PaperBox = { readonly at: Point; readonly size: Point }

export function boxOnPaper(
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

export function obstacleShapes(frame: Frame): readonly Shape[] {
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
export function slopeShapes({ bay, originMm, scale, view }: Frame): readonly Shape[] {
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
export function outlineWithGaps(frame: Frame, walls: Walls = NAMED_WALLS): readonly Shape[] {
  const { bay, originMm, scale, view } = frame
  const [left, top] = originMm
  const width = bay.sizeMm[0] * scale
  const height = bay.sizeMm[view.down] * scale
  const gaps = bay.openings.flatMap((opening) => gapOf(opening, frame))
  const line = (fromMm: Point, toMm: Point): Shape => ({ kind: 'line', fromMm, toMm, weightMm: walls.weightMm })
  return (['left', 'right', 'top', 'bottom'] as const).flatMap((edge) => {
    const upright = edge === 'left' || edge === 'right'
    const length = upright ? height : width
    const fixed = edge === 'left' ? left : edge === 'right' ? left + width : edge === 'top' ? top : top + height
    const point = (along: number): Point => (upright ? [fixed, top + along] : [left + along, fixed])
    const mine = gaps.filter((gap) => gap.edge === edge).toSorted((a, b) => a.fromMm - b.fromMm)
    const shapes: Shape[] = []
    let drawn = 0
    for (const gap of mine) {
      if (gap.fromMm > drawn) shapes.push(line(point(drawn), point(gap.fromMm)))
      if (walls.named) shapes.push(...gapLabel(gap, edge, point))
      drawn = Math.max(drawn, gap.toMm)
    }
    if (drawn < length) shapes.push(line(point(drawn), point(length)))
    return shapes
  })
}

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
