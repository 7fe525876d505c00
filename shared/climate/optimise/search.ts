/** The night search: how warm can we be on this supply and still make tomorrow's leg, and at what cost. */
import { invariant } from '../../result/index.ts'
import { prepareNight } from '../night-prepare.ts'
import { bedHeaterSets, chargings, profiles, ventilations } from './candidates.ts'
import { nonDominated } from './front.ts'
import { recommend } from './recommend.ts'
import { justWarmEnough } from './refine.ts'
import { score } from './score.ts'
import type { NightSearchOptions } from './candidates.ts'
import type { Scored } from './front.ts'
import type { Prepared } from '../night-prepare.ts'
import type { FrontPoint, NightDecisions, NightInput, NightSearch } from '../types.ts'

/** Steps of the first sweep, s: coarse, only to rank; the front is run again at the night's own step. */
const SWEEP_STEP_S = 900
/** Air must stay under this CO2, ppm, where any plan can (guideline limit for bedrooms and offices). */
const CO2_LIMIT_PPM = 2000
/** Longest front that is told. */
const FRONT_SIZE = 16
/** What-if: outside colder by this, K, and a leg that takes this much more. */
const COLDER_K = 5
const THIRSTIER = 1.1

/**
 * Plans of one night that none beats on comfort, departure charge and cost, with the one recommended.
 * Input as for `simulateNight`; options narrow or widen what is tried. Result: the front in falling comfort margin (K), its charges (fraction),
 * leg margins (Wh) and costs; the recommended index with its reason and what happens when it is colder or the leg takes more.
 * Sweeps coarse nights, keeps what is not beaten, refines the lowest set-point that is warm enough, and runs the front at full resolution.
 */
export function searchNight(input: NightInput, options: NightSearchOptions = {}): NightSearch {
  const coarse = prepareNight({ ...input, stepS: Math.max(input.stepS, SWEEP_STEP_S) }, SWEEP_STEP_S)
  const swept = sweep(coarse, options)
  const fine = prepareNight(input)
  const followed = options.profiles === 'followed'
  const refined = justWarmEnough(followed ? fine : coarse, swept, followed)
  const warm = nonDominated([...swept, ...refined.points])
  const charged = warm.flatMap((point) =>
    chargings(input, options).map((charging) => score(coarse, { ...point.decisions, ...charging })),
  )
  const told = thinned(nonDominated([...warm, ...charged]), FRONT_SIZE).map((point) => score(fine, point.decisions))
  const front = nonDominated(told)
  const choice = recommend(input, front)
  const chosen = front[choice.index]
  invariant(chosen !== undefined, 'a search finds at least one plan')
  return {
    front: front.map(pointOf),
    recommendedIndex: choice.index,
    reason: choice.reason,
    sensitivity: sensitivityOf(input, chosen.decisions),
    evaluated: swept.length + refined.evaluated + charged.length + told.length,
  }
}

function sweep(prepared: Prepared, options: NightSearchOptions): Scored[] {
  const { input } = prepared
  const covers = options.covers ?? [input.decisions.covers]
  const charging = chargings(input, options)[0] ?? input.decisions
  const scored: Scored[] = []
  for (const setPoints of profiles(input, options)) {
    for (const bedHeaterIds of bedHeaterSets(input)) {
      for (const { gapMm, sides } of ventilations(input, options)) {
        for (const up of covers) {
          const decisions = {
            ...input.decisions,
            ...charging,
            setPoints,
            bedHeaterIds,
            windowGapMm: gapMm,
            windowSides: sides,
            covers: up,
          }
          scored.push(score(prepared, decisions))
        }
      }
    }
  }
  // Where no plan meets the limit, those near the best air of the sweep.
  const bestAir = scored.reduce((least, point) => Math.min(least, point.co2MaxPpm), Infinity)
  const limit = Math.max(CO2_LIMIT_PPM, bestAir * 1.05)
  return scored.filter((point) => point.co2MaxPpm <= limit)
}

/** Evenly spread over the front, its ends kept, where it is longer than can be told. */
function thinned(points: readonly Scored[], size: number): readonly Scored[] {
  if (points.length <= size) return points
  return points.filter(
    (_, index) => Math.floor((index * size) / points.length) !== Math.floor(((index - 1) * size) / points.length),
  )
}

function sensitivityOf(input: NightInput, decisions: NightDecisions): NonNullable<NightSearch['sensitivity']> {
  const weather = input.weather.map((row) => ({ ...row, tempC: row.tempC - COLDER_K }))
  const colder = score(prepareNight({ ...input, weather }), decisions)
  const { leg } = input
  const thirsty =
    leg === null
      ? null
      : {
          ...leg,
          whPerKm: leg.whPerKm * THIRSTIER,
          dragAreaM2: scaled(leg.dragAreaM2),
          rollingCoefficient: scaled(leg.rollingCoefficient),
        }
  const usual = score(prepareNight({ ...input, leg: thirsty }), decisions)
  return {
    colder: { comfortMarginK: colder.comfortMarginK, depart01: colder.depart01, legMarginWh: colder.legMarginWh },
    thirstier: { legMarginWh: usual.legMarginWh },
  }
}

const scaled = (value: number | null): number | null => (value === null ? null : value * THIRSTIER)

const pointOf = ({ decisions, comfortMarginK, depart01, legMarginWh, cost }: Scored): FrontPoint => ({
  decisions,
  comfortMarginK,
  depart01,
  legMarginWh,
  cost,
})
