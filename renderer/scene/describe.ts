/** From a plan and one moment to what the scene draws. Pure: the same input gives the same drawing. */
import type { Plan } from '../../shared/plan/index.ts'
import { bayEdges, openingJambs } from './bay-outline.ts'
import { bodyOutline } from './body-outline.ts'
import { add, boundsOf, cornersOf } from './bounds.ts'
import type { LayoutMoment } from './moment.ts'
import type { Box, HatchRank, PackBay, Placement, Reach, SceneBay, SceneDescription, SceneUnit, Vec3 } from './types.ts'

/** Common size of a car's tyre, half its diameter. From memory. */
const WHEEL_RADIUS_MM = 330
/** How far a unit that is in the way is drawn out, and how much farther each next one. */
const LIFTED_MM = 420
const LIFTED_STEP_MM = 120
/** Between the vehicle and what stands on the pitch beside it, in the drawing. */
const SITE_GAP_MM = 500

export type DescribeInput = {
  readonly plan: Plan
  readonly nightIndex: number
  readonly moment: LayoutMoment
  readonly nameOf: (id: string) => string
  readonly chosenUnitId: string | null
  readonly shade: 'access' | 'reach'
  readonly bed: Box | null
  /** Height of the roof lining over the load floor. */
  readonly roofMm: number
}

export function describe(input: DescribeInput): SceneDescription {
  const { plan, moment } = input
  const standing = placeSiteBays(plan.packingInput.bays)
  const bayById = new Map(standing.map((bay) => [bay.id, bay]))
  const reach = reachOf(plan, input.nightIndex, moment)
  const chosen = input.chosenUnitId === null ? undefined : reach.get(input.chosenUnitId)
  const inTheWay = chosen?.blockedBy ?? []
  const moved =
    moment.state === 'to-bed' || moment.state === 'to-drive' ? moment.moves[moment.done - 1]?.unitId : undefined
  const ranks = input.shade === 'access' ? accessRanks(plan) : reachRanks(reach)

  const units = moment.placements.flatMap((placement): readonly SceneUnit[] => {
    const bay = bayById.get(placement.bayId)
    if (bay === undefined) return []
    const id = placement.unitId
    const role =
      id === input.chosenUnitId ? 'chosen' : inTheWay.includes(id) ? 'in-the-way' : id === moved ? 'moved' : 'plain'
    return [{ id, name: input.nameOf(id), box: placedBox(bay, placement), rank: ranks.get(id) ?? 0, role }]
  })
  const shown = shownBays(standing, moment)
  const bays = shown.map((bay) => describeBay(bay, input.nameOf(bay.id)))
  const body = bodyOutline(standing, input.roofMm)
  return {
    bays,
    bed: moment.state === 'bed' || moment.state === 'to-drive' ? input.bed : null,
    units,
    ghosts: chosen === undefined ? [] : ghostsOf(plan, chosen, units),
    wheels: wheelsOf(plan),
    body,
    bounds: boundsOf(bays.map((bay) => bay.box)),
    outline: [...bays.flatMap((bay) => cornersOf(bay.box)), ...body.map(([from]) => from)],
  }
}

export const placedBox = (bay: PackBay, placement: Placement): Box => ({
  atMm: add(bay.originMm, placement.atMm),
  sizeMm: placement.sizeMm,
})

/** Bays that exist at this moment: site bays while standing, and whatever holds something. */
function shownBays(bays: readonly PackBay[], moment: LayoutMoment): readonly PackBay[] {
  const used = new Set(moment.placements.map((placement) => placement.bayId))
  const standing = moment.state !== 'drive'
  return bays.filter(
    (bay) =>
      used.has(bay.id) ||
      (bay.belongsTo === 'vehicle' && (standing ? bay.usable.bed || bay.usable.drive : bay.usable.drive)),
  )
}

/** Lockers and outside spots have no place in the vehicle frame: they are drawn in a row beside it, to the left. */
function placeSiteBays(bays: readonly PackBay[]): readonly PackBay[] {
  const inside = bays.filter((bay) => bay.belongsTo === 'vehicle')
  const { atMm } = boundsOf(inside.map((bay) => ({ atMm: bay.originMm, sizeMm: bay.sizeMm })))
  let x = 0
  return bays.map((bay) => {
    if (bay.belongsTo === 'vehicle') return bay
    const originMm: Vec3 = [x, atMm[1] - SITE_GAP_MM - bay.sizeMm[1], Math.min(0, atMm[2])]
    x += bay.sizeMm[0] + SITE_GAP_MM / 2
    return { ...bay, originMm }
  })
}

function describeBay(bay: PackBay, name: string): SceneBay {
  return {
    id: bay.id,
    name,
    box: { atMm: bay.originMm, sizeMm: bay.sizeMm },
    outside: bay.belongsTo === 'site',
    edges: bayEdges(bay),
    jambs: openingJambs(bay),
    hatched: bay.obstacles.map((obstacle) => ({ atMm: add(bay.originMm, obstacle.atMm), sizeMm: obstacle.sizeMm })),
  }
}

export function reachOf(plan: Plan, nightIndex: number, moment: LayoutMoment): ReadonlyMap<string, Reach> {
  const night = plan.packing.nights[nightIndex]
  const list = moment.state === 'drive' || night === undefined ? plan.packing.driveReach : night.reach
  return new Map(list.map((reach) => [reach.unitId, reach]))
}

/** 0 at hand on the road or on arriving, 1 in the evening, at night or in the morning, 3 seldom. */
function accessRanks(plan: Plan): ReadonlyMap<string, HatchRank> {
  const pieces = new Map(plan.packingInput.pieces.map((piece) => [piece.id, piece]))
  return new Map(
    plan.packing.units.map((unit): readonly [string, HatchRank] => {
      const classes = unit.pieceIds.flatMap((id) => pieces.get(id)?.access ?? [])
      if (classes.some((name) => name === 'en-route' || name === 'on-arrival' || name === 'emergency'))
        return [unit.id, 0]
      if (classes.some((name) => name !== 'seldom')) return [unit.id, 1]
      return [unit.id, 3]
    }),
  )
}

const reachRanks = (reach: ReadonlyMap<string, Reach>): ReadonlyMap<string, HatchRank> =>
  new Map(
    [...reach.values()].map((each): readonly [string, HatchRank] => [each.unitId, rankOfCount(each.blockedBy.length)]),
  )

const rankOfCount = (count: number): HatchRank => (count === 0 ? 0 : count === 1 ? 1 : count <= 3 ? 2 : 3)

/** The units in the way, drawn out through the opening that the reach goes by. */
function ghostsOf(plan: Plan, reach: Reach, units: readonly SceneUnit[]): readonly SceneUnit[] {
  const face = plan.packingInput.bays
    .flatMap((bay) => bay.openings)
    .find((opening) => opening.id === reach.openingId)?.face
  return reach.blockedBy.flatMap((id, index) => {
    const unit = units.find((each) => each.id === id)
    if (unit === undefined) return []
    const away = LIFTED_MM + LIFTED_STEP_MM * (reach.blockedBy.length - 1 - index)
    return [{ ...unit, box: { ...unit.box, atMm: add(unit.box.atMm, outwards(face ?? 'z+', away)) } }]
  })
}

function outwards(face: string, byMm: number): Vec3 {
  if (face === 'x-') return [-byMm, 0, 0]
  if (face === 'x+') return [byMm, 0, 0]
  if (face === 'y-') return [0, -byMm, 0]
  if (face === 'y+') return [0, byMm, 0]
  return [0, 0, byMm]
}

function wheelsOf(plan: Plan): SceneDescription['wheels'] {
  const { rearAxleXMm, wheelbaseMm } = plan.packingInput.vehicle
  const inside = plan.packingInput.bays.filter((bay) => bay.belongsTo === 'vehicle')
  if (rearAxleXMm === null || inside.length === 0) return []
  const { atMm, sizeMm } = boundsOf(inside.map((bay) => ({ atMm: bay.originMm, sizeMm: bay.sizeMm })))
  const z = Math.min(0, atMm[2]) - WHEEL_RADIUS_MM * 0.55
  const xs = wheelbaseMm === null ? [rearAxleXMm] : [rearAxleXMm, rearAxleXMm + wheelbaseMm]
  const ys = [atMm[1] - 40, atMm[1] + sizeMm[1] + 40]
  return xs.flatMap((x) => ys.map((y) => ({ centreMm: [x, y, z] as const, radiusMm: WHEEL_RADIUS_MM })))
}
