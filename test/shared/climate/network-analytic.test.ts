import { describe, expect, it } from 'vitest'
import {
  blankFactor,
  blankStage,
  BED,
  FLOOR,
  FRONT,
  MASS,
  factorise,
  stages,
} from '../../../shared/climate/network-step.ts'
import { buildNetwork } from '../../../shared/climate/network.ts'
import { airJPerM3K } from '../../../shared/climate/network-air.ts'
import { cabinDefaults } from '../../../shared/climate/index.ts'
import type { AirExchange } from '../../../shared/climate/network-step.ts'
import type { Network } from '../../../shared/climate/network.ts'

/** Joined so firmly that nodes move as one. */
const FIRM_W_PER_K = 1e7

const bare = (over: Partial<Network>): Network => ({
  panes: [],
  frontJPerK: 40_000,
  bedJPerK: 40_000,
  massJPerK: 25_000,
  floorJPerK: 20_000,
  frontBodyWPerK: 16.665,
  bedBodyWPerK: 16.665,
  frontMassWPerK: FIRM_W_PER_K,
  bedMassWPerK: FIRM_W_PER_K,
  bedFloorWPerK: FIRM_W_PER_K,
  floorOutWPerK: 0,
  mixingStillWPerK: FIRM_W_PER_K,
  mixingFanWPerK: FIRM_W_PER_K,
  outerFilmWPerM2K: 10,
  scale: 1,
  shellWPerK: 33.33,
  ...over,
})

/** Runs a network at a fixed outside temperature with constant heat; gives all temperatures after a time. */
function runFor(
  network: Network,
  start: number[],
  outsideC: number,
  heatW: number,
  seconds: number,
  stepS: number,
): number[] {
  const air: AirExchange = { frontWPerK: 0, bedWPerK: 0, drawnWPerK: 0, mixingWPerK: network.mixingStillWPerK }
  const size = 4 + network.panes.length
  const [first, second, right] = [blankStage(size), blankStage(size), new Float64Array(size)]
  const factor = blankFactor(network)
  factorise(factor, network, air, stepS)
  for (const { sources, hold } of [first, second]) {
    Object.assign(hold, { heatToC: Infinity, mostHeatW: heatW })
    sources[FRONT] = network.frontBodyWPerK * outsideC
    sources[BED] = network.bedBodyWPerK * outsideC
    sources[FLOOR] = network.floorOutWPerK * outsideC
    network.panes.forEach((pane, index) => {
      sources[4 + index] = pane.outerWPerK * outsideC
    })
  }
  const temps = Float64Array.from(start)
  for (let step = 0; step < Math.round(seconds / stepS); step += 1) {
    stages(factor, temps, { first, second, right })
    temps.set(second.temps)
  }
  return [...temps]
}

describe('the network against analytic solutions', () => {
  it.each([1, 2, 3, 5])('cools freely by the exponential of one node after %d h, within 0.1 %%', (hours) => {
    // FASTSim cabin: 33.33 W/K, 125 kJ/K, time constant 62.5 min; from 18 to -5 °C.
    const exact = -5 + 23 * Math.exp((-33.33 * hours * 3600) / 125_000)
    const ours = runFor(bare({}), [18, 18, 18, 18], -5, 0, hours * 3600, 60)
    expect(Math.abs((ours[BED] ?? 0) - exact)).toBeLessThan(23 * 0.001)
  })

  it.each([0.5, 1, 4])(
    'warms under a step of heat by the exponential of one node after %d h, within 0.1 %%',
    (hours) => {
      const steady = -5 + 1000 / 33.33
      const exact = steady + (-5 - steady) * Math.exp((-33.33 * hours * 3600) / 125_000)
      const ours = runFor(bare({}), [-5, -5, -5, -5], -5, 1000, hours * 3600, 60)
      expect(Math.abs((ours[FRONT] ?? 0) - exact)).toBeLessThan(30 * 0.001)
    },
  )

  it.each([0.2, 1, 4])('follows both eigenvalues of air and mass after %d h, within 0.1 %%', (hours) => {
    const air = 90_000
    const mass = 110_000
    const shell = 33.33
    const joint = 80
    const network = bare({
      frontJPerK: air / 2,
      bedJPerK: air / 2 - 1,
      floorJPerK: 1,
      massJPerK: mass,
      frontMassWPerK: joint / 2,
      bedMassWPerK: joint / 2,
    })
    // d/dt (a, m) = [[-(shell + joint) / air, joint / air], [joint / mass, -joint / mass]] (a, m), from (23, 23) over outside.
    const [a11, a12, a21, a22] = [-(shell + joint) / air, joint / air, joint / mass, -joint / mass]
    const half = (a11 + a22) / 2
    const root = Math.sqrt(half * half - (a11 * a22 - a12 * a21))
    const seconds = hours * 3600
    const [fast, slow] = [half - root, half + root]
    const airAt = (from: number, slope: number) =>
      ((slope - slow * from) * Math.exp(fast * seconds) - (slope - fast * from) * Math.exp(slow * seconds)) /
      (fast - slow)
    const exactAir = airAt(23, a11 * 23 + a12 * 23)
    const exactMass = airAt(23, a21 * 23 + a22 * 23)
    const ours = runFor(network, [18, 18, 18, 18], -5, 0, seconds, 60)
    expect(Math.abs((ours[BED] ?? 0) + 5 - exactAir)).toBeLessThan(23 * 0.001)
    expect(Math.abs((ours[MASS] ?? 0) + 5 - exactMass)).toBeLessThan(23 * 0.001)
  })

  it('is stable and lands on the steady state at any step, up to a day', () => {
    const network = buildNetwork(cabinDefaults('estate'), 2, false, airJPerM3K(101_325))
    const start = Array.from({ length: 4 + network.panes.length }, () => 25)
    for (const stepS of [1, 60, 900, 3600, 86_400]) {
      const ours = runFor(network, start, -10, 0, 86_400 * 6, stepS)
      for (const tempC of ours) expect(tempC).toBeCloseTo(-10, 2)
    }
  })

  it('is of second order: a step half as long errs a quarter as much', () => {
    const network = bare({ frontMassWPerK: 40, bedMassWPerK: 40 })
    const from = [18, 18, 18, 18]
    const exact = runFor(network, from, -5, 0, 3600, 1)[MASS] ?? 0
    const wide = Math.abs((runFor(network, from, -5, 0, 3600, 600)[MASS] ?? 0) - exact)
    const narrow = Math.abs((runFor(network, from, -5, 0, 3600, 300)[MASS] ?? 0) - exact)
    expect(wide / narrow).toBeGreaterThan(3)
  })
})
