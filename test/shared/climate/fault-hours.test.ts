/** After a fault: hours of heat that are left, the hours one by one, and the heating taken off, by hand. */
import { describe, expect, it } from 'vitest'
import { runFault } from '../../../shared/climate/index.ts'
import { heatingOffFrom } from '../../../shared/climate/faults.ts'
import { at, night, supply, withDecisions } from './night-fixture.ts'
import type { NightInput } from '../../../shared/climate/index.ts'

describe('the hours of heat that are left', () => {
  /** A heater that gives its 300 W all night and takes 340 W with its fan, as 30 °C are out of its reach. */
  const full = (over: Partial<NightInput> = {}): NightInput =>
    withDecisions(
      night({
        supply: null,
        sleepers: [],
        heater: { ...night().heater, kind: 'resistance', maxHeatW: 300, awakeLoadW: 40 },
        stepS: 900,
        ...over,
      }),
      { setPoints: [{ fromUtc: at(3), tempC: 30 }] },
    )
  const lost = { kind: 'supply-lost', atUtc: at(5) } as const

  it('are those to departure and what the battery above its reserve would run after, by hand', () => {
    // 11 h at 340 W out of half of 60 kWh, a tenth kept.
    const spareWh = 0.4 * 60_000 - 340 * 11
    expect(runFault(full(), lost).hoursOfHeatLeft).toBeCloseTo(9 + spareWh / 340, 4)
    const bed = withDecisions(full({ bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }] }), {
      bedHeaterIds: ['bed'],
    })
    // Bed heaters run seven of the nine hours that are left, and eight in all.
    const meanW = 340 + (50 * 7) / 9
    expect(runFault(bed, lost).hoursOfHeatLeft).toBeCloseTo(9 + (spareWh - 50 * 8) / meanW, 4)
  })

  it('are none where the heater failed, and not known where no heat is wanted, none is used or no battery gives it', () => {
    expect(runFault(full(), { kind: 'heater-fails', atUtc: at(5) }).hoursOfHeatLeft).toBe(0)
    expect(runFault(withDecisions(full(), { setPoints: [] }), lost).hoursOfHeatLeft).toBeNull()
    expect(
      runFault(withDecisions(full(), { setPoints: [{ fromUtc: at(3), tempC: null }] }), lost).hoursOfHeatLeft,
    ).toBeNull()
    expect(runFault(full({ heater: { ...full().heater, kind: 'none' } }), lost).hoursOfHeatLeft).toBeNull()
    const before = withDecisions(full(), {
      setPoints: [
        { fromUtc: at(0), tempC: 30 },
        { fromUtc: at(4), tempC: null },
      ],
    })
    expect(runFault(before, lost).hoursOfHeatLeft).toBeNull()
    const van = full({
      battery: null,
      supply: supply({ plugInUtc: at(0), unplugUtc: at(14) }),
      heater: { ...full().heater, kind: 'mains-fan-heater' },
    })
    const warm = { kind: 'breaker-trips', atUtc: at(5), heldA: 8, resetUtc: at(5) } as const
    expect(runFault(van, warm).hoursOfHeatLeft).toBeNull()
  })

  it('count from the fault to the second at which the heater stops, and none where it had stopped before', () => {
    const heater = { ...full().heater, switchesOffAfterS: 4 * 3600 }
    expect(runFault(full({ heater }), lost).hoursOfHeatLeft).toBeCloseTo(2, 3)
    expect(runFault(full({ heater }), { ...lost, atUtc: at(9) }).hoursOfHeatLeft).toBe(0)
  })
})

describe('hour by hour', () => {
  it('tells every column as the night has it, from the first row at the fault to the last', () => {
    const input = night({ stepS: 900, departUtc: at(13.5) })
    const { hours = [], outcome } = runFault(input, { kind: 'supply-lost', atUtc: at(10.1) })
    // Rows end every quarter: 10.25 is the first at or after the fault; the last row is told whatever the hour.
    expect(hours.map(({ atUtc }) => (atUtc - at(0)) / 3600)).toEqual([10.25, 11.25, 12.25, 13.25, 13.5])
    for (const hour of hours) {
      const row = outcome.series.atUtc.indexOf(hour.atUtc)
      const of = (column: readonly number[]): number => column[row] ?? Number.NaN
      const { outsideC, bedAirC, feetC, heatW, charge01 } = outcome.series
      expect(hour).toMatchObject({
        outsideC: of(outsideC),
        bedAirC: of(bedAirC),
        feetC: of(feetC),
        heatW: of(heatW),
        charge01: of(charge01),
        leisure01: null,
      })
      expect(hour.marginK === null).toBe(hour.atUtc > at(12))
    }
    const van = runFault(
      night({
        battery: null,
        sleepers: [],
        leisure: {
          kind: 'lead',
          usableWh: 1000,
          reserve01: 0.2,
          chargerW: 0,
          loadW: 20,
          arrive01: 0.9,
          inverterMaxW: 0,
        },
      }),
      { kind: 'supply-lost', atUtc: at(6) },
    ).hours?.[0]
    // 20 W for six hours.
    expect(van).toMatchObject({ charge01: null, leisure01: expect.closeTo(0.78, 9), marginK: null })
  })
})

describe('the heating off from an instant', () => {
  it('keeps what was set before it and nothing after', () => {
    const { decisions } = withDecisions(night(), {
      setPoints: [
        { fromUtc: at(3), tempC: 12 },
        { fromUtc: at(6), tempC: 15 },
        { fromUtc: at(9), tempC: 18 },
      ],
    })
    expect(heatingOffFrom(decisions, at(6)).setPoints).toEqual([
      { fromUtc: at(3), tempC: 12 },
      { fromUtc: at(6), tempC: null },
    ])
    expect(heatingOffFrom(decisions, at(2)).setPoints).toEqual([{ fromUtc: at(2), tempC: null }])
  })
})
