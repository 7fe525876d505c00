/** What is said of reasons, actions, deadlines, sleepers and worse nights, word for word. */
import { describe, expect, it } from 'vitest'
import {
  beddingName,
  sayAction,
  sayDeadline,
  sayReason,
  saySensitivity,
  saySleeper,
} from '../../../shared/cards/night-words.ts'
import type { Reason, Spoken } from '../../../shared/cards/night-words.ts'
import { siteRows } from '../../../shared/cards/site-sheet.ts'
import { createText } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const plan = cardsPlan(trip)
const [night] = plan.nights
if (night === undefined) throw new Error('the plan has a night')
const text = createText('en', 'metric')
const plain = (said: string): string => said.replaceAll('\u00a0', ' ')
const zone = 'UTC'
const spoken = (over: object = {}): Spoken => ({
  trip,
  text,
  night: { ...night, clock: { ...night.clock, zone }, ...over } as Spoken['night'],
})
const at = (clock: string): Utc => (Date.parse(`2026-11-14T${clock}:00Z`) / 1000) as Utc

/** Pieces of bedding of our own, in the kit's order. */
const bedding = (id: string, kind: string, more: object = {}) => ({
  ...trip.kit.pieces[0],
  id,
  name: `the ${id}`,
  bedding: { kind, ...more },
})
const laid = (sets: readonly object[], setId: string | undefined): string => {
  const pieces = [
    bedding('bag', 'bag'),
    bedding('quilt', 'quilt'),
    bedding('blanket', 'blanket'),
    bedding('pillow', 'pillow'),
    bedding('mat', 'mat', { matM2KPerW: 0.5 }),
    { ...trip.kit.pieces[0], id: 'coat', name: 'the coat', bedding: undefined },
  ]
  const other = { ...trip, kit: { ...trip.kit, pieces } } as unknown as Spoken['trip']
  return beddingName({ ...spoken({ beddingSets: sets }), trip: other }, setId)
}

describe('bedding by name', () => {
  const now = { id: 'now', pieceIds: ['bag', 'mat'] }
  it.each<[string, readonly string[], string]>([
    ['what covers', ['bag', 'quilt', 'blanket'], 'the bag, the quilt and the blanket'],
    ['no pillow, no coat', ['pillow', 'coat', 'bag'], 'the bag'],
    ['no mat that lies there anyway', ['bag', 'mat'], 'the bag'],
    ['nothing that covers', ['pillow'], 'as the vehicle has it'],
  ])('names %s', (_, pieceIds, expected) => {
    expect(laid([now, { id: 'set', pieceIds }], 'set')).toBe(expected)
  })

  it('names a mat that does not lie there now', () => {
    expect(
      laid(
        [
          { id: 'now', pieceIds: ['bag'] },
          { id: 'set', pieceIds: ['bag', 'mat'] },
        ],
        'set',
      ),
    ).toBe('the bag and the mat')
  })

  it('knows nothing of a set that is not there', () => {
    expect(laid([now], 'gone')).toBe('as the vehicle has it')
    expect(laid([], undefined)).toBe('as the vehicle has it')
  })
})

describe('reasons', () => {
  const reasons: readonly (readonly [Reason, string])[] = [
    [{ code: 'warm-in-hand', valueK: 2.5 }, '2.5 °C in hand at the bed.'],
    [{ code: 'too-cold-by', valueK: 1.5 }, '1.5 °C short at the bed.'],
    [{ code: 'leg-in-hand', valueWh: 6930 }, '6.9 kWh in hand after the leg and its reserve.'],
    [{ code: 'leg-short-by', valueWh: 800 }, '800 Wh short for the leg and its reserve.'],
    [{ code: 'saves-moves', value: 1 }, '1 lift fewer at dusk.'],
    [{ code: 'saves-moves', value: 3 }, '3 lifts fewer at dusk.'],
    [{ code: 'bed-heat-first', valueW: 55 }, '55 W in the bed before heating the air.'],
    [{ code: 'lower-asleep', valueC: 8 }, 'Down to 8 °C while everyone sleeps.'],
    [{ code: 'pre-warm', fromUtc: at('05:15'), onSite: false }, 'Warms up again from 05:15.'],
    [{ code: 'pre-warm', fromUtc: at('05:15'), onSite: true }, 'Warms up again from 05:15, on site power.'],
    [{ code: 'less-current', valueA: 8 }, '8 A is enough: less heat in every contact.'],
    [{ code: 'charge-enough', value01: 0.7 }, 'A charge limit of 70 % is enough for the leg; more would cost more.'],
    [{ code: 'stop-to-charge' }, 'The leg works with a stop to charge.'],
    [{ code: 'covers-up' }, 'Covers up.'],
  ] as const
  it.each(reasons.map(([reason, expected]) => [reason.code, reason, expected] as const))(
    '%s',
    (_, reason, expected) => {
      expect(plain(sayReason(spoken(), reason))).toBe(expected)
    },
  )

  it('tell the gap of the recommended plan and the money in its currency', () => {
    const front = [{ decisions: { windowGapMm: 5 } }, { decisions: { windowGapMm: 15 } }]
    const search = { front, recommendedIndex: 1 }
    expect(plain(sayReason(spoken({ search }), { code: 'window-open' } as Reason))).toBe(
      'Window open by 15 mm for fresh air.',
    )
    expect(plain(sayReason(spoken(), { code: 'window-open' } as Reason))).toBe('Window open by 0 mm for fresh air.')
    const money = { ...spoken(), trip: { ...trip, preferences: { ...trip.preferences, currency: 'GBP' } } }
    expect(sayReason(money, { code: 'saves-money', value: 3.2 } as Reason)).toBe('£3.20 less than the dearest plan.')
  })
})

describe('actions', () => {
  it.each([
    [{ code: 'lower-heating', tempC: 8 }, 'Take the heating down to 8 °C.'],
    [{ code: 'reset-lower', heldA: 10 }, 'Take the current down to 10 A, then reset the breaker once.'],
    [{ code: 'reset-lower', heldA: null }, 'Take the current down by a third, then reset the breaker once.'],
    [{ code: 'heating-off' }, 'Switch the heating off.'],
    [{ code: 'bed-heaters-on' }, 'Switch the bed heaters on.'],
    [{ code: 'covers-up' }, 'Put the window covers up.'],
    [{ code: 'move-indoors' }, 'Wake everyone and move to a warm place.'],
    [{ code: 'warmer-bedding', setId: 'gone' }, 'Change to the warmer bedding: as the vehicle has it.'],
  ] as const)('%o', (action, expected) => {
    expect(plain(sayAction(spoken(), action))).toBe(expected)
  })

  const advice = {
    actions: [{ code: 'heating-off' }],
    holds: true,
    marginK: 1,
    depart01: null,
    legMarginWh: null,
  } as const
  it.each([
    [{ ...advice, byUtc: null, byColdUtc: null }, 'Then everyone stays warm enough and the leg works.'],
    [
      { ...advice, byUtc: at('03:20'), byColdUtc: null, holds: false },
      'By 03:20. This is the best that can be done; it will not be enough.',
    ],
    [
      { ...advice, byUtc: at('03:20'), byColdUtc: at('04:10') },
      'By 03:20. Someone turns cold from 04:10. Then everyone stays warm enough and the leg works.',
    ],
    [
      { ...advice, byUtc: at('03:20'), byColdUtc: at('03:20') },
      'By 03:20. Then everyone stays warm enough and the leg works.',
    ],
    [
      { ...advice, byUtc: null, byColdUtc: at('04:10') },
      'Someone turns cold from 04:10. Then everyone stays warm enough and the leg works.',
    ],
    [
      { ...advice, actions: [], byUtc: at('03:20'), byColdUtc: null },
      'Nothing need be done: everyone stays warm enough and the leg works.',
    ],
  ])('have a deadline: %#', (given, expected) => {
    expect(sayDeadline(spoken(), given)).toBe(expected)
  })
})

describe('a worse night', () => {
  const said = (colder: object, thirstier: object) =>
    saySensitivity(spoken({ search: { sensitivity: { colder, thirstier } } })).map(plain)

  it('is told where it was reckoned', () => {
    expect(saySensitivity(spoken({ search: null }))).toEqual([])
    expect(saySensitivity(spoken({ search: {} }))).toEqual([])
    expect(said({ comfortMarginK: 1.5, depart01: 0.6 }, { legMarginWh: 2500 })).toEqual([
      'If it is 5 K colder: still 1.5 °C in hand at the bed. 60 % on leaving.',
      'If the leg takes 10 % more: still 2.5 kWh in hand.',
    ])
    expect(said({ comfortMarginK: -1.5, depart01: null }, { legMarginWh: -2500 })).toEqual([
      'If it is 5 K colder: 1.5 °C short at the bed.',
      'If the leg takes 10 % more: 2.5 kWh short, so plan a stop.',
    ])
    expect(said({ comfortMarginK: 0, depart01: null }, { legMarginWh: 0 })).toEqual([
      'If it is 5 K colder: still 0 °C in hand at the bed.',
      'If the leg takes 10 % more: still 0 Wh in hand.',
    ])
    expect(said({ comfortMarginK: 0, depart01: null }, { legMarginWh: null })).toHaveLength(1)
  })
})

describe('a sleeper', () => {
  const [sleeper] = night.outcome.sleepers
  if (sleeper === undefined) throw new Error('somebody sleeps')
  const label = trip.travellers.find(({ id }) => id === sleeper.sleeperId)?.label ?? ''
  const said = (over: object) =>
    plain(saySleeper(spoken(), { ...sleeper, coldFromUtc: null, feetColdFromUtc: null, marginK: 2.5, ...over }))

  it.each([
    [{ verdict: 'warm' }, `${label} sleeps warm, 2.5 °C in hand.`],
    [{ verdict: 'enough' }, `${label} is warm enough, 2.5 °C in hand.`],
    [{ verdict: 'cold', marginK: -1.5, coldFromUtc: at('02:20') }, `${label} is cold from 02:20: 1.5 °C short.`],
    [{ verdict: 'cool', marginK: -0.5, coldFromUtc: at('02:20') }, `${label} is cool from 02:20: 0.5 °C short.`],
    [
      { verdict: 'too-cold', marginK: -9, coldFromUtc: at('02:20') },
      `${label} cannot sleep through this: 9 °C short from 02:20.`,
    ],
    [
      { verdict: 'enough', feetColdFromUtc: at('01:10') },
      `${label} is warm enough, 2.5 °C in hand. Cold feet after 01:10.`,
    ],
    [{ verdict: 'enough', sleeperId: 'guest' }, 'guest is warm enough, 2.5 °C in hand.'],
  ])('%o', (over, expected) => {
    expect(said(over)).toBe(expected)
  })
})

describe('the no-coverage sheet', () => {
  const [first] = trip.nights
  if (first === undefined) throw new Error('the trip has a night')
  const rows = (over: object, units: 'metric' | 'us' = 'metric') =>
    siteRows({ night: { ...first, ...over }, plan: night } as never, { text: createText('en', units) } as never).map(
      ([name, value]) => `${name}: ${plain(value)}`,
    )
  const { site } = first

  it('has a row for everything, and for hours and target only where there are some', () => {
    const bare = { checkIn: undefined, gateClosed: undefined, target: undefined }
    const always = [
      'Coordinates, decimal: 46.72118, -9.98812',
      'Coordinates, degrees minutes seconds: 46°43′16.2″ N, 9°59′17.2″ W',
      'Elevation: 1240 m',
      `Phone: ${site.phone}`,
      `Gate code: ${site.gateCode}`,
      `Nearest charger: ${site.nearestCharger}`,
      `Indoor fallback: ${site.indoorFallback}`,
    ]
    expect(rows(bare).slice(0, 7)).toEqual(always)
    expect(rows(bare)).toHaveLength(8)
    const hours = { checkIn: { from: '13:00', to: '19:00' }, gateClosed: { from: '22:00', to: '06:30' } }
    expect(rows({ ...bare, ...hours }, 'us').slice(-2)).toEqual([
      'Check-in: 1:00 PM – 7:00 PM',
      'Gate closed: 10:00 PM – 6:30 AM',
    ])
    expect(rows({ ...bare, target: { name: 'the cave' } }).at(-1)).toBe('Target: the cave')
  })

  it('says of each thing unknown that it is not known', () => {
    const { latitudeDeg, longitudeDeg, elevationM, zone: place, name } = site
    const unknown = rows({ site: { latitudeDeg, longitudeDeg, elevationM, zone: place, name } })
    for (const thing of ['Phone', 'Gate code', 'Nearest charger', 'Indoor fallback'])
      expect(unknown).toContain(`${thing}: not known`)
  })
})
