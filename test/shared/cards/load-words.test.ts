/** What must stand on the load card for a plan written by hand: masses, places, order, bins, moves and what was left out. */
import { describe, expect, it } from 'vitest'
import { bayBlocks, headed } from '../../../shared/cards/bay-blocks.ts'
import { leftOutBlocks, sayCure, sayWhyLeftOut } from '../../../shared/cards/left-out-blocks.ts'
import { loadCard } from '../../../shared/cards/index.ts'
import type { Block, CardInput } from '../../../shared/cards/index.ts'
import { massBlocks } from '../../../shared/cards/load-masses.ts'
import { nightBlocks, whereBlocks } from '../../../shared/cards/load-nights.ts'
import { namesOf } from '../../../shared/cards/names.ts'
import { placementWords, placeWords } from '../../../shared/cards/places.ts'
import type { Trip } from '../../../shared/document/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

const text = createText('en', 'metric')
const trip = cardsTrip()
const plan = cardsPlan(trip)
type Packing = Plan['packing']
type Placement = Packing['drive']['placements'][number]

const inputOf = (packing: Partial<Packing> = {}, of: Trip = trip): CardInput => ({
  plan: { ...plan, packing: { ...plan.packing, ...packing } },
  trip: of,
  text,
  nightId: null,
  paper: 'a4',
})
const names = namesOf(trip, plan.packing)
const plain = (words: string): string => words.replaceAll('\u00a0', ' ')

const flat = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) =>
    block.kind === 'together' ? flat(block.blocks) : block.kind === 'beside' ? block.columns.flatMap(flat) : [block],
  )
const tablesOf = (blocks: readonly Block[]) => flat(blocks).flatMap((block) => (block.kind === 'table' ? [block] : []))
const rowsOf = (blocks: readonly Block[]) => tablesOf(blocks).flatMap(({ rows }) => rows.map((row) => row.map(plain)))
const headingsOf = (blocks: readonly Block[]) =>
  flat(blocks).flatMap((block) => (block.kind === 'heading' ? [[block.level, plain(block.text)]] : []))
/** Title, side and weight of each column. */
const headOf = (blocks: readonly Block[]) =>
  tablesOf(blocks).map(({ columns }) =>
    columns.map(({ title, align, strong = false }) => `${align}${strong ? ' strong' : ''}: ${title}`),
  )
const bodyOf = (blocks: readonly Block[]) => flat(blocks).filter(({ kind }) => kind !== 'table' && kind !== 'drawing')

describe('masses', () => {
  const mass = (massG: number): string => plain(text.mass(massG).text)
  const line = (label: string, massG: number, limitG: number) => [
    label,
    mass(massG),
    mass(limitG),
    mass(limitG - massG),
  ]
  const massesOf = (over: Partial<Packing['mass']>, masses: Partial<Trip['vehicle']['masses']> = {}) => {
    const of = { ...trip, vehicle: { ...trip.vehicle, masses: { ...trip.vehicle.masses, ...masses } } }
    return massBlocks(inputOf({ mass: { ...plan.packing.mass, ...over } }, of), names)
  }

  it('stand with their limit and what is left under it: vehicle, axles, and each bay that holds something', () => {
    expect(rowsOf(massesOf({}))).toEqual([
      line('Payload', 45_700, 394_000),
      line('Front axle', 1_058_000, 1_280_000),
      line('Rear axle', 1_037_000, 1_400_000),
      line('Load bay', 36_000, 250_000),
      line('Passenger seat', 3200, 60_000),
      line('Underfloor well', 6500, 40_000),
    ])
    expect(headOf(massesOf({}))).toEqual([['left strong: ', 'right: Loaded', 'right: Limit', 'right strong: Left']])
    expect(headingsOf(massesOf({}))).toEqual([[2, 'Masses']])
  })

  it('say by how much a limit is passed, and what is just full has nothing left', () => {
    const rows = rowsOf(massesOf({ loadG: 394_000, frontAxleG: 1_281_500 }))
    expect(rows[0]).toEqual(line('Payload', 394_000, 394_000))
    expect(rows[1]).toEqual(['Front axle', mass(1_281_500), mass(1_280_000), '1.5 kg over'])
  })

  it('leave out axles that have no limit or were not weighed, bays that are empty, and a roof without load or limit', () => {
    const labels = (...[over, masses]: Parameters<typeof massesOf>) =>
      rowsOf(massesOf(over, masses)).map(([one]) => one)
    const { frontAxle: _front, ...rest } = trip.vehicle.masses
    const of = { ...trip, vehicle: { ...trip.vehicle, masses: rest } }
    expect(rowsOf(massBlocks(inputOf({}, of), names)).map(([one]) => one)).not.toContain('Front axle')
    expect(labels({ frontAxleG: null })).not.toContain('Front axle')
    expect(labels({ rearAxleG: null })).not.toContain('Rear axle')
    expect(labels({ bayG: { load: 1, seat: 0 } })).toEqual(['Payload', 'Front axle', 'Rear axle', 'Load bay'])
    expect(labels({}, { roofLimitG: 75_000 })).not.toContain('Roof')
    expect(labels({ roofG: 30_000 })).not.toContain('Roof')
    expect(rowsOf(massesOf({ roofG: 30_000 }, { roofLimitG: 75_000 }))[3]).toEqual(line('Roof', 30_000, 75_000))
  })
})

describe('a place in words', () => {
  const at = (atMm: Placement['atMm'], sizeMm: Placement['sizeMm'], bayId = 'load', unitId = 'water'): Placement => ({
    unitId,
    bayId,
    atMm,
    sizeMm,
    edges: [0, 1, 2],
  })
  const said = (place: Placement, ...others: readonly Placement[]) =>
    plain(placementWords(place, [place, ...others], names, text))

  // The load bay is 1040 mm long and 1020 wide. A middle before 0.4 of an edge is low, after 0.6 high.
  it.each([
    [[0, 0, 0], 'Load bay, rear left'],
    [[840, 820, 0], 'Load bay, front right'],
    [[420, 410, 0], 'Load bay, mid centre'],
    // 416 mm is 0.4 of the length, 624 mm is 0.6: the middle begins and ends there.
    [[315, 410, 0], 'Load bay, rear centre'],
    [[316, 410, 0], 'Load bay, mid centre'],
    [[524, 410, 0], 'Load bay, mid centre'],
    [[525, 410, 0], 'Load bay, front centre'],
  ] as const)('%j of a unit of 200 mm', (atMm, words) => {
    expect(said(at([...atMm], [200, 200, 100]))).toBe(words)
  })

  it('has no side on an edge that it fills by three quarters', () => {
    expect(said(at([0, 0, 0], [780, 200, 100]))).toBe('Load bay, left')
    expect(said(at([0, 0, 0], [779, 200, 100]))).toBe('Load bay, rear left')
    expect(said(at([0, 0, 0], [1000, 1000, 100]))).toBe('Load bay')
  })

  it('says on what it stands, or how high above the floor where nothing is below', () => {
    const crate = at([0, 0, 0], [300, 300, 100], 'load', 'kitchen')
    const other = at([0, 300, 0], [300, 300, 100], 'load', 'power')
    const upon = at([0, 200, 100], [200, 200, 100])
    expect(said(upon, crate, other)).toBe('Load bay, rear left, on 2 Kitchen crate and 3 Power crate')
    expect(said(upon, crate)).toBe('Load bay, rear left, on 2 Kitchen crate')
    expect(said(upon)).toBe('Load bay, rear left, 10 cm above the floor')
  })

  it('needs no bay that is drawn, and knows units that are in none', () => {
    expect(said(at([0, 0, 0], [200, 200, 100], 'site-food-locker'))).toBe('site-food-locker')
    const state = (one: 'bed' | 'in-use' | 'outside' | 'left-behind') =>
      placementWords({ unitId: 'mat', state: one }, [], names, text)
    expect([state('bed'), state('in-use'), state('outside'), state('left-behind')]).toEqual([
      'made into the bed',
      'in use',
      'outside',
      'left at home',
    ])
    const layout = {
      placements: [at([0, 0, 0], [200, 200, 100])],
      away: [{ unitId: 'boots', state: 'outside' }],
    } as const
    expect(placeWords('water', layout, names, text)).toBe('Load bay, rear left')
    expect(placeWords('boots', layout, names, text)).toBe('outside')
    expect(placeWords('lead', layout, names, text)).toBe('not placed')
  })
})

describe('what was left out', () => {
  type Left = Packing['driveUnplaced'][number]
  const left = (over: Partial<Left>): Left => ({
    unitId: 'boots',
    layout: 'drive',
    nightId: null,
    why: [],
    cure: null,
    ...over,
  })
  const named = { unit: names.unit, bay: (id: string) => (names.bayOf(id) === null ? null : names.bay(id)) }
  const cured = (cure: Left['cure']) => plain(sayCure(left({ cure }), named, text))

  it.each([
    [null, 'No single change found.'],
    [{ kind: 'turn', edge: 0 }, 'Let Boots stand on its end, length upright.'],
    [{ kind: 'turn', edge: 1 }, 'Let Boots stand on its side, width upright.'],
    [{ kind: 'turn', edge: 2 }, 'Let Boots stand as it normally does, height upright.'],
    [{ kind: 'squeeze', byMm: 40 }, 'Press Boots a further 40 mm.'],
    [{ kind: 'leave-behind', unitIds: ['lead', 'water'] }, 'Leave Hookup lead, 25 m and Water can behind.'],
    [
      { kind: 'other-bay', bayId: 'seat', ignoring: 'freezes' },
      'Boots goes in Passenger seat if this rule is let go: freezes there at night.',
    ],
    [
      { kind: 'other-bay', bayId: 'site-food-locker', ignoring: 'apart' },
      'Boots goes in site-food-locker if this rule is let go: must be kept apart from something there.',
    ],
    [{ kind: 'other-bin', binId: 'power' }, 'Put Boots into Power crate: it goes in there.'],
    [{ kind: 'empty-bin', binId: 'power' }, 'Take something out of Power crate.'],
  ] as const)('has its cure: %j', (cure, words) => {
    expect(cured(cure)).toBe(words)
  })

  it('says what stood against it in each bay or bin, and by how much it is too large where it is', () => {
    const why = [
      { bayId: 'load', rule: 'no-room', shortByMm: 40 },
      { bayId: 'seat', rule: 'freezes', shortByMm: null },
      { bayId: 'power', rule: 'does-not-fit', shortByMm: 0 },
    ] as const
    expect(plain(sayWhyLeftOut(left({ why }), named, text))).toBe(
      'Load bay: no room left (40 mm too little); Passenger seat: freezes there at night; Power crate: larger than the space however it is turned',
    )
    expect(sayWhyLeftOut(left({}), named, text)).toBe('')
  })

  it('stands by day, and at night with the date where it had a place by day', () => {
    const [first, second] = plan.packing.nights
    if (first === undefined || second === undefined) throw new Error('the plan has two nights')
    const atNight = (unitId: string, nightId: string) => left({ unitId, layout: 'bed', nightId })
    const input = inputOf({
      driveUnplaced: [left({})],
      nights: [
        { ...first, unplaced: [atNight('boots', 'n1'), atNight('lead', 'n1')] },
        { ...second, unplaced: [atNight('water', 'n2')] },
      ],
    })
    const blocks = leftOutBlocks(input, names)
    expect(rowsOf(blocks)).toEqual([
      ['Boots', 'On the road', '', 'No single change found.'],
      ['Hookup lead, 25 m', plain(`At night, ${text.date('2026-11-13')}`), '', 'No single change found.'],
      ['Water can', plain(`At night, ${text.date('2026-11-14')}`), '', 'No single change found.'],
    ])
    expect(headOf(blocks)).toEqual([
      ['left strong: Unit', 'left: When', 'left: Against it', 'left strong: Smallest change'],
    ])
    expect(headingsOf(blocks)).toEqual([[2, 'Left out, and what would place it']])
    const bayless = left({ why: [{ bayId: 'gone', rule: 'no-room', shortByMm: null }] })
    expect(rowsOf(leftOutBlocks(inputOf({ driveUnplaced: [bayless] }), names))[0]?.[2]).toBe('gone: no room left')
    const inBin = left({ why: [{ bayId: 'power', rule: 'no-room', shortByMm: null }] })
    expect(rowsOf(leftOutBlocks(inputOf({ driveUnplaced: [inBin] }), names))[0]?.[2]).toBe('Power crate: no room left')
  })

  it('is not spoken of where all has a place', () => {
    expect(leftOutBlocks(inputOf(), names)).toEqual([])
  })
})

describe('the order to load, and bins', () => {
  const blocks = loadCard(inputOf()).blocks
  const tableAfter = (title: string, of = blocks) => {
    const all = flat(of)
    const from = all.findIndex((block) => block.kind === 'heading' && block.text === title)
    const found = all.slice(from).find((block) => block.kind === 'table')
    return found?.kind === 'table' && from >= 0 ? [found] : []
  }

  it('has each unit with its place, what must come out first, and its mass', () => {
    const rows = rowsOf(tableAfter('Load in this order'))
    expect(rows.map(([number, unit]) => `${number} ${unit}`)).toEqual([
      '1 Hookup lead, 25 m',
      '2 Kitchen crate',
      '3 Power crate',
      '4 Mattress',
      '5 Winter quilt',
      '6 Water can',
      '7 Clothes bag',
      '8 Boots',
      '9 Bat detectors',
    ])
    expect(rows[0]).toEqual(['1', 'Hookup lead, 25 m', 'Underfloor well, rear left', '', '6.5 kg'])
    expect(rows[6]?.slice(3)).toEqual(['8', '7.4 kg'])
    expect(headOf(tableAfter('Load in this order'))).toEqual([
      ['right strong: No.', 'left strong: Unit', 'left: Place', 'left: Move first', 'right: Mass'],
    ])
  })

  it('leaves out what has no place by day, and itself where nothing has', () => {
    const placements = plan.packing.drive.placements.filter(({ unitId }) => unitId === 'water')
    const only = loadCard(inputOf({ drive: { placements, away: [] } })).blocks
    expect(rowsOf(tableAfter('Load in this order', only)).map(([, unit]) => unit)).toEqual(['Water can'])
    const none = loadCard(inputOf({ drive: { placements: [], away: [] } })).blocks
    expect(tableAfter('Load in this order', none)).toEqual([])
  })

  it('lists what is in each bin, in the order of loading', () => {
    expect(rowsOf(tableAfter('In each bin'))).toEqual([
      ['2', 'Kitchen crate', 'Spirit stove · Pans and mugs · Pasta & lentils <dry>', '6.9 kg'],
      ['3', 'Power crate', 'Adapter, blue 16 A · Socket tester', '2.3 kg'],
    ])
    expect(headOf(tableAfter('In each bin'))).toEqual([
      ['right strong: No.', 'left strong: Bin', 'left: Contents', 'right: Mass'],
    ])
    const loose = plan.packing.units.filter(({ kind }) => kind === 'piece')
    expect(tableAfter('In each bin', loadCard(inputOf({ units: loose })).blocks)).toEqual([])
  })

  it('stands under the trip and the vehicle', () => {
    const card = loadCard(inputOf())
    expect([card.title, card.subtitle]).toEqual(['Load card', 'Bat count above the tarn · Grey estate'])
    expect([card.language, card.paper]).toEqual(['en', 'a4'])
    expect(card.footer).toContain('Bat count above the tarn')
  })
})

describe('each night', () => {
  const [first] = plan.packing.nights
  if (first === undefined) throw new Error('the plan has a night')
  const nightWith = (over: Partial<typeof first>) => nightBlocks(inputOf({ nights: [{ ...first, ...over }] }), names)

  it('begins a page with its date and site, its moves there and back, each with its count', () => {
    const blocks = nightWith({})
    expect(blocks[0]).toEqual({ kind: 'page-break' })
    expect(headingsOf(blocks).filter(([level]) => level !== 3)).toEqual([
      [1, plain(`Night of ${text.date('2026-11-13')} · Upper meadow`)],
      [2, 'Moves to the bed layout, in order: 5 moves'],
      [2, 'Bed layout'],
      [2, 'Moves back to the drive layout, in order: 0 moves'],
    ])
    expect(headOf(blocks)).toEqual([['left: ', 'left strong: Unit', 'left: From', 'left strong: To', 'left: Door']])
    expect(rowsOf(blocks).map((cells) => cells.at(-1))).toEqual([
      'tailgate',
      'tailgate',
      'front right door',
      'tailgate',
      '',
    ])
    const said = bodyOf(blocks).flatMap((block) => (block.kind === 'paragraph' ? [block.text] : []))
    expect(said).toEqual(['Bays not drawn stand as on the road.', 'Nothing has to move.'])
  })

  it('tells the way back from where things stand at night', () => {
    const [boots] = first.changeover.moves
    if (boots === undefined) throw new Error('the plan has moves')
    const back = { ...boots, from: boots.to, to: boots.from }
    const rows = rowsOf(nightWith({ changeback: { ...first.changeback, moves: [back] } }))
    // The clothes on which the boots ride by day are on the seat at night: below is nothing yet.
    expect(rows.at(-1)).toEqual(['1.', '8 Boots', 'outside', 'Load bay, rear right, 25 cm above the floor', 'tailgate'])
  })

  it('says what no order of moves brings over', () => {
    const notices = flat(nightWith({ changeover: { ...first.changeover, stuckUnitIds: ['water'] } })).filter(
      ({ kind }) => kind === 'notice',
    )
    expect(notices).toEqual([
      {
        kind: 'notice',
        tone: 'shortfall',
        label: text.t('cards.tone.shortfall'),
        text: 'Water can cannot be brought over by any order of moves found. Take it out by hand first.',
      },
    ])
  })

  it('that was not packed has no moves to tell', () => {
    expect(nightBlocks(inputOf({ nights: [] }), names)).toEqual([])
    // The second night alone was packed: it is told in full, not as the first.
    const second = nightBlocks(inputOf({ nights: [{ ...first, nightId: 'n2' }] }), names)
    expect(headingsOf(second).filter(([level]) => level === 1)).toEqual([
      [1, plain(`Night of ${text.date('2026-11-14')} · Lake pitch`)],
    ])
    expect(rowsOf(second)).toHaveLength(5)
  })
})

describe('where every piece is', () => {
  it('stands by name, three nights to a table', () => {
    const nights = ['n1', 'n2', 'n3', 'n4'].map((id, index) => ({
      ...(trip.nights[0] as Trip['nights'][number]),
      id,
      date: `2026-11-1${index + 1}`,
    }))
    const of: Trip = { ...trip, nights }
    const input: CardInput = { ...inputOf({}, of), plan: cardsPlan(of) }
    const blocks = whereBlocks(input, names)
    expect(tablesOf(blocks).map(({ columns }) => columns.length)).toEqual([6, 4])
    expect(tablesOf(blocks)[1]?.columns.at(-1)?.title).toBe(`Night of ${text.date('2026-11-14')}`)
    const order = tablesOf(blocks)[0]?.rows.map(([piece = '']) => piece) ?? []
    expect(order).toEqual(order.toSorted(new Intl.Collator('en').compare))
    expect(order).toHaveLength(trip.kit.pieces.length)
  })

  it('of one night alone needs no date; a loose piece bears its number, one in a bin its bin', () => {
    const blocks = whereBlocks({ ...inputOf(), nightId: 'n1' }, names)
    expect(headOf(blocks)).toEqual([['left strong: Piece', 'left: In', 'left: On the road', 'left: At night']])
    const rows = rowsOf(blocks)
    expect(rows.find(([piece]) => piece === 'Spirit stove')).toEqual([
      'Spirit stove',
      '2 Kitchen crate',
      'Load bay, front left',
      'Load bay, front left',
    ])
    expect(rows.find(([piece]) => piece === 'Boots')).toEqual([
      'Boots',
      plain(text.t('cards.loose', { number: 8 })),
      'Load bay, rear right, on 7 Clothes bag',
      'outside',
    ])
  })

  it('tells a piece that leaves its bin at night by its own place', () => {
    const [first] = plan.packing.nights
    if (first === undefined) throw new Error('the plan has a night')
    const bed = { ...first.bed, away: [...first.bed.away, { unitId: 'stove', state: 'outside' as const }] }
    const rows = rowsOf(whereBlocks({ ...inputOf({ nights: [{ ...first, bed }] }), nightId: 'n1' }, names))
    expect(rows.find(([piece]) => piece === 'Spirit stove')?.at(-1)).toBe('outside')
    expect(rows.find(([piece]) => piece === 'Pans and mugs')?.at(-1)).toBe('Load bay, front left')
  })
})

describe('the bays that are drawn', () => {
  const { drive } = plan.packing
  const bed = plan.packing.nights[0]?.bed ?? drive
  const bays = (blocks: readonly Block[]) => headingsOf(blocks).map(([, words]) => String(words).split(' · ')[0])

  it('are those that hold something, with what they hold and may hold', () => {
    const blocks = bayBlocks(inputOf(), names, drive, null)
    // The load bay holds seven units, the others few enough to stand side by side.
    expect(headingsOf(blocks)).toEqual([
      // 6900 + 2300 + 4200 + 2100 + 10500 + 7400 + 2600 g.
      [
        3,
        plain(`Load bay · ${text.size([1040, 1020, 780])} · ${text.mass(36_000).text} of ${text.mass(250_000).text}`),
      ],
      [
        3,
        plain(`Passenger seat · ${text.size([480, 460, 600])} · ${text.mass(3200).text} of ${text.mass(60_000).text}`),
      ],
      [
        3,
        plain(`Underfloor well · ${text.size([700, 500, 200])} · ${text.mass(6500).text} of ${text.mass(40_000).text}`),
      ],
    ])
    expect(blocks.at(-1)?.kind).toBe('beside')
  })

  it('at night are only those that differ, by unit, place or size', () => {
    expect(bays(bayBlocks(inputOf(), names, bed, drive))).toEqual(['Load bay', 'Passenger seat'])
    const changed = (change: Partial<Placement>) => ({
      ...drive,
      placements: drive.placements.map((one) => (one.unitId === 'lead' ? { ...one, ...change } : one)),
    })
    expect(bays(bayBlocks(inputOf(), names, drive, drive))).toEqual([])
    expect(bays(bayBlocks(inputOf(), names, changed({ atMm: [40, 41, 0] }), drive))).toEqual(['Underfloor well'])
    expect(bays(bayBlocks(inputOf(), names, changed({ atMm: [41, 40, 0] }), drive))).toEqual(['Underfloor well'])
    expect(bays(bayBlocks(inputOf(), names, changed({ sizeMm: [350, 300, 149] }), drive))).toEqual(['Underfloor well'])
    expect(bays(bayBlocks(inputOf(), names, changed({ unitId: 'boots' }), drive))).toEqual(['Underfloor well'])
    const reversed = { ...drive, placements: drive.placements.toReversed() }
    expect(bays(bayBlocks(inputOf(), names, reversed, drive))).toEqual([])
  })

  it('show the part of the made bed that lies in them, at night alone', () => {
    // The bed lies 330 mm up, 1900 mm long and 650 wide from the rear left corner: in the load bay 1040 mm of it.
    const dashed = (blocks: readonly Block[]) =>
      flat(blocks)
        .flatMap((block) => (block.kind === 'drawing' ? block.shapes : []))
        .flatMap((shape) => (shape.kind === 'rect' && shape.weightMm === 0.45 ? [shape.sizeMm] : []))
    expect(dashed(bayBlocks(inputOf(), names, drive, null))).toEqual([])
    const sizes = dashed(bayBlocks(inputOf(), names, bed, drive))
    // From above it is 650 mm wide, from the side 100 mm high.
    const perMm = (sizes[0]?.[0] ?? 0) / 1040
    expect(sizes.map(([, down]) => Math.round(down / perMm))).toEqual([650, 100])
    const away = { ...trip, vehicle: { ...trip.vehicle, bed: { ...trip.vehicle.bed, atMm: [0, 0, 780] as const } } }
    expect(dashed(bayBlocks(inputOf({}, away), names, bed, drive))).toEqual([])
  })

  it('keep their heading on the page of their first drawing', () => {
    const [head] = headed(1, 'Drive layout', bayBlocks(inputOf(), names, drive, null))
    expect(head?.kind === 'together' ? head.blocks.map(({ kind }) => kind) : []).toEqual([
      'heading',
      'heading',
      'drawing',
    ])
    expect(headed(2, 'Nothing', [])).toEqual([{ kind: 'heading', level: 2, text: 'Nothing' }])
    const paragraph: Block = { kind: 'paragraph', text: 'x', tone: 'plain' }
    expect(headed(2, 'One', [paragraph, paragraph])).toEqual([
      { kind: 'together', blocks: [{ kind: 'heading', level: 2, text: 'One' }, paragraph] },
      paragraph,
    ])
  })

  it('stand one above the other on a phone', () => {
    const blocks = bayBlocks({ ...inputOf(), drawingWidthMm: 96 }, names, drive, null)
    expect(blocks.some(({ kind }) => kind === 'beside')).toBe(false)
    const widths = flat(blocks).flatMap((block) => (block.kind === 'drawing' ? [block.widthMm] : []))
    expect(new Set(widths)).toEqual(new Set([96]))
  })
})
