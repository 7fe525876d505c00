/** Sun of one night at a place: this evening's sunset and dusk, next morning's dawns and sunrise. */
import {
  AstroTime,
  Body,
  Equator,
  Horizon,
  Observer,
  SearchAltitude,
  SearchHourAngle,
  SearchRiseSet,
} from 'astronomy-engine'
import { S_PER_DAY, localToUtc, nextDate } from '../units/index.ts'
import { invariant } from '../result/index.ts'
import type { Clock, LocalDate, Utc } from '../units/index.ts'
import type { SunTimes } from './types.ts'

const CIVIL_DEG = -6 // civil twilight, definition
const NAUTICAL_DEG = -12 // nautical twilight, definition
/** Search window of one event, days: noon to noon. */
const HALF_DAY = 1

type Place = { readonly latitudeDeg: number; readonly longitudeDeg: number }

/** Noon of 1 January 2000, seconds UTC: where astronomy-engine starts to count days. */
const J2000_UTC = 946_728_000

const timeOf = (atUtc: number): AstroTime => new AstroTime((atUtc - J2000_UTC) / S_PER_DAY)
const utcOf = (time: AstroTime | null): Utc | null =>
  time === null ? null : (Math.round(time.ut * S_PER_DAY + J2000_UTC) as Utc)

/** Noon by the wall clock of a zone; zones do not skip noon. */
function localNoon(date: LocalDate, zone: string): Utc {
  const noon = localToUtc({ date, clock: '12:00' as Clock, zone })
  invariant(noon.ok, 'no zone skips noon')
  return noon.value
}

/**
 * Sun times of the night that follows a local date.
 * Latitude and longitude in degrees, north and east positive; date of the evening; IANA zone or offset.
 * Result: seconds UTC, null where the event does not occur (polar day or night).
 * Source: astronomy-engine 2.1.19, upper limb at 0.833 degrees below the horizon; within 3 s of NREL SPA (Reda and Andreas 2004).
 */
export function sunTimes(input: Place & { readonly date: LocalDate; readonly zone: string }): SunTimes {
  const key = `${input.latitudeDeg} ${input.longitudeDeg} ${input.date} ${input.zone}`
  const known = remembered.get(key)
  if (known !== undefined) return known
  const times = searchTimes(input)
  if (remembered.size >= REMEMBERED) remembered.clear()
  remembered.set(key, times)
  return times
}

/** The five searches take milliseconds and depend on place and date alone, while a plan is derived anew at every turn of a dial. */
const remembered = new Map<string, SunTimes>()
const REMEMBERED = 64 // places and dates kept; a trip has at most 60 nights

function searchTimes(input: Place & { readonly date: LocalDate; readonly zone: string }): SunTimes {
  const observer = new Observer(input.latitudeDeg, input.longitudeDeg, 0)
  const fromUtc = localNoon(input.date, input.zone)
  const fromNoon = timeOf(fromUtc)
  const nextNoonUtc = localNoon(nextDate(input.date), input.zone)
  const midnight = timeOf((fromUtc + nextNoonUtc) / 2)
  const below = (direction: 1 | -1, start: AstroTime, altitudeDeg: number): Utc | null =>
    utcOf(SearchAltitude(Body.Sun, observer, direction, start, HALF_DAY / 2 + 0.02, altitudeDeg))
  const riseSet = (direction: 1 | -1, start: AstroTime): Utc | null =>
    utcOf(SearchRiseSet(Body.Sun, observer, direction, start, HALF_DAY / 2 + 0.02))
  const within = (at: Utc | null): Utc | null => (at !== null && at >= fromUtc && at < nextNoonUtc ? at : null)
  return {
    sunsetUtc: within(riseSet(-1, fromNoon)),
    civilDuskUtc: within(below(-1, fromNoon, CIVIL_DEG)),
    nauticalDawnUtc: within(below(1, midnight, NAUTICAL_DEG)),
    civilDawnUtc: within(below(1, midnight, CIVIL_DEG)),
    sunriseUtc: within(riseSet(1, midnight)),
  }
}

/** Sunrise, transit and sunset of one solar day, and which polar case holds where there is neither. */
export type SunDay = {
  readonly sunriseUtc: Utc | null
  readonly transitUtc: Utc
  readonly sunsetUtc: Utc | null
  readonly polar: 'day' | 'night' | null
}

/**
 * Sun times of one local date by the sun itself: the events next to the transit of that date.
 * Anchored on the local date, so a sunset west of Greenwich is not taken from the evening before.
 */
export function sunDay(input: Place & { readonly date: LocalDate }): SunDay {
  const observer = new Observer(input.latitudeDeg, input.longitudeDeg, 0)
  // Midnight of mean solar time on the local date, as an instant.
  const utcMidnight = localToUtc({ date: input.date, clock: '00:00' as Clock, zone: 'UTC' })
  invariant(utcMidnight.ok, 'UTC skips no midnight')
  const midnight = timeOf(utcMidnight.value - (input.longitudeDeg / 360) * S_PER_DAY)
  const transit = SearchHourAngle(Body.Sun, observer, 0, midnight).time
  const lower = transit.AddDays(-0.5)
  const sunriseUtc = utcOf(SearchRiseSet(Body.Sun, observer, 1, lower, 0.5))
  const sunsetUtc = utcOf(SearchRiseSet(Body.Sun, observer, -1, transit, 0.5))
  const transitUtc = utcOf(transit)
  invariant(transitUtc !== null, 'the sun crosses the meridian every day')
  const neither = sunriseUtc === null && sunsetUtc === null
  const polar = neither ? (sunPosition({ ...input, atUtc: transitUtc }).elevationDeg > 0 ? 'day' : 'night') : null
  return { sunriseUtc, transitUtc, sunsetUtc, polar }
}

/** Place of the sun in the sky, degrees: true and refracted elevation, azimuth from north through east. */
export function sunPosition(input: Place & { readonly atUtc: number }): {
  readonly elevationDeg: number
  readonly apparentElevationDeg: number
  readonly azimuthDeg: number
} {
  const observer = new Observer(input.latitudeDeg, input.longitudeDeg, 0)
  const time = timeOf(input.atUtc)
  const equator = Equator(Body.Sun, time, observer, true, true)
  const plain = Horizon(time, observer, equator.ra, equator.dec)
  const refracted = Horizon(time, observer, equator.ra, equator.dec, 'normal')
  return { elevationDeg: plain.altitude, apparentElevationDeg: refracted.altitude, azimuthDeg: plain.azimuth }
}
