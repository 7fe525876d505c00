/** The checklist: rules over each night's facts, in order, with times, ticks and conflicts. */
import { carryOver } from './carry-over.ts'
import { expandRules, momentAt } from './expand.ts'
import type { Draft } from './expand.ts'
import { withLateStart } from './late-start.ts'
import type { MomentName } from './facts.ts'
import { PHASE_FROM, PHASE_TO, phaseRank } from './phases.ts'
import { schedule } from './schedule.ts'
import type { Task } from './task.ts'
import type { TaskTimes } from './times.ts'
import type { ChecklistInput, ChecklistNight, ChecklistOutcome, Conflict, Moments, Rule, Step, Tick } from './types.ts'
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
  const drafts = homeInRuleOrder([...asked, ...carryOver(asked, rules, nights, tickOf)], rules)
  const draftOf = new Map(drafts.map((draft) => [draft.key, draft]))
  const timed = withLateStart({ drafts, nights, tickOf, homeRest: input.homeRest })
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

/** At home all nights are prepared for at once: in the order of the rules, not of the nights, and what two nights ask for in the same words once. */
function homeInRuleOrder(drafts: readonly Draft[], rules: readonly Rule[]): readonly Draft[] {
  const placeOf = new Map(rules.map((rule, place) => [rule.id, place]))
  const place = ({ phase, ruleId }: Draft): number =>
    phase === 'before-leaving' ? (placeOf.get(ruleId) ?? rules.length) : rules.length + 1
  const said = new Set<string>()
  const isNew = ({ key, phase, params }: Draft): boolean => {
    if (phase !== 'before-leaving') return true
    const [ruleId, , ...thing] = key.split(':')
    const words = JSON.stringify([ruleId, thing, params])
    if (said.has(words)) return false
    said.add(words)
    return true
  }
  return drafts.filter(isNew).toSorted((a, b) => place(a) - place(b))
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
 * What is done at home has one only where the hour of leaving, or of coming back, is set.
 */
function isTimed(draft: Draft, nights: readonly ChecklistNight[]): boolean {
  const isSet = (name: MomentName): boolean => nights.some(({ moments }) => momentAt(moments, name) !== null)
  if (draft.phase === 'in-the-night') return draft.durationS > 0
  if (draft.phase === 'on-the-road') return false
  if (draft.phase === 'before-leaving') return isSet('leaveHome')
  return draft.phase !== 'back-home' || isSet('backHome')
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
