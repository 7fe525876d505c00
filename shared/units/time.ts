/** Instants, wall-clock times and the step between them. Instants are whole seconds since 1970 UTC. */
import { Temporal } from 'temporal-polyfill'
import { problem, fail, ok } from '../result/index.ts'
import type { Result } from '../result/index.ts'

/** Seconds since 1970-01-01T00:00Z. */
export type Utc = number & { readonly __unit: 'utc-s' }
/** `YYYY-MM-DD` on the wall calendar of a place. */
export type LocalDate = string & { readonly __unit: 'local-date' }
/** `HH:MM` on the wall clock of a place. */
export type Clock = string & { readonly __unit: 'clock' }
export type LocalTime = { readonly date: LocalDate; readonly clock: Clock; readonly zone: string }

const MS_PER_S = 1000
const DAYS_OF_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const CLOCK = /^([01]\d|2[0-3]):([0-5]\d)$/

/** Seconds after midnight of a `HH:MM` clock; a problem `clock-unreadable` otherwise. */
export function parseClock(text: string): Result<number> {
  const match = CLOCK.exec(text)
  if (match === null) return fail(problem('clock-unreadable', [], { value: text }))
  return ok((Number(match[1]) * 60 + Number(match[2])) * 60)
}

/** Whether a well-written date is on the calendar: 30 February is not. */
export function dateExists(date: string): boolean {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number)
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  const days = month === 2 && leap ? 29 : (DAYS_OF_MONTH[month - 1] ?? 0)
  return day >= 1 && day <= days
}

/**
 * The instant of a wall-clock time in an IANA zone (or `+HH:MM` offset).
 * A time that the clock skips is refused (`time-skipped`); one that occurs twice is the earlier unless `repeated` says `later`.
 */
export function localToUtc(local: LocalTime, repeated: 'earlier' | 'later' = 'earlier'): Result<Utc> {
  const plain = Temporal.PlainDateTime.from(`${local.date}T${local.clock}:00`)
  const zoned = plain.toZonedDateTime(local.zone, { disambiguation: repeated })
  if (!zoned.toPlainDateTime().equals(plain)) {
    return fail(problem('time-skipped', [], { clock: local.clock, date: local.date, zone: local.zone }))
  }
  return ok((zoned.epochMilliseconds / MS_PER_S) as Utc)
}

/** Wall-clock date and time of an instant in a zone. */
export function utcToLocal(at: Utc, zone: string): LocalTime {
  const plain = Temporal.Instant.fromEpochMilliseconds(Math.floor(at) * MS_PER_S).toZonedDateTimeISO(zone)
  return {
    date: plain.toPlainDate().toString() as LocalDate,
    clock: plain.toPlainTime().toString().slice(0, 5) as Clock,
    zone,
  }
}

/** Offset of a zone from UTC at an instant, in seconds, east positive. */
export const utcOffsetS = (at: Utc, zone: string): number =>
  Temporal.Instant.fromEpochMilliseconds(at * MS_PER_S).toZonedDateTimeISO(zone).offsetNanoseconds / 1e9

/** `HH:MM` of an instant in a zone. */
export const formatLocalTime = (at: Utc, zone: string): string => utcToLocal(at, zone).clock

/** The calendar date `days` after a date. */
export const nextDate = (date: LocalDate, days = 1): LocalDate =>
  Temporal.PlainDate.from(date).add({ days }).toString() as LocalDate

/** ISO 8601 text of an instant, UTC. */
export const formatIso = (at: Utc): string => Temporal.Instant.fromEpochMilliseconds(at * MS_PER_S).toString()
