/** A remedy in words: what to change, what that costs, and what else is different then. */
import type { ProposedChange, Trip } from '../document/index.ts'
import type { Difference, Remedy } from '../plan/index.ts'
import { assertNever } from '../result/index.ts'
import type { Text } from '../text/index.ts'
import { MM3_PER_LITRE } from '../units/index.ts'

/** Short imperative line; several changes that go together are joined. */
export function sayRemedy(change: ProposedChange, trip: Trip, text: Text): string {
  const piece = (id: string): string => [...trip.kit.pieces, ...trip.kit.bins].find((one) => one.id === id)?.name ?? id
  switch (change.kind) {
    case 'together':
      return text.list(change.changes.map((one) => sayRemedy(one, trip, text)))
    case 'bring-bedding':
      return text.t('remedy.bring-bedding', { piece: piece(change.pieceId) })
    case 'bring-piece':
      return text.t('remedy.bring-piece', { piece: piece(change.pieceId) })
    case 'set-point':
      return text.t(change.byK >= 0 ? 'remedy.set-point.up' : 'remedy.set-point.down', { byK: Math.abs(change.byK) })
    case 'charge-limit':
      return text.t('remedy.charge-limit', { to01: change.to01 })
    case 'stop-on-the-way':
      return text.t('remedy.stop-on-the-way', { atM: change.atM })
    case 'leave-behind':
      return text.t('remedy.leave-behind', { pieces: text.list(change.pieceIds.map(piece)) })
    case 'covers':
      return text.t('remedy.covers')
    case 'bed-heater': {
      const heater = trip.vehicle.bedHeaters.find(({ id }) => id === change.heaterId)?.name ?? change.heaterId
      return text.t('remedy.bed-heater', { heater })
    }
    case 'current':
      return text.t('remedy.current', { toA: change.toA })
    case 'window-gap':
      return text.t('remedy.window-gap', { toMm: change.toMm })
    case 'target-later':
    case 'arrive-earlier':
    case 'leave-earlier':
      return text.t(`remedy.${change.kind}`, { byMin: change.byMin })
    case 'without-hookup':
      return text.t('remedy.without-hookup')
    case 'turn-piece':
      return text.t('remedy.turn-piece', { piece: piece(change.pieceId) })
    case 'unlock':
      return text.t('remedy.unlock', { piece: piece(change.pieceId) })
    default:
      return assertNever(change)
  }
}

/** What the remedy costs anywhere, or that it costs nothing else. */
export function sayCost({ cost }: Remedy, trip: Trip, text: Text): string {
  const { litres, moves, degreesK, charge01, money, minutes } = cost
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

/** So many things are named in a line that is read at a glance. */
const NAMED_BRIEFLY = 3

/** One difference between two plans; `trip` is the one that the second plan was made of. In brief, only the first few things are named. */
export function sayDifference(
  difference: Difference,
  trip: Trip,
  text: Text,
  length: 'whole' | 'brief' = 'whole',
): string {
  const { code, params, problem, steps } = difference
  const most = length === 'brief' ? NAMED_BRIEFLY : Infinity
  const words = text.t(
    `whatIf.${code}`,
    Array.isArray(params['units']) ? { ...params, units: named(params['units'], most, text) } : params,
  )
  if (problem !== undefined) return `${words} ${text.problem(problem)}`
  if (steps === undefined) return words
  const said = steps.map(({ text: { step }, params: given, nightId }) => {
    const zone = trip.nights.find(({ id }) => id === nightId)?.site.zone ?? 'UTC'
    return (text.has(step) ? text.t(step, { ...given, zone }) : step).replace(/\.$/, '')
  })
  return `${words}: ${named(said, most, text, '; ')}`
}

function named(all: readonly string[], most: number, text: Text, separator?: string): string {
  const first = all.slice(0, most)
  const rest = all.length - first.length
  const parts = rest === 0 ? first : [...first, text.t('whatIf.more', { count: rest })]
  return separator === undefined ? text.list(parts) : parts.join(separator)
}
