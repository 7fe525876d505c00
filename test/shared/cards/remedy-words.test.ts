/** Remedies, their cost and what else changes, word for word; and the lines of the night's charts in the units they name. */
import { describe, expect, it } from 'vitest'
import { nightCard, sayCost, sayDifference, sayRemedy, siteSheet } from '../../../shared/cards/index.ts'
import type { Block, Drawing } from '../../../shared/cards/index.ts'
import type { ProposedChange } from '../../../shared/document/index.ts'
import type { Difference, Remedy } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsPlan, cardsTrip, ownStep } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const plan = cardsPlan(trip)
const text = createText('en', 'metric')
const plain = (said: string): string => said.replaceAll('\u00a0', ' ')
const [piece, other] = trip.kit.pieces
const [bin] = trip.kit.bins
if (piece === undefined || other === undefined || bin === undefined) throw new Error('the trip has a kit')
const heated = {
  ...trip,
  vehicle: { ...trip.vehicle, bedHeaters: [{ id: 'pad', name: 'Pad', kind: 'underblanket', powerW: 50 } as const] },
}

describe('a remedy', () => {
  const nightId = 'n1'
  it.each<[object, string]>([
    [{ kind: 'bring-bedding', nightId, pieceId: piece.id }, `Use ${piece.name} in the bed`],
    [{ kind: 'bring-piece', pieceId: bin.id }, `Pack ${bin.name}`],
    [{ kind: 'bring-piece', pieceId: 'ghost' }, 'Pack ghost'],
    [{ kind: 'set-point', nightId, byK: 2 }, 'Hold the cabin 2 °C warmer'],
    [{ kind: 'set-point', nightId, byK: -1 }, 'Hold the cabin 1 °C cooler'],
    [{ kind: 'charge-limit', nightId, to01: 0.9 }, 'Charge to 90 %'],
    [{ kind: 'stop-on-the-way', nightId, atM: 84_000 }, 'Stop at 84 km to charge'],
    [{ kind: 'leave-behind', pieceIds: [piece.id, other.id] }, `Leave behind: ${piece.name} and ${other.name}`],
    [{ kind: 'covers', nightId }, 'Hang the window covers'],
    [{ kind: 'bed-heater', nightId, heaterId: 'pad' }, 'Run Pad'],
    [{ kind: 'bed-heater', nightId, heaterId: 'gone' }, 'Run gone'],
    [{ kind: 'current', nightId, toA: 8 }, 'Ask for 8 A'],
    [{ kind: 'window-gap', nightId, toMm: 15 }, 'Open the windows to 15 mm'],
    [{ kind: 'target-later', nightId, byMin: 20 }, 'Be at the target 20 min later'],
    [{ kind: 'arrive-earlier', nightId, byMin: 90 }, 'Arrive 1 h 30 min earlier'],
    [{ kind: 'leave-earlier', nightId, byMin: 5 }, 'Get up and leave 5 min earlier'],
    [{ kind: 'without-hookup', nightId }, 'Sleep without this post'],
    [{ kind: 'turn-piece', pieceId: piece.id }, `Let ${piece.name} lie on any side`],
    [{ kind: 'unlock', pieceId: piece.id, layout: 'drive' }, `Free ${piece.name} from its fixed place`],
    [
      {
        kind: 'together',
        changes: [
          { kind: 'covers', nightId },
          { kind: 'current', nightId, toA: 8 },
        ],
      },
      'Hang the window covers and Ask for 8 A',
    ],
  ])('%o', (change, expected) => {
    expect(plain(sayRemedy(change as ProposedChange, heated, text))).toBe(expected)
  })

  const free = { litres: 0, moves: 0, degreesK: 0, charge01: 0, money: 0, minutes: 0 }
  it.each<[Partial<Remedy['cost']>, string]>([
    [{}, 'costs nothing else'],
    [{ litres: 12 }, '12 l of room'],
    [{ moves: 1 }, 'one more move'],
    [{ moves: 3 }, '3 more moves'],
    [{ degreesK: 2 }, '2 °C less warmth'],
    [{ charge01: 0.05 }, '5 % of charge'],
    [{ money: 3.5 }, '€3.50'],
    [{ minutes: 20 }, '20 min of your time'],
    [
      { litres: 12, moves: 1, degreesK: 2, charge01: 0.2, money: 3, minutes: 1.5 },
      '12 l of room, one more move, 2 °C less warmth, 20 % of charge, €3.00 and 2 min of your time',
    ],
    [{ litres: -12, moves: -1, degreesK: -2, charge01: -0.2, money: -3, minutes: -5 }, 'costs nothing else'],
  ])('costs %o: %s', (cost, expected) => {
    const euros = { ...trip, preferences: { ...trip.preferences, currency: 'EUR' } }
    expect(plain(sayCost({ cost: { ...free, ...cost } } as Remedy, euros, text))).toBe(expected)
  })
})

describe('a difference', () => {
  const steps = ['One.', 'Two.', 'Three.', 'Four.', 'Five.'].map((step, index) =>
    ownStep(`s${index}`, index === 0 ? 'gone' : 'n1', 'bedtime', step),
  )
  const say = (difference: Partial<Difference>, length?: 'brief') =>
    plain(
      sayDifference(
        { nightId: null, params: {}, code: 'steps-added', ...difference } as Difference,
        trip,
        text,
        length,
      ),
    )

  it('names its steps, in brief the first three', () => {
    const added = plain(text.t('whatIf.steps-added', { count: 5 }))
    expect(say({ params: { count: 5 }, steps })).toBe(`${added}: One; Two; Three; Four; Five`)
    expect(say({ params: { count: 5 }, steps }, 'brief')).toBe(
      `${added}: One; Two; Three; ${plain(text.t('whatIf.more', { count: 2 }))}`,
    )
    expect(say({ params: { count: 3 }, steps: steps.slice(0, 3) }, 'brief')).toMatch(/: One; Two; Three$/)
  })

  it('names its units, and its problem in a sentence of its own', () => {
    const units = ['a', 'b', 'c', 'd']
    const whole = say({ code: 'drive-other-place', params: { units, count: 4 } })
    expect(whole).toContain('a, b, c and d')
    const brief = say({ code: 'drive-other-place', params: { units, count: 4 } }, 'brief')
    expect(brief).toContain('a, b, c and')
    expect(brief).not.toMatch(/\bd\b/)
    const problem = { code: 'night-earth-missing', path: [], params: {} }
    expect(say({ code: 'shortfall-added', problem })).toMatch(
      / No earth at this post\. Do not plug in; tell the host\.$/,
    )
  })
})

const flat = (block: Block): readonly Block[] => (block.kind === 'together' ? block.blocks.flatMap(flat) : [block])

describe('the charts of a night', () => {
  const drawings = nightCard({ plan, trip, text, nightId: 'n1', paper: 'a4' })
    .blocks.flatMap(flat)
    .filter((block): block is Drawing => block.kind === 'drawing')
  const titled = (title: string): Drawing | undefined =>
    drawings.find(({ shapes }) => shapes.some((shape) => shape.kind === 'label' && shape.text === title))
  const scale = (drawing: Drawing | undefined): readonly number[] =>
    (drawing?.shapes ?? []).flatMap((shape) =>
      shape.kind === 'label' && shape.anchor === 'end' && shape.atMm[0] < 14
        ? [Number(shape.text.replace('\u2212', '-').replace(/[^\d.-]/g, ''))]
        : [],
    )

  it('have charge in per cent: 41 to 64 lie within their scale, and it ends nowhere near one', () => {
    const marks = scale(titled(text.t('cards.chart.charge')))
    expect(Math.min(...marks)).toBeLessThanOrEqual(41)
    expect(Math.max(...marks)).toBeGreaterThanOrEqual(64)
    expect(Math.min(...marks)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...marks)).toBeLessThanOrEqual(100)
  })
})

describe('the no-coverage sheet', () => {
  it('says how to ask for help, and leaves blanks to fill', () => {
    const { blocks } = siteSheet({ plan, trip, text, nightId: 'n1', paper: 'a4' })
    expect(blocks.slice(-3).map((block) => [block.kind, block.kind === 'paragraph' ? block.text : ''])).toEqual([
      ['paragraph', text.t('cards.site.emergency')],
      ['paragraph', 'Read out the coordinates. Say how many you are and what you see. Stay with the vehicle.'],
      ['blanks', ''],
    ])
  })
})
