/** Every unit word, every smaller unit left out, every clock: what a person may type, against factors written down here anew. */
import { describe, expect, it } from 'vitest'
import { createText, parsePlainNumber, parseTypedClock } from '../../../shared/text/index.ts'
import type { Measure, UnitSystem } from '../../../shared/text/index.ts'

const metric = createText('en', 'metric')
const us = createText('en', 'us')
const german = createText('de', 'metric')

/** Exact definitions: 1 in = 25.4 mm, 1 lb = 453.59237 g, 1 US gal = 3.785411784 l, 1 mi = 1609.344 m. */
const UNITS: Readonly<Record<Measure, readonly (readonly [words: string, ofTen: number])[]>> = {
  length: [
    ['mm', 10],
    ['cm', 100],
    ['m metre metres meter meters', 10_000],
    ["in inch inches zoll \" ″ ” ''", 254],
    ["ft foot feet fuß fuss ' ′ ’", 3048],
  ],
  mass: [
    ['g gram grams gramm', 10],
    ['kg kilo kilos', 10_000],
    ['t', 10_000_000],
    ['lb lbs pound pounds #', 4536],
    ['oz ounce ounces', 283],
  ],
  volume: [
    ['ml', 10_000],
    ['l litre litres liter liters', 10_000_000],
    ['gal gallon gallons', 37_854_117.84],
    ['qt quart quarts', 9_463_529.46],
  ],
  temperature: [
    ['c °c ° celsius grad', 10],
    ['f °f fahrenheit', -110 / 9],
  ],
  temperatureDifference: [
    ['k c °c kelvin', 10],
    ['f °f', 50 / 9],
  ],
  power: [
    ['w watt watts', 10],
    ['kw', 10_000],
  ],
  energy: [
    ['wh', 10],
    ['kwh', 10_000],
  ],
  percent: [['% percent prozent', 0.1]],
  current: [
    ['a amp amps ampere', 10],
    ['ma', 0.01],
  ],
  voltage: [['v volt volts', 10]],
  distance: [
    ['m metre metres meter meters', 10],
    ['km', 10_000],
    ['mi mile miles meile meilen', 16_093],
    ["ft foot feet fuß fuss ' ′ ’", 3],
  ],
  speed: [
    ['km/h kmh kph', 10],
    ['mph mi/h', 16.09344],
    ['m/s', 36],
  ],
  windSpeed: [
    ['m/s', 10],
    ['km/h kmh kph', 10 / 3.6],
    ['mph mi/h', 4.4704],
  ],
  duration: [
    ['s sec second seconds sek', 10],
    ['min mins minute minutes minuten', 600],
    ['h hr hrs hour hours std stunde stunden', 36_000],
    ['d day days tag tage', 864_000],
  ],
}

const words = Object.entries(UNITS).flatMap(([measure, units]) =>
  units.flatMap(([list, ofTen]) => list.split(' ').map((word) => [measure as Measure, word, ofTen] as const)),
)

describe('every unit word', () => {
  it.each(words)('%s: ten %s', (measure, word, expected) => {
    for (const typed of [`10 ${word}`, `10${word}`, ` 10  ${word.toUpperCase()} `]) {
      const read = metric.parse(measure, typed)
      expect(read.ok ? read.value : read.problem.code, typed).toBeCloseTo(expected, measure === 'volume' ? 1 : 9)
    }
  })

  it('a word may end in a dot, as abbreviations do', () => {
    expect(metric.parse('length', '10 in.')).toEqual({ ok: true, value: 254 })
    expect(german.parse('duration', '2 Std.')).toEqual({ ok: true, value: 7200 })
  })

  it('a word of another measure is refused by name', () => {
    expect(metric.parse('mass', '5 KM')).toEqual({
      ok: false,
      problem: { code: 'unit-unknown', path: [], params: { value: '5 KM', unit: 'km' } },
    })
    expect(metric.parse('power', '5 x').ok).toBe(false)
  })
})

describe('a bare number', () => {
  const bare: readonly [Measure, metricOfTen: number, usOfTen: number][] = [
    ['length', 100, 254],
    ['mass', 10_000, 4536],
    ['volume', 10_000_000, 37_854_117.84],
    ['temperature', 10, -110 / 9],
    ['temperatureDifference', 10, 50 / 9],
    ['power', 10, 10],
    ['energy', 10_000, 10_000],
    ['percent', 0.1, 0.1],
    ['current', 10, 10],
    ['voltage', 10, 10],
    ['distance', 10_000, 16_093],
    ['speed', 10, 16.09344],
    ['windSpeed', 10, 4.4704],
    ['duration', 600, 600],
  ]
  it.each(bare)('of %s has the unit of its field', (measure, inMetric, inUs) => {
    for (const [text, expected] of [
      [metric, inMetric],
      [us, inUs],
    ] as const) {
      const read = text.parse(measure, '10')
      expect(read.ok ? read.value : read.problem.code).toBeCloseTo(expected, measure === 'volume' ? 1 : 9)
    }
  })

  const after: readonly (readonly [Measure, typed: string, expected: number])[] = [
    ...['ft', 'foot', 'feet', 'fuß', "'", '′', '’'].map((word) => ['length', `5 ${word} 2`, 1575] as const),
    ...['lb', 'lbs', 'pound', 'pounds', '#'].map((word) => ['mass', `12 ${word} 3`, 5528] as const),
    ...['kg', 'kilo', 'kilos'].map((word) => ['mass', `2 ${word} 500`, 2500] as const),
    ...['m', 'metre', 'metres', 'meter', 'meters'].map((word) => ['length', `1 ${word} 58`, 1580] as const),
    ...['h', 'hr', 'hrs', 'hour', 'hours', 'std', 'stunde', 'stunden'].map(
      (word) => ['duration', `1 ${word} 20`, 4800] as const,
    ),
    ...['d', 'day', 'days', 'tag', 'tage'].map((word) => ['duration', `2 ${word} 4`, 187_200] as const),
    ['distance', '3 km 500', 3500],
  ]
  it.each(after)('%s: "%s" counts in the next smaller unit', (measure, typed, expected) => {
    for (const text of [metric, us]) expect(text.parse(measure, typed)).toEqual({ ok: true, value: expected })
  })

  it.each<[Measure, string]>([
    ['temperature', '54 F 20'],
    ['length', '5 5'],
    ['length', '5 in 3'],
    ['mass', '2 t 500'],
    ['energy', '1 kWh 500'],
    ['duration', '1 h 20 30'],
    ['mass', '1 500'],
  ])('%s: "%s" is refused where no smaller unit is usual', (measure, typed) => {
    for (const text of [metric, us]) {
      expect(text.parse(measure, typed)).toEqual({
        ok: false,
        problem: { code: 'number-unreadable', path: [], params: { value: typed } },
      })
    }
  })

  it('adds parts that name their units, with one sign before them all', () => {
    expect(us.parse('length', `-5' 2"`)).toEqual({ ok: true, value: -1575 })
    expect(us.parse('length', '6 ft 1½ in')).toEqual({ ok: true, value: 1867 })
    expect(metric.parse('duration', '1 d 2 h 3 min 4 s')).toEqual({ ok: true, value: 93_784 })
    expect(metric.parse('temperatureDifference', '+ 3 k')).toEqual({ ok: true, value: 3 })
  })
})

describe('how a number is written', () => {
  const numbers: readonly [typed: string, english: number | null, germanValue: number | null][] = [
    ['1.580', 1.58, 1580],
    ['1,580', 1580, 1.58],
    ['0.580', 0.58, 0.58],
    ['0,580', 0.58, 0.58],
    ['12,345.5', 12_345.5, null],
    ['12.345,5', null, 12_345.5],
    ['1,234,567', 1_234_567, null],
    ['1.234.567', null, 1_234_567],
    ['1234', 1234, 1234],
    ['.5', 0.5, 0.5],
    [',5', 0.5, 0.5],
    ['5.', 5, 5],
    ['1 234', null, null],
    ['1\u00a0234', 1234, 1234],
    ['1\u202f234,5', 1234.5, 1234.5],
    ['3/4', 0.75, 0.75],
    ['1 3/4', 1.75, 1.75],
    ['12 10/40', 12.25, 12.25],
    ['10/4', 2.5, 2.5],
    ['1/0', null, null],
    ['-2,5', -2.5, -2.5],
    ['−2.5', -2.5, -2.5],
    ['- 7', -7, -7],
    ['+7', 7, 7],
    ['  7  ', 7, 7],
    ['', null, null],
    ['.', null, null],
    ['seven', null, null],
    ['7 x', null, null],
    ['x7', null, null],
    ['7-', null, null],
    ['1e3', null, null],
  ]
  it.each(numbers)('"%s"', (typed, english, germanValue) => {
    for (const [language, expected] of [
      ['en', english],
      ['de', germanValue],
    ] as const) {
      const read = parsePlainNumber(typed, language)
      expect(read).toEqual(
        expected === null
          ? { ok: false, problem: { code: 'number-unreadable', path: [], params: { value: typed } } }
          : { ok: true, value: expected },
      )
    }
  })

  it('a vulgar fraction stands alone or behind a whole number', () => {
    for (const [typed, expected] of [
      ['¼ in', 6],
      ['½ in', 13],
      ['¾ in', 19],
      ['2¾ in', 70],
      ['2 ¼ in', 57],
    ] as const) {
      expect(us.parse('length', typed)).toEqual({ ok: true, value: expected })
    }
  })

  it('drops the noise of binary fractions', () => {
    expect(metric.parse('percent', '7 %')).toEqual({ ok: true, value: 0.07 })
    expect(metric.parse('temperature', '57.2 F')).toEqual({ ok: true, value: 14 })
    expect(metric.parse('power', '1.1 kW')).toEqual({ ok: true, value: 1100 })
  })
})

describe('the lowest value that makes sense', () => {
  const least: readonly [Measure, lowest: string, below: string | null][] = [
    ['length', '-1 mm', null],
    ['temperatureDifference', '-3 k', null],
    ['temperature', '-273.15 c', '-273.16 c'],
    ['mass', '0 g', '-1 g'],
    ['volume', '0 l', '-1 ml'],
    ['power', '0 w', '-1 w'],
    ['energy', '0 wh', '-1 wh'],
    ['percent', '0 %', '-1 %'],
    ['current', '0 a', '-1 ma'],
    ['voltage', '0 v', '-1 v'],
    ['distance', '0 m', '-1 m'],
    ['speed', '0 km/h', '-1 km/h'],
    ['windSpeed', '0 m/s', '-1 m/s'],
    ['duration', '0 s', '-1 s'],
  ]
  it.each(least)('of %s is taken: %s; below it is refused', (measure, lowest, below) => {
    expect(metric.parse(measure, lowest).ok).toBe(true)
    if (below === null) return
    expect(metric.parse(measure, below)).toEqual({
      ok: false,
      problem: { code: 'number-too-small', path: [], params: { value: below } },
    })
  })
})

describe('the exact form', () => {
  /** What fields hold: whole engine units where the engine counts, else as many digits as a person types. */
  const values: Readonly<Record<Measure, readonly number[]>> = {
    length: [1, 999, 1581, 25_401],
    mass: [1, 999, 12_345],
    volume: [500_000, 1_500_000, 62_250_000],
    temperature: [-40, -0.5, 0, 12.25],
    temperatureDifference: [0.5, 2.25],
    power: [0.5, 750, 1500.5],
    energy: [0.1, 499.9, 6931.5],
    percent: [0.0001, 0.637, 1],
    current: [0.01, 12.81],
    voltage: [0.01, 226.45],
    distance: [1000, 83_686],
    speed: [0.01, 90.25],
    windSpeed: [0.01, 4.25],
    duration: [60, 4800],
  }
  it.each(Object.entries(values))('of %s reads back as the value, in metric units', (measure, list) => {
    for (const text of [metric, german]) {
      for (const value of list) {
        const shown = text.exact(measure as Measure, value)
        expect(text.parse(measure as Measure, shown.text)).toEqual({ ok: true, value })
        expect(text.parse(measure as Measure, shown.number)).toEqual({ ok: true, value })
      }
    }
  })

  const shown: readonly [Measure, UnitSystem, number, string][] = [
    ['length', 'metric', 1581, '158.1 cm'],
    ['length', 'us', 1581, '62.24 in'],
    ['mass', 'metric', 1234, '1.234 kg'],
    ['mass', 'us', 1234, '2.721 lb'],
    ['volume', 'metric', 1_234_567, '1.235 l'],
    ['volume', 'us', 37_854_117.84, '10 gal'],
    ['temperature', 'metric', 7.126, '7.13 °C'],
    ['temperature', 'us', -17.5, '0.5 °F'],
    ['temperatureDifference', 'metric', 2.126, '2.13 °C'],
    ['temperatureDifference', 'us', 2.5, '4.5 °F'],
    ['power', 'metric', 1234.56, '1234.6 W'],
    ['power', 'us', 750, '750 W'],
    ['energy', 'metric', 6931.23, '6.9312 kWh'],
    ['energy', 'us', 500, '0.5 kWh'],
    ['percent', 'metric', 0.12345, '12.35 %'],
    ['current', 'metric', 12.345, '12.35 A'],
    ['voltage', 'metric', 226.456, '226.46 V'],
    ['distance', 'metric', 1234, '1.234 km'],
    ['distance', 'us', 1609.344, '1 mi'],
    ['speed', 'metric', 90.256, '90.26 km/h'],
    ['speed', 'us', 80.4672, '50 mph'],
    ['windSpeed', 'metric', 4.256, '4.26 m/s'],
    ['windSpeed', 'us', 4.4704, '10 mph'],
    ['duration', 'metric', 4800, '80 min'],
    ['duration', 'us', 100, '1.67 min'],
  ]
  it.each(shown)('of %s in %s units', (measure, units, value, expected) => {
    expect(createText('en', units).exact(measure, value).text).toBe(expected.replace(' ', '\u00a0'))
  })
})

describe('typed clocks', () => {
  const clocks: readonly [string, string | null][] = [
    ['17:40', '17:40'],
    ['17.40', '17:40'],
    ['17h40', '17:40'],
    ['1740', '17:40'],
    ['740', '07:40'],
    ['7', '07:00'],
    ['07', '07:00'],
    ['0:00', '00:00'],
    ['23:59', '23:59'],
    [' 7:05 ', '07:05'],
    ['7 Uhr', '07:00'],
    ['17:40 uhr', '17:40'],
    ['0 Uhr', '00:00'],
    ['5:40 pm', '17:40'],
    ['5:40 PM', '17:40'],
    ['5:40 p.m.', '17:40'],
    ['5:40 a.m.', '05:40'],
    ['5pm', '17:00'],
    ['12 am', '00:00'],
    ['12:30 pm', '12:30'],
    ['1 am', '01:00'],
    ['11 pm', '23:00'],
    ['0 am', null],
    ['13 pm', null],
    ['24:00', null],
    ['17:60', null],
    ['17:4', null],
    ['12345', null],
    ['at 7', null],
    ['7 o', null],
    ['', null],
    ['17:40:30', null],
  ]
  it.each(clocks)('"%s"', (typed, expected) => {
    expect(parseTypedClock(typed)).toEqual(
      expected === null
        ? { ok: false, problem: { code: 'clock-unreadable', path: [], params: { value: typed } } }
        : { ok: true, value: expected },
    )
  })
})
