/** Where the rounding of a said quantity changes, on both sides of each border, and what each placeholder's ending shows. */
import { describe, expect, it } from 'vitest'
import { createText } from '../../../shared/text/index.ts'
import { createTextWith } from '../../support/text-with.ts'
import type { Text } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

const metric = createText('en', 'metric')
const us = createText('en', 'us')
const german = createText('de', 'metric')
const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

type Said = 'length' | 'mass' | 'volume' | 'temperature' | 'temperatureDifference' | 'power' | 'energy' | 'percent'
type Measured = Said | 'current' | 'voltage' | 'distance' | 'elevation' | 'speed' | 'windSpeed'
const say = (text: Text, measure: Measured, value: number): string => plain(text[measure](value).text)

describe('on both sides of each border', () => {
  const metricRows: readonly [Measured, number, string][] = [
    ['length', 99, '99 mm'],
    ['length', 100, '10 cm'],
    ['length', -100, '−10 cm'],
    ['length', 2999, '300 cm'],
    ['length', 3000, '3 m'],
    ['length', 9940, '9.9 m'],
    ['length', 9960, '10 m'],
    ['length', 10_400, '10 m'],
    ['length', -4320, '−4.3 m'],
    ['mass', 99, '99 g'],
    ['mass', 104, '100 g'],
    ['mass', 994, '990 g'],
    ['mass', 995, '1 kg'],
    ['mass', 19_960, '20 kg'],
    ['mass', 19_940, '19.9 kg'],
    ['mass', 20_400, '20 kg'],
    ['mass', -995, '−1 kg'],
    ['volume', 9_940_000, '9.9 l'],
    ['volume', 10_400_000, '10 l'],
    ['volume', -10_400_000, '−10 l'],
    ['temperatureDifference', 2.94, '2.9 °C'],
    ['temperatureDifference', 3.4, '3 °C'],
    ['temperatureDifference', -3.4, '−3 °C'],
    ['power', 99, '99 W'],
    ['power', 104, '100 W'],
    ['power', 994, '990 W'],
    ['power', 995, '1 kW'],
    ['power', -995, '−1 kW'],
    ['power', 99_440, '99.4 kW'],
    ['power', 99_500, '100 kW'],
    ['energy', 4, '4 Wh'],
    ['energy', 94, '94 Wh'],
    ['energy', 104, '100 Wh'],
    ['energy', 994, '990 Wh'],
    ['energy', 995, '1 kWh'],
    ['energy', -995, '−1 kWh'],
    ['energy', 99_440, '99.4 kWh'],
    ['energy', 99_600, '100 kWh'],
    ['percent', 0.0994, '9.9 %'],
    ['percent', 0.104, '10 %'],
    ['percent', -0.104, '−10 %'],
    ['current', 99.44, '99.4 A'],
    ['current', 100.4, '100 A'],
    ['current', -100.4, '−100 A'],
    ['distance', 94, '94 m'],
    ['distance', 104, '100 m'],
    ['distance', 994, '990 m'],
    ['distance', 995, '1 km'],
    ['distance', 9940, '9.9 km'],
    ['distance', 10_400, '10 km'],
    ['elevation', 1234, '1234 m'],
    ['elevation', -12, '−12 m'],
  ]
  it.each(metricRows)('metric %s of %d is %s', (measure, value, expected) => {
    expect(say(metric, measure, value)).toBe(expected)
  })

  /** 1 ft is 304.8 mm, 1 in 25.4 mm, 1 lb 453.59237 g, 1 gal 3.785411784 l, 1 mi 1609.344 m. */
  const usRows: readonly [Measured, number, string][] = [
    ['length', 6, '¼ in'],
    ['length', 13, '½ in'],
    ['length', 19, '¾ in'],
    ['length', 70, '2¾ in'],
    ['length', 98, '3¾ in'],
    ['length', 102, '4 in'],
    ['length', 108, '4½ in'],
    ['length', 3047, '10 ft'],
    ['length', 3035, '9 ft 11 in'],
    ['length', -1575, '−5 ft 2 in'],
    ['length', -1524, '−5 ft'],
    ['length', 3200, '10 ft'],
    ['length', 3220, '11 ft'],
    ['mass', 453, '16 oz'],
    ['mass', 454, '1 lb'],
    ['mass', -454, '−1 lb'],
    ['mass', 9050, '20 lb'],
    ['mass', 9000, '19.8 lb'],
    ['mass', 9200, '20 lb'],
    ['volume', 37_000_000, '9.8 gal'],
    ['volume', 40_000_000, '11 gal'],
    ['temperatureDifference', -5, '−9 °F'],
    ['distance', 304, '997 ft'],
    ['distance', 305, '0.2 mi'],
    ['distance', -304, '−997 ft'],
    ['distance', 16_000, '9.9 mi'],
    ['distance', 16_800, '10 mi'],
    ['elevation', 1000, '3280 ft'],
    ['elevation', 1604, '5260 ft'],
    ['speed', 100, '62 mph'],
    ['windSpeed', 10, '22 mph'],
    ['voltage', 11.6, '12 V'],
  ]
  it.each(usRows)('American %s of %d is %s', (measure, value, expected) => {
    expect(say(us, measure, value)).toBe(expected)
  })

  it('gives number and unit apart', () => {
    expect(metric.power(2990)).toEqual({ number: '3', unit: 'kW', text: '3\u00a0kW' })
    expect(us.length(1575)).toEqual({ number: '5\u00a0ft\u00a02', unit: 'in', text: '5\u00a0ft\u00a02\u00a0in' })
  })

  const durations: readonly [number, string, string][] = [
    [0, '0 s', '0 s'],
    [89, '89 s', '89 s'],
    [-89, '−89 s', '−89 s'],
    [90, '2 min', '2 min'],
    [-1500, '−25 min', '−25 min'],
    [3569, '59 min', '59 min'],
    [3570, '1 h', '1 h'],
    [3660, '1 h 1 min', '1 h 1 min'],
    [-7800, '−2 h 10 min', '−2 h 10 min'],
    [172_740, '47 h 59 min', '47 h 59 min'],
    [172_800, '2 d', '2 Tg.'],
    [273_600, '3 d 4 h', '3 Tg. 4 h'],
    [-273_600, '−3 d 4 h', '−3 Tg. 4 h'],
    [86_400 * 10 + 3599, '10 d 1 h', '10 Tg. 1 h'],
  ]
  it.each(durations)('%d seconds are %s', (value, english, inGerman) => {
    expect(plain(metric.duration(value))).toBe(english)
    expect(plain(german.duration(value))).toBe(inGerman)
  })

  it('writes the clock of a wall in the notation of the reader', () => {
    expect(['00:05', '01:00', '11:59', '12:00', '13:07', '23:59'].map((clock) => plain(us.clockText(clock)))).toEqual([
      '12:05 AM',
      '1:00 AM',
      '11:59 AM',
      '12:00 PM',
      '1:07 PM',
      '11:59 PM',
    ])
    for (const text of [metric, german, createText('de', 'us')]) expect(text.clockText('13:07')).toBe('13:07')
  })

  it('writes what is no date as it stands', () => {
    for (const said of ['soon', '2026-11-1', 'on 2026-11-13', '2026-11-13T05:00', '2026-02-30', '']) {
      expect(metric.date(said)).toBe(said)
    }
    expect(us.date('2027-01-02')).toBe('Sat, Jan 2, 2027')
    expect(createText('de', 'us').date('2027-01-02')).toBe(german.date('2027-01-02'))
  })

  it('writes money and lists as the language does', () => {
    expect(metric.money(12.5, 'EUR')).toBe('€12.50')
    expect(plain(german.money(12.5, 'EUR'))).toBe('12,50 €')
    expect(metric.list(['a', 'b', 'c'])).toBe('a, b and c')
    expect(german.list(['a', 'b', 'c'])).toBe('a, b und c')
  })

  it('rounds half away from zero on the digits a person sees, and groups from ten thousand', () => {
    const written: readonly [number, number | undefined, string][] = [
      [12.35, 1, '12.4'],
      [-12.35, 1, '−12.4'],
      [1.005, 2, '1.01'],
      [-0.04, 1, '0.0'],
      [2.5, 0, '3'],
      [-2.5, 0, '−3'],
      [9999.4, 0, '9999'],
      [9999.5, 0, '10,000'],
      [-12_345, 0, '−12,345'],
      [1.236, undefined, '1.24'],
      [9.996, undefined, '10'],
      [10.06, undefined, '10.1'],
      [-10.06, undefined, '−10.1'],
      [99.94, undefined, '99.9'],
      [100.4, undefined, '100'],
      [-123.4, undefined, '−123'],
    ]
    for (const [value, digits, expected] of written) {
      expect(digits === undefined ? metric.number(value) : metric.number(value, digits)).toBe(expected)
    }
  })
})

describe('the ending of a placeholder', () => {
  const shown: readonly [name: string, value: number, expected: string][] = [
    ['boxMm3', 1_500_000, '1.5 l'],
    ['lengthMm', 570, '57 cm'],
    ['speedKmPerH', 90, '90 km/h'],
    ['kmPerH', 90, '90 km/h'],
    ['windMPerS', 4, '4 m/s'],
    ['mPerS', 4, '4 m/s'],
    ['driveWhPerKm', 183.4, '183 Wh/km'],
    ['whPerKm', 183.4, '183 Wh/km'],
    ['needWh', 800, '800 Wh'],
    ['co2Ppm', 1234, '1250 ppm'],
    ['co2Ppm', 1224, '1200 ppm'],
    ['share01', 0.5, '50 %'],
    ['rainWaterMl', 1500, '1.5 l'],
    ['pullKn', 1.26, '1.3 kN'],
    ['tiltDeg', 12.6, '13°'],
    ['duvetClo', 2.26, '2.3 clo'],
    ['leftMin', 75, '1 h 15 min'],
    ['tempC', -4.4, '−4 °C'],
    ['pm2C', -4.4, '−4 °C'],
    ['marginK', 2, '2 °C'],
    ['step1K', 2, '2 °C'],
    ['massG', 1500, '1.5 kg'],
    ['item2G', 1500, '1.5 kg'],
    ['powerW', 1500, '1.5 kW'],
    ['line1W', 1500, '1.5 kW'],
    ['currentA', 10, '10 A'],
    ['fuse1A', 10, '10 A'],
    ['lineV', 226, '226 V'],
    ['line1V', 226, '226 V'],
    ['volts', 226, '226 V'],
    ['waitS', 600, '10 min'],
    ['phase1S', 600, '10 min'],
    ['wayM', 1200, '1.2 km'],
    ['lead1M', 1200, '1.2 km'],
  ]
  it.each(shown)('{%s} of %d is %s', (name, value, expected) => {
    expect(plain(createTextWith({ a: `{${name}}` })('a', { [name]: value }))).toBe(expected)
  })

  it('is no unit in a name of capitals, in a longer word or in the middle of a name', () => {
    for (const name of ['USA', 'C', 'xC2', 'voltsAway', 'moreVoltsx', 'evolts', 'lengthMmAway', 'kmPerHour', 'Mm3s']) {
      expect(createTextWith({ a: `{${name}}` })('a', { [name]: 1.236 }), name).toBe('1.24')
    }
  })

  it('Utc is a clock only beside a zone', () => {
    const text = createTextWith({ a: '{atUtc}' })
    expect(text('a', { atUtc: 3600 * 5, zone: 'Europe/Berlin' })).toBe('06:00')
    expect(text('a', { atUtc: 50 })).toBe('50')
    expect(text('a', { atUtc: 50, zone: 7 })).toBe('50')
  })

  it('a placeholder that is not given stays readable; a truth is a word; a list is joined', () => {
    const text = createTextWith({ a: '{massG} {ready} {names} {count1}' })
    expect(text('a', { ready: false, names: ['x', 'y', 'z'], count1: 1 })).toBe('{massG} no x, y and z 1')
  })
})

describe('the form of a sentence', () => {
  it('is chosen by a count that is a number, and only where there are two', () => {
    const text = createTextWith({ a: 'one | many', b: 'only' })
    expect([1, 2, 0, -1, 1.5].map((count) => text('a', { count }))).toEqual(['one', 'many', 'many', 'many', 'many'])
    expect(text('a', { count: 'few' })).toBe('one | many')
    expect(text('a', {})).toBe('one | many')
    expect(text('b', { count: 3 })).toBe('only')
  })
})

describe('the place of a problem', () => {
  it.each([
    ['reachMm', 'reach'],
    ['boxMm3', 'box'],
    ['loadG', 'load'],
    ['airC', 'air'],
    ['marginK', 'margin'],
    ['heaterW', 'heater'],
    ['packWh', 'pack'],
    ['share01', 'share'],
    ['siteLimitA', 'site limit'],
    ['lineV', 'line'],
    ['waitS', 'wait'],
    ['gasPpm', 'gas'],
    ['wayM', 'way'],
    ['rainWaterMl', 'rain water'],
    ['restMin', 'rest'],
    ['tiltDeg', 'tilt'],
    ['leaveUtc', 'leave'],
    ['ownerId', 'owner'],
    ['ownerIds', 'owner'],
    ['gustMPerS', 'gust'],
    ['topKmPerH', 'top'],
    ['someA2Part', 'some a2 part'],
    ['USA', 'usa'],
    ['W', 'w'],
  ])('drops the unit of %s: %s', (segment, expected) => {
    expect(metric.path([segment])).toBe(expected)
  })

  it('counts from one and joins with an arrow', () => {
    expect(metric.path([])).toBe('')
    expect(metric.path([0])).toBe('1')
    expect(metric.path(['oddRows', 0, 4, 'wideMm'])).toBe('odd rows 1 5 > wide')
  })

  it('says a problem without a place, and one that has words', () => {
    expect(metric.problem({ code: 'never-seen', path: [], params: {} })).toContain('–')
    expect(metric.problem({ code: 'number-unreadable', path: [], params: { value: 'x' } })).toBe(
      metric.t('problem.number-unreadable', { value: 'x', where: '' }),
    )
  })
})

describe('the clock of a zone', () => {
  it('follows the zone through summer time', () => {
    const at = (iso: string): Utc => (Date.parse(iso) / 1000) as Utc
    expect(metric.clock(at('2026-07-01T22:30:00Z'), 'Europe/Berlin')).toBe('00:30')
    expect(metric.clock(at('2026-12-01T22:30:00Z'), 'Europe/Berlin')).toBe('23:30')
  })
})
