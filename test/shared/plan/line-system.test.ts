/** 208 against 240 V, and what the vehicle keeps on: fields of the trip that the night must feel. */
import { describe, expect, it } from 'vitest'
import type { Night, Trip } from '../../../shared/document/index.ts'
import { codes, planOf, scenario, withNight } from './trips.ts'

const crossover = scenario('b')
const at = crossover.nights.findIndex(({ hookup }) => hookup?.connector === 'nema-14-50')
const withHookup = (change: Partial<NonNullable<Night['hookup']>>): Trip =>
  withNight(crossover, at, (night) =>
    night.hookup === undefined ? night : { ...night, hookup: { ...night.hookup, readings: [], ...change } },
  )
const supplyOf = (trip: Trip) => planOf(trip).nights[at]

describe('a two-pole post', () => {
  it('asks which system it stands on where nothing was read or said, and not where it was', () => {
    expect(codes(planOf(withHookup({})))).toContain('line-system-not-known')
    expect(codes(planOf(withHookup({ lineSystem: 'split-phase-240' })))).not.toContain('line-system-not-known')
    expect(codes(planOf(withHookup({ lineToLineV: 207, lineToNeutralV: 119 })))).not.toContain('line-system-not-known')
  })

  it('takes 208 V from the ratio of what was read, whatever was said, and gives an eighth less power', () => {
    const split = supplyOf(withHookup({ nominalV: 240, lineSystem: 'split-phase-240' }))
    const legs = supplyOf(
      withHookup({ nominalV: 240, lineSystem: 'split-phase-240', lineToLineV: 208, lineToNeutralV: 120 }),
    )
    expect(split?.input.supply?.nominalV).toBe(240)
    expect(legs?.input.supply?.nominalV).toBe(208)
    const ratio = (legs?.outcome.supply?.wattsAtLoad ?? 0) / (split?.outcome.supply?.wattsAtLoad ?? 1)
    expect(ratio).toBeCloseTo(208 / 240, 1)
    expect(legs?.outcome.depart01 ?? 1).toBeLessThanOrEqual(split?.outcome.depart01 ?? 0)
  })

  it('leaves a ratio that fits neither, and other connectors, as stated', () => {
    expect(supplyOf(withHookup({ lineToLineV: 230, lineToNeutralV: 124 }))?.input.supply?.nominalV).toBe(
      crossover.nights[at]?.hookup?.nominalV,
    )
    expect(codes(planOf(scenario('a')))).not.toContain('line-system-not-known')
  })
})

describe('what the vehicle keeps on', () => {
  it('costs charge all night, whatever heats', () => {
    const dark = withNight(crossover, 0, ({ hookup: _none, ...night }) => night)
    const lit: Trip = { ...dark, vehicle: { ...dark.vehicle, keepsOnW: 200 } }
    const [without, withLights] = [planOf(dark).nights[0], planOf(lit).nights[0]]
    const usableWh = dark.vehicle.battery?.usableWh ?? 1
    const lostWh = ((without?.outcome.depart01 ?? 0) - (withLights?.outcome.depart01 ?? 0)) * usableWh
    const hours = ((without?.clock.departUtc ?? 0) - (without?.clock.arriveUtc ?? 0)) / 3600
    expect(withLights?.outcome.keptOnWh).toBeCloseTo(200 * hours, 0)
    expect(Math.abs(lostWh / (200 * hours) - 1)).toBeLessThan(0.05)
  })
})

describe('a heat pump with a lower limit', () => {
  it('heats as a resistance below it', () => {
    const cold = withNight(crossover, 0, (night) => ({
      ...night,
      weather: { ...night.weather, lowC: -12, highC: -8, hours: [] },
    }))
    const limited: Trip = {
      ...cold,
      vehicle: { ...cold.vehicle, heater: { ...cold.vehicle.heater, kind: 'heat-pump', cop: [], lowerLimitC: -5 } },
    }
    const free: Trip = {
      ...cold,
      vehicle: { ...cold.vehicle, heater: { ...cold.vehicle.heater, kind: 'heat-pump', cop: [] } },
    }
    expect(planOf(limited).nights[0]?.outcome.heatingWh ?? 0).toBeGreaterThan(
      planOf(free).nights[0]?.outcome.heatingWh ?? Infinity,
    )
  })
})
