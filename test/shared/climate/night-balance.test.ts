import { describe, expect, it } from 'vitest'
import { simulateNight } from '../../../shared/climate/index.ts'
import { TIME_LIMIT_MS, isDeep } from '../../support/generators/runs.ts'
import { at, night, randomNight, sleeper, withDecisions } from './night-fixture.ts'
import { SCENARIO_NIGHTS } from './scenario-nights.ts'
import { scenarioInput } from './scenario-input.ts'
import type { NightInput, NightOutcome } from '../../../shared/climate/index.ts'

/** A hundred on each change, a thousand in the deep run. */
const NIGHTS = isDeep ? 1000 : 100

function residuals(outcome: NightOutcome): { heat01: number; water01: number } {
  const { balance } = outcome
  const heat = Math.max(Math.abs(balance.heatInWh), Math.abs(balance.heatOutWh), Math.abs(balance.storedWh), 1)
  const water = Math.max(Math.abs(balance.waterInG), Math.abs(balance.waterOutG), 1)
  return { heat01: Math.abs(balance.residualWh) / heat, water01: Math.abs(balance.waterResidualG) / water }
}

/** A column of mean powers as energy, Wh; the last step may be shorter. */
const energyWh = (column: readonly number[], atUtc: readonly number[], input: NightInput): number =>
  column.reduce(
    (sum, value, row) => sum + (value * ((atUtc[row] ?? 0) - (atUtc[row - 1] ?? input.arriveUtc))) / 3600,
    0,
  )

/** Every other night with what may change on the way: covers put up, bed heaters later, something kept on, an inverter. */
function withEvents(input: NightInput, seed: number): NightInput {
  if (seed % 2 === 0) return input
  const { leisure } = input
  return {
    ...withDecisions(input, { coversFromUtc: at(6), bedHeatersFromUtc: at(7) }),
    keepsOnW: 15,
    leisure: leisure === null ? null : { ...leisure, inverterMaxW: 800 },
  }
}

describe('balances of the night', () => {
  it(
    `heat and water close to a millionth over ${NIGHTS} random nights (seeds 1 to ${NIGHTS}), and no air holds more than it can`,
    () => {
      let worstHeat = 0
      let worstWater = 0
      for (let seed = 1; seed <= NIGHTS; seed += 1) {
        const outcome = simulateNight(withEvents(randomNight(seed), seed))
        const { heat01, water01 } = residuals(outcome)
        worstHeat = Math.max(worstHeat, heat01)
        worstWater = Math.max(worstWater, water01)
        for (const [name, column] of Object.entries(outcome.series)) {
          for (const value of column) if (!Number.isFinite(value)) throw new Error(`seed ${seed}: ${name} is ${value}`)
        }
        outcome.series.dewPointC.forEach((dewC, row) => {
          const airC = Math.max(outcome.series.bedAirC[row] ?? 0, outcome.series.frontAirC[row] ?? 0)
          if (dewC > airC + 1e-6) throw new Error(`seed ${seed}: dew point ${dewC} over air ${airC}`)
        })
        for (const grams of [...outcome.series.condensateG, ...outcome.series.frostG])
          expect(grams).toBeGreaterThanOrEqual(0)
      }
      expect(worstHeat).toBeLessThan(1e-6)
      expect(worstWater).toBeLessThan(1e-6)
    },
    TIME_LIMIT_MS,
  )

  it.each(SCENARIO_NIGHTS.map((of) => [of.name, of] as const))('closes over scenario %s, heated and not', (_, of) => {
    for (const heated of [false, true]) {
      const { heat01, water01 } = residuals(simulateNight(scenarioInput(of, heated, true)))
      expect(heat01).toBeLessThan(1e-6)
      expect(water01).toBeLessThan(1e-6)
    }
  })

  it('electricity adds up: what the battery gains is what the supply brought, less losses and loads', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const input = randomNight(seed)
      if (input.battery === null || input.heater.kind === 'mains-fan-heater') continue
      const outcome = simulateNight(input)
      const gainedWh = ((outcome.depart01 ?? 0) - input.battery.arrive01) * input.battery.usableWh
      expect(energyWh(outcome.series.chargeW, outcome.series.atUtc, input)).toBeCloseTo(gainedWh, 3)
      // Direct current brought in covers loads and gain; overheads are zero in these nights.
      const broughtWh = outcome.fromSiteWh * input.battery.efficiency01
      expect(gainedWh + outcome.heatingWh).toBeLessThan(broughtWh + 1 + (outcome.depart01 === 0 ? Infinity : 0))
    }
  })

  it('the columns integrate to the totals', () => {
    const input = night({ bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }] })
    const outcome = simulateNight(withDecisions(input, { bedHeaterIds: ['bed'] }))
    const { series } = outcome
    expect(energyWh(series.supplyW, series.atUtc, input)).toBeCloseTo(outcome.fromSiteWh, 3)
    expect(energyWh(series.wiringLossW, series.atUtc, input)).toBeCloseTo(outcome.wiringLossWh, 3)
    expect(
      energyWh(series.heatingElectricW, series.atUtc, input) + energyWh(series.bedHeatW, series.atUtc, input),
    ).toBeCloseTo(outcome.heatingWh, 3)
  })

  it('a sleeper in a shut cabin leaves about 45 g of water an hour', () => {
    const input = night({ sleepers: [sleeper(), sleeper({ id: 'two' })] })
    const { balance } = simulateNight(input)
    // 8 h asleep at 45 g and 6 h awake at 55 g, twice.
    expect(balance.waterInG).toBeCloseTo(2 * (8 * 45 + 6 * 55), 3)
  })
})
