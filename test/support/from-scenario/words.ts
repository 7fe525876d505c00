/** Reading numbers, clocks and leftovers out of loosely written scenario fields. */

export type Loose = Readonly<Record<string, unknown>>

/** Grams from kilograms, without binary dust. */
export const gramsOf = (kg: number): number => Math.round(kg * 1000)

/** Millimetres from metres. */
export const mmOf = (metres: number): number => Math.round(metres * 1000)

/** The first number among the keys that match, trying the patterns in order. */
export function numberLike(source: Loose, ...patterns: readonly RegExp[]): number | undefined {
  for (const pattern of patterns) {
    for (const [key, value] of Object.entries(source)) {
      if (pattern.test(key) && typeof value === 'number') return value
    }
  }
  return undefined
}

/** The first text among the keys that match. */
export function textLike(source: Loose, pattern: RegExp): string | undefined {
  for (const [key, value] of Object.entries(source)) {
    if (pattern.test(key) && typeof value === 'string') return value
  }
  return undefined
}

/** One value for each night from a number or a list of numbers; the last one repeats. */
export function perNight(source: Loose, pattern: RegExp, index: number): number | undefined {
  for (const [key, value] of Object.entries(source)) {
    if (!pattern.test(key)) continue
    if (typeof value === 'number') return value
    if (Array.isArray(value)) {
      const one: unknown = value[index]
      if (typeof one === 'number') return one
    }
  }
  return undefined
}

const CLOCK = /([01]?\d|2[0-3]):([0-5]\d)/

export function clockOf(text: string | null | undefined): string | undefined {
  const match = CLOCK.exec(text ?? '')
  return match === null ? undefined : `${(match[1] ?? '').padStart(2, '0')}:${match[2] ?? ''}`
}

/** `23:00-07:00` as a span. */
export function spanOf(text: string | null | undefined): { from: string; to: string } | undefined {
  const clocks = (text ?? '').match(new RegExp(CLOCK.source, 'g'))
  const from = clockOf(clocks?.[0])
  const to = clockOf(clocks?.[1])
  return from === undefined || to === undefined ? undefined : { from, to }
}

const DAY_MIN = 1440

export const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

export function shiftClock(clock: string, byMin: number): string {
  const minutes = (((minutesOf(clock) + byMin) % DAY_MIN) + DAY_MIN) % DAY_MIN
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
}

/** What no field of the trip holds, as text for a note: `key: value; key: value`. */
export function leftoversOf(source: Loose, known: readonly string[]): string {
  return Object.entries(source)
    .filter(([key, value]) => !known.includes(key) && value !== null && value !== undefined)
    .map(([key, value]) => `${key.replaceAll('_', ' ')}: ${typeof value === 'string' ? value : JSON.stringify(value)}`)
    .join('; ')
}

/** An optional property only where there is a value. */
export function given<K extends string, V>(key: K, value: V | undefined | null): { [key in K]?: V } {
  if (value === undefined || value === null) return {}
  const single: { [key in K]?: V } = {}
  single[key] = value
  return single
}

/** Notes joined, or nothing. */
export function noteOf(...parts: readonly (string | null | undefined)[]): { note?: string } {
  const text = parts.filter((part) => part !== undefined && part !== null && part !== '').join('. ')
  return text === '' ? {} : { note: text.slice(0, 4000) }
}

export const idOf = (text: string): string => {
  const clean = text.replaceAll(/[^A-Za-z0-9_-]/g, '-').slice(0, 64)
  return /^[A-Za-z0-9]/.test(clean) ? clean : `n${clean}`.slice(0, 64)
}
