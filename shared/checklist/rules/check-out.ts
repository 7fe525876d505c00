/** Leaving the site for good. */
import { PLUGGED_IN, ALWAYS, above, atLeast, equals, every, is, isNot, known, some } from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('check-out')

export const checkOutRules: readonly Rule[] = [
  rule('settle-supply', {
    when: every(PLUGGED_IN, is('hookup.meteredPerKWh')),
    durationS: 180,
  }),
  rule('empty-toilet', {
    when: is('onBoard.toilet'),
    durationS: 300,
    carriesTo: 'check-out',
  }),
  rule('rubbish-out', {
    when: ALWAYS,
    durationS: 120,
    carriesTo: 'check-out',
  }),
  rule('waste-water-out', {
    when: is('onBoard.water'),
    durationS: 120,
    carriesTo: 'check-out',
  }),
  rule('water-refill', {
    when: every(known('tomorrow.site'), above('tomorrow.waterShortMm3', 0)),
    durationS: 180,
    params: { shortMm3: 'tomorrow.waterShortMm3', site: 'tomorrow.site' },
    carriesTo: 'on-the-road',
  }),
  rule('food-refill', {
    when: every(known('tomorrow.site'), above('tomorrow.foodShortG', 0)),
    durationS: 900,
    params: { shortG: 'tomorrow.foodShortG', site: 'tomorrow.site' },
    carriesTo: 'on-the-road',
  }),
  rule('dry-things', {
    when: some(
      above('air.condensateG', 50),
      above('air.frostG', 0),
      above('weather.rainMm', 0),
      above('weather.snowMm', 0),
    ),
    durationS: 600,
    carriesTo: 'before-dark',
  }),
  rule('restock-first-aid', {
    when: every(is('onBoard.first-aid'), isNot('trip.lastNight'), atLeast('trip.nightNumber', 2)),
    durationS: 60,
    carriesTo: 'check-out',
  }),
  rule('report-damage', {
    when: some(
      above('hookup.sag01', 0.05),
      equals('hookup.earth', 'no'),
      equals('hookup.polarityReversed', 'yes'),
      is('hookup.trippedBefore'),
    ),
    durationS: 60,
  }),
  rule('hand-back', {
    when: ALWAYS,
    durationS: 60,
  }),
  rule('ledger-line', {
    when: ALWAYS,
    durationS: 120,
    carriesTo: 'check-out',
  }),
  rule('lesson-note', {
    when: ALWAYS,
    durationS: 120,
    carriesTo: 'check-out',
  }),
]
