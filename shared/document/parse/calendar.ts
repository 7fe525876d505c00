/** Dates, zones and spans as the checks need them. */
import { nextDate, parseClock, utcOffsetS } from '../../units/index.ts'
import type { LocalDate, Utc } from '../../units/index.ts'

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const DAY_MIN = 1440

/** Whether a well-written date is on the calendar: 30 February is not. */
export function dateExists(date: string): boolean {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number)
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  const days = month === 2 && leap ? 29 : (DAYS[month - 1] ?? 0)
  return day >= 1 && day <= days
}

/** The date after one that exists. */
export const dayAfter = (date: string): string => nextDate(date as LocalDate)

/** Whether this machine's time-zone data knows the zone. */
export function zoneExists(zone: string): boolean {
  try {
    return Number.isFinite(utcOffsetS(0 as Utc, zone))
  } catch (error) {
    // The one way to ask for a zone is to use it: an unknown one throws a RangeError.
    if (error instanceof RangeError) return false
    throw error
  }
}

/** Minutes from one clock to another, over midnight where `to` is not after `from`. */
export function spanMin(span: { readonly from: string; readonly to: string }): number {
  const from = parseClock(span.from)
  const to = parseClock(span.to)
  if (!from.ok || !to.ok) return 0
  const minutes = (to.value - from.value) / 60
  return minutes > 0 ? minutes : minutes + DAY_MIN
}
