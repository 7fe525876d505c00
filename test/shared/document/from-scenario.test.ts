/** Test scenarios become trips with nothing lost; so do scenarios of other vehicles in the same format. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseTrip, serializeTrip, validateTrip } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import { tripFromScenario } from '../../support/from-scenario/convert.ts'
import { chargingRuleOf, connectorOf } from '../../support/from-scenario/hookup.ts'
import { beddingOf, comfortOf, purposeOf } from '../../support/from-scenario/purpose.ts'

type Loose = { [key: string]: unknown }

// The scenarios of the brief, carried over unchanged: field-scenario/1, invented.
const read = (name: string): Loose =>
  JSON.parse(readFileSync(new URL(`../../fixtures/scenarios/${name}.json`, import.meta.url), 'utf8'))
const objectOf = (value: unknown): Loose => (typeof value === 'object' && value !== null ? (value as Loose) : {})
const listOf = (value: unknown): Loose[] => (Array.isArray(value) ? value.map(objectOf) : [])

function accepted(scenario: unknown): Trip {
  const checked = validateTrip(tripFromScenario(scenario))
  if (!checked.ok) throw new Error(JSON.stringify(checked.problem))
  return checked.value
}

const numbersIn = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(numbersIn)
      : []

/** What a number may have become: the same, millimetres or grams or a share of it, its minus, or digits in a note. */
const survives = (value: number, kept: ReadonlySet<number>, text: string): boolean =>
  [value, value * 1000, value / 100, -value].some((form) => kept.has(Number(form.toFixed(6)))) ||
  text.includes(String(value))

/** Whole litres of all these boxes together. */
const litres = (sizes: readonly (readonly [number, number, number])[]): number =>
  Math.round(sizes.reduce((sum, [x, y, z]) => sum + (x * y * z) / 1e6, 0))

describe.each(['scenario-a', 'scenario-b'])('%s as a trip', (name) => {
  const scenario = read(name)
  const trip = accepted(scenario)
  const reference = objectOf(objectOf(scenario['reference'])['load'])

  it('keeps every piece, and their masses add up to the reference', () => {
    expect(trip.kit.pieces.map((piece) => piece.id)).toEqual(listOf(scenario['items']).map((item) => item['id']))
    expect(trip.kit.pieces.length).toBe(reference['items'])
    const sumG = trip.kit.pieces.reduce((sum, piece) => sum + piece.massG, 0)
    expect(sumG).toBe(Math.round(Number(reference['items_kg']) * 1000))
  })

  it('keeps the litres of the load and of the bays', () => {
    expect(litres(trip.kit.pieces.map((piece) => piece.sizeMm))).toBe(reference['items_litres'])
    const sizes = (layout: 'drive' | 'bed') =>
      trip.vehicle.bays.filter((bay) => bay.usable[layout]).map((bay) => bay.sizeMm)
    expect(litres(sizes('drive'))).toBe(reference['drive_space_litres'])
    expect(litres(sizes('bed'))).toBe(reference['sleep_space_litres'])
  })

  it('keeps every number that is not computed', () => {
    const { reference: _computed, nights, ...rest } = scenario
    const given = { ...rest, nights: listOf(nights).map(({ sun: _sun, ...night }) => night) }
    const kept = new Set(numbersIn(trip).map((value) => Number(value.toFixed(6))))
    for (const { fromMm, toMm } of trip.vehicle.bays.flatMap((bay) => bay.openings)) {
      kept.add(toMm[0] - fromMm[0]).add(toMm[1] - fromMm[1])
    }
    const text = serializeTrip(trip)
    const lost = numbersIn(given).filter((value) => !survives(value, kept, text))
    expect(lost).toEqual([])
  })

  it('is written and read as a file', () => {
    const text = serializeTrip(trip)
    expect(parseTrip(new TextEncoder().encode(text))).toEqual({ ok: true, value: trip })
  })
})

describe('scenario-a as a trip', () => {
  const trip = accepted(read('scenario-a'))

  it('has its doors where they are', () => {
    const faces = Object.fromEntries(
      trip.vehicle.bays.map((bay) => [bay.id, bay.openings.map((opening) => opening.face)]),
    )
    expect(faces).toMatchObject({
      bay: ['x-'],
      rear_seat: ['y-', 'y+'],
      rear_footwell_l: ['y-'],
      rear_footwell_r: ['y+'],
      underfloor: ['z+'],
      front_box: ['z+'],
      pass_seat: ['y+'],
      door_bin: ['z+'],
      strip: ['x-', 'y+', 'y-'],
    })
    const tailgate = trip.vehicle.bays[0]?.openings[0]
    expect([tailgate?.fromMm, tailgate?.toMm]).toEqual([
      [5, 0],
      [1015, 700],
    ])
  })

  it('has the first night held to the site’s 10 A and paid by the kilowatt-hour', () => {
    const [first, second] = trip.nights
    expect(first?.hookup).toMatchObject({
      connector: 'iec-60309-16-blue',
      siteLimitA: 10,
      tariff: { kind: 'per-kwh', price: 0.42 },
      readings: [
        { currentA: 0, volts: 232 },
        { currentA: 10, volts: 225 },
      ],
    })
    expect(second?.hookup).toMatchObject({
      connector: 'cee-7-3-schuko',
      adapterLimitA: 8,
      adapterPieceId: 'A18',
      polarityReversed: 'yes',
      tariff: { kind: 'per-night', price: 6 },
    })
    expect(second?.hookup?.siteLimitA).toBeUndefined()
  })

  it('has fuel outside, frost in the underfloor well, and the well closed by the bed', () => {
    const bays = Object.fromEntries(trip.vehicle.bays.map((bay) => [bay.id, bay]))
    expect(bays['front_box']).toMatchObject({ sleepingSpace: false, heatedAtNight: false })
    expect(bays['underfloor']).toMatchObject({ heatedAtNight: false, closedByBed: true })
    expect(bays['strip']).toMatchObject({
      kind: 'bedside',
      heatedAtNight: true,
      sleepingSpace: true,
      reachFromBed: true,
    })
  })
})

describe('scenario-b as a trip', () => {
  const trip = accepted(read('scenario-b'))

  it('gives the food locker to the site, large enough for the tote', () => {
    const locker = trip.vehicle.bays.find((bay) => bay.kind === 'locker')
    expect(locker).toMatchObject({ belongsTo: 'site', usable: { drive: false, bed: true }, lockable: false })
    const opening = locker?.openings[0]
    expect(opening?.face).toBe('y-')
    expect((opening?.toMm[1] ?? 0) - (opening?.fromMm[1] ?? 0)).toBeGreaterThanOrEqual(368)
    expect(trip.nights.map((night) => night.rules.foodLockerMm)).toEqual([
      [1143, 838, 457],
      [1143, 838, 457],
    ])
  })

  it('remembers the breaker that tripped, the bars on the roof and US units', () => {
    expect(trip.nights[1]?.hookup).toMatchObject({ heldA: 24, connector: 'nema-14-50' })
    expect(trip.vehicle.masses).toMatchObject({ roofFittedG: 25_000, roofLimitG: 75_000 })
    expect(trip.preferences).toMatchObject({ units: 'us', currency: 'USD', paper: 'letter' })
  })
})

describe('other scenarios of the format', () => {
  it('may be a van with a leisure battery, a convector and a night without a supply', () => {
    const scenario = read('scenario-a')
    const vehicle = objectOf(scenario['vehicle'])
    const [first, second] = listOf(scenario['nights'])
    const trip = accepted({
      ...scenario,
      party: { ...objectOf(scenario['party']), sleepers: 2, second_adult_kg: 61 },
      vehicle: {
        ...vehicle,
        class: 'medium panel van, insulated conversion, diesel',
        battery: {
          leisure_usable_kwh: 2.4,
          leisure_arrive_percent: [90, 70],
          leisure_never_below_percent: 20,
          leisure_charger_w: 350,
          leisure_load_w: 25,
        },
        charging: null,
        thermal: { ua_bare_glass_w_per_k: 48, ua_with_window_covers_w_per_k: 36, max_heat_w: 900 },
      },
      items: [
        ...listOf(scenario['items']),
        {
          id: 'V1',
          name: 'mains convector 900 W',
          size_mm: [400, 150, 300],
          mass_kg: 2.8,
          kind: 'rigid',
          night_state: 'in_use',
          night_state_by_night: { '2': 'stored' },
          used_in: ['night'],
          reach_drive: 'any',
        },
      ],
      nights: [first, { ...second, hookup: null }],
      legs: [],
    })
    expect(trip.vehicle).toMatchObject({
      drive: 'combustion',
      thermal: { bodyClass: 'van-insulated' },
      heater: { kind: 'mains-fan-heater', maxHeatW: 900 },
      leisure: { usableWh: 2400, reserve01: 0.2, chargerW: 350, loadW: 25 },
    })
    expect(trip.travellers.map((traveller) => traveller.massG)).toEqual([78_000, 61_000])
    expect(trip.nights.map((night) => night.hookup === undefined)).toEqual([false, true])
    expect(trip.nights.map((night) => night.leisureCharge01)).toEqual([0.9, 0.7])
    expect(trip.kit.pieces.at(-1)).toMatchObject({
      purpose: 'fan-heater',
      atNight: 'in-use',
      atNightOn: [{ nightId: 'night-2', state: 'stored' }],
    })
  })

  it('may say only what it must', () => {
    const trip = accepted({
      schema: 'field-scenario/1',
      title: 'Bare',
      party: { sleepers: 2, heaviest_kg: 80 },
      vehicle: {
        class: 'small hatchback',
        mass: { max_permitted_kg: 1700, ready_to_drive_kg: 1250 },
        battery: { usable_kwh: 40 },
        thermal: {},
        compartments: [{ id: 'bay', origin_mm: [0, 0, 0], size_mm: [900, 1000, 600] }],
        bed: {},
      },
      items: [{ id: 'x 1', name: 'thing', size_mm: [100, 100, 100], mass_kg: 1 }],
      nights: [{ date: '2027-03-01', site: 'Somewhere', lat: 50, lon: 8, utc_offset_h: 5.5, weather: { low_c: 2 } }],
    })
    expect(trip.vehicle.thermal.bodyClass).toBe('hatchback')
    expect(trip.travellers.length).toBe(2)
    expect(trip.nights[0]?.site.zone).toBe('+05:30')
    expect(trip.vehicle.heater.kind).toBe('none')
  })

  it('keeps what it has no field for as a note', () => {
    const scenario = read('scenario-a')
    const [first, ...others] = listOf(scenario['nights'])
    const trip = accepted({ ...scenario, nights: [{ ...first, owl_calls: 'all night' }, ...others] })
    expect(trip.nights[0]?.note).toContain('owl calls: all night')
  })
})

describe('the words of a scenario', () => {
  it.each([
    ['TT-30', 'nema-tt-30'],
    ['14-50', 'nema-14-50'],
    ['IEC 60309 16 A 3-pin 6h (blue)', 'iec-60309-16-blue'],
    ['IEC 60309 32 A 3-pin 6h (blue)', 'iec-60309-32-blue'],
    ['IEC 60309 16 A 5-pin (red)', 'iec-60309-16-red'],
    ['domestic two-pin with side earth (Type F), outdoor cover', 'cee-7-3-schuko'],
    ['BS 1363 three-pin, fused 13 A', 'bs-1363'],
    ['Type E domestic', 'cee-7-5-french'],
    ['5-15 duplex', 'nema-5-15'],
    ['bare wires', 'other'],
  ])('read the connector %s as %s', (words, connector) => {
    expect(connectorOf(words)).toBe(connector)
  })

  it('read limits and prices out of a site’s rule', () => {
    expect(chargingRuleOf('allowed, 10 A maximum, 0.42 EUR per kWh metered')).toEqual({
      allowed: 'yes',
      limitA: 10,
      tariff: { kind: 'per-kwh', price: 0.42 },
      currency: 'EUR',
    })
    expect(chargingRuleOf('allowed, flat 6 EUR a night').tariff).toEqual({ kind: 'per-night', price: 6 })
    expect(chargingRuleOf('allowed, included in the pitch fee')).toMatchObject({
      limitA: undefined,
      tariff: { kind: 'included' },
    })
    expect(chargingRuleOf('not allowed').allowed).toBe('no')
    expect(chargingRuleOf('allowed up to 6 A, £4 a night')).toMatchObject({
      limitA: 6,
      tariff: { kind: 'per-night', price: 4 },
      currency: 'GBP',
    })
    expect(chargingRuleOf('').allowed).toBe('not-known')
  })

  it('read a comfort rating in either scale and with either minus', () => {
    expect(comfortOf('winter sleeping bag, comfort -9 C')).toBe(-9)
    expect(comfortOf('bag, comfort −4 °C')).toBe(-4)
    expect(comfortOf('quilt, comfort 28 F')).toBe(-2.2)
    expect(comfortOf('overquilt')).toBeUndefined()
  })

  it('tell bedding and purpose from a name', () => {
    expect(beddingOf('overquilt', true, 90)).toEqual({ kind: 'quilt', clo: 4 })
    expect(beddingOf('tripod', true, 90)).toBeUndefined()
    expect(purposeOf('adapter bag (round pin to two-pin)', false)).toBe('adapter')
    expect(purposeOf('portable charging unit with leads', false)).toBe('charging-unit')
    expect(purposeOf('carbon monoxide alarm', false)).toBe('co-alarm')
    expect(purposeOf('hookup cable 25 m', false)).toBe('lead')
    expect(purposeOf('propane cylinders, two small', true)).toBe('stove')
  })
})
