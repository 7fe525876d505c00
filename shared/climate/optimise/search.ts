/** The night search: how warm can we be on this supply and still make tomorrow's leg, and at what cost. */
import { invariant } from '../../result/index.ts'
import { prepareNight } from '../night-prepare.ts'
import { runNight } from '../night-run.ts'
import { costOf, legOf } from '../simulate.ts'
import { comfortMarginK, sleepRows } from '../sleepers.ts'
import { bedHeaterSets, chargings, heldProfile, profiles, ventilations } from './candidates.ts'
import { nonDominated } from './front.ts'
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
/** Bisections of the lowest set-point that keeps everyone warm: 15 K / 2^9 is 0.03 K. */
const REFINEMENTS = 9
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
  const warm = nonDominated([...swept, ...justWarmEnough(coarse, swept)])
  const charged = warm.flatMap((point) =>
    chargings(input, options).map((charging) => score(coarse, { ...point.decisions, ...charging })),
  )
  const fine = prepareNight(input)
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
    evaluated: swept.length + REFINEMENTS + charged.length + told.length,
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

function score(prepared: Prepared, decisions: NightDecisions): Scored {
  const { input } = prepared
  const run = runNight(prepared, decisions)
  const depart01 = input.battery === null ? null : run.charge01
  const leg = legOf(input, depart01)
  return {
    decisions,
    comfortMarginK:
      input.sleepers.length === 0
        ? run.columns.operativeC.reduce((least, tempC) => Math.min(least, tempC), Infinity)
        : comfortMarginK(input, decisions, run.columns),
    depart01,
    legMarginWh: leg?.marginWh ?? null,
    cost: costOf(input, run.totals.supplyWh),
    co2MaxPpm: sleepRows(input, run.columns).reduce((most, row) => Math.max(most, run.columns.co2Ppm[row] ?? 0), 0),
    legReachable: leg?.reachable ?? true,
    heatingWh: run.totals.heatingWh,
  }
}

/** The lowest held set-point at which everyone is just warm enough, on the best bed heaters and gap of the sweep. */
function justWarmEnough(prepared: Prepared, swept: readonly Scored[]): Scored[] {
  const { input } = prepared
  if (input.heater.kind === 'none') return []
  const enough = swept.filter((point) => point.comfortMarginK >= 0)
  const frugal = enough.reduce<Scored | null>(
    (best, point) => (best === null || point.heatingWh < best.heatingWh ? point : best),
    null,
  )
  if (frugal === null) return []
  let low = -5
  let high = 20
  let found: Scored | null = null
  for (let turn = 0; turn < REFINEMENTS; turn += 1) {
    const middle = (low + high) / 2
    const point = score(prepared, { ...frugal.decisions, setPoints: heldProfile(input, middle) })
    if (point.comfortMarginK >= 0) {
      found = point
      high = middle
    } else low = middle
  }
  return found === null ? [] : [found]
}

/** Evenly spread over the front, its ends kept, where it is longer than can be told. */
function thinned(points: readonly Scored[], size: number): readonly Scored[] {
  if (points.length <= size) return points
  return points.filter(
    (_, index) => Math.floor((index * size) / points.length) !== Math.floor(((index - 1) * size) / points.length),
  )
}

type Choice = { readonly index: number; readonly reason: NonNullable<NightSearch['reason']> }

/** Warm and the leg direct, cheapest first; else warm with a stop; else the leg before warmth; else the warmest. */
function recommend(input: NightInput, front: readonly Scored[]): Choice {
  const warm = (point: Scored): boolean => point.comfortMarginK >= 0
  const direct = (point: Scored): boolean => (point.legMarginWh ?? 0) >= 0
  const hasLeg = input.leg !== null && input.battery !== null
  const steps: readonly (readonly [Choice['reason'], (point: Scored) => boolean])[] = [
    [hasLeg ? 'warm-and-leg' : 'warm-no-leg', (point) => warm(point) && direct(point)],
    ['warm-with-stop', (point) => warm(point) && point.legReachable],
    ['leg-first', (point) => direct(point)],
    ['leg-first', (point) => point.legReachable],
  ]
  for (const [reason, fits] of steps) {
    const index = bestOf(front, fits, reason === 'leg-first')
    if (index !== null) return { index, reason }
  }
  return { index: bestOf(front, () => true, true) ?? 0, reason: 'warmest' }
}

/** Best of those that fit: the warmest where warmth is short, else the cheapest, then the fullest. */
function bestOf(front: readonly Scored[], fits: (point: Scored) => boolean, warmest: boolean): number | null {
  let best: number | null = null
  front.forEach((point, index) => {
    if (!fits(point)) return
    const holder = best === null ? null : (front[best] ?? null)
    if (holder === null || better(point, holder, warmest)) best = index
  })
  return best
}

function better(point: Scored, holder: Scored, warmest: boolean): boolean {
  if (warmest) return point.comfortMarginK > holder.comfortMarginK
  if (point.cost !== holder.cost) return point.cost < holder.cost
  return (
    (point.depart01 ?? 0) > (holder.depart01 ?? 0) ||
    (point.depart01 === holder.depart01 && point.heatingWh < holder.heatingWh)
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
