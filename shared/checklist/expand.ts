/** Rules over one night's facts become steps without times: one for each rule that holds, or for each thing it names. */
import { createEvaluator, valueAt } from './evaluate.ts'
import type { BadRuleCode, Evaluator } from './evaluate.ts'
import { MOMENT_NAMES } from './facts.ts'
import { fail, ok } from '../result/index.ts'
import type { Result } from '../result/index.ts'
import type { ChecklistNight, Conflict, Facts, GivenStep, Json, Moments, Rule } from './types.ts'
import type { Utc } from '../units/index.ts'

export type Draft = GivenStep

export type Expanded = { readonly drafts: readonly Draft[]; readonly bad: readonly Conflict[] }

type BadRule = Extract<Conflict, { readonly kind: 'bad-rule' }>

const KNOWN_MOMENTS: ReadonlySet<string> = new Set(MOMENT_NAMES)

/**
 * Steps of every night.
 * `rules`: built-in and the user's own, ids unique; `nights`: facts and moments, in order.
 * Steps in rule order, then the given ones, without start times; a rule that cannot be evaluated is named once in `bad`.
 * Moments that a night lacks leave the step without that bound.
 */
export function expandRules(rules: readonly Rule[], nights: readonly ChecklistNight[]): Expanded {
  const evaluator = createEvaluator()
  const drafts: Draft[] = []
  const bad = new Map<string, Conflict>()
  const usable = withoutDuplicates(rules, bad)
  for (const night of nights) {
    for (const rule of usable) {
      if (bad.has(rule.id)) continue
      const result = expandRule(rule, night, evaluator)
      if (result.ok) drafts.push(...result.value)
      else bad.set(rule.id, result.problem)
    }
    drafts.push(...night.given)
  }
  const broken = new Set(bad.keys())
  return { drafts: resolveAfter(drafts, usable, broken), bad: [...bad.values()] }
}

function withoutDuplicates(rules: readonly Rule[], bad: Map<string, Conflict>): readonly Rule[] {
  const seen = new Set<string>()
  return rules.filter((rule) => {
    const taken = seen.has(rule.id)
    if (taken) bad.set(`${rule.id} again`, badRule(rule, 'id-taken', rule.id))
    seen.add(rule.id)
    return !taken
  })
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
    if (!held.ok) return fail(badRule(rule, codeOf(held.problem.code), String(held.problem.params['at'] ?? '')))
    if (!held.value) continue
    const params = paramsOf(rule, thing.facts)
    if (!params.ok) return params
    drafts.push(draftOf(rule, night, thing.id, params.value))
  }
  return ok(drafts)
}

const codeOf = (code: string): BadRuleCode => {
  const known: readonly BadRuleCode[] = ['unknown-operator', 'too-large', 'unknown-fact', 'too-slow']
  return known.find((one) => one === code) ?? 'not-comparable'
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
  return {
    key: thingId === null ? `${rule.id}:${night.nightId}` : `${rule.id}:${night.nightId}:${thingId}`,
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

export function momentAt(moments: Moments, name: string | undefined, offsetS = 0): Utc | null {
  if (name === undefined || !Object.hasOwn(moments, name)) return null
  const at = moments[name]
  return at === undefined ? null : ((at + offsetS) as Utc)
}

/** Rules name rules in `after`, given steps name keys; both become the keys of steps of the same night. */
function resolveAfter(drafts: readonly Draft[], rules: readonly Rule[], broken: ReadonlySet<string>): readonly Draft[] {
  const ruleIds = new Set(rules.map((rule) => rule.id))
  const keysOfRule = new Map<string, string[]>()
  for (const draft of drafts) {
    const slot = `${draft.nightId} ${draft.ruleId}`
    keysOfRule.set(slot, [...(keysOfRule.get(slot) ?? []), draft.key])
  }
  const keys = new Set(drafts.map((draft) => draft.key))
  return drafts
    .filter((draft) => !ruleIds.has(draft.ruleId) || !broken.has(draft.ruleId))
    .map((draft) => ({
      ...draft,
      after: draft.after.flatMap((name) =>
        keys.has(name) ? [name] : (keysOfRule.get(`${draft.nightId} ${name}`) ?? []),
      ),
    }))
}
