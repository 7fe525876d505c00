/** Judges one layout from the input alone: nothing lost, nothing overlapping, everything resting, carried, allowed. Each fault is one sentence. */
import type {
  Layout,
  PackBay,
  PackedUnit,
  PackingInput,
  PackingOutcome,
  PackNight,
  PackPiece,
  Placement,
  Unplaced,
} from '../../../shared/packing/index.ts'
import {
  covered01,
  hi,
  insetOver,
  intersect,
  lo,
  sharedFromAbove,
  solidInVehicle,
  solidOf,
  solidOfPlacement,
} from './boxes.ts'

/** Rounding of squeezed edges to whole millimetres. */
const ROUNDING_MM = 1
/** From this volume a liquid is kept off what it would spoil, ml (common practice). */
const LIQUID_ML = 1000
/** Grams lost to sharing a load over several supports in fractions. */
const SHARE_SLACK_G = 2

export type LayoutCase = {
  readonly input: PackingInput
  readonly outcome: PackingOutcome
  readonly layout: Layout
  readonly night: PackNight | null
  readonly unplaced: readonly Unplaced[]
}

export function layoutFaults(one: LayoutCase): readonly string[] {
  const name = one.night === null ? 'drive' : `bed ${one.night.id}`
  const faults = [
    ...lostFaults(one),
    ...one.layout.placements.flatMap((placement) => placementFaults(one, placement)),
    ...pairFaults(one),
    ...stackFaults(one),
    ...bayFaults(one),
  ]
  return faults.map((fault) => `${name}: ${fault}`)
}

const stateOf = (night: PackNight | null, pieceId: string): string =>
  night === null ? 'stored' : (night.states[pieceId] ?? 'stored')
const unitOf = ({ outcome }: LayoutCase, id: string): PackedUnit | undefined =>
  outcome.units.find((unit) => unit.id === id)
const bayOf = ({ input }: LayoutCase, id: string): PackBay | undefined => input.bays.find((bay) => bay.id === id)

/** Pieces that are in the unit while this layout stands. */
export function contents(one: LayoutCase, unitId: string): readonly PackPiece[] {
  const ids = new Set(unitOf(one, unitId)?.pieceIds ?? [])
  return one.input.pieces.filter((piece) => ids.has(piece.id) && stateOf(one.night, piece.id) === 'stored')
}

function massOf(one: LayoutCase, unitId: string): number {
  const bin = one.input.bins.find(({ id }) => id === unitId)
  return (bin?.massG ?? 0) + contents(one, unitId).reduce((sum, { massG }) => sum + massG, 0)
}

/** Every piece is in exactly one unit, and every unit in exactly one of: placed, away, told as unplaced. */
function lostFaults(one: LayoutCase): string[] {
  const { input, outcome, layout, night, unplaced } = one
  const faults: string[] = []
  for (const piece of input.pieces) {
    const units = outcome.units.filter(({ pieceIds }) => pieceIds.includes(piece.id))
    if (units.length !== 1) faults.push(`${piece.id} is in ${units.length} units`)
  }
  for (const unit of outcome.units) {
    const homes =
      layout.placements.filter(({ unitId }) => unitId === unit.id).length +
      layout.away.filter(({ unitId }) => unitId === unit.id).length
    const told = unplaced.some(({ unitId }) => unitId === unit.id)
    if (homes + (told ? 1 : 0) !== 1)
      faults.push(`${unit.id} has ${homes} places and is ${told ? '' : 'not '}told as unplaced`)
    const loose = unit.kind === 'piece' ? stateOf(night, unit.id) : 'stored'
    const away = layout.away.find(({ unitId }) => unitId === unit.id)
    if (away !== undefined && unit.kind === 'piece' && night !== null && away.state !== loose)
      faults.push(`${unit.id} is ${away.state} but should be ${loose}`)
    if (away === undefined && loose !== 'stored') faults.push(`${unit.id} should be ${loose} but is in a bay`)
  }
  for (const told of unplaced) if (told.why.length === 0) faults.push(`${told.unitId} is unplaced without a reason`)
  return faults
}

function placementFaults(one: LayoutCase, placement: Placement): string[] {
  const { night } = one
  const unit = unitOf(one, placement.unitId)
  const bay = bayOf(one, placement.bayId)
  if (unit === undefined || bay === undefined) return [`${placement.unitId} in ${placement.bayId}: unknown`]
  const say = (what: string): string => `${unit.id} in ${bay.id}: ${what}`
  const faults: string[] = []
  const solid = solidOfPlacement(placement)
  if ([0, 1, 2].some((axis) => lo(solid, axis) < 0 || hi(solid, axis) > (bay.sizeMm[axis] ?? 0)))
    faults.push(say('outside the bay'))
  if ([...placement.atMm, ...placement.sizeMm].some((value) => !Number.isInteger(value)))
    faults.push(say('not whole millimetres'))
  if (!shapeAllowed(one, unit, placement))
    faults.push(say(`shape ${placement.sizeMm.join('x')} is not a turn or squeeze of ${unit.sizeMm.join('x')}`))
  for (const obstacle of bay.obstacles)
    if (intersect(solid, solidOf(obstacle.atMm, obstacle.sizeMm))) faults.push(say(`cuts ${obstacle.label}`))
  for (const slope of bay.slopes) {
    const inset = insetOver(slope, bay, solid.lo[2], solid.hi[2])
    const axis = slope.face.startsWith('x') ? 0 : 1
    const beyond = slope.face.endsWith('-')
      ? solid.lo[axis] < inset - ROUNDING_MM
      : solid.hi[axis] > bay.sizeMm[axis] - inset + ROUNDING_MM
    if (beyond) faults.push(say('cuts a sloping wall'))
  }
  if (!passesAnOpening(one, unit, bay)) faults.push(say('passes no opening'))
  if (night === null ? !bay.usable.drive : !bay.usable.bed) faults.push(say('bay is not there'))
  if (night === null && bay.belongsTo === 'site') faults.push(say('does not travel'))
  if (bay.softOnly && !isSoft(one, unit)) faults.push(say('soft things only'))
  const massG = massOf(one, unit.id)
  if (bay.unitLimitG !== null && massG > bay.unitLimitG) faults.push(say('too heavy for the bay'))
  return [...faults, ...traitFaults(one, unit, bay).map(say), ...lockFaults(one, unit, placement).map(say)]
}

const isSoft = ({ input }: LayoutCase, unit: PackedUnit): boolean =>
  (input.bins.find(({ id }) => id === unit.id) ?? input.pieces.find(({ id }) => id === unit.id))?.form === 'soft'

function shapeAllowed(one: LayoutCase, unit: PackedUnit, placement: Placement): boolean {
  const piece = one.input.pieces.find(({ id }) => id === unit.id)
  const bin = one.input.bins.find(({ id }) => id === unit.id)
  const form = piece ?? bin
  if (form === undefined) return false
  if (new Set(placement.edges).size !== 3) return false
  const upright = unit.kind === 'bin' ? [2] : (piece?.uprightEdges ?? [])
  if (!upright.includes(placement.edges[2])) return false
  const stated = placement.edges.map((edge) => form.sizeMm[edge])
  const shares = placement.sizeMm.map((size, axis) => size / (stated[axis] ?? 1))
  const squeezed = shares.filter((share) => share < 1)
  if (shares.some((share) => share > 1)) return false
  if (squeezed.length === 0) return true
  if (form.form !== 'soft' || squeezed.length > 1) return false
  return placement.sizeMm.every(
    (size, axis) => size >= Math.floor((stated[axis] ?? 0) * form.squeezeTo01) - ROUNDING_MM || size === stated[axis],
  )
}

/** Some turn of the unit, pressed along one edge where soft, goes through some opening. */
function passesAnOpening({ input }: LayoutCase, unit: PackedUnit, bay: PackBay): boolean {
  const form = input.bins.find(({ id }) => id === unit.id) ?? input.pieces.find(({ id }) => id === unit.id)
  if (form === undefined) return false
  const least = form.form === 'soft' ? form.squeezeTo01 : 1
  const [a, b, c] = form.sizeMm
  return bay.openings.some((opening) => {
    const width = opening.toMm[0] - opening.fromMm[0] + ROUNDING_MM
    const height = opening.toMm[1] - opening.fromMm[1] + ROUNDING_MM
    return [
      [a, b],
      [b, a],
      [a, c],
      [c, a],
      [b, c],
      [c, b],
    ].some(
      ([first = 0, second = 0]) =>
        (first * least <= width && second <= height) || (first <= width && second * least <= height),
    )
  })
}

function traitFaults(one: LayoutCase, unit: PackedUnit, bay: PackBay): string[] {
  const { night } = one
  const inside = contents(one, unit.id)
  const faults: string[] = []
  if (inside.some(({ traits }) => traits.valuable) && !bay.lockable) faults.push('a valuable that cannot be locked')
  if (night === null) return faults
  const lowC = night.lowTempC[bay.id]
  const highC = night.highTempC[bay.id]
  for (const { traits } of inside) {
    if (traits.freezesBelowC !== null && lowC !== undefined && lowC < traits.freezesBelowC)
      faults.push(`freezes at ${lowC}`)
    if (traits.spoilsAboveC !== null && highC !== undefined && highC > traits.spoilsAboveC)
      faults.push(`spoils at ${highC}`)
    if (traits.fuel && bay.sleepingSpace) faults.push('fuel where people sleep')
    if ((traits.food || traits.scented) && night.foodBayIds !== null && !night.foodBayIds.includes(bay.id))
      faults.push('food out of its place')
    if (bay.kind === 'outside' && (!night.outsideStorage || !traits.mayStandOutside))
      faults.push('may not stand outside')
  }
  if (bay.closedByBed && inside.some(({ access }) => access.includes('night')))
    faults.push('wanted at night but shut in')
  return faults
}

function lockFaults(one: LayoutCase, unit: PackedUnit, placement: Placement): string[] {
  const layout = one.night === null ? 'drive' : 'bed'
  const thing = one.input.bins.find(({ id }) => id === unit.id) ?? one.input.pieces.find(({ id }) => id === unit.id)
  return (thing?.locks ?? [])
    .filter((lock) => lock.layout === layout)
    .flatMap((lock) => {
      if (lock.bayId !== placement.bayId) return ['not in its fixed bay']
      return lock.atMm !== null && lock.atMm.some((at, axis) => at !== placement.atMm[axis])
        ? ['not at its fixed place']
        : []
    })
}

/** No two share space, in a bay or across bays that lie over one another in the vehicle; things kept apart are. */
function pairFaults(one: LayoutCase): string[] {
  const { placements } = one.layout
  const faults: string[] = []
  placements.forEach((first, at) => {
    for (const second of placements.slice(at + 1)) {
      const [one1, two] = [bayOf(one, first.bayId), bayOf(one, second.bayId)]
      if (one1 === undefined || two === undefined) continue
      const together = first.bayId === second.bayId
      const clash = together
        ? intersect(solidOfPlacement(first), solidOfPlacement(second))
        : one1.belongsTo === 'vehicle' &&
          two.belongsTo === 'vehicle' &&
          intersect(solidInVehicle(first, one1), solidInVehicle(second, two))
      if (clash) faults.push(`${first.unitId} in ${first.bayId} overlaps ${second.unitId} in ${second.bayId}`)
      if (together && apart(one, first.unitId, second.unitId))
        faults.push(`${first.unitId} and ${second.unitId} must be kept apart`)
    }
  })
  return faults
}

function apart(one: LayoutCase, first: string, second: string): boolean {
  const [a, b] = [contents(one, first), contents(one, second)]
  const ids = (pieces: readonly PackPiece[], unitId: string): Set<string> =>
    new Set([unitId, ...pieces.map(({ id }) => id)])
  return (
    a.some((piece) => piece.apartFrom.some((id) => ids(b, second).has(id))) ||
    b.some((piece) => piece.apartFrom.some((id) => ids(a, first).has(id)))
  )
}

/** Everything rests on the floor, on an obstacle's top or on units, wholly; nothing carries more than it may; no liquid over what it spoils. */
function stackFaults(one: LayoutCase): string[] {
  const faults: string[] = []
  for (const bay of one.input.bays) {
    const here = one.layout.placements
      .filter(({ bayId }) => bayId === bay.id)
      .map((placement) => ({ placement, solid: solidOfPlacement(placement) }))
    const fixed = bay.obstacles.map(({ atMm, sizeMm }) => solidOf(atMm, sizeMm))
    const load = new Map(here.map(({ placement }) => [placement.unitId, 0]))
    for (const { placement, solid } of here.toSorted((a, b) => b.solid.lo[2] - a.solid.lo[2])) {
      if (solid.lo[2] === 0) continue
      const under = here.filter((other) => other.solid.hi[2] === solid.lo[2] && sharedFromAbove(other.solid, solid) > 0)
      const held = covered01(solid, [
        ...under.map((other) => other.solid),
        ...fixed.filter(({ hi: [, , top] }) => top === solid.lo[2]),
      ])
      if (held < 1) faults.push(`${placement.unitId} in ${bay.id}: only ${(held * 100).toFixed(0)} % supported`)
      const pressG = massOf(one, placement.unitId) + (load.get(placement.unitId) ?? 0)
      const baseMm2 = placement.sizeMm[0] * placement.sizeMm[1]
      for (const other of under) {
        const share = (pressG * sharedFromAbove(other.solid, solid)) / baseMm2
        load.set(other.placement.unitId, (load.get(other.placement.unitId) ?? 0) + share)
      }
    }
    for (const { placement } of here) {
      const thing =
        one.input.bins.find(({ id }) => id === placement.unitId) ??
        one.input.pieces.find(({ id }) => id === placement.unitId)
      const limit = thing?.bearsG ?? null
      const carried = load.get(placement.unitId) ?? 0
      if (limit !== null && carried > limit + SHARE_SLACK_G)
        faults.push(`${placement.unitId} in ${bay.id}: carries ${carried.toFixed(0)} g of ${limit}`)
    }
    faults.push(...dripFaults(one, here, bay))
  }
  return faults
}

function dripFaults(
  one: LayoutCase,
  here: readonly { placement: Placement; solid: ReturnType<typeof solidOf> }[],
  bay: PackBay,
): string[] {
  const bedding = (id: string): boolean => one.input.nights.some(({ states }) => states[id] === 'bed')
  const wet = here.filter(({ placement }) =>
    contents(one, placement.unitId).some(({ traits }) => traits.liquidMl >= LIQUID_ML),
  )
  const spoilt = here.filter(({ placement }) =>
    contents(one, placement.unitId).some(({ id, traits }) => traits.valuable || traits.lithiumWh > 0 || bedding(id)),
  )
  return wet.flatMap((top) =>
    spoilt
      .filter(
        (below) =>
          below !== top &&
          below.solid.hi[2] <= top.solid.lo[2] &&
          sharedFromAbove(below.solid, top.solid) > 0 &&
          restsOn(top.solid, below.solid, here),
      )
      .map((below) => `${top.placement.unitId} may leak onto ${below.placement.unitId} in ${bay.id}`),
  )
}

/** Whether one solid rests on another, straight or through what lies between. */
function restsOn(
  top: ReturnType<typeof solidOf>,
  below: ReturnType<typeof solidOf>,
  here: readonly { solid: ReturnType<typeof solidOf> }[],
): boolean {
  if (below.hi[2] === top.lo[2]) return sharedFromAbove(top, below) > 0
  return here.some(
    ({ solid }) => solid.hi[2] === top.lo[2] && sharedFromAbove(solid, top) > 0 && restsOn(solid, below, here),
  )
}

function bayFaults(one: LayoutCase): string[] {
  return one.input.bays.flatMap((bay) => {
    const massG = one.layout.placements
      .filter(({ bayId }) => bayId === bay.id)
      .reduce((sum, { unitId }) => sum + massOf(one, unitId), 0)
    return massG > bay.loadLimitG ? [`${bay.id} carries ${massG} g of ${bay.loadLimitG}`] : []
  })
}
