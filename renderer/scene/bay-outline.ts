/** A bay as a carpenter draws a box: its edges, with a gap where an opening meets them, and the jambs of each opening. */
import type { PackBay, PackOpening, Segment, Vec3 } from './types.ts'

/** An opening whose side lies this near to an edge of the bay leaves a gap in that edge. */
const NEAR_EDGE_MM = 80
/** Length of the two short strokes that mark each corner of an opening. */
const JAMB_MM = 60

type Axis = 0 | 1 | 2
type Span = readonly [number, number]

const AXES = [0, 1, 2] as const

const otherAxes = (axis: Axis): readonly [Axis, Axis] => (axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1])

const faceAxis = (face: PackOpening['face']): Axis => (face[0] === 'x' ? 0 : face[0] === 'y' ? 1 : 2)

const put = (axis: Axis, value: number, others: readonly [number, number]): Vec3 =>
  axis === 0
    ? [value, others[0], others[1]]
    : axis === 1
      ? [others[0], value, others[1]]
      : [others[0], others[1], value]

/** A point of the bay's wall box, leant in by the slopes, in the vehicle frame. */
function leanIn(bay: PackBay, point: Vec3): Vec3 {
  const height01 = bay.sizeMm[2] === 0 ? 0 : point[2] / bay.sizeMm[2]
  let [x, y] = point
  for (const slope of bay.slopes) {
    const inset = slope.insetFloorMm + (slope.insetTopMm - slope.insetFloorMm) * height01
    if (slope.face === 'x-') x = Math.max(x, inset)
    else if (slope.face === 'x+') x = Math.min(x, bay.sizeMm[0] - inset)
    else if (slope.face === 'y-') y = Math.max(y, inset)
    else y = Math.min(y, bay.sizeMm[1] - inset)
  }
  return [bay.originMm[0] + x, bay.originMm[1] + y, bay.originMm[2] + point[2]]
}

/** The spans of an edge that the bay's openings take away. */
function gapsOf(bay: PackBay, axis: Axis, sides: readonly [number, number]): readonly Span[] {
  const across = otherAxes(axis)
  const gaps: Span[] = []
  for (const opening of bay.openings) {
    const normal = faceAxis(opening.face)
    if (normal === axis) continue
    const place = across[0] === normal ? 0 : 1
    const wall = opening.face.endsWith('+') ? bay.sizeMm[normal] : 0
    if (sides[place] !== wall) continue
    const [first] = otherAxes(normal)
    const along = first === axis ? 0 : 1
    const side = along === 0 ? 1 : 0
    const edgeAt = sides[place === 0 ? 1 : 0]
    const touches =
      Math.abs(opening.fromMm[side] - edgeAt) <= NEAR_EDGE_MM || Math.abs(opening.toMm[side] - edgeAt) <= NEAR_EDGE_MM
    if (touches) gaps.push([opening.fromMm[along], opening.toMm[along]])
  }
  return gaps
}

/** What is left of 0..length when the gaps are taken out. */
export function remainingSpans(length: number, gaps: readonly Span[]): readonly Span[] {
  let spans: readonly Span[] = [[0, length]]
  for (const [from, to] of gaps) {
    spans = spans.flatMap(([a, b]): readonly Span[] => {
      if (to <= a || from >= b) return [[a, b]]
      const left: readonly Span[] = from > a ? [[a, from]] : []
      const right: readonly Span[] = to < b ? [[to, b]] : []
      return [...left, ...right]
    })
  }
  return spans
}

/** The edges of a bay, vehicle frame, with a gap where an opening meets them. */
export function bayEdges(bay: PackBay): readonly Segment[] {
  const edges: Segment[] = []
  for (const axis of AXES) {
    const [a, b] = otherAxes(axis)
    for (const u of [0, bay.sizeMm[a]]) {
      for (const v of [0, bay.sizeMm[b]]) {
        for (const [from, to] of remainingSpans(bay.sizeMm[axis], gapsOf(bay, axis, [u, v]))) {
          edges.push([leanIn(bay, put(axis, from, [u, v])), leanIn(bay, put(axis, to, [u, v]))])
        }
      }
    }
  }
  return edges
}

/** Two short strokes at each corner of each opening. */
export function openingJambs(bay: PackBay): readonly Segment[] {
  return bay.openings.flatMap((opening) => {
    const axis = faceAxis(opening.face)
    const wall = opening.face.endsWith('+') ? bay.sizeMm[axis] : 0
    const at = (u: number, v: number): Vec3 => leanIn(bay, put(axis, wall, [u, v]))
    const [u0, v0] = opening.fromMm
    const [u1, v1] = opening.toMm
    const strokes: Segment[] = []
    for (const [u, inU] of [
      [u0, 1],
      [u1, -1],
    ] as const) {
      for (const [v, inV] of [
        [v0, 1],
        [v1, -1],
      ] as const) {
        strokes.push([at(u, v), at(u + inU * Math.min(JAMB_MM, (u1 - u0) / 2), v)])
        strokes.push([at(u, v), at(u, v + inV * Math.min(JAMB_MM, (v1 - v0) / 2))])
      }
    }
    return strokes
  })
}
