/** Leaving home and coming back as instants, each in the time zone of its clock. */
import type { HomeClock, Trip } from '../document/index.ts'
import { nextDate } from '../units/index.ts'
import type { LocalDate, Utc } from '../units/index.ts'
import { instantOf } from './clock.ts'
import type { PlanHome, ZonedInstant } from './types.ts'

/** Hours in which nobody packs before a trip, common practice. */
const REST_FROM = '21:00'
const REST_TO = '07:00'

export const planHome = ({ leaveHome, backHome }: Trip): PlanHome => ({
  leave: leaveHome === undefined ? null : zoned(leaveHome),
  back: backHome === undefined ? null : zoned(backHome),
})

const zoned = ({ date, clock, zone }: HomeClock): ZonedInstant => ({
  atUtc: instantOf(date as LocalDate, clock, zone),
  zone,
})

/** The night's rest at home before the day of leaving. */
export function restAtHome({ date, zone }: HomeClock): { readonly fromUtc: Utc; readonly toUtc: Utc } {
  const eve = nextDate(date as LocalDate, -1)
  return { fromUtc: instantOf(eve, REST_FROM, zone), toUtc: instantOf(date as LocalDate, REST_TO, zone) }
}
