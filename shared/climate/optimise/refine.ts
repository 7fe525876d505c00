/** Least heat that keeps everyone warm: a held set-point by bisection, or one that follows the night in short pieces. */
import { runNight } from '../night-run.ts'
import { utcOf } from '../night-state.ts'
import { bedClimateAt, marginK, sleepRows, sleeperModels } from '../sleepers.ts'
import { LEAST_SET_POINT_C, heldProfile } from './candidates.ts'
import { score, scoreOf } from './score.ts'
import type { NightRun } from '../night-run.ts'
import type { Prepared } from '../night-prepare.ts'
import type { NightDecisions } from '../types.ts'
import type { Scored } from './front.ts'

/** Bisections of the held set-point: 19 K / 2^9 is 0.04 K. */
const BISECTIONS = 9
const MOST_SET_POINT_C = 24
/** A followed set-point changes this often, s; oftener just after bedtime, while the cabin still warms through (engine's convention). */
const PIECE_S = 900
const FIRST_PIECE_S = 300
const FIRST_PIECES = 12
/** Turns of the fit, and the part of a margin that a set-point gives back (engine's convention). */
const TURNS = 18
const GIVEN_01 = 0.9
/** Leads before bed, s: the shortest that works, found to a quarter of a minute (engine's convention). */
const LEADS_S = [0, 300, 900, 1800, 3600, 7200] as const
const LEAD_TURNS = 6
/** A margin this little short still counts as warm enough, K (engine's convention). */
const SHORT_K = 0.002

export type Refined = { readonly points: readonly Scored[]; readonly evaluated: number }

/** The frugal plan of the sweep made more frugal still; followed pieces only where asked for. */
export function justWarmEnough(prepared: Prepared, swept: readonly Scored[], follow: boolean): Refined {
  const { input } = prepared
  if (input.heater.kind === 'none') return { points: [], evaluated: 0 }
  const frugal = swept
    .filter((point) => point.comfortMarginK >= 0)
    .reduce<Scored | null>((best, point) => (best === null || point.heatingWh < best.heatingWh ? point : best), null)
  if (frugal === null) return { points: [], evaluated: 0 }
  let low = LEAST_SET_POINT_C
  let high = MOST_SET_POINT_C
  let found: Scored | null = null
  for (let turn = 0; turn < BISECTIONS; turn += 1) {
    const middle = turn === 0 ? low : (low + high) / 2
    const point = score(prepared, { ...frugal.decisions, setPoints: heldProfile(input, middle) })
    if (point.comfortMarginK >= 0) {
      found = point
      high = middle
      if (turn === 0) break
    } else low = middle
  }
  const held = found === null ? [] : [found]
  if (!follow) return { points: held, evaluated: BISECTIONS }
  const followed = followFromShortestLead(prepared, frugal.decisions, high)
  return {
    points: followed.best === null ? held : [...held, followed.best],
    evaluated: BISECTIONS + followed.evaluated,
  }
}

/** The later the heating starts, the less it takes, as long as bedtime finds the bed warm. */
function followFromShortestLead(
  prepared: Prepared,
  from: NightDecisions,
  startC: number,
): { readonly best: Scored | null; readonly evaluated: number } {
  let best: Scored | null = null
  let evaluated = 0
  let short = 0
  let long = Infinity
  const attempt = (leadS: number): void => {
    const found = followNight(prepared, from, startC, leadS)
    evaluated += TURNS
    if (found === null) short = leadS
    else {
      long = leadS
      if (best === null || found.heatingWh < best.heatingWh) best = found
    }
  }
  for (const leadS of LEADS_S) {
    if (long === Infinity) attempt(leadS)
  }
  for (let turn = 0; turn < LEAD_TURNS && long - short > 15 && long < Infinity; turn += 1) attempt((short + long) / 2)
  return { best, evaluated }
}

/** Set-points for each piece of the hours asleep, fitted so that no piece has anything to spare; none where the heater is too weak. */
function followNight(prepared: Prepared, from: NightDecisions, startC: number, leadS: number): Scored | null {
  const { input } = prepared
  if (input.sleepFromUtc - leadS < input.arriveUtc) return null
  const starts = pieceStarts(input.sleepFromUtc, input.sleepToUtc)
  const set = starts.map(() => startC)
  let best: Scored | null = null
  for (let turn = 0; turn < TURNS; turn += 1) {
    const decisions = { ...from, setPoints: followedProfile(prepared, starts, set, leadS) }
    const run = runNight(prepared, decisions)
    const scored = scoreOf(prepared, decisions, run)
    if (scored.comfortMarginK >= -SHORT_K && (best === null || scored.heatingWh < best.heatingWh)) best = scored
    marginsByPiece(prepared, decisions, run, starts).forEach((margin, piece) => {
      set[piece] = Math.min(60, (set[piece] ?? startC) - GIVEN_01 * margin)
    })
  }
  return best
}

function pieceStarts(fromUtc: number, toUtc: number): readonly number[] {
  const starts: number[] = []
  for (let at = fromUtc; at < toUtc; at += starts.length <= FIRST_PIECES ? FIRST_PIECE_S : PIECE_S) starts.push(at)
  return starts
}

/** Least margin in each piece, K; nought where a piece holds no row. */
function marginsByPiece(
  prepared: Prepared,
  decisions: NightDecisions,
  run: NightRun,
  starts: readonly number[],
): readonly number[] {
  const { input } = prepared
  const margins = starts.map(() => Infinity)
  const heated = sleeperModels(input, decisions, true)
  const unheated = sleeperModels(input, decisions, false)
  let piece = 0
  for (const row of sleepRows(input, run.columns)) {
    while (piece + 1 < starts.length && (starts[piece + 1] ?? Infinity) < (run.columns.atUtc[row] ?? 0)) piece += 1
    const models = (run.columns.bedHeatW[row] ?? 0) > 0 ? heated : unheated
    const climate = bedClimateAt(run.columns, row)
    const margin =
      models.length === 0
        ? climate.operativeC
        : models.reduce((least, model) => Math.min(least, marginK(model, climate).marginK), Infinity)
    margins[piece] = Math.min(margins[piece] ?? Infinity, margin)
  }
  return margins.map((margin) => (Number.isFinite(margin) ? margin : 0))
}

function followedProfile(
  { input }: Prepared,
  starts: readonly number[],
  set: readonly number[],
  leadS: number,
): NightDecisions['setPoints'] {
  return [
    ...starts.map((fromUtc, piece) => ({
      fromUtc: utcOf(piece === 0 ? fromUtc - leadS : fromUtc),
      tempC: set[piece] ?? null,
    })),
    { fromUtc: input.sleepToUtc, tempC: null },
  ]
}
