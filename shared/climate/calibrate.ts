/** The owner's own nights teach the cabin: loss and standing load fitted to what was read, with their spread. */
import { S_PER_HOUR, WH_PER_KWH } from '../units/index.ts'
import { prepareNight } from './night-prepare.ts'
import { runNight } from './night-run.ts'
import { sleepRows } from './sleepers.ts'
import type { NightInput } from './types.ts'

/** What was read after one night; null where it was not read. */
export type MeasuredNight = {
  readonly input: NightInput
  /** Energy taken at the post, Wh. */
  readonly fromSiteWh: number | null
  /** Charge at the end, fraction. */
  readonly depart01: number | null
  /** Lowest temperature inside during the hours asleep, °C. */
  readonly lowestInsideC: number | null
}

export type Calibration = {
  /** Multiplies the cabin's loss; 1 is the body class as it stands. */
  readonly lossScale: number
  /** One standard deviation of the scale. */
  readonly lossScaleSpread: number
  readonly lossWPerK: number
  readonly lossSpreadWPerK: number
  readonly nights: number
  /** Root mean square of what the fit leaves, in units of each reading's own uncertainty. */
  readonly misfit: number
}

/** Uncertainty of readings: kWh meter 2 %, thermometer 0.5 K, state of charge to 1 %. */
const METER_01 = 0.02
const THERMOMETER_K = 0.5
const CHARGE_01 = 0.01
/** How well the body class is known before any night: 30 % (cars). */
const PRIOR_SPREAD_01 = 0.3
const SCALE_MIN = 0.3
const SCALE_MAX = 4
const TURNS = 40

/**
 * Fits the loss of the cabin to measured nights.
 * Nights with their inputs and readings. Result: scale with its spread, W/K at the first night's wind.
 * Least squares with each reading weighed by its uncertainty and the body class as a prior of 30 %; with no reading the prior comes back.
 */
export function calibrate(nights: readonly MeasuredNight[]): Calibration {
  const cost = (scale: number): number =>
    nights.reduce((sum, night) => sum + misfitOf(night, scale), 0) + (Math.log(scale) / PRIOR_SPREAD_01) ** 2
  const lossScale = leastOf(cost)
  const step = 0.02
  const curvature =
    (cost(lossScale * (1 + step)) - 2 * cost(lossScale) + cost(lossScale * (1 - step))) / (lossScale * step) ** 2
  const lossScaleSpread = curvature > 0 ? Math.sqrt(2 / curvature) : lossScale * PRIOR_SPREAD_01
  const first = nights[0]
  const readings = nights.reduce((sum, night) => sum + readingsOf(night), 0)
  const lossWPerK =
    first === undefined ? 0 : runNight(prepareNight(scaled(first.input, lossScale)), first.input.decisions).shellWPerK
  return {
    lossScale,
    lossScaleSpread,
    lossWPerK,
    lossSpreadWPerK: (lossWPerK * lossScaleSpread) / lossScale,
    nights: nights.length,
    misfit:
      readings === 0 ? 0 : Math.sqrt(nights.reduce((sum, night) => sum + misfitOf(night, lossScale), 0) / readings),
  }
}

const scaled = (input: NightInput, lossScale: number): NightInput => ({
  ...input,
  cabin: { ...input.cabin, lossScale },
})

const readingsOf = (night: MeasuredNight): number =>
  [night.fromSiteWh, night.depart01, night.lowestInsideC].filter((reading) => reading !== null).length

function misfitOf(night: MeasuredNight, scale: number): number {
  const input = scaled(night.input, scale)
  const run = runNight(prepareNight(input, S_PER_HOUR / 6), input.decisions)
  let sum = 0
  if (night.fromSiteWh !== null)
    sum += ((run.totals.supplyWh - night.fromSiteWh) / Math.max(METER_01 * night.fromSiteWh, WH_PER_KWH / 20)) ** 2
  if (night.depart01 !== null) sum += ((run.charge01 - night.depart01) / CHARGE_01) ** 2
  if (night.lowestInsideC !== null) {
    const rows = sleepRows(input, run.columns)
    const lowest = rows.reduce((least, row) => Math.min(least, run.columns.bedAirC[row] ?? Infinity), Infinity)
    sum += ((lowest - night.lowestInsideC) / THERMOMETER_K) ** 2
  }
  return sum
}

/** Least of a smooth function of the scale, by golden section on its logarithm. */
function leastOf(cost: (scale: number) => number): number {
  const ratio = (Math.sqrt(5) - 1) / 2
  let low = Math.log(SCALE_MIN)
  let high = Math.log(SCALE_MAX)
  let left = high - ratio * (high - low)
  let right = low + ratio * (high - low)
  let leftCost = cost(Math.exp(left))
  let rightCost = cost(Math.exp(right))
  for (let turn = 0; turn < TURNS && high - low > 1e-4; turn += 1) {
    if (leftCost < rightCost) {
      high = right
      right = left
      rightCost = leftCost
      left = high - ratio * (high - low)
      leftCost = cost(Math.exp(left))
    } else {
      low = left
      left = right
      leftCost = rightCost
      right = low + ratio * (high - low)
      rightCost = cost(Math.exp(right))
    }
  }
  return Math.exp((low + high) / 2)
}
