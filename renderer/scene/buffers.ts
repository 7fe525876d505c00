/** Growing vertex lists for the two kinds of thing the scene draws: flat faces with a hatch, and lines. */
import type { Box, Segment, Vec3 } from './types.ts'

export type Rgb = readonly [number, number, number]

/** Three's frame: x forward, y up, z to the right. The vehicle's: x forward, y to the right, z up. */
export const toScene = (p: Vec3): Vec3 => [p[0], p[2], p[1]]

export class FaceBuffer {
  readonly positions: number[] = []
  readonly colours: number[] = []
  readonly inks: number[] = []
  readonly patterns: number[] = []
  readonly spacings: number[] = []
  readonly indices: number[] = []

  /** A box with a tone for its top, its ends and its sides, hatched where `spacingMm` is above zero. */
  addBox(box: Box, tones: readonly [Rgb, Rgb, Rgb], ink: Rgb, spacingMm: number): void {
    const [x0, y0, z0] = box.atMm
    const [x1, y1, z1] = [x0 + box.sizeMm[0], y0 + box.sizeMm[1], z0 + box.sizeMm[2]]
    const [top, end, side] = tones
    this.addFace(
      [
        [x0, y0, z1],
        [x1, y0, z1],
        [x1, y1, z1],
        [x0, y1, z1],
      ],
      top,
      ink,
      spacingMm,
    )
    this.addFace(
      [
        [x0, y0, z0],
        [x0, y1, z0],
        [x1, y1, z0],
        [x1, y0, z0],
      ],
      side,
      ink,
      spacingMm,
    )
    this.addFace(
      [
        [x0, y0, z0],
        [x0, y0, z1],
        [x0, y1, z1],
        [x0, y1, z0],
      ],
      end,
      ink,
      spacingMm,
    )
    this.addFace(
      [
        [x1, y0, z0],
        [x1, y1, z0],
        [x1, y1, z1],
        [x1, y0, z1],
      ],
      end,
      ink,
      spacingMm,
    )
    this.addFace(
      [
        [x0, y0, z0],
        [x1, y0, z0],
        [x1, y0, z1],
        [x0, y0, z1],
      ],
      side,
      ink,
      spacingMm,
    )
    this.addFace(
      [
        [x0, y1, z0],
        [x0, y1, z1],
        [x1, y1, z1],
        [x1, y1, z0],
      ],
      side,
      ink,
      spacingMm,
    )
  }

  private addFace(corners: readonly [Vec3, Vec3, Vec3, Vec3], tone: Rgb, ink: Rgb, spacingMm: number): void {
    const first = this.positions.length / 3
    for (const corner of corners) {
      this.positions.push(...toScene(corner))
      this.colours.push(...tone)
      this.inks.push(...ink)
      this.patterns.push(corner[0] + corner[1] + corner[2])
      this.spacings.push(spacingMm)
    }
    this.indices.push(first, first + 1, first + 2, first, first + 2, first + 3)
  }
}

export class LineBuffer {
  readonly positions: number[] = []
  readonly colours: number[] = []

  addSegment([from, to]: Segment, colour: Rgb): void {
    this.positions.push(...toScene(from), ...toScene(to))
    this.colours.push(...colour, ...colour)
  }

  addBox(box: Box, colour: Rgb): void {
    for (const segment of boxEdges(box)) this.addSegment(segment, colour)
  }

  /** A circle that stands upright along the vehicle, in short chords. */
  addWheel(centre: Vec3, radiusMm: number, colour: Rgb, chords = 28): void {
    const at = (index: number): Vec3 => {
      const angle = (index / chords) * 2 * Math.PI
      return [centre[0] + radiusMm * Math.cos(angle), centre[1], centre[2] + radiusMm * Math.sin(angle)]
    }
    for (let index = 0; index < chords; index += 1) this.addSegment([at(index), at(index + 1)], colour)
  }

  /** Slanting strokes over the top and the two long sides of a solid, as wood is hatched. */
  addHatch(box: Box, spacingMm: number, colour: Rgb): void {
    const [x0, y0, z0] = box.atMm
    const [length, width, height] = box.sizeMm
    for (const [u, v] of slants(length, height, spacingMm)) {
      for (const y of [y0, y0 + width])
        this.addSegment(
          [
            [x0 + u[0], y, z0 + u[1]],
            [x0 + v[0], y, z0 + v[1]],
          ],
          colour,
        )
    }
    for (const [u, v] of slants(length, width, spacingMm)) {
      this.addSegment(
        [
          [x0 + u[0], y0 + u[1], z0 + height],
          [x0 + v[0], y0 + v[1], z0 + height],
        ],
        colour,
      )
    }
  }
}

/** The twelve edges of a box. */
export function boxEdges(box: Box): readonly Segment[] {
  const [x0, y0, z0] = box.atMm
  const [x1, y1, z1] = [x0 + box.sizeMm[0], y0 + box.sizeMm[1], z0 + box.sizeMm[2]]
  const edges: Segment[] = []
  for (const y of [y0, y1])
    for (const z of [z0, z1])
      edges.push([
        [x0, y, z],
        [x1, y, z],
      ])
  for (const x of [x0, x1])
    for (const z of [z0, z1])
      edges.push([
        [x, y0, z],
        [x, y1, z],
      ])
  for (const x of [x0, x1])
    for (const y of [y0, y1])
      edges.push([
        [x, y, z0],
        [x, y, z1],
      ])
  return edges
}

type Flat = readonly [number, number]

/** Parallel strokes at 45 degrees that fill a rectangle. */
export function slants(width: number, height: number, spacing: number): readonly (readonly [Flat, Flat])[] {
  const strokes: (readonly [Flat, Flat])[] = []
  for (let sum = spacing; sum < width + height; sum += spacing) {
    strokes.push([
      [Math.min(sum, width), Math.max(0, sum - width)],
      [Math.max(0, sum - height), Math.min(sum, height)],
    ])
  }
  return strokes
}
