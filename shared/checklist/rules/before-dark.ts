/** The evening, while there is light. */
import {
  DRAWS_CURRENT,
  PLUGGED_IN,
  ALWAYS,
  above,
  below,
  equals,
  every,
  filled,
  is,
  isNot,
  known,
  not,
  notEquals,
  some,
} from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('before-dark')

export const beforeDarkRules: readonly Rule[] = [
  rule('feel-plug-10', {
    when: every(DRAWS_CURRENT, isNot('hookup.chargingPoint')),
    durationS: 60,
    notBefore: 'plugIn',
    notBeforeOffsetS: 600,
    caution: true,
  }),
  rule('feel-plug-60', {
    when: every(DRAWS_CURRENT, isNot('hookup.chargingPoint')),
    durationS: 60,
    notBefore: 'plugIn',
    notBeforeOffsetS: 3600,
    caution: true,
  }),
  rule('cook-outside', {
    when: every(is('supplies.stoveOnBoard'), notEquals('site.fireAllowed', 'no')),
    durationS: 1200,
  }),
  rule('no-flames', {
    when: every(is('supplies.stoveOnBoard'), equals('site.fireAllowed', 'no')),
    durationS: 60,
    caution: true,
  }),
  rule('cool-before-stowing', {
    when: every(is('supplies.stoveOnBoard'), notEquals('site.fireAllowed', 'no')),
    durationS: 60,
    after: ['cook-outside'],
  }),
  rule('boil-before-heating', {
    when: every(PLUGGED_IN, above('hookup.otherLoadW', 0), isNot('hookup.twoLoadsTooMuch')),
    durationS: 600,
  }),
  rule('kettle-alone', {
    when: every(DRAWS_CURRENT, is('hookup.twoLoadsTooMuch'), known('hookup.usableA')),
    durationS: 600,
    params: { usableA: 'hookup.usableA' },
    caution: true,
  }),
  rule('food-to-locker', {
    when: every(is('site.foodLockerRequired'), is('site.foodLockerPresent')),
    durationS: 60,
    forEach: 'load.food',
    params: { name: 'item.name' },
    caution: true,
    after: ['cook-outside', 'wash-up', 'waste-water-caught'],
  }),
  rule('food-in-place', {
    when: every(isNot('site.foodLockerRequired'), notEquals('item.place', '')),
    durationS: 60,
    forEach: 'load.food',
    params: { name: 'item.name', place: 'item.place' },
    after: ['wash-up'],
  }),
  rule('scent-walk-through', {
    when: is('site.foodLockerRequired'),
    durationS: 300,
    after: ['food-to-locker'],
    caution: true,
  }),
  rule('locker-missing', {
    when: every(is('site.foodLockerRequired'), isNot('site.foodLockerPresent')),
    durationS: 600,
    caution: true,
  }),
  rule('locker-full', {
    when: every(is('site.foodLockerRequired'), is('site.foodLockerPresent'), filled('load.food')),
    durationS: 60,
  }),
  rule('wash-up', {
    when: is('onBoard.food'),
    durationS: 600,
    deadline: 'quietFrom',
    after: ['cook-outside', 'cool-before-stowing'],
  }),
  rule('waste-water-caught', {
    when: every(is('supplies.stoveOnBoard'), notEquals('site.fireAllowed', 'no')),
    durationS: 120,
    after: ['wash-up'],
  }),
  rule('bring-in-from-frost', {
    when: notEquals('item.place', ''),
    durationS: 60,
    forEach: 'load.freezing',
    params: { name: 'item.name', limitC: 'item.freezesBelowC', place: 'item.place' },
  }),
  rule('frost-without-place', {
    when: equals('item.place', ''),
    durationS: 60,
    forEach: 'load.freezing',
    params: { name: 'item.name', limitC: 'item.freezesBelowC' },
  }),
  rule('lithium-warm', {
    when: below('weather.lowC', 0),
    durationS: 60,
    forEach: 'load.lithium',
    params: { name: 'item.name' },
  }),
  rule('water-for-the-night', {
    when: every(above('supplies.waterWantedMm3', 0), not(filled('load.freezing'))),
    durationS: 120,
  }),
  rule('wet-things-apart', {
    when: some(above('weather.rainMm', 0), above('weather.snowMm', 0), below('weather.lowC', 0)),
    durationS: 60,
    forEach: 'load.wet',
    params: { name: 'item.name' },
  }),
  rule('cool-box-shade', {
    when: every(is('supplies.coolBox'), above('weather.highC', 22)),
    durationS: 60,
  }),
  rule('air-before-bed', {
    when: above('weather.highC', 24),
    durationS: 600,
  }),
  rule('charge-small-things', {
    when: is('onBoard.phone-power'),
    durationS: 120,
  }),
  rule('bed-prepare', {
    when: ALWAYS,
    durationS: 120,
    forEach: 'vehicle.bedPrepare',
    params: { name: 'item.name' },
  }),
  rule('make-bed', {
    when: filled('load.bed'),
    durationS: 300,
    after: ['bed-prepare', 'move-dusk'],
  }),
  rule('stand-outside', {
    when: ALWAYS,
    durationS: 60,
    forEach: 'load.outside',
    params: { name: 'item.name' },
  }),
  rule('wind-stow', {
    when: above('weather.windMPerS', 8),
    durationS: 180,
    params: { windMPerS: 'weather.windMPerS' },
  }),
  rule('hide-valuables', {
    when: filled('load.valuables'),
    durationS: 120,
  }),
  rule('lay-out-morning', {
    when: every(is('target.present'), known('target.name')),
    durationS: 300,
    params: { target: 'target.name' },
  }),
  rule('covers-last', {
    when: is('air.covers'),
    durationS: 300,
    after: ['make-bed', 'move-dusk', 'bed-prepare'],
  }),
  rule('noise-before-quiet', {
    when: is('clock.hasQuietHours'),
    durationS: 60,
    deadline: 'quietFrom',
  }),
  rule('ready-to-drive-off', {
    when: some(above('clock.departInQuietMin', 0), above('clock.departInBanMin', 0)),
    durationS: 120,
  }),
  rule('park-outside-barrier', {
    when: some(above('clock.departInBanMin', 0), above('clock.departInGateMin', 0)),
    durationS: 300,
    caution: true,
  }),
]
