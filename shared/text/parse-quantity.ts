/** What a person typed into a field, read as one number in the engine's unit: '158 cm', `5'2"`, '12 lb 3 oz', '54 F', '1,5 kg'. */
import { fail, ok, problem } from '../result/index.ts'
import type { Result } from '../result/index.ts'
import { DAY_WORDS, FOOT_WORDS, HOUR_WORDS, KILOGRAM_WORDS, MEASURES, METRE_WORDS, POUND_WORDS } from './measures.ts'
import type { MeasureUnits, UnitScale } from './measures.ts'
import type { Language, Measure, UnitSystem } from './types.ts'

export type ParseContext = { readonly units: UnitSystem; readonly language: Language }

const NUMBER = String.raw`\d+/\d+|\d[\d.,\u00a0\u202f]*(?:\s+\d+/\d+)?|[.,]\d+`
const PART = new RegExp(
  String.raw`^\s*(${NUMBER})?\s*([\u00bd\u00bc\u00be])?\s*("|''|'|\u2032|\u2033|\u2019|\u201d|[^\d\s.,+'"\u2032\u2033-][^\d\s,+'"\u2032\u2033-]*)?`,
  'u',
)
const GLYPHS: Readonly<Record<string, number>> = { '\u00bd': 0.5, '\u00bc': 0.25, '\u00be': 0.75 }

/**
 * A typed quantity in the engine's unit (mm, g, mm3, °C, K, W, Wh, 0..1, A, V, m, km/h, m/s, s).
 * Several parts add up ('5 ft 2 in'); after feet a bare number is inches, after pounds ounces, after hours minutes,
 * after a unit without a usual smaller one ('54 F 20') or after a bare number it is refused rather than guessed at.
 * Both decimal signs are read; a sign followed by exactly three digits groups thousands where the language groups with it.
 * Problems: `number-unreadable` (value), `unit-unknown` (value, unit), `number-too-small` (value).
 */
export function parseQuantity(measure: Measure, typed: string, context: ParseContext): Result<number> {
  const units = MEASURES[measure]
  const trimmed = typed.trim().replaceAll('\u2212', '-')
  const negative = trimmed.startsWith('-')
  let rest = trimmed.replace(/^[-+]\s*/, '')
  let total: number | null = null
  let previous = ''
  while (rest.trim() !== '') {
    const part = readPart(rest, typed, context.language)
    if (!part.ok) return part
    const word: string | undefined = part.value.unit ?? (total === null ? units.bare[context.units] : SMALLER[previous])
    if (word === undefined) return fail(problem('number-unreadable', [], { value: typed }))
    const scale = scaleOf(units, word)
    if (scale === null) return fail(problem('unit-unknown', [], { value: typed, unit: word }))
    const sign = negative ? -1 : 1
    total = (total ?? 0) + sign * part.value.number * scale.factor + (scale.offset ?? 0)
    previous = part.value.unit ?? ''
    rest = rest.slice(part.value.length)
  }
  if (total === null || !Number.isFinite(total)) return fail(problem('number-unreadable', [], { value: typed }))
  const value = units.whole ? Math.round(total) : tidy(total)
  if (units.atLeast !== null && value < units.atLeast) return fail(problem('number-too-small', [], { value: typed }))
  return ok(value)
}

/** A plain number without a unit, in either decimal notation. */
export function parsePlainNumber(typed: string, language: Language): Result<number> {
  const trimmed = typed.trim().replaceAll('\u2212', '-')
  const negative = trimmed.startsWith('-')
  const number = readNumber(trimmed.replace(/^[-+]\s*/, ''), language)
  if (number === null) return fail(problem('number-unreadable', [], { value: typed }))
  return ok(negative ? -number : number)
}

type Part = { readonly number: number; readonly unit: string | null; readonly length: number }

function readPart(rest: string, typed: string, language: Language): Result<Part> {
  const unreadable = fail(problem('number-unreadable', [], { value: typed }))
  const match = PART.exec(rest)
  if (match === null || match[0].trim() === '') return unreadable
  const digits = match[1]
  const glyph = match[2] === undefined ? 0 : (GLYPHS[match[2]] ?? 0)
  if (digits === undefined && match[2] === undefined) return unreadable
  const number = digits === undefined ? 0 : readNumber(digits, language)
  if (number === null) return unreadable
  const unit = match[3] === undefined ? null : match[3].toLowerCase().replace(/\.$/, '')
  return ok({ number: number + glyph, unit, length: match[0].length })
}

/** '1.580' in English is 1.58; in German, which groups with dots, it is 1580; '1,580' the other way round. */
function readNumber(text: string, language: Language): number | null {
  const fraction = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(text)
  if (fraction !== null) {
    const below = Number(fraction[3])
    return below === 0 ? null : Number(fraction[1] ?? 0) + Number(fraction[2]) / below
  }
  const plain = text.replaceAll(/[\u00a0\u202f]/g, '')
  const group = language === 'de' ? '.' : ','
  const point = language === 'de' ? ',' : '.'
  const grouped = new RegExp(String.raw`^[1-9]\d{0,2}([${group}]\d{3})+([${point}]\d*)?$`)
  const ungrouped = grouped.test(plain) ? plain.replaceAll(group, '') : plain
  const normal = ungrouped.replace(',', '.')
  return /^(\d+\.?\d*|\.\d+)$/.test(normal) ? Number(normal) : null
}

const after = (smaller: string, ...words: readonly string[]): Record<string, string> =>
  Object.fromEntries(words.map((word) => [word, smaller]))

/** What a bare number means after a unit: 5 ft 2, 12 lb 3, 1 h 20, 1 m 58, 2 kg 500, 3 km 500, 2 d 4. */
const SMALLER: Readonly<Record<string, string | undefined>> = {
  ...after('in', ...FOOT_WORDS),
  ...after('oz', ...POUND_WORDS),
  ...after('min', ...HOUR_WORDS),
  ...after('cm', ...METRE_WORDS),
  ...after('g', ...KILOGRAM_WORDS),
  ...after('m', 'km'),
  ...after('h', ...DAY_WORDS),
}

const scaleOf = (units: MeasureUnits, word: string): UnitScale | null =>
  Object.hasOwn(units.words, word) ? (units.words[word] ?? null) : null

/** Drops the noise of binary fractions: 12 significant digits. */
const tidy = (value: number): number => Number(value.toPrecision(12))
