/** One night from arrival to departure: what happens inside, what it costs, and what it leaves for the leg. */
import { invariant } from '../result/index.ts'
import { J_PER_WH, WH_PER_KWH } from '../units/index.ts'
import { shellSpread01 } from './cabin-defaults.ts'
import { legOutcome } from './leg.ts'
import { dewPointFromPa, saturationPa } from './moisture-saturation.ts'
import { nightCautions } from './night-cautions.ts'
import { prepareNight } from './night-prepare.ts'
import { runNight } from './night-run.ts'
import { utcOf } from './night-state.ts'
import { sleepRows } from './sleepers.ts'
import { sleeperVerdicts } from './sleepers-verdict.ts'
import { windowCosts } from './window-cost.ts'
import type { Prepared } from './night-prepare.ts'
import type { NightRun } from './night-run.ts'
import type { RunColumns } from './night-state.ts'
import type { EnergyBalance, LegOutcome, NightInput, NightOutcome, NightSeries, PaneOutcome } from './types.ts'

/** Grams in a kilogram (exact). */
const G_PER_KG_WATER = 1000
/** Film that shows as fog, g/m2 (droplets of some 10 µm, from memory). */
const FOG_G_PER_M2 = 5

/**
 * Simulates one night hour by hour.
 * Inputs in °C, W, Wh, s, A and V; people are taken to be in the vehicle from arrival to departure, awake outside their hours of sleep.
 * Result: one row a step stamped at its end (temperatures then, powers as means over the step), totals, verdicts and cautions.
 * The coldest bed is that of the hours asleep. `heatingWh` counts heater, its fan and controls, and bed heaters; `chargeW` is negative while the battery gives.
 * Second-order implicit steps of at most 100 s that end on every event, with the front air held at its aim in both stages; heat and water balances close to rounding.
 */
export function simulateNight(input: NightInput): NightOutcome {
  const prepared = prepareNight(input)
  return outcomeOf(prepared, runNight(prepared, input.decisions, true))
}

/** Everything told of one run. */
export function outcomeOf(prepared: Prepared, run: NightRun): NightOutcome {
  const { input } = prepared
  const { columns, totals } = run
  const sleepers = sleeperVerdicts(input, input.decisions, columns)
  const coldestBed = sleepRows(input, columns).reduce(
    (best, row) => ((columns.bedAirC[row] ?? 0) < (columns.bedAirC[best] ?? Infinity) ? row : best),
    -1,
  )
  const coldestOutside = leastRow(columns.outsideC)
  const depart01 = input.battery === null ? null : run.charge01
  const meanInside = mean(columns.bedAirC)
  return {
    series: seriesOf(columns),
    supply: prepared.supply,
    sleepers,
    coldestBedC: columns.bedAirC[coldestBed] ?? 0,
    coldestBedUtc: utcOf(columns.atUtc[coldestBed] ?? 0),
    coldestOutsideC: columns.outsideC[coldestOutside] ?? 0,
    coldestOutsideUtc: utcOf(columns.atUtc[coldestOutside] ?? 0),
    heatingWh: totals.heatingWh,
    fromSiteWh: totals.supplyWh,
    wiringLossWh: totals.wiringWh,
    intoBatteryWh: totals.intoBatteryWh,
    arrive01: input.battery?.arrive01 ?? null,
    depart01,
    leisureDepart01: input.leisure === null ? null : run.leisure01,
    leg: legOf(input, depart01),
    cost: costOf(input, totals.supplyWh),
    condensateG: mostOf(columns.condensateG),
    frostG: mostOf(columns.frostG),
    liningG: mostOf(columns.liningG),
    ...(totals.drainedKg > 0 ? { coilDrainG: totals.drainedKg * G_PER_KG_WATER } : {}),
    co2MaxPpm: mostOf(columns.co2Ppm),
    lossWPerK: {
      shell: run.shellWPerK,
      freshAir: run.freshWPerK,
      total: run.shellWPerK + run.freshWPerK,
      shellSpread01: shellSpread01(input.cabin),
    },
    overheadWh: totals.overheadWh,
    windowGapCostW: run.gapWPerK * Math.max(0, meanInside - mean(columns.outsideC)),
    glass: glassOf(prepared, run),
    windowCosts: windowCosts(prepared, columns),
    ...(totals.keptOnWh > 0 ? { keptOnWh: totals.keptOnWh } : {}),
    balance: balanceOf(run),
    cautions: nightCautions(input, run, prepared.supply, sleepers),
    stopsUtc: run.stopsUtc,
  }
}

/** Water and frost of each pane; a film too thin to see does not count as wet. */
function glassOf({ input }: Prepared, run: NightRun): readonly PaneOutcome[] {
  const { atUtc } = run.columns
  const first = (column: readonly number[], leastG: number): PaneOutcome['wetFromUtc'] => {
    const row = column.findIndex((grams) => grams > leastG)
    return row < 0 ? null : utcOf(atUtc[row] ?? 0)
  }
  return run.panes.map(({ surfaceC, filmKg }, index) => {
    const pane = input.cabin.panes[index]
    invariant(pane !== undefined, 'each recorded pane is one of the cabin')
    const leastG = FOG_G_PER_M2 * pane.areaM2
    const grams = (frozen: boolean): number[] =>
      Array.from(filmKg, (kg, row) => ((surfaceC[row] ?? 0) < 0 === frozen ? kg * G_PER_KG_WATER : 0))
    const condensateG = grams(false)
    const frostG = grams(true)
    return {
      id: pane.id,
      surfaceC: Array.from(surfaceC),
      condensateG,
      frostG,
      mostCondensateG: condensateG.reduce((most, value) => Math.max(most, value), 0),
      mostFrostG: frostG.reduce((most, value) => Math.max(most, value), 0),
      wetFromUtc: first(condensateG, leastG),
      frostFromUtc: first(frostG, leastG),
    }
  })
}

/** What the leg makes of a departure charge; null without a leg or a driving battery. */
export function legOf(input: NightInput, depart01: number | null): LegOutcome | null {
  if (input.leg === null || input.battery === null || depart01 === null) return null
  return legOutcome({ leg: input.leg, battery: input.battery, depart01 })
}

/** Price of the night on the post, in the trip's currency. */
export function costOf(input: NightInput, supplyWh: number): number {
  if (input.supply === null) return 0
  return input.supply.fixedPrice + (input.supply.pricePerKWh ?? 0) * (supplyWh / WH_PER_KWH)
}

function balanceOf({ totals }: NightRun): EnergyBalance {
  const heatOutJ = totals.shellJ + totals.skyJ + totals.airJ
  return {
    heatInWh: totals.heatInJ / J_PER_WH,
    heatOutWh: heatOutJ / J_PER_WH,
    storedWh: totals.storedJ / J_PER_WH,
    residualWh: (totals.heatInJ - heatOutJ - totals.storedJ) / J_PER_WH,
    shellWh: totals.shellJ / J_PER_WH,
    freshAirWh: totals.airJ / J_PER_WH,
    skyWh: totals.skyJ / J_PER_WH,
    waterInG: totals.waterInKg * G_PER_KG_WATER,
    waterOutG: totals.waterOutKg * G_PER_KG_WATER,
    waterStoredG: totals.waterStoredKg * G_PER_KG_WATER,
    waterResidualG: (totals.waterInKg - totals.waterOutKg - totals.waterStoredKg) * G_PER_KG_WATER,
  }
}

function seriesOf(columns: RunColumns): NightSeries {
  return {
    atUtc: Array.from(columns.atUtc, utcOf),
    outsideC: Array.from(columns.outsideC),
    frontAirC: Array.from(columns.frontAirC),
    bedAirC: Array.from(columns.bedAirC),
    massC: Array.from(columns.massC),
    floorC: Array.from(columns.floorC),
    glassC: Array.from(columns.glassC),
    operativeC: Array.from(columns.operativeC),
    feetC: Array.from(columns.feetC),
    dewPointC: Array.from(columns.vapourPa, dewPointFromPa),
    relativeHumidity01: Array.from(columns.vapourPa, (pa, row) =>
      Math.min(1, pa / saturationPa(columns.bedAirC[row] ?? 0)),
    ),
    co2Ppm: Array.from(columns.co2Ppm),
    condensateG: Array.from(columns.condensateG),
    frostG: Array.from(columns.frostG),
    heatW: Array.from(columns.heatW),
    heatingElectricW: Array.from(columns.heatingElectricW),
    bedHeatW: Array.from(columns.bedHeatW),
    supplyW: Array.from(columns.supplyW),
    chargeW: Array.from(columns.chargeW),
    wiringLossW: Array.from(columns.wiringLossW),
    charge01: Array.from(columns.charge01),
    leisure01: Array.from(columns.leisure01),
  }
}

const leastRow = (column: Float64Array): number =>
  column.reduce((best, value, row) => (value < (column[best] ?? Infinity) ? row : best), 0)
const mostOf = (column: Float64Array): number => column.reduce((most, value) => Math.max(most, value), -Infinity)
const mean = (column: Float64Array): number => column.reduce((sum, value) => sum + value, 0) / column.length
