/** The thermostat of one part: what it may give, what it takes, and when the air comes to its aim, each by hand. */
import { describe, expect, it } from 'vitest'
import { EVAPORATION_J_PER_KG } from '../../../shared/climate/moisture.ts'
import { BED, FRONT, GAMMA } from '../../../shared/climate/network-step.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { startRun } from '../../../shared/climate/night-state.ts'
import type { Drive, Part, Run } from '../../../shared/climate/night-state.ts'
import { crosses, driveOf, dryingW, holdFront, meetAim, takePower } from '../../../shared/climate/night-thermostat.ts'
import type { NightInput, WeatherStep } from '../../../shared/climate/index.ts'
import { HOUR_S, at, night } from './night-fixture.ts'

const weather = (fromC: number, toC: number): WeatherStep[] =>
  [fromC, toC].map((tempC, hour) => ({ atUtc: at(hour), tempC, windMPerS: 1, humidity01: 0.8, cloud01: 1 }))
/** A run at the start of one hour in which the outside air goes straight from one temperature to another. */
function runFrom(fromC: number, toC: number, heater: Partial<NightInput['heater']> = {}): Run {
  const input = night({
    weather: weather(fromC, toC),
    stepS: HOUR_S,
    heater: { ...night().heater, cop: [{ outsideC: 0, value: 2 }], ...heater },
  })
  return startRun(prepareNight(input), input.decisions, false)
}
const part = (from01: number, to01: number): Part => ({
  knot: 0,
  from01,
  to01,
  atUtc: at(from01),
  stepS: (to01 - from01) * HOUR_S,
})
const WHOLE = part(0, 1)
const HEATING: Drive = { setC: 20, mostHeatW: 1000, heatCop: 2, mostCoolW: 0, coolFromC: Infinity, coolCop: 1 }
const BOTH: Drive = { ...HEATING, mostCoolW: 800, coolFromC: 25, coolCop: 3 }

describe('what a heater may do', () => {
  it('is what the electricity left by fan and controls makes at the curve, and no more than it is made for', () => {
    const run = runFrom(0, 0)
    // (1250 - 250) W at 2.
    expect(driveOf(run, 21, 1250, WHOLE)).toEqual({ ...HEATING, setC: 21, mostHeatW: 2000 })
    expect(driveOf(run, 21, Infinity, WHOLE).mostHeatW).toBe(5000)
    expect(driveOf(run, 21, 3000, WHOLE).mostHeatW).toBe(5000)
  })

  it('goes by the outside air half way through the part', () => {
    const cop = [
      { outsideC: -10, value: 1 },
      { outsideC: 0, value: 2 },
    ]
    const drive = driveOf(runFrom(0, -10, { cop }), 21, 1250, part(0.2, 0.6))
    // Half way is -4 °C: 1.6.
    expect(drive.heatCop).toBeCloseTo(1.6, 9)
    expect(drive.mostHeatW).toBeCloseTo(1600, 9)
  })

  it('cools in dry air with all it has, from the aim at the part’s start', () => {
    const run = runFrom(25, 45, { canCool: true })
    run.moisture.ratio = 0
    // 2.4 half way between 3 at 25 °C and 1.8 at 45 °C.
    const drive = driveOf(run, 22, 1250, WHOLE)
    expect(drive.coolCop).toBeCloseTo(2.4, 9)
    expect(drive.mostCoolW).toBeCloseTo(2400, 9)
    expect(drive.coolFromC).toBe(22)
    expect(driveOf(run, 15, 1250, WHOLE).coolFromC).toBe(18)
    expect(driveOf(run, 22, 9000, WHOLE).mostCoolW).toBe(5000)
    // At 20 °C outside it eases off by three kelvins for each that is missing.
    expect(driveOf(runFrom(20, 30, { canCool: true }), 22, 1250, part(0, 0.5)).coolFromC).toBe(28)
    expect(driveOf(runFrom(20, 30, { canCool: true }), 22, 1250, part(0.1, 0.5)).coolFromC).toBeCloseTo(25, 9)
  })

  it('spends part of its cooling on the water in damp air', () => {
    const run = runFrom(25, 45, { canCool: true })
    run.temps[BED] = 24
    run.moisture.ratio = run.wet.coilRatio + 0.004
    // A W of sensible cooling brings 1 / (1006 x 16) kg/s to the coil, each with 4 g/kg too much.
    const latent = (EVAPORATION_J_PER_KG * 0.004) / (1006 * 16)
    expect(driveOf(run, 22, 1250, WHOLE).mostCoolW).toBeCloseTo(2400 / (1 + latent), 6)
  })
})

describe('what holds the front air', () => {
  it('is nothing while the heater is off', () => {
    const run = runFrom(0, 0)
    holdFront(run, HEATING, WHOLE)
    holdFront(run, null, WHOLE)
    for (const { hold } of [run.first, run.second])
      expect(hold).toEqual({ heatToC: -Infinity, mostHeatW: 0, coolToC: Infinity, mostCoolW: 0 })
  })

  it('is the set-point in both stages, and never cooling where it has none', () => {
    const run = runFrom(30, 20)
    holdFront(run, HEATING, WHOLE)
    for (const { hold } of [run.first, run.second])
      expect(hold).toEqual({ heatToC: 20, mostHeatW: 1000, coolToC: Infinity, mostCoolW: 0 })
  })

  it('aims at what the outside air of each stage asks for: the first at its own place within the part, the second at the end', () => {
    const run = runFrom(20, 10)
    holdFront(run, BOTH, part(0.2, 0.8))
    // 3 K more for each kelvin under the set-point of 20 °C; the outside falls by 10 K an hour.
    const firstC = 20 - 10 * (0.2 + 0.6 * (1 - Math.SQRT1_2))
    expect(run.first.hold.coolToC).toBeCloseTo(20 + 3 * (20 - firstC), 9)
    expect(run.second.hold.coolToC).toBeCloseTo(20 + 3 * 8, 9)
    expect(run.second.hold.mostCoolW).toBe(800)
  })
})

describe('the power of a part', () => {
  const taken = (drive: Drive | null, firstW: number, secondW: number, heater: Partial<NightInput['heater']> = {}) => {
    const run = runFrom(0, 0, heater)
    run.first.heatW = firstW
    run.second.heatW = secondW
    run.temps[BED] = 22
    run.second.temps[BED] = 26
    run.wet.coilKgPerS = 9
    takePower(run, drive)
    return { heatW: run.heatW, electricW: run.electricW, coilKgPerS: run.wet.coilKgPerS }
  }

  it('is none while off, and fan and controls alone while the air holds itself', () => {
    expect(taken(null, 500, 500)).toEqual({ heatW: 0, electricW: 0, coilKgPerS: 0 })
    expect(taken(HEATING, 0, 0)).toEqual({ heatW: 0, electricW: 250, coilKgPerS: 0 })
  })

  it('is the mean of both stages by their weights, heat at the curve', () => {
    const meanW = 1000 * Math.SQRT1_2 + 400 * (1 - Math.SQRT1_2)
    const out = taken(HEATING, 1000, 400)
    expect(out.heatW).toBeCloseTo(meanW, 9)
    expect(out.electricW).toBeCloseTo(250 + meanW / 2, 9)
    expect(out.coilKgPerS).toBe(0)
    expect(taken(HEATING, 0, 400).heatW).toBeCloseTo(400 * (1 - Math.SQRT1_2), 9)
  })

  it('costs more below the least output: at half of it an eighth of the heat is lost', () => {
    expect(taken(HEATING, 500, 500, { minHeatW: 1000 }).electricW).toBeCloseTo(250 + 500 / (2 * 0.875), 9)
  })

  it('of cooling is taken out, and brings return air to the coil', () => {
    const out = taken(BOTH, -600, -600)
    expect(out.heatW).toBeCloseTo(-600, 9)
    expect(out.electricW).toBeCloseTo(250 + 200, 9)
    // Return air at 24 °C half way, the coil at 8 °C.
    expect(out.coilKgPerS).toBeCloseTo(600 / (1006 * 16), 12)
    // Heat in one stage does not undo what the other cooled.
    expect(taken(BOTH, 300, -600).coilKgPerS).toBeCloseTo((600 * (1 - Math.SQRT1_2)) / (1006 * 16), 12)
  })

  it('of drying is the heat of the water that ran off, by the cooling curve', () => {
    const run = runFrom(0, 0)
    run.moisture.drainedKg = 0.01
    run.drive = BOTH
    expect(dryingW(run, 100)).toBeCloseTo((EVAPORATION_J_PER_KG * 0.01) / 100 / 3, 9)
    run.drive = null
    expect(dryingW(run, 100)).toBe(0)
  })
})

describe('an aim within a part', () => {
  const crossing = (drive: Drive | null, frontC: number, firstW: number, secondW: number, stepS = 100): boolean => {
    const run = runFrom(0, 0)
    run.drive = drive
    run.temps[FRONT] = frontC
    run.first.heatW = firstW
    run.second.heatW = secondW
    return crosses(run, stepS)
  }

  it('is crossed where a stage takes less than full power, by 20 J or more', () => {
    expect(crossing(HEATING, 15, 1000, 1000)).toBe(false)
    expect(crossing(HEATING, 15, 1000, 500)).toBe(true)
    expect(crossing(HEATING, 15, 500, 1000)).toBe(true)
    expect(crossing(null, 15, 1000, 500)).toBe(false)
    // 0.293 x 500 W: 20 J in 0.137 s.
    expect(crossing(HEATING, 15, 1000, 500, 0.135)).toBe(false)
    expect(crossing(HEATING, 15, 1000, 500, 0.138)).toBe(true)
    // 0.707 x 500 W: 20 J in 0.0566 s.
    expect(crossing(HEATING, 15, 500, 1000, 0.056)).toBe(false)
    expect(crossing(HEATING, 15, 500, 1000, 0.057)).toBe(true)
    // Shorter parts would not move the clock.
    expect(crossing(HEATING, 15, -1e9, 500, 0.02)).toBe(false)
  })

  it('is not crossed by air that is held at it already, on either side', () => {
    expect(crossing(HEATING, 20, 300, 300)).toBe(false)
    expect(crossing(BOTH, 25, -300, -300)).toBe(false)
    expect(crossing(BOTH, 19.995, 300, 300)).toBe(false)
    expect(crossing(BOTH, 25.005, -300, -300)).toBe(false)
  })

  it('is crossed by air that drifts from rest to heating or cooling, and by cooling that gets there', () => {
    expect(crossing(BOTH, 22, 0, 0)).toBe(false)
    expect(crossing(BOTH, 22, 0, 300)).toBe(true)
    expect(crossing(BOTH, 22, 0, -300)).toBe(true)
    expect(crossing(BOTH, 28, -800, -800)).toBe(false)
    expect(crossing(BOTH, 28, -800, -300)).toBe(true)
  })

  /** Solves parts of a run whose front air would come to `freeC(s)` under the power it starts with. */
  function met(drive: Drive, startC: number, startW: number, freeC: (stepS: number) => number, longestS: number) {
    const run = runFrom(0, 0)
    run.drive = drive
    run.temps[FRONT] = startC
    run.factor.risePerW = 0.004
    let solvedS = Number.NaN
    let turns = 0
    const solve = (stepS: number): void => {
      solvedS = stepS
      turns += 1
      const free = freeC(stepS)
      const held = Math.min(Math.max(free, drive.setC), drive.coolFromC)
      const pastTop = startW > 0 ? Math.min(free, drive.setC) : held
      const endC = startW < 0 ? Math.max(free, drive.coolFromC) : pastTop
      run.first.heatW = startW
      run.second.heatW = startW + (endC - free) / run.factor.risePerW
      run.second.temps[FRONT] = endC
      run.second.hold.heatToC = drive.setC
      run.second.hold.coolToC = drive.coolFromC
    }
    solve(longestS)
    meetAim(run, longestS, solve)
    return { solvedS, turns }
  }

  it('is met at its own second while heating, cooling or drifting either way', () => {
    // 0.1 K/s from 12 °C to 20 °C: 80 s. Met within a thousandth of a kelvin: a hundredth of a second.
    expect(met(HEATING, 12, 1000, (s) => 12 + 0.1 * s, 100).solvedS).toBeCloseTo(80, 1)
    expect(met(BOTH, 29, -800, (s) => 29 - 0.05 * s, 100).solvedS).toBeCloseTo(80, 1)
    expect(met(BOTH, 21, 0, (s) => 21 + 0.06 * s, 100).solvedS).toBeCloseTo(66.67, 1)
    expect(met(BOTH, 24, 0, (s) => 24 - 0.06 * s, 100).solvedS).toBeCloseTo(66.67, 1)
  })

  it('is met on a bent course too: 30 K by the exponential of 60 s', () => {
    // 12 + 30 (1 - e^(-s/60)) = 20 at 60 ln(30/22) = 18.61 s.
    const out = met(HEATING, 12, 1000, (s) => 12 + 30 * (1 - Math.exp(-s / 60)), 100)
    expect(out.solvedS).toBeCloseTo(60 * Math.log(30 / 22), 2)
    expect(out.turns).toBeLessThan(20)
  })

  it('that lies nearer than the clock moves is met at the shortest part', () => {
    expect(met(HEATING, 19.9, 1000, (s) => 19.9 + 50 * s, 100).solvedS).toBe(0.02)
  })
})

it('weighs the second stage by one less the root of a half', () => {
  expect(GAMMA).toBeCloseTo(0.292893, 6)
})
