/** Water in the cabin over one step: air, condensate and frost on each pane, never above saturation. */
import { INNER_CONVECTION_W_PER_M2K } from './network.ts'
import { saturationRatio } from './moisture-saturation.ts'
import { FIRST_PANE, MASS, at } from './network-step.ts'

/** Heat of evaporation near 0 °C, J/kg (ASHRAE Fundamentals 2017 ch. 1). Fusion is left out: 100 g of frost is 9 Wh. */
export const EVAPORATION_J_PER_KG = 2.501e6
/** Heat of moist air, J/kgK; film over heat gives the mass film (ASHRAE Fundamentals 2017 ch. 1; Lewis relation with number 1, from memory). */
const AIR_J_PER_KG_K = 1006
/** What a close cover still lets through to the glass behind it (estimate). */
const COVER_LEAK_01 = 0.3

export type MoistureState = {
  /** kg per kg dry air in the cabin. */
  ratio: number
  co2Ppm: number
  /** On each pane and, last, on the lining, kg; frost where the surface is below 0 °C. */
  readonly filmKg: Float64Array
  /** Flow on to each surface during the last step, kg/s; negative while drying. */
  readonly flowKgPerS: Float64Array
  /** Off a cooling coil during the last step, kg. */
  drainedKg: number
}

export type MoistureStep = {
  stepS: number
  readonly airKg: number
  exchangeKgPerS: number
  outsideRatio: number
  releaseKgPerS: number
  readonly pressurePa: number
  covers: boolean
  /** Panes, then the lining: fog settles there and dries from there. */
  readonly areasM2: Float64Array
  /** The coldest air, °C: no air holds more than it can. */
  coldestAirC: number
  /** Air that a cooling coil brings to its dew point, kg/s, and the ratio there; 0 while nothing cools. */
  coilKgPerS: number
  readonly coilRatio: number
}

/** Of each surface: transfer, kg/s per unit of ratio, and saturation; kept outside the call to spare the inner loop. */
export type MoistureScratch = {
  readonly transfer: Float64Array
  readonly saturation: Float64Array
  /** Flows of the step before, the first guess at this one's. */
  readonly lagged: Float64Array
}

/** Share of the lining that is smooth and takes fog; cloth keeps what it takes (estimate). */
const LINING_SHARE_01 = 0.2

/**
 * Moves the water of one step and gives what left with the air and down the coil's drain, kg.
 * Exact for constant conditions: the air's ratio falls exponentially towards its balance, and flows are taken at its mean,
 * so that release = air's gain + films' gain + out, to rounding. What would exceed saturation settles as fog on the lining.
 */
export function moistureStep(
  state: MoistureState,
  step: MoistureStep,
  temps: Float64Array,
  scratch: MoistureScratch,
): number {
  const lining = state.filmKg.length - 1
  const cap = surfaces(step, temps, scratch, lining)
  const before = state.ratio
  let meanRatio = meanOver(state, step, scratch)
  let kept = keptByAir(state, step, scratch, meanRatio)
  if (kept > cap) {
    // The air is full: it moves along saturation, and what it cannot keep settles.
    meanRatio = (before + cap) / 2
    kept = keptByAir(state, step, scratch, meanRatio)
    const fogKgPerS = (Math.max(0, kept - cap) * step.airKg) / step.stepS
    state.flowKgPerS[lining] = at(state.flowKgPerS, lining) + fogKgPerS
    kept = Math.min(kept, cap)
  }
  state.ratio = kept
  for (let surface = 0; surface <= lining; surface += 1) {
    state.filmKg[surface] = Math.max(0, at(state.filmKg, surface) + at(state.flowKgPerS, surface) * step.stepS)
  }
  state.drainedKg = drainedKgPerS(step, meanRatio) * step.stepS
  return step.exchangeKgPerS * (meanRatio - step.outsideRatio) * step.stepS + state.drainedKg
}

/** Water that runs off the coil at a mean ratio, kg/s: it dries the air and never wets it. */
const drainedKgPerS = (step: MoistureStep, meanRatio: number): number =>
  step.coilKgPerS * Math.max(0, meanRatio - step.coilRatio)

/** Flows on to all surfaces at a mean ratio, and the ratio that the air then ends with. */
function keptByAir(state: MoistureState, step: MoistureStep, scratch: MoistureScratch, meanRatio: number): number {
  let gain = step.releaseKgPerS - step.exchangeKgPerS * (meanRatio - step.outsideRatio) - drainedKgPerS(step, meanRatio)
  for (let surface = 0; surface < state.filmKg.length; surface += 1) {
    const driven = at(scratch.transfer, surface) * (meanRatio - at(scratch.saturation, surface))
    const flow = Math.max(driven, -at(state.filmKg, surface) / step.stepS)
    state.flowKgPerS[surface] = flow
    gain -= flow
  }
  return state.ratio + (gain * step.stepS) / step.airKg
}

/** Transfer and saturation of panes and lining; gives the ratio that the coldest air can hold. */
function surfaces(step: MoistureStep, temps: Float64Array, scratch: MoistureScratch, lining: number): number {
  const perM2 = INNER_CONVECTION_W_PER_M2K / AIR_J_PER_KG_K
  for (let pane = 0; pane < lining; pane += 1) {
    scratch.transfer[pane] = perM2 * (step.covers ? COVER_LEAK_01 : 1) * at(step.areasM2, pane)
    scratch.saturation[pane] = saturationRatio(at(temps, FIRST_PANE + pane), step.pressurePa)
  }
  scratch.transfer[lining] = perM2 * LINING_SHARE_01 * at(step.areasM2, lining)
  scratch.saturation[lining] = saturationRatio(at(temps, MASS), step.pressurePa)
  return saturationRatio(step.coldestAirC, step.pressurePa)
}

/**
 * Mean ratio over the step. A surface that would dry off more than it carries gives just that; leaving it out only lowers
 * the ratio, so that none comes back and the set is found in as many turns as there are surfaces.
 */
function meanOver(state: MoistureState, step: MoistureStep, scratch: MoistureScratch): number {
  if (step.coilKgPerS <= 0) return meanWithCoil(state, step, scratch, 0)
  const drying = meanWithCoil(state, step, scratch, step.coilKgPerS)
  return drying >= step.coilRatio ? drying : meanWithCoil(state, step, scratch, 0)
}

function meanWithCoil(state: MoistureState, step: MoistureStep, scratch: MoistureScratch, coilKgPerS: number): number {
  const count = state.filmKg.length
  let spent = -1
  let meanRatio = state.ratio
  for (let turn = 0; turn <= count; turn += 1) {
    let inflow = step.exchangeKgPerS * step.outsideRatio + step.releaseKgPerS + coilKgPerS * step.coilRatio
    let conductance = step.exchangeKgPerS + coilKgPerS
    let dried = 0
    for (let surface = 0; surface < count; surface += 1) {
      const transfer = at(scratch.transfer, surface)
      const least = -at(state.filmKg, surface) / step.stepS
      if (turn > 0 && transfer * (meanRatio - at(scratch.saturation, surface)) <= least) {
        inflow -= least
        dried += 1
      } else {
        inflow += transfer * at(scratch.saturation, surface)
        conductance += transfer
      }
    }
    if (dried === spent) break
    spent = dried
    meanRatio = relaxedMean(state.ratio, inflow, conductance, step)
  }
  return meanRatio
}

function relaxedMean(start: number, inflow: number, conductance: number, step: MoistureStep): number {
  const rate = (conductance * step.stepS) / step.airKg
  if (rate < 1e-9) return start + (inflow * step.stepS) / step.airKg / 2
  const steady = inflow / conductance
  return steady + ((start - steady) * -Math.expm1(-rate)) / rate
}

/** Fog that forms because the air ended colder than foreseen goes to the lining; its warmth, a trace, is left out. */
export function settleFog(state: MoistureState, step: MoistureStep, coldestAirC: number): void {
  const excess = state.ratio - saturationRatio(coldestAirC, step.pressurePa)
  if (excess <= 0) return
  const lining = state.filmKg.length - 1
  state.ratio -= excess
  state.filmKg[lining] = at(state.filmKg, lining) + excess * step.airKg
}

/** CO2 after a step, ppm, exact for a constant flow. Flow and volume in m3/h and m3, release in l/h. */
export function co2After(
  ppm: number,
  outsidePpm: number,
  airM3: number,
  flowM3PerH: number,
  releaseLPerH: number,
  stepS: number,
): number {
  const hours = stepS / 3600
  if (flowM3PerH < 1e-9) return ppm + (releaseLPerH * 1000 * hours) / airM3
  const steady = outsidePpm + (releaseLPerH * 1000) / flowM3PerH
  return steady + (ppm - steady) * Math.exp((-flowM3PerH * hours) / airM3)
}
