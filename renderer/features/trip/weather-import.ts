/** A weather file as the hours of one night: an EPW file, or a table whose columns a person names, guessed at first by their headings. */
import type { Night } from '../../../shared/document/index.ts'
import { csvHead, forecastHoursOf, nightClock, parseEpw, parseHourlyCsv } from '../../../shared/plan/index.ts'
import type { CsvColumns, HourlyReading } from '../../../shared/plan/index.ts'
import { fail } from '../../../shared/result/index.ts'
import type { Result } from '../../../shared/result/index.ts'
import { S_PER_HOUR } from '../../../shared/units/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

export type NightHours = NonNullable<Night['weather']['hours']>

const MS_PER_S = 1000

/** Whether a file is a typical year in the EPW form, which names its own columns. */
export const isTypicalYear = (file: string): boolean => file.startsWith('LOCATION')

/** The hours of a typical year that fall into the night, whatever its year; the reason where they cannot be had. */
export function readTypicalYear(file: string, night: Night): Result<NightHours> {
  const read = parseEpw(file)
  if (!read.ok) return read
  const { hours } = read.value
  return hoursOfNight(hours, night, shiftTo(hours, nightClock(night).arriveUtc))
}

/** A table of hours and how it is read: what stands above its header, and which column is what. */
export type WeatherTable = { readonly file: string; readonly headerLine: number; readonly columns: CsvColumns }

/** The hours of a table that fall into the night; the reason where they cannot be had, by the lines of the file. */
export function readTable({ file, headerLine, columns }: WeatherTable, night: Night): Result<NightHours> {
  const readings = parseHourlyCsv(below(file, headerLine), columns)
  if (readings.ok) return hoursOfNight(readings.value, night, 0)
  const { line } = readings.problem.params
  if (typeof line !== 'number') return readings
  return fail({ ...readings.problem, params: { ...readings.problem.params, line: line + headerLine } })
}

const hoursOfNight = (readings: readonly HourlyReading[], night: Night, yearShiftS: number): Result<NightHours> => {
  const { arriveUtc, departUtc, zone } = nightClock(night)
  return forecastHoursOf({ readings, fromUtc: arriveUtc, toUtc: departUtc, zone, yearShiftS })
}

const filled = (file: string): readonly string[] => file.split(/\r?\n/).filter((line) => line.trim() !== '')
/** The file from its header on. */
const below = (file: string, headerLine: number): string => filled(file).slice(headerLine).join('\n')

/** Header and first rows, as cells. */
export const headOf = (file: string, headerLine: number, most: number): readonly (readonly string[])[] =>
  csvHead(below(file, headerLine), most)

/** Lines that a header is looked for in: some services write a few lines about themselves first. */
const HEADER_WITHIN = 12

/** The line, from 0, that is likeliest the header: the first that names a time beside something else. */
export function guessHeader(file: string): number {
  const found = filled(file)
    .slice(0, HEADER_WITHIN)
    .findIndex((line) => {
      const [cells] = csvHead(line, 1)
      return cells !== undefined && cells.length > 1 && cells.some((cell) => TIME.test(cell))
    })
  return Math.max(0, found)
}

/** From the year of the file to the night's: by month, day and hour; 0 where the file has no such hour. */
function shiftTo(readings: readonly HourlyReading[], arriveUtc: Utc): number {
  const hour = Math.floor(arriveUtc / S_PER_HOUR) * S_PER_HOUR
  const dayAndHour = (at: number): string => new Date(at * MS_PER_S).toISOString().slice(5, 13)
  const wanted = dayAndHour(hour)
  const same = readings.find(({ atUtc }) => dayAndHour(atUtc) === wanted)
  return same === undefined ? 0 : hour - Math.floor(same.atUtc / S_PER_HOUR) * S_PER_HOUR
}

const TIME = /time|date|zeit|datum/i

/** Which column holds what, by its name in English or German; the first ones where no name tells. */
export function guessColumns(file: string, headerLine: number, zone: string): CsvColumns {
  const [names = []] = headOf(file, headerLine, 1)
  const named = (pattern: RegExp): string | null => names.find((name) => pattern.test(name)) ?? null
  const time = named(TIME) ?? names[0] ?? ''
  const temp = named(/temp/i) ?? names.find((name) => name !== time) ?? ''
  const wind = named(/wind/i)
  const humidity = named(/humid|feucht|^rh\b/i)
  const cloud = named(/cloud|wolk|bewölk/i)
  return {
    time,
    temp,
    wind,
    humidity,
    cloud,
    tempUnit: /fahrenheit|°F|\bF\b/i.test(temp) ? 'F' : 'C',
    windUnit: windUnitOf(wind ?? ''),
    shareUnit: /01|fraction|anteil/i.test(`${humidity ?? ''}${cloud ?? ''}`) ? 'fraction' : 'percent',
    zone,
  }
}

function windUnitOf(name: string): CsvColumns['windUnit'] {
  if (/mph/i.test(name)) return 'mph'
  if (/km\/?h/i.test(name)) return 'km/h'
  return /\bkn|knot|knoten/i.test(name) ? 'kn' : 'm/s'
}
