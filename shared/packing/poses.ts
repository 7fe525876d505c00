/** The ways a unit may stand: which edge is upright, how it is turned, how far a soft one may be pressed. */
import type { Vec3 } from './types.ts'

type Edge = 0 | 1 | 2

export type Pose = {
  readonly sizeMm: Vec3
  /** Least size along each axis; only one axis at a time may be pressed. */
  readonly leastMm: Vec3
  readonly edges: readonly [Edge, Edge, Edge]
}

const OTHERS: readonly (readonly [Edge, Edge])[] = [
  [1, 2],
  [0, 2],
  [0, 1],
]

/** A product that passes a whole millimetre by floating point alone (200 · 0.55) is that millimetre, mm. */
const ROUNDING_MM = 1e-6

/** Every distinct way to stand a unit of `sizeMm` on the edges allowed upright. */
export const posesOf = (
  sizeMm: Vec3,
  uprightEdges: readonly Edge[],
  soft: boolean,
  squeezeTo01: number,
): readonly Pose[] => {
  const poses: Pose[] = []
  const seen = new Set<string>()
  const least = (edge: Edge): number =>
    soft ? Math.max(1, Math.ceil(sizeMm[edge] * squeezeTo01 - ROUNDING_MM)) : sizeMm[edge]
  for (const up of uprightEdges) {
    const [a, b] = OTHERS[up] ?? [0, 1]
    for (const [first, second] of [
      [a, b],
      [b, a],
    ] as const) {
      const size: Vec3 = [sizeMm[first], sizeMm[second], sizeMm[up]]
      const key = size.join()
      if (seen.has(key)) continue
      seen.add(key)
      poses.push({
        sizeMm: size,
        leastMm: [least(first), least(second), least(up)],
        edges: [first, second, up],
      })
    }
  }
  return poses
}

/**
 * The size a pose takes in a space of `roomMm`: unpressed where it fits, pressed along one axis where only that is too long.
 * Null where it does not go in.
 */
export const sizeWithin = (pose: Pose, roomMm: Vec3): Vec3 | null => {
  const [dx, dy, dz] = pose.sizeMm
  const tooLong = (dx > roomMm[0] ? 1 : 0) + (dy > roomMm[1] ? 1 : 0) + (dz > roomMm[2] ? 1 : 0)
  if (tooLong === 0) return pose.sizeMm
  if (tooLong > 1) return null
  if (dx > roomMm[0]) return pose.leastMm[0] <= roomMm[0] ? [roomMm[0], dy, dz] : null
  if (dy > roomMm[1]) return pose.leastMm[1] <= roomMm[1] ? [dx, roomMm[1], dz] : null
  return pose.leastMm[2] <= roomMm[2] ? [dx, dy, roomMm[2]] : null
}

/** Whether a size as placed is one that the pose may take. */
export const poseAllows = (pose: Pose, sizeMm: Vec3): boolean => {
  let pressed = 0
  for (const axis of [0, 1, 2] as const) {
    if (sizeMm[axis] === pose.sizeMm[axis]) continue
    if (sizeMm[axis] > pose.sizeMm[axis] || sizeMm[axis] < pose.leastMm[axis]) return false
    pressed++
  }
  return pressed <= 1
}
