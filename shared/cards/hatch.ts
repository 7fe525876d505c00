/** Hatching of a rectangle: parallel lines at 45 degrees, cut at its edges. */
import type { Point, Shape } from './model.ts'

const HATCH_WEIGHT_MM = 0.12

export function hatchRect(atMm: Point, sizeMm: Point, gapMm: number): readonly Shape[] {
  const [left, top] = atMm
  const [width, height] = sizeMm
  const lines: Shape[] = []
  for (let along = gapMm; along < width + height; along += gapMm) {
    const fromX = Math.min(along, width)
    const toX = Math.max(0, along - height)
    lines.push({
      kind: 'line',
      fromMm: [left + fromX, top + along - fromX],
      toMm: [left + toX, top + along - toX],
      weightMm: HATCH_WEIGHT_MM,
    })
  }
  return lines
}
