/** Every finding on both sides of its border, with its weight, its place and its numbers. */
import { describe, expect, it } from 'vitest'
import type { Night, Trip } from '../../../shared/document/index.ts'
import { nightClock } from '../../../shared/plan/clock.ts'
import {
  bedFindings,
  calibrationFindings,
  checklistFindings,
  clockFindings,
  homeFindings,
  loadFindings,
  nightFindings,
  siteFindings,
  storesFindings,
} from '../../../shared/plan/findings/index.ts'
import type { Finding, NightClock, NightPlan, NightStores, PitchAdvice } from '../../../shared/plan/types.ts'
import { createText } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'
import { sample } from './trips.ts'

const trip = sample('bats-by-the-quarry')
const [night] = trip.nights
if (night === undefined) throw new Error('the sample has a night')

/** Severity, code, path; parameters where they matter. */
const brief = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ severity, problem }) => {
    for (const text of TEXTS) expect(text.problem(problem)).not.toMatch(/\{|\}/)
    return `${severity} ${problem.code} ${problem.path.join('.')}`
  })
/** Every finding is a whole sentence: no placeholder is left open. */
const TEXTS = [createText('en', 'metric'), createText('de', 'us')]
const paramsOf = (findings: readonly Finding[], code: string) =>
  findings.find(({ problem }) => problem.code === code)?.problem.params
const at = (iso: string): Utc => (Date.parse(iso) / 1000) as Utc

describe('the clock of a night', () => {
  const calm: Night = {
    ...night,
    target: undefined,
    hookup: undefined,
    quiet: undefined,
    checkIn: undefined,
    checkOutBy: undefined,
    movementBan: undefined,
    gateClosed: undefined,
  } as never
  const noon = at('2027-10-08T10:00:00Z')
  const base: NightClock = { ...nightClock(calm), arriveUtc: noon }
  const departUtc = base.departUtc
  const later = (utc: Utc, s: number): Utc => (utc + s) as Utc
  const found = (clock: Partial<NightClock>, over: object = {}): readonly Finding[] =>
    clockFindings({ ...calm, ...over }, 3, { ...base, ...clock })

  it('has nothing to say of a calm one', () => {
    expect(found({})).toEqual([])
  })

  it.each([
    ['ban', 'shortfall leave-in-movement-ban nights.3'],
    ['gate', 'shortfall leave-before-gate nights.3'],
    ['quiet', 'caution leave-in-quiet-hours nights.3'],
  ] as const)('leaving within the hours of the %s is said, from their first second to their last', (name, expected) => {
    const within = (from: Utc, to: Utc) => brief(found({ [`${name}FromUtc`]: from, [`${name}ToUtc`]: to }))
    expect(within(departUtc, later(departUtc, 1))).toEqual([expected])
    expect(within(later(departUtc, -60), later(departUtc, 60))).toEqual([expected])
    expect(within(later(departUtc, -60), departUtc)).toEqual([])
    expect(within(later(departUtc, 1), later(departUtc, 60))).toEqual([])
    expect(brief(found({ [`${name}FromUtc`]: null, [`${name}ToUtc`]: later(departUtc, 9) }))).toEqual([])
  })

  it('says how long one is held, and what for', () => {
    const hours = { banFromUtc: later(departUtc, -60), banToUtc: later(departUtc, 600) }
    expect(paramsOf(found(hours), 'leave-in-movement-ban')).toEqual({
      zone: base.zone,
      departUtc,
      banToUtc: departUtc + 600,
      lostS: 600,
      target: '',
    })
    expect(paramsOf(found(hours, { target: night.target }), 'leave-in-movement-ban')).toMatchObject({
      target: night.target?.name,
    })
    const gate = { gateFromUtc: later(departUtc, -60), gateToUtc: later(departUtc, 300) }
    expect(paramsOf(found(gate), 'leave-before-gate')).toEqual({
      zone: base.zone,
      departUtc,
      gateToUtc: departUtc + 300,
      lostS: 300,
    })
  })

  it('arriving is held against check-in: the minute it opens, the minute it closes', () => {
    // Berlin, summer time: 14:00 is 12:00 UTC, 20:00 is 18:00 UTC.
    const checkIn = { from: '14:00', to: '20:00' }
    const arriving = (iso: string) => found({ arriveUtc: at(iso), sun: { ...base.sun, sunsetUtc: null } }, { checkIn })
    expect(brief(arriving('2027-10-08T11:59:59Z'))).toEqual(['caution arrive-before-check-in nights.3.arrive'])
    expect(arriving('2027-10-08T12:00:00Z')).toEqual([])
    expect(arriving('2027-10-08T18:00:00Z')).toEqual([])
    expect(brief(arriving('2027-10-08T18:00:01Z'))).toEqual(['shortfall arrive-after-check-in nights.3.arrive'])
    expect(paramsOf(arriving('2027-10-08T11:00:00Z'), 'arrive-before-check-in')).toEqual({
      zone: 'Europe/Berlin',
      arriveUtc: at('2027-10-08T11:00:00Z'),
      opensUtc: at('2027-10-08T12:00:00Z'),
    })
    expect(paramsOf(arriving('2027-10-08T19:00:00Z'), 'arrive-after-check-in')).toEqual({
      zone: 'Europe/Berlin',
      arriveUtc: at('2027-10-08T19:00:00Z'),
      closesUtc: at('2027-10-08T18:00:00Z'),
    })
  })

  it('and against a closed gate', () => {
    const gated = (fromS: number, toS: number) =>
      brief(found({ gateFromUtc: later(noon, fromS), gateToUtc: later(noon, toS) }))
    const expected = ['shortfall arrive-after-gate nights.3.arrive']
    expect(gated(0, 1)).toEqual(expected)
    expect(gated(-5, 5)).toEqual(expected)
    expect(gated(-5, 0)).toEqual([])
    expect(gated(1, 5)).toEqual([])
    expect(brief(found({ gateFromUtc: null, gateToUtc: later(noon, 5) }))).toEqual([])
  })

  it('and against a ban on moving vehicles', () => {
    const banned = (fromS: number, toS: number) =>
      brief(found({ banFromUtc: later(noon, fromS), banToUtc: later(noon, toS) }))
    const expected = ['shortfall arrive-in-movement-ban nights.3.arrive']
    expect(banned(0, 1)).toEqual(expected)
    expect(banned(-5, 5)).toEqual(expected)
    expect(banned(-5, 0)).toEqual([])
    expect(banned(1, 5)).toEqual([])
    expect(brief(found({ banFromUtc: null, banToUtc: later(noon, 5) }))).toEqual([])
  })

  it('and wants an hour of daylight, an hour and a half in snow', () => {
    const dusk = (s: number, snowMm: number) =>
      found({ sun: { ...base.sun, sunsetUtc: later(noon, s) } }, { weather: { ...night.weather, snowMm } })
    expect(dusk(3600, 0)).toEqual([])
    expect(brief(dusk(3599, 0))).toEqual(['caution arrive-in-the-dark nights.3.arrive'])
    expect(dusk(5400, 1)).toEqual([])
    expect(paramsOf(dusk(5399, 1), 'arrive-in-the-dark')).toEqual({
      zone: 'Europe/Berlin',
      arriveUtc: noon,
      sunsetUtc: noon + 5399,
      wantedS: 5400,
    })
    expect(paramsOf(dusk(0, 0), 'arrive-in-the-dark')).toMatchObject({ wantedS: 3600 })
  })

  it('leaving after check-out counts only where the way does not lead back', () => {
    const out = (s: number, over: object = {}) => brief(found({ checkOutUtc: later(departUtc, s) }, over))
    expect(out(0)).toEqual([])
    expect(out(-1)).toEqual(['shortfall leave-after-check-out nights.3'])
    expect(out(-1, { target: night.target })).not.toContain('shortfall leave-after-check-out nights.3')
  })

  it('waking is early enough for the morning, the plug is out before leaving', () => {
    // Sleep ends at 04:55 (02:55 UTC); 75 minutes of morning.
    const wake = at('2027-10-09T02:55:00Z')
    const leaving = (utc: number, over: object = {}) => found({ departUtc: utc as Utc }, over)
    expect(leaving(wake + 75 * 60)).toEqual([])
    expect(paramsOf(leaving(wake + 75 * 60 - 1), 'wake-earlier')).toEqual({
      zone: 'Europe/Berlin',
      plannedUtc: wake,
      neededUtc: wake - 1,
      departUtc: wake + 75 * 60 - 1,
      morningS: 4500,
    })
    expect(brief(leaving(wake))).toEqual(['caution wake-earlier nights.3.sleep.to'])
    const { hookup } = night
    // The plug comes out at 06:05, 04:05 UTC.
    const unplugUtc = at('2027-10-09T04:05:00Z')
    const plugged = (utc: number) => brief(leaving(utc, { hookup, morningMin: 0 }))
    expect(plugged(unplugUtc)).toEqual([])
    expect(plugged(unplugUtc - 1)).toEqual(['caution unplug-before-leaving nights.3.hookup.unplug'])
  })

  it('a target where the sun does not rise is noted', () => {
    const { target } = night
    expect(brief(found({ beAtTargetUtc: null }, { target }))).toEqual(['note no-sunrise nights.3.target'])
    expect(found({ beAtTargetUtc: later(noon, 1) }, { target })).toEqual([])
  })
})

describe('the clocks at home', () => {
  const nights = cardsPlan(cardsTrip()).nights
  const [first, last] = [nights[0], nights.at(-1)]
  if (first === undefined || last === undefined) throw new Error('the plan has nights')
  const zone = 'Europe/Zurich'
  const found = (leaveUtc: number | null, backUtc: number | null): readonly string[] => {
    const zoned = (atUtc: number | null) => (atUtc === null ? null : { atUtc: atUtc as Utc, zone })
    return brief(homeFindings(cardsTrip(), { leave: zoned(leaveUtc), back: zoned(backUtc) }, nights))
  }

  it('say nothing where they are not set, or lie before the first arrival and after the last morning', () => {
    expect(found(null, null)).toEqual([])
    expect(found(first.clock.arriveUtc - 1, last.clock.departUtc + 1)).toEqual([])
  })

  it('cannot be met where leaving is not before the first arrival, or coming back not after the last morning', () => {
    expect(found(first.clock.arriveUtc, null)).toEqual(['shortfall leave-home-after-arrival leaveHome'])
    expect(found(null, last.clock.departUtc)).toEqual(['shortfall back-home-before-leaving backHome'])
  })

  it('name both instants with their days, and the site', () => {
    const home = { leave: { atUtc: at('2026-11-15T07:30:00Z'), zone }, back: null }
    const [late] = homeFindings(cardsTrip(), home, nights)
    const said = late === undefined ? '' : createText('en', 'metric').problem(late.problem)
    // First arrival: 13 November, 15:10 UTC.
    expect(said).toContain('Sun 15 Nov, 08:30')
    expect(said).toContain('Fri 13 Nov, 16:10')
    expect(said).toContain(cardsTrip().nights[0]?.site.name)
  })
})

describe('the site', () => {
  const pitch: PitchAdvice = {
    park: 'either',
    headUphill: null,
    rampUnder: null,
    rampMm: 0,
    riseOverBedMm: 0,
    leadReaches: null,
  }
  const rules = { ...night.rules, sleepInVehicle: 'yes', chargeFromPost: 'yes', foodLockerRequired: false } as const
  const found = (over: object, ofTrip: Trip = trip, advice: Partial<PitchAdvice> = {}) =>
    siteFindings(ofTrip, { ...night, hookup: undefined, rules, ...over } as never, 0, { ...pitch, ...advice })
  const hookup = { ...night.hookup, lineSystem: 'two-line' }

  it('that allows everything and has no post is quiet', () => {
    expect(found({})).toEqual([])
  })

  it.each([
    ['no', 'shortfall sleeping-not-allowed nights.0.rules'],
    ['not-known', 'caution ask-about-sleeping nights.0.rules'],
  ])('where sleeping in the vehicle is %s', (sleepInVehicle, expected) => {
    expect(brief(found({ rules: { ...rules, sleepInVehicle } }))).toEqual([expected])
  })

  it.each([
    ['no', 'caution charging-not-allowed nights.0.rules'],
    ['not-known', 'caution ask-about-charging nights.0.rules'],
  ])('where charging from the post is %s, which matters only to who would charge there', (chargeFromPost, expected) => {
    const over = { rules: { ...rules, chargeFromPost } }
    expect(brief(found({ ...over, hookup }))).toContain(expected)
    expect(brief(found(over))).toEqual([])
    const { battery: _, ...vehicle } = trip.vehicle
    expect(brief(found({ ...over, hookup }, { ...trip, vehicle }))).not.toContain(expected)
  })

  it('that wants food locked away needs a locker, its own or ours', () => {
    const wanted = { rules: { ...rules, foodLockerRequired: true } }
    expect(brief(found(wanted))).toEqual(['shortfall food-locker-missing nights.0.rules'])
    expect(found({ rules: { ...wanted.rules, foodLockerMm: [500, 500, 500] } })).toEqual([])
    const bays = trip.vehicle.bays.map((bay, index) => (index === 0 ? ({ ...bay, kind: 'locker' } as const) : bay))
    expect(found(wanted, { ...trip, vehicle: { ...trip.vehicle, bays } })).toEqual([])
  })

  it('with a post says who decides', () => {
    expect(brief(found({ hookup }))).toContain('caution site-and-codes-decide nights.0.hookup')
  })

  it('wants the adapter on board: neither unknown nor left at home', () => {
    const post = { hookup: { ...hookup, adapterPieceId: 'adapter' } }
    const missing = 'shortfall adapter-not-on-board nights.0.hookup.adapterPieceId'
    expect(brief(found(post))).not.toContain(missing)
    const pieces = trip.kit.pieces.map((piece) => (piece.id === 'adapter' ? { ...piece, spare: true } : piece))
    const left = found(post, { ...trip, kit: { ...trip.kit, pieces } })
    expect(brief(left)).toContain(missing)
    const name = trip.kit.pieces.find(({ id }) => id === 'adapter')?.name
    expect(paramsOf(left, 'adapter-not-on-board')).toEqual({ adapter: name, site: night.site.name })
    const unknown = found({ hookup: { ...hookup, adapterPieceId: 'ghost' } })
    expect(paramsOf(unknown, 'adapter-not-on-board')).toMatchObject({ adapter: 'ghost' })
  })

  it('says when the lead is too short, or wants its extension', () => {
    expect(found({}, trip, { leadReaches: true })).toEqual([])
    const short = found({}, trip, { leadReaches: false })
    expect(brief(short)).toEqual(['caution lead-too-short nights.0.pitch'])
    expect(paramsOf(short, 'lead-too-short')).toEqual({ runMm: 12_000 })
    const extended = found({ hookup: { ...hookup, extensionPieceId: 'lead' } }, trip, { leadReaches: false })
    expect(brief(extended)).toContain('caution lead-wants-extension nights.0.pitch')
    expect(paramsOf(extended, 'lead-wants-extension')).toEqual({
      runMm: 12_000,
      extension: trip.kit.pieces.find(({ id }) => id === 'lead')?.name,
    })
  })

  it('says when the head would lie low', () => {
    expect(found({}, trip, { headUphill: true })).toEqual([])
    const low = found({}, trip, { headUphill: false, riseOverBedMm: 40, rampMm: 60 })
    expect(low.map(({ severity, problem }) => [severity, problem.code, problem.params])).toEqual([
      ['caution', 'head-low', { riseMm: 40, rampMm: 60 }],
    ])
  })
})

describe('the bed', () => {
  const found = (bed: Partial<Trip['vehicle']['bed']>, heightMm: readonly number[] = [1700, 1700]) =>
    bedFindings({
      ...trip,
      travellers: heightMm.map((each, index) => ({ ...trip.travellers[0], id: `t${index}`, heightMm: each })) as never,
      vehicle: { ...trip.vehicle, bed: { ...trip.vehicle.bed, stepMm: 0, headroomMm: 900, ...bed } },
    })
  // The sample's bed: 1950 by 1100 by 90 mm on a floor of 1980 mm.
  it('is quiet where all fit', () => {
    expect(found({})).toEqual([])
  })

  it.each<[number, string[]]>([
    [1900, []],
    [1901, ['note bed-just-long-enough vehicle.bed']],
    [1980, ['note bed-just-long-enough vehicle.bed']],
    [1981, ['shortfall bed-too-short vehicle.bed']],
  ])('under somebody of %d mm', (heightMm, expected) => {
    const said = found({}, [1700, heightMm])
    expect(brief(said)).toEqual(expected)
    if (said[0] !== undefined) {
      expect(said[0].problem.params).toEqual({ traveller: trip.travellers[0]?.label, heightMm, flatMm: 1980 })
      expect(said[0].id.endsWith(':trip:t1')).toBe(true)
    }
  })

  it('gives each sleeper half a metre', () => {
    expect(found({ sizeMm: [1950, 1000, 90] })).toEqual([])
    const narrow = found({ sizeMm: [1950, 999, 90] })
    expect(brief(narrow)).toEqual(['shortfall bed-too-narrow vehicle.bed'])
    expect(paramsOf(narrow, 'bed-too-narrow')).toEqual({ neededMm: 1000, widthMm: 999 })
  })

  it('says a step above two centimetres, and where one can only lie', () => {
    expect(found({ stepMm: 20 })).toEqual([])
    expect(paramsOf(found({ stepMm: 21 }), 'bed-step')).toEqual({ stepMm: 21, limitMm: 20 })
    expect(brief(found({ stepMm: 21 }))).toEqual(['caution bed-step vehicle.bed'])
    expect(found({ headroomMm: 740 })).toEqual([])
    expect(brief(found({ headroomMm: 739 }))).toEqual(['note lie-only vehicle.bed'])
    expect(paramsOf(found({ headroomMm: 739 }), 'lie-only')).toEqual({ headroomMm: 649 })
  })
})

describe('what was read', () => {
  const fit = { lossScale: 1.2, lossScaleSpread: 0.1, readings: 4, misfit: 1 }
  const found = (over: object, from: readonly object[] = [{}]) =>
    calibrationFindings({ fit: { ...fit, ...over }, from, legs: [] } as never)

  it('is said with its share and spread, where a night or a leg was read', () => {
    expect(calibrationFindings(null)).toEqual([])
    expect(found({}, [])).toEqual([])
    expect(brief(found({}))).toEqual(['note loss-fitted measured'])
    expect(paramsOf(found({}), 'loss-fitted')).toEqual({ loss01: 1.2, spread01: 0.1, count: 4 })
    const consumption = { scale: 0.9, scaleSpread: 0.05, readings: 2 }
    expect(brief(found({ consumption }))).toEqual(['note loss-fitted measured', 'note consumption-fitted measured'])
    expect(paramsOf(found({ consumption }), 'consumption-fitted')).toEqual({ use01: 0.9, spread01: 0.05, count: 2 })
    expect(brief(found({ consumption: { ...consumption, readings: 0 } }, []))).toEqual([])
  })

  it('fits badly beyond three times its uncertainty', () => {
    expect(brief(found({ misfit: 3 }))).toEqual(['note loss-fitted measured'])
    expect(brief(found({ misfit: 3.01 }))).toEqual([
      'note loss-fitted measured',
      'caution readings-do-not-fit measured',
    ])
    expect(paramsOf(found({ misfit: 3.01 }), 'readings-do-not-fit')).toEqual({ count: 4 })
  })
})

describe('stores', () => {
  const stores = { nightId: 'night-2', waterShortMl: 0, foodShortG: 0 } as NightStores
  const found = (index: number, over: Partial<NightStores>) => storesFindings(trip, index, { ...stores, ...over })

  it('that last are not spoken of', () => {
    expect(found(1, {})).toEqual([])
  })

  it('that fall short are to be taken on at the site before, or from home', () => {
    const later = found(1, { waterShortMl: 1500, foodShortG: 300 })
    expect(brief(later)).toEqual(['caution water-short nights.1', 'caution food-short nights.1'])
    expect(later.map(({ problem }) => problem.params)).toEqual([
      { shortMm3: 1_500_000, site: night.site.name },
      { shortG: 300, site: night.site.name },
    ])
    const first = found(0, { waterShortMl: 1, foodShortG: 1 })
    expect(brief(first)).toEqual(['caution water-short-from-home nights.0', 'caution food-short-from-home nights.0'])
    expect(first.map(({ problem }) => problem.params)).toEqual([{ shortMm3: 1000 }, { shortG: 1 }])
    expect(first.every(({ nightId }) => nightId === 'night-2')).toBe(true)
  })
})

describe('the checklist', () => {
  const step = { key: 'b:n', nightId: 'night-2', phase: 'check-out' }
  const found = (...conflicts: object[]) =>
    checklistFindings(trip.nights, {
      steps: [{ key: 'a:n', nightId: 'night-1', phase: 'morning' }, step],
      conflicts,
    } as never)

  it('names rules, circles and windows, the window by its last step', () => {
    const said = found(
      { kind: 'bad-rule', ruleId: 'r', message: 'too-large', at: '' },
      { kind: 'circle', stepKeys: ['a:n', 'b:n', 'c:n'] },
      { kind: 'window', stepKeys: ['a:n', 'b:n'], lateByS: 90 },
      { kind: 'window', stepKeys: ['gone'], lateByS: 60 },
    )
    expect(
      said.map(({ id, severity, nightId, area, problem }) => [
        id,
        severity,
        area,
        nightId,
        problem.path,
        problem.params,
      ]),
    ).toEqual([
      ['rule-unreadable:trip:r', 'caution', 'checklist', null, ['checklist'], { rule: 'r', message: 'too-large' }],
      ['steps-in-a-circle:trip:a:n', 'caution', 'checklist', null, ['checklist'], { count: 3 }],
      [
        'steps-too-long:night-2:check-out',
        'caution',
        'checklist',
        'night-2',
        ['nights', 1],
        { phase: 'check-out', lateS: 90, count: 2 },
      ],
      ['steps-too-long:trip', 'caution', 'checklist', null, ['checklist'], { phase: 'morning', lateS: 60, count: 1 }],
    ])
  })
})

describe('the night itself', () => {
  const cardTrip = cardsTrip()
  const [cardNight] = cardTrip.nights
  const [plan] = cardsPlan(cardTrip).nights
  if (cardNight === undefined || plan === undefined) throw new Error('the trip has a night')
  const [sleeper] = plan.outcome.sleepers
  if (sleeper === undefined) throw new Error('somebody sleeps')
  const found = (outcome: Partial<NightPlan['outcome']>, over: Partial<Night> = {}, more: Partial<NightPlan> = {}) =>
    nightFindings(cardTrip, { ...cardNight, ...over }, 0, {
      ...plan,
      ...more,
      outcome: { ...plan.outcome, sleepers: [], leg: null, cautions: [], ...outcome },
    })
  const warm = { ...sleeper, verdict: 'enough', coldFromUtc: null, feetColdFromUtc: null } as const

  it('with warm sleepers, no caution and no leg is quiet', () => {
    expect(found({ sleepers: [warm] })).toEqual([])
  })

  it.each([
    ['cold', 'bag-rating', 'shortfall too-cold-for-bag'],
    ['too-cold', 'bag-rating', 'shortfall too-cold-for-bag'],
    ['cold', 'heat-balance', 'shortfall too-cold-for-body'],
    ['too-cold', 'heat-balance', 'shortfall too-cold-for-body'],
    ['cool', 'heat-balance', 'caution cool-sleeper'],
  ] as const)('a sleeper who is %s by %s', (verdict, ruledBy, expected) => {
    const said = found({ sleepers: [{ ...warm, verdict, ruledBy, marginK: -2 }] })
    expect(brief(said)).toEqual([`${expected} nights.0.beddingPieceIds`])
    expect(said[0]?.id.endsWith(`:${sleeper.sleeperId}`)).toBe(true)
  })

  it('says by how much, since when and who', () => {
    const fromUtc = at('2026-11-14T02:20:00Z')
    const cold = { ...warm, verdict: 'cold', ruledBy: 'bag-rating', marginK: -2.2, coldestOperativeC: 7 } as const
    const label = cardTrip.travellers.find(({ id }) => id === sleeper.sleeperId)?.label
    const params = { traveller: label, shortK: 2.2, coldestC: 7, zone: plan.clock.zone, ruledBy: 'bag-rating' }
    expect(paramsOf(found({ sleepers: [{ ...cold, coldFromUtc: fromUtc }] }), 'too-cold-for-bag')).toEqual({
      ...params,
      fromUtc,
    })
    expect(paramsOf(found({ sleepers: [cold] }), 'too-cold-for-bag')).toEqual({
      ...params,
      fromUtc: plan.outcome.coldestBedUtc,
    })
    const cool = { ...warm, verdict: 'cool', marginK: -0.5, coldestOperativeC: 8, sleeperId: 'guest' } as const
    expect(paramsOf(found({ sleepers: [cool] }), 'cool-sleeper')).toEqual({
      traveller: 'guest',
      shortK: 0.5,
      coldestC: 8,
    })
    const feet = { ...warm, feetColdFromUtc: fromUtc, coldestFeetC: 4 }
    const said = found({ sleepers: [feet] })
    expect(brief(said)).toEqual(['caution cold-feet nights.0.beddingPieceIds'])
    expect(paramsOf(said, 'cold-feet')).toEqual({ traveller: label, zone: plan.clock.zone, fromUtc, feetC: 4 })
  })

  it.each([
    ['sag-stop', 195, 'shortfall', { lowV: 195 }],
    ['sag-step-down', 205, 'caution', { lowV: 205 }],
    ['earth-missing', null, 'shortfall', {}],
    ['earth-not-known', null, 'caution', {}],
    ['co2-high', 9, 'caution', { co2Ppm: 1420 }],
    ['no-fresh-air', 9, 'caution', { co2Ppm: 1420 }],
    ['cold-illness', 11, 'caution', { tempC: 11 }],
    ['heat-illness', 33, 'caution', { tempC: 33 }],
    ['leisure-frost', null, 'caution', {}],
    ['leisure-acid-frost', null, 'caution', {}],
    ['heater-stops', null, 'caution', {}],
    ['polarity-reversed', null, 'caution', {}],
    ['carbon-monoxide', null, 'caution', {}],
    ['adapter', null, 'caution', {}],
    ['extension-lead', null, 'caution', {}],
    ['domestic-socket', 10, 'caution', { limitA: 10 }],
    ['adapter', 8, 'caution', { limitA: 8 }],
    ['extension-lead', 8, 'caution', { limitA: 8 }],
    ['shared-wiring', 0.08, 'caution', { sag01: 0.08 }],
    ['two-loads', 5, 'caution', { value: 5 }],
  ] as const)('a caution about %s', (code, value, severity, params) => {
    const said = found({ cautions: [{ code, value, atUtc: null }] })
    expect(brief(said)).toEqual([`${severity} night-${code} nights.0.hookup`])
    expect(said[0]?.problem.params).toEqual({ zone: plan.clock.zone, atUtc: plan.clock.bedtimeUtc, ...params })
  })

  it('air that nobody may breathe for eight hours at work is a shortfall, from beyond 5000 ppm', () => {
    const said = (co2MaxPpm: number) =>
      brief(found({ co2MaxPpm, cautions: [{ code: 'co2-high', value: co2MaxPpm, atUtc: null }] }))
    expect(said(5000)).toEqual(['caution night-co2-high nights.0.hookup'])
    expect(said(5001)).toEqual(['shortfall night-co2-high nights.0.hookup'])
  })

  it('a current below the least names the higher of the pilot’s six amperes and the car’s own least', () => {
    const cautions = [{ code: 'below-minimum-current', value: 4, atUtc: at('2026-11-13T20:00:00Z') }] as const
    const said = (minimumA: number | null) =>
      paramsOf(
        found(
          { cautions },
          {},
          { input: { ...plan.input, supply: (minimumA === null ? null : { minimumA }) as never } },
        ),
        'night-below-minimum-current',
      )
    expect(said(5)).toEqual({ zone: plan.clock.zone, atUtc: at('2026-11-13T20:00:00Z'), allowedA: 4, limitA: 6 })
    expect(said(8)).toMatchObject({ limitA: 8 })
    expect(said(null)).toMatchObject({ limitA: 6 })
  })

  it('the next leg: too long, with a stop, with a stop agreed', () => {
    const stop = { atM: 84_000, name: 'Car park', arrive01: 0.3, leave01: 0.6, durationS: 1500, energyWh: 21_000 }
    const leg = { needWh: 33_000, reserveWh: 7000, marginWh: -900, stops: [stop], reachable: true }
    const far = found({ leg: { ...leg, reachable: false }, depart01: 0.64 })
    expect(brief(far)).toEqual(['shortfall leg-too-long nights.0.leg'])
    expect(paramsOf(far, 'leg-too-long')).toEqual({ shortWh: 900, needWh: 33_000, reserveWh: 7000, depart01: 0.64 })
    expect(found({ leg: { ...leg, stops: [] } })).toEqual([])
    const stops = found({ leg, depart01: null })
    expect(brief(stops)).toEqual(['caution leg-needs-stop nights.0.leg'])
    expect(paramsOf(stops, 'leg-needs-stop')).toEqual({
      atM: 84_000,
      charger: ', Car park',
      energyWh: 21_000,
      durationS: 1500,
      shortWh: 900,
      depart01: 0,
    })
    const nameless = found({ leg: { ...leg, marginWh: 50, stops: [{ ...stop, name: null }] } })
    expect(paramsOf(nameless, 'leg-needs-stop')).toMatchObject({ charger: '', shortWh: 0 })
    const accepted = (...acceptedStopsM: number[]) =>
      brief(found({ leg: { ...leg, stops: [stop, { ...stop, atM: 99_000 }] } }, { leg: { acceptedStopsM } as never }))
    expect(accepted(84_000, 99_000)).toEqual(['note leg-needs-stop nights.0.leg'])
    expect(accepted(84_000)).toEqual(['caution leg-needs-stop nights.0.leg'])
  })
})

describe('the load', () => {
  it('asks of what is called fuel and not marked so, in both languages', () => {
    const [piece] = trip.kit.pieces
    if (piece === undefined) throw new Error('the sample has a piece')
    const found = (name: string, over: object = {}): readonly string[] => {
      const kit = { ...trip.kit, pieces: [{ ...piece, name, traits: {}, spare: false, ...over }] }
      const codes = brief(
        loadFindings({ ...trip, kit }, { ...cardsPlan(cardsTrip()).packing, cautions: [], faults: [] }),
      )
      return codes.filter((code) => code.includes('fuel'))
    }
    const asked = ['caution name-sounds-like-fuel kit.pieces.0.traits.fuel']
    for (const name of ['Petrol can', 'Gas cartridge 230', 'Brennspiritus', 'Benzinkanister'])
      expect([name, found(name)]).toEqual([name, asked])
    for (const name of ['Gaiters', 'Water can', 'Gas mask', 'Refuelled lunch'])
      expect([name, found(name)]).toEqual([name, []])
    expect(found('Petrol can', { traits: { fuel: true } })).toEqual([])
    expect(found('Petrol can', { spare: true })).toEqual([])
  })

  const packing = {
    driveUnplaced: [],
    nights: [],
    faults: [],
    cautions: [],
  }
  const found = (over: object) => loadFindings(trip, { ...packing, ...over } as never)
  const why = [
    { bayId: 'load-bay', rule: 'walls', shortByMm: 5 },
    { bayId: 'roof-box', rule: 'walls', shortByMm: 9 },
    { bayId: 'roof-box', rule: 'limit', shortByMm: null },
  ]
  const quiet = { nightId: 'night-1', unplaced: [], changeover: { stuckUnitIds: [] } }

  it('that stands is quiet', () => {
    expect(found({ nights: [quiet] })).toEqual([])
  })

  it('says what has no place by day and at night, each rule once', () => {
    const said = found({
      driveUnplaced: [{ unitId: 'boots', layout: 'drive', nightId: null, why }],
      nights: [{ ...quiet, unplaced: [{ unitId: 'food-box', layout: 'bed', nightId: 'night-1', why: [] }] }],
    })
    expect(said.map(({ id, severity, problem }) => [id, severity, problem.path, problem.params])).toEqual([
      [
        'no-place-by-day:trip:boots',
        'shortfall',
        ['kit', 'pieces', 14],
        { unit: trip.kit.pieces[14]?.name, rules: ['walls', 'limit'] },
      ],
      ['no-place-at-night:night-1:food-box', 'shortfall', ['kit', 'bins', 4], { unit: 'Food box', rules: [] }],
    ])
  })

  it('says what is stuck at the changeover', () => {
    const said = found({ nights: [{ ...quiet, changeover: { stuckUnitIds: ['ghost'] } }] })
    expect(said.map(({ id, severity, problem }) => [id, severity, problem.path, problem.params])).toEqual([
      ['changeover-stuck:night-1:ghost', 'shortfall', ['kit'], { unit: 'ghost' }],
    ])
  })

  it('says a limit passed and by how much; what is behind others is a nuisance', () => {
    const fault = { rule: 'bay-mass', amount: 230_000, limit: 220_000, bayId: 'load-bay', unitId: null, nightId: null }
    const bay = 'Load bay behind the rear seats'
    const reach = { ...fault, rule: 'reach', unitId: 'boots', nightId: 'night-1', limit: 0 }
    const said = found({ faults: [fault, { ...reach, amount: 2 }, { ...reach, amount: 0, bayId: null, unitId: null }] })
    expect(said.map(({ id, severity, problem }) => [id, severity, problem.params])).toEqual([
      ['over-bay-mass:trip:load-bay', 'shortfall', { amountG: 230_000, limitG: 220_000, overG: 10_000, bay }],
      ['over-reach:night-1:boots', 'caution', { unit: trip.kit.pieces[14]?.name, bay, count: 2 }],
      ['out-of-reach:night-1', 'caution', { unit: '', bay: '', count: 0 }],
    ])
  })

  it('warns of what may fly, with the pull on it where that is known', () => {
    const caution = { code: 'unrestrained', unitId: 'boots', bayId: 'ghost-bay', forceKn: [1, 2] }
    const said = found({ cautions: [caution, { ...caution, code: 'heavy-high', forceKn: null }] })
    const unit = trip.kit.pieces[14]?.name
    expect(said.map(({ severity, problem }) => [severity, problem.code, problem.params])).toEqual([
      ['caution', 'load-unrestrained', { unit, bay: 'ghost-bay', lowKn: 1, highKn: 2 }],
      ['caution', 'load-heavy-high', { unit, bay: 'ghost-bay' }],
    ])
  })
})
