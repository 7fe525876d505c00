/** Dates, zones and spans as the checks need them. */
import { nextDate, parseClock, utcOffsetS } from '../../units/index.ts'
import type { LocalDate, Utc } from '../../units/index.ts'

const DAY_MIN = 1440

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
