/** Weather of a night: readings, the drawn course, daylight saving, cold margin, and imported files. */
import { describe, expect, it } from 'vitest'
import { forecastHoursOf, parseEpw, parseHourlyCsv, sunTimes, weatherForNight } from '../../../shared/climate/index.ts'
import type { CsvColumns, Forecast, NightWeatherInput } from '../../../shared/climate/index.ts'
import { localToUtc } from '../../../shared/units/index.ts'
import type { Clock, LocalDate, Utc } from '../../../shared/units/index.ts'

const ZONE = 'Europe/Oslo'
const instant = (day: string, clock: string, zone = ZONE, repeated: 'earlier' | 'later' = 'earlier'): Utc => {
  const at = localToUtc({ date: day as LocalDate, clock: clock as Clock, zone }, repeated)
  if (!at.ok) throw new Error(`no such time ${day} ${clock}`)
  return at.value
}

const forecast: Forecast = { highC: -4, lowC: -11, windMPerS: 4, humidity01: 0.86, cloud01: 0.4 }
const place = { latitudeDeg: 61.2, longitudeDeg: 9.8 }

const night = (changes: Partial<NightWeatherInput>): NightWeatherInput => ({
  ...forecast,
  sun: sunTimes({ ...place, date: '2027-02-12' as LocalDate, zone: ZONE }),
  fromUtc: instant('2027-02-12', '16:00'),
  toUtc: instant('2027-02-13', '10:00'),
  stepS: 300,
  coldMarginK: 0,
  zone: ZONE,
  ...changes,
})

const tempAt = (steps: readonly { atUtc: Utc; tempC: number }[], at: Utc): number => {
  const step = steps.find((entry) => entry.atUtc === at)
  if (step === undefined) throw new Error('no such step')
  return step.tempC
}

describe('a night drawn from high and low', () => {
  const steps = weatherForNight(night({}))

  it('has a step at both ends and every five minutes between', () => {
    expect(steps).toHaveLength((18 * 3600) / 300 + 1)
    expect(steps[0]?.atUtc).toBe(instant('2027-02-12', '16:00'))
    expect(steps.at(-1)?.atUtc).toBe(instant('2027-02-13', '10:00'))
  })

  it('meets the low at dawn, falls until then, and never jumps', () => {
    const temps = steps.map((step) => step.tempC)
    expect(Math.min(...temps)).toBeCloseTo(-11, 1)
    const coldest = steps[temps.indexOf(Math.min(...temps))]
    const sunriseUtc = night({}).sun.sunriseUtc ?? 0
    expect(Math.abs((coldest?.atUtc ?? 0) - sunriseUtc)).toBeLessThan(1800)
    const jumps = temps.slice(1).map((tempC, index) => Math.abs(tempC - (temps[index] ?? 0)))
    expect(Math.max(...jumps)).toBeLessThan(0.3)
  })

  it('takes off less of the cold margin where it is mild, and none in the heat', () => {
    const hours = [
      { clock: '18:00', tempC: 27 },
      { clock: '20:00', tempC: 20 },
      { clock: '22:00', tempC: 15 },
      { clock: '00:00', tempC: 5 },
    ]
    const steps = weatherForNight(night({ hours, coldMarginK: 4 }))
    const at = (clock: string, day = '2027-02-12'): number => tempAt(steps, instant(day, clock))
    // Whole up to 15 °C, half of it midway to 25 °C, nothing beyond.
    expect(at('18:00')).toBeCloseTo(27, 9)
    expect(at('20:00')).toBeCloseTo(18, 9)
    expect(at('22:00')).toBeCloseTo(11, 9)
    expect(at('00:00', '2027-02-13')).toBeCloseTo(1, 9)
  })

  it('is colder throughout by the cold margin', () => {
    const colder = weatherForNight(night({ coldMarginK: 5 }))
    colder.forEach((step, index) => expect(step.tempC).toBeCloseTo((steps[index]?.tempC ?? 0) - 5, 9))
  })

  it('is drawn where the sun neither sets nor rises, within high and low', () => {
    const polar = weatherForNight(night({ sun: { sunsetUtc: null, sunriseUtc: null } }))
    for (const step of polar) {
      expect(step.tempC).toBeGreaterThanOrEqual(-11 - 1e-9)
      expect(step.tempC).toBeLessThanOrEqual(-4 + 1e-9)
    }
  })

  it('of a polar night is a cosine, warmest at 15:00 by the clock and coldest at 03:00', () => {
    const polar = weatherForNight(
      night({ sun: { sunsetUtc: null, sunriseUtc: null }, fromUtc: instant('2027-02-12', '15:00') }),
    )
    // From -4 to -11 °C: half way at 21:00 and 09:00; at 19:00 cos 60 degrees is a half.
    const told = ['15:00', '19:00', '21:00'].map((clock) => tempAt(polar, instant('2027-02-12', clock)))
    expect(told).toEqual([-4, -5.75, -7.5].map((tempC) => expect.closeTo(tempC, 9)))
    const later = ['03:00', '09:00'].map((clock) => tempAt(polar, instant('2027-02-13', clock)))
    expect(later).toEqual([-11, -7.5].map((tempC) => expect.closeTo(tempC, 9)))
    // The same where only one of both is missing, or they stand the wrong way round.
    const sun = night({}).sun
    for (const odd of [
      { ...sun, sunriseUtc: null },
      { ...sun, sunsetUtc: null },
      { sunsetUtc: sun.sunriseUtc, sunriseUtc: sun.sunsetUtc },
    ])
      expect(tempAt(weatherForNight(night({ sun: odd })), instant('2027-02-12', '21:00'))).toBeCloseTo(-7.5, 9)
  })

  it('without a step, or that ends before it begins, is a programmer’s error', () => {
    expect(() => weatherForNight(night({ stepS: 0 }))).toThrow('a night has steps')
    expect(() => weatherForNight(night({ toUtc: instant('2027-02-12', '15:00') }))).toThrow('a night has steps')
    expect(weatherForNight(night({ toUtc: instant('2027-02-12', '16:00') }))).toHaveLength(1)
  })

  it('does not depend on the step', () => {
    const coarse = weatherForNight(night({ stepS: 1800 }))
    for (const step of coarse) expect(tempAt(steps, step.atUtc)).toBeCloseTo(step.tempC, 9)
  })
})

describe('a night by the hour', () => {
  const hours = [
    { clock: '18:00', tempC: -4.6, windMPerS: 2 },
    { clock: '22:00', tempC: -6.8 },
    { clock: '02:00', tempC: -9.4, humidity01: 0.9 },
    { clock: '08:00', tempC: -11 },
  ]
  const steps = weatherForNight(night({ hours }))

  it('keeps each reading at its instant and runs straight between', () => {
    expect(tempAt(steps, instant('2027-02-12', '22:00'))).toBeCloseTo(-6.8, 9)
    expect(tempAt(steps, instant('2027-02-13', '02:00'))).toBeCloseTo(-9.4, 9)
    expect(tempAt(steps, instant('2027-02-13', '00:00'))).toBeCloseTo(-8.1, 9)
  })

  it('falls back on the forecast where an hour does not say', () => {
    const at = steps.find((step) => step.atUtc === instant('2027-02-12', '20:00'))
    expect(at?.windMPerS).toBeCloseTo(3, 9)
    expect(at?.humidity01).toBeCloseTo(0.86, 9)
  })

  it('joins the drawn course outside the readings without a jump', () => {
    const before = tempAt(steps, instant('2027-02-12', '17:55'))
    expect(Math.abs(before - -4.6)).toBeLessThan(0.2)
  })

  it('puts a small first clock after midnight, and an arrival before six into the night of the day before', () => {
    const late = weatherForNight(
      night({
        hours: [
          { clock: '01:00', tempC: -8 },
          { clock: '05:00', tempC: -10 },
        ],
        fromUtc: instant('2027-02-12', '23:00'),
        toUtc: instant('2027-02-13', '06:00'),
      }),
    )
    expect(tempAt(late, instant('2027-02-13', '01:00'))).toBeCloseTo(-8, 9)
    const early = weatherForNight(
      night({
        hours: [
          { clock: '22:00', tempC: -7 },
          { clock: '04:00', tempC: -10 },
        ],
        fromUtc: instant('2027-02-13', '02:00'),
        toUtc: instant('2027-02-13', '06:00'),
      }),
    )
    expect(tempAt(early, instant('2027-02-13', '04:00'))).toBeCloseTo(-10, 9)
  })
})

const clocks = (list: readonly [string, number][]) => list.map(([clock, tempC]) => ({ clock, tempC }))

describe('a night in which the clock changes', () => {
  it('reads the hour that comes twice in the order given', () => {
    const zone = 'Europe/Oslo'
    const steps = weatherForNight(
      night({
        hours: clocks([
          ['00:00', 4],
          ['01:00', 3],
          ['02:00', 2],
          ['02:00', 1],
          ['03:00', 0],
          ['06:00', -3],
        ]),
        sun: sunTimes({ ...place, date: '2027-10-30' as LocalDate, zone }),
        fromUtc: instant('2027-10-30', '20:00'),
        toUtc: instant('2027-10-31', '06:00'),
      }),
    )
    expect(tempAt(steps, instant('2027-10-31', '02:00', zone, 'earlier'))).toBeCloseTo(2, 9)
    expect(tempAt(steps, instant('2027-10-31', '02:00', zone, 'later'))).toBeCloseTo(1, 9)
    expect(steps).toHaveLength((11 * 3600) / 300 + 1)
  })

  it('reads the hour that the clock skips at the instant an hour after the one before', () => {
    const steps = weatherForNight(
      night({
        hours: clocks([
          ['01:00', 3],
          ['02:00', 2],
          ['04:00', 0],
        ]),
        sun: sunTimes({ ...place, date: '2027-03-27' as LocalDate, zone: ZONE }),
        fromUtc: instant('2027-03-27', '22:00'),
        toUtc: instant('2027-03-28', '06:00'),
      }),
    )
    expect(tempAt(steps, instant('2027-03-28', '03:00'))).toBeCloseTo(2, 9)
    expect(tempAt(steps, instant('2027-03-28', '04:00'))).toBeCloseTo(0, 9)
  })
})

/** A synthetic file: eight header lines, then hours of one invented day. */
function epw(cells: readonly (readonly [number, string])[] = []): string {
  const line = (hour: number): string => {
    const row = Array.from({ length: 35 }, () => '0')
    const set: readonly (readonly [number, string])[] = [
      [0, '2019'],
      [1, '2'],
      [2, '12'],
      [3, String(hour)],
      [6, String(-hour / 2)],
      [7, '-8.0'],
      [8, '80'],
      [9, '97000'],
      [12, '250'],
      [20, '90'],
      [21, '3.5'],
      [22, '5'],
    ]
    for (const [column, value] of [...set, ...(hour === 2 ? cells : [])]) row[column] = value
    return row.join(',')
  }
  return [
    'LOCATION,Nowhere,-,-,synthetic,0,61.2,9.8,1.0,420',
    ...Array.from({ length: 7 }, () => 'HEADER'),
    line(1),
    line(2),
    line(24),
  ].join('\n')
}

describe('an EPW file', () => {
  it('gives place, standard time and hours whose value stands at their end', () => {
    const file = parseEpw(epw())
    expect(file.ok).toBe(true)
    if (!file.ok) return
    expect(file.value).toMatchObject({ latitudeDeg: 61.2, longitudeDeg: 9.8, standardOffsetH: 1, elevationM: 420 })
    expect(file.value.hours.map((hour) => hour.atUtc)).toEqual([
      instant('2019-02-12', '01:00', '+01:00'),
      instant('2019-02-12', '02:00', '+01:00'),
      instant('2019-02-13', '00:00', '+01:00'),
    ])
    expect(file.value.hours[1]).toMatchObject({
      tempC: -1,
      humidity01: 0.8,
      windMPerS: 3.5,
      cloud01: 0.5,
      dewPointC: -8,
      pressurePa: 97_000,
      windFromDeg: 90,
    })
  })

  it.each([
    ['not one', 'date,temp\n2027-01-01,3', 'weather-not-epw'],
    ['cut short in a line', `${epw()}\n2019,2,13,1,0`, 'weather-columns'],
    ['missing its temperature (99.9)', epw([[6, '99.9']]), 'weather-reading-missing'],
    ['missing its wind (999)', epw([[21, '999']]), 'weather-reading-missing'],
    ['wrong in a date', epw([[1, '13']]), 'weather-date'],
    ['without hours', epw().split('\n').slice(0, 8).join('\n'), 'weather-empty'],
  ] as const)('that is %s is refused with its reason', (_, text, code) => {
    const file = parseEpw(text)
    expect(file).toMatchObject({ ok: false, problem: { code } })
  })

  it('leaves out what is missing where the night can do without: dew point, pressure, sky', () => {
    const file = parseEpw(
      epw([
        [7, '99.9'],
        [9, '999999'],
        [22, '99'],
      ]),
    )
    expect(file.ok && file.value.hours[1]).toMatchObject({ dewPointC: null, pressurePa: null, cloud01: null })
  })
})

const columns: CsvColumns = {
  time: 'when',
  temp: 'temp',
  wind: 'wind',
  humidity: 'rh',
  cloud: null,
  tempUnit: 'F',
  windUnit: 'km/h',
  shareUnit: 'percent',
  zone: ZONE,
}

describe('an hourly table', () => {
  const table = 'when,temp,wind,rh,"a, b"\n2027-02-12 18:00,23,18,80,x\n2027-02-12T19:00+01:00,21.2,,85,"y, z"\n'

  it('is read by the columns that the user names, in their units', () => {
    const readings = parseHourlyCsv(table, columns)
    expect(readings.ok).toBe(true)
    if (!readings.ok) return
    expect(readings.value).toEqual([
      { atUtc: instant('2027-02-12', '18:00'), tempC: -5, windMPerS: 5, humidity01: 0.8, cloud01: null },
      {
        atUtc: instant('2027-02-12', '19:00'),
        tempC: expect.closeTo(-6, 9),
        windMPerS: null,
        humidity01: 0.85,
        cloud01: null,
      },
    ])
  })

  it('takes semicolons with decimal commas, a byte-order mark and Windows line ends', () => {
    const readings = parseHourlyCsv('\uFEFFwhen;temp\r\n2027-02-12T18:00Z;-4,5\r\n', {
      ...columns,
      wind: null,
      humidity: null,
      tempUnit: 'C',
    })
    expect(readings).toEqual({
      ok: true,
      value: [
        { atUtc: instant('2027-02-12', '18:00', 'UTC'), tempC: -4.5, windMPerS: null, humidity01: null, cloud01: null },
      ],
    })
  })

  it.each([
    ['has no lines', 'when,temp\n', 'weather-empty'],
    ['lacks a named column', 'when,t\n2027-02-12 18:00,3\n', 'weather-column-unknown'],
    ['has an unreadable date', 'when,temp,wind,rh\n12.2.2027,3,4,5\n', 'weather-date'],
    ['has a month that does not exist', 'when,temp,wind,rh\n2027-13-12 18:00,3,4,5\n', 'weather-date'],
    ['lacks a temperature', 'when,temp,wind,rh\n2027-02-12 18:00,,4,5\n', 'weather-reading-missing'],
    ['is not in order of time', 'when,temp,wind,rh\n2027-02-12 18:00,3,4,5\n2027-02-12 17:00,3,4,5\n', 'weather-order'],
    ['has an hour that the clock skips', 'when,temp,wind,rh\n2027-03-28 02:30,3,4,5\n', 'time-skipped'],
  ] as const)('that %s is refused with its reason', (_, text, code) => {
    expect(parseHourlyCsv(text, columns)).toMatchObject({ ok: false, problem: { code } })
  })

  it('becomes forecast hours of the night that it covers, and says when it does not', () => {
    const lines = Array.from(
      { length: 20 },
      (__, hour) =>
        `2027-02-${hour < 8 ? '12' : '13'} ${String((hour + 16) % 24).padStart(2, '0')}:00,${20 - hour},4,80`,
    )
    const readings = parseHourlyCsv(`when,temp,wind,rh\n${lines.join('\n')}`, columns)
    if (!readings.ok) throw new Error('the table is right')
    const range = {
      readings: readings.value,
      fromUtc: instant('2027-02-12', '17:00'),
      toUtc: instant('2027-02-13', '08:00'),
      zone: ZONE,
      yearShiftS: 0,
    }
    const hours = forecastHoursOf(range)
    expect(hours.ok && hours.value[0]).toMatchObject({ clock: '16:00', humidity01: 0.8 })
    expect(forecastHoursOf({ ...range, toUtc: instant('2027-02-14', '08:00') })).toMatchObject({
      ok: false,
      problem: { code: 'weather-night-missing' },
    })
  })
})
