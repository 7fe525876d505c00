/** The form in which a user writes a condition: a list of simple tests, all or any of which must hold. */
import type { Condition, Json } from './types.ts'

export type FormTest =
  | { readonly path: string; readonly is: 'true' | 'false' | 'known' | 'unknown' | 'filled' | 'empty' }
  | { readonly path: string; readonly is: 'below' | 'at-most' | 'above' | 'at-least'; readonly value: number }
  | { readonly path: string; readonly is: 'equals' | 'differs'; readonly value: string | number }

export type ConditionForm = { readonly join: 'all' | 'any'; readonly tests: readonly FormTest[] }

const COMPARISONS = { below: '<', 'at-most': '<=', above: '>', 'at-least': '>=' } as const

/** JsonLogic of a form; a form without tests always holds. A number that is not known fulfils no comparison. */
export function toCondition(form: ConditionForm): Condition {
  if (form.tests.length === 0) return true
  return { [form.join === 'all' ? 'and' : 'or']: form.tests.map(testCondition) }
}

function testCondition(test: FormTest): Condition {
  const read = { var: test.path }
  switch (test.is) {
    case 'true':
      return { '===': [read, true] }
    case 'false':
      return { '===': [read, false] }
    case 'known':
      return { '!==': [read, null] }
    case 'unknown':
      return { '===': [read, null] }
    case 'filled':
      return { '!!': [read] }
    case 'empty':
      return { '!': [read] }
    case 'equals':
      return { '===': [read, test.value] }
    case 'differs':
      return { '!==': [read, test.value] }
    case 'below':
    case 'at-most':
    case 'above':
    case 'at-least':
      return { and: [{ '!==': [read, null] }, { [COMPARISONS[test.is]]: [read, test.value] }] }
  }
}

/** The form of a condition that a form has made; null where it was written by hand and the form cannot show it. */
export function fromCondition(condition: Condition): ConditionForm | null {
  if (condition === true) return { join: 'all', tests: [] }
  const [operator, parts] = onlyEntry(condition)
  if (!isList(parts) || (operator !== 'and' && operator !== 'or')) return null
  const tests: FormTest[] = []
  for (const part of parts) {
    const test = testOf(part)
    if (test === null) return null
    tests.push(test)
  }
  return { join: operator === 'and' ? 'all' : 'any', tests }
}

function testOf(condition: Json): FormTest | null {
  const [operator, argument] = onlyEntry(condition)
  const [first = null, second = null] = isList(argument) ? argument : []
  if (operator === 'and') return comparisonOf(condition, second)
  const path = pathOf(first)
  if (path === null) return null
  if (operator === '!!') return { path, is: 'filled' }
  if (operator === '!') return { path, is: 'empty' }
  if (operator !== '===' && operator !== '!==') return null
  const same = operator === '==='
  if (second === null) return { path, is: same ? 'unknown' : 'known' }
  if (typeof second === 'boolean') return same ? { path, is: second ? 'true' : 'false' } : null
  if (typeof second === 'object') return null
  return { path, is: same ? 'equals' : 'differs', value: second }
}

function comparisonOf(whole: Json, inner: Json): FormTest | null {
  const [operator, argument] = onlyEntry(inner)
  const [first = null, value = null] = isList(argument) ? argument : []
  const path = pathOf(first)
  if (path === null || typeof value !== 'number') return null
  for (const is of ['below', 'at-most', 'above', 'at-least'] as const) {
    const test: FormTest = { path, is, value }
    if (COMPARISONS[is] === operator && JSON.stringify(testCondition(test)) === JSON.stringify(whole)) return test
  }
  return null
}

const pathOf = (read: Json): string | null => {
  const [operator, path] = onlyEntry(read)
  return operator === 'var' && typeof path === 'string' ? path : null
}

function onlyEntry(value: Json): readonly [string, Json] {
  if (typeof value !== 'object' || value === null || isList(value)) return ['', null]
  const entries = Object.entries(value)
  return entries.length === 1 && entries[0] !== undefined ? entries[0] : ['', null]
}

const isList = (value: Json): value is readonly Json[] => Array.isArray(value)
