/** Trip and nights as the packing engine is asked: every piece, bin and bay as stated, and how cold and warm each bay gets at night. */
import { describe, expect, it } from 'vitest'
import type { NightOutcome } from '../../../shared/climate/index.ts'
import type { Bay, Bin, Night, Piece, Trip } from '../../../shared/document/index.ts'
import type { PackBay, PackingInput, PackingOutcome, PackPiece } from '../../../shared/packing/index.ts'
import { freeRoomMm3, packingInput } from '../../../shared/plan/inputs/packing.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const withPiece = (id: string, over: Partial<Piece>, of: Trip = trip): Trip => ({
  ...of,
  kit: { ...of.kit, pieces: of.kit.pieces.map((piece) => (piece.id === id ? { ...piece, ...over } : piece)) },
})
const pieceOf = (id: string, of: Trip): PackPiece | undefined =>
  packingInput(of, []).pieces.find((piece) => piece.id === id)

describe('a piece', () => {
  it('is asked as the trip states it', () => {
    expect(pieceOf('adapter', trip)).toEqual({
      id: 'adapter',
      sizeMm: [300, 200, 150],
      massG: 600,
      form: 'rigid',
      squeezeTo01: 1,
      uprightEdges: [2],
      bearsG: null,
      access: ['evening'],
      uses: { drive: 0, bed: 0 },
      traits: {
        liquidMl: 0,
        freezesBelowC: null,
        spoilsAboveC: null,
        food: false,
        scented: false,
        valuable: false,
        fragile: false,
        needsRestraint: false,
        wetAfterUse: false,
        fuel: false,
        lithiumWh: 0,
        mayStandOutside: false,
      },
      belongsWith: [],
      apartFrom: [],
      binId: 'power',
      locks: [],
    })
  })

  it('keeps each of its own traits', () => {
    const traits = {
      liquidMl: 750,
      freezesBelowC: -2,
      spoilsAboveC: 8,
      food: true,
      scented: true,
      valuable: true,
      fragile: true,
      needsRestraint: true,
      wetAfterUse: true,
      fuel: true,
      lithiumWh: 40,
      mayStandOutside: true,
    }
    expect(pieceOf('water', withPiece('water', { traits: { ...traits, mustCarry: true } }))?.traits).toEqual(traits)
  })

  it('may stand on each edge that is named: length, width, height', () => {
    expect(pieceOf('lead', withPiece('lead', { upright: ['width', 'length'] }))?.uprightEdges).toEqual([1, 0])
  })

  it('is wanted three times a day on the road, once in any other phase of the day or the night', () => {
    const uses = (...usedIn: Piece['usedIn']) => pieceOf('lead', withPiece('lead', { usedIn }))?.uses
    expect(uses('on-the-road', 'arriving')).toEqual({ drive: 4, bed: 0 })
    expect(uses('arriving', 'before-dark', 'at-the-target', 'check-out')).toEqual({ drive: 4, bed: 0 })
    expect(uses('bedtime', 'in-the-night', 'morning')).toEqual({ drive: 0, bed: 3 })
    expect(uses('before-leaving', 'back-home')).toEqual({ drive: 0, bed: 0 })
  })

  it('belongs with, and keeps apart from, only what rides along', () => {
    const linked = withPiece('lead', { belongsWith: ['boots', 'pans'], apartFrom: ['water', 'boots'], bearsG: 9000 })
    expect(pieceOf('lead', linked)).toMatchObject({
      belongsWith: ['boots', 'pans'],
      apartFrom: ['water', 'boots'],
      bearsG: 9000,
      binId: null,
    })
    const without = withPiece('boots', { spare: true }, linked)
    expect(pieceOf('lead', without)).toMatchObject({ belongsWith: ['pans'], apartFrom: ['water'] })
    expect(pieceOf('boots', without)).toBeUndefined()
  })

  it('is fixed where the traveller fixed it', () => {
    const locks: Piece['locks'] = [
      { layout: 'drive', bayId: 'load' },
      { layout: 'bed', bayId: 'seat', atMm: [1, 2, 3], sizeMm: [4, 5, 6] },
    ]
    expect(pieceOf('lead', withPiece('lead', { locks }))?.locks).toEqual([
      { layout: 'drive', bayId: 'load', atMm: null, sizeMm: null },
      { layout: 'bed', bayId: 'seat', atMm: [1, 2, 3], sizeMm: [4, 5, 6] },
    ])
  })
})

describe('a bin', () => {
  it('is asked as the trip states it', () => {
    const bins = (over: Partial<Bin>) =>
      packingInput({ ...trip, kit: { ...trip.kit, bins: trip.kit.bins.map((bin) => ({ ...bin, ...over })) } }, []).bins
    expect(bins({})[0]).toEqual({
      id: 'power',
      sizeMm: [400, 300, 220],
      innerMm: [400, 300, 220],
      massG: 1500,
      form: 'rigid',
      squeezeTo01: 1,
      bearsG: null,
      liftLimitG: 15_000,
      lid: true,
      locks: [],
    })
    expect(bins({ bearsG: 4000, locks: [{ layout: 'drive', bayId: 'well' }] })[1]).toMatchObject({
      id: 'kitchen',
      bearsG: 4000,
      locks: [{ layout: 'drive', bayId: 'well', atMm: null, sizeMm: null }],
    })
  })
})

describe('a bay', () => {
  const baysOf = (of: Trip): readonly PackBay[] => packingInput(of, []).bays
  const withRules = (rules: Partial<Night['rules']>, at = 0, bays = trip.vehicle.bays): Trip => ({
    ...trip,
    vehicle: { ...trip.vehicle, bays },
    nights: trip.nights.map((night, index) =>
      index === at ? { ...night, rules: { ...night.rules, ...rules } } : night,
    ),
  })

  it('is asked as the trip states it, but for names and notes', () => {
    const [load] = trip.vehicle.bays
    const { name: _name, note: _note, ...stated } = load ?? {}
    expect(baysOf(trip).map(({ id }) => id)).toEqual(['load', 'seat', 'well'])
    expect(baysOf(trip)[0]).toEqual({ ...stated, unitLimitG: null })
    const limited = trip.vehicle.bays.map((bay) => ({ ...bay, unitLimitG: 20_000 }))
    expect(baysOf(withRules({}, 0, limited))[0]?.unitLimitG).toBe(20_000)
  })

  it('is a site’s food locker where one is stated: used at night only, outside, carried by nobody', () => {
    const locker: PackBay = {
      id: 'site-food-locker',
      kind: 'locker',
      originMm: [0, 0, 0],
      sizeMm: [900, 600, 500],
      obstacles: [],
      slopes: [],
      // Its whole front opens.
      openings: [
        {
          id: 'locker-door',
          face: 'x-',
          fromMm: [0, 0],
          toMm: [600, 500],
          door: 'locker',
          opensFromInside: false,
        },
      ],
      usable: { drive: false, bed: true },
      belongsTo: 'site',
      loadLimitG: 500_000,
      unitLimitG: null,
      softOnly: false,
      lastResort: false,
      lockable: false,
      heatedAtNight: false,
      sleepingSpace: false,
      closedByBed: false,
      restraint: 'lid',
      reachFromBed: false,
      reachFromDriverSeat: false,
    }
    expect(baysOf(withRules({ foodLockerMm: [900, 600, 500] }, 1)).slice(3)).toEqual([locker])
    const drawn = trip.vehicle.bays.map((bay) => (bay.id === 'well' ? { ...bay, kind: 'locker' as const } : bay))
    expect(baysOf(withRules({ foodLockerMm: [900, 600, 500] }, 1, drawn))).toHaveLength(3)
  })

  it('is the only place for food where the site asks for a locker', () => {
    const foodBays = (of: Trip) => packingInput(of, []).nights.map(({ foodBayIds }) => foodBayIds)
    expect(foodBays(trip)).toEqual([null, null])
    expect(foodBays(withRules({ foodLockerRequired: true, foodLockerMm: [900, 600, 500] }))).toEqual([
      ['site-food-locker'],
      null,
    ])
    expect(foodBays(withRules({ foodLockerRequired: true }, 1))).toEqual([null, []])
  })
})

describe('the vehicle', () => {
  const vehicleOf = (masses: Partial<Trip['vehicle']['masses']>, over: Partial<Trip> = {}): PackingInput['vehicle'] =>
    packingInput({ ...trip, vehicle: { ...trip.vehicle, masses: { ...trip.vehicle.masses, ...masses } }, ...over }, [])
      .vehicle

  it('carries what is permitted less what it is, its people beyond the driver of the papers, and what the roof has', () => {
    // Two people of 62 and 81 kg, 75 of them in the papers: 2600 - 2050 - 68 = 482 kg. Their 68 kg sit midway, 34 on each axle.
    expect(vehicleOf({})).toEqual({
      payloadG: 482_000,
      frontAxle: { limitG: 1_280_000, readyG: 1_084_000 },
      rearAxle: { limitG: 1_400_000, readyG: 1_034_000 },
      rearAxleXMm: 620,
      wheelbaseMm: 2900,
      roofLimitG: null,
      seatBackHeightMm: 620,
      driverSide: 'left',
    })
    expect(vehicleOf({ roofLimitG: 75_000, roofFittedG: 18_000 })).toMatchObject({
      payloadG: 464_000,
      roofLimitG: 57_000,
    })
    expect(vehicleOf({ roofLimitG: 75_000 })).toMatchObject({ payloadG: 482_000, roofLimitG: 75_000 })
    expect(vehicleOf({}, { travellers: trip.travellers.slice(0, 1) }).payloadG).toBe(563_000)
  })

  it('bears its people and its roof’s fittings on its axles, drivers and one more in front, others on the bench', () => {
    const axles = (masses: Partial<Trip['vehicle']['masses']>, over: Partial<Trip> = {}) => {
      const { frontAxle, rearAxle } = vehicleOf(masses, over)
      return [frontAxle?.readyG, rearAxle?.readyG]
    }
    // 68 kg of people and 18 kg of bars and box midway: 43 kg each.
    expect(axles({ roofLimitG: 75_000, roofFittedG: 18_000 })).toEqual([1_093_000, 1_043_000])
    // A lone driver of 62 kg is 13 kg less than the papers count.
    expect(axles({}, { travellers: trip.travellers.slice(0, 1) })).toEqual([1_043_500, 993_500])
    // A passenger of 40 kg on the bench rests by a fifth on the front axle, wherever the list names them: 34 + 8 and 34 + 32 kg.
    const [one, two] = trip.travellers
    if (one === undefined || two === undefined) throw new Error('the trip has two travellers')
    const child = { ...one, id: 'third', massG: 40_000, drives: false }
    const both = [
      { ...one, drives: true },
      { ...two, drives: true },
    ]
    expect(axles({}, { travellers: [child, ...both] })).toEqual([1_092_000, 1_066_000])
    expect(axles({}, { travellers: [...both, child] })).toEqual([1_092_000, 1_066_000])
  })

  it('leaves open what is not known of its axles', () => {
    const { frontAxle: _front, rearAxle: _rear, rearAxleXMm: _at, wheelbaseMm: _base, ...masses } = trip.vehicle.masses
    expect(packingInput({ ...trip, vehicle: { ...trip.vehicle, masses } }, []).vehicle).toMatchObject({
      frontAxle: null,
      rearAxle: null,
      rearAxleXMm: null,
      wheelbaseMm: null,
    })
  })
})

describe('a night', () => {
  const bayWith = (id: string, over: Partial<Bay>): Bay => {
    const [load] = trip.vehicle.bays
    if (load === undefined) throw new Error('the trip has a bay')
    return { ...load, id, ...over }
  }
  const kinds = [
    'cargo',
    'seat',
    'footwell',
    'under-floor',
    'front-compartment',
    'roof-box',
    'pocket',
    'bedside',
    'shelf',
    'outside',
    'locker',
  ] as const
  const bays = [
    ...kinds.map((kind) => bayWith(kind, { kind, heatedAtNight: true })),
    bayWith('cold', { kind: 'seat', heatedAtNight: false }),
  ]
  const of: Trip = { ...trip, vehicle: { ...trip.vehicle, bays } }

  /** Four readings, `everyS` apart; the mass of the cabin at 10 degrees to begin with. */
  const outcome = (series: Partial<NightOutcome['series']>, everyS: number): NightOutcome => {
    const [plan] = cardsPlan().nights
    if (plan === undefined) throw new Error('the plan has a night')
    const atUtc = [0, 1, 2, 3].map((step) => (1_000_000 + step * everyS) as Utc)
    return { ...plan.outcome, series: { ...plan.outcome.series, atUtc, massC: [10, 9, 8, 7], ...series } }
  }
  const flat = (tempC: number) => [tempC, tempC, tempC, tempC]
  const temperatures = (one: NightOutcome) => {
    const [night] = packingInput(of, [one]).nights
    return { low: night?.lowTempC ?? {}, high: night?.highTempC ?? {} }
  }

  it('takes the forecast with its margin for every bay where nothing was reckoned yet', () => {
    // -9 less 2, and 3 by day.
    const [, second] = packingInput(of, [outcome({}, 600)]).nights
    expect(new Set(Object.values(second?.lowTempC ?? {}))).toEqual(new Set([-11]))
    expect(new Set(Object.values(second?.highTempC ?? {}))).toEqual(new Set([3]))
    expect(Object.keys(second?.lowTempC ?? {})).toEqual([...kinds, 'cold'])
  })

  it('lets each bay follow its own air: floor, front, bed, or outside', () => {
    // Steps of ten days: what stands there has long taken the air's temperature.
    const { low } = temperatures(
      outcome({ outsideC: flat(-5), floorC: flat(1), frontAirC: flat(2), bedAirC: flat(3) }, 864_000),
    )
    expect(low).toEqual({
      cargo: 3,
      seat: 2,
      footwell: 1,
      'under-floor': 1,
      'front-compartment': 3,
      'roof-box': 3,
      pocket: 2,
      bedside: 3,
      shelf: 3,
      outside: 3,
      locker: 3,
      cold: -5,
    })
  })

  it('lets what stands in a heated bay follow with the lag of a litre bottle, from the warmth of the drive on', () => {
    // After one time constant of 8700 s the difference of 10 K has gone down to 10 / e: 3.68, after three to 0.50.
    const { low, high } = temperatures(outcome({ bedAirC: flat(0), outsideC: [-1, -4, -2, -3] }, 8700))
    expect(low['cargo']).toBe(0.5)
    // Of the night's second half, the third and fourth reading: 10 / e^2 = 1.35 degrees.
    expect(high['cargo']).toBe(1.4)
    // Without a lag outside: the coldest of all, the warmest of the second half.
    expect([low['cold'], high['cold']]).toEqual([-4, -2])
  })

  it('knows tenths of a degree', () => {
    const { low } = temperatures(outcome({ outsideC: [-1.26, -1, -1, -1] }, 600))
    expect(low['cold']).toBe(-1.3)
  })

  it('tells where each piece is, by the night’s own word first', () => {
    const night = packingInput(withPiece('lead', { atNightOn: [{ nightId: 'n2', state: 'outside' }] }), []).nights
    expect(night.map(({ id, states }) => [id, states['lead'], states['quilt'], states['boots']])).toEqual([
      ['n1', 'stored', 'bed', 'outside'],
      ['n2', 'outside', 'bed', 'outside'],
    ])
    expect(night.map(({ outsideStorage }) => outsideStorage)).toEqual([true, true])
    const indoors = {
      ...trip,
      nights: trip.nights.map((one) => ({ ...one, rules: { ...one.rules, outsideStorage: false } })),
    }
    expect(packingInput(indoors, []).nights[0]?.outsideStorage).toBe(false)
  })
})

describe('room left by day', () => {
  const empty = { placements: [], away: [] }
  const { packing } = cardsPlan()
  const input = packingInput(trip, [])

  const bays = trip.vehicle.bays.filter(({ id }) => id !== 'load')
  const roomOf = (over: Partial<Bay>, drive: PackingOutcome['drive']): number =>
    freeRoomMm3(
      packingInput(
        {
          ...trip,
          vehicle: { ...trip.vehicle, bays: bays.map((bay) => (bay.id === 'seat' ? { ...bay, ...over } : bay)) },
        },
        [],
      ),
      { ...packing, drive },
    )
  // The seat holds 480 x 460 x 600 mm, the well 700 x 500 x 200.
  const seatMm3 = 132_480_000
  const wellMm3 = 70_000_000

  it('is that of the vehicle’s own bays that are used by day, and less by what is placed', () => {
    expect(roomOf({}, empty)).toBeCloseTo(seatMm3 + wellMm3, 3)
    expect(roomOf({ belongsTo: 'site' }, empty)).toBeCloseTo(wellMm3, 3)
    expect(roomOf({ usable: { drive: false, bed: true } }, empty)).toBeCloseTo(wellMm3, 3)
    // Detectors of 300 x 300 x 250 mm on the seat, the lead of 350 x 300 x 150 in the well.
    expect(roomOf({}, packing.drive)).toBeCloseTo(seatMm3 - 22_500_000 + wellMm3 - 15_750_000, 3)
  })

  it('is not made less by a bay that is fuller than full', () => {
    const [lead] = packing.drive.placements.filter(({ unitId }) => unitId === 'lead')
    if (lead === undefined) throw new Error('the plan places the lead')
    const full = { ...lead, bayId: 'seat', sizeMm: [480, 460, 601] as const }
    expect(roomOf({}, { placements: [full], away: [] })).toBeCloseTo(wellMm3, 3)
  })

  it('is none where something has no place as it is', () => {
    const unplaced = { unitId: 'boots', layout: 'drive', nightId: null, why: [], cure: null } as const
    expect(freeRoomMm3(input, { ...packing, drive: empty, driveUnplaced: [unplaced] })).toBe(0)
  })
})
