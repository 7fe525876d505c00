/** Insulation required in the cold and time until too cold, ISO 11079:2007. Not for sleepers: the method starts at 58 W/m2. */
import { CLO_M2K_PER_W } from '../../units/index.ts'

export type ColdWork = {
  readonly metabolicWPerM2: number
  readonly workWPerM2: number
  readonly airC: number
  readonly radiantC: number
  readonly permeabilityLPerM2S: number
  readonly walkMPerS: number
  readonly windMPerS: number
  readonly humidity01: number
  /** Insulation worn, clo, for the time limits. */
  readonly wornClo: number
}

export type Required = { readonly ireqClo: number; readonly basicClo: number; readonly limitH: number | null }
export type Ireq = { readonly minimal: Required; readonly neutral: Required }

/** Smallest activity, largest temperature and least wind that the standard's program admits, W/m2, °C, m/s (ISO 11079:2007, published program). */
export const IREQ_RANGE = { metabolicMinimumWPerM2: 58, airMaximumC: 10, windMinimumMPerS: 0.4 } as const

/** Saturation pressure of the standard's program, kPa. */
const saturationKPa = (tempC: number): number => 0.1333 * Math.exp(18.6686 - 4030.183 / (tempC + 235))

type Balance = {
  readonly work: ColdWork
  readonly skinC: number
  readonly wettedness: number
  readonly vapourKPa: number
  readonly airR: number
  readonly breathW: number
  readonly movement: number
}

/** Heat lost from the clothing surface, W/m2, for an insulation (m2K/W) and a heat flow through it (W/m2). */
function surfaceLoss(balance: Balance, clothing: number, flowW: number): { lossW: number; surfaceC: number } {
  const { work, skinC, airR } = balance
  const surfaceC = skinC - clothing * flowW
  const area = 1 + 1.197 * clothing
  const difference = surfaceC - work.radiantC
  const meanK = 273 + (surfaceC + work.radiantC) / 2
  const radiation =
    Math.abs(difference) < 1e-9
      ? 5.67e-8 * 0.95 * 0.77 * 4 * meanK ** 3
      : (5.67e-8 * 0.95 * 0.77 * ((surfaceC + 273) ** 4 - (work.radiantC + 273) ** 4)) / difference
  const convection = 1 / airR - radiation
  return { lossW: area * (radiation * difference + convection * (surfaceC - work.airC)), surfaceC }
}

const evaporationW = (balance: Balance, clothing: number): number =>
  (balance.wettedness * (saturationKPa(balance.skinC) - balance.vapourKPa)) /
  ((0.06 / 0.38) * (balance.airR + clothing))

/** Root of a falling or rising function by halving; the bracket must hold a change of sign. */
function halve(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to]
  const lowSign = Math.sign(f(low))
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2
    if (Math.sign(f(middle)) === lowSign) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Insulation left by wind and movement, m2K/W; its own area factor enters, so it is found by repetition. */
function resultantInsulation(worn: number, reduction: number, airR: number): number {
  let resultant = worn
  for (let i = 0; i < 200; i += 1) {
    const area = 1 + 1.197 * resultant
    resultant = (worn + 0.085 / area) * reduction - airR / area
  }
  return resultant
}

/** Walking speed, m/s: no less than the activity itself implies, no more than 1.2 (the standard's program). */
const walkingMPerS = (work: ColdWork): number =>
  Math.min(1.2, Math.max(work.walkMPerS, 0.0052 * (work.metabolicWPerM2 - 58)))

function solve(work: ColdWork, skinC: number, wettedness: number): Required {
  const exhaledC = 29 + 0.2 * work.airC
  const vapourKPa = work.humidity01 * saturationKPa(work.airC)
  const movement = Math.exp(-0.15 * work.windMPerS - 0.22 * walkingMPerS(work))
  const airR = 0.092 * movement - 0.0045
  const breathW =
    1.73e-2 * work.metabolicWPerM2 * (saturationKPa(exhaledC) - vapourKPa) +
    1.4e-3 * work.metabolicWPerM2 * (exhaledC - work.airC)
  const balance: Balance = { work, skinC, wettedness, vapourKPa, airR, breathW, movement }
  const throughW = (clothing: number, storedW: number): number =>
    work.metabolicWPerM2 - work.workWPerM2 - evaporationW(balance, clothing) - breathW - storedW
  // Required insulation: what flows through the clothing leaves its surface.
  const required = halve(
    (clothing) => throughW(clothing, 0) - surfaceLoss(balance, clothing, throughW(clothing, 0)).lossW,
    0.001,
    3,
  )
  const area = 1 + 1.197 * required
  const reduction =
    0.54 * movement * work.permeabilityLPerM2S ** 0.075 - 0.06 * Math.log(work.permeabilityLPerM2S) + 0.5
  const basic = (required + airR / area) / reduction - 0.085 / area
  // Time limit: the store that the worn insulation leaves open, against a debt of 40 Wh/m2.
  const resultant = resultantInsulation(work.wornClo * CLO_M2K_PER_W, reduction, airR)
  const storedW = halve(
    (stored) => {
      const flowW = throughW(resultant, stored)
      return flowW - surfaceLoss(balance, resultant, flowW).lossW
    },
    -1000,
    1000,
  )
  const limitH = storedW < 0 ? -40 / storedW : null
  return {
    ireqClo: required / CLO_M2K_PER_W,
    basicClo: basic / CLO_M2K_PER_W,
    limitH: limitH !== null && limitH <= 8 ? limitH : null,
  }
}

/**
 * Required and basic insulation, clo, for least and for neutral strain, and hours until 40 Wh/m2 are lost in what is worn.
 * Null outside the standard's range (activity under 58 W/m2, air over 10 °C, air speed under 0.4 m/s): "not known", never clamped.
 * A time limit over 8 h is null. Source: ISO 11079:2007; within 0.01 clo of its published program.
 */
export function ireq(work: ColdWork): Ireq | null {
  if (
    work.metabolicWPerM2 < IREQ_RANGE.metabolicMinimumWPerM2 ||
    work.airC > IREQ_RANGE.airMaximumC ||
    work.windMPerS < IREQ_RANGE.windMinimumMPerS
  )
    return null
  const m = work.metabolicWPerM2
  return { minimal: solve(work, 33.34 - 0.0354 * m, 0.06), neutral: solve(work, 35.7 - 0.0285 * m, 0.001 * m) }
}

/** Wind chill temperature, °C, from air temperature, °C, and wind at 10 m, km/h (ISO 11079:2007 Annex D; JAG/TI 2001). */
export function windChillC(airC: number, windKmPerH: number): number {
  const wind = windKmPerH ** 0.16
  return 13.12 + 0.6215 * airC - 11.37 * wind + 0.3965 * airC * wind
}
