/** Do the nights make sense: dates in order, clocks that exist, chargers on the way, pieces that are on board? */
import type { DocumentPath, Problem } from '../../result/index.ts'
import { dateExists, localToUtc } from '../../units/index.ts'
import type { Clock, LocalDate } from '../../units/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Piece } from '../schema/kit.ts'
import type { Night } from '../schema/nights.ts'
import { dayAfter, spanMin, zoneExists } from './calendar.ts'
import { found, idSet, idsTwice, placed, unknownId } from './checks.ts'

/** Nobody sleeps longer: the clocks were given the wrong way round. */
const LONGEST_SLEEP_MIN = 16 * 60
const NOON_MIN = 12 * 60

/** What the nights may speak of. */
type Known = { readonly pieces: ReadonlyMap<string, Piece>; readonly bedHeaters: ReadonlySet<string> }

/** `before`: a trip without problems from which this one was made; the clocks of its nights are not looked up in their zone again. */
export function checkNights(trip: Trip, before: Trip | null): readonly Problem[] {
  const first = trip.nights[0]
  const known: Known = {
    pieces: new Map(trip.kit.pieces.map((piece) => [piece.id, piece])),
    bedHeaters: idSet(trip.vehicle.bedHeaters),
  }
  const sound = new Set(before?.nights)
  const needsCharge = trip.vehicle.battery !== undefined && first !== undefined && first.arriveCharge01 === undefined
  return [
    ...idsTwice(placed(trip.nights, 'nights')),
    ...checkOrder(trip.nights),
    ...(needsCharge ? [found('arrive-charge-missing', ['nights', 0, 'arriveCharge01'], undefined)] : []),
    ...trip.nights.flatMap((night, index) => {
      const path = ['nights', index]
      return [
        ...(sound.has(night) ? [] : checkClocks(night, path)),
        ...checkSpans(night, path),
        ...checkWeather(night, path),
        ...checkHookup(night, path, known),
        ...checkPeopleAndPieces(night, path, known),
        ...checkLeg(night, path),
      ]
    }),
  ]
}

const checkOrder = (nights: readonly Night[]): readonly Problem[] =>
  nights.flatMap((night, index) => {
    const before = nights[index - 1]
    return before === undefined || night.date > before.date
      ? []
      : [found('nights-out-of-order', ['nights', index, 'date'], night.date, { before: before.date })]
  })

function checkClocks(night: Night, path: DocumentPath): readonly Problem[] {
  if (!dateExists(night.date)) return [found('date-impossible', [...path, 'date'], night.date)]
  if (!zoneExists(night.site.zone)) return [found('zone-unknown', [...path, 'site', 'zone'], night.site.zone)]
  const clocks: readonly (readonly [readonly string[], string | undefined])[] = [
    [['arrive'], night.arrive],
    [['sleep', 'from'], night.sleep.from],
    [['sleep', 'to'], night.sleep.to],
    [['hookup', 'plugIn'], night.hookup?.plugIn],
    [['hookup', 'unplug'], night.hookup?.unplug],
    [['checkOutBy'], night.checkOutBy],
  ]
  return clocks.flatMap(([keys, clock]) => {
    if (clock === undefined) return []
    const evening = minutesOf(clock) >= NOON_MIN
    const date = evening && keys[0] !== 'checkOutBy' ? night.date : dayAfter(night.date)
    const at = localToUtc({ date: date as LocalDate, clock: clock as Clock, zone: night.site.zone })
    return at.ok ? [] : [found(at.problem.code, [...path, ...keys], clock, at.problem.params)]
  })
}

const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

function checkSpans(night: Night, path: DocumentPath): readonly Problem[] {
  const names = ['checkIn', 'quiet', 'movementBan', 'gateClosed', 'sleep'] as const
  const empty = names.flatMap((name) => {
    const span = night[name]
    return span !== undefined && span.from === span.to ? [found('span-empty', [...path, name, 'to'], span.to)] : []
  })
  const asleepMin = spanMin(night.sleep)
  const long = asleepMin > LONGEST_SLEEP_MIN
  return [
    ...empty,
    ...(long
      ? [
          found('sleep-too-long', [...path, 'sleep', 'to'], night.sleep.to, {
            from: night.sleep.from,
            hours: String(Math.round(asleepMin / 60)),
          }),
        ]
      : []),
    ...night.heating.setPoints.flatMap((point, index, points) =>
      points.findIndex((one) => one.from === point.from) < index
        ? [found('clock-twice', [...path, 'heating', 'setPoints', index, 'from'], point.from)]
        : [],
    ),
  ]
}

function checkWeather(night: Night, path: DocumentPath): readonly Problem[] {
  const { weather } = night
  const at = [...path, 'weather']
  return [
    ...(weather.lowC > weather.highC
      ? [found('low-above-high', [...at, 'lowC'], weather.lowC, { maximum: String(weather.highC) })]
      : []),
    ...weather.hours.flatMap((hour, index, hours) =>
      hours.findIndex((one) => one.clock === hour.clock) < index
        ? [found('clock-twice', [...at, 'hours', index, 'clock'], hour.clock)]
        : [],
    ),
  ]
}

function checkHookup(night: Night, path: DocumentPath, { pieces }: Known): readonly Problem[] {
  const { hookup } = night
  if (hookup === undefined) return []
  const at = [...path, 'hookup']
  const rises = hookup.readings.flatMap((reading, index) => {
    const lighter = hookup.readings.some((one) => one.currentA < reading.currentA && one.volts < reading.volts)
    return lighter
      ? [
          found('reading-rises', [...at, 'readings', index, 'volts'], reading.volts, {
            current: String(reading.currentA),
          }),
        ]
      : []
  })
  return [
    ...unknownId(hookup.adapterPieceId, pieces, 'piece', [...at, 'adapterPieceId']),
    ...unknownId(hookup.extensionPieceId, pieces, 'piece', [...at, 'extensionPieceId']),
    ...rises,
  ]
}

function checkPeopleAndPieces(night: Night, path: DocumentPath, known: Known): readonly Problem[] {
  const bedding = night.beddingPieceIds.flatMap((id, index) => {
    const at = [...path, 'beddingPieceIds', index]
    const piece = known.pieces.get(id)
    if (piece === undefined) return [found('reference-unknown', at, id, { id, what: 'piece' })]
    if (night.beddingPieceIds.indexOf(id) < index) return [found('bedding-twice', at, id, { piece: piece.name })]
    return piece.bedding === undefined ? [found('bedding-not-bedding', at, id, { piece: piece.name })] : []
  })
  return [
    ...bedding,
    ...night.heating.bedHeaterIds.flatMap((id, index) =>
      unknownId(id, known.bedHeaters, 'bed-heater', [...path, 'heating', 'bedHeaterIds', index]),
    ),
  ]
}

function checkLeg(night: Night, path: DocumentPath): readonly Problem[] {
  const { leg } = night
  if (leg === undefined) return []
  return leg.fastChargers.flatMap((charger, index) =>
    charger.atM > leg.distanceM
      ? [
          found('charger-beyond-leg', [...path, 'leg', 'fastChargers', index, 'atM'], charger.atM, {
            maximum: String(leg.distanceM),
          }),
        ]
      : [],
  )
}
