/** The metric sample as a value to spoil, and spoiling it by path. */
import { readFileSync } from 'node:fs'

export type Path = readonly (string | number)[]

export const SAMPLE_FILE = new URL('../../../assets/samples/bats-by-the-quarry.trip.json', import.meta.url)

export const sampleText = (): string => readFileSync(SAMPLE_FILE, 'utf8')

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

/** The sample with one place set; `undefined` takes the place away. */
export function spoiled(path: Path, value: unknown): string {
  const root: unknown = JSON.parse(sampleText())
  const keys = path.slice(0, -1)
  const last = path.at(-1)
  const holder = keys.reduce<unknown>((inside, key) => at(inside, key), root)
  if (typeof holder !== 'object' || holder === null || last === undefined) throw new Error(`no place ${path.join('.')}`)
  if (value === undefined) Reflect.deleteProperty(holder, last)
  else Reflect.set(holder, last, value)
  return JSON.stringify(root)
}

function at(value: unknown, key: string | number): unknown {
  if (typeof value !== 'object' || value === null) throw new Error(`nothing at ${String(key)}`)
  const inside: unknown = Reflect.get(value, key)
  return inside
}
