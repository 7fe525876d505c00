/** Numbers and sentences as a person reads and types them, in two languages and two unit systems. */
import { describe, expect, it } from 'vitest'
import { createText } from '../../../shared/text/index.ts'
import { problem } from '../../../shared/result/index.ts'
import { createTextWith } from '../../support/text-with.ts'
import type { Measure, Text } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

const metric = createText('en', 'metric')
const us = createText('en', 'us')
const german = createText('de', 'metric')
const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

const say = (text: Text, measure: keyof Text, value: number): string => {
  const show = text[measure]
  if (typeof show !== 'function') throw new Error(`${measure} is no measure`)
  const quantity = Reflect.apply(show, undefined, [value])
  return plain(typeof quantity === 'string' ? quantity : quantity.text)
}

describe('quantities are rounded as a person would say them', () => {
  const said: readonly [keyof Text, number, string, string, string][] = [
    ['length', 57, '57 mm', '2¼ in', '57 mm'],
    ['length', 1580, '158 cm', '5 ft 2 in', '158 cm'],
    ['length', 1524, '152 cm', '5 ft', '152 cm'],
    ['length', 395, '40 cm', '15½ in', '40 cm'],
    ['length', 9000, '9 m', '30 ft', '9 m'],
    ['length', 4320, '4.3 m', '14 ft', '4,3 m'],
    ['length', 2995, '300 cm', '9 ft 10 in', '300 cm'],
    ['length', 25_000, '25 m', '82 ft', '25 m'],
    ['length', 0, '0 mm', '0 in', '0 mm'],
    ['length', -30, '−30 mm', '−1¼ in', '−30 mm'],
    ['length', 603, '60 cm', '23½ in', '60 cm'],
    ['length', 609, '61 cm', '2 ft', '61 cm'],
    ['mass', 40, '40 g', '1 oz', '40 g'],
    ['mass', 853, '850 g', '1.9 lb', '850 g'],
    ['mass', 12_350, '12.4 kg', '27 lb', '12,4 kg'],
    ['mass', 480_000, '480 kg', '1058 lb', '480 kg'],
    ['mass', -3200, '−3.2 kg', '−7.1 lb', '−3,2 kg'],
    ['volume', 62_000_000, '62 l', '16 gal', '62 l'],
    ['volume', 1_500_000, '1.5 l', '0.4 gal', '1,5 l'],
    ['temperature', 6.6, '7 °C', '44 °F', '7 °C'],
    ['temperature', -0.3, '0 °C', '31 °F', '0 °C'],
    ['temperature', -12, '−12 °C', '10 °F', '−12 °C'],
    ['temperatureDifference', 1.5, '1.5 °C', '3 °F', '1,5 °C'],
    ['power', 752, '750 W', '750 W', '750 W'],
    ['power', 998, '1 kW', '1 kW', '1 kW'],
    ['power', 2990, '3 kW', '3 kW', '3 kW'],
    ['energy', 6930, '6.9 kWh', '6.9 kWh', '6,9 kWh'],
    ['percent', 0.637, '64 %', '64 %', '64 %'],
    ['percent', 0.034, '3.4 %', '3.4 %', '3,4 %'],
    ['current', 12.8, '12.8 A', '12.8 A', '12,8 A'],
    ['current', 24, '24 A', '24 A', '24 A'],
    ['voltage', 226.4, '226 V', '226 V', '226 V'],
    ['distance', 210, '210 m', '689 ft', '210 m'],
    ['distance', 7400, '7.4 km', '4.6 mi', '7,4 km'],
    ['distance', 84_000, '84 km', '52 mi', '84 km'],
    ['speed', 90, '90 km/h', '56 mph', '90 km/h'],
    ['windSpeed', 4, '4 m/s', '9 mph', '4 m/s'],
  ]
  it.each(said)('%s of %d', (measure, value, metricText, usText, germanText) => {
    expect(say(metric, measure, value)).toBe(metricText)
    expect(say(us, measure, value)).toBe(usText)
    expect(say(german, measure, value)).toBe(germanText)
  })

  it('states three edges in one unit', () => {
    expect(plain(metric.size([395, 297, 216]))).toBe('40 × 30 × 22 cm')
    expect(plain(us.size([395, 297, 216]))).toBe('15½ × 11½ × 8½ in')
  })

  it('says durations in the two largest units', () => {
    expect([45, 90, 1500, 7800, 7200, 190_000].map((s) => plain(metric.duration(s)))).toEqual([
      '45 s',
      '2 min',
      '25 min',
      '2 h 10 min',
      '2 h',
      '2 d 5 h',
    ])
  })

  it('writes clocks of a zone in 24 hours, and in 12 hours for American English', () => {
    const at = (Date.UTC(2026, 10, 14, 4, 40) / 1000) as Utc
    expect(metric.clock(at, 'Europe/Berlin')).toBe('05:40')
    expect(plain(us.clock(at, 'America/Denver'))).toBe('9:40 PM')
    expect(createText('de', 'us').clock(at, 'Europe/Berlin')).toBe('05:40')
    // 14 November 2026 is a Saturday; in Denver it is still Friday.
    expect(plain(metric.weekdayClock(at, 'Europe/Berlin'))).toBe('Sat 05:40')
    expect(plain(us.weekdayClock(at, 'America/Denver'))).toBe('Fri 9:40 PM')
    expect(plain(createText('de', 'metric').weekdayClock(at, 'Europe/Berlin'))).toBe('Sa 05:40')
    const noon = (Date.UTC(2026, 10, 14, 12, 5) / 1000) as Utc
    expect(plain(us.clock(noon, 'UTC'))).toBe('12:05 PM')
    expect(plain(us.clock((Date.UTC(2026, 10, 14, 0, 5) / 1000) as Utc, 'UTC'))).toBe('12:05 AM')
  })

  it('writes dates with their weekday', () => {
    expect(metric.date('2026-11-13')).toMatch(/^Fri,? 13 Nov 2026$/)
    expect(us.date('2026-11-13')).toBe('Fri, Nov 13, 2026')
    expect(german.date('2026-11-13')).toMatch(/^Fr\.?, 13\. Nov\.? 2026$/)
  })

  it('writes numbers with the decimal sign of the language', () => {
    expect(metric.number(2.5, 1)).toBe('2.5')
    expect(german.number(2.5, 1)).toBe('2,5')
    expect(metric.number(3, 1)).toBe('3.0')
    expect(metric.number(3)).toBe('3')
    expect(german.number(12_345.6, 1)).toBe('12.345,6')
    expect(metric.number(9999)).toBe('9999')
  })
})

describe('typed quantities are read', () => {
  const typed: readonly [Text, Measure, string, number][] = [
    [metric, 'length', '158 cm', 1580],
    [metric, 'length', '158', 1580],
    [metric, 'length', '1.58 m', 1580],
    [metric, 'length', '1,58 m', 1580],
    [german, 'length', '1,58 m', 1580],
    [german, 'length', '1.580 mm', 1580],
    [metric, 'length', '1,580 mm', 1580],
    [metric, 'length', '39,5 cm', 395],
    [metric, 'length', '−30 mm', -30],
    [metric, 'length', '1 m 58', 1580],
    [us, 'length', '5 ft 2', 1575],
    [us, 'length', `5'2"`, 1575],
    [us, 'length', '5′ 2″', 1575],
    [us, 'length', '5 ft 2 in', 1575],
    [us, 'length', '62', 1575],
    [us, 'length', '15 1/2 in', 394],
    [us, 'length', '15½', 394],
    [us, 'length', '3/4 in', 19],
    [us, 'length', '158 cm', 1580],
    [german, 'length', '2 Zoll', 51],
    [us, 'mass', '12 lb 3 oz', 5528],
    [us, 'mass', '12 lb 3', 5528],
    [us, 'mass', '5 kg', 5000],
    [metric, 'mass', '1,5 kg', 1500],
    [metric, 'mass', '850g', 850],
    [metric, 'mass', '2', 2000],
    [metric, 'temperature', '54 F', 110 / 9],
    [us, 'temperature', '54', 110 / 9],
    [us, 'temperature', '-4 °F', -20],
    [metric, 'temperature', '-12', -12],
    [metric, 'temperature', '−0,5 °C', -0.5],
    [us, 'temperature', '12 °C', 12],
    [us, 'temperatureDifference', '9', 5],
    [metric, 'volume', '20 l', 20_000_000],
    [us, 'volume', '5 gal', 18_927_058.92],
    [metric, 'power', '1.5 kW', 1500],
    [metric, 'power', '750', 750],
    [metric, 'energy', '6,9 kWh', 6900],
    [metric, 'energy', '500 Wh', 500],
    [metric, 'percent', '64 %', 0.64],
    [metric, 'percent', '64', 0.64],
    [metric, 'current', '12,8 A', 12.8],
    [metric, 'voltage', '226V', 226],
    [metric, 'distance', '84', 84_000],
    [us, 'distance', '52 mi', 83_686],
    [metric, 'distance', '800 m', 800],
    [metric, 'speed', '90', 90],
    [us, 'speed', '50 mph', 80.4672],
    [metric, 'windSpeed', '36 km/h', 10],
    [us, 'windSpeed', '9 mph', 4.02336],
    [metric, 'duration', '1 h 20', 4800],
    [metric, 'duration', '80 min', 4800],
    [metric, 'duration', '45', 2700],
    [german, 'duration', '1 Std 20 Min', 4800],
  ]
  it.each(typed.map((row) => [row[2], row[1], row] as const))('%s as %s', (_, __, [text, measure, input, expected]) => {
    const read = text.parse(measure, input)
    expect(read.ok ? read.value : Number.NaN).toBeCloseTo(expected, measure === 'volume' ? 1 : 6)
  })

  const refused: readonly [Measure, string, string][] = [
    ['length', '', 'number-unreadable'],
    ['length', 'wide', 'number-unreadable'],
    ['length', '5 kg', 'unit-unknown'],
    ['length', '1.2.3 m', 'number-unreadable'],
    ['length', '1/0 in', 'number-unreadable'],
    ['mass', '-3 kg', 'number-too-small'],
    ['temperature', '-300', 'number-too-small'],
    ['mass', '5 constructor', 'unit-unknown'],
    ['length', '5 - 2', 'number-unreadable'],
  ]
  it.each(refused)('%s refuses "%s" as %s', (measure, input, code) => {
    const read = metric.parse(measure, input)
    expect(read.ok ? 'read' : read.problem.code).toBe(code)
    expect(read.ok ? '' : metric.problem(read.problem)).toContain(input === '' ? '“”' : input)
  })

  it('reads back every exact form to the same value', () => {
    for (const text of [metric, us, german, createText('de', 'us')]) {
      for (let mm = 1; mm <= 20_000; mm += 7) {
        expect(text.parse('length', text.exact('length', mm).text)).toEqual({ ok: true, value: mm })
        expect(text.parse('mass', text.exact('mass', mm * 3).text)).toEqual({ ok: true, value: mm * 3 })
      }
    }
  })
})

describe('sentences', () => {
  it('fills placeholders by the unit that ends their name and chooses the form by count', () => {
    const text = createTextWith({
      a: '{count} move, {massG}, {lengthMm} | {count} moves, {massG}, {lengthMm}',
      b: '{tempC} {marginK} {powerW} {energyWh} {share01} {currentA} {volts} {waitS} {co2Ppm} {wayM} {leftMin}',
      c: '{at} {atUtc} {ready} {names} {missing}',
    })
    expect(plain(text('a', { count: 1, massG: 1500, lengthMm: 570 }))).toBe('1 move, 1.5 kg, 57 cm')
    expect(plain(text('a', { count: 0, massG: 1500, lengthMm: 570 }))).toBe('0 moves, 1.5 kg, 57 cm')
    expect(
      plain(
        text('b', {
          tempC: -4.4,
          marginK: 2,
          powerW: 1500,
          energyWh: 800,
          share01: 0.5,
          currentA: 10,
          volts: 226,
          waitS: 600,
          co2Ppm: 1234,
          wayM: 1200,
          leftMin: 75,
        }),
      ),
    ).toBe('−4 °C 2 °C 1.5 kW 800 Wh 50 % 10 A 226 V 10 min 1250 ppm 1.2 km 1 h 15 min')
    expect(
      text('c', { at: 'Hof <b>', atUtc: Date.UTC(2026, 0, 1, 5) / 1000, zone: 'UTC', ready: true, names: ['x', 'y'] }),
    ).toBe('Hof <b> 05:00 yes x and y {missing}')
  })

  it('says tenths of few hours, whole hours of many', () => {
    const sentence = createTextWith({ heat: 'heats for {hoursH} h' })
    expect(sentence('heat', { hoursH: 4.26 })).toBe('heats for 4.3 h')
    expect(sentence('heat', { hoursH: 79.8 })).toBe('heats for 80 h')
  })

  it('names the place of a problem in words', () => {
    expect(metric.path(['nights', 1, 'hookup', 'breakerA'])).toBe('night 2 > hookup > breaker')
    expect(german.path(['nights', 1, 'hookup', 'breakerA'])).toBe('Nacht 2 > Stromanschluss > Sicherung')
    expect(metric.path(['vehicle', 'bays', 0, 'someLengthMm'])).toBe('vehicle > bay 1 > some length')
  })

  it('calls the edges of a size by their names', () => {
    expect(metric.path(['vehicle', 'bays', 0, 'sizeMm', 1])).toBe('vehicle > bay 1 > width')
    expect(german.path(['kit', 'pieces', 2, 'sizeMm', 2])).toMatch(/ 3 > Höhe$/)
  })

  it('says a refusal beside its field without the path of the file, in the units that are typed', () => {
    const heavy = problem('payload-none', ['vehicle', 'masses', 'readyG'], {
      field: 'vehicle.masses.readyG',
      value: '2300000',
      maximum: '2250000',
    })
    expect(plain(metric.problemAtField(heavy))).toBe(
      'Ready mass: ready to drive it weighs 2300 kg, as much as the permitted 2250 kg. Read both off the papers again.',
    )
    // 2300 kg / 0.45359237 = 5070.6 lb
    expect(plain(us.problemAtField(heavy))).toMatch(/weighs 507[01] lb/)
    expect(metric.problem(heavy)).toContain('(vehicle.masses.readyG)')
    const short = problem('field-number-too-low', ['vehicle', 'bays', 0, 'sizeMm', 0], {
      field: 'vehicle.bays[0].sizeMm[0]',
      value: '-50',
      minimum: '1',
    })
    expect(plain(metric.problemAtField(short))).toBe('Length says −50 mm; the least is 1 mm. Enter a larger number.')
    expect(plain(german.problemAtField(short))).toMatch(/^Länge lautet −50 mm; das Mindeste ist 1 mm\./)
  })

  it('counts letters, not kilograms, where a text beside a field is too long, and leaves words as they are', () => {
    const long = problem('field-text-too-long', ['kit', 'pieces', 3, 'name'], {
      value: '"x"',
      length: '300',
      maximum: '200',
    })
    expect(plain(metric.problemAtField(long))).toBe('Name has 300 characters; 200 are the most. Shorten it.')
    const clock = problem('field-clock', ['nights', 0, 'arrive'], { value: '"noon"' })
    expect(metric.problemAtField(clock)).toBe('Arrival says "noon"; write a time of day like 17:40.')
  })

  it('names the whole place in words where a refusal is not seen beside its field', () => {
    const bed = problem('bed-without-mattress', ['vehicle', 'bed', 'mattressPieceIds'], {
      field: 'vehicle.bed.mattressPieceIds',
      value: '[]',
    })
    expect(metric.problemInTrip(bed)).toMatch(/^Vehicle > bed > mattress is empty: the bed has no mattress\./)
    expect(german.problemInTrip(bed)).not.toContain('mattressPieceIds')
  })

  it('says beside a field, too, what it does not know', () => {
    expect(metric.problemAtField(problem('never-seen', ['kit']))).toContain('never-seen')
  })

  it('says what it does not know when a problem has no sentence', () => {
    expect(metric.problem(problem('never-seen', ['kit', 'pieces', 3, 'massG']))).toContain('never-seen')
    expect(metric.problem(problem('never-seen', ['kit', 'pieces', 3, 'massG']))).toContain('kit > piece 4 > mass')
  })
})
