/** Where each caution of a night begins, and what number and instant it carries. */
import { describe, expect, it } from 'vitest'
import { nightCautions } from '../../../shared/climate/night-cautions.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { NightRun } from '../../../shared/climate/night-run.ts'
import type { NightInput, NightOutcome, SleeperVerdict, SupplyOutcome } from '../../../shared/climate/index.ts'
import { LEISURE, at, night, sleeper, supply } from './night-fixture.ts'

const INPUT = night({ stepS: 3600, departUtc: at(4), sleepFromUtc: at(1), sleepToUtc: at(3) })
const RUN: NightRun = {
  ...runNight(prepareNight(INPUT), INPUT.decisions),
  stopsUtc: null,
  leisureFrozenUtc: null,
  leastFreshM3PerH: 100,
}
const column = (...values: readonly number[]): Float64Array => Float64Array.from(values)
const columns = (over: Partial<NightRun['columns']>): NightRun => ({
  ...RUN,
  columns: { ...RUN.columns, co2Ppm: column(400, 400, 400, 400), operativeC: column(10, 10, 10, 10), ...over },
})
const CALM = columns({})
const SUPPLY: SupplyOutcome = ((): SupplyOutcome => {
  const outcome = simulateNight({ ...INPUT, supply: supply() }).supply
  if (outcome === null) throw new Error('the night has a supply')
  return { ...outcome, sag01: 0.02 }
})()
type Cautions = NightOutcome['cautions']
const verdict = (over: Partial<SleeperVerdict>): SleeperVerdict => ({
  sleeperId: 'one',
  marginK: 6,
  ruledBy: 'heat-balance',
  verdict: 'warm',
  coldFromUtc: null,
  feetColdFromUtc: null,
  requiredClo: 3,
  coldestOperativeC: 10,
  coldestFeetC: 9,
  ...over,
})
const told = (
  cautions: Cautions,
  code: Cautions[number]['code'],
): Pick<Cautions[number], 'value' | 'atUtc'> | undefined => {
  const found = cautions.find((caution) => caution.code === code)
  return found === undefined ? undefined : { value: found.value, atUtc: found.atUtc }
}

describe('air', () => {
  const air = (run: NightRun, people = 1): Cautions =>
    nightCautions(
      { ...INPUT, supply: null, sleepers: Array.from({ length: people }, (_, index) => sleeper({ id: `${index}` })) },
      run,
      null,
      [],
    )

  it('is high in carbon dioxide over 2000 ppm: the most of it, and the first row', () => {
    const high = columns({ co2Ppm: column(1500, 2001, 2600, 1000) })
    expect(told(air(high), 'co2-high')).toEqual({ value: 2600, atUtc: at(2) })
    expect(told(air(columns({ co2Ppm: column(2000, 2000, 2000, 2000) })), 'co2-high')).toBeUndefined()
    expect(told(air(columns({ co2Ppm: column(2100, 1000, 1000, 1000) })), 'co2-high')?.atUtc).toBe(at(1))
    expect(told(air(high, 0), 'co2-high')).toBeUndefined()
  })

  it('is short under nine cubic metres an hour for each sleeper', () => {
    const fresh = (leastFreshM3PerH: number, people: number) =>
      told(air({ ...CALM, leastFreshM3PerH }, people), 'no-fresh-air')
    expect(fresh(8.9, 1)).toEqual({ value: 8.9, atUtc: null })
    expect(fresh(9, 1)).toBeUndefined()
    expect(fresh(17.9, 2)).toEqual({ value: 17.9, atUtc: null })
    expect(fresh(18, 2)).toBeUndefined()
    expect(fresh(1, 0)).toBeUndefined()
  })
})

describe('bodies', () => {
  const bodies = (sleepers: readonly SleeperVerdict[], run = CALM): Cautions =>
    nightCautions({ ...INPUT, supply: null }, run, null, sleepers)

  it('are in danger of cold where someone is far too cold, or the bed is under -15 °C whatever the bedding', () => {
    const cold = verdict({ sleeperId: 'two', verdict: 'too-cold', coldFromUtc: at(2), coldestOperativeC: -4 })
    expect(told(bodies([verdict({}), cold]), 'cold-illness')).toEqual({ value: -4, atUtc: at(2) })
    expect(told(bodies([verdict({ verdict: 'cold', coldestOperativeC: -15 })]), 'cold-illness')).toBeUndefined()
    expect(told(bodies([verdict({ coldestOperativeC: -15.1 })]), 'cold-illness')).toEqual({ value: -15.1, atUtc: null })
    expect(bodies([])).toEqual([expect.objectContaining({ code: 'carbon-monoxide' })])
  })

  it('are in danger of heat over 32 °C: the most of it, and the first row', () => {
    const hot = columns({ operativeC: column(31, 32, 32.1, 35) })
    expect(told(bodies([verdict({})], hot), 'heat-illness')).toEqual({ value: 35, atUtc: at(3) })
    expect(told(bodies([verdict({})], columns({ operativeC: column(32, 32, 32, 32) })), 'heat-illness')).toBeUndefined()
    expect(told(bodies([], hot), 'heat-illness')).toBeUndefined()
  })
})

describe('the supply', () => {
  const supplied = (
    over: Parameters<typeof supply>[0],
    outcome: Partial<SupplyOutcome> = {},
    input: Partial<NightInput> = {},
  ): Cautions =>
    nightCautions({ ...INPUT, supply: supply(over), sleepers: [], ...input }, CALM, { ...SUPPLY, ...outcome }, [])

  it('is shared or thin where a measured sag is over 3 %', () => {
    expect(told(supplied({}, { measured: true, sag01: 0.031 }), 'shared-wiring')).toEqual({ value: 0.031, atUtc: null })
    expect(told(supplied({}, { measured: true, sag01: 0.03 }), 'shared-wiring')).toBeUndefined()
    expect(told(supplied({}, { measured: false, sag01: 0.05 }), 'shared-wiring')).toBeUndefined()
  })

  it('names adapter and lead with their rating where it is known', () => {
    expect(told(supplied({ adapterLimitA: 8 }), 'adapter')?.value).toBe(8)
    expect(told(supplied({ usesAdapter: true }), 'adapter')?.value).toBeNull()
    expect(told(supplied({ usesAdapter: false }), 'adapter')).toBeUndefined()
    expect(told(supplied({ leadLimitA: 13 }), 'extension-lead')?.value).toBe(13)
    expect(told(supplied({ usesExtension: true }), 'extension-lead')?.value).toBeNull()
    expect(told(supplied({ connector: 'cee-7-3-schuko' }, { usableA: 9 }), 'domestic-socket')?.value).toBe(9)
    expect(told(supplied({}), 'domestic-socket')).toBeUndefined()
    // A North American household outlet carries 12 A for hours by its code, and heats at its contacts all the same.
    for (const connector of ['nema-5-15', 'nema-5-20'])
      expect(told(supplied({ connector, nominalV: 120 }, { usableA: 12 }), 'domestic-socket')?.value).toBe(12)
    expect(told(supplied({ connector: 'nema-tt-30', nominalV: 120 }), 'domestic-socket')).toBeUndefined()
  })

  it('tells earth and polarity as they were tested', () => {
    const codes = (over: Parameters<typeof supply>[0]) => supplied(over).map(({ code }) => code)
    expect(codes({ earthOk: 'yes', polarityReversed: 'no' })).toEqual([])
    expect(codes({ earthOk: 'no' })).toEqual(['earth-missing'])
    expect(codes({ earthOk: 'not-known' })).toEqual(['earth-not-known'])
    expect(codes({ polarityReversed: 'yes' })).toEqual(['polarity-reversed'])
    expect(codes({ polarityReversed: 'not-known' })).toEqual([])
  })

  it('is to be stepped down under 210 of 230 V and stopped under 205, at the volts under load', () => {
    const sag = (voltsAtLoad: number) => supplied({}, { voltsAtLoad }).map(({ code, value }) => [code, value] as const)
    expect(sag(210)).toEqual([])
    expect(sag(209.9)).toEqual([['sag-step-down', 209.9]])
    expect(sag(205)).toEqual([['sag-step-down', 205]])
    expect(sag(204.9)).toEqual([['sag-stop', 204.9]])
  })

  it('is too small to charge where the least current is more, and that only where charging is meant', () => {
    const small = { belowMinimum: true, usableA: 5 }
    expect(told(supplied({}, small), 'below-minimum-current')?.value).toBe(5)
    expect(told(supplied({ chargeAllowed: false }, small), 'below-minimum-current')).toBeUndefined()
    expect(told(supplied({}, small, { battery: null }), 'below-minimum-current')).toBeUndefined()
    expect(told(supplied({}, {}), 'below-minimum-current')).toBeUndefined()
  })

  it('is too small for two loads where together they want more than it gives', () => {
    // Charging at six amperes and 225 V wants 1350 W.
    const both = (otherLoadW: number, wattsAtLoad: number, input: Partial<NightInput> = {}) =>
      told(supplied({ otherLoadW }, { wattsAtLoad, voltsAtLoad: 225, phaseFactor: 1 }, input), 'two-loads')
    expect(both(650, 1999)).toEqual({ value: 1999, atUtc: null })
    expect(both(650, 2000)).toBeUndefined()
    expect(both(0, 1000)).toBeUndefined()
    const fan = { heater: { ...INPUT.heater, kind: 'mains-fan-heater', maxHeatW: 900 } } as const
    expect(both(0, 2249, fan)).toBeDefined()
    expect(both(0, 2250, fan)).toBeUndefined()
    const idle = { heater: { ...INPUT.heater, kind: 'none' }, battery: null } as const
    expect(both(3000, 1000, idle)).toBeUndefined()
    expect(both(100, 334, { ...idle, leisure: LEISURE })).toBeDefined()
    expect(both(100, 335, { ...idle, leisure: LEISURE })).toBeUndefined()
    // On three phases the same amperes are more watts.
    expect(
      told(
        supplied({ otherLoadW: 650 }, { wattsAtLoad: 2500, voltsAtLoad: 225, phaseFactor: Math.sqrt(3) }),
        'two-loads',
      ),
    ).toBeDefined()
    expect(told(supplied({ otherLoadW: 650, chargeAllowed: false }, { wattsAtLoad: 1 }), 'two-loads')).toBeUndefined()
  })
})

describe('batteries and heater', () => {
  it('name the instant at which the heater stops or a lithium battery takes no charge for frost, the acid of a lead one freezes', () => {
    const run: NightRun = { ...CALM, stopsUtc: at(2), leisureFrozenUtc: at(3) }
    const of = (kind: 'lfp' | 'lead') =>
      nightCautions(
        {
          ...INPUT,
          sleepers: [],
          supply: null,
          leisure: { kind, usableWh: 1, reserve01: 0, chargerW: 0, loadW: 0, arrive01: 1, inverterMaxW: 0 },
        },
        run,
        null,
        [],
      )
    expect(of('lfp')).toEqual([
      { code: 'heater-stops', value: null, atUtc: at(2) },
      { code: 'leisure-frost', value: null, atUtc: at(3) },
    ])
    expect(of('lead').map(({ code }) => code)).toEqual(['heater-stops', 'leisure-acid-frost'])
    expect(nightCautions({ ...INPUT, sleepers: [], supply: null }, CALM, null, [])).toEqual([])
  })
})
