/** Which facts a rule reads, found in the rule itself so that the list cannot be wrong. */
import type { Json } from './types.ts'

type Reader = {
  readonly when: Json
  readonly forEach?: string
  readonly params?: Readonly<Record<string, string>>
}

/**
 * The fact paths a rule reads.
 * `rule`: its condition, its list and its placeholders.
 * Dotted paths, each once, in order of first use; paths inside the element of a list are not facts and are left out.
 */
export function readsOf(rule: Reader): readonly string[] {
  const paths = [rule.forEach ?? '', ...pathsIn(rule.when), ...Object.values(rule.params ?? {})]
  return [...new Set(paths.filter((path) => path !== '' && !path.startsWith('item.')))]
}

const LIST_OPERATORS: ReadonlySet<string> = new Set(['some', 'all', 'none', 'filter'])

function pathsIn(condition: Json): readonly string[] {
  if (isList(condition)) return condition.flatMap(pathsIn)
  if (typeof condition !== 'object' || condition === null) return []
  return Object.entries(condition).flatMap(([operator, argument]) => {
    const parts = isList(argument) ? argument : [argument]
    if (operator === 'var') return typeof parts[0] === 'string' ? [parts[0]] : []
    return LIST_OPERATORS.has(operator) ? pathsIn(parts[0] ?? null) : parts.flatMap(pathsIn)
  })
}

const isList = (value: Json): value is readonly Json[] => Array.isArray(value)
