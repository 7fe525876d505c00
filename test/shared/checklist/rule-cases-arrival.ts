/** Cases of the rules for the road and for arriving. */
import { FIRST, NOT_FIRST, ruleCase, THING } from './rule-cases.ts'
import type { RuleCase } from './rule-cases.ts'

const PRESENT = { hookup: { present: true } }
const POINT = { hookup: { present: true, chargingPoint: true } }
const NO_EARTH = { hookup: { earth: 'no' } } as const

export const ARRIVAL_CASES: readonly RuleCase[] = [
  ruleCase('stop-after-ten-minutes', FIRST, NOT_FIRST),
  ruleCase('consumption-at-a-third', { energy: { arrive01: 0.5 } }, { vehicle: { drive: 'combustion' } }),
  ruleCase('charge-before-site', { energy: { arrive01: 0.34 } }, { energy: { arrive01: 0.41 } }),
  ruleCase('call-if-late', { clock: { arriveAfterCheckInMin: -30 } }, { clock: { arriveAfterCheckInMin: -90 } }),
  ruleCase('arrive-with-light', { clock: { arriveAfterSunsetMin: -40 } }, { clock: { arriveAfterSunsetMin: -70 } }),
  ruleCase('arrive-in-dark', { clock: { arriveAfterSunsetMin: 25 } }, { clock: { arriveAfterSunsetMin: 0 } }),
  ruleCase('perishables-last', { supplies: { coolBox: true } }, { supplies: { coolBox: false } }),
  ruleCase(
    'water-on-the-way',
    { supplies: { waterMm3: 4e6, waterWantedMm3: 6e6 } },
    { supplies: { waterMm3: 6e6, waterWantedMm3: 6e6 } },
  ),
  ruleCase('last-signal', {}, null),
  ruleCase('pet-in-heat', { trip: { pets: true }, weather: { highC: 24 } }, { weather: { highC: 12 } }),
  ruleCase(
    'heat-on-the-road',
    { load: { spoiling: [{ id: 'p1', name: 'butter', place: 'roof box', spoilsAboveC: 18 }] } },
    { load: { spoiling: [] } },
  ),
  ruleCase('fuel-vent-on-the-road', { load: { fuelInCabin: THING } }, { load: { fuelInCabin: [] } }),

  ruleCase('check-in', {}, null),
  ruleCase('ask-gate-code', { site: { gateCode: null, gateCloses: true } }, { site: { gateCode: '4711' } }),
  ruleCase(
    'ask-breaker-reset',
    { hookup: { present: true, resetReachable: 'not-known' } },
    { hookup: { resetReachable: 'yes' } },
  ),
  ruleCase('confirm-amps', PRESENT, { site: { chargeAllowed: 'no' } }),
  ruleCase(
    'read-meter-start',
    { hookup: { present: true, meteredPerKWh: true } },
    { hookup: { meteredPerKWh: false } },
  ),
  ruleCase('quiet-arrival', { clock: { arriveInQuietMin: 10 } }, { clock: { arriveInQuietMin: 0 } }),
  ruleCase('walk-the-pitch', { clock: { arriveInDark: false } }, { clock: { arriveInDark: true } }),
  ruleCase('walk-the-pitch-with-light', { clock: { arriveInDark: true } }, { clock: { arriveInDark: false } }),
  ruleCase('soft-ground', { pitch: { soft: true } }, { pitch: { soft: false } }),
  ruleCase('hard-pad', { site: { mustStandOnHardPad: true } }, { site: { mustStandOnHardPad: false } }),
  ruleCase('test-post-before-parking', PRESENT, POINT),
  ruleCase('test-charging-point', POINT, { hookup: { chargingPoint: false } }),
  ruleCase('earth-missing', { hookup: { present: true, earth: 'no' } }, { hookup: { earth: 'not-known' } }),
  ruleCase('earth-not-known', { hookup: { present: true, earth: 'not-known' } }, { hookup: { earth: 'yes' } }),
  ruleCase(
    'polarity-reversed',
    { hookup: { present: true, polarityReversed: 'yes' } },
    { hookup: { polarityReversed: 'no' } },
  ),
  ruleCase(
    'polarity-not-known',
    { hookup: { present: true, polarityReversed: 'not-known' } },
    { hookup: { polarityReversed: 'yes' } },
  ),
  ruleCase('park-nose-out', { pitch: { park: 'nose-out' } }, { pitch: { park: 'either' } }),
  ruleCase('park-nose-in', { pitch: { park: 'nose-in' } }, { pitch: { park: 'not-known' } }),
  ruleCase('inlet-to-post', { hookup: { present: true, cableRunMm: 24_000 } }, { hookup: { cableRunMm: null } }),
  ruleCase('lead-too-short', { hookup: { present: true, leadReaches: false } }, { hookup: { leadReaches: null } }),
  ruleCase('head-uphill', { pitch: { headDownhill: true } }, { pitch: { headDownhill: null } }),
  ruleCase('level-front', { pitch: { rampUnder: 'front', rampMm: 88 } }, { pitch: { rampMm: 10 } }),
  ruleCase('level-rear', { pitch: { rampUnder: 'rear', rampMm: 88 } }, { pitch: { rampUnder: 'front' } }),
  ruleCase('level-left', { pitch: { rampUnder: 'left', rampMm: 40 } }, { pitch: { rampUnder: 'right' } }),
  ruleCase('level-right', { pitch: { rampUnder: 'right', rampMm: 40 } }, { pitch: { rampUnder: null } }),
  ruleCase('park-brake-and-chocks', { pitch: { slope01: 0.02 } }, { pitch: { slope01: 0.005 } }),
  ruleCase('uncoil-lead', PRESENT, POINT),
  ruleCase('connect-round-pin', { hookup: { present: true, roundPin: true } }, NO_EARTH),
  ruleCase('connect-domestic', { hookup: { present: true, domesticSocket: true } }, NO_EARTH),
  ruleCase('connect-tt30', { hookup: { present: true, tt30: true } }, { hookup: { tt30: false } }),
  ruleCase('connect-split-phase', { hookup: { present: true, splitPhase: true } }, { hookup: { splitPhase: false } }),
  ruleCase('connect-charging-point', POINT, { hookup: { present: false, chargingPoint: false } }),
  ruleCase('connect-other', PRESENT, { hookup: { roundPin: true } }),
  ruleCase(
    'hold-household-current',
    { hookup: { present: true, domesticSocket: true, usableA: 8 } },
    { hookup: { domesticSocket: false } },
  ),
  ruleCase('start-low', { hookup: { present: true, usableA: 10 } }, { hookup: { belowMinimum: true } }),
  ruleCase(
    'below-minimum-current',
    { hookup: { present: true, belowMinimum: true } },
    { hookup: { belowMinimum: false } },
  ),
  ruleCase(
    'held-after-trip',
    { hookup: { present: true, trippedBefore: true, heldA: 24 } },
    { hookup: { trippedBefore: false } },
  ),
  ruleCase(
    'read-volts',
    { hookup: { present: true, stepDownV: 210, stopV: 205 } },
    { hookup: { stepDownV: null, stopV: null } },
  ),
  ruleCase('enter-readings', { hookup: { present: true, measured: false } }, { hookup: { measured: true } }),
  ruleCase('sagging-post', { hookup: { present: true, sag01: 0.06 } }, { hookup: { sag01: 0.04 } }),
  // In the dry as well: dew comes by morning, and feet by night.
  ruleCase('drip-loop', PRESENT, POINT),
  ruleCase(
    'joint-dry',
    { hookup: { present: true, adapterNeeded: true, adapterName: 'pin adapter' }, weather: { rainMm: 3 } },
    { weather: { rainMm: 0 } },
  ),
  ruleCase('learn-the-site', {}, null),
  ruleCase('phone-signal', {}, null),
]
