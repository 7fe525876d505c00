/**
 * Runs one JsonLogic condition over facts. Conditions may come from a file someone else made, so the operators are a
 * short list without side effects, the size is bounded, and reads are counted so that no condition can run for long.
 */
import { LogicEngine } from 'json-logic-engine'
import { fail, ok } from '../result/index.ts'
import type { Result } from '../result/index.ts'
import type { Condition, Facts, Json } from './types.ts'

/** Why a rule cannot be used. `at` names the operator, the fact or the list. */
export type BadRuleCode =
  | 'unknown-operator'
  | 'too-large'
  | 'unknown-fact'
  | 'not-comparable'
  | 'too-slow'
  | 'not-a-list'
  | 'item-without-id'
  | 'item-twice'
  | 'placeholder-without-value'
  | 'unknown-moment'
  | 'id-taken'

/** Left out on purpose: what builds text or lists without bound (`cat`, `merge`, `map`, `reduce`), throws or logs. */
const OPERATORS = new Set(
  'var == === != !== ! !! and or if < <= > >= + - * / % min max in some all none filter'.split(' '),
)
/** Operators whose inner part sees one element of a list instead of all facts. */
const LIST_OPERATORS = new Set(['some', 'all', 'none', 'filter'])
const MAX_NODES = 400 // a rule made in the form has under 40
const MAX_DEPTH = 24
const MAX_LIST_DEPTH = 2
const MAX_READS = 200_000 // about 50 ms on a slow laptop

const isRecord = (value: unknown): value is { readonly [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isList = (value: unknown): value is readonly Json[] => Array.isArray(value)

export type BadCondition = { readonly code: BadRuleCode; readonly at: string }

const bad = (code: BadRuleCode, at: string): Result<never, BadCondition> => fail({ code, at })

/** Signals from inside the evaluator that a condition reads too much. */
class TooSlow extends Error {}

type Scan = { nodes: number; readonly facts: Facts }

/** The value at a dotted path of own keys; undefined where the path leads nowhere. `length` of a list is its count. */
export function valueAt(data: Json, path: string): Json | undefined {
  let value: Json | undefined = data
  for (const key of path.split('.')) {
    if (isList(value)) value = key === 'length' ? value.length : value[Number(key)]
    else if (isRecord(value) && Object.hasOwn(value, key)) value = value[key]
    else return undefined
    if (value === undefined) return undefined
  }
  return value
}

function scanRead(argument: Json, scan: Scan, listDepth: number): Result<true, BadCondition> {
  const path = isList(argument) ? argument[0] : argument
  if (typeof path !== 'string') return typeof path === 'number' ? ok(true) : bad('unknown-fact', '')
  if (listDepth > 0 || path === '') return ok(true)
  return valueAt(scan.facts, path) === undefined ? bad('unknown-fact', path) : ok(true)
}

function scanCondition(condition: Json, scan: Scan, depth: number, listDepth: number): Result<true, BadCondition> {
  scan.nodes++
  if (scan.nodes > MAX_NODES || depth > MAX_DEPTH || listDepth > MAX_LIST_DEPTH) return bad('too-large', '')
  if (isList(condition)) return scanAll(condition, scan, depth, () => listDepth)
  if (!isRecord(condition)) return ok(true)
  const [operator, ...others] = Object.keys(condition)
  if (operator === undefined) return bad('unknown-operator', '{}')
  if (others.length > 0 || !OPERATORS.has(operator)) return bad('unknown-operator', operator)
  const argument = condition[operator] ?? null
  if (operator === 'var') return scanRead(argument, scan, listDepth)
  const parts = isList(argument) ? argument : [argument]
  const inList = LIST_OPERATORS.has(operator)
  return scanAll(parts, scan, depth, (index) => (inList && index > 0 ? listDepth + 1 : listDepth))
}

function scanAll(
  parts: readonly Json[],
  scan: Scan,
  depth: number,
  listDepth: (index: number) => number,
): Result<true, BadCondition> {
  for (const [index, part] of parts.entries()) {
    const result = scanCondition(part, scan, depth + 1, listDepth(index))
    if (!result.ok) return result
  }
  return ok(true)
}

export type Evaluator = { readonly holds: (condition: Condition, facts: Facts) => Result<boolean, BadCondition> }

/**
 * An evaluator of conditions.
 * `holds(condition, facts)`: JsonLogic of the allowed operators; outside a list operator every path must exist in `facts`.
 * True or false by JsonLogic's own truthiness.
 * A problem (`unknown-operator`, `unknown-fact`, `too-large`, `too-slow`, `not-comparable`) where it cannot be told.
 * Source: https://jsonlogic.com; interpreted, never compiled: a strict content security policy forbids `eval`.
 */
export function createEvaluator(): Evaluator {
  let reads = 0
  const engine = new LogicEngine(undefined, { disableInterpretedOptimization: true, disableInline: true })
  const read: { readonly method: (...parts: readonly unknown[]) => unknown } = engine.methods.var
  engine.addMethod('var', {
    method: (path, context, above, self) => {
      reads++
      if (reads > MAX_READS) throw new TooSlow()
      return read.method(path, context, above, self)
    },
  })
  const holds = (condition: Condition, facts: Facts): Result<boolean, BadCondition> => {
    const scanned = scanCondition(condition, { nodes: 0, facts }, 0, 0)
    if (!scanned.ok) return scanned
    reads = 0
    try {
      return ok(Boolean(engine.truthy(engine.run(condition, facts))))
    } catch (cause) {
      // Apart from our own signal the evaluator throws NaN and plain objects, for operands that cannot be combined.
      return bad(cause instanceof TooSlow ? 'too-slow' : 'not-comparable', '')
    }
  }
  return { holds }
}
