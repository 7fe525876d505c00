/** Facts of the clock and of the people. */
import type { ChecklistFacts } from '../../checklist/index.ts'
import { sunPosition } from '../../climate/index.ts'
import type { Night, Trip } from '../../document/index.ts'
import { S_PER_MINUTE } from '../../units/index.ts'
import type { Utc } from '../../units/index.ts'
import { backFromTarget, nightInstant } from '../clock.ts'
import { loadedPieces } from '../load.ts'
import type { NightClock, NightPlan } from '../types.ts'

const minutesBetween = (from: Utc, to: Utc): number => Math.round((to - from) / S_PER_MINUTE)

/** Civil twilight, definition. */
const CIVIL_DEG = -6

/** Whether it is dark on arriving. Where no dusk falls, summer and winter are told apart by the height of the sun. */
const isDark = ({ site: { latitudeDeg, longitudeDeg } }: Night, { arriveUtc, sun }: NightClock): boolean =>
  sun.civilDuskUtc === null
    ? sunPosition({ latitudeDeg, longitudeDeg, atUtc: arriveUtc }).elevationDeg < CIVIL_DEG
    : arriveUtc > sun.civilDuskUtc

export function clockFacts(night: Night, clock: NightClock): ChecklistFacts['clock'] {
  const untilEnd = (at: Utc, from: Utc | null, to: Utc | null): number | null =>
    from !== null && to !== null && at >= from && at < to ? minutesBetween(at, to) : null
  const checkIn = night.checkIn
  const late = checkIn === undefined ? null : minutesBetween(nightInstant(night, checkIn.to), clock.arriveUtc)
  const early = checkIn === undefined ? null : minutesBetween(clock.arriveUtc, nightInstant(night, checkIn.from))
  const unplugLate =
    night.hookup === undefined ? null : minutesBetween(clock.departUtc, nightInstant(night, night.hookup.unplug))
  const back = backFromTarget(night, clock)
  return {
    arriveAfterSunsetMin: clock.sun.sunsetUtc === null ? null : minutesBetween(clock.sun.sunsetUtc, clock.arriveUtc),
    arriveInDark: isDark(night, clock),
    hasQuietHours: night.quiet !== undefined,
    arriveAfterCheckInMin: late,
    arriveBeforeCheckInMin: early !== null && early > 0 ? early : null,
    departInBanMin: untilEnd(clock.departUtc, clock.banFromUtc, clock.banToUtc),
    departInGateMin: untilEnd(clock.departUtc, clock.gateFromUtc, clock.gateToUtc),
    departInQuietMin: untilEnd(clock.departUtc, clock.quietFromUtc, clock.quietToUtc),
    arriveInQuietMin: untilEnd(clock.arriveUtc, clock.quietFromUtc, clock.quietToUtc),
    unplugAfterDepartMin: unplugLate !== null && unplugLate > 0 ? unplugLate : null,
    checkOutWhileAway: back !== null && clock.checkOutUtc !== null && back > clock.checkOutUtc,
    returnsAfterTarget: back !== null,
  }
}

export function sleeperFacts(trip: Trip, night: Night, plan: NightPlan): ChecklistFacts['sleepers'] {
  const { outcome } = plan
  const label = (id: string): string => trip.travellers.find((traveller) => traveller.id === id)?.label ?? id
  const cold = outcome.sleepers.filter(({ verdict }) => verdict === 'cold' || verdict === 'too-cold')
  const feetCold = outcome.sleepers.filter(({ feetColdFromUtc }) => feetColdFromUtc !== null)
  const bedding = loadedPieces(trip).filter(({ id }) => night.beddingPieceIds.includes(id))
  return {
    coldestBedC: outcome.coldestBedC,
    hottestBedC: outcome.series.bedAirC.length === 0 ? null : Math.max(...outcome.series.bedAirC),
    anyCold: cold.length > 0,
    anyFeetCold: feetCold.length > 0,
    cold: cold.map(({ sleeperId, marginK }) => ({ id: sleeperId, name: label(sleeperId), shortK: -marginK })),
    feetCold: feetCold.map(({ sleeperId }) => ({ id: sleeperId, name: label(sleeperId) })),
    sleepsCold: trip.travellers.filter(({ sleeps }) => sleeps === 'cold').map(({ id, label: name }) => ({ id, name })),
    hotBottle: bedding.some((piece) => piece.bedding?.kind === 'hot-bottle'),
  }
}
