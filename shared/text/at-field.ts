/** A problem as it is said beside the field that caused it: no path of the file, and numbers in the units one types. */
import type { Problem, ProblemParams } from '../result/index.ts'
import { UNIT_ENDING } from './paths.ts'

/** A unit that a sentence names behind a number of the file, and the ending that converts it. */
const ENDING_OF: Readonly<Record<string, string>> = { mm: 'Mm', g: 'G', m: 'M', A: 'A', V: 'V', '\u00b0C': 'C' }
const NUMBER = /\{(value|minimum|maximum|sum|ready|size|depth|current)\}(?:[ \u00a0](mm|g|m|A|V|\u00b0C)(?![a-z]))?/g
const IN_FILE = '{where} ({field})'

/** `where`: the field's own words. Numbers in what the file holds are given as numbers, under names that end in their unit. */
export function besideField(
  sentence: string,
  { code, path, params }: Problem,
  where: string,
): { readonly sentence: string; readonly params: ProblemParams } {
  const numbers: Record<string, number> = {}
  // Of a text or a list, least and most count letters or entries.
  const own = /^field-(text|list)-/.test(code) ? '' : endingOf(path)
  const said = sentence.replace(IN_FILE, '{where}').replaceAll(NUMBER, (whole, name: string, unit?: string) => {
    const ending = unit === undefined ? own : (ENDING_OF[unit] ?? '')
    const value = numberOf(params[name])
    if (ending === '' || value === null) return whole
    numbers[name + ending] = value
    return `{${name}${ending}}`
  })
  return { sentence: said, params: { ...params, ...numbers, where } }
}

function endingOf(path: Problem['path']): string {
  const named = path.findLast((segment) => typeof segment === 'string')
  return typeof named === 'string' ? (UNIT_ENDING.exec(named)?.[1] ?? '') : ''
}

function numberOf(value: ProblemParams[string] | undefined): number | null {
  if (typeof value === 'number') return value
  if (typeof value !== 'string' || value.trim() === '') return null
  const number = Number(value)
  return Number.isFinite(number) ? number : null
}
