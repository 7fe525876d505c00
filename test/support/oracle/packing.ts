/** Judges a whole packing: each layout, the masses, the bins' insides, reach, the loading order and each changeover. */
import type {
  InnerPacking,
  Layout,
  PackBay,
  PackingInput,
  PackingOutcome,
  Placement,
  Reach,
} from '../../../shared/packing/index.ts'
import { axisOf, covered01, intersect, lo, hi, solidOfPlacement, sweepOut, sharedFromAbove } from './boxes.ts'
import { changeoverFaults, landing } from './changeover.ts'
import { contents, layoutFaults } from './layout.ts'

/** Rounding of axle shares, g. */
const AXLE_SLACK_G = 2

export function packingFaults(input: PackingInput, outcome: PackingOutcome): readonly string[] {
  const faults = [
    ...layoutFaults({ input, outcome, layout: outcome.drive, night: null, unplaced: outcome.driveUnplaced }),
    ...massFaults(input, outcome),
    ...outcome.bins.flatMap((bin) => innerFaults(input, outcome, bin)),
    ...reachFaults(input, outcome.drive, outcome.driveReach, 'drive'),
    ...loadingFaults(input, outcome),
  ]
  if (outcome.nights.length !== input.nights.length)
    faults.push(`${outcome.nights.length} of ${input.nights.length} nights`)
  for (const packed of outcome.nights) {
    const night = input.nights.find(({ id }) => id === packed.nightId)
    if (night === undefined) {
      faults.push(`night ${packed.nightId} is unknown`)
      continue
    }
    faults.push(...layoutFaults({ input, outcome, layout: packed.bed, night, unplaced: packed.unplaced }))
    faults.push(...reachFaults(input, packed.bed, packed.reach, `bed ${night.id}`))
    faults.push(
      ...changeoverFaults(input, outcome, {
        night,
        changeover: packed.changeover,
        from: outcome.drive,
        to: packed.bed,
        name: `changeover ${night.id}`,
      }),
    )
    faults.push(
      ...changeoverFaults(input, outcome, {
        night,
        changeover: packed.changeback,
        from: packed.bed,
        to: outcome.drive,
        name: `changeback ${night.id}`,
      }),
    )
  }
  return faults
}

/** Masses by moments, told as faults where a limit is passed. */
/** Each unit in turn goes in past those that are in already, and stands. */
function loadingFaults(input: PackingInput, outcome: PackingOutcome): string[] {
  const at = new Map(outcome.drive.placements.map((placement) => [placement.unitId, placement]))
  const state = new Map<string, Placement>()
  const faults: string[] = []
  if (outcome.loadingOrder.length !== at.size) faults.push('the loading order does not name each unit once')
  for (const unitId of outcome.loadingOrder) {
    const placement = at.get(unitId)
    if (placement === undefined) {
      faults.push(`the loading order names ${unitId}, which is not loaded`)
      continue
    }
    const why = landing(input, state, placement)
    if (why !== null) faults.push(`loading ${unitId}: ${why}`)
    state.set(unitId, placement)
  }
  return faults
}

function massFaults(input: PackingInput, outcome: PackingOutcome): string[] {
  const one = { input, outcome, layout: outcome.drive, night: null, unplaced: [] }
  const massOf = (unitId: string): number =>
    (input.bins.find(({ id }) => id === unitId)?.massG ?? 0) +
    contents(one, unitId).reduce((sum, { massG }) => sum + massG, 0)
  const { vehicle } = input
  const faults: string[] = []
  let loadG = 0
  let frontG = 0
  let roofG = 0
  const bayById = new Map(input.bays.map((bay) => [bay.id, bay]))
  for (const placement of outcome.drive.placements) {
    const bay = bayById.get(placement.bayId)
    const massG = massOf(placement.unitId)
    loadG += massG
    if (bay?.kind === 'roof-box') roofG += massG
    if (bay !== undefined && vehicle.wheelbaseMm !== null && vehicle.rearAxleXMm !== null) {
      const x = bay.originMm[0] + placement.atMm[0] + placement.sizeMm[0] / 2
      frontG += (massG * (x - vehicle.rearAxleXMm)) / vehicle.wheelbaseMm
    }
  }
  const told = (rule: string): boolean => outcome.faults.some((fault) => fault.rule === rule)
  const limit = (rule: string, amount: number, most: number | null | undefined): void => {
    if (most !== null && most !== undefined && amount > most + AXLE_SLACK_G && !told(rule))
      faults.push(`${rule} passed (${amount.toFixed(0)} of ${most} g) and not told`)
  }
  if (Math.abs(outcome.mass.loadG - loadG) > AXLE_SLACK_G) faults.push(`load is ${loadG} g, said ${outcome.mass.loadG}`)
  limit('payload', loadG, vehicle.payloadG)
  limit('roof-load', roofG, vehicle.roofLimitG)
  const { frontAxle, rearAxle } = vehicle
  if (frontAxle !== null && outcome.mass.frontAxleG !== null) {
    limit('front-axle', frontAxle.readyG + frontG, frontAxle.limitG)
    if (Math.abs(outcome.mass.frontAxleG - frontAxle.readyG - frontG) > AXLE_SLACK_G)
      faults.push(`front axle is ${(frontAxle.readyG + frontG).toFixed(0)} g, said ${outcome.mass.frontAxleG}`)
  }
  if (rearAxle !== null && outcome.mass.rearAxleG !== null)
    limit('rear-axle', rearAxle.readyG + loadG - frontG, rearAxle.limitG)
  return faults
}

/** Each bin's own packing: inside, not overlapping, resting, and with all its pieces. */
function innerFaults(input: PackingInput, outcome: PackingOutcome, inner: InnerPacking): string[] {
  const bin = input.bins.find(({ id }) => id === inner.binId)
  if (bin === undefined) return [`bin ${inner.binId} is unknown`]
  const faults: string[] = []
  const solids = inner.placements.map((placement) => ({ id: placement.unitId, solid: solidOfPlacement(placement) }))
  for (const { id, solid } of solids) {
    if ([0, 1, 2].some((axis) => lo(solid, axis) < 0 || hi(solid, axis) > (bin.innerMm[axis] ?? 0)))
      faults.push(`${id} sticks out of ${bin.id}`)
    const under = solids.filter((other) => other.solid.hi[2] === solid.lo[2]).map((other) => other.solid)
    if (solid.lo[2] > 0 && covered01(solid, under) < 1) faults.push(`${id} hangs in ${bin.id}`)
  }
  solids.forEach((a, at) =>
    solids
      .slice(at + 1)
      .forEach((b) => intersect(a.solid, b.solid) && faults.push(`${a.id} overlaps ${b.id} in ${bin.id}`)),
  )
  const told = new Set(outcome.driveUnplaced.map(({ unitId }) => unitId))
  for (const pieceId of outcome.units.find(({ id }) => id === bin.id)?.pieceIds ?? []) {
    if (!inner.placements.some(({ unitId }) => unitId === pieceId) && !told.has(pieceId))
      faults.push(`${pieceId} is in ${bin.id} without a place in it`)
  }
  return faults
}

/** Reach again, from the definition: what lies in the sweep or rests on it, transitively, by the best opening. */
function reachFaults(input: PackingInput, layout: Layout, told: readonly Reach[], name: string): string[] {
  return layout.placements.flatMap((placement) => {
    const bay = input.bays.find(({ id }) => id === placement.bayId)
    const said = told.find(({ unitId }) => unitId === placement.unitId)
    if (bay === undefined || said === undefined) return [`${name}: reach of ${placement.unitId} is not told`]
    if (said.openingId === null) return []
    const opening = bay.openings.find(({ id }) => id === said.openingId)
    if (opening === undefined) return [`${name}: ${placement.unitId} is reached by an opening its bay has not`]
    const inBay = layout.placements.filter(({ bayId }) => bayId === bay.id)
    const expected = retrievalSet(placement, inBay, bay, opening.face)
    const same = expected.size === said.blockedBy.length && said.blockedBy.every((id) => expected.has(id))
    return same
      ? []
      : [
          `${name}: ${placement.unitId} by ${opening.id} needs ${[...expected].join(',') || 'nothing'}, said ${said.blockedBy.join(',') || 'nothing'}`,
        ]
  })
}

function retrievalSet(
  wanted: Placement,
  inBay: readonly Placement[],
  bay: PackBay,
  face: Parameters<typeof sweepOut>[1],
): Set<string> {
  const found = new Set<string>()
  const queue = [wanted]
  const axis = axisOf(face)
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const solid = solidOfPlacement(next)
    const sweep = sweepOut(solid, face, bay)
    for (const other of inBay) {
      if (other.unitId === wanted.unitId || found.has(other.unitId) || other.unitId === next.unitId) continue
      const box = solidOfPlacement(other)
      const inWay = intersect(box, sweep)
      const onTop = box.lo[2] === solid.hi[2] && sharedFromAbove(box, solid) > 0
      if (inWay || (axis !== 2 && onTop)) {
        found.add(other.unitId)
        queue.push(other)
      }
    }
  }
  return found
}
