/** What to do if something happens at night: drills without a time. */
import { PLUGGED_IN, ALWAYS, above, below, equals, every, filled, is, isNot, known, some } from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('in-the-night')

export const inTheNightRules: readonly Rule[] = [
  rule('cold-wake-drill', {
    when: below('weather.lowC', 8),
    durationS: 0,
  }),
  rule('indoor-fallback', {
    when: every(below('weather.lowC', 3), known('site.indoorFallback')),
    durationS: 0,
    params: { fallback: 'site.indoorFallback' },
  }),
  rule('supply-failure-drill', {
    when: PLUGGED_IN,
    durationS: 0,
  }),
  rule('supply-failure-hours', {
    when: every(PLUGGED_IN, known('energy.heatLeftOnFaultH')),
    durationS: 0,
    params: { hoursH: 'energy.heatLeftOnFaultH' },
  }),
  rule('plug-smell-drill', {
    when: PLUGGED_IN,
    durationS: 0,
    caution: true,
  }),
  rule('co-alarm-drill', {
    when: is('onBoard.co-alarm'),
    durationS: 0,
    caution: true,
  }),
  rule('co-signs-drill', {
    when: isNot('onBoard.co-alarm'),
    durationS: 0,
    caution: true,
  }),
  rule('fire-drill', {
    when: some(filled('load.fuel'), equals('vehicle.heaterKind', 'mains-fan-heater'), is('hookup.present')),
    durationS: 0,
    caution: true,
  }),
  rule('clear-snow-at-night', {
    when: above('weather.snowMm', 0),
    durationS: 0,
  }),
  rule('quiet-at-night', {
    when: is('clock.hasQuietHours'),
    durationS: 0,
  }),
  rule('animal-drill', {
    when: is('site.foodLockerRequired'),
    durationS: 0,
    caution: true,
  }),
  rule('heat-drill', {
    when: above('sleepers.hottestBedC', 28),
    durationS: 0,
    caution: true,
  }),
  rule('note-readings', {
    when: ALWAYS,
    durationS: 0,
  }),
]
