/** Where each unit is drawn while it glides from one place to the next. */
import type { Box, SceneDescription, Vec3 } from './types.ts'

export type Poses = ReadonlyMap<string, Box>

export const posesOf = (description: SceneDescription): Poses =>
  new Map(description.units.map((unit) => [unit.id, unit.box]))

/** Slow at both ends. */
const ease = (share: number): number => share * share * (3 - 2 * share)

/** The poses `share` of the way from one set to another; a unit that was not there before stands at its new place at once. */
export function blendPoses(from: Poses, to: Poses, share: number): Poses {
  if (share >= 1) return to
  const k = ease(share)
  const mix = (a: Vec3, b: Vec3): Vec3 => [a[0] + (b[0] - a[0]) * k, a[1] + (b[1] - a[1]) * k, a[2] + (b[2] - a[2]) * k]
  return new Map(
    [...to].map(([id, box]) => {
      const start = from.get(id)
      return [
        id,
        start === undefined ? box : { atMm: mix(start.atMm, box.atMm), sizeMm: mix(start.sizeMm, box.sizeMm) },
      ]
    }),
  )
}
