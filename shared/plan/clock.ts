/** The wall clock of one night turned into instants: sun, arrival, bedtime, waking, leaving, and the site's hours. */
import { sunTimes } from '../climate/index.ts'
import type { Night } from '../document/index.ts'
import { invariant } from '../result/index.ts'
import { localToUtc, nextDate, S_PER_HOUR, S_PER_MINUTE } from '../units/index.ts'
import type { Clock, LocalDate, Utc } from '../units/index.ts'
import type { NightClock } from './types.ts'

/** Clocks from noon on belong to the evening's date, earlier ones to the morning after. */
const NOON: string = '12:00'

/**
 * The instant that a clock of a night means. A time that summer time skips is taken an hour later, when that clock next exists;
 * the document refuses such a time on entry, so this serves only a zone whose rules changed since.
 */
export function nightInstant(night: Night, clock: string): Utc {
  return instantOf(dateOf(night, clock), clock, night.site.zone)
}

const dateOf = (night: Night, clock: string): LocalDate => {
  const evening = night.date as LocalDate
  return clock >= NOON ? evening : nextDate(evening)
}

/** The instant of a wall clock on a date; one that summer time skips is taken an hour later. */
export function instantOf(date: LocalDate, clock: string, zone: string): Utc {
  const at = localToUtc({ date, clock: clock as Clock, zone })
  if (at.ok) return at.value
  const hour = String((Number(clock.slice(0, 2)) + 1) % 24).padStart(2, '0')
  const later = localToUtc({ date, clock: `${hour}${clock.slice(2)}` as Clock, zone })
  invariant(later.ok, 'summer time skips an hour at most')
  return later.value
}

const minutes = (count: number): number => count * S_PER_MINUTE

/** All instants of a night. Leaving is set by the target where there is one, else by waking and the morning's own minutes. */
export function nightClock(night: Night): NightClock {
  const { site, target } = night
  const sun = sunTimes({
    latitudeDeg: site.latitudeDeg,
    longitudeDeg: site.longitudeDeg,
    date: night.date as LocalDate,
    zone: site.zone,
  })
  const targetSun = sunTimes({
    latitudeDeg: target?.latitudeDeg ?? site.latitudeDeg,
    longitudeDeg: target?.longitudeDeg ?? site.longitudeDeg,
    date: night.date as LocalDate,
    zone: site.zone,
  })
  const bedtimeUtc = nightInstant(night, night.sleep.from)
  const plannedWakeUtc = nightInstant(night, night.sleep.to)
  const beAtTargetUtc =
    target === undefined || targetSun.sunriseUtc === null
      ? null
      : ((targetSun.sunriseUtc - minutes(target.minutesBeforeSunrise)) as Utc)
  const departUtc =
    beAtTargetUtc === null || target === undefined
      ? ((plannedWakeUtc + minutes(night.morningMin)) as Utc)
      : ((beAtTargetUtc - minutes(target.driveMin + target.walkMin)) as Utc)
  const neededWakeUtc = (departUtc - minutes(night.morningMin)) as Utc
  const span = (of: { from: string; to: string } | undefined): readonly [Utc | null, Utc | null] => {
    if (of === undefined) return [null, null]
    const from = nightInstant(night, of.from)
    const to = nightInstant(night, of.to)
    // A span such as 00:00 to 06:00 lies wholly in the morning; one such as 23:00 to 07:00 crosses midnight by itself.
    return [from, to > from ? to : instantOf(nextDate(dateOf(night, of.to)), of.to, site.zone)]
  }
  const [quietFromUtc, quietToUtc] = span(night.quiet)
  const [banFromUtc, banToUtc] = span(night.movementBan)
  const [gateFromUtc, gateToUtc] = span(night.gateClosed)
  return {
    zone: site.zone,
    sun,
    arriveUtc: nightInstant(night, night.arrive),
    bedtimeUtc,
    wakeUtc: neededWakeUtc < plannedWakeUtc && neededWakeUtc > bedtimeUtc ? neededWakeUtc : plannedWakeUtc,
    departUtc,
    beAtTargetUtc,
    quietFromUtc,
    quietToUtc,
    banFromUtc,
    banToUtc,
    gateFromUtc,
    gateToUtc,
    checkOutUtc: night.checkOutBy === undefined ? null : checkOutInstant(night, night.checkOutBy),
  }
}

/** Check-out is always on the morning after, even at 12:00 or later. */
function checkOutInstant(night: Night, clock: string): Utc {
  return instantOf(nextDate(night.date as LocalDate), clock, night.site.zone)
}

/** Time spent at the target once the sun is up, common practice. */
const STAY_AFTER_SUNRISE_S = S_PER_HOUR

/** Back at the pitch after the target: the sun up, the stay, and the way back; null without a target that has a sunrise. */
export function backFromTarget(night: Night, clock: NightClock): Utc | null {
  const { target } = night
  if (target === undefined || clock.beAtTargetUtc === null) return null
  const sunriseUtc = clock.beAtTargetUtc + minutes(target.minutesBeforeSunrise)
  return (sunriseUtc + STAY_AFTER_SUNRISE_S + minutes(target.driveMin + target.walkMin)) as Utc
}
