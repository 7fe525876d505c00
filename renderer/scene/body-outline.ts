/** The vehicle around its bays: two side profiles and the lines that join them, in common proportions. Only to see where nose and tail are. */
import type { PackBay, Segment, Vec3 } from './types.ts'
import { boundsOf } from './bounds.ts'

/** Distances of the outline from the bays it holds, mm: by eye. */
const SKIN_MM = 70
const SILL_MM = 190
const NOSE_MM = 160
const BELT_MM = 480
const HOOD_OVER_MM = 90
const WINDSCREEN_SHARE = 0.28

/** What of a bay tells where the body runs. */
type BodyBay = Pick<PackBay, 'belongsTo' | 'kind' | 'originMm' | 'sizeMm'>
type Profile = readonly (readonly [xMm: number, zMm: number])[]

/** `roofMm`: height of the roof lining over the load floor. */
export function bodyOutline(bays: readonly BodyBay[], roofMm: number): readonly Segment[] {
  const inside = bays.filter((bay) => bay.belongsTo === 'vehicle' && bay.kind !== 'roof-box')
  if (inside.length === 0) return []
  const { atMm, sizeMm } = boundsOf(inside.map((bay) => ({ atMm: bay.originMm, sizeMm: bay.sizeMm })))
  const front = inside.find((bay) => bay.kind === 'front-compartment')
  const profile = profileOf(atMm[0], atMm[0] + sizeMm[0], roofMm, front)
  const sides = [atMm[1] - SKIN_MM, atMm[1] + sizeMm[1] + SKIN_MM]
  const along = sides.flatMap((y) =>
    profile.map(([x, z], index): Segment => {
      const next = profile[(index + 1) % profile.length] ?? [x, z]
      return [
        [x, y, z],
        [next[0], y, next[1]],
      ]
    }),
  )
  const across = profile.map(
    ([x, z]): Segment =>
      [
        [x, sides[0] ?? 0, z],
        [x, sides[1] ?? 0, z],
      ] as const satisfies readonly [Vec3, Vec3],
  )
  return [...along, ...across]
}

function profileOf(rear: number, farthest: number, roofMm: number, front: BodyBay | undefined): Profile {
  const roof = roofMm + SKIN_MM
  const nose = farthest + NOSE_MM
  const hood = front === undefined ? Math.min(BELT_MM, roof * 0.7) : front.originMm[2] + front.sizeMm[2] + HOOD_OVER_MM
  const cowl = front === undefined ? nose - 0.22 * (nose - rear) : front.originMm[0] - SKIN_MM
  const header = cowl - WINDSCREEN_SHARE * (cowl - rear)
  return [
    [rear - SKIN_MM, -SILL_MM],
    [rear - SKIN_MM, Math.min(BELT_MM, roof * 0.6)],
    [rear + SKIN_MM, roof],
    [header, roof],
    [cowl, hood + HOOD_OVER_MM],
    [nose - SKIN_MM, hood],
    [nose, -SILL_MM + SKIN_MM],
    [nose - SKIN_MM, -SILL_MM],
  ]
}
