/** Printed cards say everything the plan says: every unit, piece, move, time, limit and step, in both languages and unit systems. */
import { describe, expect, it } from 'vitest'
import { checklistCard, loadCard, nightCard, siteSheet, textWidthMm } from '../../../shared/cards/index.ts'
import type { Block, CardDocument, CardInput, Drawing, Shape } from '../../../shared/cards/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsPlan, cardsTrip, ownStep } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const plan = cardsPlan(trip)
const input = (over: Partial<CardInput> = {}): CardInput => ({
  plan,
  trip,
  text: createText('en', 'metric'),
  nightId: null,
  paper: 'a4',
  ...over,
})

const flat = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) =>
    block.kind === 'together' ? flat(block.blocks) : block.kind === 'beside' ? block.columns.flatMap(flat) : [block],
  )
const drawingsOf = (card: CardDocument): readonly Drawing[] =>
  flat(card.blocks).filter((block) => block.kind === 'drawing')
const ticksOf = (card: CardDocument) =>
  flat(card.blocks).flatMap((block) => (block.kind === 'ticks' ? block.items : []))
const tableRows = (card: CardDocument): readonly (readonly string[])[] =>
  flat(card.blocks).flatMap((block) => (block.kind === 'table' ? block.rows : []))

/** All words on a card, in order. */
function wordsOf(card: CardDocument): string {
  return flat(card.blocks)
    .flatMap((block): readonly string[] => {
      switch (block.kind) {
        case 'heading':
        case 'paragraph':
          return [block.text]
        case 'notice':
          return [block.label, block.text]
        case 'figures':
          return block.items.flatMap((item) => [item.label, item.value])
        case 'table':
          return [...block.columns.map((column) => column.title), ...block.rows.flat()]
        case 'ticks':
          return block.items.flatMap((item) => [item.text, item.detail ?? '', item.time ?? ''])
        case 'blanks':
          return block.labels
        case 'drawing':
          return block.shapes.flatMap((shape) => (shape.kind === 'label' ? [shape.text] : []))
        default:
          return []
      }
    })
    .join('\n')
    .replaceAll('\u00a0', ' ')
}

const pointsOf = (shape: Shape): readonly (readonly [number, number])[] => {
  if (shape.kind === 'line') return [shape.fromMm, shape.toMm]
  if (shape.kind === 'rect') return [shape.atMm, [shape.atMm[0] + shape.sizeMm[0], shape.atMm[1] + shape.sizeMm[1]]]
  return shape.kind === 'polyline' ? shape.pointsMm : [shape.atMm]
}

describe('the load card', () => {
  const card = loadCard(input())
  const said = wordsOf(card)

  it('lists every piece with its place on the road and at night, bin contents included', () => {
    const nights = trip.nights.length
    const rows = tableRows(card).filter((cells) => cells.length === 3 + nights)
    const placed = trip.kit.pieces.filter((piece) => {
      const row = rows.find((cells) => cells[0] === piece.name)
      return row !== undefined && row.slice(2).every((place) => place !== 'not placed')
    })
    expect(placed).toEqual(trip.kit.pieces)
    const pans = rows.find((cells) => cells[0] === 'Pans and mugs')
    const places = Array.from({ length: 1 + nights }, () => 'Load bay, front left')
    expect(pans).toEqual(['Pans and mugs', '2 Kitchen crate', ...places])
  })

  it('tells a night that stands and moves as an earlier one in a line', () => {
    const [first, second] = plan.packing.nights
    if (first === undefined || second === undefined) throw new Error('the plan has two nights')
    const wordsWith = (packing: Partial<typeof first>): string => {
      const nights = [first, { ...first, nightId: second.nightId, ...packing }]
      return wordsOf(loadCard(input({ plan: { ...plan, packing: { ...plan.packing, nights } } })))
    }
    const line = `As on the night of ${createText('en', 'metric').date(trip.nights[0]?.date ?? '')}: the same places, the same moves.`
    expect(wordsWith({})).toContain(line)
    expect(wordsWith({ changeover: { ...first.changeover, moves: first.changeover.moves.slice(1) } })).not.toContain(
      line,
    )
  })

  it('numbers units in loading order, on the drawings as in the table', () => {
    const labels = drawingsOf(card).flatMap((drawing) =>
      drawing.shapes.flatMap((shape) => (shape.kind === 'label' ? [shape.text] : [])),
    )
    const numbers = plan.packing.loadingOrder.map((_, index) => String(index + 1))
    const inTable = new Set(tableRows(card).map((cells) => cells[0]))
    expect(numbers.filter((number) => !labels.includes(number) || !inTable.has(number))).toEqual([])
  })

  it('draws each step of loading from above and from the right: the unit that goes in in full ink, those before it in thin lines', () => {
    const { drive, loadingOrder } = plan.packing
    const steps = drawingsOf(card).filter((drawing) =>
      drawing.shapes.some((shape) => shape.kind === 'rect' && shape.fill === 'ink'),
    )
    const inked = steps.flatMap((drawing) =>
      drawing.shapes.flatMap((shape) => (shape.kind === 'label' && shape.onInk === true ? [shape.text] : [])),
    )
    const numbers = loadingOrder.map((_, index) => String(index + 1))
    expect(inked).toEqual(numbers.flatMap((number) => [number, number]))
    const boxes = steps.flatMap((drawing) => drawing.shapes.filter((shape) => shape.kind === 'rect'))
    expect(boxes.filter((box) => box.fill === 'ink')).toHaveLength(2 * loadingOrder.length)
    const bayOf = (id: string) => drive.placements.find((one) => one.unitId === id)?.bayId
    const inAlready = loadingOrder.reduce(
      (sum, id, index) => sum + loadingOrder.slice(0, index).filter((other) => bayOf(other) === bayOf(id)).length,
      0,
    )
    const obstacles = loadingOrder.reduce(
      (sum, id) => sum + (trip.vehicle.bays.find((bay) => bay.id === bayOf(id))?.obstacles.length ?? 0),
      0,
    )
    expect(inAlready).toBeGreaterThan(0)
    expect(boxes.filter((box) => box.fill === 'none')).toHaveLength(2 * (inAlready + obstacles))
  })

  it('names what must come out first', () => {
    expect(tableRows(card)).toContainEqual(['2', 'Kitchen crate', 'Load bay, front left', '4, 5, 7', '6.9\u00a0kg'])
  })

  it('tells each move as the load stands at that moment, waiting places included', () => {
    const moves = tableRows(card).filter((cells) => cells.length === 5 && /^\d+\.$/.test(cells[0] ?? ''))
    expect(moves.slice(0, 5).map((cells) => cells.slice(0, 4))).toEqual([
      ['1.', '8 Boots', 'Load bay, rear right, on 7 Clothes bag', 'outside'],
      [
        '2.',
        '5 Winter quilt',
        'Load bay, front right, on 4 Mattress',
        'wait: Passenger seat, left, on 9 Bat detectors',
      ],
      ['3.', '7 Clothes bag', 'Load bay, rear right', 'Passenger seat, left, on 9 Bat detectors'],
      ['4.', '4 Mattress', 'Load bay, front centre, on 2 Kitchen crate', 'made into the bed'],
      ['5.', '5 Winter quilt', 'Passenger seat, left, on 9 Bat detectors', 'made into the bed'],
    ])
  })

  it('tells a piece that leaves its bin when the bin stands free, without counting it as a move', () => {
    const crate = plan.packing.units.find((unit) => unit.kind === 'bin' && unit.pieceIds.length > 0)
    const [pieceId = ''] = crate?.pieceIds ?? []
    const binMoves = [{ pieceId, binId: crate?.id ?? '', state: 'in-use', afterMoves: 1 } as const]
    const nights = plan.packing.nights.map((one) => ({ ...one, changeover: { ...one.changeover, binMoves } }))
    const rows = tableRows(loadCard(input({ nightId: 'n1', plan: { ...plan, packing: { ...plan.packing, nights } } })))
    const at = rows.findIndex((cells) => cells[0] === '1.')
    const name = trip.kit.pieces.find(({ id }) => id === pieceId)?.name
    expect(rows[at + 1]).toEqual(['', name, 'in 2 Kitchen crate', 'in use', ''])
    expect(rows[at + 2]?.[0]).toBe('2.')
  })

  it('shows what is left under each limit and says by how much one is passed', () => {
    expect(tableRows(card)).toContainEqual(['Payload', '46\u00a0kg', '394\u00a0kg', '348\u00a0kg'])
    const mass = { ...plan.packing.mass, loadG: 400_000, payloadG: 394_000 }
    const heavy = loadCard(input({ plan: { ...plan, packing: { ...plan.packing, mass } } }))
    expect(wordsOf(heavy)).toContain('6 kg over')
  })

  it('keeps every drawing within the width of the paper and its own height', () => {
    for (const paper of ['a4', 'letter'] as const) {
      const drawings = drawingsOf(loadCard(input({ paper })))
      expect(drawings.length).toBeGreaterThan(4)
      for (const drawing of drawings) {
        expect(drawing.widthMm).toBeLessThanOrEqual(textWidthMm(paper))
        for (const [x, y] of drawing.shapes.flatMap(pointsOf)) {
          expect(x).toBeGreaterThanOrEqual(0)
          expect(x).toBeLessThanOrEqual(drawing.widthMm)
          expect(y).toBeGreaterThanOrEqual(0)
          expect(y).toBeLessThanOrEqual(drawing.heightMm)
        }
      }
    }
  })

  it('hatches wheel arches and draws the made bed in the bed layout only', () => {
    const [first] = drawingsOf(card)
    expect(first?.shapes.filter((shape) => shape.kind === 'line' && shape.weightMm < 0.15).length).toBeGreaterThan(20)
    const withBed = drawingsOf(card).filter((drawing) =>
      drawing.shapes.some((shape) => shape.kind === 'label' && shape.text === 'bed'),
    )
    expect(withBed.length).toBeGreaterThan(0)
    const driveOnly = loadCard(input({ plan: { ...plan, packing: { ...plan.packing, nights: [] } } }))
    const labels = drawingsOf(driveOnly).flatMap((drawing) => drawing.shapes.filter((shape) => shape.kind === 'label'))
    expect(labels.map((shape) => shape.text)).not.toContain('bed')
  })

  it('says of what found no place what stood against it in each bay, and what would place it', () => {
    const [bay] = trip.vehicle.bays
    const [piece, other] = trip.kit.pieces
    const left = {
      unitId: piece?.id ?? '',
      layout: 'drive',
      nightId: null,
      why: [{ bayId: bay?.id ?? '', rule: 'no-room', shortByMm: 40 }],
      cure: { kind: 'leave-behind', unitIds: [other?.id ?? ''] },
    } as const
    const row = tableRows(
      loadCard(input({ plan: { ...plan, packing: { ...plan.packing, driveUnplaced: [left] } } })),
    ).find((cells) => cells[0] === piece?.name && cells.length === 4)
    const spoken = row?.map((cell) => cell.replaceAll('\u00a0', ' '))
    expect(spoken?.slice(1)).toEqual([
      'On the road',
      expect.stringMatching(new RegExp(`^${bay?.name}: .+ \\(40 mm too little\\)$`)),
      `Leave ${other?.name} behind.`,
    ])
  })

  it('speaks of one night only when asked for one', () => {
    expect(said).toContain('Lake pitch')
    expect(wordsOf(loadCard(input({ nightId: 'n1' })))).not.toContain('Lake pitch')
  })
})

describe('the night card', () => {
  const card = nightCard(input({ nightId: 'n1' }))
  const said = wordsOf(card)

  it.each([
    'Does not hold: one reason. 64 % at departure; 6.9 kWh in hand after the leg; coldest 7 °C at 05:40; 5 moves at dusk.',
    'Current to ask for\n12 A',
    'Limited by\nthe breaker',
    'Step the current down below\n215 V',
    'Stop charging below\n207 V',
    'Ada\ncold\n−2.2 °C\n03:20\n02:10',
    'Bo & <i>Zoë</i>\nwarm enough',
    'Stop after 84 km: Valley car park\n31 % › 60 %, 25 min',
    'Supply lost at 03:00',
    '88 mm under the rear wheels',
    'Bedding: Winter quilt · Mattress.',
    'Sunset',
    'Feet cold from',
  ])('says "%s"', (sentence) => {
    expect(said).toContain(sentence)
  })

  it('puts times in order', () => {
    const clocks = ['16:10', '16:52', '17:24', '22:00', '05:45']
    const places = clocks.map((clock) => said.indexOf(clock, said.indexOf('Times')))
    expect(places).toEqual(places.toSorted((a, b) => a - b))
  })

  it('draws each line of the charts with one point a step, inside the drawing', () => {
    const drawings = drawingsOf(card)
    expect(drawings).toHaveLength(3)
    const lines = drawings.flatMap((drawing) => drawing.shapes.filter((shape) => shape.kind === 'polyline'))
    expect(lines).toHaveLength(7)
    for (const line of lines) expect(line.pointsMm).toHaveLength(96)
    for (const drawing of drawings) {
      for (const [x, y] of drawing.shapes.flatMap(pointsOf)) {
        expect(x).toBeLessThanOrEqual(drawing.widthMm)
        expect(y).toBeLessThanOrEqual(drawing.heightMm)
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(0)
      }
    }
  })

  it('never asks for more than the circuit bears', () => {
    const greedy = {
      ...plan,
      nights: plan.nights.map((one) => ({
        ...one,
        input: { ...one.input, decisions: { ...one.input.decisions, currentA: 32 } },
      })),
    }
    expect(wordsOf(nightCard(input({ plan: greedy })))).toContain('Current to ask for\n12 A')
  })

  it('says that there is no hookup where there is none', () => {
    const bare = { ...plan, nights: plan.nights.map((one) => ({ ...one, outcome: { ...one.outcome, supply: null } })) }
    expect(wordsOf(nightCard(input({ plan: bare })))).toContain('No hookup this night')
  })

  it('puts shortfalls before cautions', () => {
    const tones = flat(card.blocks).flatMap((block) => (block.kind === 'notice' ? [block.tone] : []))
    expect(tones).toEqual(['shortfall', 'caution'])
  })
})

describe('the checklist card', () => {
  it('has a box for each step in the order of the phases, with time, reason and state', () => {
    const card = checklistCard(input({ nightId: 'n1' }))
    expect(ticksOf(card)).toEqual([
      {
        text: 'Put the blue adapter in the power crate',
        detail: 'Because the night is cold.',
        time: 'Fri\u00a017:00',
        state: 'open',
        caution: true,
      },
      {
        text: 'Call the site: late arrival',
        // Said by the line before it, in the same phase.
        detail: null,
        time: 'Fri\u00a017:00',
        state: 'done',
        caution: false,
      },
      // What the second night needs from home stands here too.
      {
        text: 'Put the blue adapter in the power crate',
        detail: null,
        time: 'Fri\u00a017:00',
        state: 'open',
        caution: true,
      },
      {
        text: 'Call the site: late arrival',
        detail: null,
        time: 'Fri\u00a017:00',
        state: 'done',
        caution: false,
      },
      {
        text: 'Test the post before parking for good',
        detail: 'Because the night is cold. Start by 16:30.',
        time: 'by 16:50',
        state: 'open',
        caution: false,
      },
      {
        text: 'Window covers in, <both> sides open a finger',
        detail: 'Because the night is cold.',
        time: '17:00',
        state: 'skipped',
        caution: false,
      },
      {
        text: 'Unplug: post first, then the vehicle',
        detail: 'Because the night is cold.',
        time: '17:00',
        state: 'open',
        caution: false,
      },
    ])
  })

  it('loses no step, whatever its phase', () => {
    const phases = [
      'before-leaving',
      'on-the-road',
      'arriving',
      'before-dark',
      'bedtime',
      'in-the-night',
      'morning',
      'at-the-target',
      'check-out',
      'back-home',
    ] as const
    const steps = phases.map((phase) => ownStep(`k-${phase}`, 'n1', phase, `do ${phase}`))
    const full = cardsPlan(trip, { checklist: { steps, conflicts: [] } })
    expect(ticksOf(checklistCard(input({ plan: full }))).map((item) => item.text)).toEqual(
      phases.map((phase) => `do ${phase}`),
    )
  })
})

describe('the no-coverage sheet', () => {
  it('gives coordinates in two forms, phone, gate code, charger and indoor bed', () => {
    const said = wordsOf(siteSheet(input({ nightId: 'n1' })))
    for (const part of [
      '46.72118, -9.98812',
      '46°43′16.2″ N, 9°59′17.2″ W',
      '+00 555 0100',
      '4711#',
      'Valley car park',
      'Bunk room',
      '13:00 – 19:00',
      '112',
    ]) {
      expect(said).toContain(part)
    }
  })

  it('says what is not known', () => {
    const [first, ...rest] = trip.nights
    if (first === undefined) throw new Error('no night')
    const { latitudeDeg, longitudeDeg, elevationM, zone, name } = first.site
    const bare = cardsTrip({
      nights: [{ ...first, site: { latitudeDeg, longitudeDeg, elevationM, zone, name } }, ...rest],
    })
    expect(tableRows(siteSheet(input({ trip: bare, nightId: 'n1' })))).toContainEqual(['Gate code', 'not known'])
  })
})

describe('in German and in US units', () => {
  it('leaves no English key or metric unit behind', () => {
    const german = input({ text: createText('de', 'metric') })
    const us = input({ text: createText('en', 'us'), paper: 'letter' })
    for (const make of [loadCard, nightCard, checklistCard, siteSheet]) {
      expect(wordsOf(make(german))).not.toMatch(/\bcards\.|\bphase\.|\{[a-zA-Z]+\}/)
      // The user's own words stay as they were typed.
      expect(wordsOf(make(us)).replaceAll('12 km down', '')).not.toMatch(/\d\s(kg|cm|km|°C)\b/)
    }
    expect(wordsOf(nightCard(german))).toContain('Einzustellender Strom\n12 A')
    expect(wordsOf(nightCard(us))).toContain('5:40 AM')
  })
})
