/** Moves from the drive layout to a night's bed layout and back. */
import type { BayModel } from '../bay-model.ts'
import { spacesOf } from '../spaces.ts'
import { boxAt, moved, overlaps } from '../geometry.ts'
import type { Box } from '../geometry.ts'
import { sizeWithin } from '../poses.ts'
import { binMovesOf } from './bin-moves.ts'
import { enters, sameSpot } from './moves.ts'
import type { ChangeoverTask, Mover, Spot, Step } from './moves.ts'
import { searchBothWays, searchChangeover } from './search.ts'
import type { ChangeoverFound } from './search.ts'
import type { PackModel } from '../scene.ts'
import type { AwayPlace, Changeover, Layout, Move, PackNight, Placement, Vec3 } from '../types.ts'

type Place = Placement | AwayPlace

const isPlacement = (place: Place): place is Placement => 'bayId' in place

/** Places of all units of a layout, by unit id. */
const placesOf = (layout: Layout): ReadonlyMap<string, Place> =>
  new Map([...layout.placements, ...layout.away].map((place) => [place.unitId, place]))

export type ChangeoverRequest = {
  readonly model: PackModel
  readonly from: Layout
  readonly to: Layout
  readonly night: PackNight
  readonly massG: (unitId: string) => number
  /** Whether the host wants an end: fewer questions are asked. */
  readonly shouldStop: () => boolean
}

/** Where a unit is that found no place in the layout one starts from. */
const NO_PLACE: Spot = { kind: 'away', name: 'no place' }

/** Units up to which every state is searched. */
const SEARCHED_WHOLE = 8
/** States looked at before a good list will do. */
const NODE_LIMIT = 5000
/** Questions for waiting places answered per pair of changeovers; then the best so far stands. A long trip's nights share what three would have, down to a least. */
const MOST_ASKED = 8000
const LEAST_ASKED = 1000
const NIGHTS_IN_FULL = 3
const mostAsked = (nights: number): number =>
  Math.max(LEAST_ASKED, Math.floor((MOST_ASKED * NIGHTS_IN_FULL) / Math.max(NIGHTS_IN_FULL, nights)))
const MOST_ASKED_HURRIED = 400
/** Waiting places offered to a unit at a time. */
const WAITS = 4

/** The shortest legal lists of moves found from one layout to the other and back. */
export const changeoversBetween = (
  request: ChangeoverRequest,
): { readonly there: Changeover; readonly back: Changeover } => {
  const { model } = request
  const from = placesOf(request.from)
  const to = placesOf(request.to)
  /** What has no place in the new layout stays where it is, and in the way. */
  const units = model.units.filter((unit) => from.has(unit.id))
  const bayIndex = new Map(model.bays.map((bay) => [bay.bay.id, bay.index]))
  const spotOf = (place: Place | undefined): Spot => {
    if (place === undefined || !isPlacement(place)) return { kind: 'away', name: place?.state ?? 'outside' }
    return { kind: 'bay', bay: bayIndex.get(place.bayId) ?? 0, box: boxAt(place.atMm, place.sizeMm) }
  }
  const movers = units.map((unit): Mover => {
    const target = spotOf(to.get(unit.id) ?? from.get(unit.id))
    return {
      source: spotOf(from.get(unit.id)),
      target,
      late: target.kind === 'away' && target.name === 'bed',
      massG: request.massG(unit.id),
      bearsG: unit.bearsG,
    }
  })
  const missing = units.some((unit) => !to.has(unit.id))
  const rooms: RoomMemory = new Map()
  const most = mostAsked(model.input.nights.length)
  let asked = 0
  const task: ChangeoverTask = {
    bays: model.bays,
    movers,
    shareAir: airSharedBy(model.bays),
    waitsFor: (mover, spots) => {
      asked++
      return waitingPlaces(request, units[mover]?.index ?? -1, mover, spots, task, rooms)
    },
    nodeLimit: movers.length <= SEARCHED_WHOLE ? NODE_LIMIT : 0,
    thorough: !missing,
    shouldStop: () => asked > MOST_ASKED_HURRIED && (asked > most || request.shouldStop()),
    hostStops: request.shouldStop,
  }
  const { there, back } = missing ? searchApart(task, units, to) : searchBothWays(task)
  const told = (
    found: ChangeoverFound,
    start: ReadonlyMap<string, Place>,
    end: ReadonlyMap<string, Place>,
  ): Changeover => {
    const goals = movers.map((mover) => (start === from ? mover.target : mover.source))
    const startOf = (mover: Mover, unitId: string): Spot =>
      start.has(unitId) ? (start === from ? mover.source : mover.target) : NO_PLACE
    return {
      moves: movesOf(found.steps, goals, units, start, end, model),
      binMoves: binMovesOf(
        task,
        units,
        { all: model.input.nights, night: request.night },
        { start: movers.map((mover, at) => startOf(mover, units[at]?.id ?? '')), steps: found.steps },
      ),
      lowerBound: found.lowerBound,
      optimal: found.optimal,
      stuckUnitIds: units.flatMap((unit, index) => {
        const final = found.final[index]
        const goal = goals[index]
        return final === undefined || goal === undefined || sameSpot(final, goal) ? [] : [unit.id]
      }),
    }
  }
  return { there: told(there, from, to), back: told(back, to, from) }
}

/** Where something has no place at night the two ways differ: going, it stays where it was; coming back, it is not there. */
const searchApart = (
  task: ChangeoverTask,
  units: PackModel['units'],
  to: ReadonlyMap<string, Place>,
): { readonly there: ChangeoverFound; readonly back: ChangeoverFound } => {
  const there = searchChangeover(task)
  const movers = task.movers.map((mover, index): Mover => {
    const known = to.has(units[index]?.id ?? '')
    return { ...mover, source: known ? mover.target : NO_PLACE, target: known ? mover.source : NO_PLACE, late: false }
  })
  const back = searchChangeover({ ...task, movers })
  return {
    there,
    back: {
      ...back,
      final: back.final.map((spot, index) => (spot === NO_PLACE ? (task.movers[index]?.source ?? spot) : spot)),
    },
  }
}

/** Bays of either layout that lie over one another: a folded seat stands where the load was. */
export const airSharedBy = (bays: readonly BayModel[]): readonly (readonly boolean[])[] => {
  const inVehicle = bays.map((bay) => (bay.bay.belongsTo === 'vehicle' ? moved(bay.box, bay.bay.originMm) : null))
  return inVehicle.map((box, a) =>
    inVehicle.map((other, b) => a !== b && box !== null && other !== null && overlaps(box, other)),
  )
}

/** Free room by bay and what stands in it: the same few states are asked about again and again. */
type RoomMemory = Map<string, readonly Box[]>

const freeRoom = (bay: BayModel, taken: readonly Box[], memory: RoomMemory): readonly Box[] => {
  const stands = taken.map((box) => `${box.x1},${box.y1},${box.z1},${box.x2},${box.y2},${box.z2}`)
  const key = `${bay.index}|${stands.join(' ')}`
  const known = memory.get(key)
  if (known !== undefined) return known
  const room = spacesOf(bay, taken)
  memory.set(key, room)
  return room
}

const freeFloor = (bay: BayModel, taken: readonly Box[], memory: RoomMemory): readonly Box[] => {
  const low = taken.filter((box) => box.z1 === 0)
  return freeRoom(bay, low, memory).filter((space) => space.z1 === 0)
}

const movesOf = (
  steps: readonly Step[],
  goals: readonly Spot[],
  units: PackModel['units'],
  start: ReadonlyMap<string, Place>,
  end: ReadonlyMap<string, Place>,
  model: PackModel,
): readonly Move[] => {
  const at = new Map<number, Place>()
  return steps.flatMap((step): readonly Move[] => {
    const unit = units[step.mover]
    const goal = goals[step.mover]
    if (unit === undefined || goal === undefined) return []
    const home = start.get(unit.id) ?? end.get(unit.id)
    const here = at.get(step.mover) ?? home
    const final = end.get(unit.id) ?? home
    if (here === undefined || final === undefined) return []
    const arrives = sameSpot(step.to, goal)
    const there = arrives ? final : placeOf(step.to, unit.index, model)
    at.set(step.mover, there)
    const bay = step.from.kind === 'bay' ? step.from.bay : step.to.kind === 'bay' ? step.to.bay : -1
    const door = model.bays[bay]?.windows[step.window]?.door ?? null
    return [{ unitId: unit.id, from: here, to: there, waits: !arrives, door }]
  })
}

const placeOf = (spot: Spot, unit: number, model: PackModel): Place => {
  const item = model.units[unit]
  const unitId = item?.id ?? ''
  if (spot.kind === 'away') return { unitId, state: 'outside' }
  const sizeMm: Vec3 = [spot.box.x2 - spot.box.x1, spot.box.y2 - spot.box.y1, spot.box.z2 - spot.box.z1]
  const pose = item?.poses.find((each) => {
    const size = sizeWithin(each, sizeMm)
    return size !== null && size[0] === sizeMm[0] && size[1] === sizeMm[1] && size[2] === sizeMm[2]
  })
  return {
    unitId,
    bayId: model.bays[spot.bay]?.bay.id ?? '',
    atMm: [spot.box.x1, spot.box.y1, spot.box.z1],
    sizeMm,
    edges: pose?.edges ?? [0, 1, 2],
  }
}

/** Outdoors where the site allows it, and free floor that no final place needs; any free spot where there is none. */
const waitingPlaces = (
  request: ChangeoverRequest,
  unit: number,
  mover: number,
  spots: readonly Spot[],
  task: ChangeoverTask,
  memory: RoomMemory,
): readonly Spot[] => {
  const item = request.model.units[unit]
  const found: Spot[] = []
  const now = spots[mover]
  if (item === undefined || now === undefined) return found
  /** Where it stands already it does not wait: offered, that would hide what else the bay has. */
  const works = (spot: Spot): boolean => !sameSpot(spot, now) && enters(task, spots, mover, spot) >= 0
  if (request.night.outsideStorage) found.push({ kind: 'away', name: 'waiting outside' })
  for (const onlySpare of [true, false]) {
    for (const bay of request.model.bays) {
      if (bay.bay.belongsTo === 'site' || (bay.bay.softOnly && !item.soft)) continue
      if (bay.bay.unitLimitG !== null && request.massG(item.id) > bay.bay.unitLimitG) continue
      const taken = takenIn(bay.index, mover, spots, task, onlySpare)
      const free = onlySpare ? freeFloor(bay, taken, memory) : freeRoom(bay, taken, memory)
      const here = firstFit(bay.index, free, item.poses, works)
      if (here !== null) found.push(here)
      if (found.length >= WAITS) return found
    }
    if (found.length > 0) return found
  }
  return found
}

/** What stands in a bay now and, where only spare room is wanted, what will stand there in the end. */
const takenIn = (
  bay: number,
  mover: number,
  spots: readonly Spot[],
  task: ChangeoverTask,
  withTargets: boolean,
): readonly Box[] => {
  const taken: Box[] = []
  spots.forEach((spot, other) => {
    if (other !== mover && spot.kind === 'bay' && spot.bay === bay) taken.push(spot.box)
    const target = task.movers[other]?.target
    if (withTargets && target !== undefined && target.kind === 'bay' && target.bay === bay) taken.push(target.box)
  })
  return taken
}

const firstFit = (
  bay: number,
  spaces: readonly Box[],
  poses: PackModel['units'][number]['poses'],
  works: (spot: Spot) => boolean,
): Spot | null => {
  for (const space of spaces) {
    for (const pose of poses) {
      const size = sizeWithin(pose, [space.x2 - space.x1, space.y2 - space.y1, space.z2 - space.z1])
      if (size === null) continue
      for (const x of [space.x1, space.x2 - size[0]]) {
        for (const y of [space.y1, space.y2 - size[1]]) {
          const spot: Spot = { kind: 'bay', bay, box: boxAt([x, y, space.z1], size) }
          if (works(spot)) return spot
        }
      }
    }
  }
  return null
}
