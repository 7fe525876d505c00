/** Every sentence and number the user reads, per language. */
export { ENGLISH } from './en/index.ts'
export { GERMAN } from './de/index.ts'
export type { Language, Quantity, Text, TextKey, TextParams, UnitSystem } from './types.ts'
