/** Takes over a change that the planner proposed. */
import { assertNever, ok } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Night } from '../schema/nights.ts'
import { unlockUnit } from './locks.ts'
import { chooseBedding } from './nights.ts'
import { setSpare } from './pieces.ts'
import { changeNight, changeOne, has, missing } from './target.ts'

/** The planner's changes, field for field. */
export type ProposedChange =
  | { readonly kind: 'bring-bedding'; readonly nightId: string; readonly pieceId: string }
  | { readonly kind: 'set-point'; readonly nightId: string; readonly byK: number }
  | { readonly kind: 'charge-limit'; readonly nightId: string; readonly to01: number }
  | { readonly kind: 'stop-on-the-way'; readonly nightId: string; readonly atM: number }
  | { readonly kind: 'bring-piece'; readonly pieceId: string }
  | { readonly kind: 'leave-behind'; readonly pieceIds: readonly string[] }
  | { readonly kind: 'covers'; readonly nightId: string }
  | { readonly kind: 'bed-heater'; readonly nightId: string; readonly heaterId: string }
  | { readonly kind: 'current'; readonly nightId: string; readonly toA: number }
  | { readonly kind: 'window-gap'; readonly nightId: string; readonly toMm: number }
  | { readonly kind: 'target-later'; readonly nightId: string; readonly byMin: number }
  | { readonly kind: 'turn-piece'; readonly pieceId: string }
  | { readonly kind: 'unlock'; readonly pieceId: string }

export type TakeRemedy = { readonly kind: 'take-remedy'; readonly change: ProposedChange }

/** Set-point where the night had no heat at all, °C: cool but above frost, common practice. */
const FIRST_SET_POINT_C = 8

export function takeRemedy(trip: Trip, { change }: TakeRemedy): Result<Trip> {
  switch (change.kind) {
    case 'bring-bedding': {
      const night = trip.nights.find((one) => one.id === change.nightId)
      const pieceIds = [...new Set([...(night?.beddingPieceIds ?? []), change.pieceId])]
      return chooseBedding(trip, { kind: 'choose-bedding', nightId: change.nightId, pieceIds })
    }
    case 'bring-piece':
      return setSpare(trip, { kind: 'set-spare', pieceId: change.pieceId, spare: false })
    case 'leave-behind':
      return leaveBehind(trip, change.pieceIds)
    case 'turn-piece':
      return turnable(trip, change.pieceId)
    case 'unlock':
      return unlockUnit(trip, { kind: 'unlock', unitId: change.pieceId })
    case 'set-point':
    case 'charge-limit':
    case 'stop-on-the-way':
    case 'covers':
    case 'bed-heater':
    case 'current':
    case 'window-gap':
    case 'target-later':
      return changeNight(trip, change.nightId, (night) => changedNight(night, change))
    default:
      return assertNever(change)
  }
}

type NightChange = Exclude<
  ProposedChange,
  { readonly kind: 'bring-bedding' | 'bring-piece' | 'leave-behind' | 'turn-piece' | 'unlock' }
>

function changedNight(night: Night, change: NightChange): Night {
  const { heating, leg, target } = night
  switch (change.kind) {
    case 'set-point':
      return { ...night, heating: { ...heating, setPoints: shifted(night, change.byK) } }
    case 'charge-limit':
      return { ...night, heating: { ...heating, chargeLimit01: change.to01 } }
    case 'current':
      return { ...night, heating: { ...heating, currentA: change.toA } }
    case 'bed-heater':
      return {
        ...night,
        heating: { ...heating, bedHeaterIds: [...new Set([...heating.bedHeaterIds, change.heaterId])] },
      }
    case 'stop-on-the-way':
      return leg === undefined
        ? night
        : {
            ...night,
            leg: {
              ...leg,
              acceptedStopsM: [...new Set([...(leg.acceptedStopsM ?? []), change.atM])].sort((a, b) => a - b),
            },
          }
    case 'covers':
      return { ...night, covers: true }
    case 'window-gap':
      return { ...night, ventilation: { ...night.ventilation, gapMm: change.toMm } }
    case 'target-later':
      return target === undefined
        ? night
        : { ...night, target: { ...target, minutesBeforeSunrise: target.minutesBeforeSunrise - change.byMin } }
    default:
      return assertNever(change)
  }
}

function shifted(night: Night, byK: number): Night['heating']['setPoints'] {
  const { setPoints } = night.heating
  if (setPoints.every((point) => point.tempC === null)) {
    return byK > 0 ? [{ from: night.arrive, tempC: FIRST_SET_POINT_C + byK }] : setPoints
  }
  return setPoints.map((point) => (point.tempC === null ? point : { ...point, tempC: point.tempC + byK }))
}

function leaveBehind(trip: Trip, pieceIds: readonly string[]): Result<Trip> {
  const unknown = pieceIds.find((id) => !has(trip.kit.pieces, id))
  if (unknown !== undefined) return missing('piece', unknown)
  const pieces = trip.kit.pieces.map((piece) => (pieceIds.includes(piece.id) ? { ...piece, spare: true } : piece))
  return ok({ ...trip, kit: { ...trip.kit, pieces } })
}

function turnable(trip: Trip, pieceId: string): Result<Trip> {
  if (!has(trip.kit.pieces, pieceId)) return missing('piece', pieceId)
  const pieces = changeOne(trip.kit.pieces, pieceId, (piece) => ({
    ...piece,
    upright: ['length', 'width', 'height'] as const,
  }))
  return ok({ ...trip, kit: { ...trip.kit, pieces } })
}
