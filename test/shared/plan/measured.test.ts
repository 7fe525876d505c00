/** What was read on the trip's nights, as the fit of loss and consumption is asked: which readings count, from when to when. */
import { describe, expect, it } from 'vitest'
import type { Measured, Night, Trip } from '../../../shared/document/index.ts'
import { measuredLegs, measuredNights } from '../../../shared/plan/inputs/measured.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsTrip } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const utc = (iso: string): Utc => (Date.parse(iso) / 1000) as Utc
const at = (moment: Measured['moment'], clock: string, values: Partial<Measured> = {}): Measured => ({
  nightId: 'n1',
  moment,
  clock,
  ...values,
})
const nightsOf = (...measured: readonly Measured[]) => measuredNights({ ...trip, measured })

describe('a night that was read', () => {
  it('counts from bedtime to the morning’s reading', () => {
    // 22:00 and 06:15 at the site are 21:00 and 05:15 UTC.
    const [one, ...others] = nightsOf(at('morning', '06:15', { lowestInsideC: 4, meanInsideC: 7, heatingWh: 5200 }))
    expect(others).toEqual([])
    expect(one).toMatchObject({
      fromUtc: utc('2026-11-13T21:00:00Z'),
      toUtc: utc('2026-11-14T05:15:00Z'),
      heatingWh: 5200,
      siteWh: null,
      from01: null,
      to01: null,
      lowestInsideC: 4,
      meanInsideC: 7,
    })
  })

  it('counts from the reading at bedtime where there was one, the last counting', () => {
    const [one] = nightsOf(
      at('bedtime', '22:40', { charge01: 0.7 }),
      at('bedtime', '23:10', { charge01: 0.69 }),
      at('morning', '06:00', { charge01: 0.6 }),
      at('morning', '06:30', { charge01: 0.59 }),
    )
    expect(one).toMatchObject({
      fromUtc: utc('2026-11-13T22:10:00Z'),
      toUtc: utc('2026-11-14T05:30:00Z'),
      from01: 0.69,
      to01: 0.59,
      heatingWh: null,
      lowestInsideC: null,
      meanInsideC: null,
    })
  })

  it('is another night’s own business', () => {
    const read = nightsOf(
      at('bedtime', '23:00', { nightId: 'n2' }),
      at('morning', '06:30', { nightId: 'n2', meanInsideC: 3 }),
      at('morning', '06:00', { meanInsideC: 7 }),
    )
    expect(read.map(({ fromUtc, meanInsideC }) => [fromUtc, meanInsideC])).toEqual([
      [utc('2026-11-13T21:00:00Z'), 7],
      [utc('2026-11-14T22:00:00Z'), 3],
    ])
  })

  it.each([
    ['nothing in the morning', [at('bedtime', '22:00', { charge01: 0.7, lowestInsideC: 9 })], 0],
    ['a morning that says nothing of warmth', [at('morning', '06:00', { volts: 229 })], 0],
    ['a charge in the morning alone', [at('morning', '06:00', { charge01: 0.6 })], 0],
    ['a charge at bedtime alone', [at('bedtime', '22:00', { charge01: 0.7 }), at('morning', '06:00')], 0],
    ['both charges', [at('bedtime', '22:00', { charge01: 0.7 }), at('morning', '06:00', { charge01: 0.6 })], 1],
    ['the lowest inside', [at('morning', '06:00', { lowestInsideC: 0 })], 1],
    ['the mean inside', [at('morning', '06:00', { meanInsideC: 0 })], 1],
    ['the energy for heating', [at('morning', '06:00', { heatingWh: 0 })], 1],
  ])('tells of the loss by %s', (_, measured, count) => {
    expect(nightsOf(...measured)).toHaveLength(count)
  })
})

describe('the post’s meter', () => {
  const meter = (moment: Measured['moment'], clock: string, meterWh: number): Measured => at(moment, clock, { meterWh })

  it('counts from its first reading to its last, apart from the rest', () => {
    const read = nightsOf(
      meter('at-the-post', '17:20', 500_000),
      at('bedtime', '22:00', { meterWh: 503_000, charge01: 0.5 }),
      at('morning', '06:00', { meterWh: 512_500, charge01: 0.8, meanInsideC: 7, lowestInsideC: 5, heatingWh: 4000 }),
    )
    expect(read).toHaveLength(2)
    expect(read[0]).toMatchObject({ siteWh: null, from01: 0.5, to01: 0.8, meanInsideC: 7, heatingWh: 4000 })
    expect(read[1]).toMatchObject({
      fromUtc: utc('2026-11-13T16:20:00Z'),
      toUtc: utc('2026-11-14T05:00:00Z'),
      siteWh: 12_500,
      heatingWh: null,
      from01: null,
      to01: null,
      lowestInsideC: null,
      meanInsideC: null,
    })
  })

  it('tells alone, from any two of its moments', () => {
    const read = nightsOf(meter('bedtime', '22:00', 1000), meter('morning', '06:00', 1000))
    expect(read.map(({ fromUtc, siteWh }) => [fromUtc, siteWh])).toEqual([[utc('2026-11-13T21:00:00Z'), 0]])
  })

  it('tells nothing read once, backwards, or at one and the same time', () => {
    expect(nightsOf(meter('morning', '06:00', 1000))).toEqual([])
    expect(nightsOf(meter('at-the-post', '17:00', 1001), meter('morning', '06:00', 1000))).toEqual([])
    expect(nightsOf(meter('bedtime', '06:00', 900), meter('morning', '06:00', 1000))).toEqual([])
    expect(nightsOf(meter('at-the-post', '17:00', 900), meter('bedtime', '22:00', 1000))).toEqual([])
  })
})

describe('the night as it was', () => {
  const inputOf = (morning: Partial<Measured>, ...before: readonly Measured[]) =>
    nightsOf(...before, at('morning', '06:00', { meanInsideC: 7, ...morning }))[0]?.input

  it('has no margin on the forecast', () => {
    const margins = trip.nights.map((night) => ({ ...night, weather: { ...night.weather, coldMarginK: 0 } }))
    const [none] = measuredNights({ ...trip, nights: margins, measured: [at('morning', '06:00', { meanInsideC: 7 })] })
    expect(inputOf({})?.weather).toEqual(none?.input.weather)
  })

  it('keeps its course of temperature and takes the mean that was read between the readings', () => {
    const forecast = inputOf({})?.weather ?? []
    const observed = inputOf({ meanOutsideC: -1 })?.weather ?? []
    const asleep = observed.filter(
      ({ atUtc }) => atUtc >= utc('2026-11-13T21:00:00Z') && atUtc <= utc('2026-11-14T05:00:00Z'),
    )
    // Every five minutes for eight hours, both ends.
    expect(asleep).toHaveLength(97)
    expect(asleep.reduce((sum, { tempC }) => sum + tempC, 0) / 97).toBeCloseTo(-1, 9)
    const shifts = observed.map(({ tempC }, step) => tempC - (forecast[step]?.tempC ?? 0))
    expect(Math.max(...shifts) - Math.min(...shifts)).toBeLessThan(1e-9)
    expect(observed.map(({ windMPerS }) => windMPerS)).toEqual(forecast.map(({ windMPerS }) => windMPerS))
  })

  it('stays as forecast where the readings lie outside the night', () => {
    // Bedtime and morning both read before arriving: no hour between them is the night's own.
    const odd = nightsOf(at('bedtime', '12:10'), at('morning', '12:20', { meanOutsideC: 30, meanInsideC: 7 }))[0]
    expect(odd?.input.weather).toEqual(inputOf({})?.weather)
  })

  it('arrives with the charge that was read, else as the night says', () => {
    const battery = (...before: readonly Measured[]) => inputOf({}, ...before)?.battery?.arrive01
    expect(battery()).toBe(0.4)
    expect(battery(at('at-the-post', '16:30', { charge01: 0.47 }))).toBe(0.47)
    const said: Trip = {
      ...trip,
      nights: trip.nights.map((night) => ({ ...night, arriveCharge01: 0.52, leisureCharge01: 0.31 })),
      vehicle: {
        ...trip.vehicle,
        leisure: { kind: 'lfp', usableWh: 1000, reserve01: 0.1, chargerW: 200, loadW: 10 },
      },
      measured: [at('morning', '06:00', { meanInsideC: 7 })],
    }
    const [read] = measuredNights(said)
    expect([read?.input.battery?.arrive01, read?.input.leisure?.arrive01]).toEqual([0.52, 0.31])
  })
})

describe('a leg that was read', () => {
  // 100 km at 190 Wh/km in the frost want some 20 to 25 kWh of 74.
  const leg: NonNullable<Night['leg']> = { distanceM: 100_000, fastChargers: [], outsideC: 15 }
  const left = at('morning', '06:30', { charge01: 0.8 })
  const arrived = at('at-the-post', '16:30', { nightId: 'n2', charge01: 0.5 })
  const legsOf = (measured: readonly Measured[], over: Partial<typeof leg> = {}, changed: Partial<Trip> = {}) =>
    measuredLegs({
      ...trip,
      nights: trip.nights.map((night, index) => (index === 0 ? { ...night, leg: { ...leg, ...over } } : night)),
      measured,
      ...changed,
    })

  it('tells by the charge on leaving and on arriving', () => {
    const [one, ...others] = legsOf([left, arrived])
    expect(others).toEqual([])
    expect(one).toMatchObject({ usableWh: 74_000, usedWh: null, from01: 0.8, to01: 0.5 })
    expect(one?.leg).toMatchObject({ distanceM: 100_000, whPerKm: 190, outsideC: 15 })
  })

  it.each([
    ['read on leaving alone', [left]],
    ['read on arriving alone', [arrived]],
    ['that ends with as much as it began', [left, { ...arrived, charge01: 0.8 }]],
    ['that ends with more', [left, { ...arrived, charge01: 0.9 }]],
    ['read at other moments', [{ ...left, moment: 'bedtime' as const }, arrived]],
  ])('tells nothing %s', (_, measured) => {
    expect(legsOf(measured)).toEqual([])
  })

  it('tells nothing where stops were agreed to, or where it could not be driven without one', () => {
    const fastChargers = [{ atM: 50_000, powerW: 50_000 }]
    expect(legsOf([left, arrived], { fastChargers })).toHaveLength(1)
    expect(legsOf([left, arrived], { fastChargers, acceptedStopsM: [] })).toHaveLength(1)
    expect(legsOf([left, arrived], { fastChargers, acceptedStopsM: [50_000] })).toEqual([])
    // 100 km at 190 Wh/km are 19 kWh at the least: more than a fifth of 74.
    expect(
      legsOf([
        { ...left, charge01: 0.2 },
        { ...arrived, charge01: 0.1 },
      ]),
    ).toEqual([])
    expect(
      legsOf([
        { ...left, charge01: 0.5 },
        { ...arrived, charge01: 0.1 },
      ]),
    ).toHaveLength(1)
  })

  it('tells nothing after the last night, without a leg, or without a driving battery', () => {
    const last = trip.nights.map((night, index) => (index === 1 ? { ...night, leg } : night))
    const read = [
      { ...left, nightId: 'n2' },
      { ...arrived, nightId: 'n2' },
    ]
    expect(legsOf(read, {}, { nights: last })).toEqual([])
    expect(legsOf([left, arrived], {}, { nights: trip.nights })).toEqual([])
    const { battery: _battery, ...vehicle } = trip.vehicle
    expect(legsOf([left, arrived], {}, { vehicle })).toEqual([])
  })
})
