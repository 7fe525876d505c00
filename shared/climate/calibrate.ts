/** The owner's own nights teach the cabin: its loss fitted to what was read, with the spread that the readings leave. */
import { J_PER_WH } from '../units/index.ts'
import { shellSpread01 } from './cabin-defaults.ts'
import { calibrateLegs } from './calibrate-legs.ts'
import { prepareNight } from './night-prepare.ts'
import { runNight } from './night-run.ts'
import type { ConsumptionFit, MeasuredLeg } from './calibrate-legs.ts'
import type { RunColumns } from './night-state.ts'
import type { Utc } from '../units/index.ts'
import type { NightInput } from './types.ts'

/** What was read of one night between two moments; null where it was not read. */
export type MeasuredNight = {
  /** The night as it was: weather as observed, decisions as taken. */
  readonly input: NightInput
  /** Usually bedtime and morning. */
  readonly fromUtc: Utc
  readonly toUtc: Utc
  /** Electricity for heating as the vehicle shows it, Wh. */
  readonly heatingWh: number | null
  /** Energy on the post's meter, Wh. */
  readonly siteWh: number | null
  /** Charge at both moments, fractions. */
  readonly from01: number | null
  readonly to01: number | null
  readonly lowestInsideC: number | null
  readonly meanInsideC: number | null
}

export type Calibration = {
  /** Multiplies the cabin's loss; 1 is the body class as it stands. */
  readonly lossScale: number
  /** One standard deviation of the scale. */
  readonly lossScaleSpread: number
  /** Loss of the shell at the first night's wind and covers, and its spread, W/K. */
  readonly lossWPerK: number
  readonly lossSpreadWPerK: number
  /** Electricity for each kelvin between inside and outside over the measured nights, all in, W/K, and its spread; null where none was heated. */
  readonly electricWPerK: number | null
  readonly electricSpreadWPerK: number | null
  readonly nights: number
  readonly readings: number
  /** Root mean square of what the fit leaves, in units of each reading's uncertainty: near 1 where model and readings agree. */
  readonly misfit: number
  /** Consumption fitted to the legs; absent where none were given. */
  readonly consumption?: ConsumptionFit
}

/** Uncertainty of readings: energy 2 %, thermometer 0.5 K, charge shown in whole percent (a uniform step of 0.01). */
const ENERGY_01 = 0.02
const THERMOMETER_K = 0.5
const CHARGE_01 = 0.01 / Math.sqrt(12)
/** What weather and model themselves leave open: 4 % of energy, 0.7 K (estimates). */
const MODEL_01 = 0.04
const MODEL_K = 0.7
/** How well a body class is known where no night says which: 30 % (cars). */
const PRIOR_SPREAD_01 = 0.3
const SCALE_MIN = 0.25
const SCALE_MAX = 5
/** Gauss-Newton turns, the step of its slope, and the change at which it ends. */
const TURNS = 12
const SLOPE_STEP = 0.02
/** Turns this near each other give the slope between them (engine's convention). */
const NEAR = 0.15
const ENOUGH = 1e-3
/** Longest integration step while fitting, s: the readings are coarser than the model. */
const INTEGRATION_S = 300

/**
 * Fits the loss of the cabin to measured nights, by least squares on the logarithm of the scale.
 * Nights with their inputs and legs driven (°C, Wh, fractions). Result: scale, W/K and electricity per kelvin, each with one standard deviation.
 * Without a reading the body class comes back with its own spread. Each reading is weighed by its uncertainty; the body class is a prior of 30 % (vans 40 %).
 */
export function calibrate(nights: readonly MeasuredNight[], legs: readonly MeasuredLeg[] = []): Calibration {
  const [first] = nights
  const prior01 = first === undefined ? PRIOR_SPREAD_01 : shellSpread01(first.input.cabin)
  let logScale = 0
  let curvature = 1 / prior01 ** 2
  let before: Tried | null = null
  let slopes: readonly number[] = []
  for (let turn = 0; turn < TURNS; turn += 1) {
    const here = misfits(nights, Math.exp(logScale))
    slopes = slopesAt(nights, { logScale, misfits: here }, before, slopes)
    let gradient = logScale / prior01 ** 2
    curvature = 1 / prior01 ** 2
    here.forEach((misfit, index) => {
      const slope = slopes[index] ?? 0
      gradient += slope * misfit
      curvature += slope * slope
    })
    before = { logScale, misfits: here }
    const next = Math.min(Math.log(SCALE_MAX), Math.max(Math.log(SCALE_MIN), logScale - gradient / curvature))
    const change = Math.abs(next - logScale)
    logScale = next
    if (change < ENOUGH) break
  }
  const fit = told(nights, Math.exp(logScale), Math.exp(logScale) / Math.sqrt(curvature))
  return legs.length === 0 ? fit : { ...fit, consumption: calibrateLegs(legs) }
}

type Tried = { readonly logScale: number; readonly misfits: readonly number[] }

/** How each misfit changes with the scale: by a small step at first and after a long one, between two turns that lie near each other, else as before. */
function slopesAt(
  nights: readonly MeasuredNight[],
  here: Tried,
  before: Tried | null,
  known: readonly number[],
): readonly number[] {
  const between = (other: Tried): readonly number[] =>
    here.misfits.map((misfit, index) => ((other.misfits[index] ?? misfit) - misfit) / (other.logScale - here.logScale))
  const moved = before === null ? Infinity : Math.abs(before.logScale - here.logScale)
  if (before !== null && moved < SLOPE_STEP / 4) return known
  if (before !== null && moved < NEAR) return between(before)
  const logScale = here.logScale + SLOPE_STEP
  return between({ logScale, misfits: misfits(nights, Math.exp(logScale)) })
}

function told(nights: readonly MeasuredNight[], lossScale: number, lossScaleSpread: number): Calibration {
  const left = misfits(nights, lossScale)
  const first = nights[0]
  const lossWPerK = first === undefined ? 0 : runScaled(first.input, lossScale).shellWPerK
  const electric = electricWPerK(nights, lossScale)
  const electricUp = electricWPerK(nights, lossScale + lossScaleSpread)
  return {
    lossScale,
    lossScaleSpread,
    lossWPerK,
    lossSpreadWPerK: (lossWPerK * lossScaleSpread) / lossScale,
    electricWPerK: electric,
    electricSpreadWPerK: electric === null || electricUp === null ? null : Math.abs(electricUp - electric),
    nights: nights.length,
    readings: left.length,
    misfit: left.length === 0 ? 0 : Math.sqrt(left.reduce((sum, misfit) => sum + misfit * misfit, 0) / left.length),
  }
}

const runScaled = (input: NightInput, lossScale: number) =>
  runNight(prepareNight({ ...input, cabin: { ...input.cabin, lossScale } }, INTEGRATION_S), input.decisions)

/** Computed less read, of every reading of every night, in units of its uncertainty. */
function misfits(nights: readonly MeasuredNight[], lossScale: number): readonly number[] {
  return nights.flatMap((night) => {
    const { columns } = runScaled(night.input, lossScale)
    const rows = rowsBetween(columns, night.fromUtc, night.toUtc)
    const list: number[] = []
    const energy = (computedWh: number, readWh: number | null): void => {
      if (readWh !== null) list.push((computedWh - readWh) / (Math.max(readWh, 500) * Math.hypot(ENERGY_01, MODEL_01)))
    }
    const kelvin = (computedC: number, readC: number | null): void => {
      if (readC !== null) list.push((computedC - readC) / Math.hypot(THERMOMETER_K, MODEL_K))
    }
    const usedWh =
      energyWh(columns.heatingElectricW, columns.atUtc, rows) + energyWh(columns.bedHeatW, columns.atUtc, rows)
    energy(usedWh, night.heatingWh)
    energy(energyWh(columns.supplyW, columns.atUtc, rows), night.siteWh)
    kelvin(
      rows.reduce((least, row) => Math.min(least, columns.bedAirC[row] ?? least), Infinity),
      night.lowestInsideC,
    )
    kelvin(mean(columns.bedAirC, rows), night.meanInsideC)
    if (night.from01 !== null && night.to01 !== null && night.input.battery !== null) {
      const gained01 = (columns.charge01[rows.at(-1) ?? 0] ?? 0) - (columns.charge01[rows[0] ?? 0] ?? 0)
      const model01 = (MODEL_01 * usedWh) / night.input.battery.usableWh
      list.push((gained01 - (night.to01 - night.from01)) / Math.hypot(CHARGE_01 * Math.SQRT2, model01))
    }
    return list
  })
}

/** Mean heating electricity over mean difference, all nights together, W/K. */
function electricWPerK(nights: readonly MeasuredNight[], lossScale: number): number | null {
  let watts = 0
  let kelvin = 0
  for (const night of nights) {
    const { columns } = runScaled(night.input, lossScale)
    const rows = rowsBetween(columns, night.fromUtc, night.toUtc).filter((row) => (columns.heatW[row] ?? 0) > 0)
    for (const row of rows) {
      watts += columns.heatingElectricW[row] ?? 0
      kelvin += (columns.frontAirC[row] ?? 0) - (columns.outsideC[row] ?? 0)
    }
  }
  return kelvin > 0 ? watts / kelvin : null
}

/** Rows between two moments, both ends in; at least one. */
function rowsBetween(columns: RunColumns, fromUtc: number, toUtc: number): readonly number[] {
  const rows: number[] = []
  columns.atUtc.forEach((atUtc, row) => {
    if (atUtc >= fromUtc && atUtc <= toUtc) rows.push(row)
  })
  return rows.length > 0 ? rows : [columns.atUtc.length - 1]
}

/** Energy of a column of mean powers, Wh; the first row ends where the span begins and is left out. */
const energyWh = (powerW: Float64Array, atUtc: Float64Array, rows: readonly number[]): number =>
  rows
    .slice(1)
    .reduce((sum, row) => sum + ((powerW[row] ?? 0) * ((atUtc[row] ?? 0) - (atUtc[row - 1] ?? 0))) / J_PER_WH, 0)

const mean = (column: Float64Array, rows: readonly number[]): number =>
  rows.reduce((sum, row) => sum + (column[row] ?? 0), 0) / rows.length
