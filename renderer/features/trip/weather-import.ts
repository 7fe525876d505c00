/** A weather file as the hours of one night: an EPW file, or a table whose columns tell by their names what they hold. */
import type { Night } from '../../../shared/document/index.ts'
import { forecastHoursOf, nightClock, parseEpw, parseHourlyCsv } from '../../../shared/plan/index.ts'
import type { CsvColumns, HourlyReading } from '../../../shared/plan/index.ts'
import { ok } from '../../../shared/result/index.ts'
import type { Result } from '../../../shared/result/index.ts'
import { S_PER_HOUR } from '../../../shared/units/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

export type NightHours = NonNullable<Night['weather']['hours']>

const MS_PER_S = 1000

/** The hours of the file that fall into the night; the reason where they cannot be had. A typical year stands for any year. */
export function readWeather(file: string, night: Night): Result<NightHours> {
  const clock = nightClock(night)
  const typical = file.startsWith('LOCATION')
  const readings = typical ? epwReadings(file) : parseHourlyCsv(file, guessColumns(file, night.site.zone))
  if (!readings.ok) return readings
  return forecastHoursOf({
    readings: readings.value,
    fromUtc: clock.arriveUtc,
    toUtc: clock.departUtc,
    zone: clock.zone,
    yearShiftS: typical ? shiftTo(readings.value, clock.arriveUtc) : 0,
  })
}

function epwReadings(file: string): Result<readonly HourlyReading[]> {
  const read = parseEpw(file)
  return read.ok ? ok(read.value.hours) : read
}

/** From the year of the file to the night's: by month, day and hour; 0 where the file has no such hour. */
function shiftTo(readings: readonly HourlyReading[], arriveUtc: Utc): number {
  const hour = Math.floor(arriveUtc / S_PER_HOUR) * S_PER_HOUR
  const dayAndHour = (at: number): string => new Date(at * MS_PER_S).toISOString().slice(5, 13)
  const wanted = dayAndHour(hour)
  const same = readings.find(({ atUtc }) => dayAndHour(atUtc) === wanted)
  return same === undefined ? 0 : hour - Math.floor(same.atUtc / S_PER_HOUR) * S_PER_HOUR
}

/** Which column holds what, by its name in English or German; a name that is not found is asked for by the parser. */
export function guessColumns(file: string, zone: string): CsvColumns {
  const header = (file.split(/\r?\n/, 1)[0] ?? '').replace(/^\uFEFF/, '')
  const separator = [';', '\t', ','].find((letter) => header.includes(letter)) ?? ','
  const names = header.split(separator).map((name) => name.trim().replaceAll(/^"|"$/g, ''))
  const named = (pattern: RegExp): string | null => names.find((name) => pattern.test(name)) ?? null
  const temp = named(/temp/i) ?? 'temperature'
  const wind = named(/wind/i)
  const humidity = named(/humid|feucht|^rh\b/i)
  const cloud = named(/cloud|wolk|bewölk/i)
  const windUnit = /mph/i.test(wind ?? '')
    ? 'mph'
    : /km\/?h/i.test(wind ?? '')
      ? 'km/h'
      : /\bkn|knot|knoten/i.test(wind ?? '')
        ? 'kn'
        : 'm/s'
  return {
    time: named(/time|date|zeit|datum/i) ?? 'time',
    temp,
    wind,
    humidity,
    cloud,
    tempUnit: /fahrenheit|°F|\bF\b/i.test(temp) ? 'F' : 'C',
    windUnit,
    shareUnit: /01|fraction|anteil/i.test(`${humidity ?? ''}${cloud ?? ''}`) ? 'fraction' : 'percent',
    zone,
  }
}
