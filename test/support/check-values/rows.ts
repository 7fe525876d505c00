/** Rows of published values: inputs, what was published, and how close is close enough. */
import { z } from 'zod'
import { refusalOf } from './bounds.ts'

const valueSchema: z.ZodType<Value> = z.lazy(() =>
  z.union([z.number(), z.string(), z.boolean(), z.null(), z.array(valueSchema)]),
)
export type Value = number | string | boolean | null | readonly Value[]

const rowSchema = z.object({
  id: z.string(),
  area: z.string(),
  inputs: z.record(z.string(), valueSchema),
  expected: z.record(z.string(), valueSchema),
  tolerance: z.union([z.number(), z.record(z.string(), z.number())]).nullish(),
  source: z.string().default('not stated'),
  flag: z.string().optional(),
  note: z.string().optional(),
  /** Expected numbers as the file writes them: `34.0` says more than 34. */
  printed: z.record(z.string(), z.string()).optional(),
})

export type Row = z.infer<typeof rowSchema>
export type Inputs = Row['inputs']

/** Rows of a JSON text: an array, or an object that holds one. Every row has to be well formed. */
export function parseRows(text: string): readonly Row[] {
  return z.array(rowSchema).parse(entriesOf(text))
}

/** A row of any file: well formed, a fact in words that holds nothing to compute, or spoiled, with what is wrong. */
export type Read =
  | { readonly kind: 'row'; readonly row: Row }
  | { readonly kind: 'fact'; readonly row: Row }
  | { readonly kind: 'spoiled'; readonly row: Row; readonly problem: string }

const factSchema = z.object({ area: z.string(), topic: z.string(), value: valueSchema, source: z.string().optional() })
const markSchema = z.object({ id: z.string().catch(''), area: z.string().catch('') }).catch({ id: '', area: '' })

/** The rows of a file from outside, one by one: a spoiled row fails alone and stops no other. */
export function readRows(text: string): readonly Read[] {
  return entriesOf(text).map((entry, index) => readRow(entry, index))
}

function readRow(entry: unknown, index: number): Read {
  const parsed = rowSchema.safeParse(entry)
  if (parsed.success) return { kind: 'row', row: parsed.data }
  const fact = factSchema.safeParse(entry)
  const empty = { inputs: {}, expected: {}, source: 'not stated' }
  if (fact.success && !('expected' in fact.data)) {
    const { area, topic, source = 'not stated' } = fact.data
    return { kind: 'fact', row: { ...empty, id: `fact ${index + 1}`, area: `${area}: ${topic}`, source } }
  }
  const mark = markSchema.parse(entry)
  const problem = parsed.error.issues.map((issue) => `${issue.path.join('.') || 'row'}: ${issue.message}`).join('; ')
  return { kind: 'spoiled', row: { ...empty, ...mark, id: mark.id === '' ? `row ${index + 1}` : mark.id }, problem }
}

const looseRow = z.looseObject({ expected: z.record(z.string(), z.unknown()) })
/** A string, or a number outside strings. */
const JSON_TOKEN = /"(?:[^"\\]|\\.)*"|-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/g

/** The entries of a file, each with its expected numbers as printed: read a second time with every number in quotes. */
function entriesOf(source: string): readonly unknown[] {
  const text = source.replace(/^\uFEFF/, '')
  const entries = listOf(JSON.parse(text))
  const quoted = listOf(JSON.parse(text.replace(JSON_TOKEN, (token) => (token.startsWith('"') ? token : `"${token}"`))))
  return entries.map((entry, index) => {
    const row = looseRow.safeParse(entry)
    const written = looseRow.safeParse(quoted[index])
    if (!row.success || !written.success) return entry
    const names = Object.keys(row.data.expected).filter((name) => typeof row.data.expected[name] === 'number')
    return {
      ...row.data,
      printed: Object.fromEntries(names.map((name) => [name, String(written.data.expected[name])])),
    }
  })
}

function listOf(parsed: unknown): readonly unknown[] {
  if (Array.isArray(parsed)) return parsed
  const held = z.record(z.string(), z.unknown()).safeParse(parsed)
  const lists = held.success ? Object.values(held.data).filter((value) => Array.isArray(value)) : []
  const [only] = lists
  if (only === undefined || lists.length > 1) throw new SyntaxError('no list of rows in it')
  return only
}

/** An input that a handler needs and the row does not give. */
export class MissingInput extends Error {}
/** An input that the row gives and that cannot be: a word for a number, a negative volume. */
export class RefusedInput extends Error {}

const given = (inputs: Inputs, name: string): boolean => inputs[name] !== undefined && inputs[name] !== null

/** A number as a row writes it; figures in quotes count. */
function numeric(name: string, value: Value | undefined): number {
  const read = typeof value === 'string' && value.trim() !== '' ? Number(value) : value
  if (typeof read !== 'number' || Number.isNaN(read))
    throw new RefusedInput(`${name} is ${JSON.stringify(value)}, no number`)
  const refusal = refusalOf(name, read)
  if (refusal !== null) throw new RefusedInput(refusal)
  return read
}

/** Typed reading of a row's inputs. */
export const number = (inputs: Inputs, name: string): number => {
  if (!given(inputs, name)) throw new MissingInput(`no number ${name}`)
  return numeric(name, inputs[name])
}
export const numberOr = (inputs: Inputs, name: string, otherwise: number): number =>
  given(inputs, name) ? number(inputs, name) : otherwise
/** A number that may not be nothing, since the quantity divides by it. */
export const positive = (inputs: Inputs, name: string): number => {
  const value = number(inputs, name)
  if (value <= 0) throw new RefusedInput(`${name} is ${value}, and has to be over 0`)
  return value
}
/** The first of these inputs that the row gives. */
export const firstNumber = (inputs: Inputs, ...names: readonly string[]): number => {
  const name = names.find((candidate) => given(inputs, candidate))
  if (name === undefined) throw new MissingInput(`no number ${names.join(' or ')}`)
  return number(inputs, name)
}
/** A word, empty where there is none; a figure counts as one (`awg: 12`). */
export const text = (inputs: Inputs, name: string): string => {
  const value = inputs[name]
  if (!given(inputs, name)) return ''
  if (typeof value === 'number') return String(value)
  if (typeof value !== 'string') throw new RefusedInput(`${name} is ${JSON.stringify(value)}, no word`)
  return value
}
/** One of these words; another is refused, none is the first. */
export function oneOf<const T extends string>(inputs: Inputs, name: string, words: readonly [T, ...T[]]): T {
  const value = text(inputs, name).toLowerCase()
  if (value === '') return words[0]
  const found = words.find((word) => value.includes(word))
  if (found === undefined) throw new RefusedInput(`${name} is ${value}, and has to be one of ${words.join(', ')}`)
  return found
}
export const numbers = (inputs: Inputs, name: string): readonly number[] =>
  list(inputs, name).map((entry) => numeric(name, entry))
export const texts = (inputs: Inputs, name: string): readonly string[] =>
  list(inputs, name).map((entry) => text({ [name]: entry }, name))

function list(inputs: Inputs, name: string): readonly Value[] {
  const value = inputs[name]
  if (!given(inputs, name)) throw new MissingInput(`no list ${name}`)
  if (!Array.isArray(value) || value.length === 0)
    throw new RefusedInput(`${name} is ${JSON.stringify(value)}, no list`)
  return value
}
/** Facts by the words in the names that a row publishes them under. */
export const byWords = (expected: readonly string[], facts: readonly (readonly [RegExp, Value])[]): Ours =>
  Object.fromEntries(
    expected.flatMap((name) => {
      const fact = facts.find(([words]) => words.test(name))
      return fact === undefined ? [] : [[name, fact[1]] as const]
    }),
  )
export const has = (inputs: Inputs, ...names: readonly string[]): boolean => names.every((name) => given(inputs, name))

/** Our values by the names that the row publishes. A quantity left out is one that the engine does not have. */
export type Ours = Readonly<Record<string, Value | undefined>>
export type Handler = (inputs: Inputs, expected: readonly string[]) => Ours
