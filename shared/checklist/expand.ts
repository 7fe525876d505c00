/** Rules over one night's facts become steps without times: one for each rule that holds, or for each thing it names. */
import { createEvaluator, valueAt } from './evaluate.ts'
import type { BadRuleCode, Evaluator } from './evaluate.ts'
import { MOMENT_NAMES } from './facts.ts'
import { PHASES } from './phases.ts'
import { fail, ok } from '../result/index.ts'
import type { Result } from '../result/index.ts'
import type { ChecklistNight, Conflict, Facts, GivenStep, Json, Moments, Rule, Tick } from './types.ts'
import type { Utc } from '../units/index.ts'

export type Draft = GivenStep

export type Expanded = { readonly drafts: readonly Draft[]; readonly bad: readonly Conflict[] }

type BadRule = Extract<Conflict, { readonly kind: 'bad-rule' }>

const KNOWN_MOMENTS: ReadonlySet<string> = new Set(MOMENT_NAMES)
/** In place of the night in the key of a step that the trip has once; no id of a night contains it. */
const WHOLE_TRIP = '*'

/**
 * Steps of every night.
 * `rules`: built-in and the user's own; `nights`: facts and moments, in order; `ticks`: the last tick of each step key.
 * Steps night by night in rule order, then the given ones, without start times; a rule that cannot be evaluated is named
 * once in `bad` and gives no step on any night. Moments that a night lacks leave the step without that bound.
 */
export function expandRules(
  rules: readonly Rule[],
  nights: readonly ChecklistNight[],
  ticks: ReadonlyMap<string, Tick> = new Map(),
): Expanded {
  const evaluator = createEvaluator()
  const drafts = new Map<string, Draft>()
  const bad: Conflict[] = []
  const broken = new Set<string>()
  const { usable, again } = withoutDuplicates(rules)
  for (const night of nights) {
    const facts = withSkipped(night, ticks)
    for (const rule of usable) {
      if (broken.has(rule.id)) continue
      const result = expandRule(rule, { ...night, facts }, evaluator)
      if (!result.ok) {
        bad.push(result.problem)
        broken.add(rule.id)
        continue
      }
      // A step of the whole trip stays with the first night that asks for it.
      for (const draft of result.value) if (!drafts.has(draft.key)) drafts.set(draft.key, draft)
    }
    for (const step of night.given) drafts.set(step.key, step)
  }
  const kept = [...drafts.values()].filter((draft) => !broken.has(draft.ruleId))
  return { drafts: resolveAfter(kept), bad: [...bad, ...again] }
}

/** Adds `SKIPPED_FACT`, so that rules can say what a skipped step means. */
function withSkipped({ nightId, facts }: ChecklistNight, ticks: ReadonlyMap<string, Tick>): Facts {
  const skippedRuleIds = [...ticks.values()].flatMap(({ stepKey, state }) => {
    const [ruleId = '', where = ''] = stepKey.split(':')
    return state === 'skipped' && (where === nightId || where === WHOLE_TRIP) ? [ruleId] : []
  })
  return { ...facts, checklist: { skippedRuleIds } }
}

function withoutDuplicates(rules: readonly Rule[]): { usable: readonly Rule[]; again: readonly BadRule[] } {
  const byId = new Map<string, Rule>()
  const again: BadRule[] = []
  for (const rule of rules) {
    if (byId.has(rule.id)) again.push(badRule(rule, 'id-taken', rule.id))
    else byId.set(rule.id, rule)
  }
  return { usable: [...byId.values()], again }
}

const badRule = (rule: Rule, code: BadRuleCode, at: string): BadRule => ({
  kind: 'bad-rule',
  ruleId: rule.id,
  message: code,
  at,
})

type Thing = { readonly id: string | null; readonly facts: Facts }

function expandRule(rule: Rule, night: ChecklistNight, evaluator: Evaluator): Result<readonly Draft[], BadRule> {
  for (const moment of [rule.notBefore, rule.deadline]) {
    if (moment !== undefined && !KNOWN_MOMENTS.has(moment)) return fail(badRule(rule, 'unknown-moment', moment))
  }
  const things = thingsOf(rule, night.facts)
  if (!things.ok) return things
  const drafts: Draft[] = []
  for (const thing of things.value) {
    const held = evaluator.holds(rule.when, thing.facts)
    if (!held.ok) return fail(badRule(rule, held.problem.code, held.problem.at))
    if (!held.value) continue
    const params = paramsOf(rule, thing.facts)
    if (!params.ok) return params
    drafts.push(draftOf(rule, night, thing.id, params.value))
  }
  return ok(drafts)
}

function thingsOf(rule: Rule, facts: Facts): Result<readonly Thing[], BadRule> {
  if (rule.forEach === undefined) return ok([{ id: null, facts }])
  const list = valueAt(facts, rule.forEach)
  if (list === undefined) return fail(badRule(rule, 'unknown-fact', rule.forEach))
  if (!isList(list)) return fail(badRule(rule, 'not-a-list', rule.forEach))
  const ids = new Set<string>()
  const things: Thing[] = []
  for (const item of list) {
    const id = valueAt(item, 'id')
    if (typeof id !== 'string') return fail(badRule(rule, 'item-without-id', rule.forEach))
    if (ids.has(id)) return fail(badRule(rule, 'item-twice', id))
    ids.add(id)
    things.push({ id, facts: { ...facts, item } })
  }
  return ok(things)
}

const isList = (value: Json): value is readonly Json[] => Array.isArray(value)

function paramsOf(rule: Rule, facts: Facts): Result<Draft['params'], BadRule> {
  const params: Record<string, string | number> = {}
  for (const [name, path] of Object.entries(rule.params ?? {})) {
    const value = valueAt(facts, path)
    if (typeof value !== 'string' && typeof value !== 'number') {
      return fail(badRule(rule, 'placeholder-without-value', path))
    }
    params[name] = value
  }
  return ok(params)
}

function draftOf(rule: Rule, night: ChecklistNight, thingId: string | null, params: Draft['params']): Draft {
  const deadlineUtc = momentAt(night.moments, rule.deadline, rule.deadlineOffsetS)
  const where = rule.once === true ? WHOLE_TRIP : night.nightId
  return {
    key: thingId === null ? `${rule.id}:${where}` : `${rule.id}:${where}:${thingId}`,
    ruleId: rule.id,
    nightId: night.nightId,
    phase: rule.phase,
    text: rule.text,
    params,
    after: rule.after,
    durationS: rule.durationS,
    notBeforeUtc: momentAt(night.moments, rule.notBefore, rule.notBeforeOffsetS),
    deadlineUtc,
    deadlineName: deadlineUtc === null ? null : (rule.deadline ?? null),
    caution: rule.caution ?? false,
  }
}

/** The instant a night gives to a moment's name, moved by an offset in s; null where the night lacks it. */
export function momentAt(moments: Moments, name: string | undefined, offsetS = 0): Utc | null {
  if (name === undefined || !Object.hasOwn(moments, name)) return null
  const at = moments[name]
  return at === undefined ? null : ((at + offsetS) as Utc)
}

/**
 * Rules name rules in `after`, given steps name keys; both become the keys of steps of the same night. A built-in rule
 * waits for another only where that one is not put into a later phase: moves may be planned for dusk or for bedtime.
 */
function resolveAfter(drafts: readonly Draft[]): readonly Draft[] {
  const ofRule = new Map<string, Draft[]>()
  for (const draft of drafts) {
    const slot = `${draft.nightId} ${draft.ruleId}`
    ofRule.set(slot, [...(ofRule.get(slot) ?? []), draft])
  }
  const keys = new Set(drafts.map((draft) => draft.key))
  return drafts.map((draft) => ({
    ...draft,
    after: draft.after.flatMap((name) => {
      if (keys.has(name)) return [name]
      return (ofRule.get(`${draft.nightId} ${name}`) ?? [])
        .filter((other) => draft.text.kind === 'own' || PHASES.indexOf(other.phase) <= PHASES.indexOf(draft.phase))
        .map((other) => other.key)
    }),
  }))
}
