/** From waking to rolling. */
import {
  DRAWS_CURRENT,
  PLUGGED_IN,
  ALWAYS,
  above,
  atLeast,
  atMost,
  below,
  equals,
  every,
  filled,
  is,
  isNot,
  known,
  missing,
  not,
  notEquals,
  some,
} from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('morning')

export const morningRules: readonly Rule[] = [
  rule('read-morning', {
    when: ALWAYS,
    durationS: 60,
  }),
  rule('dress-and-drink', {
    when: ALWAYS,
    durationS: 480,
  }),
  rule('warm-before-unplugging', {
    when: every(DRAWS_CURRENT, equals('vehicle.drive', 'electric'), below('weather.lowC', 5)),
    durationS: 60,
  }),
  rule('cold-battery', {
    when: every(is('energy.coldBattery'), equals('vehicle.drive', 'electric'), below('weather.lowC', -5)),
    durationS: 30,
  }),
  rule('vent-and-wipe', {
    when: above('air.condensateG', 0),
    durationS: 180,
    params: { waterG: 'air.condensateG' },
  }),
  rule('covers-off', {
    when: every(is('air.covers'), not(above('air.frostG', 0))),
    durationS: 120,
    after: ['dress-and-drink'],
  }),
  rule('covers-off-frozen', {
    when: every(is('air.covers'), above('air.frostG', 0)),
    durationS: 180,
    after: ['dress-and-drink'],
  }),
  rule('clear-glass', {
    when: some(atMost('weather.lowC', 0), above('weather.snowMm', 0)),
    durationS: 360,
    after: ['covers-off', 'covers-off-frozen'],
    // Cleared sooner, it freezes over again.
    notBefore: 'depart',
    notBeforeOffsetS: -1800,
    caution: true,
  }),
  rule('clear-roof', {
    when: above('weather.snowMm', 0),
    durationS: 180,
    after: ['clear-glass'],
    caution: true,
  }),
  rule('unplug-post-first', {
    when: every(PLUGGED_IN, isNot('hookup.chargingPoint'), missing('clock.unplugAfterDepartMin')),
    durationS: 180,
    after: ['warm-before-unplugging', 'read-morning'],
    // The night counts on the charge until then.
    notBefore: 'unplug',
    notBeforeOffsetS: -600,
    deadline: 'unplug',
    caution: true,
  }),
  rule('unplug-to-leave', {
    when: every(PLUGGED_IN, isNot('hookup.chargingPoint'), known('clock.unplugAfterDepartMin')),
    durationS: 180,
    after: ['warm-before-unplugging', 'read-morning'],
    deadline: 'depart',
    caution: true,
  }),
  rule('unplug-charging-point', {
    when: every(is('hookup.chargingPoint'), missing('clock.unplugAfterDepartMin')),
    durationS: 60,
    after: ['warm-before-unplugging', 'read-morning'],
    notBefore: 'unplug',
    notBeforeOffsetS: -600,
    deadline: 'unplug',
  }),
  rule('end-charge-to-leave', {
    when: every(is('hookup.chargingPoint'), known('clock.unplugAfterDepartMin')),
    durationS: 60,
    after: ['warm-before-unplugging', 'read-morning'],
    deadline: 'depart',
  }),
  rule('adapter-back', {
    when: every(PLUGGED_IN, is('hookup.adapterNeeded'), is('hookup.adapterOnBoard'), known('hookup.adapterName')),
    durationS: 30,
    params: { name: 'hookup.adapterName' },
    after: ['unplug-post-first', 'unplug-to-leave'],
  }),
  rule('next-adapter-check', {
    when: is('item.onBoard'),
    durationS: 30,
    forEach: 'trip.nextAdapters',
    params: { name: 'item.name', site: 'item.siteName' },
  }),
  rule('next-adapter-missing', {
    when: isNot('item.onBoard'),
    durationS: 60,
    forEach: 'trip.nextAdapters',
    params: { connector: 'item.connector', site: 'item.siteName' },
    caution: true,
  }),
  rule('lead-stow', {
    when: every(PLUGGED_IN, isNot('hookup.chargingPoint')),
    durationS: 120,
    after: ['unplug-post-first', 'unplug-to-leave'],
  }),
  rule('fuel-back', {
    when: ALWAYS,
    durationS: 60,
    forEach: 'load.fuel',
    params: { name: 'item.name' },
    after: ['move-dawn'],
  }),
  rule('food-from-locker', {
    when: every(is('site.foodLockerRequired'), is('site.foodLockerPresent')),
    durationS: 120,
  }),
  rule('restraint-again', {
    when: ALWAYS,
    durationS: 120,
    after: ['move-dawn', 'fuel-back'],
    caution: true,
  }),
  rule('laundry-apart', {
    when: every(above('supplies.dirtyG', 0), atLeast('trip.nightNumber', 2)),
    durationS: 60,
    params: { dirtyG: 'supplies.dirtyG' },
  }),
  rule('wet-load', {
    when: every(filled('load.wet'), some(above('weather.snowMm', 0), above('weather.rainMm', 0))),
    durationS: 60,
  }),
  rule('tyres-cold-morning', {
    when: below('weather.lowC', -5),
    durationS: 60,
    carriesTo: 'morning',
  }),
  rule('ramps-and-chocks-back', {
    when: some(is('onBoard.chocks'), atLeast('pitch.rampMm', 15)),
    durationS: 120,
  }),
  rule('walk-round', {
    when: ALWAYS,
    durationS: 120,
    after: ['restraint-again', 'lead-stow', 'ramps-and-chocks-back'],
  }),
  rule('ban-in-force', {
    when: above('clock.departInBanMin', 0),
    durationS: 30,
    params: { earlyMin: 'clock.departInBanMin' },
    caution: true,
  }),
  rule('quiet-departure', {
    when: above('clock.departInQuietMin', 0),
    durationS: 30,
    after: ['walk-round'],
  }),
  rule('soft-exit', {
    when: is('pitch.soft'),
    durationS: 60,
    after: ['walk-round'],
  }),
  rule('leg-short', {
    when: every(is('leg.present'), below('leg.marginWh', 0)),
    durationS: 60,
    caution: true,
  }),
  rule('leg-stop', {
    when: notEquals('item.name', ''),
    durationS: 60,
    forEach: 'leg.stops',
    params: { name: 'item.name', atM: 'item.atM', leave01: 'item.leave01' },
  }),
  rule('leg-stop-unnamed', {
    when: equals('item.name', ''),
    durationS: 60,
    forEach: 'leg.stops',
    params: { atM: 'item.atM', leave01: 'item.leave01' },
  }),
  rule('pitch-left-legal', {
    when: every(is('clock.returnsAfterTarget'), isNot('site.outsideStorage')),
    durationS: 60,
  }),
  rule('target-kit', {
    when: every(is('target.present'), is('onBoard.target-kit'), known('target.name')),
    durationS: 60,
    params: { target: 'target.name' },
  }),
]
