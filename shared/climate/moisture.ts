/** Water in the cabin over one step: air, condensate and frost on each pane, never above saturation. */
import { INNER_CONVECTION_W_PER_M2K } from './network.ts'
import { saturationRatio } from './moisture-saturation.ts'
import { at, FIRST_PANE } from './network-step.ts'

/** Heat of evaporation near 0 °C, J/kg (ASHRAE Fundamentals 2017 ch. 1). Fusion is left out: 100 g of frost is 9 Wh. */
export const EVAPORATION_J_PER_KG = 2.501e6
/** Heat of moist air, J/kgK; film over heat gives the mass film (Lewis relation, number 1). */
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
}

export type MoistureStep = {
  readonly stepS: number
  readonly airKg: number
  readonly exchangeKgPerS: number
  readonly outsideRatio: number
  readonly releaseKgPerS: number
  readonly pressurePa: number
  readonly covers: boolean
  /** Panes, then the lining: fog settles there and dries from there. */
  readonly areasM2: Float64Array
  readonly temps: Float64Array
  /** The coldest air, °C: no air holds more than it can. */
  readonly coldestAirC: number
}

/** Transfer of one pane, kg/s per unit of ratio, and its saturation; kept outside the call to spare the inner loop. */
export type MoistureScratch = { readonly transfer: Float64Array; readonly saturation: Float64Array }

/** Water out of the air over the step, kg: with the air's gain it equals what was released and brought in. */
export function moistureStep(state: MoistureState, step: MoistureStep, scratch: MoistureScratch): { outKg: number } {
  const count = state.filmKg.length
  const lining = count - 1
  const perM2 = (INNER_CONVECTION_W_PER_M2K / AIR_J_PER_KG_K) * (step.covers ? COVER_LEAK_01 : 1)
  for (let pane = 0; pane < lining; pane += 1) {
    scratch.transfer[pane] = perM2 * at(step.areasM2, pane)
    scratch.saturation[pane] = saturationRatio(at(step.temps, FIRST_PANE + pane), step.pressurePa)
  }
  const cap = saturationRatio(step.coldestAirC, step.pressurePa)
  scratch.transfer[lining] =
    at(state.filmKg, lining) > 0 ? (INNER_CONVECTION_W_PER_M2K / AIR_J_PER_KG_K) * at(step.areasM2, lining) : 0
  scratch.saturation[lining] = cap
  const before = state.ratio
  const supply = before * step.airKg + step.stepS * (step.exchangeKgPerS * step.outsideRatio + step.releaseKgPerS)
  const bound = step.airKg + step.stepS * step.exchangeKgPerS
  const ratio = balancedRatio(state, step, scratch, supply, bound)
  state.ratio = Math.min(ratio, cap)
  let total = 0
  for (let pane = 0; pane < count; pane += 1) {
    const flow = paneFlow(state, step, scratch, pane, state.ratio)
    state.flowKgPerS[pane] = flow
    total += flow
  }
  const outKg = step.stepS * step.exchangeKgPerS * (state.ratio - step.outsideRatio)
  if (ratio > cap) {
    const fog = step.releaseKgPerS - (outKg + (state.ratio - before) * step.airKg) / step.stepS - total
    state.flowKgPerS[lining] = at(state.flowKgPerS, lining) + fog
  }
  for (let pane = 0; pane < count; pane += 1) {
    state.filmKg[pane] = Math.max(0, at(state.filmKg, pane) + at(state.flowKgPerS, pane) * step.stepS)
  }
  return { outKg }
}

/** Flow on to a pane at a ratio, kg/s: what is there bounds what can dry off. */
function paneFlow(
  state: MoistureState,
  step: MoistureStep,
  scratch: MoistureScratch,
  pane: number,
  ratio: number,
): number {
  const driven = at(scratch.transfer, pane) * (ratio - at(scratch.saturation, pane))
  return Math.max(driven, -at(state.filmKg, pane) / step.stepS)
}

/** Ratio at which the air's water balances. The excess falls with the ratio in straight pieces, so Newton ends in a few turns. */
function balancedRatio(
  state: MoistureState,
  step: MoistureStep,
  scratch: MoistureScratch,
  supply: number,
  bound: number,
): number {
  let ratio = state.ratio
  for (let turn = 0; turn < 20; turn += 1) {
    let flow = 0
    let slope = bound
    for (let pane = 0; pane < state.filmKg.length; pane += 1) {
      const driven = at(scratch.transfer, pane) * (ratio - at(scratch.saturation, pane))
      const least = -at(state.filmKg, pane) / step.stepS
      if (driven > least) {
        flow += driven
        slope += at(scratch.transfer, pane) * step.stepS
      } else flow += least
    }
    const next = ratio + (supply - bound * ratio - flow * step.stepS) / slope
    if (Math.abs(next - ratio) < 1e-14) return next
    ratio = next
  }
  return ratio
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
