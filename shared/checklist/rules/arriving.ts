/** From the gate to a connected, level vehicle. */
import {
  DRAWS_CURRENT,
  PLUGGED_IN,
  ALWAYS,
  above,
  atLeast,
  equals,
  every,
  is,
  isNot,
  known,
  missing,
  notEquals,
  some,
} from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Condition, Rule } from '../types.ts'

const rule = rulesOf('arriving')

const levelUnder = ['front', 'rear', 'left', 'right'] as const

/** What is plugged in by hand, by its kind. */
const posts = [
  ['connect-round-pin', 'hookup.roundPin'],
  ['connect-domestic', 'hookup.domesticSocket'],
  ['connect-tt30', 'hookup.tt30'],
  ['connect-split-phase', 'hookup.splitPhase'],
] as const

const connect = (id: string, kind: Condition): Rule =>
  rule(id, {
    when: every(kind, notEquals('hookup.earth', 'no')),
    durationS: 180,
    after: ['uncoil-lead', 'earth-not-known', 'polarity-not-known', 'polarity-reversed'],
    notBefore: 'plugIn',
    caution: true,
  })

export const arrivingRules: readonly Rule[] = [
  rule('check-in', {
    when: ALWAYS,
    durationS: 600,
    params: { site: 'site.name' },
    notBefore: 'checkInFrom',
    deadline: 'checkInTo',
  }),
  rule('settle-before-leaving', {
    when: is('clock.checkOutWhileAway'),
    durationS: 180,
    after: ['check-in'],
    caution: true,
  }),
  rule('ask-gate-code', {
    when: every(missing('site.gateCode'), is('site.gateCloses')),
    durationS: 60,
    after: ['check-in'],
  }),
  rule('ask-breaker-reset', {
    when: every(is('hookup.present'), notEquals('hookup.resetReachable', 'yes')),
    durationS: 60,
    after: ['check-in'],
  }),
  rule('confirm-amps', {
    when: every(
      is('hookup.present'),
      notEquals('site.chargeAllowed', 'no'),
      some(missing('hookup.siteLimitA'), equals('site.chargeAllowed', 'not-known'), isNot('hookup.tariffKnown')),
    ),
    durationS: 60,
    after: ['check-in'],
  }),
  rule('read-meter-start', {
    when: every(PLUGGED_IN, is('hookup.meteredPerKWh')),
    durationS: 60,
    after: ['check-in'],
  }),
  rule('quiet-arrival', {
    when: above('clock.arriveInQuietMin', 0),
    durationS: 60,
  }),
  rule('walk-the-pitch', {
    when: isNot('clock.arriveInDark'),
    durationS: 300,
    after: ['check-in'],
    deadline: 'civilDusk',
  }),
  rule('walk-the-pitch-with-light', {
    when: is('clock.arriveInDark'),
    durationS: 420,
    after: ['check-in'],
  }),
  rule('soft-ground', {
    when: is('pitch.soft'),
    durationS: 180,
    params: { surface: 'pitch.surface' },
    after: ['walk-the-pitch', 'walk-the-pitch-with-light'],
  }),
  rule('hard-pad', {
    when: is('site.mustStandOnHardPad'),
    durationS: 60,
    after: ['walk-the-pitch', 'walk-the-pitch-with-light'],
  }),
  rule('test-post-before-parking', {
    when: every(is('hookup.present'), isNot('hookup.chargingPoint')),
    durationS: 300,
    after: ['walk-the-pitch', 'walk-the-pitch-with-light'],
    caution: true,
  }),
  rule('test-charging-point', {
    when: is('hookup.chargingPoint'),
    durationS: 120,
    after: ['walk-the-pitch', 'walk-the-pitch-with-light'],
  }),
  rule('earth-missing', {
    when: equals('hookup.earth', 'no'),
    durationS: 300,
    after: ['test-post-before-parking'],
    caution: true,
  }),
  rule('earth-not-known', {
    when: every(is('hookup.present'), equals('hookup.earth', 'not-known')),
    durationS: 120,
    after: ['test-post-before-parking'],
    caution: true,
  }),
  rule('polarity-reversed', {
    when: equals('hookup.polarityReversed', 'yes'),
    durationS: 180,
    after: ['test-post-before-parking'],
    caution: true,
  }),
  rule('polarity-not-known', {
    when: every(is('hookup.present'), isNot('hookup.chargingPoint'), equals('hookup.polarityReversed', 'not-known')),
    durationS: 60,
    after: ['test-post-before-parking'],
  }),
  rule('park-nose-out', {
    when: equals('pitch.park', 'nose-out'),
    durationS: 180,
    after: ['test-post-before-parking', 'test-charging-point', 'walk-the-pitch'],
  }),
  rule('park-nose-in', {
    when: equals('pitch.park', 'nose-in'),
    durationS: 180,
    after: ['test-post-before-parking', 'test-charging-point', 'walk-the-pitch'],
  }),
  rule('inlet-to-post', {
    when: every(is('hookup.present'), above('hookup.cableRunMm', 0)),
    durationS: 120,
    params: { runMm: 'hookup.cableRunMm' },
    after: ['test-post-before-parking', 'park-nose-in', 'park-nose-out'],
  }),
  rule('lead-too-short', {
    when: every(is('hookup.present'), isNot('hookup.leadReaches'), isNot('hookup.extensionOnBoard')),
    durationS: 180,
    after: ['inlet-to-post'],
    caution: true,
  }),
  rule('head-uphill', {
    when: is('pitch.headDownhill'),
    durationS: 180,
    after: ['inlet-to-post'],
  }),
  ...levelUnder.map((side) =>
    rule(`level-${side}`, {
      when: every(equals('pitch.rampUnder', side), atLeast('pitch.rampMm', 15)),
      durationS: 300,
      params: { rampMm: 'pitch.rampMm' },
      after: ['inlet-to-post', 'head-uphill'],
    }),
  ),
  rule('park-brake-and-chocks', {
    when: some(atLeast('pitch.slope01', 0.01), is('onBoard.chocks')),
    durationS: 120,
    after: levelUnder.map((side) => `level-${side}`),
  }),
  rule('uncoil-lead', {
    when: every(PLUGGED_IN, isNot('hookup.chargingPoint')),
    durationS: 120,
    after: ['park-brake-and-chocks', 'inlet-to-post'],
  }),
  ...posts.map(([id, fact]) => connect(id, is(fact))),
  rule('connect-charging-point', {
    when: is('hookup.chargingPoint'),
    durationS: 120,
    after: ['test-charging-point', 'park-brake-and-chocks'],
    notBefore: 'plugIn',
  }),
  connect(
    'connect-other',
    every(is('hookup.present'), isNot('hookup.chargingPoint'), ...posts.map(([, fact]) => isNot(fact))),
  ),
  rule('hold-household-current', {
    when: every(DRAWS_CURRENT, is('hookup.domesticSocket'), above('hookup.usableA', 0)),
    durationS: 60,
    params: { usableA: 'hookup.usableA' },
    after: ['connect-domestic'],
    caution: true,
  }),
  rule('start-low', {
    when: every(
      DRAWS_CURRENT,
      isNot('hookup.chargingPoint'),
      isNot('hookup.domesticSocket'),
      above('hookup.usableA', 0),
      isNot('hookup.belowMinimum'),
    ),
    durationS: 180,
    params: { usableA: 'hookup.usableA' },
    after: [...posts.map(([id]) => id), 'connect-other'],
  }),
  rule('below-minimum-current', {
    when: is('hookup.belowMinimum'),
    durationS: 180,
    caution: true,
  }),
  rule('held-after-trip', {
    when: every(is('hookup.trippedBefore'), above('hookup.heldA', 0)),
    durationS: 60,
    params: { heldA: 'hookup.heldA' },
    after: ['start-low'],
    caution: true,
  }),
  rule('read-volts', {
    when: every(PLUGGED_IN, isNot('hookup.chargingPoint'), known('hookup.stepDownV'), known('hookup.stopV')),
    durationS: 180,
    params: { stepDownV: 'hookup.stepDownV', stopV: 'hookup.stopV' },
    after: ['start-low', 'hold-household-current'],
  }),
  rule('enter-readings', {
    when: every(PLUGGED_IN, isNot('hookup.measured')),
    durationS: 120,
    after: ['read-volts'],
    carriesTo: 'arriving',
  }),
  rule('sagging-post', {
    when: every(DRAWS_CURRENT, above('hookup.sag01', 0.05)),
    durationS: 120,
    params: { sag01: 'hookup.sag01' },
    after: ['read-volts'],
    caution: true,
  }),
  rule('drip-loop', {
    when: every(PLUGGED_IN, isNot('hookup.chargingPoint')),
    durationS: 60,
    after: ['uncoil-lead'],
  }),
  rule('joint-dry', {
    when: every(
      PLUGGED_IN,
      some(is('hookup.extensionNeeded'), is('hookup.adapterNeeded')),
      some(above('weather.rainMm', 0), above('weather.snowMm', 0)),
    ),
    durationS: 120,
    after: ['uncoil-lead'],
  }),
  rule('learn-the-site', {
    when: ALWAYS,
    durationS: 240,
    params: { toiletsM: 'site.toToiletsM' },
  }),
  rule('phone-signal', {
    when: ALWAYS,
    durationS: 60,
    params: { coordinates: 'site.coordinates' },
  }),
]
