/** Going to bed. */
import {
  DRAWS_CURRENT,
  ALWAYS,
  above,
  atLeast,
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

const rule = rulesOf('bedtime')

export const bedtimeRules: readonly Rule[] = [
  rule('keep-clear', {
    when: ALWAYS,
    durationS: 60,
    forEach: 'vehicle.keepClear',
    params: { name: 'item.name' },
    after: ['move-dusk'],
  }),
  rule('keys-in-place', {
    when: ALWAYS,
    durationS: 30,
    after: ['move-dusk'],
  }),
  rule('exit-door', {
    when: known('vehicle.exitDoor'),
    durationS: 30,
    params: { door: 'vehicle.exitDoor' },
    after: ['move-dusk'],
  }),
  rule('fuel-outside', {
    when: notEquals('item.place', ''),
    durationS: 60,
    forEach: 'load.fuel',
    params: { name: 'item.name', place: 'item.place' },
    caution: true,
    after: ['move-dusk'],
  }),
  rule('fuel-without-place', {
    when: equals('item.place', ''),
    durationS: 180,
    forEach: 'load.fuel',
    params: { name: 'item.name' },
    after: ['move-dusk'],
    caution: true,
  }),
  rule('nothing-burns-inside', {
    when: some(is('supplies.stoveOnBoard'), filled('load.fuel')),
    durationS: 30,
    caution: true,
  }),
  rule('engine-off', {
    when: equals('vehicle.drive', 'combustion'),
    durationS: 30,
    caution: true,
  }),
  rule('co-alarm-on', {
    when: is('onBoard.co-alarm'),
    durationS: 60,
    caution: true,
  }),
  rule('fan-heater-clear', {
    when: every(equals('vehicle.heaterKind', 'mains-fan-heater'), is('heating.set')),
    durationS: 60,
    caution: true,
  }),
  rule('open-for-air', {
    when: every(above('air.windowGapMm', 0), is('air.covers')),
    durationS: 60,
    params: { gapMm: 'air.windowGapMm' },
  }),
  rule('open-for-air-bare', {
    when: every(above('air.windowGapMm', 0), isNot('air.covers')),
    durationS: 60,
    params: { gapMm: 'air.windowGapMm' },
  }),
  rule('no-air-gap', {
    when: equals('air.windowGapMm', 0),
    durationS: 60,
    caution: true,
  }),
  rule('carbon-dioxide-high', {
    when: above('air.co2MaxPpm', 2000),
    durationS: 60,
    params: { co2Ppm: 'air.co2MaxPpm' },
    caution: true,
  }),
  rule('insect-net', {
    when: every(above('air.windowGapMm', 0), above('weather.lowC', 8)),
    durationS: 60,
  }),
  rule('hot-night', {
    when: above('sleepers.hottestBedC', 26),
    durationS: 120,
    params: { hottestC: 'sleepers.hottestBedC' },
    caution: true,
  }),
  rule('heating-set', {
    when: every(is('heating.set'), known('heating.setPointC')),
    durationS: 60,
    params: { setPointC: 'heating.setPointC' },
  }),
  rule('bed-heat-first', {
    when: is('heating.bedHeater'),
    durationS: 60,
  }),
  rule('no-heat-cold-night', {
    when: every(isNot('heating.set'), below('weather.lowC', 0)),
    durationS: 120,
    params: { lowC: 'weather.lowC' },
    caution: true,
  }),
  rule('eat-and-dry-socks', {
    when: below('weather.lowC', 8),
    durationS: 300,
  }),
  rule('hot-bottle', {
    when: every(is('sleepers.hotBottle'), below('weather.lowC', 8)),
    durationS: 180,
  }),
  rule('cold-sleeper', {
    when: ALWAYS,
    durationS: 60,
    forEach: 'sleepers.cold',
    params: { name: 'item.name', shortK: 'item.shortK' },
    caution: true,
  }),
  rule('feet-cold', {
    when: ALWAYS,
    durationS: 60,
    forEach: 'sleepers.feetCold',
    params: { name: 'item.name' },
  }),
  rule('small-things-warm', {
    when: every(below('weather.lowC', 0), not(filled('load.lithium'))),
    durationS: 60,
  }),
  rule('night-reach', {
    when: notEquals('item.place', ''),
    durationS: 30,
    forEach: 'load.nightReach',
    params: { name: 'item.name', place: 'item.place' },
    after: ['move-dusk'],
  }),
  rule('night-toilet', {
    when: every(is('onBoard.toilet'), some(atLeast('site.toToiletsM', 80), below('weather.lowC', -5))),
    durationS: 60,
    params: { toiletsM: 'site.toToiletsM' },
  }),
  rule('supply-check', {
    when: every(DRAWS_CURRENT, known('energy.depart01')),
    durationS: 120,
    params: { depart01: 'energy.depart01' },
  }),
  rule('low-charge-alarm', {
    when: every(
      equals('vehicle.drive', 'electric'),
      known('energy.reserve01'),
      some(is('heating.set'), is('heating.bedHeater')),
      some(isNot('hookup.present'), below('energy.depart01', 0.5)),
    ),
    durationS: 60,
    params: { reserve01: 'energy.reserve01' },
  }),
  rule('runs-out-in-night', {
    when: is('energy.runsOutInNight'),
    durationS: 180,
    caution: true,
  }),
  rule('tomorrow-short-of-charge', {
    when: every(
      some(equals('vehicle.drive', 'electric'), known('vehicle.leisureKind')),
      known('tomorrow.site'),
      some(above('tomorrow.legShortWh', 0), is('tomorrow.heatRunsOut')),
    ),
    durationS: 60,
    params: { site: 'tomorrow.site' },
    caution: true,
  }),
  rule('leisure-frost', {
    when: every(equals('vehicle.leisureKind', 'lfp'), below('weather.lowC', 0)),
    durationS: 60,
    caution: true,
  }),
  rule('unplug-time', {
    when: above('clock.unplugAfterDepartMin', 0),
    durationS: 30,
    params: { lateMin: 'clock.unplugAfterDepartMin' },
  }),
  rule('lock-and-lights', {
    when: ALWAYS,
    durationS: 60,
    after: ['move-dusk', 'supply-check', 'exit-door'],
  }),
  rule('two-alarms', {
    when: every(is('target.present'), known('target.name')),
    durationS: 60,
    params: { target: 'target.name' },
  }),
]
