/** The facts that checklist rules read, worked out by hand from a small trip and a plan written by hand; then one thing changed at a time. */
import { describe, expect, it } from 'vitest'
import { PURPOSE_NAMES } from '../../../shared/checklist/index.ts'
import type { ChecklistFacts } from '../../../shared/checklist/index.ts'
import type { Hookup, Night, Piece, Trip, Vehicle } from '../../../shared/document/index.ts'
import { nightFacts } from '../../../shared/plan/inputs/facts.ts'
import type { NightPlan, NightStores, Plan } from '../../../shared/plan/types.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

type Changed = {
  readonly night?: Partial<Night>
  readonly hookup?: Partial<Hookup>
  readonly vehicle?: Partial<Vehicle>
  readonly pieces?: Readonly<Record<string, Partial<Piece>>>
  readonly trip?: Partial<Trip>
  readonly plan?: Partial<NightPlan>
  readonly outcome?: Partial<NightPlan['outcome']>
  readonly supply?: Partial<NonNullable<NightPlan['outcome']['supply']>>
  readonly packing?: Partial<Plan['packing']>
  readonly stores?: readonly NightStores[]
  readonly at?: number
}

/** The trip with the changed night in the place asked for: the first where none is. */
function tripWith({ night = {}, hookup, vehicle = {}, pieces = {}, trip = {}, at = 0 }: Changed): Trip {
  const base = cardsTrip()
  return {
    ...base,
    vehicle: { ...base.vehicle, ...vehicle },
    kit: { ...base.kit, pieces: base.kit.pieces.map((piece) => ({ ...piece, ...pieces[piece.id] })) },
    nights: base.nights.map((one, index) =>
      index === at
        ? {
            ...one,
            ...(hookup === undefined || one.hookup === undefined ? {} : { hookup: { ...one.hookup, ...hookup } }),
            ...night,
          }
        : one,
    ),
    ...trip,
  }
}

function factsOf(changed: Changed = {}): ChecklistFacts {
  const { plan = {}, outcome = {}, supply, packing = {}, stores = [], at = 0 } = changed
  const trip = tripWith(changed)
  const base = cardsPlan(trip)
  const nights = base.nights.map((one, index): NightPlan =>
    index === at
      ? {
          ...one,
          outcome: {
            ...one.outcome,
            ...(supply === undefined || one.outcome.supply === null
              ? {}
              : { supply: { ...one.outcome.supply, ...supply } }),
            ...outcome,
          },
          ...plan,
        }
      : one,
  )
  return nightFacts(trip, { ...base.packing, ...packing }, nights, stores, at)
}

const [firstNight] = cardsTrip().nights
const [firstPlan] = cardsPlan().nights
const hookupOf = firstNight?.hookup
if (firstNight === undefined || firstPlan === undefined || hookupOf === undefined)
  throw new Error('the trip has a night with a post')

describe('facts of the trip', () => {
  it('count the nights and people, and tell the coldest of all nights', () => {
    expect(factsOf({ outcome: { coldestOutsideC: -12.5 }, at: 1 }).trip).toEqual({
      nightNumber: 2,
      nightCount: 2,
      firstNight: false,
      lastNight: true,
      travellers: 2,
      pets: false,
      adapters: [],
      nextAdapters: [],
      lowestC: -12.5,
    })
    expect(factsOf().trip).toMatchObject({ nightNumber: 1, firstNight: true, lastNight: false, lowestC: -10 })
  })

  it('know of pets by a piece that rides along for one', () => {
    expect(factsOf({ pieces: { clothes: { purpose: 'pet' } } }).trip.pets).toBe(true)
    expect(factsOf({ pieces: { clothes: { purpose: 'pet', spare: true } } }).trip.pets).toBe(false)
  })

  it('name what is on board by its purpose', () => {
    const none = Object.fromEntries(PURPOSE_NAMES.map((purpose) => [purpose, false]))
    expect(factsOf().onBoard).toEqual({ ...none, other: true })
    const pieces = { stove: { purpose: 'stove' }, boots: { purpose: 'shovel' } } as const
    expect(factsOf({ pieces }).onBoard).toEqual({ ...none, other: true, stove: true, shovel: true })
  })

  it('price the night in the trip’s own currency', () => {
    expect(factsOf({ plan: { cost: 12.5 } }).money).toEqual({ nightCost: 12.5, currency: 'EUR' })
  })
})

describe('facts of the vehicle', () => {
  it('are its kinds and what its limits leave', () => {
    expect(factsOf().vehicle).toEqual({
      drive: 'electric',
      heaterKind: 'heat-pump',
      heaterMayRunAllNight: true,
      heaterStopsAfterH: null,
      payloadMarginG: 394_000 - 45_700,
      payloadOverG: 0,
      frontAxleMarginG: 1_280_000 - 1_058_000,
      rearAxleMarginG: 1_400_000 - 1_037_000,
      roofMarginG: null,
      roofLoadG: 0,
      leisureKind: null,
      bedPrepare: [{ id: 'prepare-1', name: 'Slide the left seat forward' }],
      keepClear: [{ id: 'clear-1', name: 'Driver seat' }],
      exitDoor: null,
    })
  })

  it('say by how much the payload is passed', () => {
    const { mass } = cardsPlan().packing
    const { payloadMarginG, payloadOverG } = factsOf({ packing: { mass: { ...mass, loadG: 400_500 } } }).vehicle
    expect([payloadMarginG, payloadOverG]).toEqual([-6500, 6500])
  })

  it('have no margin of an axle that is not weighed or has no limit', () => {
    const { masses } = cardsTrip().vehicle
    const { frontAxle: _front, ...unweighed } = masses
    const { mass } = cardsPlan().packing
    expect(factsOf({ vehicle: { masses: unweighed } }).vehicle).toMatchObject({
      frontAxleMarginG: null,
      rearAxleMarginG: 363_000,
    })
    expect(factsOf({ packing: { mass: { ...mass, rearAxleG: null } } }).vehicle).toMatchObject({
      frontAxleMarginG: 222_000,
      rearAxleMarginG: null,
    })
  })

  it('take off the roof’s limit what is fitted there and what is loaded', () => {
    const { masses } = cardsTrip().vehicle
    const { mass } = cardsPlan().packing
    const packing = { mass: { ...mass, roofG: 20_000 } }
    const roof = (over: Partial<Vehicle['masses']>) =>
      factsOf({ packing, vehicle: { masses: { ...masses, ...over } } }).vehicle
    expect(roof({ roofLimitG: 75_000, roofFittedG: 12_000 })).toMatchObject({
      roofMarginG: 43_000,
      roofLoadG: 20_000,
    })
    expect(roof({ roofLimitG: 75_000 }).roofMarginG).toBe(55_000)
  })

  it('tell the heater’s hours, the leisure battery, the way out, and each thing to prepare', () => {
    const { heater, bed } = cardsTrip().vehicle
    const found = factsOf({
      vehicle: {
        heater: { ...heater, kind: 'resistance', mayRunAllNight: false, switchesOffAfterS: 9000 },
        leisure: { kind: 'lfp', usableWh: 1000, reserve01: 0.2, chargerW: 200, loadW: 20 },
        bed: { ...bed, prepare: ['Fold', 'Bridge'], keepClear: ['Pedals', 'Door'], exitDoor: 'tailgate' },
      },
    }).vehicle
    expect(found).toMatchObject({
      heaterKind: 'resistance',
      heaterMayRunAllNight: false,
      heaterStopsAfterH: 2.5,
      leisureKind: 'lfp',
      exitDoor: 'tailgate',
      bedPrepare: [
        { id: 'prepare-1', name: 'Fold' },
        { id: 'prepare-2', name: 'Bridge' },
      ],
    })
    // One thing to keep clear of several places: one line to tick.
    expect(found.keepClear.map(({ name }) => name)).toEqual(['Pedals, Door'])
  })
})

describe('facts of the site', () => {
  it('are its rules and what is known of it', () => {
    expect(factsOf().site).toEqual({
      name: 'Upper meadow',
      sleepAllowed: 'yes',
      chargeAllowed: 'yes',
      fireAllowed: 'no',
      outsideStorage: true,
      tentOrAwning: false,
      foodLockerRequired: false,
      foodLockerPresent: false,
      mustStandOnHardPad: false,
      phone: '+00 555 0100',
      gateCode: '4711#',
      gateCloses: false,
      indoorFallback: 'Bunk room above the dairy, key at the office',
      nearestCharger: 'Valley car park, 12 km down, 50 kW',
      coverageSheetGaps: false,
      coordinates: '46.7212, -9.9881',
      toToiletsM: 210,
    })
  })

  it.each(['phone', 'indoorFallback', 'nearestCharger'] as const)(
    'have a gap on the sheet without the site’s %s',
    (key) => {
      const site = Object.fromEntries(Object.entries(firstNight.site).filter(([name]) => name !== key))
      const found = factsOf({ night: { site: site as Night['site'] } }).site
      expect(found.coverageSheetGaps).toBe(true)
      expect(found[key]).toBeNull()
    },
  )

  it('need no gate code', () => {
    const { gateCode: _code, ...site } = firstNight.site
    expect(factsOf({ night: { site } }).site).toMatchObject({ gateCode: null, coverageSheetGaps: false })
  })

  it('know a food locker that the site states or the vehicle’s drawing has', () => {
    const { rules } = firstNight
    const stated = factsOf({ night: { rules: { ...rules, foodLockerRequired: true, foodLockerMm: [900, 600, 500] } } })
    expect(stated.site).toMatchObject({ foodLockerRequired: true, foodLockerPresent: true })
    const { bays } = cardsTrip().vehicle
    const drawn = bays.map((bay, index) => (index === 0 ? { ...bay, kind: 'locker' as const } : bay))
    expect(factsOf({ vehicle: { bays: drawn } }).site.foodLockerPresent).toBe(true)
  })

  it('tell a gate that closes', () => {
    expect(factsOf({ night: { gateClosed: { from: '22:00', to: '06:00' } } }).site.gateCloses).toBe(true)
  })
})

describe('facts of the pitch', () => {
  it('are its ground, its slope and how to stand', () => {
    expect(factsOf().pitch).toEqual({
      surface: 'gravel',
      soft: false,
      slope01: 0.03,
      rampMm: 88,
      rampUnder: 'rear',
      headDownhill: false,
      park: 'nose-out',
    })
  })

  it.each([
    ['Wet grass', true],
    ['mud', true],
    ['Sand', true],
    ['packed snow', true],
    ['soft', true],
    ['meadow', true],
    ['Earth', true],
    ['Wiese', true],
    ['Schlamm', true],
    ['Schnee', true],
    ['asphalt', false],
    ['concrete pad', false],
  ])('ground of %s', (surface, soft) => {
    expect(factsOf({ night: { pitch: { ...firstNight.pitch, surface } } }).pitch).toMatchObject({ surface, soft })
  })

  it.each([
    [false, true],
    [null, null],
  ])('head uphill %s', (headUphill, headDownhill) => {
    expect(factsOf({ plan: { pitch: { ...firstPlan.pitch, headUphill } } }).pitch.headDownhill).toBe(headDownhill)
  })
})

describe('facts of target, weather and air', () => {
  it('have no target where none is named', () => {
    expect(factsOf().target).toEqual({ present: false, name: null, driveMin: 0, walkMin: 0 })
    const target = { name: 'Hide', minutesBeforeSunrise: 20, driveM: 4000, driveMin: 7, walkMin: 12 }
    expect(factsOf({ night: { target } }).target).toEqual({ present: true, name: 'Hide', driveMin: 7, walkMin: 12 })
  })

  it('take the lowest outside from the night as reckoned and the rest from the forecast', () => {
    const weather = { ...firstNight.weather, snowMm: 40, rainMm: 3 }
    expect(factsOf({ night: { weather } }).weather).toEqual({
      lowC: -10,
      highC: 3,
      windMPerS: 3,
      humidity01: 0.8,
      snowMm: 40,
      rainMm: 3,
    })
  })

  it('round what is breathed to whole parts', () => {
    expect(factsOf({ outcome: { co2MaxPpm: 1419.6 } }).air).toEqual({
      covers: true,
      windowGapMm: 15,
      windowSides: 2,
      co2MaxPpm: 1420,
      condensateG: 120,
      frostG: 40,
    })
  })
})

describe('facts of the post', () => {
  it('are what it is, what it carries, and what was read', () => {
    expect(factsOf().hookup).toEqual({
      present: true,
      connector: 'iec-60309-16-blue',
      domesticSocket: false,
      roundPin: true,
      tt30: false,
      splitPhase: false,
      chargingPoint: false,
      nominalV: 230,
      breakerA: 16,
      siteLimitA: null,
      usableA: 12.8,
      limitedBy: 'breaker',
      voltsAtLoad: 222,
      stepDownV: 215,
      stopV: 207,
      sag01: 0.038,
      wiringHeatW: 66,
      belowMinimum: false,
      minimumA: 6,
      measured: false,
      earth: 'yes',
      polarityReversed: 'no',
      resetReachable: 'yes',
      trippedBefore: false,
      heldA: null,
      otherLoadW: 0,
      // 2840 W and a kettle of 1000 W from 231 V behind 0.4 ohm: (231 - sqrt(231^2 - 4 x 0.4 x 3840)) / 0.8 = 17.1 A, over 12.8.
      twoLoadsTooMuch: true,
      adapterNeeded: false,
      adapterName: null,
      adapterOnBoard: false,
      extensionNeeded: false,
      extensionName: null,
      extensionOnBoard: false,
      leadName: null,
      cableRunMm: 9000,
      leadReaches: true,
      meteredPerKWh: true,
      tariffKnown: true,
    })
  })

  it('are nothing where there is no post', () => {
    const trip = tripWith({})
    const base = cardsPlan(trip)
    const bare = { ...trip, nights: trip.nights.map(({ hookup: _post, ...night }) => night) }
    const nights = base.nights.map((one) => ({
      ...one,
      input: { ...one.input, supply: null },
      outcome: { ...one.outcome, supply: null },
    }))
    expect(nightFacts(bare, base.packing, nights, [], 0).hookup).toMatchObject({
      present: false,
      connector: null,
      domesticSocket: false,
      roundPin: false,
      tt30: false,
      splitPhase: false,
      chargingPoint: false,
      nominalV: null,
      breakerA: null,
      siteLimitA: null,
      usableA: null,
      limitedBy: null,
      voltsAtLoad: null,
      stepDownV: null,
      stopV: null,
      sag01: null,
      wiringHeatW: null,
      belowMinimum: false,
      minimumA: null,
      measured: false,
      earth: 'not-known',
      polarityReversed: 'not-known',
      resetReachable: 'not-known',
      trippedBefore: false,
      heldA: null,
      otherLoadW: 0,
      twoLoadsTooMuch: false,
      adapterNeeded: false,
      cableRunMm: null,
      meteredPerKWh: false,
      tariffKnown: false,
    })
  })

  it.each([
    ['nema-5-15', { domesticSocket: true }],
    ['nema-5-20', { domesticSocket: true }],
    ['cee-7-3-schuko', { domesticSocket: true }],
    ['cee-7-5-french', { domesticSocket: true }],
    ['bs-1363', { domesticSocket: true }],
    ['as-nzs-3112', { domesticSocket: true }],
    ['nema-tt-30', { tt30: true }],
    ['nema-14-50', { splitPhase: true }],
    ['iec-60309-32-red', { roundPin: true }],
    ['iec-62196-type-2', { chargingPoint: true }],
    ['other', {}],
  ] as const)('know the kind of %s', (connector, kind) => {
    const { domesticSocket, roundPin, tt30, splitPhase, chargingPoint } = factsOf({ hookup: { connector } }).hookup
    expect({ domesticSocket, roundPin, tt30, splitPhase, chargingPoint }).toEqual({
      domesticSocket: false,
      roundPin: false,
      tt30: false,
      splitPhase: false,
      chargingPoint: false,
      ...kind,
    })
  })

  it('repeat what the traveller has read, held and asked', () => {
    const found = factsOf({
      hookup: {
        siteLimitA: 10,
        heldA: 24,
        otherLoadW: 300,
        readings: [{ currentA: 8, volts: 225 }],
        polarityReversed: 'yes',
        resetReachable: 'no',
        tariff: { kind: 'per-night', price: 4 },
      },
      supply: { voltsAtLoad: 221.6, heatInWiringW: 65.5, belowMinimum: true },
    }).hookup
    expect(found).toMatchObject({
      siteLimitA: 10,
      trippedBefore: true,
      heldA: 24,
      otherLoadW: 300,
      measured: true,
      polarityReversed: 'yes',
      resetReachable: 'no',
      meteredPerKWh: false,
      tariffKnown: true,
      voltsAtLoad: 222,
      wiringHeatW: 66,
      belowMinimum: true,
    })
    expect(factsOf({ hookup: { tariff: { kind: 'not-known' } } }).hookup).toMatchObject({
      meteredPerKWh: false,
      tariffKnown: false,
    })
  })

  // Currents of two loads from 231 V behind 0.4 ohm: 3840 W 17.1 A, 4840 W 21.8 A (see the sum above).
  it.each([
    [20, 0, false],
    [17, 0, true],
    [17.2, 0, false],
    [20, 2000, true],
    [22, 2000, false],
    // Less than a kettle counts as a kettle.
    [17, 500, true],
  ])('with %d A and another load of %d W', (usableA, otherLoadW, twoLoadsTooMuch) => {
    const { supply } = firstPlan.input
    if (supply === null) throw new Error('the plan has a supply')
    const input = { ...firstPlan.input, supply: { ...supply, otherLoadW } }
    expect(factsOf({ plan: { input }, supply: { usableA } }).hookup.twoLoadsTooMuch).toBe(twoLoadsTooMuch)
  })

  it('name the lead, and the extension that the night plans with', () => {
    const hookup = { extensionPieceId: 'detector' }
    expect(factsOf({ hookup, pieces: { lead: { purpose: 'lead' } } }).hookup).toMatchObject({
      leadName: 'Hookup lead, 25 m',
      extensionNeeded: true,
      extensionName: 'Bat detectors',
      extensionOnBoard: true,
    })
    expect(factsOf({ hookup, pieces: { detector: { spare: true } } }).hookup).toMatchObject({
      extensionNeeded: true,
      extensionOnBoard: false,
    })
  })
})

describe('the adapter of a night', () => {
  const connector = 'iec-60309-16-blue'
  const needOf = (changed: Changed) => factsOf(changed).trip.adapters
  const need = (over: object) => ({
    nightId: 'n1',
    nightNumber: 1,
    siteName: 'Upper meadow',
    connector,
    onBoard: true,
    id: 'adapter',
    name: 'Adapter, blue 16 A',
    ...over,
  })
  const adapterPieceId = 'adapter'

  it('is the one that the night names, on board or not', () => {
    expect(needOf({ hookup: { adapterPieceId } })).toEqual([need({})])
    expect(needOf({ hookup: { adapterPieceId }, pieces: { adapter: { spare: true } } })).toEqual([
      need({ onBoard: false }),
    ])
    expect(needOf({ hookup: { adapterPieceId: 'gone' } })).toEqual([
      need({ id: connector, name: connector, onBoard: false }),
    ])
  })

  it('is told of the night itself, and of the next on the night before', () => {
    const first = factsOf({ hookup: { adapterPieceId } })
    expect(first.hookup).toMatchObject({
      adapterNeeded: true,
      adapterName: 'Adapter, blue 16 A',
      adapterOnBoard: true,
    })
    expect(first.trip.nextAdapters).toEqual([])
    const trip = tripWith({ hookup: { adapterPieceId }, at: 1 })
    const { packing, nights } = cardsPlan(trip)
    const second = need({ nightId: 'n2', nightNumber: 2, siteName: 'Lake pitch' })
    const before = nightFacts(trip, packing, nights, [], 0)
    expect(before.trip).toMatchObject({ adapters: [second], nextAdapters: [second] })
    expect(before.hookup.adapterNeeded).toBe(false)
  })

  const fits = (...list: string[]) => ({ electrical: { fits: list } })
  it.each([
    ['a lead that lists nothing', { lead: { purpose: 'lead' } }, []],
    ['a lead that fits', { lead: { purpose: 'lead', ...fits('bs-1363', connector) } }, []],
    ['a charging unit that fits', { lead: { purpose: 'charging-unit', ...fits(connector) } }, []],
    [
      'one of two that fits',
      { lead: { purpose: 'lead', ...fits('bs-1363') }, tester: { purpose: 'charging-unit', ...fits(connector) } },
      [],
    ],
    ['something else that fits nothing', { tester: { purpose: 'other', ...fits('bs-1363') } }, []],
    [
      'a lead that does not fit and no adapter',
      { lead: { purpose: 'lead', ...fits('bs-1363') }, adapter: { purpose: 'other', ...fits(connector) } },
      [need({ id: connector, name: connector, onBoard: false })],
    ],
    [
      'a charging unit that does not fit and an adapter that does',
      { lead: { purpose: 'charging-unit', ...fits('bs-1363') }, adapter: { purpose: 'adapter', ...fits(connector) } },
      [need({})],
    ],
    [
      'an adapter for another socket',
      { lead: { purpose: 'lead', ...fits('bs-1363') }, adapter: { purpose: 'adapter', ...fits('nema-5-15') } },
      [need({ id: connector, name: connector, onBoard: false })],
    ],
    [
      'an adapter that lists nothing',
      { lead: { purpose: 'lead', ...fits('bs-1363') }, adapter: { purpose: 'adapter' } },
      [need({ id: connector, name: connector, onBoard: false })],
    ],
  ] as const)('with %s', (_, pieces, expected) => {
    const [, second] = cardsTrip().nights
    const { hookup: _post, ...bare } = second ?? firstNight
    const trip = tripWith({ pieces })
    const { packing, nights } = cardsPlan(trip)
    const found = nightFacts({ ...trip, nights: [trip.nights[0] ?? firstNight, bare] }, packing, nights, [], 0)
    expect(found.trip.adapters).toEqual(expected)
  })
})

describe('facts of energy and leg', () => {
  it('are charges, limits, and the hours of heat after the supply is lost', () => {
    expect(factsOf().energy).toEqual({
      arrive01: 0.41,
      depart01: 0.64,
      reserve01: 0.1,
      chargeLimit01: 0.9,
      coldBattery: true,
      runsOutInNight: false,
      heatLeftOnFaultH: 11.5,
      leisureDepart01: null,
    })
  })

  it('have no battery where the vehicle has none', () => {
    const { battery: _battery, ...vehicle } = cardsTrip().vehicle
    expect(factsOf({ trip: { vehicle } }).energy).toMatchObject({
      reserve01: null,
      chargeLimit01: null,
      coldBattery: false,
    })
  })

  it('take the night’s own limit first, frost below nought, and the end of the heat', () => {
    const heating = { ...firstNight.heating, chargeLimit01: 0.8 }
    const stopsUtc = firstPlan.clock.bedtimeUtc
    const found = factsOf({ night: { heating }, outcome: { coldestOutsideC: 0, stopsUtc, leisureDepart01: 0.3 } })
    expect(found.energy).toMatchObject({
      chargeLimit01: 0.8,
      coldBattery: false,
      runsOutInNight: true,
      leisureDepart01: 0.3,
    })
    expect(factsOf({ outcome: { coldestOutsideC: -0.1 } }).energy.coldBattery).toBe(true)
  })

  it('count the hours of heat of the lost supply alone', () => {
    const [lost] = firstPlan.faults
    if (lost === undefined) throw new Error('the plan rehearses a fault')
    const fails = { ...lost, fault: { ...lost.fault, kind: 'heater-fails' as const }, hoursOfHeatLeft: 0 }
    expect(factsOf({ plan: { faults: [fails, lost] } }).energy.heatLeftOnFaultH).toBe(11.5)
    expect(factsOf({ plan: { faults: [fails] } }).energy.heatLeftOnFaultH).toBeNull()
  })

  it('name the stops of the leg', () => {
    const { leg } = firstPlan.outcome
    if (leg === null) throw new Error('the plan has a leg')
    const unnamed = {
      ...leg.stops[0],
      name: null,
      atM: 120_000,
      arrive01: 0.3,
      leave01: 0.7,
      durationS: 1,
      energyWh: 1,
    }
    const input = { ...firstPlan.input, leg: { outsideC: -7 } as never }
    const found = factsOf({ plan: { input }, outcome: { leg: { ...leg, stops: [...leg.stops, unnamed] } } }).leg
    expect(found).toEqual({
      present: true,
      marginWh: 6930,
      stops: [
        { id: 'stop-1', name: 'Valley car park', atM: 84_000, leave01: 0.6 },
        { id: 'stop-2', name: '', atM: 120_000, leave01: 0.7 },
      ],
      outsideC: -7,
    })
    expect(factsOf({ outcome: { leg: null } }).leg).toEqual({
      present: false,
      marginWh: null,
      stops: [],
      outsideC: null,
    })
  })
})

describe('facts of warmth', () => {
  const setting = (...temps: (number | null)[]) =>
    factsOf({
      night: {
        heating: { setPoints: temps.map((tempC, hour) => ({ from: `2${hour}:00`, tempC })), bedHeaterIds: [] },
      },
    }).heating

  it('tell what is set through the night, where anything is', () => {
    expect(setting()).toEqual({ set: false, setPointC: null, bedHeater: false })
    expect(setting(null)).toEqual({ set: false, setPointC: null, bedHeater: false })
    // In bed from 22:00 to 05:45: what holds in the middle of the sleep.
    expect(setting(8, null, 12, 10)).toEqual({ set: true, setPointC: 10, bedHeater: false })
    const points = [
      { from: '18:00', tempC: 15 },
      { from: '22:00', tempC: 11 },
      { from: '05:15', tempC: 16 },
    ]
    const planned = (setPoints: typeof points) =>
      factsOf({ night: { heating: { setPoints, bedHeaterIds: [] } } }).heating.setPointC
    expect(planned(points)).toBe(11)
    expect(planned(points.toReversed())).toBe(11)
    // Off while asleep, and warm again for getting up.
    expect(setting(15, 15, null)).toEqual({ set: true, setPointC: null, bedHeater: false })
    const heating = { setPoints: [], bedHeaterIds: ['pad'] }
    expect(factsOf({ night: { heating } }).heating).toEqual({ set: false, setPointC: null, bedHeater: true })
  })

  it('tell who lies cold, whose feet are, and who sleeps cold', () => {
    expect(factsOf().sleepers).toEqual({
      coldestBedC: 6.9,
      hottestBedC: 14,
      anyCold: true,
      anyFeetCold: true,
      cold: [{ id: 'ada', name: 'Ada', shortK: 2.2 }],
      feetCold: [{ id: 'ada', name: 'Ada' }],
      sleepsCold: [{ id: 'ada', name: 'Ada' }],
      hotBottle: false,
    })
  })

  it('count a sleeper as cold from the verdict cold on, not while only cool', () => {
    const sleepers = firstPlan.outcome.sleepers.map((one) => ({ ...one, feetColdFromUtc: null, coldFromUtc: null }))
    const judged = (verdict: 'too-cold' | 'cool' | 'enough') =>
      factsOf({ outcome: { sleepers: sleepers.map((one) => ({ ...one, verdict, sleeperId: `x-${one.sleeperId}` })) } })
        .sleepers
    expect(judged('too-cold')).toMatchObject({ anyCold: true, anyFeetCold: false, feetCold: [] })
    // Nobody of the trip: the id must do.
    expect(judged('too-cold').cold).toEqual([
      { id: 'x-ada', name: 'x-ada', shortK: 2.2 },
      { id: 'x-bo', name: 'x-bo', shortK: -3.4 },
    ])
    expect(judged('cool')).toMatchObject({ anyCold: false, cold: [] })
    expect(judged('enough')).toMatchObject({ anyCold: false, cold: [] })
  })

  it('know a hot bottle that is chosen for the night', () => {
    const pieces = { pans: { bedding: { kind: 'hot-bottle' } } } as const
    const chosen = { beddingPieceIds: ['quilt', 'mat', 'pans'] }
    expect(factsOf({ pieces }).sleepers.hotBottle).toBe(false)
    expect(factsOf({ pieces, night: chosen }).sleepers.hotBottle).toBe(true)
    expect(factsOf({ night: chosen }).sleepers.hotBottle).toBe(false)
  })

  it('have no hottest hour of a night without hours', () => {
    const series = { ...firstPlan.outcome.series, bedAirC: [] }
    expect(factsOf({ outcome: { series } }).sleepers.hottestBedC).toBeNull()
  })
})

describe('facts of the clock', () => {
  it('are minutes to and from sunset, the site’s hours and leaving', () => {
    // Arriving at 15:10, sunset 15:52, check-in 12:00 to 18:00, leaving 05:40, quiet until 06:00, all UTC.
    expect(factsOf().clock).toEqual({
      arriveAfterSunsetMin: -42,
      arriveInDark: false,
      hasQuietHours: true,
      arriveAfterCheckInMin: -170,
      arriveBeforeCheckInMin: null,
      departInBanMin: null,
      departInGateMin: null,
      departInQuietMin: 20,
      arriveInQuietMin: null,
      unplugAfterDepartMin: null,
      checkOutWhileAway: false,
      returnsAfterTarget: false,
    })
  })

  const { clock } = firstPlan
  const at = (base: number, min: number) => (base + 60 * min) as typeof clock.departUtc
  const withClock = (over: Partial<typeof clock>, night: Partial<Night> = {}) =>
    factsOf({ plan: { clock: { ...clock, ...over } }, night }).clock

  it('count to the end of a ban, a gate or quiet hours that they fall into, ends apart', () => {
    const { departUtc, arriveUtc } = clock
    const span = (from: number, to: number) => ({ banFromUtc: at(departUtc, from), banToUtc: at(departUtc, to) })
    expect(withClock(span(0, 35)).departInBanMin).toBe(35)
    expect(withClock(span(-35, 0)).departInBanMin).toBeNull()
    expect(withClock(span(1, 35)).departInBanMin).toBeNull()
    expect(withClock({ banFromUtc: at(departUtc, -5), banToUtc: null }).departInBanMin).toBeNull()
    expect(withClock({ banFromUtc: null, banToUtc: at(departUtc, 5) }).departInBanMin).toBeNull()
    const gate = { gateFromUtc: at(departUtc, -60), gateToUtc: at(departUtc, 7) }
    expect(withClock(gate)).toMatchObject({ departInGateMin: 7, departInBanMin: null })
    const quiet = { quietFromUtc: at(arriveUtc, -1), quietToUtc: at(arriveUtc, 90) }
    expect(withClock(quiet)).toMatchObject({ arriveInQuietMin: 90, departInQuietMin: null })
  })

  it('say by how much the plug is drawn after leaving', () => {
    // Unplugging is planned for 06:40 at the site, 05:40 UTC.
    expect(withClock({ departUtc: at(clock.departUtc, -25) }).unplugAfterDepartMin).toBe(25)
    expect(withClock({ departUtc: at(clock.departUtc, 25) }).unplugAfterDepartMin).toBeNull()
  })

  it('know of a check-out while away at the target', () => {
    // Sunrise 20 minutes after being there, an hour's stay, 7 and 12 minutes back: 06:10 + 20 + 60 + 19 = 07:49 UTC.
    const target = { name: 'Hide', minutesBeforeSunrise: 20, driveM: 4000, driveMin: 7, walkMin: 12 }
    const backUtc = at(clock.beAtTargetUtc ?? clock.departUtc, 20 + 60 + 19)
    expect(withClock({ checkOutUtc: backUtc }, { target })).toMatchObject({
      checkOutWhileAway: false,
      returnsAfterTarget: true,
    })
    expect(withClock({ checkOutUtc: at(backUtc, -1) }, { target }).checkOutWhileAway).toBe(true)
    expect(withClock({ checkOutUtc: null }, { target }).checkOutWhileAway).toBe(false)
  })

  it('have nothing of what the site does not ask', () => {
    const { checkIn: _checkIn, quiet: _quiet, hookup: _post, ...night } = firstNight
    const trip = cardsTrip()
    const plan = cardsPlan(trip)
    const bare = { ...trip, nights: [night, ...trip.nights.slice(1)] }
    expect(nightFacts(bare, plan.packing, plan.nights, [], 0).clock).toMatchObject({
      hasQuietHours: false,
      arriveAfterCheckInMin: null,
      arriveBeforeCheckInMin: null,
      unplugAfterDepartMin: null,
    })
  })
})

describe('facts of supplies, today and tomorrow', () => {
  const store = (over: Partial<NightStores>): NightStores => ({
    nightId: 'n1',
    waterMl: 0,
    waterShortMl: 0,
    waterLeftMl: 0,
    foodG: 0,
    foodShortG: 0,
    foodLeftG: 0,
    dirtyG: 0,
    loadG: 0,
    payloadMarginG: 0,
    ...over,
  })
  const can = { water: { purpose: 'water', traits: { liquidMl: 10_000 } } } as const

  it('are the water of the night and what two people want of it', () => {
    expect(factsOf({ pieces: can }).supplies).toEqual({
      waterMm3: 10_000_000,
      waterWantedMm3: 8_000_000,
      stoveOnBoard: false,
      coolBox: false,
      dirtyG: 0,
    })
    const stores = [store({ waterMl: 2500, dirtyG: 700 })]
    expect(factsOf({ pieces: can, stores }).supplies).toMatchObject({ waterMm3: 2_500_000, dirtyG: 700 })
  })

  it('know a stove and a cool box on board', () => {
    expect(factsOf({ pieces: { stove: { purpose: 'stove' } } }).supplies).toMatchObject({
      stoveOnBoard: true,
      coolBox: false,
    })
    expect(factsOf({ pieces: { pasta: { purpose: 'cool-box' } } }).supplies).toMatchObject({
      stoveOnBoard: false,
      coolBox: true,
    })
  })

  const tomorrow = (outcome: Partial<NightPlan['outcome']>, stores: readonly NightStores[] = []) => {
    const trip = cardsTrip()
    const { packing, nights } = cardsPlan(trip)
    const changed = nights.map((one, index) =>
      index === 1 ? { ...one, outcome: { ...one.outcome, ...outcome } } : one,
    )
    return nightFacts(trip, packing, changed, stores, 0).tomorrow
  }

  it('tell tonight what the next night will lack', () => {
    const stores = [store({ waterShortMl: 1, foodShortG: 2 }), store({ waterShortMl: 1500, foodShortG: 400 })]
    expect(tomorrow({}, stores)).toEqual({
      site: 'Lake pitch',
      waterShortMm3: 1_500_000,
      foodShortG: 400,
      legShortWh: 0,
      heatRunsOut: false,
    })
    const leg = { needWh: 9, reserveWh: 1, marginWh: -500, stops: [], reachable: false }
    expect(tomorrow({ leg }).legShortWh).toBe(500)
    // With a stop it can be driven: nothing is lacking.
    expect(tomorrow({ leg: { ...leg, reachable: true } }).legShortWh).toBe(0)
    expect(tomorrow({ leg: null }).legShortWh).toBe(0)
    expect(tomorrow({ stopsUtc: firstPlan.clock.wakeUtc }).heatRunsOut).toBe(true)
  })

  it('lack nothing after the last night', () => {
    expect(factsOf({ at: 1 }).tomorrow).toEqual({
      site: null,
      waterShortMm3: 0,
      foodShortG: 0,
      legShortWh: 0,
      heatRunsOut: false,
    })
  })
})
