/** The night search: how warm can we be on this supply and still make tomorrow's leg, at what cost, and with which bedding. */
import { invariant } from '../../result/index.ts'
import { prepareNight } from '../night-prepare.ts'
import { bedHeaterSets, chargings, coverChoices, gentleCurrentA, profiles, ventilations } from './candidates.ts'
import { nonDominated } from './front.ts'
import { reasonsFor } from './reasons.ts'
import { recommend } from './recommend.ts'
import { justWarmEnough } from './refine.ts'
import { score, scoreSets } from './score.ts'
import type { NightSearchOptions } from './candidates.ts'
import type { Scored } from './front.ts'
import type { Prepared } from '../night-prepare.ts'
import type { NightDecisions, NightInput } from '../types.ts'
import type { FrontPoint, NightSearch } from '../answers.ts'

/** Steps of the first sweep, s: coarse, only to rank; the front is run again at the night's own step. */
const SWEEP_STEP_S = 900
/** Air must stay under this CO2, ppm, where any plan can (guideline limit for bedrooms and offices). */
const CO2_LIMIT_PPM = 2000
/** Below this all night outside a window is opened for air alone, °C (common practice). */
const WARM_NIGHT_C = 15
/** Longest front that is told, and most plans whose charging is varied (engine's convention). */
const FRONT_SIZE = 16
const CHARGED_SIZE = 12
/** What-if: outside colder by this, K, and a leg that takes this much more (the what-ifs asked for: 5 K, 10 %). */
const COLDER_K = 5
const THIRSTIER = 1.1

/**
 * Plans of one night that none beats on comfort, departure charge, cost and moves, with the one recommended.
 * Input as for `simulateNight`; options narrow or widen what is tried. Result: the front in falling comfort margin (K), its charges (fraction),
 * leg margins (Wh), costs and handlings; the recommended index with its reasons and what happens when it is colder or the leg takes more.
 * Sweeps coarse nights, each under every bedding set, keeps what is not beaten, refines the lowest set-point that is warm enough, tries
 * currents and charge limits on those, and runs the front at full resolution.
 */
export function searchNight(input: NightInput, options: NightSearchOptions = {}): NightSearch {
  const coarse = prepareNight({ ...input, stepS: Math.max(input.stepS, SWEEP_STEP_S) }, SWEEP_STEP_S)
  const swept = sweep(coarse, options)
  const fine = prepareNight(input)
  const followed = options.profiles === 'followed'
  const refined = justWarmEnough(followed ? fine : coarse, swept, followed)
  const warm = nonDominated([...swept, ...refined.points])
  const charged = charge(coarse, thinned(input, warm, CHARGED_SIZE), options)
  const told = thinned(input, nonDominated([...warm, ...charged]), FRONT_SIZE).map((point) =>
    score(fine, point.decisions),
  )
  const front = nonDominated(told)
  const choice = recommend(input, front)
  const chosen = front[choice.index]
  invariant(chosen !== undefined, 'a search finds at least one plan')
  return {
    front: front.map((point) => pointOf(input, point)),
    recommendedIndex: choice.index,
    reason: choice.reason,
    reasons: reasonsFor(input, front, chosen, fine.supply),
    sensitivity: sensitivityOf(input, chosen.decisions),
    evaluated: swept.length + refined.evaluated + charged.length + told.length,
  }
}

function sweep(prepared: Prepared, options: NightSearchOptions): Scored[] {
  const { input } = prepared
  const charging = chargings(input, options)[0] ?? input.decisions
  const shapes = profiles(input, options)
  const beds = bedHeaterSets(input)
  const gaps = ventilations(input, options)
  // In the cold a gap wider than the air asks for only costs warmth; on a warm night it may cool.
  const narrowest = input.weather.every(({ tempC }) => tempC < WARM_NIGHT_C)
  const scored: Scored[] = []
  for (const covers of coverChoices(input, options)) {
    for (const setPoints of shapes) {
      for (const bedHeaterIds of beds) {
        for (const { gapMm, sides } of gaps) {
          const air = { windowGapMm: gapMm, windowSides: sides, covers }
          const sets = scoreSets(prepared, { ...input.decisions, ...charging, setPoints, bedHeaterIds, ...air })
          scored.push(...sets)
          if (narrowest && sets.every((point) => point.co2MaxPpm <= CO2_LIMIT_PPM)) break
        }
      }
    }
  }
  // Where no plan meets the limit, those near the best air of the sweep.
  const bestAir = scored.reduce((least, point) => Math.min(least, point.co2MaxPpm), Infinity)
  const limit = Math.max(CO2_LIMIT_PPM, bestAir * 1.05)
  return scored.filter((point) => point.co2MaxPpm <= limit)
}

/** Currents and charge limits on plans whose warmth is settled: the night's own, what the leg needs, and the gentlest that still fills. */
function charge(prepared: Prepared, points: readonly Scored[], options: NightSearchOptions): readonly Scored[] {
  const { input } = prepared
  return points.flatMap((point) => {
    const swept = chargings(input, options)
      .filter(
        ({ currentA, chargeLimit01 }) =>
          !(currentA === point.decisions.currentA && chargeLimit01 === point.decisions.chargeLimit01),
      )
      .map((charging) => score(prepared, { ...point.decisions, ...charging }))
    if (options.currentsA !== undefined) return swept
    const gentle = [point, ...swept].flatMap((from) => {
      const currentA = gentleCurrentA(input, prepared.supply, from)
      return currentA === null || from.decisions.currentA !== null
        ? []
        : [score(prepared, { ...from.decisions, currentA })]
    })
    return [...swept, ...gentle]
  })
}

/** The one to recommend, the best by each measure, and the rest evenly spread, where there are more than can be told. */
function thinned(input: NightInput, points: readonly Scored[], size: number): readonly Scored[] {
  if (points.length <= size) return points
  const best = (worth: (point: Scored) => number): Scored | undefined =>
    points.toSorted((left, right) => worth(right) - worth(left))[0]
  const kept = new Set<Scored | undefined>([
    points[recommend(input, points).index],
    points[0],
    best((point) => point.depart01 ?? 0),
    best((point) => -point.cost),
    best((point) => -point.moves),
  ])
  const others = points.filter((point) => !kept.has(point))
  const room = Math.max(0, size - kept.size)
  const spread = new Set(Array.from({ length: room }, (_, index) => others[Math.floor((index * others.length) / room)]))
  return points.filter((point) => kept.has(point) || spread.has(point))
}

function sensitivityOf(input: NightInput, decisions: NightDecisions): NonNullable<NightSearch['sensitivity']> {
  const weather = input.weather.map((row) => ({ ...row, tempC: row.tempC - COLDER_K }))
  const colder = score(prepareNight({ ...input, weather }), decisions)
  const { leg } = input
  const thirsty = leg === null ? null : { ...leg, consumptionScale: (leg.consumptionScale ?? 1) * THIRSTIER }
  const usual = score(prepareNight({ ...input, leg: thirsty }), decisions)
  return {
    colder: { comfortMarginK: colder.comfortMarginK, depart01: colder.depart01, legMarginWh: colder.legMarginWh },
    thirstier: { legMarginWh: usual.legMarginWh },
  }
}

function pointOf(input: NightInput, point: Scored): FrontPoint {
  const { decisions, comfortMarginK, depart01, legMarginWh, cost, moves, risingC } = point
  const told = { decisions, comfortMarginK, depart01, legMarginWh, cost, moves, risingC }
  return (input.beddingSets ?? []).length === 0 ? told : { ...told, beddingVolumeMm3: point.beddingVolumeMm3 }
}
