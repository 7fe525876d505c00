/** Weather of one night by the step: from readings by the hour where given, else drawn from the day's high and the next low. */
import {
  S_PER_DAY,
  S_PER_HOUR,
  S_PER_MINUTE,
  formatIso,
  localToUtc,
  nextDate,
  utcOffsetS,
  utcToLocal,
} from '../units/index.ts'
import { fail, invariant, ok, problem } from '../result/index.ts'
import type { Clock, LocalDate, Utc } from '../units/index.ts'
import type { Result } from '../result/index.ts'
import type { SunTimes, WeatherStep } from './types.ts'
import { PARTON_LOGAN_DENVER, daySineC, nightDecayC } from './sources/hourly-temperature.ts'

export type ForecastHour = {
  readonly clock: string
  readonly tempC: number
  readonly windMPerS?: number | undefined
  readonly humidity01?: number | undefined
  readonly cloud01?: number | undefined
}

export type Forecast = {
  readonly highC: number
  /** Low of the dawn that ends the night. */
  readonly lowC: number
  readonly windMPerS: number
  readonly humidity01: number
  readonly cloud01: number
  readonly hours?: readonly ForecastHour[] | undefined
}

export type NightWeatherInput = Forecast & {
  readonly sun: Pick<SunTimes, 'sunsetUtc' | 'sunriseUtc'>
  readonly fromUtc: Utc
  readonly toUtc: Utc
  readonly stepS: number
  /** Colder than the forecast by this much, K. */
  readonly coldMarginK: number
  readonly zone: string
}

type Reading = Omit<WeatherStep, 'atUtc'> & { readonly atUtc: number }

/** One hour of an imported file; null where the file does not say. */
export type HourlyReading = {
  readonly atUtc: Utc
  readonly tempC: number
  readonly windMPerS: number | null
  readonly humidity01: number | null
  readonly cloud01: number | null
}

/**
 * Imported hours as forecast hours of one night, by the clock of its zone.
 * A file of a typical year is matched by month, day and hour: pass `yearShiftS` to move it on to the night's year.
 * Result: the readings between the two instants, one for each; `weather-night-missing` where the file does not cover both ends within an hour.
 */
export function forecastHoursOf(input: {
  readonly readings: readonly HourlyReading[]
  readonly fromUtc: Utc
  readonly toUtc: Utc
  readonly zone: string
  readonly yearShiftS: number
}): Result<readonly ForecastHour[]> {
  const moved = input.readings.map((reading) => ({ ...reading, atUtc: (reading.atUtc + input.yearShiftS) as Utc }))
  const inside = moved.filter(
    (reading) => reading.atUtc >= input.fromUtc - S_PER_HOUR && reading.atUtc <= input.toUtc + S_PER_HOUR,
  )
  const first = inside[0]
  const last = inside.at(-1)
  if (first === undefined || last === undefined || first.atUtc > input.fromUtc || last.atUtc < input.toUtc) {
    return fail(problem('weather-night-missing', [], { from: formatIso(input.fromUtc), to: formatIso(input.toUtc) }))
  }
  return ok(
    inside.map((reading) => ({
      clock: utcToLocal(reading.atUtc, input.zone).clock,
      tempC: reading.tempC,
      ...(reading.windMPerS === null ? {} : { windMPerS: reading.windMPerS }),
      ...(reading.humidity01 === null ? {} : { humidity01: reading.humidity01 }),
      ...(reading.cloud01 === null ? {} : { cloud01: reading.cloud01 }),
    })),
  )
}

/** The margin guards against cold: it counts in full up to the first of these, °C, and not at all from the second, lest heat be planned too mild. */
const MARGIN_WHOLE_TO_C = 15
const MARGIN_GONE_FROM_C = 25

/** A forecast temperature with the margin taken off, °C; a warmer forecast never gives a colder plan for margins up to 10 K. */
function colderC(tempC: number, marginK: number): number {
  const share01 = (MARGIN_GONE_FROM_C - tempC) / (MARGIN_GONE_FROM_C - MARGIN_WHOLE_TO_C)
  return tempC - marginK * Math.min(1, Math.max(0, share01))
}

/**
 * Weather at every step from `fromUtc` to `toUtc`, both included.
 * Temperatures in °C, wind in m/s, humidity and cloud as fractions; clocks in the zone. Between hours: straight lines;
 * outside them: the drawn course, moved to meet the nearest reading. The cold margin is taken off at the end, less of it the milder it is.
 * Source: Parton and Logan 1981, rescaled so that the low is met at dawn without its jump; a cosine where the sun neither sets nor rises.
 */
export function weatherForNight(input: NightWeatherInput): WeatherStep[] {
  invariant(input.stepS > 0 && input.toUtc >= input.fromUtc, 'a night has steps')
  const drawnC = drawnCourse(input)
  const readings = datedReadings(input)
  const steps: WeatherStep[] = []
  for (let at: number = input.fromUtc; at <= input.toUtc; at += input.stepS) {
    const reading = readAt(readings, at, drawnC, input)
    steps.push({ ...reading, atUtc: at as Utc, tempC: colderC(reading.tempC, input.coldMarginK) })
  }
  return steps
}

/** The course drawn from high and low, °C by instant. */
function drawnCourse(input: NightWeatherInput): (at: number) => number {
  const { sunsetUtc, sunriseUtc } = input.sun
  const middleC = (input.highC + input.lowC) / 2
  const halfRangeK = (input.highC - input.lowC) / 2
  if (sunsetUtc === null || sunriseUtc === null || sunriseUtc <= sunsetUtc) {
    // Warmest at 15:00 by the clock (ASHRAE Fundamentals ch. 14 daily-range table), coldest half a day later.
    const offsetS = utcOffsetS(input.fromUtc, input.zone)
    return (at) => middleC + halfRangeK * Math.cos((2 * Math.PI * ((at + offsetS) / S_PER_HOUR - 15)) / 24)
  }
  const nightH = (sunriseUtc - sunsetUtc) / S_PER_HOUR
  const course = {
    maximumC: input.highC,
    minimumC: input.lowC,
    sunriseH: 0,
    sunsetH: 24 - nightH,
    coefficients: PARTON_LOGAN_DENVER,
  }
  const minimumAt = sunriseUtc + PARTON_LOGAN_DENVER.lagOfMinimumH * S_PER_HOUR
  return (at) => {
    if (at < sunsetUtc) return daySineC(course, course.sunsetH + (at - sunsetUtc) / S_PER_HOUR)
    if (at < minimumAt) return nightDecayC(course, (at - sunsetUtc) / S_PER_HOUR, true)
    return daySineC(course, (at - sunriseUtc) / S_PER_HOUR)
  }
}

/** The calendar of one night: its evening's date, that noon, and whether the clock keeps one offset throughout. */
type NightCalendar = { readonly evening: LocalDate; readonly noonUtc: Utc; readonly steady: boolean }

/** Calendar look-ups take longer than the night itself and do not change while a dial turns. */
const remembered = new Map<string, NightCalendar>()
const REMEMBERED = 64 // nights kept; a trip has at most 60

function calendarOf({ fromUtc, toUtc, zone }: NightWeatherInput): NightCalendar {
  const key = `${fromUtc} ${toUtc} ${zone}`
  const known = remembered.get(key)
  if (known !== undefined) return known
  const local = utcToLocal(fromUtc, zone)
  // Someone who arrives before six in the morning is still in the night of the day before.
  const evening = local.clock < '06:00' ? nextDate(local.date, -1) : local.date
  const calendar = {
    evening,
    noonUtc: instantOf(evening, '12:00', zone, 'earlier'),
    steady: utcOffsetS((fromUtc - S_PER_DAY) as Utc, zone) === utcOffsetS((toUtc + S_PER_DAY) as Utc, zone),
  }
  if (remembered.size >= REMEMBERED) remembered.clear()
  remembered.set(key, calendar)
  return calendar
}

/** The instant of a clock so many days after the evening: by arithmetic where the offset holds. */
function instantAfter(
  calendar: NightCalendar,
  zone: string,
  at: { days: number; clock: string; repeated: 'earlier' | 'later' },
): Utc {
  if (!calendar.steady) return instantOf(nextDate(calendar.evening, at.days), at.clock, zone, at.repeated)
  const sinceNoonS = (Number(at.clock.slice(0, 2)) - 12) * S_PER_HOUR + Number(at.clock.slice(3)) * S_PER_MINUTE
  return (calendar.noonUtc + at.days * S_PER_DAY + sinceNoonS) as Utc
}

/** The forecast's hours as instants in order: the first belongs to the evening, a smaller clock to the next day. */
function datedReadings(input: NightWeatherInput): readonly Reading[] {
  const hours = input.hours ?? []
  if (hours.length === 0) return []
  const calendar = calendarOf(input)
  let days = 0
  let previous = -Infinity
  return hours.map((hour, index) => {
    if (index === 0 && hour.clock < '06:00') days = 1
    const at = (repeated: 'earlier' | 'later'): Utc =>
      instantAfter(calendar, input.zone, { days, clock: hour.clock, repeated })
    let atUtc = at('earlier')
    // A clock that comes again: the repeated hour of autumn if there is one, else the next day.
    if (atUtc <= previous) atUtc = at('later')
    if (atUtc <= previous) {
      days += 1
      atUtc = at('earlier')
    }
    previous = atUtc
    return {
      atUtc,
      tempC: hour.tempC,
      windMPerS: hour.windMPerS ?? input.windMPerS,
      humidity01: hour.humidity01 ?? input.humidity01,
      cloud01: hour.cloud01 ?? input.cloud01,
    }
  })
}

/** The instant of a clock; one that the clock skips is read an hour later by the wall, which is the same instant. */
function instantOf(date: LocalDate, clock: string, zone: string, repeated: 'earlier' | 'later'): Utc {
  const at = localToUtc({ date, clock: clock as Clock, zone }, repeated)
  if (at.ok) return at.value
  const later = `${String((Number(clock.slice(0, 2)) + 1) % 24).padStart(2, '0')}${clock.slice(2)}` as Clock
  const shifted = localToUtc({ date, clock: later, zone }, repeated)
  invariant(shifted.ok, 'no zone skips two hours running')
  return shifted.value
}

function readAt(
  readings: readonly Reading[],
  at: number,
  drawnC: (at: number) => number,
  input: Forecast,
): Omit<WeatherStep, 'atUtc'> {
  const first = readings[0]
  const last = readings.at(-1)
  if (first === undefined || last === undefined) {
    return { tempC: drawnC(at), windMPerS: input.windMPerS, humidity01: input.humidity01, cloud01: input.cloud01 }
  }
  if (at <= first.atUtc) return { ...first, tempC: first.tempC + drawnC(at) - drawnC(first.atUtc) }
  if (at >= last.atUtc) return { ...last, tempC: last.tempC + drawnC(at) - drawnC(last.atUtc) }
  const after = readings.findIndex((reading) => reading.atUtc > at)
  const left = readings[after - 1] ?? first
  const right = readings[after] ?? last
  const part = (at - left.atUtc) / (right.atUtc - left.atUtc)
  const mix = (from: number, to: number): number => from + (to - from) * part
  return {
    tempC: mix(left.tempC, right.tempC),
    windMPerS: mix(left.windMPerS, right.windMPerS),
    humidity01: mix(left.humidity01, right.humidity01),
    cloud01: mix(left.cloud01, right.cloud01),
  }
}
