/** The one remedy of a small trip that falls short in one way: what is offered, and that taking it mends the plan. */
import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../shared/document/index.ts'
import type { Night, SingleChange } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import { smallTrip } from '../../support/generators/planted-shortfall.ts'
import { codes, sample, withNight } from './trips.ts'

const small = smallTrip(sample('bats-by-the-quarry'), 0)
const nightId = 'night-1'

const withHookup = (night: Night, change: Partial<NonNullable<Night['hookup']>>): Night =>
  night.hookup === undefined ? night : { ...night, hookup: { ...night.hookup, ...change } }

const withoutTarget = ({ target: _target, ...night }: Night): Night => night

describe('the one remedy of a small trip', () => {
  it.each<[string, string, (night: Night) => Night, SingleChange]>([
    [
      // Open until 20:00, arriving at 20:10: at 19:59 with a minute in hand.
      'a site that has closed',
      'arrive-after-check-in',
      (night) => ({ ...night, arrive: '20:10' }),
      { kind: 'arrive-earlier', nightId, byMin: 11 },
    ],
    [
      // Arriving at 16:20.
      'a gate that is shut on arriving',
      'arrive-after-gate',
      (night) => ({ ...night, gateClosed: { from: '16:00', to: '06:00' } }),
      { kind: 'arrive-earlier', nightId, byMin: 21 },
    ],
    [
      // Arriving at 16:20.
      'a site where nothing moves any more on arriving',
      'arrive-in-movement-ban',
      (night) => ({ ...night, movementBan: { from: '16:00', to: '23:00' } }),
      { kind: 'arrive-earlier', nightId, byMin: 21 },
    ],
    [
      // Sunrise 07:21, 40 minutes before it, 9 to drive and 12 to walk: leaving at 06:20, 10 minutes and a few seconds early.
      'a gate that is still shut on leaving',
      'leave-before-gate',
      (night) => ({ ...night, gateClosed: { from: '22:00', to: '06:30' } }),
      { kind: 'target-later', nightId, byMin: 12 },
    ],
    [
      // Up at 04:55, 75 minutes until leaving: 06:10.
      'an hour of leaving that is past',
      'leave-after-check-out',
      (night) => withoutTarget({ ...night, checkOutBy: '05:30' }),
      { kind: 'leave-earlier', nightId, byMin: 41 },
    ],
    [
      'a post without earth',
      'night-earth-missing',
      (night) => withHookup(night, { earthOk: 'no' }),
      { kind: 'without-hookup', nightId },
    ],
    [
      // Below 205 V before anything is drawn: no smaller current helps.
      'a post that is too weak for any load',
      'night-sag-stop',
      (night) =>
        withHookup(night, {
          readings: [
            { currentA: 0, volts: 203 },
            { currentA: 10, volts: 190 },
          ],
        }),
      { kind: 'without-hookup', nightId },
    ],
  ])('for %s', (_, code, spoil, change) => {
    const trip = withNight(small, 0, spoil)
    const plan = derivePlan(trip, { seed: 1, iterations: 0, remedies: true })
    expect(codes(plan, 'shortfall')).toEqual([code])
    expect(plan.remedies.map((remedy) => [remedy.change, remedy.mends])).toEqual([[change, [`${code}:${nightId}`]]])
    const taken = applyEdit(trip, { kind: 'take-remedy', change })
    if (!taken.ok) throw new Error(taken.problem.code)
    expect(codes(derivePlan(taken.value, { seed: 1, iterations: 0, remedies: false }), 'shortfall')).toEqual([])
  })

  it('for a cabin shut tight, whose air nobody may work in for a day: the habit of 15 mm on two sides, and wider', () => {
    const trip = withNight(small, 0, (night) => ({ ...night, ventilation: { gapMm: 0, sides: 0 } }))
    const plan = derivePlan(trip, { seed: 1, iterations: 0, remedies: true })
    // Two sleepers give 26 l/h of CO2 to hardly any air: over 5000 ppm.
    expect(codes(plan, 'shortfall')).toEqual(['night-co2-high'])
    const [best, ...others] = plan.remedies.map(({ change }) => change)
    expect(best).toEqual({ kind: 'window-gap', nightId, toMm: 15 })
    expect(others.map(({ kind }) => kind)).toEqual(['window-gap', 'window-gap'])
    const taken = best === undefined ? null : applyEdit(trip, { kind: 'take-remedy', change: best })
    if (taken?.ok !== true) throw new Error('no remedy to take')
    expect(taken.value.nights[0]?.ventilation).toEqual({ gapMm: 15, sides: 2 })
    expect(codes(derivePlan(taken.value, { seed: 1, iterations: 0, remedies: false }), 'shortfall')).toEqual([])
  })
})
