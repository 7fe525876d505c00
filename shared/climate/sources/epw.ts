/** EnergyPlus weather files: their columns, and one file read into hours. No file is shipped: many forbid it. */
import { S_PER_HOUR, localToUtc } from '../../units/index.ts'
import { fail, ok, problem } from '../../result/index.ts'
import type { Clock, LocalDate, Utc } from '../../units/index.ts'
import type { Result } from '../../result/index.ts'
import type { HourlyReading } from '../weather.ts'

/** Columns, counted from 0, header lines and hour base of the format (EnergyPlus auxiliary programs; pvlib iotools/epw.py). */
export const EPW = {
  headerLines: 8,
  rows: 8760,
  columns: 35,
  year: 0,
  month: 1,
  day: 2,
  hour: 3,
  dryBulb: 6,
  dewPoint: 7,
  humidity: 8,
  pressure: 9,
  infrared: 12,
  globalHorizontal: 13,
  directNormal: 14,
  diffuseHorizontal: 15,
  windFrom: 20,
  windSpeed: 21,
  totalSky: 22,
  opaqueSky: 23,
  /** The first hour of a day is 1 and its value stands at its end. */
  hourBase: 1,
} as const

/** Codes for "missing" (EnergyPlus auxiliary programs, from memory). */
const MISSING = { dryBulb: 99.9, dewPoint: 99.9, humidity: 999, pressure: 999_999, wind: 999, sky: 99 } as const

export type EpwHour = HourlyReading & {
  readonly dewPointC: number | null
  readonly pressurePa: number | null
  readonly infraredWhPerM2: number
  readonly windFromDeg: number | null
}

export type EpwFile = {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly elevationM: number
  /** Standard time of the file, hours east of UTC: it knows no daylight saving. */
  readonly standardOffsetH: number
  readonly hours: readonly EpwHour[]
}

/** Two digits, with a leading zero. */
const two = (value: number): string => String(value).padStart(2, '0')

/** Whole and half hours as an offset zone, `+HH:MM`. */
const offsetZone = (hours: number): string => {
  const minutes = Math.round(Math.abs(hours) * 60)
  return `${hours < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`
}

const known = (value: number, missing: number): number | null =>
  Number.isFinite(value) && value < missing ? value : null

/** One data line as a reading; a problem names the line (counted from 1). */
function parseLine(text: string, line: number, offsetH: number): Result<EpwHour> {
  const cells = text.split(',')
  const at = (column: number): number => {
    const cell = cells[column]?.trim() ?? ''
    return cell === '' ? Number.NaN : Number(cell)
  }
  if (cells.length < EPW.windSpeed + 1) return fail(problem('weather-columns', [], { line, columns: cells.length }))
  const tempC = known(at(EPW.dryBulb), MISSING.dryBulb)
  const humidity = known(at(EPW.humidity), MISSING.humidity)
  const windMPerS = known(at(EPW.windSpeed), MISSING.wind)
  const startsH = at(EPW.hour) - EPW.hourBase
  if (tempC === null || humidity === null || windMPerS === null || !(startsH >= 0 && startsH < 24)) {
    return fail(problem('weather-reading-missing', [], { line }))
  }
  const date = `${String(at(EPW.year)).padStart(4, '0')}-${two(at(EPW.month))}-${two(at(EPW.day))}`
  if (!/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.test(date))
    return fail(problem('weather-date', [], { line, value: date }))
  const starts = localToUtc({
    date: date as LocalDate,
    clock: `${two(startsH)}:00` as Clock,
    zone: offsetZone(offsetH),
  })
  if (!starts.ok) return starts
  const sky = known(at(EPW.totalSky), MISSING.sky)
  return ok({
    atUtc: (starts.value + S_PER_HOUR) as Utc,
    tempC,
    humidity01: Math.min(1, humidity / 100),
    windMPerS,
    cloud01: sky === null ? null : sky / 10,
    dewPointC: known(at(EPW.dewPoint), MISSING.dewPoint),
    pressurePa: known(at(EPW.pressure), MISSING.pressure),
    infraredWhPerM2: at(EPW.infrared),
    windFromDeg: known(at(EPW.windFrom), MISSING.wind),
  })
}

/**
 * An EPW file as hours in UTC.
 * Text of the whole file; hours are local standard time, value at the end of the hour.
 * Problems: `weather-not-epw`, `weather-columns`, `weather-reading-missing`, `weather-date`, `weather-empty`, each with its line.
 */
export function parseEpw(text: string): Result<EpwFile> {
  const lines = text.split(/\r?\n/)
  const place = (lines[0] ?? '').split(',')
  if (place[0] !== 'LOCATION' || place.length < 10) return fail(problem('weather-not-epw', [], {}))
  const [latitudeDeg, longitudeDeg, standardOffsetH, elevationM] = place.slice(6, 10).map(Number)
  if (
    latitudeDeg === undefined ||
    longitudeDeg === undefined ||
    standardOffsetH === undefined ||
    elevationM === undefined
  ) {
    return fail(problem('weather-not-epw', [], {}))
  }
  if (![latitudeDeg, longitudeDeg, standardOffsetH, elevationM].every(Number.isFinite))
    return fail(problem('weather-not-epw', [], {}))
  const hours: EpwHour[] = []
  for (const [index, line] of lines.entries()) {
    if (index < EPW.headerLines || line.trim() === '') continue
    const hour = parseLine(line, index + 1, standardOffsetH)
    if (!hour.ok) return hour
    hours.push(hour.value)
  }
  if (hours.length === 0) return fail(problem('weather-empty', [], {}))
  return ok({ latitudeDeg, longitudeDeg, elevationM, standardOffsetH, hours })
}
