/** Facts of the load for the checklist's rules: where things are by day and at night, and what frost, heat or a bump would do to them. */
import { describe, expect, it } from 'vitest'
import type { ChecklistFacts } from '../../../shared/checklist/index.ts'
import type { Night, Piece, Trip } from '../../../shared/document/index.ts'
import { loadFacts } from '../../../shared/plan/inputs/facts-load.ts'
import { byPlace } from '../../../shared/plan/inputs/grouped.ts'
import type { Plan } from '../../../shared/plan/types.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

type Changed = {
  readonly pieces?: Readonly<Record<string, Partial<Piece>>>
  readonly weather?: Partial<Night['weather']>
  readonly packing?: Partial<Plan['packing']>
  readonly trip?: Partial<Trip>
}

function factsOf({ pieces = {}, weather = {}, packing = {}, trip: over = {} }: Changed): ChecklistFacts['load'] {
  const base = cardsTrip()
  const trip: Trip = {
    ...base,
    kit: { ...base.kit, pieces: base.kit.pieces.map((piece) => ({ ...piece, ...pieces[piece.id] })) },
    ...over,
  }
  const [night] = trip.nights
  if (night === undefined) throw new Error('the trip has a night')
  return loadFacts(
    trip,
    { ...cardsPlan(trip).packing, ...packing },
    { ...night, weather: { ...night.weather, ...weather } },
  )
}

const names = (things: readonly { name: string }[]): readonly string[] => things.map(({ name }) => name)
const whereabouts = (things: readonly { name: string; place: string }[]): readonly (readonly string[])[] =>
  things.map(({ name, place }) => [name, place])

describe('the load of a plan written by hand', () => {
  it('has nothing to mind where no piece asks for anything', () => {
    expect(factsOf({})).toEqual({
      unrestrained: [],
      aboveSeatBack: [],
      fuelInCabin: [],
      fuel: [],
      unplaced: [],
      freezing: [],
      spoiling: [],
      food: [],
      lithium: [],
      wet: [],
      bed: [
        { id: 'mat', name: 'Mattress' },
        { id: 'quilt', name: 'Winter quilt' },
      ],
      inUse: [],
      outside: [{ id: 'boots', name: 'Boots' }],
      mustCarry: [],
      emergency: [],
      nightReach: [],
      valuables: [],
      heavyBins: [],
      looseAtNightBesideDriver: false,
      movesAtDusk: 5,
      movesInMorning: 0,
      unused: [],
    })
  })

  it('names what is in use at night', () => {
    expect(factsOf({ pieces: { lead: { atNight: 'in-use' } } }).inUse).toEqual([
      { id: 'lead', name: 'Hookup lead, 25 m' },
    ])
  })

  it('tells the place at night of fuel, and of what rides in a bin that of its bin', () => {
    const fuel = { traits: { fuel: true } }
    expect(factsOf({ pieces: { stove: fuel, clothes: fuel, boots: fuel, pans: { traits: { fuel: false } } } }).fuel)
      // The clothes lie on the seat at night only; boots stand outside, in no bay.
      .toEqual([
        { id: 'stove', name: 'Spirit stove', place: 'Load bay' },
        { id: 'clothes', name: 'Clothes bag', place: 'Passenger seat' },
        { id: 'boots', name: 'Boots', place: '' },
      ])
  })

  it('has no bay at night for what then stands out of its bin: fuel is not sent back to where people sleep', () => {
    const { packing } = cardsPlan()
    const nights = packing.nights.map((night) => ({
      ...night,
      bed: { ...night.bed, away: [...night.bed.away, { unitId: 'stove', state: 'outside' as const }] },
    }))
    const pieces = { stove: { traits: { fuel: true }, atNight: 'outside' }, pans: { traits: { fuel: true } } } as const
    expect(whereabouts(factsOf({ packing: { nights }, pieces }).fuel)).toEqual([
      ['Spirit stove', ''],
      ['Pans and mugs', 'Load bay'],
    ])
    // By day it rides in its bin.
    const wanted = { stove: { access: ['emergency'], atNight: 'outside' } } as const
    expect(whereabouts(factsOf({ packing: { nights }, pieces: wanted }).emergency)).toEqual([
      ['Spirit stove', 'Load bay'],
    ])
  })

  it('tells the place by day of what must be carried or found at once', () => {
    const found = factsOf({
      pieces: {
        clothes: { access: ['night', 'emergency'] },
        lead: { traits: { mustCarry: true } },
        boots: { traits: { mustCarry: true } },
        pans: { traits: { mustCarry: false } },
      },
    })
    expect(found.emergency).toEqual([{ id: 'clothes', name: 'Clothes bag', place: 'Load bay' }])
    expect(whereabouts(found.mustCarry)).toEqual([
      ['Hookup lead, 25 m', 'Underfloor well'],
      ['Boots', 'Load bay'],
    ])
  })

  it('has at hand in the night what is stored then and wanted then', () => {
    const access: Piece['access'] = ['night']
    const pieces = { clothes: { access }, mat: { access }, boots: { access }, water: { access } }
    expect(whereabouts(factsOf({ pieces }).nightReach)).toEqual([
      ['Water can', 'Load bay'],
      ['Clothes bag', 'Passenger seat'],
    ])
  })

  it('has no place for a night that was not packed', () => {
    const found = factsOf({ packing: { nights: [] }, pieces: { stove: { traits: { fuel: true } } } })
    expect(whereabouts(found.fuel)).toEqual([['Spirit stove', '']])
    expect([found.movesAtDusk, found.movesInMorning]).toEqual([0, 0])
  })

  it('counts the moves of dusk and of the morning apart', () => {
    const { packing } = cardsPlan()
    const [first] = packing.nights
    if (first === undefined) throw new Error('the plan has a night')
    const changeback = { ...first.changeback, moves: first.changeover.moves.slice(0, 2) }
    const found = factsOf({ packing: { nights: [{ ...first, changeback }] } })
    expect([found.movesAtDusk, found.movesInMorning]).toEqual([5, 2])
  })
})

describe('frost and heat', () => {
  // The night is planned for -9 less a margin of 2: -11.
  const freezes = (freezesBelowC: number) => ({ traits: { freezesBelowC } })

  it('harm what freezes above the planned low, one line a place, by the one that freezes first', () => {
    const pieces = { water: freezes(0), pasta: freezes(-3), detector: freezes(-5), lead: freezes(-11) }
    const found = factsOf({ pieces }).freezing
    expect(found.map(({ name, place, freezesBelowC }) => [name, place, freezesBelowC])).toEqual([
      ['Pasta & lentils <dry>, Water can', 'Load bay', 0],
      ['Bat detectors', 'Passenger seat', -5],
    ])
    expect(factsOf({ pieces, weather: { coldMarginK: 2.5 } }).freezing.map(({ place }) => place)).toContain(
      'Underfloor well',
    )
  })

  it('spoil by day, at its warmest, what keeps no longer above its limit', () => {
    const spoils = (spoilsAboveC: number) => ({ traits: { spoilsAboveC } })
    const pieces = { clothes: spoils(2), pasta: spoils(3) }
    expect(factsOf({ pieces }).spoiling).toEqual([
      { id: 'clothes', name: 'Clothes bag', place: 'Load bay', spoilsAboveC: 2 },
    ])
    expect(names(factsOf({ pieces, weather: { highC: 3.5 } }).spoiling)).toEqual([
      'Pasta & lentils <dry>',
      'Clothes bag',
    ])
  })
})

describe('things told together', () => {
  it('are food and what smells, a line a place', () => {
    const pieces = {
      pasta: { traits: { food: true } },
      water: { traits: { scented: true } },
      clothes: { traits: { scented: true, food: false } },
      pans: { traits: { food: false, scented: false } },
    }
    expect(whereabouts(factsOf({ pieces }).food)).toEqual([
      ['Pasta & lentils <dry>, Water can', 'Load bay'],
      ['Clothes bag', 'Passenger seat'],
    ])
  })

  it('are lithium cells, and what comes back wet', () => {
    const found = factsOf({
      pieces: {
        tester: { traits: { lithiumWh: 20 } },
        detector: { traits: { lithiumWh: 50 } },
        pans: { traits: { lithiumWh: 0, wetAfterUse: false } },
        boots: { traits: { wetAfterUse: true } },
      },
    })
    expect(names(found.lithium)).toEqual(['Socket tester, Bat detectors'])
    expect(found.wet).toEqual([{ id: 'boots', name: 'Boots' }])
  })

  it('leave out what stays at home', () => {
    const pieces = { boots: { traits: { wetAfterUse: true, valuable: true }, spare: true } }
    expect(factsOf({ pieces })).toMatchObject({ wet: [], valuables: [], outside: [] })
    expect(names(factsOf({ pieces: { boots: { traits: { valuable: true } } } }).valuables)).toEqual(['Boots'])
  })

  /** Fowler, Noll and Vo's hash, 32 bit, 1a, in whole numbers without bounds. */
  const mark = (text: string): string =>
    [...text]
      .reduce((hash, letter) => ((hash ^ BigInt(letter.codePointAt(0) ?? 0)) * 16_777_619n) % 2n ** 32n, 2_166_136_261n)
      .toString(36)

  it('keep an id that a tick in a file finds again: the first’s, and a mark of all, whatever their order', () => {
    const thing = (id: string, place: string) => ({ id, name: id.toUpperCase(), place })
    expect(byPlace([thing('a', 'x'), thing('b', 'y'), thing('c', 'x')])).toEqual([
      [{ id: `a.${mark('a c')}`, name: 'A, C', place: 'x' }, [thing('a', 'x'), thing('c', 'x')]],
      [{ id: 'b', name: 'B', place: 'y' }, [thing('b', 'y')]],
    ])
    expect(byPlace([thing('c', 'x'), thing('a', 'x')])[0]?.[0].id).toBe(`c.${mark('a c')}`)
    expect(byPlace([thing('a', 'x'), thing('d', 'x')])[0]?.[0].id).not.toBe(`a.${mark('a c')}`)
  })
})

describe('cautions, faults and lessons of the load', () => {
  it('are told by their kind, with the place', () => {
    const caution = (code: Plan['packing']['cautions'][number]['code'], unitId: string, bayId: string) => ({
      code,
      unitId,
      bayId,
      forceKn: null,
    })
    const found = factsOf({
      packing: {
        cautions: [
          caution('unrestrained', 'kitchen', 'load'),
          caution('above-seat-back', 'detector', 'seat'),
          caution('fuel-in-cabin', 'stove', 'load'),
          caution('heavy-high', 'lead', 'gone'),
        ],
      },
    })
    expect(found.unrestrained).toEqual([{ id: 'kitchen', name: 'Kitchen crate', place: 'Load bay' }])
    expect(found.aboveSeatBack).toEqual([{ id: 'detector', name: 'Bat detectors', place: 'Passenger seat' }])
    expect(found.fuelInCabin).toEqual([{ id: 'stove', name: 'Spirit stove', place: 'Load bay' }])
  })

  it('name once what has no place, by day or on this night', () => {
    const { packing } = cardsPlan()
    const unplaced = (unitId: string, layout: 'drive' | 'bed') => ({
      unitId,
      layout,
      nightId: null,
      why: [],
      cure: null,
    })
    const [first, second] = packing.nights
    if (first === undefined || second === undefined) throw new Error('the plan has two nights')
    const found = factsOf({
      packing: {
        driveUnplaced: [unplaced('boots', 'drive')],
        nights: [
          { ...second, unplaced: [unplaced('lead', 'bed')] },
          { ...first, unplaced: [unplaced('boots', 'bed'), unplaced('kitchen', 'bed')] },
        ],
      },
    })
    expect(found.unplaced).toEqual([
      { id: 'boots', name: 'Boots' },
      { id: 'kitchen', name: 'Kitchen crate' },
    ])
    expect(names(factsOf({ packing: { driveUnplaced: [unplaced('gone', 'drive')], nights: [] } }).unplaced)).toEqual([
      'gone',
    ])
  })

  it('call a bin heavy over its own limit', () => {
    const { kit } = cardsTrip()
    const heavy = (liftLimitG: number) =>
      factsOf({ trip: { kit: { ...kit, bins: kit.bins.map((bin) => ({ ...bin, liftLimitG })) } } }).heavyBins
    // The kitchen crate weighs 6900 g as packed, the power crate 2300 g.
    expect(heavy(6900)).toEqual([])
    expect(heavy(6899)).toEqual([{ id: 'kitchen', name: 'Kitchen crate', massG: 6900 }])
  })

  it('propose to leave what three nights did without, not what must be there', () => {
    const lesson = (id: string, ...unusedPieceIds: string[]) => ({ id, text: 'x', unusedPieceIds })
    const ids = ['boots', 'lead', 'adapter', 'gone']
    const { checklist } = cardsTrip()
    const unused = (...lessons: Trip['checklist']['lessons'][number][]) =>
      factsOf({
        pieces: { lead: { traits: { mustCarry: true } }, adapter: { access: ['emergency'] } },
        trip: { checklist: { ...checklist, lessons } },
      }).unused
    const three = [lesson('l1', ...ids), lesson('l2', ...ids, 'pans'), lesson('l3', ...ids)]
    expect(unused(...three)).toEqual([{ id: 'boots', name: 'Boots' }])
    // A lesson in words alone is no night that was counted.
    expect(unused(lesson('l1', ...ids), { id: 'word', text: 'A word' }, lesson('l2', ...ids))).toEqual([])
  })
})
