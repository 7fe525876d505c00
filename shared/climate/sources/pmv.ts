/** Predicted mean vote and share dissatisfied, ISO 7730:2005. */
import { CLO_M2K_PER_W, MET_W_PER_M2 } from '../../units/index.ts'
import { invariant } from '../../result/index.ts'

export type ComfortPoint = {
  readonly airC: number
  readonly radiantC: number
  readonly speedMPerS: number
  readonly humidity01: number
  readonly met: number
  readonly clo: number
  /** External work, met. */
  readonly workMet?: number
}

/** Vapour pressure used by the standard's own program, Pa (ISO 7730:2005 Annex D). */
const vapourPa = (tempC: number, humidity01: number): number =>
  humidity01 * 1000 * Math.exp(16.6536 - 4030.183 / (tempC + 235))

/**
 * Predicted mean vote, without its range check.
 * Temperatures in °C, air speed in m/s relative to the body, humidity 0 to 1, activity in met, clothing in clo.
 * Source: ISO 7730:2005 equations 1 to 4, solved as its Annex D does; within 0.005 of Table D.1 to its two digits.
 */
export function pmv(point: ComfortPoint): number {
  const clothing = CLO_M2K_PER_W * point.clo
  const metabolic = point.met * MET_W_PER_M2
  const heat = metabolic - (point.workMet ?? 0) * MET_W_PER_M2
  const vapour = vapourPa(point.airC, point.humidity01)
  const area = clothing <= 0.078 ? 1 + 1.29 * clothing : 1.05 + 0.645 * clothing
  const { surfaceK, convection } = clothingSurface(point, clothing, area, heat)
  const skinDiffusion = 3.05e-3 * (5733 - 6.99 * heat - vapour)
  const sweat = heat > MET_W_PER_M2 ? 0.42 * (heat - MET_W_PER_M2) : 0
  const latentBreath = 1.7e-5 * metabolic * (5867 - vapour)
  const dryBreath = 0.0014 * metabolic * (34 - point.airC)
  const radiation = 3.96 * area * ((surfaceK / 100) ** 4 - ((point.radiantC + 273) / 100) ** 4)
  const convected = area * convection * (surfaceK - 273 - point.airC)
  const strain = 0.303 * Math.exp(-0.036 * metabolic) + 0.028
  return strain * (heat - skinDiffusion - sweat - latentBreath - dryBreath - radiation - convected)
}

/** Clothing surface temperature, K, and convection, W/m2K, by the fixed-point iteration of Annex D. */
function clothingSurface(
  point: ComfortPoint,
  clothing: number,
  area: number,
  heat: number,
): { surfaceK: number; convection: number } {
  const airK = point.airC + 273
  const radiantK = point.radiantC + 273
  const forced = 12.1 * Math.sqrt(point.speedMPerS)
  const p1 = clothing * area
  const p2 = p1 * 3.96
  const p3 = p1 * 100
  const p4 = p1 * airK
  const p5 = 308.7 - 0.028 * heat + p2 * (radiantK / 100) ** 4
  let next = (airK + (35.5 - point.airC) / (3.5 * (6.45 * clothing + 0.1))) / 100
  let convection = forced
  for (let i = 0; i < 5000; i += 1) {
    const mean = i === 0 ? next : next
    const natural = 2.38 * Math.abs(100 * mean - airK) ** 0.25
    convection = Math.max(forced, natural)
    const solved = (p5 + p4 * convection - p2 * mean ** 4) / (100 + p3 * convection)
    // Halving the step keeps the fixed point stable for thick clothing.
    const updated = (mean + solved) / 2
    if (Math.abs(updated - mean) < 1e-9) return { surfaceK: 100 * updated, convection }
    next = updated
  }
  invariant(Math.abs(next) < 1e6, 'the clothing surface temperature converges')
  return { surfaceK: 100 * next, convection }
}

/** Predicted percentage dissatisfied, %, from a vote (ISO 7730:2005 equation 5). */
export const ppdPercent = (vote: number): number => 100 - 95 * Math.exp(-0.03353 * vote ** 4 - 0.2179 * vote ** 2)

/**
 * Predicted mean vote where the standard allows it, else null ("not known").
 * Range: 0.8 to 4 met, 0 to 2 clo, air 10 to 30 °C, radiant 10 to 40 °C, up to 1 m/s, vote -2 to 2 (ISO 7730:2005 clause 4, from memory).
 */
export function pmvInRange(point: ComfortPoint): number | null {
  const inside =
    point.met >= 0.8 &&
    point.met <= 4 &&
    point.clo >= 0 &&
    point.clo <= 2 &&
    point.airC >= 10 &&
    point.airC <= 30 &&
    point.radiantC >= 10 &&
    point.radiantC <= 40 &&
    point.speedMPerS >= 0 &&
    point.speedMPerS <= 1
  if (!inside) return null
  const vote = pmv(point)
  return Math.abs(vote) <= 2 ? vote : null
}
