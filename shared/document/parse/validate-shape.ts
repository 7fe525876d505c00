/** The schema's own refusals, turned into problems that name the field, its value and what is allowed. */
import { problem } from '../../result/index.ts'
import type { DocumentPath, Problem, ProblemParams } from '../../result/index.ts'
import { CLOCK_PATTERN, CURRENCY_PATTERN, DATE_PATTERN, ID_PATTERN, ZONE_PATTERN } from '../schema/values.ts'
import type { z } from '../schema/zod.ts'
import { showPath, showValue, valueAt } from './show-value.ts'

type Issue = z.core.$ZodIssue

/** More than this many problems help nobody. */
export const PROBLEM_LIMIT = 50

const PATTERN_CODES: ReadonlyMap<string, string> = new Map([
  [String(ID_PATTERN), 'field-id'],
  [String(DATE_PATTERN), 'field-date'],
  [String(CLOCK_PATTERN), 'field-clock'],
  [String(ZONE_PATTERN), 'field-zone'],
  [String(CURRENCY_PATTERN), 'field-currency'],
])

export const problemsOfIssues = (issues: readonly Issue[], root: unknown): readonly Problem[] =>
  issues.flatMap((issue) => problemsOfIssue(issue, [], root)).slice(0, PROBLEM_LIMIT)

function problemsOfIssue(issue: Issue, base: readonly PropertyKey[], root: unknown): readonly Problem[] {
  const keys = [...base, ...issue.path]
  const path = documentPath(keys)
  const found = valueAt(root, keys)
  const make = (code: string, params: ProblemParams = {}): readonly Problem[] => [
    problem(code, path, { field: showPath(path), value: showValue(found), ...params }),
  ]
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) =>
        problem('field-unknown', [...path, key], {
          field: showPath([...path, key]),
          value: showValue(valueAt(root, [...keys, key])),
        }),
      )
    case 'invalid_type':
      if (found === undefined) return make('field-missing', { expected: issue.expected })
      return issue.expected === 'int' ? make('field-not-whole') : make('field-kind', { expected: issue.expected })
    case 'too_small':
      return make(sizeCode(issue.origin, 'small'), { minimum: String(issue.minimum) })
    case 'too_big':
      return make(sizeCode(issue.origin, 'big'), { maximum: String(issue.maximum), ...lengthOf(found) })
    case 'invalid_value':
      if (found === undefined) return make('field-missing', { expected: issue.values.map(String).join(', ') })
      return make('field-choice', { choices: issue.values.map(String) })
    case 'invalid_format':
      return make(PATTERN_CODES.get(String(issue.pattern)) ?? 'field-text')
    case 'invalid_union':
      return unionProblems(issue, keys, root, make)
    default:
      return make('field-unfit')
  }
}

/** A union that chooses by `kind` names the choices; any other names the first reason of its first branch. */
function unionProblems(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  keys: readonly PropertyKey[],
  root: unknown,
  make: (code: string, params?: ProblemParams) => readonly Problem[],
): readonly Problem[] {
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : null
  if (options !== null) return make('field-choice', { choices: options })
  const inner = issue.errors[0]?.[0]
  return inner === undefined ? make('field-unfit') : problemsOfIssue(inner, keys, root)
}

const sizeCode = (origin: string, side: 'small' | 'big'): string => {
  const kind = origin === 'string' ? 'text' : origin === 'array' ? 'list' : 'number'
  return `field-${kind}-too-${kind === 'number' ? (side === 'small' ? 'low' : 'high') : side === 'small' ? 'short' : 'long'}`
}

const lengthOf = (value: unknown): ProblemParams =>
  typeof value === 'string' || Array.isArray(value) ? { length: String(value.length) } : {}

const documentPath = (keys: readonly PropertyKey[]): DocumentPath =>
  keys.map((key) => (typeof key === 'number' ? key : String(key)))
