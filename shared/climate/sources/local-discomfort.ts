/** Local discomfort: radiant asymmetry, head to ankle, floor, draught; and operative temperature. */
import type { ComfortPoint } from './pmv.ts'
import { ashraePmv } from './two-node.ts'

export type Asymmetry = 'warm-ceiling' | 'cool-ceiling' | 'warm-wall' | 'cool-wall'

/** Exponents and offsets of ISO 7730:2005 equations 9 to 12. */
const ASYMMETRY: Readonly<Record<Asymmetry, { readonly a: number; readonly b: number; readonly less: number }>> = {
  'warm-ceiling': { a: 2.84, b: 0.174, less: 5.5 },
  'cool-ceiling': { a: 9.93, b: 0.5, less: 0 },
  'warm-wall': { a: 3.72, b: 0.052, less: 3.5 },
  'cool-wall': { a: 6.61, b: 0.345, less: 0 },
}

/** Share dissatisfied by radiant asymmetry, %, from the difference of plane radiant temperature, K; not below zero. */
export function asymmetryPercent(kind: Asymmetry, differenceK: number): number {
  const { a, b, less } = ASYMMETRY[kind]
  return Math.max(0, 100 / (1 + Math.exp(a - b * differenceK)) - less)
}

/** Share dissatisfied by air warmer at the head than at the ankles, %, from the difference, K (ISO 7730:2005 equation 7). */
export const headAnklePercent = (differenceK: number): number => 100 / (1 + Math.exp(5.76 - 0.856 * differenceK))

/** Share dissatisfied by a floor temperature, %, from °C (ISO 7730:2005 equation 8). */
export const floorPercent = (floorC: number): number =>
  100 - 94 * Math.exp(-1.387 + 0.118 * floorC - 0.0025 * floorC ** 2)

/** Draught rating, %, from air °C, mean speed m/s and turbulence, % (ISO 7730:2005 equation 6); 0 below 0.05 m/s, at most 100. */
export const draughtPercent = (airC: number, speedMPerS: number, turbulencePercent: number): number =>
  speedMPerS <= 0.05
    ? 0
    : Math.min(
        100,
        Math.max(0, (34 - airC) * (speedMPerS - 0.05) ** 0.62 * (0.37 * speedMPerS * turbulencePercent + 3.14)),
      )

/** Share dissatisfied by a vertical gradient, %, gradient in K/m (ANSI/ASHRAE 55-2020 equation; below 0.2 m/s). */
export function gradientPercent(point: ComfortPoint, gradientKPerM: number): number {
  const odds = Math.exp(0.13 * (ashraePmv(point) - 1.91) ** 2 + 0.15 * gradientKPerM - 1.6)
  return (odds / (1 + odds) - 0.345) * 100
}

/** Share dissatisfied by a draught at the ankles, %, speed there in m/s (ANSI/ASHRAE 55-2020 equation). */
export function ankleDraughtPercent(point: ComfortPoint, ankleMPerS: number): number {
  const odds = Math.exp(-2.58 + 3.05 * ankleMPerS - 1.06 * ashraePmv(point))
  return (100 * odds) / (1 + odds)
}

/** Limits of ANSI/ASHRAE 55: differences in K, floor in °C, share dissatisfied by a gradient in %. */
export const LOCAL_LIMITS = {
  warmCeilingK: 5,
  coolCeilingK: 14,
  warmWallK: 23,
  coolWallK: 10,
  headAnkleK: 3,
  floorMinimumC: 19,
  floorMaximumC: 29,
  gradientPercent: 5,
  anklePercent: 20,
} as const

/** Operative temperature, °C: weights by air speed after ISO 7726, or in steps after ANSI/ASHRAE 55. */
export function operativeC(
  airC: number,
  radiantC: number,
  speedMPerS: number,
  standard: 'iso' | 'ashrae' = 'iso',
): number {
  if (standard === 'iso') {
    const weight = Math.sqrt(10 * speedMPerS)
    return (airC * weight + radiantC) / (1 + weight)
  }
  const share = speedMPerS < 0.2 ? 0.5 : speedMPerS < 0.6 ? 0.6 : 0.7
  return share * airC + (1 - share) * radiantC
}
