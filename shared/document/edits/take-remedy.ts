/** Takes over a change that the planner proposed. */
import { assertNever, ok } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Night } from '../schema/nights.ts'
import { unlockUnit } from './locks.ts'
import { chooseBedding } from './nights.ts'
import { setSpare } from './pieces.ts'
import { changeNight, changeOne, has, missing } from './target.ts'

/** The planner's changes, field for field: one, or a few that only mend together. */
export type ProposedChange = SingleChange | { readonly kind: 'together'; readonly changes: readonly SingleChange[] }

export type SingleChange =
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
  | { readonly kind: 'arrive-earlier'; readonly nightId: string; readonly byMin: number }
  | { readonly kind: 'leave-earlier'; readonly nightId: string; readonly byMin: number }
  | { readonly kind: 'without-hookup'; readonly nightId: string }
  | { readonly kind: 'turn-piece'; readonly pieceId: string }
  | { readonly kind: 'unlock'; readonly pieceId: string }

export type TakeRemedy = { readonly kind: 'take-remedy'; readonly change: ProposedChange }

/** Set-point where the night had no heat at all, °C: cool but above frost, common practice. */
const FIRST_SET_POINT_C = 8

export function takeRemedy(trip: Trip, { change }: TakeRemedy): Result<Trip> {
  if (change.kind !== 'together') return takeOne(trip, change)
  return change.changes.reduce<Result<Trip>>((made, one) => (made.ok ? takeOne(made.value, one) : made), ok(trip))
}

function takeOne(trip: Trip, change: SingleChange): Result<Trip> {
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
    case 'arrive-earlier':
    case 'leave-earlier':
    case 'without-hookup':
      return changeNight(trip, change.nightId, (night) => changedNight(night, change))
    default:
      return assertNever(change)
  }
}

type NightChange = Exclude<
  SingleChange,
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
      return { ...night, ventilation: { gapMm: change.toMm, sides: night.ventilation.sides || 2 } }
    case 'target-later':
      return target === undefined
        ? night
        : { ...night, target: { ...target, minutesBeforeSunrise: target.minutesBeforeSunrise - change.byMin } }
    case 'arrive-earlier':
      return { ...night, arrive: earlierClock(night.arrive, change.byMin) }
    case 'leave-earlier':
      return { ...night, sleep: { ...night.sleep, to: earlierClock(night.sleep.to, change.byMin) } }
    case 'without-hookup': {
      const { hookup: _unused, ...without } = night
      return without
    }
    default:
      return assertNever(change)
  }
}

const MIN_PER_DAY = 24 * 60

/** 'HH:MM' moved back by whole minutes, round midnight. */
function earlierClock(clock: string, byMin: number): string {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number)
  const at = (((hours * 60 + minutes - byMin) % MIN_PER_DAY) + MIN_PER_DAY) % MIN_PER_DAY
  return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`
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
