import { describe, expect, it } from 'vitest'
import { searchNight, simulateNight } from '../../../shared/climate/index.ts'
import { nonDominated } from '../../../shared/climate/optimise/front.ts'
import { at, night, randomFrom, randomNight, sleeper } from './night-fixture.ts'
import { SCENARIO_NIGHTS } from './scenario-nights.ts'
import { scenarioInput } from './scenario-input.ts'
import type { BeddingSet, NightInput } from '../../../shared/climate/index.ts'
import type { Scored } from '../../../shared/climate/optimise/front.ts'

const winter = sleeper({ sleeps: 'cold', bedding: { comfortC: -9, coverClo: 7, matM2KPerW: 0.9 } })
const searched = (index: number): NightInput => {
  const of = SCENARIO_NIGHTS[index]
  if (of === undefined) throw new Error('four scenario nights')
  return {
    ...scenarioInput(of, true, true),
    sleepers: [winter],
    bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }],
  }
}

describe('the night search', () => {
  it.each(SCENARIO_NIGHTS.map((of, index) => [of.name, index] as const))(
    '%s: no plan of the front beats another, and each is what simulating it gives',
    (_, index) => {
      const input = searched(index)
      const { front, recommendedIndex } = searchNight(input)
      expect(front.length).toBeGreaterThan(0)
      expect(recommendedIndex).toBeLessThan(front.length)
      for (const point of front) {
        const outcome = simulateNight({ ...input, decisions: point.decisions })
        expect(point.depart01).toBeCloseTo(outcome.depart01 ?? 0, 9)
        expect(point.cost).toBeCloseTo(outcome.cost, 9)
        expect(point.comfortMarginK).toBeCloseTo(outcome.sleepers[0]?.marginK ?? 0, 9)
        expect(point.legMarginWh).toBeCloseTo(outcome.leg?.marginWh ?? 0, 6)
      }
      const strictlyBeaten = front.filter((a) =>
        front.some(
          (b) =>
            b !== a &&
            Math.min(b.comfortMarginK, 6) > Math.min(a.comfortMarginK, 6) + 0.1 &&
            (b.depart01 ?? 0) > (a.depart01 ?? 0) + 0.001 &&
            b.cost < a.cost - 0.01 &&
            (b.moves ?? 0) < (a.moves ?? 0),
        ),
      )
      expect(strictlyBeaten).toEqual([])
    },
  )

  it('recommends a plan that is warm and makes the leg where there is one (scenario a, night 1)', () => {
    const { front, recommendedIndex, reason, sensitivity } = searchNight(searched(0))
    const chosen = front[recommendedIndex]
    expect(reason).toBe('warm-and-leg')
    expect(chosen?.comfortMarginK).toBeGreaterThanOrEqual(0)
    expect(chosen?.legMarginWh).toBeGreaterThanOrEqual(0)
    expect(sensitivity?.colder.comfortMarginK).toBeLessThan(chosen?.comfortMarginK ?? 0)
    expect(sensitivity?.thirstier.legMarginWh).toBeLessThan(chosen?.legMarginWh ?? 0)
  })

  it('takes the stop rather than a cold night (scenario a, night 2)', () => {
    const { front, recommendedIndex, reason } = searchNight(searched(1))
    expect(reason).toBe('warm-with-stop')
    expect(front[recommendedIndex]?.comfortMarginK).toBeGreaterThanOrEqual(0)
  })

  it('puts the leg first where warmth and leg exclude each other and there is no charger on the way', () => {
    const input = searched(1)
    const { front, recommendedIndex, reason } = searchNight({
      ...input,
      bedHeaters: [],
      leg: input.leg === null ? null : { ...input.leg, fastChargers: [] },
    })
    expect(reason).toBe('leg-first')
    expect(front[recommendedIndex]?.legMarginWh).toBeGreaterThanOrEqual(0)
  })

  it('gives the same answer each time', () => {
    expect(searchNight(searched(2))).toEqual(searchNight(searched(2)))
  })

  it('offers no plan with stale air where a fresher one keeps people as warm', () => {
    const { front } = searchNight(searched(2))
    for (const point of front) {
      const outcome = simulateNight({ ...searched(2), decisions: point.decisions })
      const asleep = outcome.series.co2Ppm.filter((_, row) => {
        const at = outcome.series.atUtc[row] ?? 0
        return at > searched(2).sleepFromUtc && at <= searched(2).sleepToUtc
      })
      expect(Math.max(...asleep)).toBeLessThan(2500)
    }
  })

  it('finds a plan on any random night (seeds 1 to 12)', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const { front, evaluated } = searchNight(randomNight(seed))
      expect(front.length, `seed ${seed}`).toBeGreaterThan(0)
      expect(evaluated).toBeGreaterThanOrEqual(front.length)
    }
  })
})

const set = (id: string, comfortC: number, coverClo: number, moves: number, litres: number): BeddingSet => ({
  id,
  bySleeper: [{ sleeperId: 'one', bedding: { comfortC, coverClo, matM2KPerW: 0.9 } }],
  moves,
  volumeMm3: litres * 1e6,
})
const SUMMER = set('summer bag', 8, 3, 1, 10)
const WINTER = set('winter bag', -9, 7, 2, 25)
const BOTH = set('both', -18, 10, 3, 35)
const withSets = (index: number, beddingSets: readonly BeddingSet[]): NightInput => ({
  ...searched(index),
  beddingSets,
})

describe('the choice of bedding', () => {
  it('simulating a plan under its set is what the search promised, and its moves are those of set and covers', () => {
    const input = withSets(1, [SUMMER, WINTER, BOTH])
    const { front } = searchNight(input)
    expect(new Set(front.map(({ decisions }) => decisions.beddingSetId)).size).toBeGreaterThan(1)
    for (const point of front) {
      const outcome = simulateNight({ ...input, decisions: point.decisions })
      expect(point.comfortMarginK).toBeCloseTo(outcome.sleepers[0]?.marginK ?? 0, 9)
      const chosen = [SUMMER, WINTER, BOTH].find(({ id }) => id === point.decisions.beddingSetId)
      expect(point.moves).toBe((chosen?.moves ?? 0) + (point.decisions.covers ? input.cabin.panes.length : 0))
      expect(point.beddingVolumeMm3).toBe(chosen?.volumeMm3)
    }
  })

  it('a warmer set makes the recommended night cheaper, and is named as a reason', () => {
    const light = searchNight(withSets(0, [SUMMER]))
    const choice = searchNight(withSets(0, [SUMMER, WINTER, BOTH]))
    const chosen = choice.front[choice.recommendedIndex]
    expect(chosen?.decisions.beddingSetId).not.toBe('summer bag')
    expect(chosen?.legMarginWh ?? -1).toBeGreaterThanOrEqual(0)
    expect(chosen?.cost ?? Infinity).toBeLessThan((light.front[light.recommendedIndex]?.cost ?? 0) - 1)
    expect(choice.reasons?.some((reason) => reason.code === 'bedding')).toBe(true)
  })

  it('takes the set with fewer moves where both are warm', () => {
    const mild: NightInput = {
      ...withSets(0, [SUMMER, BOTH]),
      weather: searched(0).weather.map((row) => ({ ...row, tempC: 16 })),
      sleepers: [sleeper({ sleeps: 'warm' })],
    }
    const { front, recommendedIndex } = searchNight(mild)
    expect(front[recommendedIndex]?.decisions.beddingSetId).toBe('summer bag')
  })

  it('of two sets alike in warmth and moves keeps the smaller', () => {
    const bulky = { ...WINTER, id: 'bulky', volumeMm3: 60e6 }
    const { front } = searchNight(withSets(0, [bulky, WINTER]))
    expect(front.map(({ decisions }) => decisions.beddingSetId)).not.toContain('bulky')
  })

  it('a set that is not the night’s is a programmer’s error', () => {
    const input = withSets(0, [WINTER])
    expect(() => simulateNight({ ...input, decisions: { ...input.decisions, beddingSetId: 'none' } })).toThrow()
  })
})

describe('covers, profile, current and charge limit in the search', () => {
  it('covers aboard are tried up and down, and cost a handling for each pane', () => {
    const { front } = searchNight({ ...searched(1), coversOwned: true, coverMoves: 3 })
    const moves = new Set(front.map((point) => `${point.decisions.covers}:${point.moves}`))
    expect(moves).toEqual(new Set(['true:3', 'false:0']))
    const bare = searchNight({ ...searched(1), coversOwned: false })
    expect(bare.front.every(({ decisions }) => !decisions.covers)).toBe(true)
  })

  it('warms up before rising and before unplugging, and is off once unplugged, in some plan of the front', () => {
    const base = searched(0)
    const input: NightInput =
      base.supply === null ? base : { ...base, supply: { ...base.supply, unplugUtc: base.sleepToUtc } }
    const { front } = searchNight(input)
    const warming = front.filter(({ decisions }) => {
      const last = decisions.setPoints.at(-1)
      const before = decisions.setPoints.at(-2)
      return last?.tempC === null && before?.tempC !== null && (before?.fromUtc ?? Infinity) < input.sleepToUtc
    })
    expect(warming.length).toBeGreaterThan(0)
    const coldest = Math.min(...front.map(({ risingC }) => risingC ?? 0))
    expect(Math.max(...warming.map(({ risingC }) => risingC ?? 0))).toBeGreaterThan(coldest + 4)
  })

  it('asks for no more current than fills the battery, where energy is not paid for by the unit', () => {
    const base = searched(0)
    const input: NightInput = {
      ...base,
      leg: null,
      heater: { ...base.heater, kind: 'none' },
      battery: base.battery === null ? null : { ...base.battery, arrive01: 0.85 },
      supply: base.supply === null ? null : { ...base.supply, pricePerKWh: null, fixedPrice: 10 },
    }
    const { front, recommendedIndex, reasons } = searchNight(input)
    const chosen = front[recommendedIndex]
    expect(reasons?.some(({ code }) => code === 'less-current')).toBe(true)
    const least = simulateNight({ ...input, decisions: { ...(chosen?.decisions ?? input.decisions) } })
    const most = simulateNight({ ...input, decisions: { ...(chosen?.decisions ?? input.decisions), currentA: null } })
    expect(least.depart01).toBeCloseTo(most.depart01 ?? 0, 2)
    expect(least.wiringLossWh).toBeLessThan(most.wiringLossWh)
  })

  it('charges only as far as the leg asks where each unit costs (scenario a, night 2 with a short leg)', () => {
    const base = searched(1)
    const input: NightInput = {
      ...base,
      leg: base.leg === null ? null : { ...base.leg, distanceM: 30_000 },
      supply: base.supply === null ? null : { ...base.supply, pricePerKWh: 0.5 },
    }
    const { front, recommendedIndex } = searchNight(input)
    expect(front[recommendedIndex]?.decisions.chargeLimit01).toBeLessThan(input.battery?.chargeLimit01 ?? 0)
  })

  it('cools a hot night where the heater can, and counts too hot as discomfort', () => {
    const base = searched(0)
    const input: NightInput = {
      ...base,
      weather: base.weather.map((row) => ({ ...row, tempC: 30 })),
      heater: { ...base.heater, kind: 'heat-pump', canCool: true, maxHeatW: 4000 },
      sleepers: [sleeper({ bedding: { comfortC: null, coverClo: 0.5, matM2KPerW: 0.1 } })],
    }
    const { front, recommendedIndex } = searchNight(input)
    const chosen = front[recommendedIndex]
    expect(chosen?.decisions.setPoints.some(({ tempC }) => tempC !== null)).toBe(true)
    expect(chosen?.comfortMarginK ?? 0).toBeGreaterThan(Math.min(...front.map((point) => point.comfortMarginK)))
  })
})

describe('bed heat', () => {
  it('comes first: an underblanket makes a bed warm for under an eighth of what heating the air to the same warmth takes', () => {
    const usableWh = 60_000
    const base = night()
    const input: NightInput = {
      ...base,
      supply: null,
      sleepers: [sleeper({ bedding: { comfortC: 0, coverClo: 4.5, matM2KPerW: 0.9 } })],
      bedHeaters: [{ id: 'blanket', kind: 'underblanket', powerW: 50 }],
      battery: base.battery === null ? null : { ...base.battery, usableWh, arrive01: 0.8 },
    }
    const { front, recommendedIndex, reasons } = searchNight(input)
    const used = (depart01: number | null): number => (0.8 - (depart01 ?? 0)) * usableWh
    const warm = front.filter((point) => point.comfortMarginK >= 0)
    const least = warm.toSorted((left, right) => used(left.depart01) - used(right.depart01))[0]
    expect(least?.decisions.bedHeaterIds).toEqual(['blanket'])
    // The same margin by air alone, found by trying every half degree.
    const byAir = Array.from({ length: 30 }, (_, index) => 2 + index / 2)
      .map((tempC) =>
        simulateNight({
          ...input,
          decisions: { ...input.decisions, bedHeaterIds: [], setPoints: [{ fromUtc: at(3), tempC }] },
        }),
      )
      .find(({ sleepers }) => (sleepers[0]?.marginK ?? -Infinity) >= (least?.comfortMarginK ?? Infinity))
    expect(used(least?.depart01 ?? null)).toBeLessThan(used(byAir?.depart01 ?? 0.8) / 8)
    expect(front[recommendedIndex]?.decisions.bedHeaterIds).toEqual(['blanket'])
    expect(reasons).toContainEqual({ code: 'bed-heat-first', valueW: 50 })
  })
})

describe('the front', () => {
  it('is what an obvious quadratic twin keeps, on 50 random sets (seeds 1 to 50)', () => {
    for (let seed = 1; seed <= 50; seed += 1) {
      const random = randomFrom(seed)
      const points = Array.from({ length: 60 }, (): Scored => ({
        decisions: searched(0).decisions,
        comfortMarginK: Math.floor(random() * 8) - 3,
        depart01: Math.floor(random() * 10) / 10,
        legMarginWh: null,
        cost: Math.floor(random() * 6),
        moves: Math.floor(random() * 4),
        beddingVolumeMm3: 0,
        risingC: 0,
        sleepers: 1,
        supplyWh: 0,
        wiringWh: 0,
        co2MaxPpm: 800,
        legReachable: true,
        legNeedWh: 0,
        heatingWh: 2 * Math.floor(random() * 500),
      }))
      const worth = (p: Scored): number[] => [Math.min(p.comfortMarginK, 6), p.depart01 ?? 0, -p.cost, -p.moves]
      const beaten = (p: Scored): boolean =>
        points.some((q) => {
          const [a, b] = [worth(q), worth(p)]
          const noWorse = a.every((value, index) => value >= (b[index] ?? 0))
          const better = a.some((value, index) => value > (b[index] ?? 0))
          return noWorse && (better || (q !== p && q.heatingWh < p.heatingWh))
        })
      const kept = new Set(nonDominated(points))
      for (const point of points) expect(kept.has(point), `seed ${seed}`).toBe(!beaten(point))
    }
  })
})
