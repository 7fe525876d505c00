/** Moves of the changeover told as steps: which way, through which door, in which order. */
import { describe, expect, it } from 'vitest'
import { moveSteps } from '../../../shared/plan/inputs/move-steps.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const { packing } = cardsPlan(trip)
const [first] = trip.nights
const [packed] = packing.nights
if (first === undefined || packed === undefined) throw new Error('no night')

type Moves = typeof packed.changeover.moves
type Place = Extract<Moves[number]['from'], { readonly bayId: string }>

const [placement] = packing.drive.placements
if (placement === undefined) throw new Error('nothing is packed')
const water = (atMm: Place['atMm'], bayId = 'load'): Place => ({ ...placement, unitId: 'water', bayId, atMm })
const move = (
  from: Moves[number]['from'],
  to: Moves[number]['to'],
  over: Partial<Moves[number]> = {},
): Moves[number] => ({
  unitId: 'water',
  from,
  to,
  waits: false,
  door: null,
  ...over,
})

const told = (dusk: Moves, dawn: Moves = []): ReturnType<typeof moveSteps> =>
  moveSteps(
    trip,
    {
      ...packing,
      nights: [
        {
          ...packed,
          changeover: { ...packed.changeover, moves: dusk },
          changeback: { ...packed.changeback, moves: dawn },
        },
      ],
    },
    first,
  )

const words = (language: 'en' | 'de', dusk: Moves, dawn: Moves = []): readonly string[] => {
  const text = createText(language, 'metric')
  return told(dusk, dawn).map(({ text: { step: key }, params }) => (text.has(key) ? text.t(key, params) : key))
}

describe('a move', () => {
  it.each([
    ['to the front', [50, 20, 0], 'front'],
    ['to the rear', [-50, 20, 0], 'rear'],
    ['to the right', [10, 20, -5], 'right'],
    ['to the left', [10, -20, 0], 'left'],
    ['up', [10, 20, 30], 'up'],
    ['down', [10, 20, -30], 'down'],
    ['by the longest part of its way, the way along before the way across', [20, -20, 20], 'front'],
    ['and the way across before the way up', [10, -20, 20], 'left'],
    ['on the spot', [0, 0, 0], 'turned'],
  ] as const)('within its bay goes %s', (_, [x, y, z], spot) => {
    const [step] = told([move(water([100, 200, 50]), water([100 + x, 200 + y, 50 + z]))])
    expect(step?.text).toEqual({ kind: 'key', step: 'move.dusk.within', reason: 'move.dusk.reason' })
    expect(step?.params['spot']).toBe(spot)
  })

  it('is told in whole sentences of both languages, at dusk and back', () => {
    const there = move(water([0, 0, 0]), water([0, 0, 0], 'seat'), { door: 'tailgate' })
    const back = move(water([0, 0, 0], 'seat'), water([0, 0, 0]), { waits: true })
    const within = move(water([0, 0, 0]), water([90, 0, 0]))
    expect(words('en', [there, within], [back, within])).toEqual([
      'Move Water can: Load bay › Passenger seat.',
      'Shift Water can within Load bay: towards the front.',
      'Set Water can down for now: Passenger seat › Load bay.',
      'Shift Water can back within Load bay: towards the front.',
    ])
    for (const sentence of words('de', [there, within], [back, within])) expect(sentence).not.toMatch(/move\.|[{}]/)
  })

  it('comes after the one before it; the first at dusk after the bed is prepared, the first in the morning after none', () => {
    const one = move(water([0, 0, 0]), water([0, 0, 0], 'seat'))
    const steps = told([one, one], [one])
    expect(steps.map(({ key, after, phase }) => [key, after, phase])).toEqual([
      ['move-dusk:n1:water', ['bed-prepare'], 'before-dark'],
      ['move-dusk:n1:water:2', ['move-dusk:n1:water'], 'before-dark'],
      ['move-dawn:n1:water', [], 'morning'],
    ])
  })

  it('is told for no night that was not packed', () => {
    expect(moveSteps(trip, { ...packing, nights: [] }, first)).toEqual([])
  })
})
