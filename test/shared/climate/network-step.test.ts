/** One step of the network against the same equations solved as one dense matrix, node by node. */
import { describe, expect, it } from 'vitest'
import {
  BED,
  FIRST_PANE,
  FLOOR,
  FRONT,
  GAMMA,
  MASS,
  REST,
  blankFactor,
  blankStage,
  factorise,
  forget,
  stages,
} from '../../../shared/climate/network-step.ts'
import type { AirExchange, Hold } from '../../../shared/climate/network-step.ts'
import { blend, blendOf } from '../../../shared/climate/network-blend.ts'
import { buildNetwork } from '../../../shared/climate/network.ts'
import type { Network } from '../../../shared/climate/network.ts'
import { cabinDefaults } from '../../../shared/climate/index.ts'
import { randomFrom } from './night-fixture.ts'

const BODIES = ['hatchback', 'estate', 'crossover', 'van-bare', 'van-insulated'] as const

/** Conductances between nodes and to the outside, W/K, written out pair by pair. */
function matrixOf(network: Network, air: AirExchange): number[][] {
  const size = FIRST_PANE + network.panes.length
  const k = Array.from({ length: size }, () => Array.from({ length: size }, () => 0))
  const put = (row: number, column: number, wPerK: number): void => {
    const cells = k[row]
    if (cells !== undefined) cells[column] = (cells[column] ?? 0) + wPerK
  }
  const join = (one: number, other: number, wPerK: number): void => {
    put(one, one, wPerK)
    put(other, other, wPerK)
    put(one, other, -wPerK)
    put(other, one, -wPerK)
  }
  join(FRONT, BED, air.mixingWPerK)
  join(FRONT, MASS, network.frontMassWPerK)
  join(BED, MASS, network.bedMassWPerK)
  join(BED, FLOOR, network.bedFloorWPerK)
  network.panes.forEach((pane, index) => {
    join(pane.atFront ? FRONT : BED, FIRST_PANE + index, pane.innerWPerK)
    put(FIRST_PANE + index, FIRST_PANE + index, pane.outerWPerK)
  })
  put(FLOOR, FLOOR, network.floorOutWPerK)
  put(FRONT, FRONT, network.frontBodyWPerK + air.frontWPerK)
  put(BED, BED, network.bedBodyWPerK + air.bedWPerK)
  // Fresh air drawn enters at the front, passes the bed at the front's temperature and leaves from there.
  put(FRONT, FRONT, air.drawnWPerK)
  put(BED, BED, air.drawnWPerK)
  put(BED, FRONT, -air.drawnWPerK)
  return k
}

/** Gauss with the largest pivot. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0])
  for (let column = 0; column < rows.length; column += 1) {
    const pivot = rows
      .map((row, index) => ({ index, size: index < column ? -1 : Math.abs(row[column] ?? 0) }))
      .reduce((best, here) => (here.size > best.size ? here : best)).index
    const [upper, lower] = [rows[column], rows[pivot]]
    if (upper === undefined || lower === undefined) throw new Error('a square matrix')
    rows[column] = lower
    rows[pivot] = upper
    const lead = lower[column] ?? 1
    for (let other = 0; other < rows.length; other += 1) {
      const row = rows[other]
      if (other === column || row === undefined) continue
      const factor = (row[column] ?? 0) / lead
      rows[other] = row.map((value, index) => value - factor * (lower[index] ?? 0))
    }
  }
  return rows.map((row, index) => (row.at(-1) ?? 0) / (row[index] ?? 1))
}

const capacityOf = (network: Network): number[] => [
  network.frontJPerK,
  network.bedJPerK,
  network.massJPerK,
  network.floorJPerK,
  ...network.panes.map((pane) => pane.capacityJPerK),
]

type Problem = {
  readonly network: Network
  readonly air: AirExchange
  readonly stepS: number
  readonly start: readonly number[]
  readonly sources: readonly [readonly number[], readonly number[]]
  readonly holds: readonly [Hold, Hold]
}

/** Both stages by the dense matrix; the heat that a hold asks for by trying one watt. */
function slow({ network, air, stepS, start, sources, holds }: Problem): { temps: number[]; heatW: number }[] {
  const capacity = capacityOf(network)
  const matrix = matrixOf(network, air).map((row, i) =>
    row.map((value, j) => (i === j ? value + (capacity[i] ?? 0) / (GAMMA * stepS) : value)),
  )
  const stage = (from: readonly number[], source: readonly number[], hold: Hold) => {
    const at = (heatW: number): number[] =>
      solved(
        matrix,
        from.map(
          (tempC, i) => ((capacity[i] ?? 0) * tempC) / (GAMMA * stepS) + (source[i] ?? 0) + (i === FRONT ? heatW : 0),
        ),
      )
    const freeC = at(0)[FRONT] ?? 0
    const perW = (at(1)[FRONT] ?? 0) - freeC
    let heatW = 0
    if (freeC < hold.heatToC) heatW = Math.min(hold.mostHeatW, (hold.heatToC - freeC) / perW)
    if (freeC > hold.coolToC) heatW = -Math.min(hold.mostCoolW, (freeC - hold.coolToC) / perW)
    return { temps: at(heatW), heatW }
  }
  const first = stage(start, sources[0], holds[0])
  const carried = start.map((tempC, i) => tempC + ((1 - GAMMA) / GAMMA) * ((first.temps[i] ?? 0) - tempC))
  return [first, stage(carried, sources[1], holds[1])]
}

function quick(problem: Problem, factor = blankFactor(problem.network)): { temps: number[]; heatW: number }[] {
  const size = problem.start.length
  const work = { first: blankStage(size), second: blankStage(size), right: new Float64Array(size) }
  ;[work.first, work.second].forEach((stage, index) => {
    stage.sources.set(problem.sources[index] ?? [])
    Object.assign(stage.hold, problem.holds[index])
  })
  factorise(factor, problem.network, problem.air, problem.stepS)
  stages(factor, Float64Array.from(problem.start), work)
  return [work.first, work.second].map(({ temps, heatW }) => ({ temps: [...temps], heatW }))
}

/** How far both answers lie apart at most: K, and kW of heat. */
function apart(problem: Problem, factor?: ReturnType<typeof blankFactor>): number {
  const ours = quick(problem, factor)
  return slow(problem).reduce((most, stage, index) => {
    const heatKW = Math.abs((ours[index]?.heatW ?? Infinity) - stage.heatW) / 1000
    return stage.temps.reduce(
      (worst, tempC, node) => Math.max(worst, Math.abs((ours[index]?.temps[node] ?? Infinity) - tempC)),
      Math.max(most, heatKW),
    )
  }, 0)
}
/** Rounding of both solvers. */
const SAME = 1e-7

function problemOf(seed: number, over: Partial<Problem> = {}): Problem {
  const random = randomFrom(seed)
  const between = (low: number, high: number): number => low + (high - low) * random()
  const network = buildNetwork(
    cabinDefaults(BODIES[seed % BODIES.length] ?? 'estate'),
    between(0, 10),
    seed % 2 === 0,
    1200,
  )
  const size = FIRST_PANE + network.panes.length
  const list = (low: number, high: number): number[] => Array.from({ length: size }, () => between(low, high))
  const hold = (): Hold => ({
    heatToC: between(0, 15),
    mostHeatW: between(0, 4000),
    coolToC: between(15, 25),
    mostCoolW: between(0, 4000),
  })
  return {
    network,
    air: {
      frontWPerK: between(0, 20),
      bedWPerK: between(0, 20),
      drawnWPerK: between(0, 40),
      mixingWPerK: between(30, 200),
    },
    stepS: between(1, 900),
    start: list(-20, 40),
    sources: [list(-500, 1500), list(-500, 1500)],
    holds: [hold(), hold()],
    ...over,
  }
}

describe('one step of the network', () => {
  it('is what the dense matrix gives, with heating, cooling and neither (seeds 1 to 40)', () => {
    const seen = { heats: 0, cools: 0, rests: 0 }
    for (let seed = 1; seed <= 40; seed += 1) {
      const problem = problemOf(seed)
      expect(apart(problem), `seed ${seed}`).toBeLessThan(SAME)
      for (const { heatW } of quick(problem)) {
        if (heatW > 0) seen.heats += 1
        else if (heatW < 0) seen.cools += 1
        else seen.rests += 1
      }
    }
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(3)
  })

  it('holds the front air exactly at its aim where the power is enough, and takes all of it where it is not', () => {
    const sources = problemOf(3).sources.map((list) => list.map(() => 0))
    const still = {
      ...problemOf(3),
      start: problemOf(3).start.map(() => 10),
      sources: [sources[0] ?? [], sources[1] ?? []],
    } as const
    const held = (hold: Partial<Hold>) =>
      quick({
        ...still,
        holds: [
          { ...REST, ...hold },
          { ...REST, ...hold },
        ],
      })
    const warm = held({ heatToC: 18, mostHeatW: 1e6 })
    expect(warm.map(({ temps }) => temps[FRONT])).toEqual([expect.closeTo(18, 9), expect.closeTo(18, 9)])
    expect(held({ heatToC: 18, mostHeatW: 50 }).map(({ heatW }) => heatW)).toEqual([50, 50])
    const cool = held({ coolToC: -30, mostCoolW: 1e6 })
    expect(cool.map(({ temps }) => temps[FRONT])).toEqual([expect.closeTo(-30, 9), expect.closeTo(-30, 9)])
    expect(held({ coolToC: -30, mostCoolW: 50 }).map(({ heatW }) => heatW)).toEqual([-50, -50])
    expect(held({}).map(({ heatW }) => heatW)).toEqual([0, 0])
  })

  it('makes its factor anew whenever anything that is in it changed', () => {
    const base = problemOf(7)
    const factor = blankFactor(base.network)
    expect(apart(base, factor)).toBeLessThan(SAME)
    expect(apart({ ...base, stepS: base.stepS * 2 }, factor)).toBeLessThan(SAME)
    for (const part of ['frontWPerK', 'bedWPerK', 'drawnWPerK', 'mixingWPerK'] as const)
      expect(apart({ ...base, air: { ...base.air, [part]: base.air[part] + 25 } }, factor), part).toBeLessThan(SAME)
    expect(apart(base, factor)).toBeLessThan(SAME)
    const other = problemOf(8, { stepS: base.stepS, air: base.air })
    expect(apart(other, blankFactor(other.network))).toBeLessThan(SAME)
    const windier = buildNetwork(cabinDefaults('crossover'), 9, false, 1200)
    expect(apart({ ...base, network: windier }, factor)).toBeLessThan(SAME)
  })

  it('makes it anew for a network that was rewritten in place once it is told to forget', () => {
    const base = problemOf(7)
    const network = blendOf(base.network)
    const problem = { ...base, network }
    const factor = blankFactor(network)
    expect(apart(problem, factor)).toBeLessThan(SAME)
    const [low, high] = [2, 6].map((wind) => buildNetwork(cabinDefaults('crossover'), wind, false, 1200))
    if (low === undefined || high === undefined) throw new Error('two winds')
    blend(network, low, high, 0.25)
    forget(factor)
    expect(apart(problem, factor)).toBeLessThan(SAME)
  })
})

describe('a network between two winds', () => {
  it('lies on the straight line between them in everything that wind moves', () => {
    const cabin = { ...cabinDefaults('van-bare'), windFactorPerMPerS: 0.05, lossBareWPerK: 90 }
    const [low, high] = [3, 7].map((wind) => buildNetwork(cabin, wind, false, 1200))
    if (low === undefined || high === undefined) throw new Error('two winds')
    const into = blendOf(low)
    expect(into).toEqual(low)
    expect(into.panes[0]).not.toBe(low.panes[0])
    blend(into, low, high, 0.25)
    const { panes, ...rest } = into
    for (const [name, value] of Object.entries(rest)) {
      const [from, to] = [Object.entries(low), Object.entries(high)].map(
        (list) => list.find(([other]) => other === name)?.[1],
      )
      if (typeof from !== 'number' || typeof to !== 'number') throw new Error(`${name} is a number`)
      expect(value, name).toBeCloseTo(from + (to - from) * 0.25, 9)
    }
    panes.forEach((pane, index) => {
      const [from, to] = [low.panes[index], high.panes[index]]
      expect(pane.innerWPerK).toBeCloseTo(0.75 * (from?.innerWPerK ?? 0) + 0.25 * (to?.innerWPerK ?? 0), 9)
      expect(pane.outerWPerK).toBeCloseTo(0.75 * (from?.outerWPerK ?? 0) + 0.25 * (to?.outerWPerK ?? 0), 9)
      expect(pane.capacityJPerK).toBe(from?.capacityJPerK)
    })
  })
})
