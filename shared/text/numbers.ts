/** Numbers in a language: digits, separators, and a real minus sign. */
import type { Language } from './types.ts'

export const localeOf = (language: Language): string => (language === 'de' ? 'de-DE' : 'en-GB')

const MINUS = '\u2212'
const GROUPED_FROM = 10_000

/** A number with at most `digits` decimals; trailing zeros dropped unless `fixed`. */
export function formatNumber(value: number, language: Language, digits: number, fixed = false): string {
  const rounded = roundDecimals(value, digits)
  const grouped = Math.abs(rounded) >= GROUPED_FROM
  const text = formatOf(localeOf(language), digits, fixed, grouped).format(Math.abs(rounded))
  return rounded < 0 ? `${MINUS}${text}` : text
}

/** Making a format takes a hundred times as long as using it: each of the few is made once. */
const FORMATS = new Map<string, Intl.NumberFormat>()

function formatOf(locale: string, digits: number, fixed: boolean, useGrouping: boolean): Intl.NumberFormat {
  const key = `${locale} ${digits} ${fixed} ${useGrouping}`
  const made =
    FORMATS.get(key) ??
    new Intl.NumberFormat(locale, {
      maximumFractionDigits: digits,
      minimumFractionDigits: fixed ? digits : 0,
      useGrouping,
    })
  FORMATS.set(key, made)
  return made
}

/** Rounds to a multiple of `step`. */
export const roundTo = (value: number, step: number): number => Math.round(value / step) * step

/** Decimals that a plain number deserves: fewer the larger it is. */
export const plainDigits = (value: number): number => {
  const size = Math.abs(value)
  if (size >= 100) return 0
  return size >= 10 ? 1 : 2
}

/** Half away from zero, on the decimal digits a person sees: 12.35 to one digit is 12.4. */
const roundDecimals = (value: number, digits: number): number =>
  (Math.sign(value) * Math.round(Number((Math.abs(value) * 10 ** digits).toPrecision(12)))) / 10 ** digits
