/** Leaving home and coming back as instants, each in the time zone of its clock. */
import type { HomeClock, Trip } from '../document/index.ts'
import { nextDate } from '../units/index.ts'
import type { LocalDate, Utc } from '../units/index.ts'
import { instantOf } from './clock.ts'
import type { NightPlan, PlanHome, ZonedInstant } from './types.ts'

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

/** The clocks at home that agree with the nights: leaving before the first arrival, back after the last morning. */
export function homeInOrder({ leave, back }: PlanHome, nights: readonly NightPlan[]): PlanHome {
  const [first, last] = [nights[0]?.clock, nights.at(-1)?.clock]
  return {
    leave: leave !== null && leave.atUtc < (first?.arriveUtc ?? Infinity) ? leave : null,
    back: back !== null && back.atUtc > (last?.departUtc ?? -Infinity) ? back : null,
  }
}

/** The night's rest at home before the day of leaving. */
export function restAtHome({ date, zone }: HomeClock): { readonly fromUtc: Utc; readonly toUtc: Utc } {
  const eve = nextDate(date as LocalDate, -1)
  return { fromUtc: instantOf(eve, REST_FROM, zone), toUtc: instantOf(date as LocalDate, REST_TO, zone) }
}
