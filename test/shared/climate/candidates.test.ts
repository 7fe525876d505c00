/** What the search tries of a night: profiles, bed heaters, covers, gaps, currents and limits, by hand. */
import { describe, expect, it } from 'vitest'
import type { Scored } from '../../../shared/climate/optimise/front.ts'
import {
  bedHeaterSets,
  chargings,
  coverChoices,
  gentleCurrentA,
  profiles,
  ventilations,
} from '../../../shared/climate/optimise/candidates.ts'
import type { NightInput, SupplyOutcome } from '../../../shared/climate/index.ts'
import { ARRIVE, at, night, plainLeg, steadyWeather, supply, withDecisions } from './night-fixture.ts'

// Asleep from hour 4 to 12 after arriving, off at 14, plugged in from 0.5 to 13.5.
const input = night()
const LEG: NonNullable<NightInput['leg']> = plainLeg()
/** Hour after arriving and set-point of each. */
const hours = (points: readonly { readonly fromUtc: number; readonly tempC: number | null }[]) =>
  points.map(({ fromUtc, tempC }) => [(fromUtc - ARRIVE) / 3600, tempC])

describe('profiles', () => {
  it('are the night’s own, off, held, lowered while asleep, and warm in the morning only', () => {
    expect(profiles(input, { setPointsC: [14] }).map(hours)).toEqual([
      [[3, 12]],
      [],
      [[3, 14]],
      [
        [3, 14],
        [4, 10],
        [11.25, 14],
        [13.5, null],
      ],
      [
        [11.25, 14],
        [13.5, null],
      ],
    ])
  })

  it('go no lower than 5 °C, warm up before an early unplugging, and stay on where there is no post', () => {
    expect(hours(profiles(input, { setPointsC: [8] })[3] ?? [])[1]).toEqual([4, 5])
    const early = night({ supply: supply({ unplugUtc: at(10) }) })
    expect(hours(profiles(early, { setPointsC: [14] })[4] ?? [])).toEqual([[9.25, 14]])
    expect(hours(profiles(night({ supply: null }), { setPointsC: [14] })[4] ?? [])).toEqual([[11.25, 14]])
    expect(hours(profiles(night({ sleepFromUtc: at(0.5) }), { setPointsC: [14] })[2] ?? [])).toEqual([[0, 14]])
  })

  it('cover 5 to 20 °C, and 22 and 24 where a heater that cools meets a hot night', () => {
    const count = (over: Partial<NightInput>) => profiles(night(over), {}).length
    const cools = { ...input.heater, canCool: true }
    expect(count({})).toBe(2 + 3 * 8)
    expect(count({ heater: cools, weather: steadyWeather(19) })).toBe(2 + 3 * 10)
    expect(count({ heater: cools, weather: steadyWeather(18) })).toBe(2 + 3 * 8)
    expect(count({ weather: steadyWeather(30) })).toBe(2 + 3 * 8)
    expect(profiles(night({ heater: { ...input.heater, kind: 'none' } }), {})).toEqual([[]])
  })
})

describe('bed heaters, covers and gaps', () => {
  it('bed heaters are tried alone where there are two, else all or none', () => {
    const sets = (...ids: string[]) =>
      bedHeaterSets(night({ bedHeaters: ids.map((id) => ({ id, kind: 'underblanket', powerW: 50 })) }))
    expect(sets()).toEqual([[]])
    expect(sets('a')).toEqual([[], ['a']])
    expect(sets('a', 'b')).toEqual([[], ['a'], ['b'], ['a', 'b']])
    expect(sets('a', 'b', 'c')).toEqual([[], ['a', 'b', 'c']])
  })

  it('covers are tried both ways where they are aboard or up', () => {
    expect(coverChoices(input, {})).toEqual([false])
    expect(coverChoices(night({ coversOwned: true }), {})).toEqual([true, false])
    expect(coverChoices(withDecisions(input, { covers: true }), {})).toEqual([true, false])
    expect(coverChoices(withDecisions(night({ coversOwned: false }), { covers: true }), {})).toEqual([false])
    expect(coverChoices(input, { covers: [true] })).toEqual([true])
  })

  it('gaps are tried from shut on, on two sides where the night opens none', () => {
    expect(ventilations(input, {})).toEqual([
      { gapMm: 0, sides: 0 },
      { gapMm: 10, sides: 2 },
      { gapMm: 20, sides: 2 },
    ])
    expect(ventilations(withDecisions(input, { windowGapMm: 5, windowSides: 1 }), { gapsMm: [20, 0] })).toEqual([
      { gapMm: 0, sides: 1 },
      { gapMm: 5, sides: 1 },
      { gapMm: 20, sides: 1 },
    ])
  })
})

describe('charging', () => {
  it('is tried at the night’s own limit, the battery’s, and what the leg asks where each unit costs', () => {
    const limits = (over: Partial<NightInput>) => chargings(night(over), {}).map(({ chargeLimit01 }) => chargeLimit01)
    expect(limits({})).toEqual([0.9])
    expect(limits({ decisions: { ...input.decisions, chargeLimit01: 0.8 } })).toEqual([0.8, 0.9])
    expect(limits({ supply: supply({ pricePerKWh: 0 }) })).toEqual([0.9])
    expect(chargings(night({ battery: null }), {})).toEqual([{ currentA: null, chargeLimit01: 0.9 }])
    expect(chargings(night({ supply: null }), {})).toEqual([{ currentA: null, chargeLimit01: 0.9 }])
  })

  it('is tried at what the leg asks with a tenth in hand above the reserve, in whole twentieths, where units cost', () => {
    const limits = (distanceM: number, over: Partial<NightInput> = {}, reserve01 = 0.1) =>
      chargings(night({ leg: { ...LEG, distanceM, reserve01 }, ...over }), {}).map(({ chargeLimit01 }) => chargeLimit01)
    // 50 km at 200 Wh/km are 10 kWh, with a tenth 11 of 60 kWh: 0.183, and 0.1 in reserve.
    expect(limits(50_000)).toEqual([0.9, 0.3])
    // 0.183 and 0.2, whoever asks for it.
    expect(limits(50_000, {}, 0.2)).toEqual([0.9, 0.4])
    expect(limits(50_000, { battery: input.battery === null ? null : { ...input.battery, reserve01: 0.2 } })).toEqual([
      0.9, 0.4,
    ])
    // 54.5 km: just 0.2 and 0.1.
    expect(limits(12_000 / 1.1 / 0.2)).toEqual([0.9, 0.3])
    expect(limits(300_000)).toEqual([0.9])
    expect(limits(50_000, { supply: supply({ pricePerKWh: null }) })).toEqual([0.9])
    expect(limits(50_000, { supply: supply({ pricePerKWh: 0 }) })).toEqual([0.9])
  })

  it('is tried at the current of the night and at all the post gives', () => {
    expect(chargings(withDecisions(input, { currentA: 8 }), {}).map(({ currentA }) => currentA)).toEqual([null, 8])
    expect(chargings(input, { currentsA: [6, 7], chargeLimits01: [0.5, 0.6] })).toEqual([
      { currentA: 6, chargeLimit01: 0.5 },
      { currentA: 6, chargeLimit01: 0.6 },
      { currentA: 7, chargeLimit01: 0.5 },
      { currentA: 7, chargeLimit01: 0.6 },
    ])
  })

  it('the gentle current brings the mean with a fifth in hand, whole, six amperes at least, and saves one at least', () => {
    const outcome = { voltsAtLoad: 230, phaseFactor: 1, usableA: 12 } as SupplyOutcome
    // Thirteen hours on the post: 230 Wh an hour are one ampere.
    const gentle = (meanA: number, over: object = {}, from: Partial<NightInput> = {}) =>
      gentleCurrentA(night(from), { ...outcome, ...over }, { supplyWh: meanA * 230 * 13 } as Scored)
    expect([2, 5, 6, 7.5, 9, 9.2].map((meanA) => gentle(meanA))).toEqual([6, 6, 8, 9, 11, null])
    expect(gentle(5, { usableA: 7 })).toBe(6)
    expect(gentle(5, { usableA: 6.9 })).toBeNull()
    expect(gentle(6, { phaseFactor: 2, usableA: 12 })).toBe(6)
    expect(gentle(2, {}, { supply: supply({ minimumA: 8 }) })).toBe(8)
    expect(gentle(5, {}, { supply: supply({ otherLoadW: 460 }) })).toBe(9)
    expect(gentle(0)).toBeNull()
    expect(gentle(5, {}, { supply: null })).toBeNull()
    expect(gentle(5, { voltsAtLoad: 0 })).toBeNull()
    expect(gentle(5, {}, { supply: supply({ plugInUtc: at(13.5) }) })).toBeNull()
    expect(gentleCurrentA(input, null, { supplyWh: 1 } as Scored)).toBeNull()
  })
})
