/** Water in the air, on glass and on the lining over one step: against the same balance in steps of a hundredth of a second, and by hand. */
import { describe, expect, it } from 'vitest'
import { co2After, moistureStep, settleFog } from '../../../shared/climate/moisture.ts'
import type { MoistureState, MoistureStep } from '../../../shared/climate/moisture.ts'
import { saturationRatio } from '../../../shared/climate/moisture-saturation.ts'
import { FIRST_PANE, MASS } from '../../../shared/climate/network-step.ts'
import { randomFrom } from './night-fixture.ts'

const PA = 101_325
/** Mass film of still air at 3.4 W/m2K over 1006 J/kgK, kg/m2s for a unit of ratio. */
const FILM_KG_PER_M2S = 3.4 / 1006

type Case = {
  readonly ratio: number
  /** On two panes and the lining, kg. */
  readonly films: readonly [number, number, number]
  readonly panesC: readonly [number, number]
  readonly liningC: number
  readonly step: Partial<MoistureStep>
}
const stepOf = (over: Partial<MoistureStep>): MoistureStep => ({
  stepS: 100,
  airKg: 4,
  exchangeKgPerS: 0.005,
  outsideRatio: 0.003,
  releaseKgPerS: 1.25e-5,
  pressurePa: PA,
  covers: false,
  areasM2: Float64Array.of(1.2, 0.8, 14),
  coldestAirC: 25,
  coilKgPerS: 0,
  coilRatio: 0.0066,
  ...over,
})

function quick({ ratio, films, panesC, liningC, step }: Case) {
  const state: MoistureState = {
    ratio,
    co2Ppm: 0,
    filmKg: Float64Array.from(films),
    flowKgPerS: new Float64Array(3),
    drainedKg: 0,
  }
  const temps = new Float64Array(FIRST_PANE + 2)
  temps[MASS] = liningC
  temps.set(panesC, FIRST_PANE)
  const scratch = {
    transfer: new Float64Array(3),
    saturation: new Float64Array(3),
    lagged: new Float64Array(3),
  }
  const outKg = moistureStep(state, stepOf(step), temps, scratch)
  return {
    ratio: state.ratio,
    films: [...state.filmKg],
    flows: [...state.flowKgPerS],
    outKg,
    drainedKg: state.drainedKg,
  }
}

/** The balance of water forward in small steps: what each surface takes or gives, what leaves, what the coil drains. */
function slow({ ratio, films, panesC, liningC, step }: Case) {
  const whole = stepOf(step)
  const shares = [whole.covers ? 0.3 : 1, whole.covers ? 0.3 : 1, 0.2]
  const saturation = [...panesC, liningC].map((tempC) => saturationRatio(tempC, PA))
  let air = ratio
  const held: number[] = [...films]
  let outKg = 0
  let drainedKg = 0
  const turns = 10_000
  const seconds = whole.stepS / turns
  for (let turn = 0; turn < turns; turn += 1) {
    const left = whole.exchangeKgPerS * (air - whole.outsideRatio)
    const drained = whole.coilKgPerS * Math.max(0, air - whole.coilRatio)
    let gain = whole.releaseKgPerS - left - drained
    held.forEach((kg, index) => {
      const driven =
        FILM_KG_PER_M2S * (shares[index] ?? 0) * (whole.areasM2[index] ?? 0) * (air - (saturation[index] ?? 0))
      const flow = Math.max(driven, -kg / seconds)
      held[index] = kg + flow * seconds
      gain -= flow
    })
    air += (gain * seconds) / whole.airKg
    outKg += (left + drained) * seconds
    drainedKg += drained * seconds
  }
  return { ratio: air, films: held, outKg, drainedKg }
}

const WET: Case = { ratio: 0.006, films: [0.02, 0.03, 0.2], panesC: [2, -6], liningC: 9, step: {} }
const DRY: Case = { ratio: 0.003, films: [0, 0, 0], panesC: [14, 12], liningC: 16, step: {} }

describe('the water of one step', () => {
  it.each<[string, Case]>([
    ['wet glass above and below freezing', WET],
    ['dry glass that stays dry', DRY],
    ['glass behind covers', { ...WET, step: { covers: true } }],
    ['no air exchange', { ...WET, step: { exchangeKgPerS: 0 } }],
    ['a step of ten seconds', { ...WET, step: { stepS: 10 } }],
    ['much air', { ...WET, step: { exchangeKgPerS: 0.05, outsideRatio: 0.001 } }],
    ['a coil that dries', { ...DRY, ratio: 0.012, panesC: [20, 20], liningC: 20, step: { coilKgPerS: 0.02 } }],
    ['a coil under wet glass', { ...WET, ratio: 0.009, step: { coilKgPerS: 0.01, coilRatio: 0.005 } }],
  ])('with %s is what the small steps give', (_, given) => {
    const [ours, theirs] = [quick(given), slow(given)]
    expect(Math.abs(ours.ratio - theirs.ratio)).toBeLessThan(1e-6)
    ours.films.forEach((kg, index) => expect(Math.abs(kg - (theirs.films[index] ?? 9))).toBeLessThan(2e-6))
    expect(Math.abs(ours.outKg - theirs.outKg)).toBeLessThan(2e-6)
    expect(Math.abs(ours.drainedKg - theirs.drainedKg)).toBeLessThan(2e-6)
  })

  it('loses and makes no water, whatever dries off or condenses (seeds 1 to 200)', () => {
    const seen = { dried: 0, condensed: 0, fogged: 0, drained: 0 }
    for (let seed = 1; seed <= 200; seed += 1) {
      const random = randomFrom(seed)
      const step = stepOf({
        stepS: 1 + 400 * random(),
        exchangeKgPerS: 0.02 * random(),
        outsideRatio: 0.001 + 0.008 * random(),
        releaseKgPerS: 5e-5 * random(),
        covers: random() < 0.5,
        coldestAirC: 2 + 20 * random(),
        coilKgPerS: random() < 0.4 ? 0.02 * random() : 0,
      })
      const given: Case = {
        ratio: 0.001 + 0.008 * random(),
        films: [0.001 * random(), random() < 0.5 ? 0 : 0.02 * random(), 0.01 * random()],
        panesC: [-10 + 25 * random(), -10 + 25 * random()],
        liningC: 25 * random(),
        step,
      }
      const out = quick(given)
      const before = given.ratio * step.airKg + given.films.reduce((sum, kg) => sum + kg, 0)
      const after = out.ratio * step.airKg + out.films.reduce((sum, kg) => sum + kg, 0)
      expect(after - before, `seed ${seed}`).toBeCloseTo(step.releaseKgPerS * step.stepS - out.outKg, 12)
      for (const kg of out.films) expect(kg, `seed ${seed}`).toBeGreaterThanOrEqual(0)
      expect(out.ratio, `seed ${seed}`).toBeLessThanOrEqual(saturationRatio(step.coldestAirC, PA) + 1e-12)
      expect(out.ratio, `seed ${seed}`).toBeGreaterThan(0)
      if (out.films.some((kg, index) => kg < 1e-12 && (given.films[index] ?? 0) > 0)) seen.dried += 1
      if (out.flows.some((flow) => flow > 0)) seen.condensed += 1
      if (Math.abs(out.ratio - saturationRatio(step.coldestAirC, PA)) < 1e-12) seen.fogged += 1
      if (out.drainedKg > 0) seen.drained += 1
    }
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(5)
  })

  it('dries a film off and no further', () => {
    const given: Case = { ...DRY, films: [1e-5, 0, 0], panesC: [20, 12] }
    const out = quick(given)
    // 1.2 m2 could give 0.0041 x (0.0147 - 0.003) kg/s: a hundredth of a gram is gone at once.
    expect(out.films[0]).toBeCloseTo(0, 12)
    expect(out.flows[0]).toBeCloseTo(-1e-7, 12)
    expect(out.flows.slice(1)).toEqual([expect.closeTo(0, 12), expect.closeTo(0, 12)])
  })

  it('never wets the air by a coil that is moister than it', () => {
    const given: Case = { ...DRY, step: { coilKgPerS: 0.02, coilRatio: 0.009 } }
    const out = quick(given)
    expect(out.drainedKg).toBe(0)
    expect(out.ratio).toBeCloseTo(quick(DRY).ratio, 12)
  })

  it('settles as fog on the lining what the coldest air cannot hold', () => {
    const cap = saturationRatio(5, PA)
    const given: Case = { ...DRY, ratio: cap, step: { coldestAirC: 5, releaseKgPerS: 1e-4, exchangeKgPerS: 0 } }
    const out = quick(given)
    expect(out.ratio).toBeCloseTo(cap, 12)
    // All of 10 g: nothing leaves, the air is full, and warm glass takes none.
    expect(out.films[2]).toBeCloseTo(0.01, 9)
    expect(out.flows[2]).toBeCloseTo(1e-4, 9)
  })
})

describe('fog after a step', () => {
  const state = (ratio: number): MoistureState => ({
    ratio,
    co2Ppm: 0,
    filmKg: Float64Array.of(0, 0, 0.1),
    flowKgPerS: new Float64Array(3),
    drainedKg: 0,
  })

  it('goes to the lining, to the gram, and leaves drier air alone', () => {
    const cap = saturationRatio(3, PA)
    const full = state(cap + 0.001)
    settleFog(full, stepOf({}), 3)
    expect(full.ratio).toBeCloseTo(cap, 12)
    expect([...full.filmKg]).toEqual([0, 0, expect.closeTo(0.104, 12)])
    const dry = state(cap - 0.001)
    settleFog(dry, stepOf({}), 3)
    expect([dry.ratio, dry.filmKg[2]]).toEqual([cap - 0.001, 0.1])
  })
})

describe('carbon dioxide', () => {
  it('follows the exponential of the air changes, and a straight line where nothing flows', () => {
    // 8 m3, 16 m3/h, 12 l/h: steady at 425 + 12,000 / 16 = 1175 ppm; half an hour is one air change.
    expect(co2After(3000, 425, 8, 16, 12, 1800)).toBeCloseTo(1175 + (3000 - 1175) * Math.exp(-1), 9)
    expect(co2After(425, 425, 8, 16, 0, 1800)).toBeCloseTo(425, 9)
    // 12 l/h into 8 m3: 1500 ppm an hour.
    expect(co2After(425, 425, 8, 0, 12, 1800)).toBeCloseTo(425 + 750, 9)
  })
})
