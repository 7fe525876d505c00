/** Plan, side and rear drawings of the same boxes: flat rectangles in the order to paint them. */
import { boundsOf } from './bounds.ts'
import { wrapName } from './wrap-name.ts'
import type { Box, SceneDescription, SceneUnit, Segment, Vec3 } from './types.ts'

export type FlatView = 'plan' | 'side' | 'rear'

export type FlatRect = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

export type FlatLine = { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }

export type FlatDrawing = {
  readonly frame: FlatRect
  readonly faint: readonly FlatLine[]
  readonly lines: readonly FlatLine[]
  readonly hatched: readonly FlatRect[]
  readonly bed: FlatRect | null
  readonly units: readonly { readonly unit: SceneUnit; readonly rect: FlatRect }[]
}

const MARGIN_MM = 40

const isLong = ({ x1, y1, x2, y2 }: FlatLine): boolean => x1 !== x2 || y1 !== y2

/** Across and down axes of each drawing, whether each runs backwards, and the axis one looks along. */
export const VIEW_AXES = {
  plan: { across: 0, down: 1, flipDown: false, look: 2, nearIsHigh: true },
  side: { across: 0, down: 2, flipDown: true, look: 1, nearIsHigh: true },
  rear: { across: 1, down: 2, flipDown: true, look: 0, nearIsHigh: false },
} as const

/** A box as a view shows it. */
export function flatRect(box: Box, view: FlatView): FlatRect {
  const { across, down, flipDown } = VIEW_AXES[view]
  return {
    x: box.atMm[across],
    y: flipDown ? -(box.atMm[down] + box.sizeMm[down]) : box.atMm[down],
    width: box.sizeMm[across],
    height: box.sizeMm[down],
  }
}

export function flatten(description: SceneDescription, view: FlatView): FlatDrawing {
  const { across, down, flipDown, look, nearIsHigh } = VIEW_AXES[view]
  const point = (p: Vec3): { readonly x: number; readonly y: number } => ({
    x: p[across],
    y: flipDown ? -p[down] : p[down],
  })
  const rect = (box: Box): FlatRect => flatRect(box, view)
  const line = ([a, b]: Segment): FlatLine => {
    const from = point(a)
    const to = point(b)
    return { x1: from.x, y1: from.y, x2: to.x, y2: to.y }
  }
  const near = (unit: SceneUnit): number =>
    nearIsHigh ? unit.box.atMm[look] + unit.box.sizeMm[look] : -unit.box.atMm[look]
  const bounds = rect(boundsOf(description.outline.map((atMm) => ({ atMm, sizeMm: [0, 0, 0] }))))
  return {
    frame: {
      x: bounds.x - MARGIN_MM,
      y: bounds.y - MARGIN_MM,
      width: bounds.width + 2 * MARGIN_MM,
      height: bounds.height + 2 * MARGIN_MM,
    },
    faint: description.body.map(line).filter(isLong),
    lines: description.bays.flatMap((bay) => bay.edges.map(line)).filter(isLong),
    hatched: description.bays.flatMap((bay) => bay.hatched.map(rect)),
    bed: description.bed === null ? null : rect(description.bed),
    units: [...description.units].sort((a, b) => near(a) - near(b)).map((unit) => ({ unit, rect: rect(unit.box) })),
  }
}

/** Width of a letter beside its height, of the reading family. */
const LETTER_SHARE = 0.52
const LINE_SHARE = 1.1

export type FittedName = { readonly lines: readonly string[]; readonly letters: number }

/** The name in as many lines as give it the largest letters within the rectangle, none above `most`; heights in the rectangle's unit. */
export function fitName(name: string, { width, height }: FlatRect, most: number): FittedName {
  const fitted = wrapName(name).map((lines) => {
    const longest = Math.max(...lines.map((line) => line.length))
    const letters = Math.min(
      most,
      (height * 0.88) / (lines.length * LINE_SHARE),
      (width * 0.92) / (longest * LETTER_SHARE),
    )
    return { lines, letters }
  })
  return fitted.reduce((best, next) => (next.letters > best.letters ? next : best))
}
