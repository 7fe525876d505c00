/** Which handlings a fault calls for, on nights made so that only one answer is right: heating, breaker, and who counts. */
import { describe, expect, it } from 'vitest'
import { adviseOn } from '../../../shared/climate/fault-advice.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import type { Fault } from '../../../shared/climate/index.ts'
import { FAILED, HEATED, LOST, WH_PER_KM, codes, cold, departWhOf, leg, legOfWh } from './fault-fixture.ts'
import { at, sleeper, supply, withDecisions } from './night-fixture.ts'

/** Energy left at departure, Wh, where the heating is taken down to a level at an instant: later set-points too, and off where it is off. */
function leftWh(levelC: number | null, fromHour = 5): number {
  const key = `${levelC} ${fromHour}`
  const known = leftKnown.get(key)
  if (known !== undefined) return known
  const least = (tempC: number) => (levelC === null ? null : Math.min(tempC, levelC))
  const wh = departWhOf({
    ...withDecisions(HEATED, {
      setPoints: [
        { fromUtc: at(3), tempC: 16 },
        { fromUtc: at(fromHour), tempC: least(16) },
        { fromUtc: at(8), tempC: null },
        { fromUtc: at(10), tempC: least(18) },
      ],
    }),
    fault: LOST,
  })
  leftKnown.set(key, wh)
  return wh
}
const leftKnown = new Map<string, number>()
describe('the heating after the supply is lost', () => {
  it.each([
    ['down to 12 °C where that saves the leg and no change does not', 12, 99],
    ['down to 8 °C where that saves the leg and 12 °C does not', 8, 12],
    ['down to 5 °C where that saves the leg and 8 °C does not', 5, 8],
    ['off where that saves the leg and 5 °C does not', null, 5],
  ] as const)('is taken %s', (_, levelC, warmerC) => {
    const enoughWh = leftWh(levelC)
    const tooLittleWh = leftWh(warmerC)
    expect(enoughWh).toBeGreaterThan(tooLittleWh + 100)
    const advice = adviseOn({ ...HEATED, leg: legOfWh((enoughWh + tooLittleWh) / 2) }, LOST)
    expect(advice.actions).toEqual(
      levelC === null ? [{ code: 'heating-off' }] : [{ code: 'lower-heating', tempC: levelC }],
    )
    expect(advice.holds).toBe(true)
    expect(advice.byColdUtc).toBeNull()
    expect(advice.depart01 ?? 0).toBeCloseTo(enoughWh / 60_000, 3)
    expect(advice.legMarginWh).toBeGreaterThanOrEqual(0)
    expect(advice.byUtc).toBeGreaterThanOrEqual(at(5))
    expect(advice.byUtc ?? Infinity).toBeLessThan(at(14))
  })

  it('may stay until the last instant at which taking it down still saves the leg', () => {
    // A leg that wants the heating off by seven hours after arrival.
    const advice = adviseOn({ ...HEATED, leg: legOfWh(leftWh(null, 7)) }, LOST)
    expect(codes(advice)).toEqual(['heating-off'])
    expect(Math.abs((advice.byUtc ?? 0) - at(7))).toBeLessThan(300)
  })

  it('is left alone where the leg holds anyway, and where nothing saves it and all are warm', () => {
    const fine = adviseOn({ ...HEATED, leg: leg(10_000) }, LOST)
    expect(fine).toMatchObject({ actions: [], holds: true, byUtc: null, byColdUtc: null })
    const lost = adviseOn({ ...HEATED, leg: leg(300_000) }, LOST)
    expect(lost).toMatchObject({ actions: [], holds: false, byUtc: null, byColdUtc: null })
    expect(lost.legMarginWh).toBeLessThan(-1000)
  })

  it('is not taken down to a level that it never had', () => {
    const low = withDecisions({ ...HEATED, leg: leg(300_000) }, { setPoints: [{ fromUtc: at(3), tempC: 9 }] })
    const bare = simulateNight({ ...low, fault: LOST }).leg?.marginWh ?? 0
    const far = { ...low, leg: leg(300_000 + ((bare + 300) / WH_PER_KM) * 1000) }
    // 300 Wh short: 8 °C is the first level below the 9 °C that were set.
    const advice = adviseOn(far, LOST)
    expect(advice.actions).toEqual([{ code: 'lower-heating', tempC: 8 }])
  })

  it('is off where it had not begun: set-points after the fault fall with it', () => {
    const later = withDecisions({ ...HEATED, leg: null }, { setPoints: [{ fromUtc: at(9), tempC: 20 }] })
    const heatedWh = departWhOf({ ...later, fault: LOST })
    const restedWh = departWhOf(withDecisions({ ...later, fault: LOST }, { setPoints: [] }))
    const advice = adviseOn({ ...later, leg: legOfWh(restedWh - 100) }, LOST)
    expect(restedWh).toBeGreaterThan(heatedWh + 1000)
    expect(codes(advice)).toEqual(['heating-off'])
    expect(advice.depart01 ?? 0).toBeCloseTo(restedWh / 60_000, 5)
  })
})

describe('a tripped breaker', () => {
  const trip = (resetUtc: ReturnType<typeof at> | null): Fault => ({
    kind: 'breaker-trips',
    atUtc: at(5),
    heldA: 8,
    resetUtc,
  })
  const plugged = { ...HEATED, supply: supply({ plugInUtc: at(0), unplugUtc: at(14) }) }
  const departWh = (fault: Fault): number => departWhOf({ ...plugged, fault })

  it('is reset at once where the leg needs what it brings, and left alone where it is reset anyway', () => {
    const [never, now] = [departWh(trip(null)), departWh(trip(at(5)))]
    expect(now).toBeGreaterThan(never + 5000)
    const advice = adviseOn({ ...plugged, leg: legOfWh(now - 200) }, trip(null))
    expect(advice.actions).toContainEqual({ code: 'reset-lower', heldA: 8 })
    expect(advice.holds).toBe(true)
    // Nothing else resets it: heating off saves an hour of heat, not the eight hours of charging that the leg needs.
    const brief = withDecisions(
      { ...plugged, sleepers: [] },
      {
        setPoints: [
          { fromUtc: at(3), tempC: 16 },
          { fromUtc: at(6), tempC: null },
        ],
      },
    )
    const resetWh = departWhOf({ ...brief, fault: trip(at(5)) })
    expect(adviseOn({ ...brief, leg: legOfWh(resetWh - 200) }, trip(null)).actions).toEqual([
      { code: 'reset-lower', heldA: 8 },
    ])
    const far = { ...plugged, leg: legOfWh(departWh(trip(at(9))) + 200) }
    expect(codes(adviseOn(far, trip(at(9))))).not.toContain('reset-lower')
  })
})

describe('who counts', () => {
  it('nobody is cold before bedtime, after rising or where nobody sleeps: then there is nothing to do', () => {
    const late: Fault = { kind: 'heater-fails', atUtc: at(12) }
    expect(adviseOn(cold(), late)).toMatchObject({ actions: [], holds: true, marginK: null })
    expect(adviseOn(cold({ sleepers: [] }), FAILED)).toMatchObject({ actions: [], holds: true, marginK: null })
    expect(adviseOn(cold(), { kind: 'heater-fails', atUtc: at(11) }).marginK).not.toBeNull()
  })

  it('people who are cold already are to go indoors at the fault itself', () => {
    const fault: Fault = { kind: 'heater-fails', atUtc: (at(6) + 100) as ReturnType<typeof at> }
    const freezing = cold({}, { setPoints: [] })
    expect(adviseOn(freezing, fault).byUtc).toBe(fault.atUtc)
  })

  it('people who turn cold later have until the start of the quarter of an hour in which they do', () => {
    const input = cold({ stepS: 300, sleepers: [sleeper({ bedding: { comfortC: 2, coverClo: 5, matM2KPerW: 0.9 } })] })
    const advice = adviseOn(input, FAILED)
    const coldUtc = simulateNight({ ...input, fault: FAILED }).sleepers[0]?.coldFromUtc ?? 0
    expect(codes(advice)).toEqual(['move-indoors'])
    expect(((advice.byUtc ?? 0) - at(0)) % 900).toBe(0)
    expect(coldUtc - (advice.byUtc ?? 0)).toBeGreaterThan(0)
    expect(coldUtc - (advice.byUtc ?? 0)).toBeLessThanOrEqual(1200)
  })
})
