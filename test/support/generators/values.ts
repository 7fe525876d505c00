/** Values of a trip as fast-check makes them: whole millimetres and grams, no negative zero, text with odd characters. */
import * as fc from 'fast-check'

export const int = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max })

/** A decimal number as a person types it: three digits, never negative zero. */
export const decimal = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(min * 1000), max: Math.floor(max * 1000) }).map((value) => value / 1000 + 0)

export const maybe = <K extends string, T>(key: K, value: fc.Arbitrary<T>): fc.Arbitrary<{ [key in K]?: T }> =>
  fc.option(value, { nil: undefined }).map((one) => {
    const made: { [key in K]?: T } = {}
    if (one !== undefined) made[key] = one
    return made
  })

/** Several optional parts joined into one object. */
export const joined = <A, B>(a: fc.Arbitrary<A>, b: fc.Arbitrary<B>): fc.Arbitrary<A & B> =>
  fc.tuple(a, b).map(([first, second]) => ({ ...first, ...second }))

export const label: fc.Arbitrary<string> = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 })

export const note: fc.Arbitrary<string> = fc.string({ unit: 'grapheme', maxLength: 80 })

export const clock: fc.Arbitrary<string> = int(0, 1439).map(
  (minutes) => `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`,
)

/** From one clock to another, `least` to `most` minutes later. */
export const span = (least: number, most: number): fc.Arbitrary<{ from: string; to: string }> =>
  fc
    .tuple(int(0, 1439), int(least, most))
    .map(([from, length]) => ({ from: clockAt(from), to: clockAt(from + length) }))

export const clockAt = (minutes: number): string => {
  const inDay = minutes % 1440
  return `${String(Math.floor(inDay / 60)).padStart(2, '0')}:${String(inDay % 60).padStart(2, '0')}`
}

export const sizeMm = (min: number, max: number): fc.Arbitrary<[number, number, number]> =>
  fc.tuple(int(min, max), int(min, max), int(min, max))

export const yesNo = fc.constantFrom('yes', 'no', 'not-known')

export const ids = (stem: string, count: number): string[] =>
  Array.from({ length: count }, (_, index) => `${stem}-${String(index + 1)}`)
