/** Weather files become the hours of a night: tables by the names of their columns, a typical year moved on to the night's. */
import { describe, expect, it } from 'vitest'
import { guessColumns, guessHeader, readTable } from '../../../../renderer/features/trip/weather-import.ts'
import { nightClock } from '../../../../shared/plan/index.ts'
import { editableTrip } from '../../window.ts'

const night = editableTrip().nights[0]
if (night === undefined) throw new Error('the trip has a night')
const clock = nightClock(night)
const stamps = (from: number, to: number): readonly string[] => {
  const first = Math.floor(from / 3600) - 1
  const last = Math.ceil(to / 3600) + 1
  return Array.from({ length: last - first + 1 }, (_, hour) => new Date((first + hour) * 3_600_000).toISOString())
}
/** Read as the window reads it before anybody has chosen: header and columns guessed. */
const readWeather = (file: string, of: typeof night) => {
  const headerLine = guessHeader(file)
  return readTable({ file, headerLine, columns: guessColumns(file, headerLine, of.site.zone) }, of)
}
const table = (header: string, line: (stamp: string, hour: number) => string): string =>
  [header, ...stamps(clock.arriveUtc, clock.departUtc).map((stamp, hour) => line(`${stamp.slice(0, 16)}Z`, hour))].join(
    '\n',
  )

describe('a table of hours', () => {
  it('is read by its column names, in Celsius and metres a second', () => {
    const read = readWeather(
      table('time,temperature,wind (m/s),humidity', (stamp, hour) => `${stamp},${4 - hour * 0.5},2,80`),
      night,
    )
    if (!read.ok) throw new Error(read.problem.code)
    // The first line is more than an hour before arrival: the night begins with the second.
    expect(read.value[0]).toMatchObject({ tempC: 3.5, windMPerS: 2, humidity01: 0.8 })
    expect(read.value.length).toBeGreaterThan(8)
  })

  it('is read with a semicolon, decimal commas, Fahrenheit and miles', () => {
    const read = readWeather(
      table('Zeit;Temperatur °F;Wind mph', (stamp) => `${stamp};41,0;10`),
      night,
    )
    if (!read.ok) throw new Error(read.problem.code)
    expect(read.value[0]?.tempC).toBeCloseTo(5, 6)
    expect(read.value[0]?.windMPerS).toBeCloseTo(4.4704, 6)
  })

  it('is refused by the line of the file, whatever stands above the header', () => {
    const file = `service,version\nmade,by hand\n${table('time,temperature', (stamp, hour) => `${stamp},${hour === 1 ? 'x' : 2}`)}`
    expect(guessHeader(file)).toBe(2)
    const read = readWeather(file, night)
    if (read.ok) throw new Error('a cell without a number is no temperature')
    expect(read.problem).toMatchObject({ code: 'weather-reading-missing', params: { line: 5 } })
  })

  it('is refused where it leaves the night out', () => {
    const read = readWeather('time,temperature\n2020-01-01T00:00Z,1\n2020-01-01T01:00Z,1', night)
    expect(read.ok ? 'read' : read.problem.code).toBe('weather-night-missing')
  })
})

describe('guessed columns', () => {
  it('tell knots from kilometres an hour', () => {
    expect(guessColumns('time,temp,wind kn', 0, 'UTC').windUnit).toBe('kn')
    expect(guessColumns('time,temp,wind km/h', 0, 'UTC').windUnit).toBe('km/h')
  })
})
