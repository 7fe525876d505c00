/** Wall clocks and instants, on nights when the clock is changed and where it never is. */
import { describe, expect, it } from 'vitest'
import {
  dateExists,
  formatIso,
  formatLocalTime,
  localToUtc,
  nextDate,
  parseClock,
  utcOffsetS,
  utcToLocal,
} from '../../../shared/units/index.ts'
import type { Clock, LocalDate, LocalTime, Utc } from '../../../shared/units/index.ts'

const at = (date: string, clock: string, zone: string): LocalTime => ({
  date: date as LocalDate,
  clock: clock as Clock,
  zone,
})
const iso = (local: LocalTime, repeated?: 'earlier' | 'later'): string => {
  const found = localToUtc(local, repeated)
  return found.ok ? formatIso(found.value) : found.problem.code
}
const utc = (text: string): Utc => (Date.parse(text) / 1000) as Utc

describe('a clock', () => {
  it.each([
    ['00:00', 0],
    ['00:01', 60],
    ['07:30', 27_000],
    ['19:59', 71_940],
    ['20:00', 72_000],
    ['23:59', 86_340],
  ])('%s is %i s after midnight', (text, seconds) => {
    expect(parseClock(text)).toEqual({ ok: true, value: seconds })
  })

  it.each(['24:00', '23:60', '7:30', '07:3', ' 07:30', '07:30 ', '07-30', '07:30:00', '30:00', '', '２２:00'])(
    '%j is refused with its value',
    (text) => {
      expect(parseClock(text)).toEqual({
        ok: false,
        problem: { code: 'clock-unreadable', path: [], params: { value: text } },
      })
    },
  )
})

/** Zone rules: IANA time zone database, releases 2024a and later. Hours between 22:00 and 07:00 on the next day. */
const NIGHTS: readonly (readonly [string, string, string, number])[] = [
  ['Europe/Berlin', '2026-03-28', '2026-03-29', 8],
  ['Europe/Berlin', '2026-10-24', '2026-10-25', 10],
  ['America/New_York', '2026-03-07', '2026-03-08', 8],
  ['America/New_York', '2026-10-31', '2026-11-01', 10],
  ['Australia/Lord_Howe', '2026-04-04', '2026-04-05', 9.5],
  ['Australia/Lord_Howe', '2026-10-03', '2026-10-04', 8.5],
  ['Asia/Kathmandu', '2026-03-28', '2026-03-29', 9],
]

describe('a night from 22:00 to 07:00', () => {
  it.each(NIGHTS)('in %s from %s to %s lasts %d h', (zone, evening, morning, hours) => {
    const from = localToUtc(at(evening, '22:00', zone))
    const to = localToUtc(at(morning, '07:00', zone))
    if (!from.ok || !to.ok) throw new Error('a plain clock is refused')
    expect((to.value - from.value) / 3600).toBe(hours)
    expect(utcToLocal(from.value, zone)).toEqual(at(evening, '22:00', zone))
    expect(utcToLocal(to.value, zone)).toEqual(at(morning, '07:00', zone))
  })
})

describe('a clock on a changing night', () => {
  it('that is skipped is refused, with where and when', () => {
    const skipped = at('2026-03-29', '02:30', 'Europe/Berlin')
    expect(localToUtc(skipped)).toEqual({
      ok: false,
      problem: { code: 'time-skipped', path: [], params: { ...skipped } },
    })
    expect(iso(skipped, 'later')).toBe('time-skipped')
    expect(iso(at('2026-03-29', '01:59', 'Europe/Berlin'))).toBe('2026-03-29T00:59:00Z')
    expect(iso(at('2026-03-29', '03:00', 'Europe/Berlin'))).toBe('2026-03-29T01:00:00Z')
  })

  it('that comes twice is the earlier one, or the later where that is said', () => {
    const twice = at('2026-10-25', '02:30', 'Europe/Berlin')
    expect(iso(twice)).toBe('2026-10-25T00:30:00Z')
    expect(iso(twice, 'earlier')).toBe('2026-10-25T00:30:00Z')
    expect(iso(twice, 'later')).toBe('2026-10-25T01:30:00Z')
    for (const instant of ['2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z'])
      expect(utcToLocal(utc(instant), 'Europe/Berlin')).toEqual(twice)
  })
})

describe('an instant', () => {
  it('has the date and clock of its place, and of an offset', () => {
    const instant = utc('2026-12-31T23:30:00Z')
    expect(utcToLocal(instant, 'Asia/Kathmandu')).toEqual(at('2027-01-01', '05:15', 'Asia/Kathmandu'))
    expect(utcToLocal(instant, '-03:30')).toEqual(at('2026-12-31', '20:00', '-03:30'))
    expect(formatLocalTime(instant, 'Asia/Kathmandu')).toBe('05:15')
    expect(utcToLocal((instant + 59.9) as Utc, 'UTC').clock).toBe('23:30')
  })

  it('has an offset, east positive', () => {
    expect(utcOffsetS(utc('2026-07-01T00:00:00Z'), 'Europe/Berlin')).toBe(7200)
    expect(utcOffsetS(utc('2026-01-01T00:00:00Z'), 'America/St_Johns')).toBe(-12_600)
    expect(utcOffsetS(utc('2026-01-01T00:00:00Z'), 'Asia/Kathmandu')).toBe(20_700)
  })

  it('is written as ISO 8601 in UTC', () => {
    expect(formatIso(0 as Utc)).toBe('1970-01-01T00:00:00Z')
    expect(formatIso(utc('2027-10-08T04:55:09Z'))).toBe('2027-10-08T04:55:09Z')
  })
})

describe('the date after', () => {
  it('is the next one, over the ends of months, of years and of leap years', () => {
    const after = (date: string, days?: number): string => nextDate(date as LocalDate, days)
    expect(after('2027-10-08')).toBe('2027-10-09')
    expect(after('2026-12-31')).toBe('2027-01-01')
    expect(after('2028-02-28')).toBe('2028-02-29')
    expect(after('2027-02-28')).toBe('2027-03-01')
    expect(after('2027-03-01', -1)).toBe('2027-02-28')
    expect(after('2027-03-01', 0)).toBe('2027-03-01')
    expect(after('2027-01-01', 365)).toBe('2028-01-01')
  })
})

describe('whether a date is on the calendar', () => {
  it('agrees with the system calendar on every day number of every month, in years of all four kinds', () => {
    for (const year of [1900, 2000, 2026, 2028]) {
      for (let month = 0; month <= 13; month += 1) {
        for (let day = 0; day <= 32; day += 1) {
          const date = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
          const stays = new Date(Date.UTC(year, month - 1, day)).toISOString().startsWith(date)
          expect(dateExists(date), date).toBe(stays)
        }
      }
    }
  })
})
