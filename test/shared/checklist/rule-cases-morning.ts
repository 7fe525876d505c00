/** Cases of the rules for the night, the morning, the target and check-out. */
import { ruleCase, THING } from './rule-cases.ts'
import type { RuleCase } from './rule-cases.ts'

const PRESENT = { hookup: { present: true } }
const ABSENT = { hookup: { present: false } }
const LOCKER = { foodLockerRequired: true, foodLockerPresent: true }
const RIDGE = { present: true, name: 'ridge', walkMin: 40, driveMin: 12 }
const AWAY = { target: { present: false, name: null } }

const needs = (onBoard: boolean) => [
  {
    id: 'A18',
    name: 'blue to household adapter',
    nightId: 'n2',
    nightNumber: 2,
    siteName: 'Field Pitches',
    connector: 'cee-7-3-schuko',
    onBoard,
  },
]

export const MORNING_CASES: readonly RuleCase[] = [
  ruleCase('cold-wake-drill', { weather: { lowC: 4 } }, { weather: { lowC: 9 } }),
  ruleCase('indoor-fallback', { weather: { lowC: -3 } }, { site: { indoorFallback: null } }),
  ruleCase('supply-failure-drill', PRESENT, ABSENT),
  ruleCase(
    'supply-failure-hours',
    { ...PRESENT, energy: { heatLeftOnFaultH: 9 } },
    { energy: { heatLeftOnFaultH: null } },
  ),
  ruleCase('plug-smell-drill', PRESENT, ABSENT),
  ruleCase('co-alarm-drill', { onBoard: { 'co-alarm': true } }, { onBoard: { 'co-alarm': false } }),
  ruleCase('co-signs-drill', { onBoard: { 'co-alarm': false } }, { onBoard: { 'co-alarm': true } }),
  ruleCase('fire-drill', { load: { fuel: THING } }, { load: { fuel: [] } }),
  ruleCase('clear-snow-at-night', { weather: { snowMm: 3 } }, { weather: { snowMm: 0 } }),
  ruleCase('quiet-at-night', { clock: { hasQuietHours: true } }, { clock: { hasQuietHours: false } }),
  ruleCase('animal-drill', { site: LOCKER }, { site: { foodLockerRequired: false } }),
  ruleCase('heat-drill', { sleepers: { hottestBedC: 30 } }, { sleepers: { hottestBedC: 27 } }),
  ruleCase('note-readings', {}, null),

  ruleCase('read-morning', {}, null),
  ruleCase('dress-and-drink', {}, null),
  ruleCase('warm-before-unplugging', { ...PRESENT, weather: { lowC: -2 } }, ABSENT),
  ruleCase(
    'cold-battery',
    { energy: { coldBattery: true }, weather: { lowC: -9 } },
    { vehicle: { drive: 'combustion' } },
  ),
  ruleCase('vent-and-wipe', { air: { condensateG: 120 } }, { air: { condensateG: 0 } }),
  ruleCase('covers-off', { air: { covers: true } }, { air: { frostG: 20 } }),
  ruleCase('covers-off-frozen', { air: { covers: true, frostG: 20 } }, { air: { frostG: 0 } }),
  ruleCase('clear-glass', { weather: { lowC: 0 } }, { weather: { lowC: 3 } }),
  ruleCase('clear-roof', { weather: { snowMm: 5 } }, { weather: { snowMm: 0 } }),
  ruleCase('unplug-post-first', PRESENT, { clock: { unplugAfterDepartMin: 11 } }),
  ruleCase('unplug-to-leave', { ...PRESENT, clock: { unplugAfterDepartMin: 11 } }, { hookup: { chargingPoint: true } }),
  ruleCase(
    'unplug-charging-point',
    { hookup: { present: true, chargingPoint: true } },
    { clock: { unplugAfterDepartMin: 5 } },
  ),
  ruleCase(
    'end-charge-to-leave',
    { hookup: { present: true, chargingPoint: true }, clock: { unplugAfterDepartMin: 5 } },
    { hookup: { chargingPoint: false } },
  ),
  ruleCase(
    'adapter-back',
    { hookup: { present: true, adapterNeeded: true, adapterOnBoard: true, adapterName: 'pin adapter' } },
    { hookup: { adapterNeeded: false } },
  ),
  ruleCase('next-adapter-check', { trip: { nextAdapters: needs(true) } }, { trip: { nextAdapters: needs(false) } }),
  ruleCase('next-adapter-missing', { trip: { nextAdapters: needs(false) } }, { trip: { nextAdapters: [] } }),
  ruleCase('lead-stow', PRESENT, ABSENT),
  ruleCase('fuel-back', { load: { fuel: THING } }, { load: { fuel: [] } }),
  ruleCase('food-from-locker', { site: LOCKER }, { site: { foodLockerPresent: false } }),
  ruleCase('restraint-again', {}, null),
  ruleCase('wet-load', { load: { wet: THING }, weather: { rainMm: 3 } }, { weather: { rainMm: 0 } }),
  ruleCase('tyres-cold-morning', { weather: { lowC: -8 } }, { weather: { lowC: -4 } }),
  ruleCase('ramps-and-chocks-back', { pitch: { rampMm: 40 } }, { pitch: { rampMm: 0 } }),
  ruleCase('walk-round', {}, null),
  ruleCase('ban-in-force', { clock: { departInBanMin: 18 } }, { clock: { departInBanMin: 0 } }),
  ruleCase('quiet-departure', { clock: { departInQuietMin: 18 } }, { clock: { departInQuietMin: null } }),
  ruleCase('soft-exit', { pitch: { soft: true } }, { pitch: { soft: false } }),
  ruleCase('leg-short', { leg: { present: true, marginWh: -9500 } }, { leg: { marginWh: 800 } }),
  ruleCase(
    'leg-stop',
    { leg: { present: true, stops: [{ id: 'stop-1', name: 'fast charger', atM: 92_000, leave01: 0.7 }] } },
    { leg: { stops: [] } },
  ),
  ruleCase(
    'leg-stop-unnamed',
    { leg: { present: true, stops: [{ id: 'stop-1', name: '', atM: 92_000, leave01: 0.7 }] } },
    { leg: { stops: [{ id: 'stop-1', name: 'fast charger', atM: 92_000, leave01: 0.7 }] } },
  ),
  ruleCase(
    'pitch-left-legal',
    { clock: { returnsAfterTarget: true }, site: { outsideStorage: false } },
    { site: { outsideStorage: true } },
  ),
  ruleCase('settle-before-leaving', { clock: { checkOutWhileAway: true } }, { clock: { checkOutWhileAway: false } }),
  ruleCase('target-kit', { target: RIDGE, onBoard: { 'target-kit': true } }, { onBoard: { 'target-kit': false } }),

  ruleCase('be-at-target', { target: { ...RIDGE, walkMin: 0 } }, AWAY),
  ruleCase('be-at-target-on-foot', { target: RIDGE }, { target: { walkMin: 0 } }),
  ruleCase('target-tell', { target: RIDGE }, { target: { walkMin: 10 } }),
  ruleCase('target-lock', { target: RIDGE, load: { valuables: THING } }, { load: { valuables: [] } }),
  ruleCase('target-warm', { target: RIDGE, weather: { lowC: -1 } }, { weather: { lowC: 4 } }),
  ruleCase('target-drive-ice', { target: RIDGE, weather: { lowC: 1 } }, { weather: { lowC: 2 } }),

  ruleCase('settle-supply', { hookup: { present: true, meteredPerKWh: true } }, { hookup: { meteredPerKWh: false } }),
  ruleCase('empty-toilet', { onBoard: { toilet: true } }, { onBoard: { toilet: false } }),
  ruleCase('rubbish-out', {}, null),
  ruleCase('waste-water-out', { onBoard: { water: true } }, { onBoard: { water: false } }),
  ruleCase(
    'water-refill',
    { tomorrow: { site: 'Upper meadow', waterShortMm3: 2e6 } },
    { tomorrow: { site: 'Upper meadow', waterShortMm3: 0 } },
  ),
  ruleCase('food-refill', { tomorrow: { site: 'Upper meadow', foodShortG: 400 } }, { tomorrow: { site: null } }),
  ruleCase('laundry-apart', { supplies: { dirtyG: 900 }, trip: { nightNumber: 2 } }, { supplies: { dirtyG: 0 } }),
  ruleCase('dry-things', { air: { condensateG: 90 } }, { air: { condensateG: 20 } }),
  ruleCase(
    'restock-first-aid',
    { onBoard: { 'first-aid': true }, trip: { nightNumber: 2 } },
    { trip: { lastNight: true } },
  ),
  ruleCase('report-damage', { hookup: { present: true, sag01: 0.08 } }, { hookup: { sag01: 0.02 } }),
  ruleCase('hand-back', {}, null),
  ruleCase('ledger-line', {}, null),
  ruleCase('lesson-note', {}, null),
]
