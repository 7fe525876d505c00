/** A unit in the hand: where a movement on a flat drawing takes it, in which bay that is, and whether it may stand there. Pure. */
import { handScene, tryPose } from '../../shared/plan/index.ts'
import type { HandScene, Plan, PoseVerdict } from '../../shared/plan/index.ts'
import { add } from './bounds.ts'
import { VIEW_AXES } from './flat-drawing.ts'
import type { FlatView } from './flat-drawing.ts'
import type { LayoutMoment } from './moment.ts'
import type { Box, Placement, SceneBay, Vec3 } from './types.ts'

export type Held = {
  readonly unitId: string
  readonly layout: 'drive' | 'bed'
  readonly hand: HandScene
  /** As it is held, in the frame of the drawing. */
  readonly box: Box
  readonly bayId: string
  readonly verdict: PoseVerdict
  /** Where it would come to stand if let go now, in the frame of the drawing; null where nowhere in this bay. */
  readonly lands: Box | null
}

/** Takes a unit out of a layout that stands still; null while moves are being made, or where no bay holds it. */
export function takeUp(
  plan: Plan,
  nightIndex: number,
  moment: LayoutMoment,
  bays: readonly SceneBay[],
  unitId: string,
): Held | null {
  const night = plan.packing.nights[nightIndex]
  const layout = moment.state === 'drive' ? 'drive' : 'bed'
  if (moment.state !== 'drive' && (moment.state !== 'bed' || night === undefined)) return null
  const place = moment.placements.find((each) => each.unitId === unitId)
  const bay = bays.find(({ id }) => id === place?.bayId)
  if (place === undefined || bay === undefined) return null
  const hand =
    layout === 'drive' || night === undefined
      ? handScene(plan.packingInput, plan.packing.drive, null)
      : handScene(plan.packingInput, night.bed, night.nightId)
  const box: Box = { atMm: add(bay.box.atMm, place.atMm), sizeMm: place.sizeMm }
  return judged({ unitId, layout, hand, bayId: bay.id }, box, bays)
}

/** The unit moved along the two axes of a drawing, mm on the drawing: right and down are positive. */
export function moveBy(held: Held, view: FlatView, byMm: readonly [number, number], bays: readonly SceneBay[]): Held {
  const { across, down, flipDown } = VIEW_AXES[view]
  const moved: [number, number, number] = [...held.box.atMm]
  moved[across] += byMm[0]
  moved[down] += flipDown ? -byMm[1] : byMm[1]
  const box: Box = { atMm: moved, sizeMm: held.box.sizeMm }
  const bay = bayUnder(box, view, held.bayId, bays)
  if (bay === null || bay.id === held.bayId) return judged(held, box, bays)
  // In another bay the axis one looks along starts at that bay's floor or wall.
  const { look } = VIEW_AXES[view]
  const settled: [number, number, number] = [...moved]
  settled[look] = bay.box.atMm[look]
  return judged({ ...held, bayId: bay.id }, { atMm: settled, sizeMm: box.sizeMm }, bays)
}

/** A quarter turn on the floor, about its own middle. */
export function turnRound(held: Held, bays: readonly SceneBay[]): Held {
  const [length, width, height] = held.box.sizeMm
  const [x, y, z] = held.box.atMm
  const half = Math.round((length - width) / 2)
  return judged(held, { atMm: [x + half, y - half, z], sizeMm: [width, length, height] }, bays)
}

/** The placement to fix when the hand lets go; null where the unit may stand nowhere near. */
export const letGo = (held: Held): Placement | null => held.verdict.nearest

type Grip = Pick<Held, 'unitId' | 'layout' | 'hand' | 'bayId'>

function judged({ unitId, layout, hand, bayId }: Grip, box: Box, bays: readonly SceneBay[]): Held {
  const origin = bays.find(({ id }) => id === bayId)?.box.atMm ?? [0, 0, 0]
  const inBay = (axis: 0 | 1 | 2): number => Math.round(box.atMm[axis] - origin[axis])
  const atMm: Vec3 = [inBay(0), inBay(1), inBay(2)]
  const verdict = tryPose(hand, { unitId, bayId, atMm, sizeMm: box.sizeMm })
  const { nearest } = verdict
  const lands = nearest === null ? null : { atMm: add(origin, nearest.atMm), sizeMm: nearest.sizeMm }
  return { unitId, layout, hand, bayId, box, verdict, lands }
}

/** The bay under the middle of a box as the drawing shows it: the one it is in where possible, else the smallest. */
function bayUnder(box: Box, view: FlatView, bayId: string, bays: readonly SceneBay[]): SceneBay | null {
  const axes = [VIEW_AXES[view].across, VIEW_AXES[view].down] as const
  const under = bays.filter((bay) =>
    axes.every((axis) => {
      const middle = box.atMm[axis] + box.sizeMm[axis] / 2
      return middle >= bay.box.atMm[axis] && middle <= bay.box.atMm[axis] + bay.box.sizeMm[axis]
    }),
  )
  const area = ({ box: { sizeMm } }: SceneBay): number => sizeMm[axes[0]] * sizeMm[axes[1]]
  return under.find(({ id }) => id === bayId) ?? under.sort((a, b) => area(a) - area(b))[0] ?? null
}
