/** Hourly weather from a table whose columns the user names. */
import { fromFahrenheit, localToUtc } from '../../units/index.ts'
import { fail, ok, problem } from '../../result/index.ts'
import type { Clock, LocalDate, Utc } from '../../units/index.ts'
import type { Result } from '../../result/index.ts'
import type { HourlyReading } from '../weather.ts'

export type CsvColumns = {
  /** Column names as they stand in the first line. */
  readonly time: string
  readonly temp: string
  readonly wind: string | null
  readonly humidity: string | null
  readonly cloud: string | null
  readonly tempUnit: 'C' | 'F'
  readonly windUnit: 'm/s' | 'km/h' | 'mph' | 'kn'
  /** Whether humidity and cloud are percent or fractions. */
  readonly shareUnit: 'percent' | 'fraction'
  /** Zone of times that carry no offset of their own. */
  readonly zone: string
}

/** Metres a second in each unit of wind; mile 1609.344 m, knot 1852 m an hour (exact). */
const WIND_M_PER_S: Readonly<Record<CsvColumns['windUnit'], number>> = {
  'm/s': 1,
  'km/h': 1 / 3.6,
  mph: 0.44704,
  kn: 1852 / 3600,
}

/** Cells of one line; quoted cells may hold the separator and doubled quotes. */
function cellsOf(line: string, separator: string): readonly string[] {
  const cells: string[] = []
  let cell = ''
  let quoted = false
  for (let i = 0; i < line.length; i += 1) {
    const letter = line.charAt(i)
    if (quoted && letter === '"' && line.charAt(i + 1) === '"') {
      cell += '"'
      i += 1
    } else if (letter === '"') quoted = !quoted
    else if (letter === separator && !quoted) {
      cells.push(cell.trim())
      cell = ''
    } else cell += letter
  }
  return [...cells, cell.trim()]
}

const STAMP = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?(Z|[+-]\d{2}:?\d{2})?$/

/** The instant of an ISO time, with its own offset or in a zone. */
function instantOf(text: string, zone: string, line: number): Result<Utc> {
  const match = STAMP.exec(text)
  const [, date, clock, offset] = match ?? []
  if (date === undefined || clock === undefined) return fail(problem('weather-date', [], { line, value: text }))
  const month = Number(date.slice(5, 7))
  const day = Number(date.slice(8, 10))
  if (month < 1 || month > 12 || day < 1 || day > 31 || clock > '23:59')
    return fail(problem('weather-date', [], { line, value: text }))
  const own =
    offset === undefined
      ? zone
      : offset === 'Z'
        ? 'UTC'
        : offset.includes(':')
          ? offset
          : `${offset.slice(0, 3)}:${offset.slice(3)}`
  return localToUtc({ date: date as LocalDate, clock: clock as Clock, zone: own })
}

/** Number of a cell; a decimal comma is read where the separator is a semicolon. */
const numberOf = (cell: string, separator: string): number | null => {
  const plain = separator === ';' ? cell.replace(',', '.') : cell
  const value = plain === '' ? Number.NaN : Number(plain)
  return Number.isFinite(value) ? value : null
}

/** Separators that may stand between two cells, the likeliest first. */
const separatorOf = (line: string): string => [';', '\t', ','].find((letter) => line.includes(letter)) ?? ','

/**
 * The first `most` lines of a table as cells, so that a person can tell which column is what.
 * Result: lines of cells, split by the separator of the first line; no lines where the text is empty.
 */
export function csvHead(text: string, most: number): readonly (readonly string[])[] {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '')
  const separator = separatorOf(lines[0] ?? '')
  return lines.slice(0, most).map((line) => cellsOf(line.replace(/^\uFEFF/, ''), separator))
}

/**
 * Hourly readings from a table with a header line; separator comma, semicolon or tab.
 * Times are ISO, in the zone given where they carry no offset. Result: readings in order of time.
 * Problems: `weather-empty`, `weather-column-unknown`, `weather-date`, `weather-reading-missing`, `weather-order`, each with its line.
 */
export function parseHourlyCsv(text: string, columns: CsvColumns): Result<readonly HourlyReading[]> {
  // Blank lines are passed over, but a problem names the line as the file counts it.
  const lines = text
    .split(/\r?\n/)
    .map((cells, index) => ({ cells, line: index + 1 }))
    .filter(({ cells }) => cells.trim() !== '')
  const first = lines[0]?.cells
  if (first === undefined || lines.length < 2) return fail(problem('weather-empty', [], {}))
  const separator = separatorOf(first)
  const header = cellsOf(first.replace(/^\uFEFF/, ''), separator)
  const wanted = [columns.time, columns.temp, columns.wind, columns.humidity, columns.cloud].filter(
    (name) => name !== null,
  )
  const unknown = wanted.find((name) => !header.includes(name))
  if (unknown !== undefined) return fail(problem('weather-column-unknown', [], { column: unknown, columns: header }))
  const readings: HourlyReading[] = []
  for (const { cells, line } of lines.slice(1)) {
    const reading = readLine(cellsOf(cells, separator), header, { columns, separator, line })
    if (!reading.ok) return reading
    const before = readings.at(-1)
    if (before !== undefined && reading.value.atUtc <= before.atUtc) return fail(problem('weather-order', [], { line }))
    readings.push(reading.value)
  }
  return ok(readings)
}

type Reading = { readonly columns: CsvColumns; readonly separator: string; readonly line: number }

function readLine(cells: readonly string[], header: readonly string[], how: Reading): Result<HourlyReading> {
  const { columns, separator, line } = how
  const cell = (name: string | null): string => (name === null ? '' : (cells[header.indexOf(name)] ?? ''))
  const value = (name: string | null): number | null => numberOf(cell(name), separator)
  const atUtc = instantOf(cell(columns.time), columns.zone, line)
  if (!atUtc.ok) return atUtc
  const temp = value(columns.temp)
  if (temp === null) return fail(problem('weather-reading-missing', [], { line, column: columns.temp }))
  const wind = value(columns.wind)
  const share = (name: string | null): number | null => {
    const read = value(name)
    return read === null ? null : columns.shareUnit === 'percent' ? read / 100 : read
  }
  return ok({
    atUtc: atUtc.value,
    tempC: columns.tempUnit === 'F' ? fromFahrenheit(temp) : temp,
    windMPerS: wind === null ? null : wind * WIND_M_PER_S[columns.windUnit],
    humidity01: share(columns.humidity),
    cloud01: share(columns.cloud),
  })
}
