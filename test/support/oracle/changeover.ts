/** Plays a changeover move by move: each lift is free, each landing is free and held, and the last state is the wanted layout. */
import type {
  AwayPlace,
  Changeover,
  Layout,
  PackBay,
  PackingInput,
  PackingOutcome,
  PackNight,
  Placement,
} from '../../../shared/packing/index.ts'
import {
  axisOf,
  covered01,
  intersect,
  sharedFromAbove,
  solidInVehicle,
  solidOf,
  solidOfPlacement,
  sweepOut,
} from './boxes.ts'
import type { Solid } from './boxes.ts'

export type ChangeoverCase = {
  readonly night: PackNight
  readonly changeover: Changeover
  readonly from: Layout
  readonly to: Layout
  readonly name: string
}

type Place = Placement | AwayPlace
type State = Map<string, Place>

const inBay = (place: Place | undefined): place is Placement => place !== undefined && 'bayId' in place
const samePlace = (a: Place | undefined, b: Place | undefined): boolean => {
  if (a === undefined || b === undefined) return a === b
  if (!inBay(a) || !inBay(b)) return !inBay(a) && !inBay(b) && a.state === b.state
  return (
    a.bayId === b.bayId && [0, 1, 2].every((axis) => a.atMm[axis] === b.atMm[axis] && a.sizeMm[axis] === b.sizeMm[axis])
  )
}

export function changeoverFaults(input: PackingInput, outcome: PackingOutcome, one: ChangeoverCase): readonly string[] {
  const state: State = new Map<string, Place>(
    [...one.from.placements, ...one.from.away].map((place) => [place.unitId, place]),
  )
  const wanted: State = new Map<string, Place>(
    [...one.to.placements, ...one.to.away].map((place) => [place.unitId, place]),
  )
  const stuck = new Set(one.changeover.stuckUnitIds)
  const faults: string[] = []
  /** By bin: after how many moves it first stands free. */
  const freeAfter = new Map<string, number>()
  const noteFree = (done: number): void => {
    for (const { id } of input.bins) {
      const place = state.get(id)
      if (!freeAfter.has(id) && (!inBay(place) || canLeave(input, state, place))) freeAfter.set(id, done)
    }
  }
  noteFree(0)
  one.changeover.moves.forEach((move, at) => {
    const say = (what: string): number => faults.push(`${one.name}: move ${at + 1} of ${move.unitId}: ${what}`)
    const here = state.get(move.unitId)
    if (here !== undefined && !samePlace(here, move.from)) say('does not start where the unit is')
    if (inBay(here) && !canLeave(input, state, here)) say('cannot be lifted out')
    state.delete(move.unitId)
    if (inBay(move.to)) {
      const why = landing(input, state, move.to)
      if (why !== null) say(why)
    } else if (move.to.state === 'outside' && move.waits && !one.night.outsideStorage)
      say('waits outside where nothing may')
    state.set(move.unitId, move.to)
    noteFree(at + 1)
  })
  faults.push(...binFaults(input, outcome, one, freeAfter))
  const travels = new Set(outcome.units.map(({ id }) => id))
  for (const [unitId, place] of wanted) {
    if (stuck.has(unitId) || !travels.has(unitId) || !state.has(unitId)) continue
    if (!samePlace(state.get(unitId), place)) faults.push(`${one.name}: ${unitId} does not end in its place`)
  }
  const needed = [...wanted].filter(
    ([unitId, place]) =>
      !stuck.has(unitId) &&
      one.from.placements.concat().some((from) => from.unitId === unitId) &&
      !samePlace(fromPlace(one.from, unitId), place),
  ).length
  if (stuck.size === 0 && one.changeover.moves.length < needed)
    faults.push(`${one.name}: ${one.changeover.moves.length} moves cannot bring ${needed} units over`)
  if (one.changeover.lowerBound > one.changeover.moves.length && stuck.size === 0)
    faults.push(`${one.name}: lower bound above the moves made`)
  return faults
}

/** Each piece of a bin that is elsewhere that night leaves it, and comes back, when the bin first stands free. */
function binFaults(
  input: PackingInput,
  outcome: PackingOutcome,
  { changeover, night, from, to, name }: ChangeoverCase,
  freeAfter: ReadonlyMap<string, number>,
): string[] {
  const said = (changeover.binMoves ?? []).map(
    (move) => `${move.pieceId} of ${move.binId} ${move.state} after ${move.afterMoves}`,
  )
  const wanted = outcome.units
    .filter(({ id, kind }) => kind === 'bin' && [...from.placements, ...from.away].some(({ unitId }) => unitId === id))
    .flatMap(({ id, pieceIds }) =>
      pieceIds.flatMap((pieceId) => {
        const state = night.states[pieceId] ?? 'stored'
        const travels = input.nights.some(({ states }) => states[pieceId] !== 'left-behind')
        return state === 'stored' || !travels ? [] : [`${pieceId} of ${id} ${state} after ${freeAfter.get(id) ?? null}`]
      }),
    )
  const away = new Set([...from.away, ...to.away].map(({ unitId }) => unitId))
  const hidden = (changeover.binMoves ?? []).filter(({ pieceId }) => !away.has(pieceId))
  return [
    ...(said.toSorted().join() === wanted.toSorted().join()
      ? []
      : [`${name}: out of bins ${said.join('; ') || 'nothing'}, wanted ${wanted.join('; ') || 'nothing'}`]),
    ...hidden.map(({ pieceId }) => `${name}: ${pieceId} leaves its bin and is nowhere at night`),
  ]
}

const fromPlace = (layout: Layout, unitId: string): Place | undefined =>
  layout.placements.find((place) => place.unitId === unitId) ?? layout.away.find((place) => place.unitId === unitId)

const others = (state: State, bayId: string, but: string): readonly Placement[] =>
  [...state.values()].filter(
    (place): place is Placement => inBay(place) && place.bayId === bayId && place.unitId !== but,
  )

function canLeave(input: PackingInput, state: State, place: Placement): boolean {
  const bay = input.bays.find(({ id }) => id === place.bayId)
  if (bay === undefined) return false
  const solid = solidOfPlacement(place)
  const near = others(state, bay.id, place.unitId).map(solidOfPlacement)
  if (near.some((other) => other.lo[2] === solid.hi[2] && sharedFromAbove(other, solid) > 0)) return false
  return wayThrough(bay, solid, near)
}

/** A straight way between the place and some opening, nothing in it. */
function wayThrough(bay: PackBay, solid: Solid, near: readonly Solid[]): boolean {
  return bay.openings.some((opening) => {
    const axis = axisOf(opening.face)
    const [first, second] = ([0, 1, 2] as const).filter((each) => each !== axis)
    if (first === undefined || second === undefined) return false
    const faces =
      solid.lo[first] < opening.toMm[0] &&
      solid.hi[first] > opening.fromMm[0] &&
      solid.lo[second] < opening.toMm[1] &&
      solid.hi[second] > opening.fromMm[1]
    return faces && !near.some((other) => intersect(other, sweepOut(solid, opening.face, bay)))
  })
}

/** Why a unit cannot be put down somewhere in a state; null where it can. */
export function landing(input: PackingInput, state: State, place: Placement): string | null {
  const bay = input.bays.find(({ id }) => id === place.bayId)
  if (bay === undefined) return 'lands in an unknown bay'
  const solid = solidOfPlacement(place)
  if (solid.lo.some((at) => at < 0) || solid.hi.some((at, axis) => at > (bay.sizeMm[axis] ?? 0)))
    return 'lands outside the bay'
  const near = others(state, bay.id, place.unitId).map(solidOfPlacement)
  if (near.some((other) => intersect(other, solid))) return 'lands in another unit'
  const fixed = bay.obstacles.map(({ atMm, sizeMm }) => solidOf(atMm, sizeMm))
  if (fixed.some((obstacle) => intersect(obstacle, solid))) return 'lands in an obstacle'
  if (
    solid.lo[2] > 0 &&
    covered01(
      solid,
      [...near, ...fixed].filter((under) => under.hi[2] === solid.lo[2]),
    ) < 1
  )
    return 'lands in mid-air'
  for (const [unitId, other] of state) {
    if (unitId === place.unitId || !inBay(other) || other.bayId === bay.id) continue
    const otherBay = input.bays.find(({ id }) => id === other.bayId)
    if (otherBay === undefined || otherBay.belongsTo === 'site' || bay.belongsTo === 'site') continue
    if (intersect(solidInVehicle(other, otherBay), solidInVehicle(place, bay)))
      return `lands in ${unitId} of ${otherBay.id}`
  }
  return wayThrough(bay, solid, near) ? null : 'cannot be put in'
}
