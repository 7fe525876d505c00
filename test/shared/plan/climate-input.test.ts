/** Trip and night as the climate engine is asked: what is stated goes in as stated, what is not said gets its own stated value. */
import { describe, expect, it } from 'vitest'
import { cabinDefaults } from '../../../shared/climate/index.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
import type { Hookup, Night, Piece, Trip, Vehicle } from '../../../shared/document/index.ts'
import { nightClock } from '../../../shared/plan/clock.ts'
import { cabinParameters, legParameters, nightInput } from '../../../shared/plan/inputs/climate.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsTrip } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const [night] = trip.nights
const { vehicle } = trip
const { hookup, leg: _leg, ...bare } = night ?? {}
if (night === undefined || hookup === undefined) throw new Error('the trip has a night with a post')

type Changed = {
  readonly night?: Partial<Night>
  readonly hookup?: Partial<Hookup>
  readonly vehicle?: Partial<Vehicle>
  readonly pieces?: Readonly<Record<string, Partial<Piece>>>
  readonly trip?: Partial<Trip>
  readonly carried?: { readonly charge01: number | null; readonly leisure01: number | null }
}

function inputOf(changed: Changed = {}): NightInput {
  const here: Night = { ...night, hookup: { ...hookup, ...changed.hookup }, ...changed.night } as Night
  const asked: Trip = {
    ...trip,
    vehicle: { ...vehicle, ...changed.vehicle },
    kit: { ...trip.kit, pieces: trip.kit.pieces.map((piece) => ({ ...piece, ...changed.pieces?.[piece.id] })) },
    nights: [here, ...trip.nights.slice(1)],
    ...changed.trip,
  }
  return nightInput(asked, here, nightClock(here), changed.carried ?? { charge01: null, leisure01: null })
}

const utc = (iso: string): Utc => (Date.parse(iso) / 1000) as Utc

describe('the night', () => {
  const input = inputOf()

  it('is where and when the trip says', () => {
    // Local time is an hour ahead of UTC; leaving 55 minutes after waking at 05:45.
    expect(input).toMatchObject({
      latitudeDeg: 46.72118,
      longitudeDeg: -9.98812,
      elevationM: 1240,
      arriveUtc: utc('2026-11-13T15:10:00Z'),
      sleepFromUtc: utc('2026-11-13T21:00:00Z'),
      sleepToUtc: utc('2026-11-14T04:45:00Z'),
      departUtc: utc('2026-11-14T05:40:00Z'),
      stepS: 300,
      fault: null,
      bedHeaters: [],
      leisure: null,
      leg: null,
    })
    expect(Object.keys(input)).not.toContain('keepsOnW')
    expect(inputOf({ vehicle: { keepsOnW: 35 } }).keepsOnW).toBe(35)
  })

  it('has weather every five minutes from arriving to leaving, the forecast’s own hours and margin in it', () => {
    expect(input.weather[0]?.atUtc).toBe(input.arriveUtc)
    // 14 hours 30 minutes in steps of five minutes, both ends.
    expect(input.weather).toHaveLength(14.5 * 12 + 1)
    expect(input.weather.at(-1)?.atUtc).toBe(input.departUtc)
    const hours = ['16:00', '20:00', '00:00', '04:00', '08:00'].map((clock) => ({ clock, tempC: 4 }))
    const read = inputOf({ night: { weather: { ...night.weather, hours } } }).weather
    expect(new Set(read.map(({ tempC }) => tempC))).toEqual(new Set([2]))
    expect(new Set(read.map(({ windMPerS }) => windMPerS))).toEqual(new Set([3]))
    expect(new Set(read.map(({ humidity01 }) => humidity01))).toEqual(new Set([0.8]))
    expect(new Set(read.map(({ cloud01 }) => cloud01))).toEqual(new Set([0.2]))
  })

  it('has its sleepers as they are, each under their own bedding', () => {
    expect(input.sleepers).toEqual([
      {
        id: 'ada',
        label: 'Ada',
        heightMm: 1680,
        massG: 62_000,
        sleeps: 'cold',
        bedding: { comfortC: null, coverClo: 0.7, matM2KPerW: 0 },
      },
      {
        id: 'bo',
        label: 'Bo & <i>Zoë</i>',
        heightMm: 1830,
        massG: 81_000,
        sleeps: 'average',
        bedding: { comfortC: null, coverClo: 0.7, matM2KPerW: 0 },
      },
    ])
  })

  it('counts the bedding that is laid and whose it is', () => {
    const pieces = {
      mat: { bedding: { kind: 'mat', matM2KPerW: 0.6 } },
      quilt: { bedding: { kind: 'quilt', clo: 3, forTravellerId: 'bo' } },
      // Rides along but is not chosen for the night.
      clothes: { bedding: { kind: 'blanket', clo: 2 } },
    } as const
    const bedding = (changed: Changed) => inputOf(changed).sleepers.map(({ bedding: under }) => under)
    const fitted = { bed: { ...vehicle.bed, fittedMattressM2KPerW: 0.3 } }
    expect(bedding({ pieces }).map(({ coverClo, matM2KPerW }) => [coverClo, matM2KPerW])).toEqual([
      [0.7, 0.6],
      [3.7, 0.6],
    ])
    expect(bedding({ pieces, vehicle: fitted })[0]?.matM2KPerW).toBeCloseTo(0.9, 9)
    // A pillow covers nobody, whatever it is said to be worth; what is rated gives a rating for the whole.
    const pillow = { quilt: { bedding: { kind: 'pillow', clo: 3 } } } as const
    expect(bedding({ pieces: pillow })[1]).toMatchObject({ coverClo: 0.7, comfortC: null })
    const rated = { quilt: { bedding: { kind: 'bag', comfortC: -3 } } } as const
    expect(bedding({ pieces: rated })[0]?.comfortC).toBeCloseTo(-3, 9)
    const plain = { quilt: { bedding: { kind: 'bag' } } } as const
    expect(bedding({ pieces: plain })[0]).toMatchObject({ coverClo: 0.7, comfortC: null })
  })

  it('knows of covers that ride along, used or not', () => {
    const pieces = { clothes: { purpose: 'window-covers' } } as const
    expect(inputOf().coversOwned).toBe(false)
    expect(inputOf({ pieces }).coversOwned).toBe(true)
    expect(inputOf({ pieces: { clothes: { purpose: 'window-covers', spare: true } } }).coversOwned).toBe(false)
    expect([inputOf().decisions.covers, inputOf({ night: { covers: false } }).decisions.covers]).toEqual([true, false])
  })
})

describe('the cabin', () => {
  const standard = cabinDefaults('estate')
  const cabin = (thermal: Partial<Vehicle['thermal']>) =>
    cabinParameters({ ...vehicle, thermal: { bodyClass: 'estate', ...thermal } })

  it('is that of its body class where nothing else was measured', () => {
    expect(cabin({})).toEqual({ ...standard, lossScale: 1 })
  })

  it('takes each of its own measures', () => {
    const own = {
      airVolumeM3: 4.1,
      lossBareWPerK: 61,
      lossCoveredWPerK: 44,
      windFactorPerMPerS: 0.03,
      heatCapacityKJPerK: 120,
      freshAirM3PerH: 35,
      lossScale: 1.3,
    }
    expect(cabin(own)).toEqual({ ...standard, ...own })
  })

  it('scales its panes to the glass that was measured', () => {
    const wholeM2 = standard.panes.reduce((sum, { areaM2 }) => sum + areaM2, 0)
    const panes = cabin({ glassAreaM2: wholeM2 / 2 }).panes
    expect(panes.map(({ areaM2 }) => areaM2)).toEqual(standard.panes.map(({ areaM2 }) => areaM2 / 2))
    expect(panes.map(({ id, skyView01 }) => [id, skyView01])).toEqual(
      standard.panes.map(({ id, skyView01 }) => [id, skyView01]),
    )
  })
})

describe('the heater', () => {
  it('is as stated, and has no limits that nobody stated', () => {
    expect(inputOf().heater).toEqual({
      kind: 'heat-pump',
      maxHeatW: 4000,
      minHeatW: 0,
      cop: [],
      canCool: true,
      awakeLoadW: 200,
      mayRunAllNight: true,
      switchesOffAfterS: null,
      switchesOffBelow01: null,
      lowerLimitC: null,
    })
    const stated = {
      kind: 'resistance',
      maxHeatW: 1500,
      minHeatW: 400,
      cop: [{ outsideC: 0, value: 1 }],
      canCool: false,
      awakeLoadW: 90,
      mayRunAllNight: false,
      switchesOffAfterS: 7200,
      switchesOffBelow01: 0.2,
      lowerLimitC: -15,
    } as const
    expect(inputOf({ vehicle: { heater: stated } }).heater).toEqual(stated)
  })

  it('is helped by what heats the bed', () => {
    const pad = { id: 'pad', name: 'Foot pad', kind: 'foot-pad', powerW: 40 } as const
    expect(inputOf({ vehicle: { bedHeaters: [pad] } }).bedHeaters).toEqual([
      { id: 'pad', kind: 'foot-pad', powerW: 40 },
    ])
  })
})

describe('the supply', () => {
  const supplyOf = (changed: Changed) => inputOf(changed).supply

  it('is none without a post', () => {
    const here = bare as Night
    const without = { ...trip, nights: [here] }
    expect(nightInput(without, here, nightClock(here), { charge01: null, leisure01: null }).supply).toBeNull()
  })

  it('is as stated, and has no limits that nobody stated', () => {
    expect(supplyOf({})).toEqual({
      connector: 'iec-60309-16-blue',
      nominalV: 230,
      ratedV: 230,
      breakerA: 16,
      siteLimitA: null,
      leadLimitA: null,
      adapterLimitA: null,
      usesAdapter: false,
      usesExtension: false,
      leads: [],
      chargingUnitLimitA: null,
      heldA: null,
      onboardMaximumA: 16,
      minimumA: 6,
      readings: [],
      earthOk: 'yes',
      polarityReversed: 'no',
      otherLoadW: 0,
      plugInUtc: utc('2026-11-13T16:00:00Z'),
      unplugUtc: utc('2026-11-14T05:40:00Z'),
      pricePerKWh: 0.6,
      fixedPrice: 0,
      chargeAllowed: true,
    })
  })

  it('keeps every limit that was stated', () => {
    const limits = { siteLimitA: 10, leadLimitA: 11, adapterLimitA: 12, chargingUnitLimitA: 13, heldA: 9 }
    expect(supplyOf({ hookup: { ...limits, adapterPieceId: 'adapter', extensionPieceId: 'tester' } })).toMatchObject({
      ...limits,
      usesAdapter: true,
      usesExtension: true,
    })
    const { charging: _charging, ...plain } = vehicle
    expect(supplyOf({ trip: { vehicle: plain } })).toMatchObject({ onboardMaximumA: null, minimumA: 0 })
  })

  it('adds what was read on the night to what the hookup has', () => {
    const read = { nightId: 'n1', moment: 'at-the-post', clock: '17:00' } as const
    const measured: Trip['measured'] = [
      { ...read, volts: 219, currentA: 11 },
      { ...read, volts: 220 },
      { ...read, nightId: 'n2', volts: 200, currentA: 5 },
    ]
    expect(supplyOf({ hookup: { readings: [{ currentA: 4, volts: 228 }] }, trip: { measured } })?.readings).toEqual([
      { currentA: 4, volts: 228 },
      { currentA: 11, volts: 219 },
    ])
  })

  it('has no earth where the connector has none, whatever was said', () => {
    expect(supplyOf({ hookup: { connector: 'nema-10-30', earthOk: 'yes' } })?.earthOk).toBe('no')
    expect(supplyOf({ hookup: { earthOk: 'not-known' } })?.earthOk).toBe('not-known')
  })

  it('ends with leaving where unplugging is planned for later', () => {
    expect(supplyOf({ hookup: { unplug: '09:00' } })?.unplugUtc).toBe(utc('2026-11-14T05:40:00Z'))
    expect(supplyOf({ hookup: { unplug: '06:10' } })?.unplugUtc).toBe(utc('2026-11-14T05:10:00Z'))
  })

  it('costs by energy or by night, and charges unless that is forbidden', () => {
    const price = (tariff: Hookup['tariff']) => {
      const { pricePerKWh, fixedPrice } = supplyOf({ hookup: { tariff } }) ?? {}
      return [pricePerKWh, fixedPrice]
    }
    expect(price({ kind: 'per-night', price: 8 })).toEqual([null, 8])
    expect(price({ kind: 'included' })).toEqual([null, 0])
    expect(price({ kind: 'not-known' })).toEqual([null, 0])
    const charge = (chargeFromPost: Night['rules']['chargeFromPost']) =>
      supplyOf({ night: { rules: { ...night.rules, chargeFromPost } } })?.chargeAllowed
    expect([charge('yes'), charge('no'), charge('not-known')]).toEqual([true, false, true])
  })

  it('stands on 240 or 208 V as the two-pole post is told, and rates appliances as stated', () => {
    const twoPoles = (over: Partial<Hookup>) =>
      supplyOf({ hookup: { connector: 'nema-14-50', nominalV: 230, ...over } })
    expect(twoPoles({})).toMatchObject({ nominalV: 230, ratedV: 230 })
    expect(twoPoles({ lineSystem: 'split-phase-240' })).toMatchObject({ nominalV: 240, ratedV: 230 })
    expect(twoPoles({ lineSystem: 'two-of-three-208' })?.nominalV).toBe(208)
    expect(twoPoles({ lineSystem: 'not-known' })?.nominalV).toBe(230)
    expect(supplyOf({ hookup: { lineSystem: 'two-of-three-208' } })?.nominalV).toBe(230)
    // 208 / 120 = 1.73: two phases of three, read; one reading alone tells nothing.
    const said = { lineSystem: 'split-phase-240' } as const
    expect(twoPoles({ ...said, lineToLineV: 208, lineToNeutralV: 120 })?.nominalV).toBe(208)
    expect(twoPoles({ ...said, lineToLineV: 208 })?.nominalV).toBe(240)
    expect(twoPoles({ ...said, lineToNeutralV: 120 })?.nominalV).toBe(240)
    expect(twoPoles({ ...said, lineToLineV: 208, lineToNeutralV: 0 })?.nominalV).toBe(240)
  })

  it('keeps to what is printed on the lead, the extension and the adapter that are used, where that is less', () => {
    const printed = (purpose: Piece['purpose'], electrical: Piece['electrical']): Partial<Piece> => ({
      purpose,
      ...(electrical === undefined ? {} : { electrical }),
    })
    const limits = (pieces: Changed['pieces'], over: Partial<Hookup> = {}) => {
      const { leadLimitA, adapterLimitA } = supplyOf({ pieces: pieces ?? {}, hookup: over }) ?? {}
      return [leadLimitA, adapterLimitA]
    }
    const lead = printed('lead', { limitA: 16, lengthMm: 25_000 })
    const adapter = printed('adapter', { limitA: 10 })
    const thin = printed('lead', { limitA: 8, lengthMm: 10_000 })
    expect(limits({ lead })).toEqual([16, null])
    expect(limits({ lead, tester: adapter })).toEqual([16, null])
    expect(limits({ lead, tester: adapter }, { adapterPieceId: 'tester' })).toEqual([16, 10])
    expect(limits({ lead, tester: adapter }, { adapterPieceId: 'tester', adapterLimitA: 8 })).toEqual([16, 8])
    // Both carry the same current: the thinner one rules. Without being named, it is not used.
    expect(limits({ lead, tester: thin }, { extensionPieceId: 'tester' })).toEqual([8, null])
    expect(limits({ lead, tester: thin })).toEqual([16, null])
    expect(limits({ lead }, { leadLimitA: 13 })).toEqual([13, null])
    // A lead whose plug does not go in lies in the load unused; a charging point has its own cable.
    const elsewhere = printed('lead', { limitA: 8, fits: ['cee-7-3-schuko'] })
    expect(limits({ lead: elsewhere })).toEqual([null, null])
    expect(limits({ lead: elsewhere, tester: adapter }, { adapterPieceId: 'tester' })).toEqual([8, 10])
    expect(limits({ lead }, { connector: 'iec-62196-type-2' })).toEqual([null, null])
    // Nothing printed: 1 mm2 carries 10 A, 1.5 mm2 16 A (BS 7671 table 4F3A).
    expect(limits({ lead: printed('lead', { lengthMm: 25_000, areaMm2: 1 }) })).toEqual([10, null])
    expect(limits({ lead: printed('lead', { limitA: 6, areaMm2: 1.5 }) })).toEqual([6, null])
    expect(limits({ lead: printed('lead', { lengthMm: 25_000 }) })).toEqual([null, null])
  })

  it('runs through the longest lead whose copper is known, or the charging unit’s own, and through the extension', () => {
    const copper = (purpose: Piece['purpose'], lengthMm?: number, areaMm2?: number): Partial<Piece> => ({
      purpose,
      electrical: { ...(lengthMm === undefined ? {} : { lengthMm }), ...(areaMm2 === undefined ? {} : { areaMm2 }) },
    })
    const leads = (pieces: Changed['pieces'], extensionPieceId?: string) =>
      supplyOf({ pieces: pieces ?? {}, hookup: extensionPieceId === undefined ? {} : { extensionPieceId } })?.leads
    const long = { lengthMm: 25_000, areaMm2: 2.5 }
    const short = { lengthMm: 10_000, areaMm2: 1.5 }
    const lead = copper('lead', 25_000, 2.5)
    const other = copper('lead', 10_000, 1.5)
    expect(leads({ tester: other, lead })).toEqual([long])
    expect(leads({ lead, water: other })).toEqual([long])
    expect(leads({ tester: copper('lead', 40_000), lead, water: copper('lead', undefined, 2.5) })).toEqual([long])
    expect(leads({ lead: copper('charging-unit', 25_000, 2.5) })).toEqual([long])
    expect(leads({ lead: copper('charging-unit', 25_000, 2.5), tester: other })).toEqual([short])
    expect(leads({ lead: copper('other', 25_000, 2.5) })).toEqual([])
    expect(leads({ lead, tester: other }, 'tester')).toEqual([long, short])
    expect(leads({ lead, tester: other }, 'lead')).toEqual([short, long])
    expect(leads({ lead: { ...lead, spare: true }, tester: other })).toEqual([short])
  })
})

describe('the batteries', () => {
  it('are none where the vehicle has none', () => {
    const { battery: _battery, ...plain } = vehicle
    expect(inputOf({ trip: { vehicle: plain } })).toMatchObject({ battery: null, decisions: { chargeLimit01: 1 } })
  })

  it('drive with what is stated; what is not stated has its usual value', () => {
    expect(inputOf().battery).toEqual({
      usableWh: 74_000,
      reserve01: 0.1,
      chargeLimit01: 0.9,
      efficiency01: 0.9,
      overheadW: 250,
      coldOverheadW: 0,
      arrive01: 0.4,
      fastMaxW: 100_000,
    })
    const { charging: _charging, ...plain } = vehicle
    expect(inputOf({ trip: { vehicle: plain } }).battery).toMatchObject({ efficiency01: 0.88, overheadW: 0 })
    const battery = { usableWh: 60_000, reserve01: 0.15, chargeLimit01: 0.8, coldOverheadW: 500 }
    const charging = { efficiency01: 0.85, overheadW: 300, minimumA: 6, maximumA: 32, fastMaxW: 150_000 }
    expect(inputOf({ vehicle: { battery, charging } }).battery).toEqual({
      ...battery,
      efficiency01: 0.85,
      overheadW: 300,
      arrive01: 0.4,
      fastMaxW: 150_000,
    })
  })

  it('may be charged further than usual on a night that asks for it, never less far', () => {
    const limits = (chargeLimit01: number) => {
      const input = inputOf({ night: { heating: { ...night.heating, chargeLimit01 } } })
      return [input.battery?.chargeLimit01, input.decisions.chargeLimit01]
    }
    expect(limits(1)).toEqual([1, 1])
    expect(limits(0.7)).toEqual([0.9, 0.7])
    expect(inputOf().decisions.chargeLimit01).toBe(0.9)
  })

  it('arrive with what was carried over, else as the night says', () => {
    const charges = (changed: Changed) => {
      const leisure = { kind: 'lead', usableWh: 900, reserve01: 0.5, chargerW: 120, loadW: 15 } as const
      const input = inputOf({ vehicle: { leisure }, ...changed })
      return [input.battery?.arrive01, input.leisure?.arrive01]
    }
    const said = { arriveCharge01: 0.55, leisureCharge01: 0.65 }
    expect(charges({})).toEqual([0.4, 1])
    expect(charges({ night: said })).toEqual([0.55, 0.65])
    expect(charges({ night: said, carried: { charge01: 0.3, leisure01: 0.2 } })).toEqual([0.3, 0.2])
    expect(charges({ night: said, carried: { charge01: 0, leisure01: 0 } })).toEqual([0, 0])
  })

  it('live with what is stated', () => {
    const leisure = { kind: 'lfp', usableWh: 1200, reserve01: 0.1, chargerW: 240, loadW: 20 } as const
    expect(inputOf({ vehicle: { leisure } }).leisure).toEqual({ ...leisure, arrive01: 1, inverterMaxW: 0 })
    expect(inputOf({ vehicle: { leisure: { ...leisure, inverterMaxW: 2000 } } }).leisure?.inverterMaxW).toBe(2000)
  })
})

describe('the leg', () => {
  const leg: NonNullable<Night['leg']> = { distanceM: 140_000, fastChargers: [] }
  const legOf = (over: Partial<typeof leg>, changed: Partial<Vehicle> = {}) =>
    legParameters({ ...trip, vehicle: { ...vehicle, ...changed } }, { ...night, leg: { ...leg, ...over } })
  const loadG = trip.kit.pieces.reduce((sum, { massG }) => sum + massG, 0)

  it('is driven as the vehicle drives, in the night’s cold, with the load on board', () => {
    expect(legOf({})).toEqual({
      distanceM: 140_000,
      whPerKm: 190,
      speedKmPerH: null,
      climbM: 0,
      // -9 less a margin of 2.
      outsideC: -11,
      reserve01: 0.1,
      massG: 2_050_000 + loadG,
      dragAreaM2: null,
      rollingCoefficient: null,
      auxiliaryW: null,
      fastChargers: [],
    })
    const pieces = trip.kit.pieces.map((piece) => ({ ...piece, spare: piece.id === 'lead' }))
    expect(legParameters({ ...trip, kit: { ...trip.kit, pieces } }, { ...night, leg })?.massG).toBe(
      2_050_000 + loadG - 6500,
    )
  })

  it('is what it states itself', () => {
    const road = { whPerKm: 190, dragAreaM2: 0.7, rollingCoefficient: 0.01, auxiliaryW: 800 }
    const own = { speedKmPerH: 90, climbM: 300, outsideC: -4, reserve01: 0.2 }
    expect(legOf(own, { consumption: road })).toMatchObject({
      ...own,
      whPerKm: 190,
      dragAreaM2: 0.7,
      rollingCoefficient: 0.01,
      auxiliaryW: 800,
    })
    // A consumption that is stated for the leg rules over the model of the road.
    expect(legOf({ whPerKm: 230 }, { consumption: road })).toMatchObject({
      whPerKm: 230,
      dragAreaM2: null,
      rollingCoefficient: null,
      auxiliaryW: 800,
    })
  })

  it('may stop at any charger until stops are agreed to, then at those', () => {
    const fastChargers = [
      { atM: 40_000, powerW: 50_000, name: 'Mill' },
      { atM: 90_000, powerW: 150_000 },
    ]
    const mill = { atM: 40_000, powerW: 50_000, name: 'Mill' }
    const second = { atM: 90_000, powerW: 150_000, name: null }
    expect(legOf({ fastChargers })?.fastChargers).toEqual([mill, second])
    expect(legOf({ fastChargers, acceptedStopsM: [] })?.fastChargers).toEqual([mill, second])
    expect(legOf({ fastChargers, acceptedStopsM: [90_000] })?.fastChargers).toEqual([second])
  })

  it('is none of ours without a leg or without a driving battery', () => {
    expect(legParameters(trip, night)).toBeNull()
    const { battery: _battery, ...plain } = vehicle
    expect(legParameters({ ...trip, vehicle: plain }, { ...night, leg })).toBeNull()
    expect(inputOf({ night: { leg } }).leg).toEqual(legOf({}))
  })
})

describe('what is decided', () => {
  it('are set-points by the clock, those before arriving from arriving on', () => {
    const heating: Night['heating'] = {
      setPoints: [
        { from: '15:00', tempC: 18 },
        { from: '22:30', tempC: 9 },
        { from: '05:00', tempC: null },
      ],
      bedHeaterIds: ['pad'],
      currentA: 10,
    }
    expect(inputOf({ night: { heating } }).decisions).toEqual({
      setPoints: [
        { fromUtc: utc('2026-11-13T15:10:00Z'), tempC: 18 },
        { fromUtc: utc('2026-11-13T21:30:00Z'), tempC: 9 },
        { fromUtc: utc('2026-11-14T04:00:00Z'), tempC: null },
      ],
      bedHeaterIds: ['pad'],
      currentA: 10,
      chargeLimit01: 0.9,
      windowGapMm: 15,
      windowSides: 2,
      covers: true,
    })
    expect(inputOf().decisions).toMatchObject({ setPoints: [], bedHeaterIds: [], currentA: null })
  })
})
