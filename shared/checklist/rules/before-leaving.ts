/** What is asked, packed and checked at home before leaving. */
import {
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
  skipped,
  some,
} from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('before-leaving')

export const beforeLeavingRules: readonly Rule[] = [
  rule('ask-sleep-in-vehicle', {
    when: equals('site.sleepAllowed', 'not-known'),
    durationS: 300,
    params: { site: 'site.name' },
  }),
  rule('sleeping-not-allowed', {
    when: equals('site.sleepAllowed', 'no'),
    durationS: 600,
    params: { site: 'site.name' },
    caution: true,
  }),
  rule('ask-charging', {
    when: every(is('hookup.present'), equals('site.chargeAllowed', 'not-known')),
    durationS: 300,
    params: { site: 'site.name' },
  }),
  rule('ask-in-frost', {
    when: atMost('weather.lowC', 0),
    durationS: 300,
    params: { site: 'site.name' },
  }),
  rule('charging-not-allowed', {
    when: every(is('hookup.present'), equals('site.chargeAllowed', 'no')),
    durationS: 60,
    params: { site: 'site.name' },
    caution: true,
  }),
  rule('ask-tariff', {
    when: every(is('hookup.present'), isNot('hookup.tariffKnown')),
    durationS: 120,
    params: { site: 'site.name' },
  }),
  rule('ask-fire', {
    when: every(is('supplies.stoveOnBoard'), equals('site.fireAllowed', 'not-known')),
    durationS: 120,
    params: { site: 'site.name' },
  }),
  rule('arrange-late-arrival', {
    when: above('clock.arriveAfterCheckInMin', 0),
    durationS: 300,
    params: { lateMin: 'clock.arriveAfterCheckInMin', site: 'site.name' },
  }),
  rule('clash-movement-ban', {
    when: above('clock.departInBanMin', 0),
    durationS: 300,
    params: { earlyMin: 'clock.departInBanMin', site: 'site.name' },
    caution: true,
  }),
  rule('clash-gate', {
    when: above('clock.departInGateMin', 0),
    durationS: 300,
    params: { earlyMin: 'clock.departInGateMin', site: 'site.name' },
    caution: true,
  }),
  rule('adapter-on-board', {
    when: every(is('hookup.adapterNeeded'), is('hookup.adapterOnBoard'), known('hookup.adapterName')),
    durationS: 60,
    params: { name: 'hookup.adapterName', site: 'site.name' },
  }),
  rule('adapter-missing', {
    when: every(is('hookup.adapterNeeded'), isNot('hookup.adapterOnBoard'), known('hookup.connector')),
    durationS: 900,
    params: { connector: 'hookup.connector', site: 'site.name' },
    caution: true,
  }),
  rule('adapter-left-behind', {
    when: every(is('hookup.adapterNeeded'), skipped('adapter-on-board'), known('hookup.adapterName')),
    durationS: 300,
    params: { name: 'hookup.adapterName', site: 'site.name' },
    after: ['adapter-on-board'],
    caution: true,
  }),
  rule('extension-on-board', {
    when: every(is('hookup.extensionNeeded'), is('hookup.extensionOnBoard'), known('hookup.extensionName')),
    durationS: 60,
    params: { name: 'hookup.extensionName' },
  }),
  rule('extension-missing', {
    when: every(is('hookup.extensionNeeded'), isNot('hookup.extensionOnBoard'), known('hookup.cableRunMm')),
    durationS: 900,
    params: { runMm: 'hookup.cableRunMm' },
  }),
  rule('lead-on-board', {
    when: every(is('hookup.present'), known('hookup.leadName')),
    durationS: 60,
    params: { name: 'hookup.leadName' },
    once: true,
  }),
  rule('lead-missing', {
    when: every(is('hookup.present'), isNot('hookup.chargingPoint'), missing('hookup.leadName')),
    durationS: 900,
    caution: true,
    once: true,
  }),
  rule('supply-tester-missing', {
    when: every(is('hookup.present'), isNot('hookup.chargingPoint'), isNot('onBoard.supply-tester')),
    durationS: 300,
    once: true,
  }),
  rule('lead-inspect', {
    when: every(is('trip.firstNight'), is('onBoard.lead')),
    durationS: 180,
  }),
  rule('payload-over', {
    when: below('vehicle.payloadMarginG', 0),
    durationS: 1200,
    params: { overG: 'vehicle.payloadOverG' },
    caution: true,
  }),
  rule('payload-near', {
    when: every(is('trip.firstNight'), atLeast('vehicle.payloadMarginG', 0), below('vehicle.payloadMarginG', 50_000)),
    durationS: 900,
    params: { leftG: 'vehicle.payloadMarginG' },
  }),
  rule('axle-over', {
    when: some(below('vehicle.frontAxleMarginG', 0), below('vehicle.rearAxleMarginG', 0)),
    durationS: 900,
    caution: true,
  }),
  rule('roof-over', {
    when: below('vehicle.roofMarginG', 0),
    durationS: 900,
    caution: true,
  }),
  rule('roof-fixings', {
    when: every(is('trip.firstNight'), above('vehicle.roofLoadG', 0), not(below('vehicle.roofMarginG', 0))),
    durationS: 240,
  }),
  rule('unplaced-piece', {
    when: is('trip.firstNight'),
    durationS: 300,
    forEach: 'load.unplaced',
    params: { name: 'item.name' },
  }),
  rule('unrestrained', {
    when: is('trip.firstNight'),
    durationS: 180,
    forEach: 'load.unrestrained',
    params: { name: 'item.name', place: 'item.place' },
    caution: true,
  }),
  rule('above-seat-back', {
    when: is('trip.firstNight'),
    durationS: 180,
    forEach: 'load.aboveSeatBack',
    params: { name: 'item.name', place: 'item.place' },
    caution: true,
  }),
  rule('cargo-net-missing', {
    when: every(is('trip.firstNight'), filled('load.aboveSeatBack'), isNot('onBoard.cargo-net')),
    durationS: 300,
  }),
  rule('fuel-in-cabin', {
    when: is('trip.firstNight'),
    durationS: 180,
    forEach: 'load.fuelInCabin',
    params: { name: 'item.name', place: 'item.place' },
    caution: true,
  }),
  rule('fuel-valves-closed', {
    when: every(is('trip.firstNight'), filled('load.fuel')),
    durationS: 120,
  }),
  rule('must-carry', {
    when: every(is('trip.firstNight'), notEquals('item.place', '')),
    durationS: 60,
    forEach: 'load.mustCarry',
    params: { name: 'item.name', place: 'item.place' },
  }),
  rule('warning-triangle-missing', {
    when: every(is('trip.firstNight'), isNot('onBoard.warning-triangle')),
    durationS: 300,
  }),
  rule('first-aid-in-reach', {
    when: every(is('trip.firstNight'), is('onBoard.first-aid')),
    durationS: 60,
  }),
  rule('first-aid-missing', {
    when: every(is('trip.firstNight'), isNot('onBoard.first-aid')),
    durationS: 600,
    caution: true,
  }),
  rule('medicine-on-board', {
    when: every(is('trip.firstNight'), is('onBoard.medicine')),
    durationS: 120,
  }),
  rule('co-alarm-test-at-home', {
    when: every(is('trip.firstNight'), is('onBoard.co-alarm')),
    durationS: 120,
  }),
  rule('co-alarm-missing', {
    when: every(is('trip.firstNight'), isNot('onBoard.co-alarm')),
    durationS: 900,
    caution: true,
  }),
  rule('fire-blanket-missing', {
    when: every(is('trip.firstNight'), is('supplies.stoveOnBoard'), isNot('onBoard.fire-blanket')),
    durationS: 600,
  }),
  rule('tyres-cold-pressure', {
    when: is('trip.firstNight'),
    durationS: 420,
  }),
  rule('tyres-winter', {
    when: every(is('trip.firstNight'), below('trip.lowestC', 4)),
    durationS: 300,
    params: { lowestC: 'trip.lowestC' },
  }),
  rule('screen-wash-frost', {
    when: every(is('trip.firstNight'), below('trip.lowestC', 0)),
    durationS: 240,
    params: { lowestC: 'trip.lowestC' },
  }),
  rule('shovel-in-reach', {
    when: every(above('weather.snowMm', 0), is('onBoard.shovel')),
    durationS: 60,
  }),
  rule('shovel-missing', {
    when: every(above('weather.snowMm', 0), isNot('onBoard.shovel')),
    durationS: 600,
  }),
  rule('scraper-missing', {
    when: every(is('trip.firstNight'), below('trip.lowestC', 0), isNot('onBoard.scraper')),
    durationS: 300,
  }),
  rule('traction-mats-missing', {
    when: every(is('pitch.soft'), isNot('onBoard.traction-mats'), isNot('onBoard.snow-chains')),
    durationS: 300,
    params: { surface: 'pitch.surface' },
  }),
  rule('water-fill', {
    when: every(is('trip.firstNight'), above('supplies.waterWantedMm3', 0)),
    durationS: 300,
    params: { wantedMm3: 'supplies.waterWantedMm3' },
  }),
  rule('water-bottles-not-full', {
    when: every(is('trip.firstNight'), is('onBoard.water'), below('trip.lowestC', 0)),
    durationS: 60,
  }),
  rule('cool-box-cold', {
    when: every(is('trip.firstNight'), is('supplies.coolBox')),
    durationS: 120,
  }),
  rule('coverage-sheet-complete', {
    when: is('site.coverageSheetGaps'),
    durationS: 600,
    params: { site: 'site.name' },
  }),
  rule('coverage-sheet-print', {
    when: is('trip.firstNight'),
    durationS: 180,
  }),
  rule('tell-someone', {
    when: is('trip.firstNight'),
    durationS: 300,
  }),
  rule('documents', {
    when: is('trip.firstNight'),
    durationS: 180,
  }),
  rule('weather-again', {
    when: is('trip.firstNight'),
    durationS: 180,
  }),
  rule('turn-back-line', {
    when: some(below('weather.lowC', -5), above('weather.windMPerS', 12)),
    durationS: 180,
    params: { lowC: 'weather.lowC' },
  }),
  rule('bedding-short', {
    when: ALWAYS,
    durationS: 300,
    forEach: 'sleepers.cold',
    params: { name: 'item.name', shortK: 'item.shortK' },
    caution: true,
  }),
  rule('mat-short', {
    when: isNot('sleepers.hotBottle'),
    durationS: 300,
    forEach: 'sleepers.feetCold',
    params: { name: 'item.name' },
    once: true,
  }),
  rule('heater-time-limit', {
    when: every(is('heating.set'), known('vehicle.heaterStopsAfterH')),
    durationS: 300,
    params: { hoursH: 'vehicle.heaterStopsAfterH' },
    once: true,
  }),
  rule('charge-lights', {
    when: every(is('trip.firstNight'), is('onBoard.light')),
    durationS: 120,
  }),
  rule('light-missing', {
    when: every(is('trip.firstNight'), isNot('onBoard.light')),
    durationS: 300,
  }),
  rule('pet-kit', {
    when: every(is('trip.firstNight'), is('trip.pets')),
    durationS: 300,
  }),
  rule('leave-unused', {
    when: is('trip.firstNight'),
    durationS: 60,
    forEach: 'load.unused',
    params: { name: 'item.name' },
  }),
  rule('heavy-bin', {
    when: is('trip.firstNight'),
    durationS: 120,
    forEach: 'load.heavyBins',
    params: { name: 'item.name', massG: 'item.massG' },
  }),
  rule('test-kit', {
    when: is('trip.firstNight'),
    durationS: 900,
  }),
  rule('load-as-planned', {
    when: is('trip.firstNight'),
    durationS: 1200,
  }),
  rule('photograph-bays', {
    when: is('trip.firstNight'),
    durationS: 120,
    after: ['load-as-planned'],
  }),
  rule('belted-seats', {
    when: above('trip.travellers', 1),
    durationS: 60,
    params: { travellers: 'trip.travellers' },
    after: ['load-as-planned'],
    caution: true,
    once: true,
  }),
  rule('home-off', {
    when: is('trip.firstNight'),
    durationS: 300,
    after: ['load-as-planned'],
  }),
  rule('walk-round-home', {
    when: is('trip.firstNight'),
    durationS: 180,
    after: ['load-as-planned'],
  }),
]
