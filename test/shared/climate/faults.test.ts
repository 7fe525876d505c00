import { describe, expect, it } from 'vitest'
import { runFault, simulateNight } from '../../../shared/climate/index.ts'
import { at, night, plainLeg, steadyWeather, supply, withDecisions } from './night-fixture.ts'
import { SCENARIO_NIGHTS } from './scenario-nights.ts'
import { scenarioInput } from './scenario-input.ts'
import type { LegParameters, NightInput } from '../../../shared/climate/index.ts'

const leg = (distanceM: number): LegParameters => plainLeg({ distanceM, whPerKm: 220, outsideC: -5 })

/** Enough in the battery for the leg if the heating goes off in time, not if it runs on. */
const tight = (legM: number): NightInput => {
  const base = night({ weather: steadyWeather(-12), leg: leg(legM) })
  return { ...base, battery: base.battery === null ? null : { ...base.battery, arrive01: 0.55 } }
}

describe('supply lost', () => {
  it('is the sound night until it happens, and leaves less after', () => {
    const input = tight(100_000)
    const sound = simulateNight(input)
    const { outcome } = runFault(input, { kind: 'supply-lost', atUtc: at(6) })
    const row = sound.series.atUtc.indexOf(at(6))
    expect(outcome.series.charge01[row]).toBeCloseTo(sound.series.charge01[row] ?? 0, 10)
    expect(outcome.depart01 ?? 1).toBeLessThan(sound.depart01 ?? 0)
    expect(outcome.fromSiteWh).toBeLessThan(sound.fromSiteWh)
  })

  it('names the latest instant to switch the heating off: acting then works, a quarter of an hour later does not', () => {
    const input = tight(118_000)
    const fault = { kind: 'supply-lost', atUtc: at(5) } as const
    const { actByUtc, legMarginWh } = runFault(input, fault)
    expect(legMarginWh).toBeLessThan(0)
    expect(actByUtc).not.toBeNull()
    expect(actByUtc).toBeGreaterThan(at(5))
    const actedAt = (atUtc: number): number =>
      simulateNight({
        ...input,
        fault,
        decisions: {
          ...input.decisions,
          setPoints: [
            { fromUtc: at(3), tempC: 12 },
            { fromUtc: Math.round(atUtc) as typeof input.arriveUtc, tempC: null },
          ],
        },
      }).leg?.marginWh ?? 0
    expect(actedAt(actByUtc ?? 0)).toBeGreaterThanOrEqual(0)
    expect(actedAt((actByUtc ?? 0) + 900)).toBeLessThan(0)
  })

  it('asks for no action where the leg holds anyway, and for action at once where nothing saves it', () => {
    expect(runFault(tight(20_000), { kind: 'supply-lost', atUtc: at(6) }).actByUtc).toBeNull()
    expect(runFault(tight(300_000), { kind: 'supply-lost', atUtc: at(6) }).actByUtc).toBe(at(6))
  })

  it('says how many hours of heat the battery still gives, and stops at its reserve', () => {
    const base = tight(20_000)
    const input = { ...base, battery: base.battery === null ? null : { ...base.battery, arrive01: 0.16 } }
    const result = runFault(input, { kind: 'supply-lost', atUtc: at(4) })
    expect(result.outcome.stopsUtc).not.toBeNull()
    expect(result.hoursOfHeatLeft).toBeCloseTo(((result.outcome.stopsUtc ?? 0) - at(4)) / 3600, 6)
    expect(result.coldestBedC).toBeLessThan(simulateNight(input).coldestBedC)
  })

  it('leaves a van with a mains fan heater without heat from that moment', () => {
    const van: NightInput = {
      ...night({ weather: steadyWeather(-3) }),
      battery: null,
      leisure: {
        kind: 'lfp',
        usableWh: 1000,
        reserve01: 0.2,
        chargerW: 235,
        loadW: 20,
        arrive01: 0.8,
        inverterMaxW: 0,
      },
      heater: { ...night().heater, kind: 'mains-fan-heater', maxHeatW: 1500, awakeLoadW: 0 },
    }
    const result = runFault(van, { kind: 'supply-lost', atUtc: at(7) })
    expect(result.hoursOfHeatLeft).toBeCloseTo(0, 1)
    expect(result.outcome.series.heatW.at(-1)).toBe(0)
    expect(result.depart01).toBeNull()
  })
})

describe('breaker trips', () => {
  it('gives nothing until it is reset, then what it holds', () => {
    const input = night({ supply: supply({ siteLimitA: null, breakerA: 16 }) })
    const { outcome } = runFault(input, { kind: 'breaker-trips', atUtc: at(5), heldA: 8, resetUtc: at(7) })
    const drawn = (hour: number): number => outcome.series.supplyW[outcome.series.atUtc.indexOf(at(hour))] ?? 0
    expect(drawn(4.5)).toBeGreaterThan(2500)
    expect(drawn(6)).toBe(0)
    expect(drawn(8)).toBeGreaterThan(1500)
    expect(drawn(8)).toBeLessThan(8 * 232)
  })

  it('names the latest reset that saves the leg', () => {
    const input = tight(120_000)
    const result = runFault(input, { kind: 'breaker-trips', atUtc: at(4), heldA: 8, resetUtc: null })
    expect(result.legMarginWh).toBeLessThan(0)
    expect(result.actByUtc).toBeGreaterThan(at(4))
    expect(result.actByUtc).toBeLessThan(input.departUtc)
  })

  it('scenario b, night 2: 32 A trip after 40 minutes, 24 A held, and the charge limit is still nearly reached', () => {
    const of = SCENARIO_NIGHTS[3]
    if (of === undefined) throw new Error('four scenario nights')
    const input = scenarioInput({ ...of, heldA: null }, true, true)
    const plugged = input.supply?.plugInUtc ?? input.arriveUtc
    const fault = {
      kind: 'breaker-trips',
      atUtc: (plugged + 2400) as typeof input.arriveUtc,
      heldA: 24,
      resetUtc: (plugged + 3900) as typeof input.arriveUtc,
    } as const
    expect(runFault(input, fault).depart01).toBeGreaterThan(0.89)
  })
})

describe('heater fails', () => {
  it('leaves no heat and a fuller battery, and the cabin falls as it must', () => {
    const input = tight(100_000)
    const result = runFault(input, { kind: 'heater-fails', atUtc: at(6) })
    expect(result.hoursOfHeatLeft).toBe(0)
    expect(result.actByUtc).toBeNull()
    expect(result.depart01 ?? 0).toBeGreaterThan(simulateNight(input).depart01 ?? 1)
    const { series } = result.outcome
    const bedAt = (hour: number): number => series.bedAirC[series.atUtc.indexOf(at(hour))] ?? 0
    expect(bedAt(7)).toBeLessThan(bedAt(6) - 4)
    expect(bedAt(9)).toBeLessThan(bedAt(7))
    expect(bedAt(9)).toBeGreaterThan(-12)
  })

  it('keeps bed heaters on', () => {
    const input = withDecisions(night({ bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }] }), {
      bedHeaterIds: ['bed'],
    })
    const { outcome } = runFault(input, { kind: 'heater-fails', atUtc: at(5) })
    expect(outcome.series.bedHeatW[outcome.series.atUtc.indexOf(at(8))]).toBeCloseTo(50, 6)
  })
})
