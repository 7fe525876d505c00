/** The pack over a step: losses, taper, limit, cold, and discharge. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { packStep } from '../../../shared/climate/index.ts'
import type { BatteryParameters, PackStep } from '../../../shared/climate/index.ts'

const battery: BatteryParameters = {
  usableWh: 75_000,
  reserve01: 0.1,
  chargeLimit01: 1,
  efficiency01: 0.9,
  overheadW: 300,
  coldOverheadW: 400,
  arrive01: 0.4,
  fastMaxW: 150_000,
}

const step = (changes: Partial<PackStep>): PackStep => ({
  battery,
  charge01: 0.4,
  chargeLimit01: 1,
  offeredW: 2736,
  loadW: 0,
  outsideC: 5,
  stepS: 3600,
  ...changes,
})

/** Charge after two hours at 4 kW from 90 %, in steps. */
function afterTwoHours(stepS: number): number {
  let charge01 = 0.9
  for (let at = 0; at < 7200; at += stepS) charge01 = packStep(step({ charge01, offeredW: 4000, stepS })).charge01
  return charge01
}

describe('the pack', () => {
  it('takes what is left after overhead and losses: 114 V at 24 A gives 2,192 W', () => {
    const outcome = packStep(step({}))
    expect(outcome.intoCellsW).toBeCloseTo((2736 - 300) * 0.9, 6)
    expect(outcome.drawnW).toBeCloseTo(2736, 6)
    expect(outcome.charge01).toBeCloseTo(0.4 + 2192.4 / 75_000, 9)
  })

  it('spends more on itself below freezing', () => {
    expect(packStep(step({ outsideC: -5 })).intoCellsW).toBeCloseTo((2736 - 700) * 0.9, 6)
  })

  it('carries the load from the supply before the cells', () => {
    expect(packStep(step({ loadW: 1000 })).intoCellsW).toBeCloseTo((2736 - 300) * 0.9 - 1000, 6)
    expect(packStep(step({ offeredW: 0, loadW: 1000 })).intoCellsW).toBeCloseTo(-1000, 9)
  })

  it('stops at the limit and then draws only what the load needs', () => {
    const full = packStep(step({ charge01: 0.8, chargeLimit01: 0.8, loadW: 900 }))
    expect(full.charge01).toBe(0.8)
    expect(full.drawnW).toBeCloseTo(900 / 0.9 + 300, 6)
    expect(packStep(step({ charge01: 0.8, chargeLimit01: 0.8 })).drawnW).toBe(0)
  })

  it('says how much of a load an empty pack leaves open', () => {
    const outcome = packStep(step({ charge01: 0.01, offeredW: 0, loadW: 1500 }))
    expect(outcome.charge01).toBeCloseTo(0, 12)
    expect(outcome.shortW).toBeCloseTo(750, 6)
  })

  it('reaches the same charge whatever the step, through the taper too', () => {
    expect(afterTwoHours(60)).toBeCloseTo(afterTwoHours(3600), 9)
    expect(afterTwoHours(300)).toBeCloseTo(afterTwoHours(7200), 9)
    expect(afterTwoHours(60)).toBeGreaterThan(0.97)
    expect(afterTwoHours(60)).toBeLessThan(1)
  })

  it('never gains from a smaller offer, a larger load or a colder night, and stays between empty and the limit', () => {
    fc.assert(
      fc.property(
        fc.record({
          charge01: fc.double({ min: 0, max: 1, noNaN: true }),
          chargeLimit01: fc.double({ min: 0.5, max: 1, noNaN: true }),
          offeredW: fc.double({ min: 0, max: 11_000, noNaN: true }),
          loadW: fc.double({ min: 0, max: 5000, noNaN: true }),
          outsideC: fc.double({ min: -25, max: 25, noNaN: true }),
          stepS: fc.integer({ min: 60, max: 7200 }),
        }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (changes, more) => {
          const base = packStep(step(changes))
          const limit01 = Math.max(changes.charge01, changes.chargeLimit01)
          expect(base.charge01).toBeGreaterThanOrEqual(-1e-12)
          expect(base.charge01).toBeLessThanOrEqual(limit01 + 1e-12)
          expect(base.drawnW).toBeLessThanOrEqual(changes.offeredW + 1e-9)
          const worse = [
            { ...changes, offeredW: Math.max(0, changes.offeredW - more) },
            { ...changes, loadW: changes.loadW + more },
            { ...changes, outsideC: changes.outsideC - more / 100 },
          ]
          for (const other of worse) expect(packStep(step(other)).charge01).toBeLessThanOrEqual(base.charge01 + 1e-9)
        },
      ),
      { seed: 41 },
    )
  })

  it('keeps its energy: what the supply gives is load, cells, losses and overhead', () => {
    const outcome = packStep(step({ loadW: 500 }))
    expect((outcome.drawnW - 300) * 0.9).toBeCloseTo(outcome.intoCellsW + 500, 6)
  })
})
