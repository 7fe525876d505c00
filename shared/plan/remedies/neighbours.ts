/** Neighbouring trips worth trying for each kind of shortfall: one change each. */
import type { Night, Trip } from '../../document/index.ts'
import { S_PER_MINUTE } from '../../units/index.ts'
import { loadedPieces } from '../load.ts'
import type { Finding, NightPlan, Plan, RemedyChange } from '../types.ts'

const WARMER_K = [2, 4, 6, 8] as const
const COOLER_K = [-2, -4, -6] as const
const HIGHER_LIMITS_01 = [0.95, 1] as const
/** Leaving is put at the end of the hour that barred it, with this much to roll to the gate. */
const AFTER_THE_BAR_MIN = 1
/** How many pieces are tried, largest first, when something must stay at home. */
const LEAVE_BEHIND_TRIED = 6

export function neighbours(trip: Trip, plan: Plan, shortfall: Finding): readonly RemedyChange[] {
  const night = trip.nights.find(({ id }) => id === shortfall.nightId)
  const nightPlan = plan.nights.find(({ nightId }) => nightId === shortfall.nightId)
  switch (shortfall.problem.code) {
    case 'too-cold-for-bag':
    case 'too-cold-for-body':
      return night === undefined ? [] : warmer(trip, night)
    case 'leg-too-long':
      return night === undefined || nightPlan === undefined ? [] : moreCharge(trip, night, nightPlan)
    case 'leave-in-movement-ban':
    case 'leave-before-gate':
      return night === undefined ? [] : laterTarget(night, shortfall)
    case 'no-place-by-day':
    case 'no-place-at-night':
      return unplaced(trip, plan, shortfall)
    default:
      return shortfall.problem.code.startsWith('over-') ? lighter(trip) : []
  }
}

function warmer(trip: Trip, night: Night): RemedyChange[] {
  const nightId = night.id
  const bedding = trip.kit.pieces.filter(
    (piece) => piece.bedding !== undefined && !night.beddingPieceIds.includes(piece.id),
  )
  return [
    ...bedding.map(({ id: pieceId }) => ({ kind: 'bring-bedding', nightId, pieceId }) as const),
    ...trip.vehicle.bedHeaters
      .filter(({ id }) => !night.heating.bedHeaterIds.includes(id))
      .map(({ id: heaterId }) => ({ kind: 'bed-heater', nightId, heaterId }) as const),
    ...(night.covers ? [] : [{ kind: 'covers', nightId } as const]),
    ...(trip.vehicle.heater.kind === 'none'
      ? []
      : WARMER_K.map((byK) => ({ kind: 'set-point', nightId, byK }) as const)),
  ]
}

function moreCharge(trip: Trip, night: Night, plan: NightPlan): RemedyChange[] {
  const nightId = night.id
  const limit01 = plan.input.decisions.chargeLimit01
  const usableA = plan.outcome.supply?.usableA ?? 0
  const askedA = night.heating.currentA ?? usableA
  return [
    ...HIGHER_LIMITS_01.filter((to01) => to01 > limit01).map(
      (to01) => ({ kind: 'charge-limit', nightId, to01 }) as const,
    ),
    ...(askedA < usableA ? [{ kind: 'current', nightId, toA: Math.floor(usableA) } as const] : []),
    ...(night.covers ? [] : [{ kind: 'covers', nightId } as const]),
    ...(night.heating.setPoints.some(({ tempC }) => tempC !== null)
      ? COOLER_K.map((byK) => ({ kind: 'set-point', nightId, byK }) as const)
      : []),
    ...warmer(trip, night).filter(({ kind }) => kind === 'bed-heater'),
  ]
}

function laterTarget(night: Night, shortfall: Finding): RemedyChange[] {
  const lostS = Number(shortfall.problem.params['lostS'] ?? 0)
  return night.target === undefined
    ? []
    : [{ kind: 'target-later', nightId: night.id, byMin: Math.ceil(lostS / S_PER_MINUTE) + AFTER_THE_BAR_MIN }]
}

/** The unit itself, turned, unlocked or left; or something of about its size left in its stead. */
function unplaced(trip: Trip, plan: Plan, shortfall: Finding): RemedyChange[] {
  const unitId = shortfall.id.split(':').at(-1) ?? ''
  const unit = plan.packing.units.find(({ id }) => id === unitId)
  const pieces = loadedPieces(trip)
  const own = pieces.filter(({ id }) => id === unitId)
  const seldom = pieces
    .filter(
      (piece) =>
        piece.traits.mustCarry !== true &&
        piece.bedding === undefined &&
        !piece.access.includes('emergency') &&
        piece.id !== unitId,
    )
    .toSorted((a, b) => volume(b.sizeMm) - volume(a.sizeMm))
    .slice(0, LEAVE_BEHIND_TRIED)
  return [
    ...own
      .filter(({ upright }) => upright.length < 3)
      .map(({ id: pieceId }) => ({ kind: 'turn-piece', pieceId }) as const),
    ...own.filter(({ locks }) => locks.length > 0).map(({ id: pieceId }) => ({ kind: 'unlock', pieceId }) as const),
    ...(unit === undefined ? [] : [{ kind: 'leave-behind', pieceIds: unit.pieceIds } as const]),
    ...seldom.map(({ id }) => ({ kind: 'leave-behind', pieceIds: [id] }) as const),
  ]
}

function lighter(trip: Trip): RemedyChange[] {
  return loadedPieces(trip)
    .filter((piece) => piece.traits.mustCarry !== true && !piece.access.includes('emergency'))
    .toSorted((a, b) => b.massG - a.massG)
    .slice(0, LEAVE_BEHIND_TRIED)
    .map(({ id }) => ({ kind: 'leave-behind', pieceIds: [id] }) as const)
}

const volume = ([length, width, height]: readonly [number, number, number]): number => length * width * height
