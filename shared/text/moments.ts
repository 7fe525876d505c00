/** Durations, clocks, dates and money as a person would write them. */
import {
  S_PER_DAY,
  S_PER_HOUR,
  S_PER_MINUTE,
  dateExists,
  formatLocalTime,
  localToUtc,
  utcToLocal,
} from '../units/index.ts'
import type { Clock, LocalDate, Utc } from '../units/index.ts'
import { localeOf } from './numbers.ts'
import type { Formats } from './quantities.ts'

const SPACE = '\u00a0'
const MS_PER_S = 1000

/** '45 s', '25 min', '2 h 10 min', '3 d 4 h'; days read 'Tg.' in German. */
export function sayDuration(durationS: number, formats: Formats): string {
  const size = Math.abs(durationS)
  const sign = durationS < 0 ? '\u2212' : ''
  if (size < 90) return `${sign}${Math.round(size)}${SPACE}s`
  const minutes = Math.round(size / S_PER_MINUTE)
  if (minutes < 60) return `${sign}${minutes}${SPACE}min`
  if (size < 2 * S_PER_DAY) return sign + pair(Math.floor(minutes / 60), 'h', minutes % 60, 'min')
  const hours = Math.round(size / S_PER_HOUR)
  return sign + pair(Math.floor(hours / 24), formats.language === 'de' ? 'Tg.' : 'd', hours % 24, 'h')
}

const pair = (large: number, largeUnit: string, small: number, smallUnit: string): string =>
  `${large}${SPACE}${largeUnit}${small === 0 ? '' : `${SPACE}${small}${SPACE}${smallUnit}`}`

/** 24-hour clock; the 12-hour one where American units and English meet. */
export function sayClock(at: Utc, zone: string, formats: Formats): string {
  return sayClockText(formatLocalTime(at, zone), formats)
}

/** A wall clock 'HH:MM' in the reader's notation. */
export function sayClockText(clock: string, formats: Formats): string {
  if (formats.units !== 'us' || formats.language !== 'en') return clock
  const hour = Number(clock.slice(0, 2))
  return `${hour % 12 === 0 ? 12 : hour % 12}:${clock.slice(3, 5)}${SPACE}${hour < 12 ? 'AM' : 'PM'}`
}

/** 'Fri 13 Nov 2026'; American units: 'Fri, Nov 13, 2026'; German: 'Fr., 13. Nov. 2026'. Text that is no date comes back as it was. */
export function sayDate(isoDate: string, formats: Formats): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(isoDate) || !dateExists(isoDate)) return isoDate
  return sayDateBy('date', isoDate as LocalDate, formats)
}

/** 'Fri 18:05', for a list whose days lie close together. */
export const sayWeekdayClock = (at: Utc, zone: string, formats: Formats): string =>
  `${sayDateBy('weekday', utcToLocal(at, zone).date, formats)}${SPACE}${sayClock(at, zone, formats)}`

/** 'Fri 13 Nov, 18:05', for instants that may lie days apart. */
export const sayDayClock = (at: Utc, zone: string, formats: Formats): string =>
  `${sayDateBy('day', utcToLocal(at, zone).date, formats)}, ${sayClock(at, zone, formats)}`

const DATE_PARTS = {
  weekday: { weekday: 'short' },
  day: { weekday: 'short', day: 'numeric', month: 'short' },
  date: { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>

/** Made once a language and kind: making one is slow. */
const DATE_FORMATS = new Map<string, Intl.DateTimeFormat>()

function sayDateBy(kind: keyof typeof DATE_PARTS, date: LocalDate, formats: Formats): string {
  const noon = localToUtc({ date, clock: '12:00' as Clock, zone: 'UTC' })
  if (!noon.ok) return date
  const locale = formats.language === 'en' && formats.units === 'us' ? 'en-US' : localeOf(formats.language)
  const key = `${locale} ${kind}`
  const made = DATE_FORMATS.get(key) ?? new Intl.DateTimeFormat(locale, { ...DATE_PARTS[kind], timeZone: 'UTC' })
  DATE_FORMATS.set(key, made)
  return made.format(noon.value * MS_PER_S)
}

/** An amount with its currency (ISO 4217). */
export const sayMoney = (amount: number, currency: string, formats: Formats): string =>
  new Intl.NumberFormat(localeOf(formats.language), { style: 'currency', currency }).format(amount)

export const sayList = (items: readonly string[], formats: Formats): string =>
  new Intl.ListFormat(localeOf(formats.language), { type: 'conjunction' }).format(items)
