/** The instants of a night that rules may name, worked out by hand: clocks of Zurich in November are an hour before UTC. */
import { describe, expect, it } from 'vitest'
import type { Trip } from '../../../shared/document/index.ts'
import { checklistInput } from '../../../shared/plan/inputs/checklist.ts'
import type { NightPlan } from '../../../shared/plan/types.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

const whole = cardsTrip()
const [first] = whole.nights
const plan = cardsPlan(whole)
const [night] = plan.nights
if (first === undefined || night === undefined) throw new Error('a night and its plan')

const momentsOf = (over: Partial<Trip['nights'][number]> = {}, clock: Partial<NightPlan['clock']> = {}) => {
  const trip = { ...whole, nights: [{ ...first, ...over }] }
  const own = { ...night, clock: { ...night.clock, ...clock } }
  const moments = checklistInput(trip, plan.packing, [own], plan.stores).nights[0]?.moments ?? {}
  return Object.fromEntries(Object.entries(moments).map(([name, at]) => [name, new Date(at * 1000).toISOString()]))
}

describe('the instants that rules may name', () => {
  it('are those of the clock, the site’s hours, the plug and the target', () => {
    const { target: _target, ...bare } = first
    const target = { name: 'the ridge', driveM: 6000, driveMin: 10, walkMin: 25, minutesBeforeSunrise: 20 }
    expect(momentsOf({ ...bare, target })).toEqual({
      arrive: '2026-11-13T15:10:00.000Z',
      checkInFrom: '2026-11-13T12:00:00.000Z',
      checkInTo: '2026-11-13T18:00:00.000Z',
      sunset: '2026-11-13T15:52:00.000Z',
      civilDusk: '2026-11-13T16:24:00.000Z',
      quietFrom: '2026-11-13T21:00:00.000Z',
      quietTo: '2026-11-14T06:00:00.000Z',
      plugIn: '2026-11-13T16:00:00.000Z',
      bedtime: '2026-11-13T21:00:00.000Z',
      wake: '2026-11-14T04:45:00.000Z',
      unplug: '2026-11-14T05:40:00.000Z',
      depart: '2026-11-14T05:40:00.000Z',
      civilDawn: '2026-11-14T05:58:00.000Z',
      sunrise: '2026-11-14T06:30:00.000Z',
      beAtTarget: '2026-11-14T06:10:00.000Z',
      // There at 6:10, the sun up 20 minutes later, an hour's stay, 35 minutes back.
      backFromTarget: '2026-11-14T08:05:00.000Z',
      checkOutBy: '2026-11-14T10:00:00.000Z',
    })
  })

  it('leave out what the night does not have, and hold what bars the way where something does', () => {
    const { checkIn: _hours, hookup: _post, target: _target, ...without } = first
    const trip = { ...whole, nights: [without] }
    const bare = { ...night, clock: { ...night.clock, quietFromUtc: null, quietToUtc: null, beAtTargetUtc: null } }
    const found = checklistInput(trip, plan.packing, [bare], plan.stores).nights[0]?.moments ?? {}
    const absent = [
      'checkInFrom',
      'checkInTo',
      'quietFrom',
      'quietTo',
      'plugIn',
      'unplug',
      'beAtTarget',
      'backFromTarget',
    ]
    expect(Object.keys(found).filter((name) => absent.includes(name))).toEqual([])
    expect(Object.keys(found)).toContain('bedtime')

    const { arriveUtc, bedtimeUtc, wakeUtc, departUtc } = night.clock
    const barred = { banFromUtc: arriveUtc, banToUtc: bedtimeUtc, gateFromUtc: wakeUtc, gateToUtc: departUtc }
    expect(momentsOf({}, barred)).toMatchObject({
      banFrom: '2026-11-13T15:10:00.000Z',
      banTo: '2026-11-13T21:00:00.000Z',
      gateFrom: '2026-11-14T04:45:00.000Z',
      gateTo: '2026-11-14T05:40:00.000Z',
    })
  })

  it('are a night’s own only where it has a plan', () => {
    expect(checklistInput(whole, plan.packing, [], plan.stores).nights).toEqual([])
  })
})

describe('the clocks at home', () => {
  const leaveHome = { date: '2026-11-13', clock: '08:30', zone: 'Europe/Zurich' }
  const backHome = { date: '2026-11-15', clock: '17:00', zone: 'Europe/London' }
  const asked = (home: Partial<Trip>) => checklistInput({ ...whole, ...home }, plan.packing, plan.nights, plan.stores)
  const iso = (at: number | undefined): string | null => (at === undefined ? null : new Date(at * 1000).toISOString())

  it('are known to every night, each in its own zone', () => {
    const { nights } = asked({ leaveHome, backHome })
    expect(nights).toHaveLength(whole.nights.length)
    for (const { moments } of nights) {
      // 08:30 in Zurich is an hour before UTC in November, London keeps UTC.
      expect(iso(moments['leaveHome'])).toBe('2026-11-13T07:30:00.000Z')
      expect(iso(moments['backHome'])).toBe('2026-11-15T17:00:00.000Z')
    }
  })

  it('time nothing where they contradict the nights', () => {
    const late = asked({
      leaveHome: { ...leaveHome, date: '2026-11-14' },
      backHome: { ...backHome, date: '2026-11-13' },
    })
    expect(late.nights.flatMap(({ moments }) => [moments['leaveHome'], moments['backHome']]).filter(Boolean)).toEqual(
      [],
    )
  })

  it('are absent where the trip does not set them', () => {
    const { nights, homeRest } = asked({})
    expect(nights.flatMap(({ moments }) => [moments['leaveHome'], moments['backHome']]).filter(Boolean)).toEqual([])
    expect(homeRest).toBeUndefined()
  })

  it('keep the night before leaving free, from 21:00 to 07:00 at home', () => {
    const { homeRest } = asked({ leaveHome })
    expect(iso(homeRest?.fromUtc)).toBe('2026-11-12T20:00:00.000Z')
    expect(iso(homeRest?.toUtc)).toBe('2026-11-13T06:00:00.000Z')
  })
})
