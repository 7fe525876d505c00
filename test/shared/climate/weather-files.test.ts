/** Weather from files, cell by cell: separators, quotes, units, offsets, what is missing and what is refused. */
import { describe, expect, it } from 'vitest'
import { csvHead, parseHourlyCsv } from '../../../shared/climate/sources/hourly-csv.ts'
import type { CsvColumns } from '../../../shared/climate/sources/hourly-csv.ts'
import { parseEpw } from '../../../shared/climate/sources/epw.ts'
import { forecastHoursOf } from '../../../shared/climate/weather.ts'
import type { HourlyReading } from '../../../shared/climate/weather.ts'
import type { Problem, Result } from '../../../shared/result/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

const COLUMNS: CsvColumns = {
  time: 'when',
  temp: 't',
  wind: null,
  humidity: null,
  cloud: null,
  tempUnit: 'C',
  windUnit: 'm/s',
  shareUnit: 'fraction',
  zone: 'UTC',
}
/** Seconds of 2027-02-12 00:00 UTC: 20,861 days after 1970. */
const DAY_UTC = 20_861 * 86_400
/** What a file was refused for; such a problem lies in the file and points into no document. */
function problemOf(result: Result<unknown>): Problem | null {
  if (result.ok) return null
  expect(result.problem.path).toEqual([])
  return result.problem
}
const readings = (text: string, over: Partial<CsvColumns> = {}): readonly HourlyReading[] => {
  const result = parseHourlyCsv(text, { ...COLUMNS, ...over })
  if (!result.ok) throw new Error(`refused: ${result.problem.code}`)
  return result.value
}
const one = (text: string, over: Partial<CsvColumns> = {}): HourlyReading => {
  const [reading] = readings(text, over)
  if (reading === undefined) throw new Error('one reading')
  return reading
}

describe('the head of a table', () => {
  it('is its first lines as cells, without blank lines or byte-order mark', () => {
    expect(csvHead('\uFEFFa;b\n\n1;2\r\n  \n3;4\n5;6', 3)).toEqual([
      ['a', 'b'],
      ['1', '2'],
      ['3', '4'],
    ])
    expect(csvHead('a;b', 3)).toEqual([['a', 'b']])
    expect(csvHead('', 3)).toEqual([])
    expect(csvHead('\n \n', 3)).toEqual([])
  })

  it('is split by semicolon before tab before comma, as the first line has them', () => {
    expect(csvHead('a,b;c\td\n1,2;3\t4', 2)).toEqual([
      ['a,b', 'c\td'],
      ['1,2', '3\t4'],
    ])
    expect(csvHead('a,b\tc', 1)).toEqual([['a,b', 'c']])
    expect(csvHead('a,b\n1;2', 2)).toEqual([['a', 'b'], ['1;2']])
    expect(csvHead('alone\nx', 2)).toEqual([['alone'], ['x']])
  })

  it('keeps separators and doubled quotes inside quotes, and trims what stands outside', () => {
    expect(csvHead('"a, b", c ,"say ""so""",""\n', 1)).toEqual([['a, b', 'c', 'say "so"', '']])
    expect(csvHead('x"y,z"w,v', 1)).toEqual([['xy,zw', 'v']])
    expect(csvHead(',,', 1)).toEqual([['', '', '']])
  })
})

describe('the time of a line', () => {
  const timeOf = (stamp: string, zone = 'UTC'): number => one(`when,t\n${stamp},1`, { zone }).atUtc - DAY_UTC

  it.each([
    ['2027-02-12T18:30', 'UTC', 18.5],
    ['2027-02-12 18:30', 'UTC', 18.5],
    ['2027-02-12 18:30:59', 'UTC', 18.5],
    ['2027-02-12T18:30:00.250', 'UTC', 18.5],
    ['2027-02-12T18:30Z', 'Europe/Berlin', 18.5],
    ['2027-02-12T18:30:00Z', 'Europe/Berlin', 18.5],
    ['2027-02-12T18:30', 'Europe/Berlin', 17.5],
    ['2027-02-12T18:30+01:00', 'UTC', 17.5],
    ['2027-02-12T18:30+0530', 'UTC', 13],
    ['2027-02-12T18:30-03:30', 'UTC', 22],
    ['2027-02-12T00:00', 'UTC', 0],
    ['2027-02-12T23:59', 'UTC', 24 - 1 / 60],
  ])('%s in %s is %d hours into the day', (stamp, zone, hours) => {
    expect(timeOf(stamp, zone)).toBeCloseTo(hours * 3600, 6)
  })

  it.each([
    '2027-00-12 18:00',
    '2027-13-12 18:00',
    '2027-02-00 18:00',
    '2027-02-32 18:00',
    '2027-02-12 24:00',
    '2027-02-12 18',
    '12.02.2027 18:00',
    'x2027-02-12 18:00',
    '2027-02-12 18:00x',
    '2027-02-12 18:00+1',
    '2027-2-12 18:00',
    '',
  ])('that reads "%s" is refused with its line and its text', (stamp) => {
    expect(problemOf(parseHourlyCsv(`when,t\n2027-01-01 00:00,5\n${stamp},5`, COLUMNS))).toMatchObject({
      code: 'weather-date',
      params: { line: 3, value: stamp },
    })
  })

  it('is read for every month and day there is', () => {
    for (const stamp of ['2027-01-01 00:00', '2027-12-31 23:59', '2027-01-31 10:00'])
      expect(readings(`when,t\n${stamp},5`).length).toBe(1)
  })
})

describe('the numbers of a line', () => {
  const named = { wind: 'w', humidity: 'h', cloud: 'c' } as const
  const line = (cells: string, over: Partial<CsvColumns> = {}): HourlyReading =>
    one(`when,t,w,h,c\n2027-02-12 00:00,${cells}`, { ...named, ...over })

  it('turn into °C, m/s and fractions', () => {
    expect(line('-5,10,0.8,0.25')).toEqual({
      atUtc: DAY_UTC,
      tempC: -5,
      windMPerS: 10,
      humidity01: 0.8,
      cloud01: 0.25,
    })
    expect(line('50,10,80,25', { tempUnit: 'F', shareUnit: 'percent' })).toMatchObject({
      tempC: expect.closeTo(10, 9),
      humidity01: 0.8,
      cloud01: 0.25,
    })
    // 36 km/h are 10 m/s, a mile an hour 0.44704, a knot 1852 m an hour.
    expect(line('0,36,0,0', { windUnit: 'km/h' }).windMPerS).toBeCloseTo(10, 12)
    expect(line('0,10,0,0', { windUnit: 'mph' }).windMPerS).toBeCloseTo(4.4704, 12)
    expect(line('0,36,0,0', { windUnit: 'kn' }).windMPerS).toBeCloseTo(18.52, 12)
  })

  it('may be missing or unreadable but for the temperature', () => {
    expect(line('0,,-,n/a')).toMatchObject({ tempC: 0, windMPerS: null, humidity01: null, cloud01: null })
    expect(line('0')).toMatchObject({ tempC: 0, windMPerS: null, humidity01: null, cloud01: null })
    for (const cell of ['', '-', '1,5', 'Infinity'])
      expect(problemOf(parseHourlyCsv(`when\tt\n2027-02-12 00:00\t${cell}`, COLUMNS))).toMatchObject({
        code: 'weather-reading-missing',
        params: { line: 2, column: 't' },
      })
  })

  it('have a decimal comma only between semicolons', () => {
    expect(one('when;t\n2027-02-12 00:00;1,5').tempC).toBe(1.5)
    expect(one('when;t\n2027-02-12 00:00;1.5').tempC).toBe(1.5)
    expect(one('when,t\n2027-02-12 00:00,1.5').tempC).toBe(1.5)
  })
})

describe('a table as a whole', () => {
  it('is its lines in order of time, wherever the columns stand', () => {
    const text = 'x,t,when\n-,1,2027-02-12 00:00\n\n-,2,2027-02-12 01:00\n-,3,2027-02-12 03:00\n'
    expect(readings(text).map(({ atUtc, tempC }) => [(atUtc - DAY_UTC) / 3600, tempC])).toEqual([
      [0, 1],
      [1, 2],
      [3, 3],
    ])
  })

  it('is refused where two lines stand at one time or run backwards, with the line', () => {
    const line = (second: string): string => `when,t\n2027-02-12 01:00,1\n2027-02-12 ${second},2`
    for (const second of ['01:00', '00:59'])
      expect(problemOf(parseHourlyCsv(line(second), COLUMNS))).toMatchObject({
        code: 'weather-order',
        params: { line: 3 },
      })
    expect(readings(line('01:01')).length).toBe(2)
  })

  it('names a line as the file counts it, blank lines and all', () => {
    const late = 'when,t\n\n2027-02-12 01:00,1\n\n\n2027-02-12 00:00,2'
    expect(problemOf(parseHourlyCsv(late, COLUMNS))).toMatchObject({ code: 'weather-order', params: { line: 6 } })
    const bare = '\n\nwhen,t\n\n2027-02-12 01:00,'
    expect(problemOf(parseHourlyCsv(bare, COLUMNS))).toMatchObject({
      code: 'weather-reading-missing',
      params: { line: 5, column: 't' },
    })
  })

  it('is refused without lines, and without a column that was named, which it tells beside those there are', () => {
    for (const text of ['', 'when,t', 'when,t\n\n'])
      expect(problemOf(parseHourlyCsv(text, COLUMNS))).toMatchObject({ code: 'weather-empty' })
    const named: readonly Partial<CsvColumns>[] = [
      { time: 'no' },
      { temp: 'no' },
      { wind: 'no' },
      { humidity: 'no' },
      { cloud: 'no' },
    ]
    for (const columns of named)
      expect(problemOf(parseHourlyCsv('\uFEFFwhen,t\n2027-02-12 00:00,1', { ...COLUMNS, ...columns }))).toMatchObject({
        code: 'weather-column-unknown',
        params: { column: 'no', columns: ['when', 't'] },
      })
  })
})

/** An EPW file of one data line; cells by column, the rest nought. */
function epw(cells: Readonly<Record<number, string>>, place = 'LOCATION,Nowhere,-,-,made,0,61.2,9.8,1.0,420'): string {
  const base: Readonly<Record<number, string>> = {
    0: '2019',
    1: '2',
    2: '12',
    3: '1',
    6: '-5',
    7: '-8',
    8: '80',
    9: '97000',
    12: '250',
    20: '90',
    21: '3.5',
    22: '5',
  }
  const row = Array.from({ length: 35 }, (_, column) => cells[column] ?? base[column] ?? '0')
  return [place, ...Array.from({ length: 7 }, () => 'HEADER'), row.join(',')].join('\n')
}

describe('a line of an EPW file', () => {
  const hourOf = (cells: Readonly<Record<number, string>>) => {
    const file = parseEpw(epw(cells))
    if (!file.ok) throw new Error(`refused: ${file.problem.code}`)
    const [hour] = file.value.hours
    if (hour === undefined) throw new Error('one hour')
    return hour
  }

  it('has its columns where the format has them', () => {
    expect(hourOf({})).toEqual({
      // Hour 1 of 12 February 2019 ends at 01:00 in UTC+1: midnight UTC, 17,939 days after 1970.
      atUtc: 17_939 * 86_400,
      tempC: -5,
      humidity01: 0.8,
      windMPerS: 3.5,
      cloud01: 0.5,
      dewPointC: -8,
      pressurePa: 97_000,
      infraredWhPerM2: 250,
      windFromDeg: 90,
    })
    expect(hourOf({ 3: '24' }).atUtc).toBe(17_939 * 86_400 + 23 * 3600)
    expect(hourOf({ 8: '104' }).humidity01).toBe(1)
  })

  it.each([
    [{ 6: '99.9' }, 'weather-reading-missing'],
    [{ 6: '' }, 'weather-reading-missing'],
    [{ 6: 'x' }, 'weather-reading-missing'],
    [{ 8: '999' }, 'weather-reading-missing'],
    [{ 21: '999' }, 'weather-reading-missing'],
    [{ 3: '0' }, 'weather-reading-missing'],
    [{ 3: '25' }, 'weather-reading-missing'],
    [{ 3: '' }, 'weather-reading-missing'],
    [{ 1: '0' }, 'weather-date'],
    [{ 1: '13' }, 'weather-date'],
    [{ 2: '0' }, 'weather-date'],
    [{ 2: '32' }, 'weather-date'],
    [{ 0: 'x' }, 'weather-date'],
  ] as const)('with %o is refused, and the line is named', (cells, code) => {
    expect(problemOf(parseEpw(epw(cells)))).toMatchObject({ code, params: { line: 9 } })
  })

  it('may end after the wind, and not before it', () => {
    const short = (columns: number): string => {
      const lines = epw({}).split('\n')
      return [...lines.slice(0, 8), lines[8]?.split(',').slice(0, columns).join(',') ?? ''].join('\n')
    }
    const file = parseEpw(short(22))
    expect(file.ok && file.value.hours[0]).toMatchObject({ windMPerS: 3.5, cloud01: null })
    expect(problemOf(parseEpw(short(21)))).toMatchObject({ code: 'weather-columns', params: { line: 9, columns: 21 } })
  })

  it('may lack what the night can do without', () => {
    expect(hourOf({ 7: '99.9', 9: '999999', 20: '999', 22: '99' })).toMatchObject({
      dewPointC: null,
      pressurePa: null,
      windFromDeg: null,
      cloud01: null,
    })
    expect(hourOf({ 7: '99.8', 9: '999998', 20: '359', 22: '10' })).toMatchObject({
      dewPointC: 99.8,
      pressurePa: 999_998,
      windFromDeg: 359,
      cloud01: 1,
    })
  })
})

describe('the place of an EPW file', () => {
  const placed = (offset: string): string => epw({}, `LOCATION,Nowhere,-,-,made,0,-33.5,-70.6,${offset},520`)

  it('has the standard time of the file, whole hours or not, east or west', () => {
    const atUtc = (offset: string): number | undefined => {
      const file = parseEpw(placed(offset))
      return file.ok ? file.value.hours[0]?.atUtc : undefined
    }
    // One o'clock by each: UTC is that less the offset.
    const oneUtc = 17_939 * 86_400 + 3600
    expect(atUtc('0')).toBe(oneUtc)
    expect(atUtc('-4.0')).toBe(oneUtc + 4 * 3600)
    expect(atUtc('5.75')).toBe(oneUtc - 5.75 * 3600)
    expect(atUtc('-3.5')).toBe(oneUtc + 3.5 * 3600)
    expect(atUtc('11')).toBe(oneUtc - 11 * 3600)
  })

  it('is told, and a file without one is no EPW file', () => {
    const file = parseEpw(placed('-4'))
    expect(file.ok && file.value).toMatchObject({
      latitudeDeg: -33.5,
      longitudeDeg: -70.6,
      elevationM: 520,
      standardOffsetH: -4,
    })
    for (const place of [
      'PLACE,Nowhere,-,-,made,0,61.2,9.8,1.0,420',
      'LOCATION,Nowhere,-,-,made,0,61.2,9.8,1.0',
      'LOCATION,Nowhere,-,-,made,0,61.2,x,1.0,420',
      'LOCATION,Nowhere,-,-,made,0,61.2,9.8,x,420',
      'LOCATION,Nowhere,-,-,made,0,61.2,9.8,1.0,x',
      '',
    ])
      expect(problemOf(parseEpw(epw({}, place)))).toMatchObject({ code: 'weather-not-epw' })
    expect(problemOf(parseEpw(''))).toMatchObject({ code: 'weather-not-epw' })
  })
})

describe('hours of a file for one night', () => {
  const hour = (hours: number, over: Partial<HourlyReading> = {}): HourlyReading => ({
    atUtc: (DAY_UTC + hours * 3600) as Utc,
    tempC: hours,
    windMPerS: 2,
    humidity01: 0.5,
    cloud01: 0.1,
    ...over,
  })
  const of = (list: readonly HourlyReading[], fromH: number, toH: number, yearShiftS = 0) =>
    forecastHoursOf({
      readings: list,
      fromUtc: (DAY_UTC + fromH * 3600) as Utc,
      toUtc: (DAY_UTC + toH * 3600) as Utc,
      zone: 'UTC',
      yearShiftS,
    })
  const clocks = (result: ReturnType<typeof of>): unknown => result.ok && result.value.map(({ clock }) => clock)

  it('are those between both ends and up to an hour beyond', () => {
    const list = [16, 17, 18, 19, 20, 21, 22].map((hours) => hour(hours))
    expect(clocks(of(list, 18, 20))).toEqual(['17:00', '18:00', '19:00', '20:00', '21:00'])
    expect(clocks(of(list, 18.5, 20.5))).toEqual(['18:00', '19:00', '20:00', '21:00'])
    expect(clocks(of(list, 16, 22))).toEqual(['16:00', '17:00', '18:00', '19:00', '20:00', '21:00', '22:00'])
  })

  it('are refused where they leave an end of the night open', () => {
    const list = [16, 17, 18, 19, 20, 21, 22].map((hours) => hour(hours))
    for (const [fromH, toH] of [
      [15.5, 20],
      [17, 22.5],
      [30, 34],
    ] as const)
      expect(problemOf(of(list, fromH, toH))).toMatchObject({ code: 'weather-night-missing' })
    expect(problemOf(of([], 18, 20))).toMatchObject({ code: 'weather-night-missing' })
  })

  it('are moved by years where asked, and leave out what the file does not say', () => {
    const day = 24 * 3600
    const list = [17, 18, 19].map((hours) => hour(hours - 24, { windMPerS: null, humidity01: null, cloud01: null }))
    expect(of(list, 17, 19, day)).toEqual({
      ok: true,
      value: [
        { clock: '17:00', tempC: -7 },
        { clock: '18:00', tempC: -6 },
        { clock: '19:00', tempC: -5 },
      ],
    })
    expect(problemOf(of(list, 17, 19))).toMatchObject({ code: 'weather-night-missing' })
    expect(of([hour(17), hour(18)], 17, 18)).toMatchObject({
      ok: true,
      value: [{ clock: '17:00', tempC: 17, windMPerS: 2, humidity01: 0.5, cloud01: 0.1 }, {}],
    })
  })
})
