/** What stands on the command line. */
import { fail, ok, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'

export type Arguments =
  | { readonly kind: 'schema' }
  | { readonly kind: 'help' }
  | {
      readonly kind: 'plan'
      readonly trip: string
      readonly out: string | null
      readonly seed: number
      /** Null: the search is bounded by rounds and so reproducible. */
      readonly seconds: number | null
      readonly quiet: boolean
    }

const DEFAULT_SEED = 1
const HIGHEST_SEED = 4_294_967_295
const MOST_SECONDS = 3600

export function parseArguments(given: readonly string[]): Result<Arguments> {
  const trips: string[] = []
  let out: string | null = null
  let seed = DEFAULT_SEED
  let seconds: number | null = null
  let quiet = false
  let schema = false
  const queue = given.flatMap((argument) => splitAssignment(argument))
  for (let argument = queue.shift(); argument !== undefined; argument = queue.shift()) {
    if (argument === '--quiet') quiet = true
    else if (argument === '--schema') schema = true
    else if (argument === '--help' || argument === '-h') return ok({ kind: 'help' })
    else if (argument === '--out' || argument === '--seed' || argument === '--seconds') {
      const value = queue.shift()
      if (value === undefined || value === '') return fail(problem('command-argument-missing', [], { argument }))
      if (argument === '--out') out = value
      else {
        const [low, high] = argument === '--seed' ? [0, HIGHEST_SEED] : [1, MOST_SECONDS]
        const number = wholeNumber(value, low, high)
        if (number === null) return fail(problem('command-argument-number', [], { argument, value, low, high }))
        if (argument === '--seed') seed = number
        else seconds = number
      }
    } else if (argument.startsWith('-')) return fail(problem('command-argument-unknown', [], { argument }))
    else trips.push(argument)
  }
  const [trip, second] = trips
  if (schema) return ok({ kind: 'schema' })
  if (trip === undefined || trip === '') return fail(problem('command-trip-missing'))
  if (second !== undefined) return fail(problem('command-trips-many', [], { second }))
  return ok({ kind: 'plan', trip, out, seed, seconds, quiet })
}

/** `--seed=4` is `--seed 4`. */
const splitAssignment = (argument: string): readonly string[] => {
  const match = /^(--[a-z]+)=(.*)$/.exec(argument)
  return match?.[1] === undefined ? [argument] : [match[1], match[2] ?? '']
}

function wholeNumber(text: string, low: number, high: number): number | null {
  if (!/^\d{1,10}$/.test(text)) return null
  const number = Number(text)
  return number >= low && number <= high ? number : null
}
