/** Cost of a layout, added up from the load and the placements alone: the sum that the search makes small. Slow and obvious. */
import type { PackBay, PackBin, PackingInput, PackNight, PackPiece, Placement } from '../../../shared/packing/index.ts'
import { intersect, solidInVehicle, solidOf, solidOfPlacement } from './boxes.ts'
import type { Solid } from './boxes.ts'
import { barredIn, canLeave } from './reach.ts'
import type { Part } from './reach.ts'

export type CostCase = {
  readonly input: PackingInput
  /** Null for the drive layout. */
  readonly night: PackNight | null
  readonly placements: readonly Placement[]
  /** Where each unit is in the other layout, `free` where that does not matter; null where there is no other layout. */
  readonly origin: ReadonlyMap<string, Placement | 'free'> | null
  /** By unit: places, vehicle frame, that it had better leave empty. */
  readonly tangles: ReadonlyMap<string, readonly Solid[]>
  /** By unit: units that bar it by day. */
  readonly barredByDay: ReadonlyMap<string, readonly string[]>
  /** Solid parts of each bay. */
  readonly partsOf: (bay: PackBay) => readonly Part[]
}

/** A bin with all its pieces, or a loose piece; `here` are the pieces in it while the layout stands. */
type Unit = {
  readonly id: string
  readonly bin: PackBin | null
  readonly pieces: readonly PackPiece[]
  readonly here: readonly PackPiece[]
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** The units that this layout should hold. */
function unitsOf({ input, night }: CostCase): readonly Unit[] {
  const state = (piece: PackPiece, on: PackNight): string => on.states[piece.id] ?? 'stored'
  const here = (piece: PackPiece): boolean => night === null || state(piece, night) === 'stored'
  const stays = (piece: PackPiece): boolean =>
    input.nights.length > 0 && input.nights.every((each) => state(piece, each) === 'left-behind')
  const bins = input.bins.map((bin): Unit => {
    const pieces = input.pieces.filter(({ binId }) => binId === bin.id)
    return { id: bin.id, bin, pieces, here: pieces.filter(here) }
  })
  const loose = input.pieces
    .filter((piece) => piece.binId === null && here(piece) && !(night === null && stays(piece)))
    .map((piece): Unit => ({ id: piece.id, bin: null, pieces: [piece], here: [piece] }))
  return [...bins, ...loose]
}

const massOf = (unit: Unit): number => (unit.bin?.massG ?? 0) + sum(unit.here.map(({ massG }) => massG))
const sizeOf = (unit: Unit): readonly number[] => unit.bin?.sizeMm ?? unit.pieces[0]?.sizeMm ?? []
const wanted = (unit: Unit, access: PackPiece['access'][number]): boolean =>
  unit.here.some((piece) => piece.access.includes(access))

/** How hard a thing is to be had: the things before it, a twenty-fifth of a move a kilogram of them, half a move if round a corner. */
const handling = (things: number, massG: number, straight: boolean): number =>
  things + (massG / 1000) * 0.04 + (straight ? 0 : 0.5)

/** Legal but unwanted: 1 better elsewhere, 2 only in need. */
function tierOf({ night }: CostCase, unit: Unit, bay: PackBay): number {
  if (bay.lastResort) return 2
  const has = (test: (piece: PackPiece) => boolean): boolean => unit.here.some(test)
  if (night === null) return bay.sleepingSpace && has(({ traits }) => traits.fuel) ? 2 : 0
  if (bay.closedByBed && (wanted(unit, 'evening') || wanted(unit, 'morning'))) return 1
  const larder = has(({ traits }) => traits.food || traits.scented)
  return bay.belongsTo === 'site' && bay.kind !== 'outside' && !larder ? 1 : 0
}

type BayCost = { readonly hard: number; readonly reach: number; readonly bars: ReadonlyMap<string, readonly string[]> }

function bayCost(one: CostCase, bay: PackBay, units: ReadonlyMap<string, Unit>): BayCost {
  const { input, night, placements } = one
  const held = placements.filter(({ bayId }) => bayId === bay.id)
  const solids = held.map(solidOfPlacement)
  const inside = night === null ? bay.reachFromDriverSeat : bay.reachFromBed
  const parts = one.partsOf(bay)
  const barred = barredIn({ bay, parts }, solids, inside)
  const bedding = (unit: Unit): boolean =>
    input.nights.some((each) => unit.bin === null && each.states[unit.id] === 'bed')
  let hard = 3 * trapped(bay, parts, solids).length
  let reach = 0
  const bars = new Map<string, readonly string[]>()
  for (const [at, { unitId }] of held.entries()) {
    const unit = units.get(unitId)
    const own = barred[at]
    if (unit === undefined || own === undefined) throw new Error(`${unitId} is not of this layout`)
    const before = own.before.flatMap((each) => units.get(held[each]?.unitId ?? '') ?? [])
    bars.set(
      unitId,
      before.map(({ id }) => id),
    )
    const count = before.length
    const uses = sum(unit.here.map((piece) => piece.uses[night === null ? 'drive' : 'bed']))
    reach += (uses + 0.02) * handling(count, sum(before.map(massOf)), own.straight)
    const tier = tierOf(one, unit, bay)
    if (tier === 1) reach += 2
    if (tier === 2) hard += 1
    if (night !== null && wanted(unit, 'night')) {
      hard += (inside ? 0 : 1) + Math.min(1, count / 2)
      reach += count
    }
    if (night === null) {
      if (wanted(unit, 'en-route')) reach += (inside ? 0 : 4) + 2 * count
      if (wanted(unit, 'on-arrival')) reach += count / 2
      if (bedding(unit)) reach += 0.6 * count
    }
  }
  return { hard, reach, bars }
}

/** Boxes that no order of taking out frees; none where the bay has no opening to take them out by. */
function trapped(bay: PackBay, parts: readonly Part[], solids: readonly Solid[]): readonly Solid[] {
  if (bay.openings.length === 0) return []
  let left = solids
  for (;;) {
    const still = left
    const out = still.find((box) =>
      canLeave(
        { bay, parts },
        box,
        still.filter((other) => other !== box),
      ),
    )
    if (out === undefined) return left
    left = left.filter((box) => box !== out)
  }
}

export function layoutCost(one: CostCase): number {
  const { input, night, placements } = one
  const { weights } = input
  const units = new Map(unitsOf(one).map((unit) => [unit.id, unit]))
  const bays = input.bays.filter((bay) => placements.some(({ bayId }) => bayId === bay.id))
  const costs = bays.map((bay) => bayCost(one, bay, units))
  const volume = (size: readonly number[]): number => (size[0] ?? 0) * (size[1] ?? 0) * (size[2] ?? 0)
  const leftOut = [...units.values()].filter(({ id }) => !placements.some(({ unitId }) => unitId === id))
  const crowded = bays.map((bay) => {
    const solidMm3 = sum(
      one.partsOf(bay).map(({ solid: { lo, hi } }) => volume([hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]])),
    )
    const used = sum(placements.filter(({ bayId }) => bayId === bay.id).map(({ sizeMm }) => volume(sizeMm)))
    return Math.max(0, used / Math.max(1, volume(bay.sizeMm) - solidMm3) - (1 - input.freeShare01))
  })
  const balance = balanceOf(one, units)
  const dusk =
    (night === null ? goneAtNight(one, units) : 0) +
    movedSince(one, units, new Map(costs.flatMap(({ bars }) => [...bars]))) +
    3 * tangledCount(one)
  return (
    1e6 * sum(leftOut.map((unit) => 1 + volume(sizeOf(unit)) / 1e10)) +
    1e3 * (sum(costs.map(({ hard }) => hard)) + balance.axlesOverKg) +
    weights.reach * sum(costs.map(({ reach }) => reach)) +
    weights.dusk * dusk +
    weights.lowAndCentral * balance.lowAndCentral +
    weights.baysKeptFree * (0.5 * bays.length + 2 * sum(crowded)) +
    0.3 * apartFromFriends(one, units)
  )
}

/** Height of the load's middle and its distance across from the middle of the vehicle, decimetres together; what axles carry too much by day, kg. */
function balanceOf(one: CostCase, units: ReadonlyMap<string, Unit>): { lowAndCentral: number; axlesOverKg: number } {
  const { input, night, placements } = one
  const own = input.bays.filter(({ belongsTo }) => belongsTo === 'vehicle')
  const things = placements.flatMap((placement) => {
    const bay = own.find(({ id }) => id === placement.bayId)
    const unit = units.get(placement.unitId)
    if (bay === undefined || unit === undefined) return []
    const { lo, hi } = solidInVehicle(placement, bay)
    const middle = (axis: 0 | 1 | 2): number => (lo[axis] + hi[axis]) / 2
    return [{ massG: massOf(unit), x: middle(0), y: middle(1), z: middle(2) }]
  })
  const massG = sum(things.map((thing) => thing.massG))
  const mean = (of: (thing: (typeof things)[number]) => number): number =>
    sum(things.map((thing) => thing.massG * of(thing))) / massG
  const edges = own.flatMap(({ originMm, sizeMm }) => [originMm[1], originMm[1] + sizeMm[1]])
  const middleY = (Math.min(...edges) + Math.max(...edges)) / 2
  const lowAndCentral = massG === 0 ? 0 : mean(({ z }) => z) / 100 + Math.abs(mean(({ y }) => y) - middleY) / 100
  const { frontAxle, rearAxle, rearAxleXMm, wheelbaseMm } = input.vehicle
  if (night !== null || rearAxleXMm === null || wheelbaseMm === null) return { lowAndCentral, axlesOverKg: 0 }
  const frontG = sum(things.map((thing) => (thing.massG * (thing.x - rearAxleXMm)) / wheelbaseMm))
  const overKg = (axle: typeof frontAxle, shareG: number): number =>
    axle === null ? 0 : Math.max(0, axle.readyG + shareG - axle.limitG) / 1000
  return { lowAndCentral, axlesOverKg: overKg(frontAxle, frontG) + overKg(rearAxle, massG - frontG) }
}

/** Things in bays that are gone at night, each by the share of nights on which it is kept. */
const goneAtNight = ({ input, placements }: CostCase, units: ReadonlyMap<string, Unit>): number =>
  sum(
    placements.map(({ unitId, bayId }) => {
      const gone = input.bays.some(({ id, usable }) => id === bayId && !usable.bed)
      if (!gone || input.nights.length === 0) return 0
      const loose = units.get(unitId)?.bin === null
      const kept = input.nights.filter(({ states }) => !loose || (states[unitId] ?? 'stored') === 'stored')
      return kept.length / input.nights.length
    }),
  )

/** Things not where they are in the other layout, and twice those that stay but stand in the way of one of these, there or here. */
function movedSince(one: CostCase, units: ReadonlyMap<string, Unit>, bars: BayCost['bars']): number {
  const { origin, placements, barredByDay, input } = one
  if (origin === null) return 0
  const stays = (unitId: string): boolean => {
    const now = placements.find((each) => each.unitId === unitId)
    const spot = origin.get(unitId)
    if (now === undefined || spot === undefined) return false
    return (
      spot === 'free' ||
      [spot.bayId, ...spot.atMm, ...spot.sizeMm].join() === [now.bayId, ...now.atMm, ...now.sizeMm].join()
    )
  }
  const moves = placements.filter(({ unitId }) => !stays(unitId)).length
  if (barredByDay.size === 0) return moves
  const everything = new Set([...units.keys(), ...input.pieces.map(({ id }) => id), ...input.bins.map(({ id }) => id)])
  const aside = new Set(
    [...everything]
      .filter((id) => !stays(id))
      .flatMap((id) => [...(bars.get(id) ?? []), ...(barredByDay.get(id) ?? [])])
      .filter(stays),
  )
  return moves + 2 * aside.size
}

const tangledCount = ({ input, placements, tangles }: CostCase): number =>
  placements.filter((placement) => {
    const bay = input.bays.find(({ id }) => id === placement.bayId)
    const here = bay === undefined ? solidOf([0, 0, 0], [0, 0, 0]) : solidInVehicle(placement, bay)
    return (tangles.get(placement.unitId) ?? []).some((solid) => intersect(solid, here))
  }).length

/** Things that belong with others and have none of them in their bay, nor all of them in their own bin. */
const apartFromFriends = ({ placements }: CostCase, units: ReadonlyMap<string, Unit>): number =>
  placements.filter(({ unitId, bayId }) => {
    const unit = units.get(unitId)
    const friends = new Set(unit?.here.flatMap(({ belongsWith }) => belongsWith))
    if (friends.size === 0 || unit === undefined) return false
    const named = ({ id, pieces }: Unit): boolean => friends.has(id) || pieces.some((piece) => friends.has(piece.id))
    const near = placements.some((other) => {
      const there = units.get(other.unitId)
      return other.bayId === bayId && other.unitId !== unitId && there !== undefined && named(there)
    })
    return !near && ![...friends].every((id) => unit.pieces.some((piece) => piece.id === id))
  }).length
