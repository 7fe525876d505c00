/** On the way to the site. */
import { ALWAYS, above, atMost, below, equals, every, filled, is, isLess, known, some } from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('on-the-road')

export const onTheRoadRules: readonly Rule[] = [
  rule('stop-after-ten-minutes', {
    when: is('trip.firstNight'),
    durationS: 300,
  }),
  rule('consumption-at-a-third', {
    when: every(equals('vehicle.drive', 'electric'), known('energy.arrive01')),
    durationS: 120,
    params: { arrive01: 'energy.arrive01' },
  }),
  rule('charge-before-site', {
    when: every(equals('vehicle.drive', 'electric'), below('energy.arrive01', 0.4)),
    durationS: 1500,
    params: { arrive01: 'energy.arrive01' },
  }),
  rule('call-if-late', {
    when: every(known('site.phone'), above('clock.arriveAfterCheckInMin', -60)),
    durationS: 120,
    params: { phone: 'site.phone' },
  }),
  rule('arrive-with-light', {
    when: every(
      atMost('clock.arriveAfterSunsetMin', 0),
      some(
        above('clock.arriveAfterSunsetMin', -60),
        every(above('weather.snowMm', 0), above('clock.arriveAfterSunsetMin', -90)),
      ),
    ),
    durationS: 60,
  }),
  rule('arrive-in-dark', {
    when: above('clock.arriveAfterSunsetMin', 0),
    durationS: 120,
    params: { darkMin: 'clock.arriveAfterSunsetMin' },
    caution: true,
  }),
  rule('perishables-last', {
    when: some(is('supplies.coolBox'), is('onBoard.food')),
    durationS: 600,
  }),
  rule('water-on-the-way', {
    when: every(above('supplies.waterWantedMm3', 0), isLess('supplies.waterMm3', 'supplies.waterWantedMm3')),
    durationS: 300,
    params: { wantedMm3: 'supplies.waterWantedMm3' },
    carriesTo: 'on-the-road',
  }),
  rule('last-signal', {
    when: ALWAYS,
    durationS: 120,
  }),
  rule('pet-in-heat', {
    when: every(is('trip.pets'), above('weather.highC', 20)),
    durationS: 60,
    caution: true,
  }),
  rule('heat-on-the-road', {
    when: ALWAYS,
    durationS: 60,
    forEach: 'load.spoiling',
    params: { name: 'item.name', place: 'item.place', limitC: 'item.spoilsAboveC' },
  }),
  rule('fuel-vent-on-the-road', {
    when: filled('load.fuelInCabin'),
    durationS: 60,
    caution: true,
  }),
]
