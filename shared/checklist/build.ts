/** The checklist: rules over each night's facts, in order, with times, ticks and conflicts. */
import { carryOver } from './carry-over.ts'
import { expandRules, momentAt } from './expand.ts'
import type { Draft } from './expand.ts'
import { PHASE_FROM, PHASE_TO, phaseRank } from './phases.ts'
import { schedule } from './schedule.ts'
import type { Task } from './task.ts'
import type { TaskTimes } from './times.ts'
import type { ChecklistInput, ChecklistNight, ChecklistOutcome, Conflict, Moments, Step, Tick } from './types.ts'
import { S_PER_MINUTE } from '../units/index.ts'
import type { Utc } from '../units/index.ts'

/**
 * Derives the checklist of a whole trip.
 * `input`: rules (built-in and own), rule ids switched off, one set of facts and moments (UTC s) for each night, steps
 * that other engines ask for, and ticks.
 * Steps in the order to do them, with start and latest start in UTC s; conflicts: circles, impossible windows (minimal
 * sets) and rules that cannot be evaluated. The same input gives the same outcome.
 * A step already done or skipped takes no time and keeps no deadline. Never throws for what a rule of the user contains.
 */
export function buildChecklist(input: ChecklistInput): ChecklistOutcome {
  const off = new Set(input.switchedOffRuleIds)
  const nights = withHomeMoments(input.nights)
  const rules = input.rules.filter((rule) => !off.has(rule.id))
  const tickOf = latestTicks(input.ticks)
  const { drafts: asked, bad } = expandRules(rules, nights, tickOf)
  const drafts = [...asked, ...carryOver(asked, rules, nights, tickOf)]
  const draftOf = new Map(drafts.map((draft) => [draft.key, draft]))
  const timed = withLateStart(drafts, nights, tickOf)
  const found = schedule(timed.map((draft) => taskOf(draft, nights, tickOf.get(draft.key))))
  const steps = found.tasks.flatMap(({ key, startS, latestStartS }) => {
    const draft = draftOf.get(key)
    if (draft === undefined) return []
    const times = isTimed(draft, nights) ? { startS, latestStartS } : NO_TIMES
    return [stepOf(draft, times, tickOf.get(key))]
  })
  const conflicts: readonly Conflict[] = [
    ...found.circles.map((stepKeys) => ({ kind: 'circle' as const, stepKeys })),
    ...found.impossible.map(({ keys, lateByS }) => ({ kind: 'window' as const, stepKeys: keys, lateByS })),
    ...bad,
  ]
  return { steps, conflicts }
}

/** Steps at home belong to the whole trip: they all read the one instant of leaving and of coming back. */
function withHomeMoments(nights: readonly ChecklistNight[]): readonly ChecklistNight[] {
  const home: Record<string, Utc> = {}
  for (const name of ['leaveHome', 'backHome']) {
    const at = nights.map((night) => momentAt(night.moments, name)).find((one) => one !== null)
    if (at !== undefined && at !== null) home[name] = at
  }
  return nights.map((night) => ({ ...night, moments: { ...night.moments, ...home } satisfies Moments }))
}

/** Time in hand before bedtime when its steps begin, common practice. */
const SPARE_BEFORE_BED_S = 10 * S_PER_MINUTE

/** Steps of bedtime wait for the evening: the first begins when all that are open just end before the earliest deadline among them, with a little in hand. */
function withLateStart(
  drafts: readonly Draft[],
  nights: readonly ChecklistNight[],
  tickOf: ReadonlyMap<string, Tick>,
): readonly Draft[] {
  const fromUtc = new Map<string, Utc>()
  for (const { nightId, moments } of nights) {
    const bedtimeUtc = momentAt(moments, PHASE_TO.bedtime)
    if (bedtimeUtc === null) continue
    const open = drafts.filter((draft) => draft.nightId === nightId && draft.phase === 'bedtime')
    const takesS = open.reduce((sum, { key, durationS }) => sum + (tickOf.has(key) ? 0 : durationS), 0)
    const dueUtc = Math.min(bedtimeUtc, ...open.flatMap(({ deadlineUtc }) => deadlineUtc ?? []))
    fromUtc.set(nightId, (dueUtc - takesS - SPARE_BEFORE_BED_S) as Utc)
  }
  return drafts.map((draft) =>
    draft.phase === 'bedtime'
      ? { ...draft, notBeforeUtc: latest(draft.notBeforeUtc, fromUtc.get(draft.nightId) ?? null) }
      : draft,
  )
}

function latestTicks(ticks: readonly Tick[]): ReadonlyMap<string, Tick> {
  const latest = new Map<string, Tick>()
  for (const tick of ticks) {
    const other = latest.get(tick.stepKey)
    if (other === undefined || other.atUtc <= tick.atUtc) latest.set(tick.stepKey, tick)
  }
  return latest
}

function taskOf(draft: Draft, nights: readonly ChecklistNight[], tick: Tick | undefined): Task {
  const index = nights.findIndex((night) => night.nightId === draft.nightId)
  const moments = nights[index]?.moments ?? {}
  const rank = phaseRank(draft.phase, Math.max(0, index), nights.length)
  if (tick !== undefined) return { key: draft.key, rank, durationS: 0, releaseS: null, dueS: null, after: draft.after }
  return {
    key: draft.key,
    rank,
    durationS: draft.durationS,
    releaseS: latest(draft.notBeforeUtc, momentAt(moments, PHASE_FROM[draft.phase])),
    dueS: earliest(draft.deadlineUtc, momentAt(moments, PHASE_TO[draft.phase])),
    after: draft.after,
  }
}

const latest = (a: Utc | null, b: Utc | null): Utc | null => (a === null || (b !== null && b > a) ? b : a)
const earliest = (a: Utc | null, b: Utc | null): Utc | null => (a === null || (b !== null && b < a) ? b : a)

const NO_TIMES: TaskTimes = { startS: null, latestStartS: null }

/**
 * Drills wait for their event, and how long the road takes is not known here: those steps have an order but no clock.
 * What is done at home has one only where the hour of leaving is set.
 */
function isTimed(draft: Draft, nights: readonly ChecklistNight[]): boolean {
  if (draft.phase === 'in-the-night') return draft.durationS > 0
  if (draft.phase === 'on-the-road') return false
  return draft.phase !== 'before-leaving' || nights.some((night) => momentAt(night.moments, 'leaveHome') !== null)
}

function stepOf(draft: Draft, { startS, latestStartS }: TaskTimes, tick: Tick | undefined): Step {
  return {
    ...draft,
    startUtc: startS as Utc | null,
    latestStartUtc: latestStartS as Utc | null,
    state: tick?.state ?? 'open',
    skipReason: tick?.state === 'skipped' ? (tick.reason ?? null) : null,
  }
}
