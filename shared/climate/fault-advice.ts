/** What to do when something fails in the night: the fewest handlings that keep everyone warm and the leg within reach, and until when. */
import { CLO_M2K_PER_W } from '../units/index.ts'
import { sleepersUnder } from './bedding-sets.ts'
import { prepareNight } from './night-prepare.ts'
import { runNight } from './night-run.ts'
import { utcOf } from './night-state.ts'
import { legOf } from './simulate.ts'
import { bedClimateAt, marginK, sleeperModels } from './sleepers.ts'
import type { Prepared } from './night-prepare.ts'
import type { RunColumns } from './night-state.ts'
import type { Utc } from '../units/index.ts'
import type { BeddingSet, Fault, NightDecisions, NightInput } from './types.ts'
import type { FaultAction, FaultAdvice } from './answers.ts'

/** Steps of the trials, s: coarse, as dozens are run; instants are then good to a quarter of an hour. */
const TRIAL_STEP_S = 900
/** Levels to which the heating may be taken down, °C. */
const LOWER_C = [12, 8, 5] as const
/** Instants are found to this, s (engine's convention). */
const RESOLUTION_S = 60

type Trial = {
  readonly actions: readonly FaultAction[]
  /** Least margin of anyone asleep after the fault, K; infinite where nobody sleeps then. */
  readonly marginK: number
  readonly charge01: number
  readonly legMarginWh: number | null
  readonly legHolds: boolean
}

/**
 * Tries every sensible combination of actions at the fault's own instant.
 * Result: the least of them that keeps everyone's margin at zero or more and the leg within reach, with what it leads to and the latest instant
 * at which it still does; where none does, the one that leaves people warmest, and moving indoors. No action where the night holds anyway.
 */
export function adviseOn(input: NightInput, fault: Fault): FaultAdvice {
  const stepS = Math.max(input.stepS, TRIAL_STEP_S)
  const prepared = prepareNight({ ...input, fault, stepS }, stepS)
  const bare = attempt(prepared, fault, [], fault.atUtc)
  if (holds(bare)) return told(bare, { byUtc: null, byColdUtc: null })
  const coldFromUtc = firstCold(prepared, fault)
  const best = combinations(input, fault)
    .map((actions) => attempt(prepared, fault, actions, fault.atUtc))
    .reduce((left, right) => (better(right, left) ? right : left), bare)
  const latest = (fits: (trial: Trial) => boolean): Utc | null =>
    fits(best)
      ? latestFor((atUtc) => fits(attempt(prepared, fault, best.actions, atUtc)), fault.atUtc, input.departUtc)
      : null
  const byColdUtc = bare.marginK >= 0 ? null : (latest((trial) => trial.marginK >= 0) ?? coldFromUtc)
  if (best.marginK >= 0) return told(best, { byUtc: latest(holds), byColdUtc })
  return told({ ...best, actions: [...best.actions, { code: 'move-indoors' }] }, { byUtc: coldFromUtc, byColdUtc })
}

const holds = (trial: Trial): boolean => trial.marginK >= 0 && trial.legHolds

function told(trial: Trial, by: { readonly byUtc: Utc | null; readonly byColdUtc: Utc | null }): FaultAdvice {
  return {
    actions: trial.actions,
    holds: holds(trial),
    marginK: Number.isFinite(trial.marginK) ? trial.marginK : null,
    depart01: trial.legMarginWh === null ? null : trial.charge01,
    legMarginWh: trial.legMarginWh,
    ...by,
  }
}

/** Both first, then warmth, then the leg; then fewer actions, then the warmer, then the fuller. */
function better(left: Trial, right: Trial): boolean {
  const rank = (trial: Trial): number => (trial.marginK >= 0 ? 2 : 0) + (trial.legHolds ? 1 : 0)
  if (rank(left) !== rank(right)) return rank(left) > rank(right)
  if (left.marginK < 0 && Math.abs(left.marginK - right.marginK) > 0.1) return left.marginK > right.marginK
  if (left.actions.length !== right.actions.length) return left.actions.length < right.actions.length
  if (left.marginK !== right.marginK) return left.marginK > right.marginK
  return left.charge01 > right.charge01
}

/** All combinations of what this night has at hand: heating level, bed heaters, bedding, covers, the breaker. */
function combinations(input: NightInput, fault: Fault): readonly (readonly FaultAction[])[] {
  const { decisions } = input
  const choices: (readonly FaultAction[])[] = [heatingChoices(input, fault)]
  const off = input.bedHeaters.filter(({ id }) => !decisions.bedHeaterIds.includes(id))
  const powered = input.battery !== null || input.leisure !== null
  if (off.length > 0 && powered) choices.push([{ code: 'bed-heaters-on' }])
  choices.push(warmerSets(input).map(({ id: setId }) => ({ code: 'warmer-bedding', setId })))
  if (!decisions.covers && input.coversOwned === true) choices.push([{ code: 'covers-up' }])
  if (fault.kind === 'breaker-trips' && fault.resetUtc === null)
    choices.push([{ code: 'reset-lower', heldA: fault.heldA }])
  return choices.reduce<readonly (readonly FaultAction[])[]>(
    (sets, actions) => sets.flatMap((set) => [set, ...actions.map((action) => [...set, action])]),
    [[]],
  )
}

/** Sets at hand that leave nobody colder and someone warmer: the least handling and the warmest of them. */
function warmerSets(input: NightInput): readonly BeddingSet[] {
  const now = sleepersUnder(input, input.decisions.beddingSetId)
  const gainOf = (set: BeddingSet): number => {
    const gains = sleepersUnder(input, set.id).map(
      ({ bedding }, index) =>
        bedding.coverClo * CLO_M2K_PER_W +
        bedding.matM2KPerW -
        (now[index]?.bedding.coverClo ?? 0) * CLO_M2K_PER_W -
        (now[index]?.bedding.matM2KPerW ?? 0),
    )
    return gains.some((gain) => gain < 0) ? 0 : gains.reduce((sum, gain) => sum + gain, 0)
  }
  const warmer = (input.beddingSets ?? []).filter((set) => set.aboard !== false && gainOf(set) > 1e-9)
  const easiest = warmer.toSorted((left, right) => left.moves - right.moves)[0]
  const warmest = warmer.toSorted((left, right) => gainOf(right) - gainOf(left))[0]
  return [...new Set([easiest, warmest])].filter((set) => set !== undefined)
}

/** Taking the heating down only helps the leg, where it runs on the driving battery after the fault. */
function heatingChoices(input: NightInput, fault: Fault): readonly FaultAction[] {
  if (fault.kind === 'heater-fails' || input.battery === null || input.heater.kind === 'none') return []
  const highestC = input.decisions.setPoints.reduce((most, { tempC }) => Math.max(most, tempC ?? most), -Infinity)
  if (highestC === -Infinity) return []
  const lower = LOWER_C.filter((tempC) => tempC < highestC)
  return [...lower.map((tempC) => ({ code: 'lower-heating', tempC }) as const), { code: 'heating-off' }]
}

/** The night with actions taken at an instant. */
function attempt(prepared: Prepared, fault: Fault, actions: readonly FaultAction[], atUtc: number): Trial {
  const reset = actions.some(({ code }) => code === 'reset-lower') && fault.kind === 'breaker-trips'
  const input: NightInput = reset ? { ...prepared.input, fault: { ...fault, resetUtc: utcOf(atUtc) } } : prepared.input
  const decisions = actions.reduce((taken, action) => takeAction(input, taken, action, atUtc), input.decisions)
  const run = runNight({ ...prepared, input }, decisions)
  const leg = legOf(input, run.charge01)
  return {
    actions,
    marginK: leastMarginK(input, decisions, run.columns, { fromUtc: fault.atUtc, changeUtc: atUtc }),
    charge01: run.charge01,
    legMarginWh: leg?.marginWh ?? null,
    legHolds: leg?.reachable ?? true,
  }
}

function takeAction(input: NightInput, decisions: NightDecisions, action: FaultAction, atUtc: number): NightDecisions {
  const at = utcOf(atUtc)
  const before = decisions.setPoints.filter(({ fromUtc }) => fromUtc < at)
  switch (action.code) {
    case 'heating-off':
      return { ...decisions, setPoints: [...before, { fromUtc: at, tempC: null }] }
    case 'lower-heating': {
      const { tempC } = action
      const least = (point: NightDecisions['setPoints'][number]) => ({
        ...point,
        tempC: point.tempC === null ? null : Math.min(point.tempC, tempC),
      })
      const ruling = before.at(-1)
      const now = ruling === undefined ? [] : [least({ ...ruling, fromUtc: at })]
      const after = decisions.setPoints.filter(({ fromUtc }) => fromUtc >= at)
      return { ...decisions, setPoints: [...before, ...now, ...after.map(least)] }
    }
    case 'bed-heaters-on':
      return {
        ...decisions,
        bedHeaterIds: input.bedHeaters.map(({ id }) => id),
        bedHeatersFromUtc: utcOf(Math.max(at, input.sleepFromUtc)),
      }
    case 'covers-up':
      return { ...decisions, coversFromUtc: at }
    case 'warmer-bedding':
      return { ...decisions, beddingSetId: action.setId }
    case 'reset-lower':
    case 'move-indoors':
      return decisions
  }
}

type Margins = {
  /** Only rows after this count. */
  readonly fromUtc: number
  /** The night's own bedding rules until here, that of the decisions after it. */
  readonly changeUtc: number
}

/** Margin of the coldest sleeper row by row, K: rows asleep after an instant, under the old bedding and then the new. */
function* marginsOf(
  input: NightInput,
  decisions: NightDecisions,
  columns: RunColumns,
  { fromUtc, changeUtc }: Margins,
): Generator<{ readonly row: number; readonly marginK: number }> {
  const models = (setId: string | undefined, heated: boolean) => {
    const { bedHeaterIds } = decisions
    return sleeperModels(input, setId === undefined ? { bedHeaterIds } : { bedHeaterIds, beddingSetId: setId }, heated)
  }
  const [oldSet, newSet] = [input.decisions.beddingSetId, decisions.beddingSetId]
  const before = [models(oldSet, false), models(oldSet, true)] as const
  const after = [models(newSet, false), models(newSet, true)] as const
  for (const [row, atUtc] of columns.atUtc.entries()) {
    if (atUtc <= fromUtc || atUtc <= input.sleepFromUtc || atUtc > input.sleepToUtc) continue
    const climate = bedClimateAt(columns, row)
    const now = (atUtc > changeUtc ? after : before)[(columns.bedHeatW[row] ?? 0) > 0 ? 1 : 0]
    yield { row, marginK: now.reduce((least, model) => Math.min(least, marginK(model, climate).marginK), Infinity) }
  }
}

function leastMarginK(input: NightInput, decisions: NightDecisions, columns: RunColumns, over: Margins): number {
  let least = Infinity
  for (const { marginK: now } of marginsOf(input, decisions, columns, over)) least = Math.min(least, now)
  return least
}

/** Start of the first row after the fault in which someone asleep is too cold without any action; null where nobody is. */
function firstCold(prepared: Prepared, fault: Fault): Utc | null {
  const { input } = prepared
  const { columns } = runNight(prepared, input.decisions)
  const over = { fromUtc: fault.atUtc, changeUtc: Infinity }
  for (const { row, marginK: now } of marginsOf(input, input.decisions, columns, over))
    if (now < 0) return utcOf(Math.max(fault.atUtc, columns.atUtc[row - 1] ?? 0))
  return null
}

/** Latest instant at which something still holds, where it holds at the first; to the minute, by bisection. */
function latestFor(holdsAt: (atUtc: number) => boolean, firstUtc: number, lastUtc: number): Utc {
  if (holdsAt(lastUtc)) return utcOf(lastUtc)
  let good = firstUtc
  let late = lastUtc
  while (late - good > RESOLUTION_S) {
    const middle = (good + late) / 2
    if (holdsAt(middle)) good = middle
    else late = middle
  }
  return utcOf(good)
}
