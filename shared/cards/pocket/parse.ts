/** Reads back the text that a pocket sheet writes: ticks and readings, line by line. */
import type { Measured } from '../../document/index.ts'
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import { MOMENTS, READING_FIELDS } from './readings.ts'

export const POCKET_FORMAT = 'kipstow-pocket'
export const POCKET_VERSION = 1
const LONGEST_TEXT = 1_000_000
const LONGEST_KEY = 200

export type PocketTick = { readonly stepKey: string; readonly state: 'done' | 'open'; readonly atUtc: number }
export type PocketText = {
  /** Title of the trip the sheet was made for. */
  readonly tripTitle: string
  readonly ticks: readonly PocketTick[]
  readonly readings: readonly Measured[]
}

/**
 * Lines may be quoted with `>` and parted by blank lines, as mail and messages do; anything else unknown is refused.
 * Problems: `pocket-unreadable`, `pocket-version` (found, known), `pocket-line` (line, value), `pocket-cut-off`, `pocket-too-long`.
 */
export function parsePocketText(pasted: string): Result<PocketText> {
  if (pasted.length > LONGEST_TEXT) return fail(problem('pocket-too-long'))
  const lines = pasted
    .split(/\r?\n/)
    .map((line, index) => ({
      words: line
        .replace(/^[>\s\ufeff]+/, '')
        .trim()
        .split(/\s+/),
      line: index + 1,
    }))
    .filter(({ words }) => words[0] !== '')
  const [head, trip, ...rest] = lines
  if (head === undefined || head.words[0] !== POCKET_FORMAT) return fail(problem('pocket-unreadable'))
  if (head.words[1] !== String(POCKET_VERSION)) {
    return fail(problem('pocket-version', [], { found: head.words[1] ?? '', known: POCKET_VERSION }))
  }
  const tripTitle = trip?.words[0] === 'trip' ? decoded(trip.words[1] ?? '') : null
  if (tripTitle === null) return fail(problem('pocket-unreadable'))
  return parseLines(tripTitle, rest)
}

type Line = { readonly words: readonly string[]; readonly line: number }

function parseLines(tripTitle: string, lines: readonly Line[]): Result<PocketText> {
  const ticks: PocketTick[] = []
  const readings: Measured[] = []
  for (const { words, line } of lines) {
    if (words[0] === 'end') {
      const whole = Number(words[1]) === ticks.length + readings.length
      return whole ? ok({ tripTitle, ticks, readings }) : fail(problem('pocket-cut-off'))
    }
    const tick = tickOf(words)
    const reading = readingOf(words)
    if (tick !== null) ticks.push(tick)
    else if (reading !== null) readings.push(reading)
    else return fail(problem('pocket-line', [], { line, value: words.join(' ').slice(0, 80) }))
  }
  return fail(problem('pocket-cut-off'))
}

function tickOf(words: readonly string[]): PocketTick | null {
  const [verb, key = '', at = ''] = words
  if ((verb !== 'tick' && verb !== 'untick') || words.length !== 3 || !/^\d{1,12}$/.test(at)) return null
  const stepKey = decoded(key)
  if (stepKey === null || stepKey === '' || stepKey.length > LONGEST_KEY) return null
  return { stepKey, state: verb === 'tick' ? 'done' : 'open', atUtc: Number(at) }
}

function readingOf(words: readonly string[]): Measured | null {
  const [verb, nightId = '', momentWord, clock = '', ...pairs] = words
  const moment = MOMENTS.find((one) => one === momentWord)
  if (verb !== 'read' || moment === undefined || pairs.length === 0) return null
  if (!/^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/.test(nightId) || !/^([01]\d|2[0-3]):[0-5]\d$/.test(clock)) return null
  const values: Partial<Record<keyof typeof READING_FIELDS, number>> = {}
  for (const pair of pairs) {
    const [name, typed = '', more] = pair.split('=')
    const field = FIELD_NAMES.find((one) => one === name)
    if (field === undefined || more !== undefined || !/^-?\d+(\.\d+)?$/.test(typed)) return null
    const [least, most] = READING_FIELDS[field]
    const value = Number(typed)
    if (value < least || value > most) return null
    values[field] = value
  }
  return { nightId, moment, clock, ...values }
}

const FIELD_NAMES = [
  'volts',
  'currentA',
  'meterWh',
  'charge01',
  'lowestInsideC',
] as const satisfies readonly (keyof typeof READING_FIELDS)[]

/** Percent-decoded, or null where it is not well formed. */
function decoded(word: string): string | null {
  if (!/^([A-Za-z0-9\-_.!~*'()]|%[0-9A-Fa-f]{2})*$/.test(word)) return null
  try {
    return decodeURIComponent(word)
  } catch {
    // Only malformed UTF-8 can end here: the pattern above admits nothing else.
    return null
  }
}
