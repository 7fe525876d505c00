import { describe, expect, it } from 'vitest'
import { searchNight, simulateNight } from '../../../shared/climate/index.ts'
import { nonDominated } from '../../../shared/climate/optimise/front.ts'
import { randomFrom, randomNight, sleeper } from './night-fixture.ts'
import { SCENARIO_NIGHTS } from './scenario-nights.ts'
import { scenarioInput } from './scenario-input.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
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
            b.cost < a.cost - 0.01,
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
        co2MaxPpm: 800,
        legReachable: true,
        legNeedWh: 0,
        heatingWh: random() * 1000,
      }))
      const worth = (p: Scored): number[] => [Math.min(p.comfortMarginK, 6), p.depart01 ?? 0, -p.cost]
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
