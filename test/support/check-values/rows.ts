/** Rows of published values: inputs, what was published, and how close is close enough. */
import { z } from 'zod'

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
})

export type Row = z.infer<typeof rowSchema>
export type Inputs = Row['inputs']

/** Rows of a JSON text: an array, or an object that holds one. */
export function parseRows(text: string): readonly Row[] {
  const parsed: unknown = JSON.parse(text)
  if (Array.isArray(parsed)) return z.array(rowSchema).parse(parsed)
  return z.object({ rows: z.array(rowSchema) }).parse(parsed).rows
}

/** An input that a handler needs and the row does not give. */
export class MissingInput extends Error {}

/** Typed reading of a row's inputs. */
export const number = (inputs: Inputs, name: string): number => {
  const value = inputs[name]
  if (typeof value !== 'number') throw new MissingInput(`no number ${name}`)
  return value
}
export const numberOr = (inputs: Inputs, name: string, otherwise: number): number => {
  const value = inputs[name]
  return typeof value === 'number' ? value : otherwise
}
/** The first of these inputs that the row gives as a number. */
export const firstNumber = (inputs: Inputs, ...names: readonly string[]): number => {
  const name = names.find((candidate) => typeof inputs[candidate] === 'number')
  if (name === undefined) throw new MissingInput(`no number ${names.join(' or ')}`)
  return number(inputs, name)
}
export const text = (inputs: Inputs, name: string): string => {
  const value = inputs[name]
  return typeof value === 'string' ? value : ''
}
export const numbers = (inputs: Inputs, name: string): readonly number[] => {
  const value = inputs[name]
  if (!Array.isArray(value)) throw new MissingInput(`no list ${name}`)
  return value.filter((entry): entry is number => typeof entry === 'number')
}
export const texts = (inputs: Inputs, name: string): readonly string[] => {
  const value = inputs[name]
  if (!Array.isArray(value)) throw new MissingInput(`no list ${name}`)
  return value.filter((entry): entry is string => typeof entry === 'string')
}
export const has = (inputs: Inputs, ...names: readonly string[]): boolean =>
  names.every((name) => inputs[name] !== undefined)

/** Our values by the names that the row publishes. A quantity left out is one that the engine does not have. */
export type Ours = Readonly<Record<string, Value | undefined>>
export type Handler = (inputs: Inputs, expected: readonly string[]) => Ours
