/** The drawn night course against a year of hourly normals. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { nextDate } from '../../../shared/units/index.ts'
import type { LocalDate } from '../../../shared/units/index.ts'
import { sunDay } from '../../../shared/climate/sun.ts'
import { PARTON_LOGAN_DENVER, nightDecayC } from '../../../shared/climate/sources/hourly-temperature.ts'
import type { PartonLogan } from '../../../shared/climate/sources/hourly-temperature.ts'

const FILE = fileURLToPath(new URL('../../truth/weather/seattle-hourly-normals.txt', import.meta.url))
const PLACE = { latitudeDeg: 47.44, longitudeDeg: -122.31 } // the airport whose normals these are
const STANDARD_OFFSET_S = -8 * 3600

type Day = readonly (number | null)[]

const days = (): readonly Day[] =>
  readFileSync(FILE, 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(' ').map((cell) => (cell === '-' ? null : Number(cell) / 10)))

/** Hour of the local standard day of an instant of that date. */
const hourOf = (atUtc: number, date: LocalDate): number =>
  (atUtc + STANDARD_OFFSET_S - Date.parse(`${date}T00:00:00Z`) / 1000) / 3600

const known = (values: Day): readonly number[] => values.filter((value) => value !== null)

type Night = { readonly sunsetH: number; readonly sunriseNextH: number; readonly today: Day; readonly next: Day }

let drawn: readonly Night[] | null = null

/** The year's nights with their sun times, which take a while and are the same for every set of coefficients. */
function nights(): readonly Night[] {
  if (drawn !== null) return drawn
  const year = days()
  let date = '2010-01-01' as LocalDate
  drawn = year.slice(1).map((next, index) => {
    const tomorrow = nextDate(date)
    const [evening, morning] = [sunDay({ ...PLACE, date }), sunDay({ ...PLACE, date: tomorrow })]
    if (evening.sunsetUtc === null || morning.sunriseUtc === null) throw new Error(`no night at Seattle on ${date}`)
    const sunsetH = hourOf(evening.sunsetUtc, date)
    const sunriseNextH = hourOf(morning.sunriseUtc, tomorrow)
    date = tomorrow
    return { sunsetH, sunriseNextH, today: year[index] ?? [], next }
  })
  return drawn
}

/** Root mean square error of the night hours of the year, K: each night from its own maximum and the next minimum. */
export function nightRmseK(closed = false, coefficients: PartonLogan = PARTON_LOGAN_DENVER): number {
  let sum = 0
  let hours = 0
  for (const { sunsetH, sunriseNextH, today, next } of nights()) {
    const course = {
      maximumC: Math.max(...known(today)),
      minimumC: Math.min(...known(next)),
      sunriseH: sunriseNextH,
      sunsetH,
      coefficients,
    }
    for (let hour = Math.ceil(sunsetH); hour < 24 + sunriseNextH; hour += 1) {
      const measured = hour < 24 ? today[hour] : next[hour - 24]
      if (measured === null || measured === undefined) continue
      sum += (nightDecayC(course, hour - sunsetH, closed) - measured) ** 2
      hours += 1
    }
  }
  return Math.sqrt(sum / hours)
}
