/** Every sentence and number the user reads, per language. */
export { createText } from './create.ts'
export { parsePlainNumber } from './parse-quantity.ts'
export { parseTypedClock } from './parse-clock.ts'
export { ENGLISH } from './en/index.ts'
export { GERMAN } from './de/index.ts'
export type { Language, Measure, Quantity, Text, TextKey, TextParam, TextParams, UnitSystem } from './types.ts'
