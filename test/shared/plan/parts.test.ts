/** The plan's small parts, worked out by hand: how to stand on the pitch, what it costs, whether it holds, what a change changed. */
import { describe, expect, it } from 'vitest'
import type { Night, Trip } from '../../../shared/document/index.ts'
import { differencesOf } from '../../../shared/plan/differences.ts'
import { ledger } from '../../../shared/plan/ledger.ts'
import { pitchAdvice } from '../../../shared/plan/pitch.ts'
import type { Finding, NightPlan, Plan, Verdict } from '../../../shared/plan/types.ts'
import { nightVerdict, tripVerdict } from '../../../shared/plan/verdict.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'
import { sample } from './trips.ts'

const trip = sample('bats-by-the-quarry')
const [night] = trip.nights
if (night === undefined) throw new Error('the sample has a night')

describe('how to stand on the pitch', () => {
  // Wheels 2970 mm apart, bed 1950 by 1100 mm with its head in front, inlet on the left 160 mm from the rear axle's frame.
  const lead = (lengthMm: number, over: object = {}) => ({
    ...trip.kit.pieces.find(({ purpose }) => purpose === 'lead'),
    id: `lead-${lengthMm}`,
    electrical: { lengthMm },
    ...over,
  })
  const advice = (pitch: Partial<Night['pitch']>, pieces: readonly object[] = [], over: object = {}, of: Trip = trip) =>
    pitchAdvice({ ...of, kit: { ...of.kit, pieces } as never }, {
      ...night,
      pitch: { ...night.pitch, slope01: 0, slopeDownTowards: 'level', ...pitch },
      ...over,
    } as Night)

  it.each([
    ['nose', { headUphill: false, rampUnder: 'front', rampMm: 59, riseOverBedMm: 39, park: 'nose-out' }],
    ['tail', { headUphill: true, rampUnder: 'rear', rampMm: 59, riseOverBedMm: 39, park: 'nose-in' }],
    ['left', { headUphill: null, rampUnder: 'left', rampMm: 31, riseOverBedMm: 22, park: 'not-known' }],
    ['right', { headUphill: null, rampUnder: 'right', rampMm: 31, riseOverBedMm: 22, park: 'not-known' }],
    ['level', { headUphill: null, rampUnder: null, rampMm: 0, riseOverBedMm: 22, park: 'not-known' }],
  ] as const)('two per cent down towards %s', (slopeDownTowards, expected) => {
    expect(advice({ slope01: 0.02, slopeDownTowards })).toEqual({ ...expected, leadReaches: null })
  })

  it('is turned where the head lies at the other end', () => {
    const vehicle = { ...trip.vehicle, bed: { ...trip.vehicle.bed, headEnd: 'rear' as const } }
    const of = (slopeDownTowards: 'nose' | 'tail') =>
      advice({ slope01: 0.02, slopeDownTowards }, [], {}, { ...trip, vehicle })
    expect(of('nose')).toMatchObject({ headUphill: true, park: 'nose-in', rampUnder: 'front' })
    expect(of('tail')).toMatchObject({ headUphill: false, park: 'nose-out', rampUnder: 'rear' })
  })

  it('leaves slopes under one per cent alone', () => {
    expect(advice({ slope01: 0.0099, slopeDownTowards: 'nose' })).toMatchObject({
      headUphill: null,
      rampUnder: null,
      rampMm: 0,
      riseOverBedMm: 19,
    })
    expect(advice({ slope01: 0.01, slopeDownTowards: 'nose' })).toMatchObject({ headUphill: false, rampMm: 30 })
  })

  // The body is 2970 + 1800 mm long and 1850 wide; the inlet lies 610 mm from its rear. From a post at the left rear the cable
  // runs 610 mm along the body, turned round 4160 + 1850; from one at the right front it is the other way about.
  it.each([
    ['left-rear', 12_499, 'either', false],
    ['left-rear', 12_500, 'nose-in', true],
    ['left-rear', 17_899, 'nose-in', true],
    ['left-rear', 17_900, 'either', true],
    // Neither way, but turned round it lacks a millimetre.
    ['right-front', 7099, 'nose-out', false],
    ['right-front', 7100, 'nose-out', true],
    ['right-front', 13_499, 'nose-out', true],
    ['right-front', 13_500, 'either', true],
    ['left-front', 12_500, 'nose-out', true],
    ['right-rear', 12_500, 'nose-in', true],
    ['not-known', 12_499, 'either', false],
    ['not-known', 12_500, 'either', true],
  ] as const)('with a post %s, a run of 12 m and a lead of %d mm', (postSide, lengthMm, park, leadReaches) => {
    expect(advice({ postSide, cableRunMm: 12_000 }, [lead(lengthMm)])).toMatchObject({ park, leadReaches })
  })

  it('takes the longest lead on board, not the spare, not the extension, else the charging unit’s own', () => {
    const run = { postSide: 'not-known', cableRunMm: 12_000 } as const
    const reaches = (...pieces: object[]) =>
      advice(run, pieces, { hookup: { ...night.hookup, extensionPieceId: 'ext' } }).leadReaches
    expect(reaches(lead(5000), lead(12_500))).toBe(true)
    expect(reaches(lead(5000), lead(12_500, { spare: true }))).toBe(false)
    expect(reaches(lead(5000), lead(12_500, { id: 'ext' }))).toBe(false)
    expect(reaches(lead(12_500, { purpose: 'charging-unit' }))).toBe(true)
    expect(reaches(lead(12_500, { purpose: 'charging-unit' }), lead(5000))).toBe(false)
    expect(reaches(lead(12_500, { electrical: undefined }))).toBeNull()
    expect(reaches()).toBeNull()
  })

  it('asks for no lead where there is no post, and for none of a run not measured', () => {
    expect(advice({ cableRunMm: 12_000 }, [lead(1)], { hookup: undefined })).toMatchObject({ leadReaches: null })
    expect(advice({ cableRunMm: 0 }, [lead(1)])).toMatchObject({ leadReaches: null, park: 'not-known' })
  })

  it('lets the lead decide before the head', () => {
    const uphill = { slope01: 0.02, slopeDownTowards: 'tail', cableRunMm: 12_000 } as const
    expect(advice({ ...uphill, postSide: 'right-front' }, [lead(7100)])).toMatchObject({ park: 'nose-out' })
    expect(advice({ ...uphill, slopeDownTowards: 'nose', postSide: 'left-rear' }, [lead(12_500)]).park).toBe('nose-in')
  })
})

describe('the ledger', () => {
  const entry = { id: 'e', date: '2027-10-08', label: 'x', kind: 'site', amountCents: 0 } as const
  const nights = [
    { nightId: 'night-1', cost: 5 },
    { nightId: 'night-2', cost: 7 },
  ] as unknown as NightPlan[]
  const of = (...entries: object[]) => ledger({ ...trip, ledger: entries.map((one) => ({ ...entry, ...one })) }, nights)

  it('estimates the charging that nobody has paid yet', () => {
    expect(of()).toEqual({
      perNight: [
        { nightId: 'night-1', chargingEstimate: 5, total: 5, perTraveller: 2.5 },
        { nightId: 'night-2', chargingEstimate: 7, total: 7, perTraveller: 3.5 },
      ],
      total: 12,
      perTraveller: 6,
      people: [
        { travellerId: 'imke', paid: 0, owes: 0 },
        { travellerId: 'jorin', paid: 0, owes: 0 },
      ],
    })
  })

  it('adds what was paid for a night, for none and for one that is gone, and shares it', () => {
    const found = of(
      { nightId: 'night-1', amountCents: 2400, paidByTravellerId: 'imke' },
      { nightId: 'night-2', amountCents: 350, kind: 'charging', paidByTravellerId: 'jorin' },
      { amountCents: 1000, paidByTravellerId: 'jorin' },
      { nightId: 'gone', amountCents: 50 },
    )
    expect(found.perNight.map(({ total }) => total)).toEqual([29, 3.5])
    expect([found.total, found.perTraveller]).toEqual([43, 21.5])
    expect(found.people).toEqual([
      { travellerId: 'imke', paid: 24, owes: -5.25 },
      { travellerId: 'jorin', paid: 13.5, owes: 5.25 },
    ])
  })
})

describe('the verdict', () => {
  const cardTrip = cardsTrip()
  const base = cardsPlan(cardTrip)
  const [plan] = base.nights
  if (plan === undefined) throw new Error('the plan has a night')
  const shortfall = (nightId: string | null, severity: Finding['severity'] = 'shortfall') =>
    ({ id: 'x', severity, area: 'night', nightId, problem: { code: 'x', path: [], params: {} } }) satisfies Finding

  it('on a night counts its own shortfalls and the trip’s', () => {
    const findings = [
      shortfall('n1'),
      shortfall(null),
      shortfall('n2'),
      shortfall('n1', 'caution'),
      shortfall('n1', 'note'),
    ]
    expect(nightVerdict(plan, base.packing, findings)).toEqual({
      holds: false,
      shortfalls: 2,
      depart01: 0.64,
      legMarginWh: 6930,
      coldestBedC: 6.9,
      coldestBedUtc: plan.outcome.coldestBedUtc,
      movesAtDusk: base.packing.nights.find(({ nightId }) => nightId === 'n1')?.changeover.moves.length,
    })
    expect(nightVerdict(plan, base.packing, [shortfall('n2'), shortfall('n1', 'caution')])).toMatchObject({
      holds: true,
      shortfalls: 0,
    })
    const stays = { ...plan, outcome: { ...plan.outcome, leg: null } }
    expect(nightVerdict(stays, { ...base.packing, nights: [] }, [])).toMatchObject({
      legMarginWh: null,
      movesAtDusk: 0,
    })
  })

  it('on the trip is that of its hardest night, with every shortfall', () => {
    const verdict = (over: Partial<Verdict>): Verdict => ({
      holds: true,
      shortfalls: 0,
      depart01: null,
      legMarginWh: null,
      coldestBedC: 10,
      coldestBedUtc: 0 as Utc,
      movesAtDusk: 0,
      ...over,
    })
    const hardest = (a: Partial<Verdict>, b: Partial<Verdict>) => [
      tripVerdict([verdict({ ...a, movesAtDusk: 1 }), verdict({ ...b, movesAtDusk: 2 })], []).movesAtDusk,
      tripVerdict([verdict({ ...b, movesAtDusk: 2 }), verdict({ ...a, movesAtDusk: 1 })], []).movesAtDusk,
    ]
    expect(hardest({ shortfalls: 1, coldestBedC: 20, legMarginWh: 9 }, { legMarginWh: 1, coldestBedC: 0 })).toEqual([
      1, 1,
    ])
    expect(hardest({ legMarginWh: 1, coldestBedC: 20 }, { legMarginWh: 2, coldestBedC: 0 })).toEqual([1, 1])
    expect(hardest({ legMarginWh: 9, coldestBedC: 1 }, { coldestBedC: 2 })).toEqual([1, 1])
    expect(hardest({}, {})).toEqual([1, 2])
    const findings = [shortfall('n1'), shortfall(null), shortfall('n2', 'caution')]
    expect(tripVerdict([verdict({ shortfalls: 1 })], findings)).toMatchObject({ shortfalls: 2, holds: false })
    expect(tripVerdict([verdict({})], [shortfall('n2', 'note')])).toMatchObject({ shortfalls: 0, holds: true })
  })
})

describe('what a change changed', () => {
  const cardTrip = cardsTrip()
  const before = cardsPlan(cardTrip)
  const said = (over: Partial<Plan>, from: Plan = before) =>
    differencesOf(cardTrip, from, { ...from, ...over }).map(({ code, nightId, params }) => ({ code, nightId, params }))
  const withNight = (change: (night: NightPlan) => NightPlan): Partial<Plan> => ({
    nights: before.nights.map((one, index) => (index === 0 ? change(one) : one)),
  })
  const outcome = (over: Partial<NightPlan['outcome']>): Partial<Plan> =>
    withNight((one) => ({ ...one, outcome: { ...one.outcome, ...over } }))
  const [first] = before.nights
  if (first === undefined) throw new Error('the plan has a night')

  it('nothing, between a plan and itself', () => {
    expect(said({})).toEqual([])
  })

  it('the verdict, either way', () => {
    const verdict = { ...before.verdict, holds: false, shortfalls: 3 }
    const holds = { ...before, verdict: { ...verdict, holds: true, shortfalls: 0 } }
    expect(said({ verdict }, holds)).toEqual([{ code: 'holds-no-more', nightId: null, params: { count: 3 } }])
    expect(said({ verdict: holds.verdict }, { ...before, verdict })).toEqual([
      { code: 'holds-now', nightId: null, params: { count: 0 } },
    ])
  })

  it('findings that came and went, by weight; a note is not spoken of', () => {
    const one = (id: string, severity: Finding['severity']): Finding => ({
      id,
      severity,
      area: 'night',
      nightId: 'n1',
      problem: { code: id, path: [], params: {} },
    })
    const was = { ...before, findings: [one('a', 'shortfall'), one('b', 'caution'), one('c', 'shortfall')] }
    const is = { findings: [one('a', 'shortfall'), one('c', 'caution'), one('d', 'shortfall'), one('e', 'note')] }
    const found = differencesOf(cardTrip, was, { ...was, ...is })
    expect(found.map(({ code, nightId, problem }) => [code, nightId, problem?.code])).toEqual([
      ['shortfall-added', 'n1', 'd'],
      ['shortfall-gone', 'n1', 'c'],
      ['caution-added', 'n1', 'c'],
    ])
  })

  it('comfort from half a kelvin, charge from one per cent, the leg from 100 Wh', () => {
    const [ada] = first.outcome.sleepers
    if (ada === undefined) throw new Error('somebody sleeps')
    const comfort = (marginK: number) => said(outcome({ sleepers: [{ ...ada, marginK }] }))
    const traveller = cardTrip.travellers.find(({ id }) => id === ada.sleeperId)?.label
    expect(comfort(ada.marginK + 0.25)).toEqual([])
    expect(comfort(-1.5)).toEqual([
      { code: 'comfort', nightId: 'n1', params: { traveller, beforeK: -2.2, afterK: -1.5 } },
    ])
    expect(comfort(-2.75)).toHaveLength(1)
    const depart = (depart01: number | null) => said(outcome({ depart01 }))
    expect(depart(0.645)).toEqual([])
    expect(depart(null)).toEqual([])
    expect(depart(0.66)).toEqual([{ code: 'depart', nightId: 'n1', params: { before01: 0.64, after01: 0.66 } }])
    expect(depart(0.62)).toHaveLength(1)
    const { leg } = first.outcome
    const margin = (marginWh: number) => said(outcome({ leg: leg === null ? null : { ...leg, marginWh } }))
    expect(margin(6930 + 99)).toEqual([])
    expect(margin(6930 + 100)).toEqual([
      { code: 'leg-margin', nightId: 'n1', params: { beforeWh: 6930, afterWh: 7030 } },
    ])
    expect(margin(6930 - 100)).toHaveLength(1)
    expect(said(outcome({ leg: null }))).toEqual([])
  })

  it('units in another bay by day and at night, and the number of moves', () => {
    const [nightLoad] = before.packing.nights
    if (nightLoad === undefined) throw new Error('the plan has a night')
    const { placements } = before.packing.drive
    const [one, two] = placements
    if (one === undefined || two === undefined) throw new Error('the plan has units')
    const nameOf = (id: string) => [...cardTrip.kit.pieces, ...cardTrip.kit.bins].find((each) => each.id === id)?.name
    const drive = (changed: typeof placements) =>
      said({ packing: { ...before.packing, drive: { ...before.packing.drive, placements: changed } } })
    expect(drive(placements.map((each) => (each === one ? { ...one, atMm: [1, 2, 3] } : each)))).toEqual([])
    expect(drive(placements.map((each) => (each === one ? { ...one, bayId: 'elsewhere' } : each)))).toEqual([
      { code: 'drive-other-place', nightId: null, params: { units: [nameOf(one.unitId)], count: 1 } },
    ])
    expect(drive(placements.filter((each) => each !== two))).toEqual([
      { code: 'drive-other-place', nightId: null, params: { units: [nameOf(two.unitId)], count: 1 } },
    ])
    const atNight = (over: Partial<typeof nightLoad>) =>
      said({ packing: { ...before.packing, nights: [{ ...nightLoad, ...over }, ...before.packing.nights.slice(1)] } })
    const { changeover } = nightLoad
    expect(atNight({ changeover: { ...changeover, moves: changeover.moves.slice(1) } })).toEqual([
      {
        code: 'moves',
        nightId: nightLoad.nightId,
        params: { before: changeover.moves.length, after: changeover.moves.length - 1 },
      },
    ])
    const bed = { ...nightLoad.bed, placements: nightLoad.bed.placements.slice(1) }
    expect(atNight({ bed }).map(({ code, nightId, params }) => [code, nightId, params['count']])).toEqual([
      ['bed-other-place', nightLoad.nightId, 1],
    ])
    expect(said({ nights: [], packing: { ...before.packing, nights: [] } })).toEqual([])
  })

  it('bedding that is wanted now, and steps that came and went, moves apart', () => {
    const [piece] = cardTrip.kit.pieces
    const remedy = { id: 'r', change: { kind: 'bring-bedding', nightId: 'n1', pieceId: piece?.id } }
    const other = { id: 's', change: { kind: 'set-value' } }
    const is = { remedies: [remedy, other] } as never
    expect(said(is)).toEqual([{ code: 'bedding-wanted', nightId: 'n1', params: { piece: piece?.name } }])
    expect(said(is, { ...before, remedies: [remedy] } as never)).toEqual([])
    const step = (key: string, ruleId: string) => ({ key, ruleId })
    const checklist = (...steps: object[]) => ({ checklist: { steps, conflicts: [] } }) as never as Partial<Plan>
    const was = { ...before, ...checklist(step('a', 'x'), step('b', 'x'), step('m1', 'move-dusk')) }
    const found = differencesOf(cardTrip, was, {
      ...was,
      ...checklist(step('a', 'x'), step('c', 'x'), step('d', 'x'), step('m2', 'move-dawn'), step('m3', 'bin-dusk')),
    })
    expect(found.map(({ code, params, steps }) => [code, params, steps?.map(({ key }) => key)])).toEqual([
      ['steps-added', { count: 2 }, ['c', 'd']],
      ['steps-gone', { count: 1 }, ['b']],
    ])
  })
})
