/** After the trip. */
import { above, below, equals, every, filled, is, some } from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('back-home')

export const backHomeRules: readonly Rule[] = [
  rule('dry-everything', {
    when: is('trip.lastNight'),
    durationS: 1800,
  }),
  rule('fuel-out-home', {
    when: every(is('trip.lastNight'), filled('load.fuel')),
    durationS: 180,
    caution: true,
  }),
  rule('water-out-home', {
    when: every(is('trip.lastNight'), is('onBoard.water')),
    durationS: 300,
  }),
  rule('cool-box-clean', {
    when: every(is('trip.lastNight'), is('supplies.coolBox')),
    durationS: 300,
  }),
  rule('batteries-store', {
    when: every(is('trip.lastNight'), filled('load.lithium')),
    durationS: 180,
  }),
  rule('leisure-battery-home', {
    when: every(
      is('trip.lastNight'),
      some(equals('vehicle.leisureKind', 'lfp'), equals('vehicle.leisureKind', 'lead')),
    ),
    durationS: 120,
  }),
  rule('count-adapters', {
    when: every(is('trip.lastNight'), is('onBoard.adapter')),
    durationS: 120,
  }),
  rule('inspect-lead-home', {
    when: every(is('trip.lastNight'), some(is('onBoard.lead'), is('onBoard.charging-unit'))),
    durationS: 180,
  }),
  rule('replace-used', {
    when: is('trip.lastNight'),
    durationS: 300,
  }),
  rule('leave-unused-next-time', {
    when: is('trip.lastNight'),
    durationS: 30,
    forEach: 'load.unused',
    params: { name: 'item.name' },
  }),
  rule('close-ledger', {
    when: every(is('trip.lastNight'), above('trip.travellers', 1)),
    durationS: 300,
  }),
  rule('keep-site-facts', {
    when: is('trip.lastNight'),
    durationS: 180,
  }),
  rule('wash-salt', {
    when: every(is('trip.lastNight'), below('trip.lowestC', 0)),
    durationS: 600,
  }),
]
