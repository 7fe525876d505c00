/** The supply at the post: what it can carry for hours, how far it sags, and the current worth asking for. */
import { invariant } from '../result/index.ts'
import { MM_PER_KM } from '../units/index.ts'
import type { SupplyLimit, SupplyOutcome, SupplyParameters, SupplyReading } from './types.ts'
import { pilotDutyPercent } from './sources/charging.ts'
import { ADAPTER_OHM, ADVISED_BRANCH_DROP_01, contactHeat, flexibleOhmPerKm, leadDrop } from './sources/wiring.ts'
import { connectorRating, isDomestic, isNorthAmerican } from './sources/connectors.ts'

/** 80 % of the breaker for loads of 3 h or more (NEC 210.20(A), 625.42); kept elsewhere as a margin (common practice). */
export const CONTINUOUS_FACTOR = 0.8
/** Upper current of a household outlet for hours, A (common practice; 8 A is the cautious habit). */
export const DOMESTIC_HOURS_A = 10
/** Smallest current that charging control can ask for, A (IEC 61851-1 pilot). */
export const PILOT_MINIMUM_A = 6
/** Drop assumed at the continuous limit where nobody measured (NEC 210.19(A) informational note, 5 % in all). */
const ASSUMED_DROP_01 = 0.05

/** Stop adding load, step down, stop: shares of 230 V (215, 210, 205) and of 120 V (112, 110, 105), common practice. */
const FLOORS_EUROPE = { hold01: 215 / 230, stepDown01: 210 / 230, stop01: 205 / 230 } as const
const FLOORS_AMERICA = { hold01: 112 / 120, stepDown01: 110 / 120, stop01: 105 / 120 } as const

/** A source as seen from the load: volts without load and the resistance behind them. */
export type SourceFit = {
  readonly noLoadV: number
  readonly sourceOhm: number
  readonly sourceOhmSpread: number
  readonly measured: boolean
}

/** Volts at a current, V, from a straight sag line; not below zero. Current in A, zero or more. */
export const voltsAt = (source: { readonly noLoadV: number; readonly sourceOhm: number }, currentA: number): number =>
  Math.max(0, source.noLoadV - source.sourceOhm * currentA)

/** Power at a current, W; three-phase supplies count all phases. Current in A, zero or more. */
export const wattsAt = (
  source: { readonly noLoadV: number; readonly sourceOhm: number; readonly phaseFactor?: number },
  currentA: number,
): number => (source.phaseFactor ?? 1) * voltsAt(source, currentA) * currentA

/**
 * The straight sag line through readings, by least squares.
 * Readings in A and V; nominal volts where no reading fixes the line; leads and adapter whose resistance is known, ohm. Result: volts without
 * load, ohm, and its spread. With two readings the spread comes from the meter's resolution alone; with none the drop up to the outlet is assumed,
 * not measured, and the known path comes on top. Readings are taken under the load and hold that path already.
 */
export function fitSource(
  readings: readonly SupplyReading[],
  nominalV: number,
  continuousA: number,
  pathOhm = 0,
): SourceFit {
  const distinct = new Set(readings.map((reading) => reading.currentA))
  if (distinct.size >= 2) return leastSquares(readings)
  const assumedOhm = (ASSUMED_DROP_01 * nominalV) / Math.max(continuousA, 1) + pathOhm
  const only = readings[0]
  if (only === undefined)
    return { noLoadV: nominalV, sourceOhm: assumedOhm, sourceOhmSpread: assumedOhm, measured: false }
  const meanV = readings.reduce((sum, reading) => sum + reading.volts, 0) / readings.length
  if (only.currentA <= 0) return { noLoadV: meanV, sourceOhm: assumedOhm, sourceOhmSpread: assumedOhm, measured: false }
  const ohm = Math.max(pathOhm, (nominalV - meanV) / only.currentA)
  return {
    noLoadV: meanV + ohm * only.currentA,
    sourceOhm: ohm,
    sourceOhmSpread: Math.max(ohm, assumedOhm),
    measured: false,
  }
}

/** Resolution of the meter as its readings betray it: 1 V where all are whole, else 0.1 V. */
const meterResolutionV = (readings: readonly SupplyReading[]): number =>
  readings.every((reading) => Number.isInteger(reading.volts)) ? 1 : 0.1

function leastSquares(readings: readonly SupplyReading[]): SourceFit {
  const n = readings.length
  const meanA = readings.reduce((sum, r) => sum + r.currentA, 0) / n
  const meanV = readings.reduce((sum, r) => sum + r.volts, 0) / n
  const spreadA2 = readings.reduce((sum, r) => sum + (r.currentA - meanA) ** 2, 0)
  const slope = readings.reduce((sum, r) => sum + (r.currentA - meanA) * (r.volts - meanV), 0) / spreadA2
  const ohm = Math.max(0, -slope)
  const noLoadV = meanV + ohm * meanA
  // A digital reading is uniform over one step: standard deviation step / sqrt(12).
  const meterV = meterResolutionV(readings) / Math.sqrt(12)
  const residual2 = readings.reduce((sum, r) => sum + (r.volts - (noLoadV - ohm * r.currentA)) ** 2, 0)
  const noiseV = n > 2 ? Math.max(meterV, Math.sqrt(residual2 / (n - 2))) : meterV
  return { noLoadV, sourceOhm: ohm, sourceOhmSpread: noiseV / Math.sqrt(spreadA2), measured: true }
}

/** Current from the breaker that may flow for hours, A. Breaker rating in A. */
export const continuousA = (breakerA: number): number => CONTINUOUS_FACTOR * breakerA

/**
 * What the breaker lets flow for hours, A. In North America 80 %, by code. Elsewhere 80 % is prudence, not a rule: a breaker holds
 * its rating, so a 6 A post is run in full rather than not at all, since charging control cannot ask for less.
 */
function breakerLimitA(supply: SupplyParameters): number {
  const margin = continuousA(supply.breakerA)
  if (isNorthAmerican(supply.connector, supply.nominalV)) return margin
  return Math.max(margin, Math.min(supply.breakerA, smallestA(supply)))
}

/** Smallest current that charging may ask for here, A. */
const smallestA = (supply: SupplyParameters): number => Math.max(supply.minimumA, PILOT_MINIMUM_A)

/** The parts of the path that limit the current, each with what it carries for hours, A. */
function limitsOf(supply: SupplyParameters): { part: SupplyLimit; currentA: number }[] {
  const rating = connectorRating(supply.connector)
  const candidates: readonly (readonly [SupplyLimit, number | null])[] = [
    ['breaker', breakerLimitA(supply)],
    [
      'socket',
      rating === null
        ? null
        : isDomestic(supply.connector)
          ? Math.min(DOMESTIC_HOURS_A, rating.continuousA)
          : rating.continuousA,
    ],
    ['site', supply.siteLimitA],
    ['lead', supply.leadLimitA],
    ['adapter', supply.adapterLimitA],
    ['charging-unit', supply.chargingUnitLimitA],
    ['held', supply.heldA],
    ['onboard', supply.onboardMaximumA],
  ]
  return candidates.flatMap(([part, currentA]) => (currentA === null ? [] : [{ part, currentA }]))
}

/** Voltage floors of a supply, V: stop adding load, step down, stop altogether. */
export function voltageFloors(supply: Pick<SupplyParameters, 'connector' | 'nominalV'>): {
  readonly holdV: number
  readonly stepDownV: number
  readonly stopV: number
} {
  const share = isNorthAmerican(supply.connector, supply.nominalV) ? FLOORS_AMERICA : FLOORS_EUROPE
  return {
    holdV: share.hold01 * supply.nominalV,
    stepDownV: share.stepDown01 * supply.nominalV,
    stopV: share.stop01 * supply.nominalV,
  }
}

/**
 * What one supply can give for a night.
 * Ratings in A, readings in A and V. Result: limits, the current that may flow for hours, the whole-ampere current to ask for,
 * volts and watts there, sag, and heat in the path; `belowMinimum` where charging control could not ask for so little.
 * Source: NEC 210.20, 625.42; IEC 61851-1; Ohm's law. Volts agree with a measured pair exactly.
 */
export function supplyOutcome(supply: SupplyParameters): SupplyOutcome {
  invariant(supply.nominalV > 0 && supply.breakerA > 0, 'a supply has volts and a breaker')
  const pathOhm = pathOf(supply)
  const source = fitSource(supply.readings, supply.nominalV, continuousA(supply.breakerA), pathOhm)
  const floors = voltageFloors(supply)
  const limits = limitsOf(supply)
  if (source.measured && source.sourceOhm > 0) {
    limits.push({ part: 'voltage', currentA: Math.max(0, (source.noLoadV - floors.stepDownV) / source.sourceOhm) })
  }
  const least = limits.reduce((best, limit) => (limit.currentA < best.currentA ? limit : best))
  const usableA = least.currentA
  const askA = Math.floor(usableA + 1e-9)
  const phaseFactor = phaseFactorOf(supply)
  const voltsAtLoad = voltsAt(source, usableA)
  return {
    sourceOhm: source.sourceOhm,
    sourceOhmSpread: source.sourceOhmSpread,
    measured: source.measured,
    noLoadV: source.noLoadV,
    limits,
    usableA,
    askA,
    pilotDutyPercent: pilotDutyPercent(askA),
    limitedBy: least.part,
    phaseFactor,
    voltsAtLoad,
    wattsAtLoad: phaseFactor * voltsAtLoad * usableA,
    sag01: source.noLoadV > 0 ? (source.sourceOhm * usableA) / source.noLoadV : 0,
    heatInWiringW: phaseFactor * source.sourceOhm * usableA ** 2,
    pathOhm,
    heatInPathW: phaseFactor * Math.min(pathOhm, source.sourceOhm) * usableA ** 2,
    contactAtWorstW: contactHeat(excessOhm(source, supply, pathOhm), usableA).heatW,
    belowMinimum: usableA < smallestA(supply) - 1e-9,
    ...floors,
  }
}

/** Resistance of the known leads, there and back, and of an adapter's contacts, ohm. */
const pathOf = ({ leads = [], usesAdapter, nominalV }: SupplyParameters): number =>
  leads.reduce(
    // Volts at one ampere.
    (ohm, { lengthMm, areaMm2 }) =>
      ohm + leadDrop((flexibleOhmPerKm(areaMm2) * lengthMm) / MM_PER_KM, 1, nominalV).dropV,
    usesAdapter === true ? ADAPTER_OHM : 0,
  )

/**
 * Resistance beyond that of a sound path, ohm: one that drops 3 % at the breaker's continuous current (NEC 210.19(A), advice for a branch), and
 * the leads that are known. Only a measured sag can show it.
 */
function excessOhm(source: SourceFit, supply: SupplyParameters, pathOhm: number): number {
  if (!source.measured) return 0
  const soundOhm = (ADVISED_BRANCH_DROP_01 * supply.nominalV) / continuousA(supply.breakerA) + pathOhm
  return Math.max(0, source.sourceOhm - soundOhm)
}

/** Three phases count as sqrt(3) times line volts; a red connector read at 230 V is used on one phase. */
const phaseFactorOf = (supply: SupplyParameters): number =>
  connectorRating(supply.connector)?.phases === 3 && supply.nominalV >= 380 ? Math.sqrt(3) : 1

/** Power of a resistive load rated at one voltage when run at another, W: it falls with voltage squared. */
export const resistivePowerW = (ratedW: number, ratedV: number, actualV: number): number =>
  ratedW * (actualV / ratedV) ** 2

/** Two loads on one supply: their current, A, and whether the supply carries both for hours. Loads in W. */
export function twoLoads(
  outcome: Pick<SupplyOutcome, 'noLoadV' | 'sourceOhm' | 'usableA'>,
  firstW: number,
  secondW: number,
): { readonly currentA: number | null; readonly carried: boolean } {
  const currentA = currentForPower(outcome, firstW + secondW)
  return { currentA, carried: currentA !== null && currentA <= outcome.usableA + 1e-9 }
}

/** Current at which a sagging source gives a power, A; null where it cannot give so much. Power in W. */
export function currentForPower(
  source: { readonly noLoadV: number; readonly sourceOhm: number },
  powerW: number,
): number | null {
  if (source.sourceOhm <= 0) return powerW / source.noLoadV
  const inner = source.noLoadV ** 2 - 4 * source.sourceOhm * powerW
  return inner < 0 ? null : (source.noLoadV - Math.sqrt(inner)) / (2 * source.sourceOhm)
}

/** Whether two hot lines come from split phase (240 V) or from two of three phases (208 V), by the ratio of two readings. */
export function lineSystem(
  lineToLineV: number,
  lineToNeutralV: number,
): 'split-phase-240' | 'two-of-three-208' | 'not-known' {
  const ratio = lineToLineV / lineToNeutralV
  if (Math.abs(ratio - 2) < 0.1) return 'split-phase-240'
  if (Math.abs(ratio - Math.sqrt(3)) < 0.1) return 'two-of-three-208'
  return 'not-known'
}
