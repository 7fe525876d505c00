import { describe, expect, it } from 'vitest'
import { simulateNight } from '../../../shared/climate/index.ts'
import { SCENARIO_NIGHTS } from './scenario-nights.ts'
import { scenarioInput } from './scenario-input.ts'

/** The scenarios' own tolerance on energy. */
const TOLERANCE_01 = 0.15
const within = (ours: number, reference: number): void =>
  expect(Math.abs(ours / reference - 1)).toBeLessThan(TOLERANCE_01)

describe.each(SCENARIO_NIGHTS.map((of) => [of.name, of] as const))('scenario %s', (_, of) => {
  const { reference } = of
  const cold = simulateNight(scenarioInput(of, false, true))
  const covered = simulateNight(scenarioInput(of, true, true))
  const bare = simulateNight(scenarioInput(of, true, false))

  it('finds the supply', () => {
    expect(covered.supply?.usableA).toBeCloseTo(reference.usableA, 6)
    expect(covered.supply?.wattsAtLoad).toBeCloseTo(reference.wattsAtLoad, 0)
  })

  it('needs the reference’s energy for warmth, covered and bare', () => {
    within(covered.heatingWh / 1000, reference.climateCoveredKWh)
    within(bare.heatingWh / 1000, reference.climateBareKWh)
    expect(cold.heatingWh).toBe(0)
  })

  it('draws the reference’s power at the coldest hour', () => {
    const low = covered.series.outsideC.indexOf(Math.min(...covered.series.outsideC))
    within(covered.series.heatingElectricW[low] ?? 0, reference.electricAtLowCoveredW)
    within(bare.series.heatingElectricW[low] ?? 0, reference.electricAtLowBareW)
  })

  it('takes the reference’s energy from the site and leaves with its charge', () => {
    within(covered.fromSiteWh / 1000, reference.fromSiteKWh)
    within(cold.depart01 ?? 0, reference.departNoHeat)
    within(covered.depart01 ?? 0, reference.departCovered)
    within(bare.depart01 ?? 0, reference.departBare)
  })

  it('needs the reference’s energy for the leg and agrees on whether it works', () => {
    within((covered.leg?.needWh ?? 0) / 1000, reference.legNeedKWh)
    expect((covered.leg?.marginWh ?? 0) > 0).toBe(reference.marginCoveredKWh > 0)
    if (of.fastChargerAtM !== null) {
      expect(covered.leg?.reachable).toBe(true)
      expect(covered.leg?.stops).toHaveLength(1)
    }
  })
})
