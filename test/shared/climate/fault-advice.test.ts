import { describe, expect, it } from 'vitest'
import { runFault, simulateNight } from '../../../shared/climate/index.ts'
import { at, night, plainLeg, randomNight, sleeper, steadyWeather, withDecisions } from './night-fixture.ts'
import type { BeddingSet, Fault, FaultOutcome, LegParameters, NightInput } from '../../../shared/climate/index.ts'

const leg = (distanceM: number): LegParameters => plainLeg({ distanceM, whPerKm: 220, outsideC: -5 })

const bedding = (id: string, comfortC: number, coverClo: number): BeddingSet => ({
  id,
  bySleeper: [{ sleeperId: 'one', bedding: { comfortC, coverClo, matM2KPerW: 0.9 } }],
  moves: 1,
  volumeMm3: 2e7,
})
const LIGHT = bedding('light', 4, 4)
const WINTER = bedding('winter', -22, 11)

/** A light bag at -12 °C, warm only by the heating; a winter bag, an underblanket and covers aboard. */
function prepared(legM: number | null, over: Partial<NightInput> = {}): NightInput {
  const base = night({
    weather: steadyWeather(-12),
    leg: legM === null ? null : leg(legM),
    sleepers: [sleeper({ bedding: { comfortC: 4, coverClo: 4, matM2KPerW: 0.9 } })],
    beddingSets: [LIGHT, WINTER],
    bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }],
    ...over,
  })
  return withDecisions(
    { ...base, battery: base.battery === null ? null : { ...base.battery, arrive01: 0.55 } },
    { setPoints: [{ fromUtc: at(3), tempC: 16 }], beddingSetId: 'light' },
  )
}

const heaterFails: Fault = { kind: 'heater-fails', atUtc: at(6) }
const supplyLost: Fault = { kind: 'supply-lost', atUtc: at(5) }
const codes = ({ advice }: FaultOutcome): readonly string[] => advice?.actions.map(({ code }) => code) ?? []

describe('hour by hour after a fault', () => {
  it('tells each hour from the fault to departure as the night itself has it', () => {
    const { hours = [], outcome } = runFault(prepared(null), heaterFails)
    expect(hours[0]?.atUtc).toBe(at(6))
    expect(hours.map(({ atUtc }) => (atUtc - at(6)) / 3600)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8])
    for (const hour of hours) {
      const row = outcome.series.atUtc.indexOf(hour.atUtc)
      expect(hour.bedAirC).toBe(outcome.series.bedAirC[row])
      expect(hour.charge01).toBe(outcome.series.charge01[row])
      expect(hour.marginK === null).toBe(hour.atUtc > at(12))
    }
    const margins = hours.flatMap(({ marginK }) => (marginK === null ? [] : [marginK]))
    expect(margins).toEqual(margins.toSorted((a, b) => b - a))
    expect(margins.at(-1) ?? 0).toBeCloseTo(outcome.sleepers[0]?.marginK ?? 0, 1)
  })
})

describe('what to do about the cold', () => {
  it('a failed heater asks for the warmer bedding, by the time someone turns cold', () => {
    const result = runFault(prepared(null), heaterFails)
    expect(codes(result)).toContain('warmer-bedding')
    expect(result.advice?.holds).toBe(true)
    expect(result.advice?.marginK ?? -1).toBeGreaterThanOrEqual(0)
    const coldUtc = result.outcome.sleepers[0]?.coldFromUtc ?? 0
    expect(Math.abs((result.advice?.byColdUtc ?? 0) - coldUtc)).toBeLessThanOrEqual(1800)
    expect(result.advice?.byUtc).toBe(result.advice?.byColdUtc)
  })

  it('without bedding or bed heat to turn to, it sends people indoors before they are cold', () => {
    const bare: NightInput = { ...prepared(null), bedHeaters: [], beddingSets: [LIGHT] }
    const result = runFault(bare, heaterFails)
    expect(codes(result).at(-1)).toBe('move-indoors')
    expect(result.advice?.holds).toBe(false)
    expect(result.advice?.byUtc).toBeGreaterThanOrEqual(at(6))
    expect(result.advice?.byUtc ?? Infinity).toBeLessThanOrEqual(result.outcome.sleepers[0]?.coldFromUtc ?? 0)
  })

  it('asks for nothing where the night holds anyway', () => {
    const warm = withDecisions(prepared(null), { beddingSetId: 'winter' })
    expect(runFault(warm, heaterFails).advice).toMatchObject({ actions: [], holds: true, byUtc: null, byColdUtc: null })
  })

  it('covers are put up where they are aboard and enough, and cut the loss from then on', () => {
    const base = withDecisions(prepared(null), { beddingSetId: 'light' })
    const up = simulateNight(withDecisions(base, { coversFromUtc: at(6) }))
    const down = simulateNight(base)
    const heat = (series: typeof up.series, hour: number): number => series.heatW[series.atUtc.indexOf(at(hour))] ?? 0
    expect(heat(up.series, 5)).toBeCloseTo(heat(down.series, 5), 9)
    expect(heat(up.series, 10)).toBeLessThan(heat(down.series, 10) * 0.95)
  })
})

describe('what to do about cold and leg together', () => {
  it('takes the heating down or off for the leg and the warmer bedding for the people, and names the last instant for both', () => {
    const result = runFault(prepared(118_000), supplyLost)
    const { advice } = result
    expect(result.legMarginWh).toBeLessThan(0)
    expect(codes(result).some((code) => code === 'heating-off' || code === 'lower-heating')).toBe(true)
    expect(advice?.holds).toBe(true)
    expect(advice?.legMarginWh ?? -1).toBeGreaterThanOrEqual(0)
    expect(advice?.byUtc).toBeGreaterThan(at(5))
    expect(advice?.byUtc ?? Infinity).toBeLessThan(at(14))
  })

  it('a tripped breaker is reset at what it holds', () => {
    const fault: Fault = { kind: 'breaker-trips', atUtc: at(4), heldA: 8, resetUtc: null }
    const result = runFault({ ...prepared(118_000), beddingSets: [LIGHT], bedHeaters: [] }, fault)
    expect(result.advice?.actions).toContainEqual({ code: 'reset-lower', heldA: 8 })
    expect(result.advice?.holds).toBe(true)
  })

  it('on random nights what it calls held leaves nobody cold, and its instants lie between fault and departure (seeds 1 to 40)', () => {
    let held = 0
    for (let seed = 1; seed <= 40; seed += 1) {
      const input = randomNight(seed)
      const fault = seed % 2 === 0 ? heaterFails : supplyLost
      const { advice, hours = [] } = runFault(input, fault)
      if (advice === undefined) throw new Error(`seed ${seed}: no advice`)
      expect(hours.length, `seed ${seed}`).toBeGreaterThan(7)
      if (advice.holds) {
        held += 1
        expect(advice.marginK ?? 0, `seed ${seed}`).toBeGreaterThanOrEqual(0)
      }
      for (const atUtc of [advice.byUtc, advice.byColdUtc]) {
        if (atUtc === null) continue
        expect(atUtc, `seed ${seed}`).toBeGreaterThanOrEqual(fault.atUtc)
        expect(atUtc, `seed ${seed}`).toBeLessThanOrEqual(input.departUtc)
      }
    }
    expect(held).toBeGreaterThan(5)
  })
})
