/** A remedy in words: what to change, and what that costs. */
import type { Plan, Trip } from '../../shared/host/index.ts'
import { assertNever } from '../../shared/result/index.ts'
import type { Text } from '../../shared/text/index.ts'
import { MM3_PER_LITRE } from '../../shared/units/index.ts'

type Remedy = Plan['remedies'][number]

export type TripNames = {
  readonly traveller: (id: string) => string
  readonly unit: (id: string) => string
  readonly heater: (id: string) => string
}

export function namesOf(trip: Trip): TripNames {
  const travellers = new Map(trip.travellers.map(({ id, label }) => [id, label]))
  const units = new Map([...trip.kit.pieces, ...trip.kit.bins].map(({ id, name }) => [id, name]))
  const heaters = new Map(trip.vehicle.bedHeaters.map(({ id, name }) => [id, name]))
  return {
    traveller: (id) => travellers.get(id) ?? id,
    unit: (id) => units.get(id) ?? id,
    heater: (id) => heaters.get(id) ?? id,
  }
}

export function remedyWords(remedy: Remedy, trip: Trip, text: Text): string {
  return `${changeWords(remedy.change, trip, text)} (${costWords(remedy.cost, trip, text)})`
}

function changeWords(change: Remedy['change'], trip: Trip, text: Text): string {
  const names = namesOf(trip)
  switch (change.kind) {
    case 'bring-bedding':
      return text.t('remedy.bring-bedding', { piece: names.unit(change.pieceId) })
    case 'bring-piece':
      return text.t('remedy.bring-piece', { piece: names.unit(change.pieceId) })
    case 'set-point':
      return text.t(change.byK >= 0 ? 'remedy.set-point.up' : 'remedy.set-point.down', { byK: Math.abs(change.byK) })
    case 'charge-limit':
      return text.t('remedy.charge-limit', { to01: change.to01 })
    case 'stop-on-the-way':
      return text.t('remedy.stop-on-the-way', { atM: change.atM })
    case 'leave-behind':
      return text.t('remedy.leave-behind', { pieces: text.list(change.pieceIds.map(names.unit)) })
    case 'covers':
      return text.t('remedy.covers')
    case 'bed-heater':
      return text.t('remedy.bed-heater', { heater: names.heater(change.heaterId) })
    case 'current':
      return text.t('remedy.current', { toA: change.toA })
    case 'window-gap':
      return text.t('remedy.window-gap', { toMm: change.toMm })
    case 'target-later':
      return text.t('remedy.target-later', { byMin: change.byMin })
    case 'turn-piece':
      return text.t('remedy.turn-piece', { piece: names.unit(change.pieceId) })
    case 'unlock':
      return text.t('remedy.unlock', { piece: names.unit(change.pieceId) })
    default:
      return assertNever(change)
  }
}

function costWords(
  { litres, moves, degreesK, charge01, money, minutes }: Remedy['cost'],
  trip: Trip,
  text: Text,
): string {
  const parts = [
    litres > 0 ? text.t('remedy.cost.litres', { litresMm3: litres * MM3_PER_LITRE }) : null,
    moves > 0 ? text.t('remedy.cost.moves', { count: moves }) : null,
    degreesK > 0 ? text.t('remedy.cost.degrees', { degreesK }) : null,
    charge01 > 0 ? text.t('remedy.cost.charge', { charge01 }) : null,
    money > 0 ? text.money(money, trip.preferences.currency) : null,
    minutes > 0 ? text.t('remedy.cost.minutes', { costMin: minutes }) : null,
  ].filter((part) => part !== null)
  return parts.length === 0 ? text.t('remedy.cost.nothing') : text.list(parts)
}
