import highsLoader from 'highs'
import { describe, expect, it } from 'vitest'
import { airJPerM3K, leakageM3PerH, pressurePa } from '../../../shared/climate/network-air.ts'
import { cabinDefaults, searchNight } from '../../../shared/climate/index.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import {
  EMISSIVITY_01,
  BODY_SKY_VIEW_01,
  FLOOR_SHARE_01,
  FRONT_SHARE_01,
  INNER_FILM_W_PER_M2K,
  buildNetwork,
} from '../../../shared/climate/network.ts'
import { skyExchangeWPerM2K } from '../../../shared/climate/network-sky.ts'
import { TIME_LIMIT_MS, isDeep } from '../../support/generators/runs.ts'
import { at, night, randomFrom } from './night-fixture.ts'
import type { NightInput } from '../../../shared/climate/index.ts'

/** Ten nights on each change, all hundred in the deep run: each asks for a dense program of its own. */
const NIGHTS = isDeep ? 100 : 10
const STEP_S = 300
const TOLERANCE_01 = 0.005

/**
 * A night whose cheapest warmth is a linear program: resistance heat without standing load, fresh air, people or water on the glass;
 * constant wind, no fan (the mixing is then the same on and off only after the heating starts, so the night starts cold and level).
 * Comfort is an operative temperature of 0 °C at every step asleep; outside stays far below.
 */
function linearNight(seed: number): NightInput {
  const random = randomFrom(seed)
  const between = (low: number, high: number): number => low + (high - low) * random()
  const startC = between(-22, -12)
  const cabin = {
    ...cabinDefaults(random() < 0.5 ? 'estate' : 'crossover'),
    freshAirM3PerH: 0,
    lossScale: between(0.7, 1.6),
  }
  const base = night()
  return {
    ...base,
    arriveUtc: at(0),
    sleepFromUtc: at(2),
    sleepToUtc: at(7),
    departUtc: at(7.5),
    weather: [0, 10].map((hour) => ({
      atUtc: at(hour),
      tempC: hour === 0 ? startC : startC - between(0, 8),
      windMPerS: 1,
      humidity01: 0.1,
      cloud01: 1,
    })),
    cabin,
    heater: { ...base.heater, kind: 'resistance', awakeLoadW: 0, maxHeatW: between(2500, 5000) },
    sleepers: [],
    supply: null,
    battery: {
      usableWh: 1e6,
      reserve01: 0,
      chargeLimit01: 1,
      efficiency01: 1,
      overheadW: 0,
      coldOverheadW: 0,
      arrive01: 0.9,
      fastMaxW: 1,
    },
    arriveInsideC: startC,
    stepS: STEP_S,
  }
}

type Matrix = number[][]
const multiply = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => (b[0] ?? []).map((_, j) => row.reduce((sum, v, k) => sum + v * (b[k]?.[j] ?? 0), 0)))
const eye = (n: number): Matrix =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, j) => (i === j ? 1 : 0)))

/** Matrix exponential by scaling, Taylor and squaring: slow, obvious, and nothing of the engine's stepping. */
function exponential(a: Matrix): Matrix {
  const scaled = a.map((row) => row.map((v) => v / 1024))
  let sum = eye(a.length)
  let term = eye(a.length)
  for (let k = 1; k <= 12; k += 1) {
    term = multiply(term, scaled).map((row) => row.map((v) => v / k))
    sum = sum.map((row, i) => row.map((v, j) => v + (term[i]?.[j] ?? 0)))
  }
  for (let k = 0; k < 10; k += 1) sum = multiply(sum, sum)
  return sum
}

type Model = { readonly free: number[]; readonly response: number[]; readonly rowsAsleep: number[] }

/** Operative temperature at each row without heat, and its answer to 1 W in the step that ends k rows earlier. */
function modelOf(input: NightInput): Model {
  const prepared = prepareNight(input)
  const net = buildNetwork(input.cabin, 1, input.decisions.covers, prepared.airJPerM3K)
  const leakW = (leakageM3PerH(input.cabin) * airJPerM3K(pressurePa(input.elevationM))) / 3600
  const n = 4 + net.panes.length
  const capacity = [
    net.frontJPerK,
    net.bedJPerK,
    net.massJPerK,
    net.floorJPerK,
    ...net.panes.map((p) => p.capacityJPerK),
  ]
  const k: Matrix = eye(n).map((row) => row.map(() => 0))
  const add = (i: number, j: number, w: number): void => {
    const [ri, rj] = [k[i] ?? [], k[j] ?? []]
    ri[i] = (ri[i] ?? 0) + w
    rj[j] = (rj[j] ?? 0) + w
    ri[j] = (ri[j] ?? 0) - w
    rj[i] = (rj[i] ?? 0) - w
  }
  const toOutside = [
    net.frontBodyWPerK + 0.4 * leakW,
    net.bedBodyWPerK + 0.6 * leakW,
    0,
    net.floorOutWPerK,
    ...net.panes.map((p) => p.outerWPerK),
  ]
  add(0, 1, net.mixingFanWPerK)
  add(0, 2, net.frontMassWPerK)
  add(1, 2, net.bedMassWPerK)
  add(1, 3, net.bedFloorWPerK)
  net.panes.forEach((pane, index) => add(pane.atFront ? 0 : 1, 4 + index, pane.innerWPerK))
  toOutside.forEach((w, i) => {
    const row = k[i] ?? []
    row[i] = (row[i] ?? 0) + w
  })
  // Augmented state: temperatures, outside, its slope, sky loss per unit (constant over a step), heat.
  const skyW = (outsideC: number, sky: number): number[] => {
    const drop = (EMISSIVITY_01 * skyExchangeWPerM2K(outsideC, sky) * (outsideC - sky)) / net.outerFilmWPerM2K
    return [
      net.frontBodyWPerK * drop * BODY_SKY_VIEW_01,
      net.bedBodyWPerK * drop * BODY_SKY_VIEW_01,
      0,
      0,
      ...net.panes.map((p) => p.outerWPerK * drop * p.skyView01),
    ]
  }
  const size = n + 2 + n + 1
  const a: Matrix = Array.from({ length: size }, () => Array.from({ length: size }, () => 0))
  for (let i = 0; i < n; i += 1) {
    const row = a[i] ?? []
    for (let j = 0; j < n; j += 1) row[j] = -(k[i]?.[j] ?? 0) / (capacity[i] ?? 1)
    row[n] = (toOutside[i] ?? 0) / (capacity[i] ?? 1)
    row[n + 2 + i] = -1 / (capacity[i] ?? 1)
  }
  ;(a[0] ?? [])[size - 1] = 1 / net.frontJPerK
  ;(a[n] ?? [])[n + 1] = 1
  const step = exponential(a.map((row) => row.map((v) => v * STEP_S)))
  const wallM2 = input.cabin.bodyAreaM2 * (1 - FLOOR_SHARE_01) * (1 - FRONT_SHARE_01)
  const operative = (t: number[], outsideC: number): number => {
    const bed = t[1] ?? 0
    const wall = bed - (net.bedBodyWPerK / net.scale / wallM2 / INNER_FILM_W_PER_M2K) * (bed - outsideC)
    let [sum, weight] = [wallM2 * (wall + (t[2] ?? 0)), 2 * wallM2]
    net.panes.forEach((pane, index) => {
      if (pane.atFront) return
      sum +=
        pane.areaM2 *
        (bed - (pane.innerWPerK / net.scale / pane.areaM2 / INNER_FILM_W_PER_M2K) * (bed - (t[4 + index] ?? 0)))
      weight += pane.areaM2
    })
    return (bed + sum / weight) / 2
  }
  const advance = (state: number[]): number[] =>
    step.map((row) => row.reduce((sum, v, j) => sum + v * (state[j] ?? 0), 0))
  const free: number[] = []
  const startC = input.arriveInsideC ?? 0
  let temps = Array.from({ length: n }, () => startC)
  for (let row = 0; row < prepared.steps; row += 1) {
    const [from, to] = [prepared.outsideC[row] ?? 0, prepared.outsideC[row + 1] ?? 0]
    const sky = skyW((from + to) / 2, ((prepared.skyC[row] ?? 0) + (prepared.skyC[row + 1] ?? 0)) / 2)
    temps = advance([...temps, from, (to - from) / STEP_S, ...sky, 0]).slice(0, n)
    free.push(operative(temps, to))
  }
  const response: number[] = []
  let pulse = Array.from({ length: n }, () => 0)
  for (let row = 0; row < prepared.steps; row += 1) {
    pulse = advance([...pulse, 0, 0, ...Array.from({ length: n }, () => 0), row === 0 ? 1 : 0]).slice(0, n)
    response.push(operative(pulse, 0))
  }
  const rowsAsleep = free.flatMap((_, row) => {
    const atUtc = input.arriveUtc + (row + 1) * STEP_S
    return atUtc > input.sleepFromUtc && atUtc <= input.sleepToUtc ? [row] : []
  })
  return { free, response, rowsAsleep }
}

/** Least heat, Wh, by linear programming. */
function leastHeatWh(highs: Awaited<ReturnType<typeof highsLoader>>, input: NightInput): number {
  const { free, response, rowsAsleep } = modelOf(input)
  const last = Math.max(...rowsAsleep)
  const names = Array.from({ length: last + 1 }, (_, j) => `q${j}`)
  const rows = rowsAsleep.map((row) => {
    const terms = names.flatMap((name, j) =>
      j <= row ? [`${(1000 * (response[row - j] ?? 0)).toPrecision(12)} ${name}`] : [],
    )
    return `c${row}: ${terms.join(' + ')} >= ${(-(free[row] ?? 0)).toPrecision(12)}`
  })
  const bounds = names.map((name) => `0 <= ${name} <= ${(input.heater.maxHeatW / 1000).toPrecision(12)}`)
  const solved = highs.solve(
    `Minimize\nobj: ${names.join(' + ')}\nSubject To\n${rows.join('\n')}\nBounds\n${bounds.join('\n')}\nEnd`,
  )
  expect(solved.Status).toBe('Optimal')
  return solved.ObjectiveValue * 1000 * (STEP_S / 3600)
}

describe('the search against linear programming', () => {
  it(
    `comes within 0.5 % of the least heat on ${NIGHTS} random linear nights (seeds 1 to ${NIGHTS}), and never below it`,
    async () => {
      const highs = await highsLoader()
      let worst = 0
      for (let seed = 1; seed <= NIGHTS; seed += 1) {
        const input = linearNight(seed)
        const least = leastHeatWh(highs, input)
        const { front } = searchNight(input, { gapsMm: [0], profiles: 'followed', setPointsC: [2, 4, 6, 8, 12] })
        const warm = front.filter((point) => point.comfortMarginK >= -0.01)
        const used = Math.min(...warm.map((point) => (0.9 - (point.depart01 ?? 0)) * 1e6))
        const over = used / least - 1
        if (Math.abs(over) > TOLERANCE_01)
          throw new Error(`seed ${seed}: ours ${used.toFixed(0)} Wh, least ${least.toFixed(0)} Wh`)
        worst = Math.max(worst, over)
      }
      expect(worst).toBeLessThan(TOLERANCE_01)
    },
    TIME_LIMIT_MS,
  )
})
