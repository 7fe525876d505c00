/** The command's sentences: every kind of remedy, and what a summary says when things are not well. */
import { describe, expect, it } from 'vitest'
import { summary, verdictLine } from '../../../electron/command/summary.ts'
import type { Plan } from '../../../shared/host/index.ts'
import { sayCost, sayRemedy } from '../../../shared/cards/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

type Remedy = Plan['remedies'][number]
type Change = Remedy['change']

const trip = cardsTrip()
const [piece] = trip.kit.pieces
const pieceId = piece?.id ?? ''
const free: Remedy['cost'] = { litres: 0, moves: 0, degreesK: 0, charge01: 0, money: 0, minutes: 0 }
const remedy = (change: Change, cost: Partial<Remedy['cost']> = {}): Remedy => ({
  id: 'r',
  mends: [],
  change,
  cost: { ...free, ...cost },
  score: 1,
  preview: [],
})

const CHANGES: readonly Change[] = [
  { kind: 'bring-bedding', nightId: 'n', pieceId },
  { kind: 'bring-piece', pieceId },
  { kind: 'set-point', nightId: 'n', byK: 2 },
  { kind: 'set-point', nightId: 'n', byK: -2 },
  { kind: 'charge-limit', nightId: 'n', to01: 0.9 },
  { kind: 'stop-on-the-way', nightId: 'n', atM: 14_000 },
  { kind: 'leave-behind', pieceIds: [pieceId, 'gone'] },
  { kind: 'covers', nightId: 'n' },
  { kind: 'bed-heater', nightId: 'n', heaterId: 'unknown-heater' },
  { kind: 'current', nightId: 'n', toA: 10 },
  { kind: 'window-gap', nightId: 'n', toMm: 10 },
  { kind: 'target-later', nightId: 'n', byMin: 15 },
  { kind: 'arrive-earlier', nightId: 'n', byMin: 15 },
  { kind: 'leave-earlier', nightId: 'n', byMin: 15 },
  { kind: 'without-hookup', nightId: 'n' },
  {
    kind: 'together',
    changes: [
      { kind: 'covers', nightId: 'n' },
      { kind: 'unlock', pieceId },
    ],
  },
  { kind: 'turn-piece', pieceId },
  { kind: 'unlock', pieceId },
] as unknown as readonly Change[]

describe.each(['en', 'de'] as const)('a remedy in %s', (language) => {
  const text = createText(language, 'metric')

  it('of every kind has a sentence of its own, with names and no place left open', () => {
    const said = CHANGES.map((change) => sayRemedy(change, trip, text))
    expect(new Set(said).size).toBe(CHANGES.length)
    for (const sentence of said) expect(sentence).not.toMatch(/[{}]|undefined|NaN|remedy\./)
    expect(said[0]).toContain(piece?.name)
    expect(said[6]).toContain('gone')
  })

  it('says what it costs, each thing once, or that it costs nothing', () => {
    const [change] = CHANGES
    if (change === undefined) throw new Error('no change')
    const nothing = sayCost(remedy(change), trip, text)
    const much = sayCost(
      remedy(change, { litres: 12, moves: 3, degreesK: 1.5, charge01: 0.04, money: 250, minutes: 20 }),
      trip,
      text,
    )
    expect(nothing).toContain(text.t('remedy.cost.nothing'))
    expect(much).not.toContain(text.t('remedy.cost.nothing'))
    for (const number of ['12', '3', '20']) expect(much).toContain(number)
  })
})

describe('a summary', () => {
  const text = createText('en', 'metric')
  const plan = cardsPlan(trip)
  const [night] = plan.nights
  if (night === undefined) throw new Error('the plan has no night')
  const sleeper = { ...night.outcome.sleepers[0], sleeperId: trip.travellers[0]?.id ?? '' }
  /** Numbers keep to their units by spaces that do not break. */
  const of = (over: Partial<Plan>): string =>
    summary({ trip, plan: { ...plan, ...over } }, text).replace(/[\u00a0\u202f]/g, ' ')

  it('says how much is short, for the leg and in bed, and where a stop would be', () => {
    const outcome = {
      ...night.outcome,
      sleepers: [{ ...sleeper, verdict: 'too-cold', marginK: -4 }],
      supply: null,
      leg: {
        ...night.outcome.leg,
        needWh: 30_000,
        reserveWh: 5000,
        marginWh: -2000,
        stops: [{ atM: 14_000, energyWh: 2500, durationS: 300 }],
      },
    } as unknown as typeof night.outcome
    const said = of({
      nights: [{ ...night, outcome }],
      verdict: { ...plan.verdict, holds: false, shortfalls: 2, legMarginWh: -2000 },
    })
    expect(said).toMatch(/too cold, 4 °C short/)
    expect(said).toMatch(/2 kWh short/)
    expect(said).toMatch(/stop at 14 km: 2\.5 kWh in 5 min/)
    expect(said).toContain('No hookup:')
    expect(said).toContain('No change was found that helps.')
    expect(said).not.toMatch(/undefined|NaN|[{}]/)
  })

  it('names no current where nothing may be drawn', () => {
    const { supply } = night.input
    if (supply === null) throw new Error('the night has a post')
    const said = of({ nights: [{ ...night, input: { ...night.input, supply: { ...supply, earthOk: 'no' } } }] })
    expect(said).toContain('Draw nothing from the post:')
    expect(said).not.toContain('Ask for')
    expect(of({})).toContain('Ask for 12 A')
  })

  it('leaves out what a trip does not have: battery, leg, steps', () => {
    const outcome = { ...night.outcome, leg: null, arrive01: null, depart01: null }
    const verdict = { ...plan.verdict, depart01: null, legMarginWh: null, movesAtDusk: 0 }
    const said = of({ nights: [{ ...night, outcome }], verdict, checklist: { ...plan.checklist, steps: [] } })
    for (const part of ['Next leg', 'Checklist', 'on leaving']) expect(said).not.toContain(part)
    expect(verdictLine({ trip, plan: { ...plan, verdict } }, text)).not.toMatch(/departure|leg/)
  })

  it('counts a unit without a place once, in whatever layouts it is missing', () => {
    const missing = { unitId: 'u1' } as unknown as Plan['packing']['driveUnplaced'][number]
    const packing = {
      ...plan.packing,
      driveUnplaced: [missing],
      nights: plan.packing.nights.map((each) => ({ ...each, unplaced: [missing] })),
    }
    expect(of({ packing })).toContain('one unit without a place')
  })

  it('lists eight remedies, best first, and each caution once with the nights it holds for', () => {
    const remedies = Array.from({ length: 12 }, (_, at) =>
      remedy({ kind: 'current', nightId: 'n', toA: 6 + at } as unknown as Change),
    )
    const said = of({ remedies, verdict: { ...plan.verdict, holds: false, shortfalls: 1 } })
    expect(said).toMatch(/\n {2}1\. .*6 A/)
    expect(said).toMatch(/\n {2}8\. /)
    expect(said).not.toMatch(/\n {2}9\. /)
    const held = of({ remedies, verdict: { ...plan.verdict, holds: true } })
    expect(held).not.toContain('What would help')
  })
})
