/** Whether each sleeper is warm enough, hour by hour: our steady heat balance and the bag's rating; the colder rules. */
import { CLO_M2K_PER_W } from '../units/index.ts'
import { sleepersUnder } from './bedding-sets.ts'
import { saturationPa } from './moisture-saturation.ts'
import { bodySurfaceM2 } from './sleepers-body.ts'
import type { RunColumns } from './night-state.ts'
import type { BedHeater, NightDecisions, NightInput, Sleeper, SleeperVerdict } from './types.ts'

/** Heat a sleeper makes, W/m2: 40 (ISO 8996, from memory) to 47 (ASHRAE 55 reclining); cold sleepers the least. */
const METABOLIC_W_PER_M2: Readonly<Record<Sleeper['sleeps'], number>> = { cold: 40, average: 43.5, warm: 47 }
/** Mean skin temperature of a comfortable sleeper, °C (from memory, ISO 11079 neutral range). */
const SKIN_C = 33
const SKIN_PA = saturationPa(SKIN_C)
/** Skin wettedness without sweating (ISO 11079, from memory). */
const WETTEDNESS = 0.06
/** Vapour permeability index of bedding (ISO 9920, from memory) and Lewis ratio, K/kPa. */
const PERMEABILITY = 0.38
const LEWIS_K_PER_KPA = 16.5
/** Still air over the bedding, m2K/W (ISO 9920: 0.7 clo, from memory). */
const AIR_LAYER_M2K_PER_W = 0.1
/** Share of the body that lies on the mat (estimate, 0.25 to 0.3). */
const LYING_SHARE_01 = 0.27
/** Squeezed bedding and clothes between skin and mat, m2K/W (estimate). */
const UNDER_M2K_PER_W = 0.05
/** Margin over an ISO 23537 comfort rating, K (common practice 5 to 8), and what cold and warm sleepers add. */
const RATING_MARGIN_K: Readonly<Record<Sleeper['sleeps'], number>> = { cold: 8, average: 5, warm: 5 }
/** Share of a bed heater's power that reaches the sleeper under the cover (estimates). */
const REACHES_01: Readonly<Record<BedHeater['kind'], number>> = {
  underblanket: 0.4,
  'heated-seat': 0.3,
  'foot-pad': 0.25,
}
/** Most that bed heaters count for, K: face and hands stay in the room's air, and people on bed heat alone complained of cold hands (club test, read). */
const BED_RELIEF_MAX_K = 8
/** Feet ask for this much more than the body as a whole, K (toes ran low in every bag tested: Lin and others 2013; size is an estimate). */
const FEET_EXTRA_K = 3
/** What a heater at the feet or along the body takes off the feet, K (estimates). */
const FEET_RELIEF_K: Readonly<Record<BedHeater['kind'], number>> = { 'foot-pad': 12, underblanket: 6, 'heated-seat': 1 }
/** Largest insulation that is named, clo: beyond it no bedding exists (engine's convention). */
const MOST_CLO = 15

/** Verdict words by margin, K: from these upwards (engine's convention, said in words). */
const WARM_FROM_K = 5
const COOL_FROM_K = -3
const COLD_FROM_K = -8

/** Surroundings of a sleeper at one instant. */
export type BedClimate = {
  readonly operativeC: number
  readonly floorC: number
  readonly feetC: number
  readonly bedAirC: number
  readonly vapourPa: number
}

/** A sleeper with all that does not change over the night. */
export type SleeperModel = {
  readonly sleeper: Sleeper
  readonly metabolicWPerM2: number
  readonly heatedWPerM2: number
  readonly feetReliefK: number
}

/** The sleeper under the night's bed heaters; several sleepers share them. */
export function sleeperModel(sleeper: Sleeper, sharedBy: number, heaters: readonly BedHeater[]): SleeperModel {
  const reachesW = heaters.reduce((sum, heater) => sum + heater.powerW * REACHES_01[heater.kind], 0)
  return {
    sleeper,
    metabolicWPerM2: METABOLIC_W_PER_M2[sleeper.sleeps],
    heatedWPerM2: reachesW / Math.max(sharedBy, 1) / bodySurfaceM2(sleeper),
    feetReliefK: heaters.reduce((most, heater) => Math.max(most, FEET_RELIEF_K[heater.kind]), 0),
  }
}

/** Heat that must leave dry through skin and bedding, W/m2: made, less breath and unfelt moisture. */
function dryHeatWPerM2(model: SleeperModel, climate: BedClimate, coverM2KPerW: number): number {
  const m = model.metabolicWPerM2
  // ISO 7730:2005 eq. 1, the two breath terms.
  const breath = 0.0014 * m * (34 - climate.bedAirC) + 1.7e-5 * m * (5867 - climate.vapourPa)
  const resistanceKPa = (coverM2KPerW + AIR_LAYER_M2K_PER_W) / (PERMEABILITY * LEWIS_K_PER_KPA)
  const skin = (WETTEDNESS * (SKIN_PA - climate.vapourPa)) / 1000 / resistanceKPa
  return m - breath - skin
}

/**
 * How much warmer the bed is than the sleeper needs, K, by heat balance; negative: too cold.
 * Surroundings in °C and Pa, bedding in clo and m2K/W. The answer is the shift of air, walls and floor at which heat made equals heat lost.
 * Derived: no standard covers a cold sleeper (PMV ends at 0 °C sensation -2, the IREQ program at 58 W/m2).
 */
export function balanceMarginK(model: SleeperModel, climate: BedClimate): number {
  const coverM2KPerW = Math.max(0, model.sleeper.bedding.coverClo) * CLO_M2K_PER_W
  const over = (1 - LYING_SHARE_01) / (coverM2KPerW + AIR_LAYER_M2K_PER_W)
  const under = LYING_SHARE_01 / (Math.max(0, model.sleeper.bedding.matM2KPerW) + UNDER_M2K_PER_W)
  const lost = over * (SKIN_C - climate.operativeC) + under * (SKIN_C - climate.floorC)
  const reliefK = Math.min(BED_RELIEF_MAX_K, model.heatedWPerM2 / (over + under))
  return (dryHeatWPerM2(model, climate, coverM2KPerW) - lost) / (over + under) + reliefK
}

/** Insulation over the sleeper at which the balance closes, clo, on the mat at hand; 15 where no bedding would do. */
export function requiredClo(model: SleeperModel, climate: BedClimate): number {
  let low = 0
  let high = MOST_CLO
  const margin = (clo: number): number =>
    balanceMarginK(
      { ...model, sleeper: { ...model.sleeper, bedding: { ...model.sleeper.bedding, coverClo: clo } } },
      climate,
    )
  if (margin(high) < 0) return MOST_CLO
  if (margin(0) >= 0) return 0
  for (let turn = 0; turn < 30; turn += 1) {
    const middle = (low + high) / 2
    if (margin(middle) >= 0) high = middle
    else low = middle
  }
  return high
}

/** How much warmer the bed is than the rating with its margin asks, K; null where nothing rated is used. Bed heaters count as the balance counts them. */
export function ratingMarginK(model: SleeperModel, climate: BedClimate): number | null {
  const { comfortC, coverClo } = model.sleeper.bedding
  if (comfortC === null) return null
  const perK = (1 - LYING_SHARE_01) / (coverClo * CLO_M2K_PER_W + AIR_LAYER_M2K_PER_W)
  const relief = Math.min(BED_RELIEF_MAX_K, model.heatedWPerM2 / perK)
  return climate.operativeC + relief - comfortC - RATING_MARGIN_K[model.sleeper.sleeps]
}

/** The colder of both judgements, K. */
export function marginK(
  model: SleeperModel,
  climate: BedClimate,
): { readonly marginK: number; readonly ruledBy: SleeperVerdict['ruledBy'] } {
  const balance = balanceMarginK(model, climate)
  const rating = ratingMarginK(model, climate)
  return rating !== null && rating < balance
    ? { marginK: rating, ruledBy: 'bag-rating' }
    : { marginK: balance, ruledBy: 'heat-balance' }
}

/** What the feet have in hand, K: they lie nearest the floor and the glass. */
export function feetMarginK(model: SleeperModel, climate: BedClimate): number {
  return marginK(model, { ...climate, operativeC: climate.feetC }).marginK - FEET_EXTRA_K + model.feetReliefK
}

/** Verdict word of a margin, K. */
export function verdictOf(margin: number): SleeperVerdict['verdict'] {
  if (margin >= WARM_FROM_K) return 'warm'
  if (margin >= 0) return 'enough'
  if (margin >= COOL_FROM_K) return 'cool'
  return margin >= COLD_FROM_K ? 'cold' : 'too-cold'
}

/** Surroundings at one row of a run. */
export function bedClimateAt(columns: RunColumns, row: number): BedClimate {
  const pick = (column: Float64Array): number => column[row] ?? 0
  return {
    operativeC: pick(columns.operativeC),
    floorC: pick(columns.floorC),
    feetC: pick(columns.feetC),
    bedAirC: pick(columns.bedAirC),
    vapourPa: pick(columns.vapourPa),
  }
}

/** Rows of the run in which people sleep: at least one. */
export function sleepRows(input: NightInput, columns: RunColumns): readonly number[] {
  const rows: number[] = []
  columns.atUtc.forEach((atUtc, row) => {
    if (atUtc > input.sleepFromUtc && atUtc <= input.sleepToUtc) rows.push(row)
  })
  return rows.length > 0 ? rows : [columns.atUtc.length - 1]
}

/** Models of all sleepers under the night's decisions. */
export const sleeperModels = (
  input: NightInput,
  decisions: Pick<NightDecisions, 'bedHeaterIds' | 'beddingSetId'>,
  heatersRan: boolean,
): readonly SleeperModel[] => {
  const heaters = heatersRan ? input.bedHeaters.filter((heater) => decisions.bedHeaterIds.includes(heater.id)) : []
  return sleepersUnder(input, decisions.beddingSetId).map((sleeper) =>
    sleeperModel(sleeper, input.sleepers.length, heaters),
  )
}

/** Least margin of any sleeper over the rows asleep, K; infinite where nobody sleeps. */
export function comfortMarginK(
  input: NightInput,
  decisions: Pick<NightDecisions, 'bedHeaterIds' | 'beddingSetId'>,
  columns: RunColumns,
): number {
  const warm = sleeperModels(input, decisions, true)
  const unheated = sleeperModels(input, decisions, false)
  let least = Infinity
  for (const row of sleepRows(input, columns)) {
    const climate = bedClimateAt(columns, row)
    for (const model of (columns.bedHeatW[row] ?? 0) > 0 ? warm : unheated)
      least = Math.min(least, marginK(model, climate).marginK)
  }
  return least
}
