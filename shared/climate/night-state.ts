/** What one run of a night carries from step to step, and the rows it leaves. */
import { COIL_C } from './heater.ts'
import { saturationRatio } from './moisture-saturation.ts'
import { blendOf } from './network-blend.ts'
import { FIRST_PANE, at, blankFactor, blankStage } from './network-step.ts'
import type { Utc } from '../units/index.ts'
import type { MoistureScratch, MoistureState, MoistureStep } from './moisture.ts'
import type { Blend } from './network-blend.ts'
import type { Factor, Stage } from './network-step.ts'
import type { Network } from './network.ts'
import type { PowerState, Settled, SupplyNow } from './night-power.ts'
import type { Prepared } from './night-prepare.ts'
import type { NightDecisions, NightSeries } from './types.ts'

/** CO2 outdoors, ppm (about 2025, from memory). */
export const OUTSIDE_CO2_PPM = 425
/** Inside on arrival after a heated drive, °C (common practice). */
const WARM_FROM_DRIVE_C = 18

/** One value a step, in arrays that a search can afford; dew point and humidity are told from the vapour pressure where asked for. */
export type RunColumns = Readonly<
  Record<Exclude<keyof NightSeries, 'dewPointC' | 'relativeHumidity01'> | 'vapourPa' | 'liningG', Float64Array>
>

/** One pane's columns, kept only where they are asked for. */
export type PaneColumns = { readonly surfaceC: Float64Array; readonly filmKg: Float64Array }

/** Sums over the night: heat in J, water in kg, electricity in Wh. */
export type RunTotals = {
  heatInJ: number
  shellJ: number
  skyJ: number
  airJ: number
  storedJ: number
  waterInKg: number
  waterOutKg: number
  /** Of it: off the cooling coil. */
  drainedKg: number
  waterStoredKg: number
  heatingWh: number
  supplyWh: number
  wiringWh: number
  intoBatteryWh: number
  keptOnWh: number
  overheadWh: number
}

export type StopReason = 'reserve' | 'switched-off' | 'may-not-run' | 'no-supply' | 'failed'

/** What holds between two events. */
export type Segment = {
  readonly supply: SupplyNow
  readonly setC: number | null
  readonly asleep: boolean
  readonly bedHeat: boolean
  readonly failed: boolean
  /** Covers are up. */
  readonly covers: boolean
}

/** Where an integration step lies: between which knots of the weather, its bounds as shares of the way, its start and its length. */
export type Part = {
  readonly knot: number
  readonly from01: number
  readonly to01: number
  readonly atUtc: number
  readonly stepS: number
}

/** What the heater may do in a part, and what each W of it takes; only where it is on. */
export type Drive = {
  readonly setC: number
  readonly mostHeatW: number
  readonly heatCop: number
  readonly mostCoolW: number
  /** What cooling aims at as the part begins, °C; it moves with the outside air. */
  readonly coolFromC: number
  readonly coolCop: number
}

/** Sums of the step under way, J. */
type StepSums = { heatJ: number; electricJ: number; bedJ: number; supplyJ: number; chargeJ: number; wiringJ: number }

export type Run = {
  readonly prepared: Prepared
  readonly decisions: NightDecisions
  readonly columns: RunColumns
  /** By pane; empty in a search. */
  readonly panes: readonly PaneColumns[]
  readonly totals: RunTotals
  readonly sums: StepSums
  readonly temps: Float64Array
  /** Between the start of a part and its first guess at the end. */
  readonly middle: Float64Array
  readonly first: Stage
  readonly second: Stage
  readonly right: Float64Array
  readonly factor: Factor
  readonly air: Factor['air']
  readonly moisture: MoistureState
  readonly wet: MoistureStep
  readonly scratch: MoistureScratch
  readonly power: PowerState
  readonly settled: Settled
  readonly bedHeaterW: number
  readonly startJ: number
  readonly startWaterKg: number
  /** At the wind and covers of the part under way. */
  readonly network: Blend
  networkWindMPerS: number
  networkCovers: boolean
  covers: boolean
  windMPerS: number
  gapM3PerH: number
  /** Outdoor air in all, m3/h. */
  exchangeM3PerH: number
  /** How fast the air inside, front and rear together, warmed over the last part, and that part's length. */
  insideKPerS: number
  lastPartS: number
  /** What the heater may do in the part under way; null while it is off. */
  drive: Drive | null
  heatW: number
  electricW: number
  heatingSinceUtc: number | null
  switchedOff: boolean
  /** The driving battery is at its reserve, or not yet clear of it. */
  atReserve: boolean
  /** The same of the leisure battery. */
  leisureEmpty: boolean
  stopsUtc: number | null
  stopReason: StopReason | null
  leastFreshM3PerH: number
  freshJPerK: number
  gapJPerK: number
  leisureFrozenUtc: number | null
}

/** Seconds as an instant, rounded to whole ones. */
export const utcOf = (seconds: number): Utc => Math.round(seconds) as Utc

export function startRun(prepared: Prepared, decisions: NightDecisions, withPanes: boolean): Run {
  const { input } = prepared
  const network = prepared.networkAt(0, decisions.covers)
  const size = FIRST_PANE + network.panes.length
  const surfaces = network.panes.length + 1
  const outsideC = at(prepared.outsideC, 0)
  const insideC = input.arriveInsideC ?? Math.max(outsideC, WARM_FROM_DRIVE_C)
  const temps = new Float64Array(size).fill(insideC)
  for (let node = FIRST_PANE; node < size; node += 1) temps[node] = (insideC + outsideC) / 2
  const coldestC = Math.min(insideC, outsideC)
  const ratio = Math.min(at(prepared.outsideRatio, 0), saturationRatio(coldestC, prepared.pressurePa))
  return {
    prepared,
    decisions,
    columns: blankColumns(prepared.steps),
    panes: withPanes
      ? network.panes.map(() => ({
          surfaceC: new Float64Array(prepared.steps),
          filmKg: new Float64Array(prepared.steps),
        }))
      : [],
    totals: blankTotals(),
    sums: { heatJ: 0, electricJ: 0, bedJ: 0, supplyJ: 0, chargeJ: 0, wiringJ: 0 },
    temps,
    middle: new Float64Array(size),
    first: blankStage(size),
    second: blankStage(size),
    right: new Float64Array(size),
    factor: blankFactor(network),
    air: { frontWPerK: 0, bedWPerK: 0, drawnWPerK: 0, mixingWPerK: 0 },
    moisture: {
      ratio,
      co2Ppm: OUTSIDE_CO2_PPM,
      filmKg: new Float64Array(surfaces),
      flowKgPerS: new Float64Array(surfaces),
      drainedKg: 0,
    },
    wet: blankWet(prepared, network, decisions.covers),
    scratch: {
      transfer: new Float64Array(surfaces),
      saturation: new Float64Array(surfaces),
      lagged: new Float64Array(surfaces),
    },
    power: { charge01: input.battery?.arrive01 ?? 0, leisure01: input.leisure?.arrive01 ?? 0 },
    settled: { supplyW: 0, wiringW: 0, intoBatteryW: 0, intoLeisureW: 0, keptOnW: 0 },
    bedHeaterW: input.bedHeaters.reduce(
      (sum, heater) => sum + (decisions.bedHeaterIds.includes(heater.id) ? heater.powerW : 0),
      0,
    ),
    startJ: heatContentJ(network, temps),
    startWaterKg: ratio * prepared.airKg,
    network: blendOf(network),
    networkWindMPerS: 0,
    networkCovers: decisions.covers,
    covers: decisions.covers,
    windMPerS: 0,
    gapM3PerH: 0,
    exchangeM3PerH: 0,
    insideKPerS: 0,
    lastPartS: 0,
    drive: null,
    heatW: 0,
    electricW: 0,
    heatingSinceUtc: null,
    switchedOff: false,
    atReserve: false,
    leisureEmpty: false,
    stopsUtc: null,
    stopReason: null,
    leastFreshM3PerH: Infinity,
    freshJPerK: 0,
    gapJPerK: 0,
    leisureFrozenUtc: null,
  }
}

/** Heat stored in all nodes over 0 °C, J. */
export function heatContentJ(network: Network, temps: Float64Array): number {
  const joule =
    network.frontJPerK * at(temps, 0) +
    network.bedJPerK * at(temps, 1) +
    network.massJPerK * at(temps, 2) +
    network.floorJPerK * at(temps, 3)
  return network.panes.reduce((sum, pane, index) => sum + pane.capacityJPerK * at(temps, FIRST_PANE + index), joule)
}

function blankWet(prepared: Prepared, network: Network, covers: boolean): MoistureStep {
  return {
    stepS: 1,
    airKg: prepared.airKg,
    exchangeKgPerS: 0,
    outsideRatio: 0,
    releaseKgPerS: 0,
    pressurePa: prepared.pressurePa,
    covers,
    areasM2: Float64Array.of(...network.panes.map((pane) => pane.areaM2), prepared.input.cabin.bodyAreaM2),
    coldestAirC: 0,
    coilKgPerS: 0,
    coilRatio: saturationRatio(COIL_C, prepared.pressurePa),
  }
}

function blankColumns(steps: number): RunColumns {
  const column = (): Float64Array => new Float64Array(steps)
  return {
    atUtc: column(),
    outsideC: column(),
    frontAirC: column(),
    bedAirC: column(),
    massC: column(),
    floorC: column(),
    glassC: column(),
    operativeC: column(),
    feetC: column(),
    vapourPa: column(),
    liningG: column(),
    co2Ppm: column(),
    condensateG: column(),
    frostG: column(),
    heatW: column(),
    heatingElectricW: column(),
    bedHeatW: column(),
    supplyW: column(),
    chargeW: column(),
    wiringLossW: column(),
    charge01: column(),
    leisure01: column(),
  }
}

const blankTotals = (): RunTotals => ({
  heatInJ: 0,
  shellJ: 0,
  skyJ: 0,
  airJ: 0,
  storedJ: 0,
  waterInKg: 0,
  waterOutKg: 0,
  drainedKg: 0,
  waterStoredKg: 0,
  heatingWh: 0,
  supplyWh: 0,
  wiringWh: 0,
  intoBatteryWh: 0,
  keptOnWh: 0,
  overheadWh: 0,
})
