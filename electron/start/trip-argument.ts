/** The trip that `npm start -- TRIP.json` names. */
import { resolve } from 'node:path'

/** Absolute, from where the user stands; null where none is named. */
export function tripAmongArguments(given: readonly string[], folder: string): string | null {
  const named = given.find((argument) => argument !== '' && !argument.startsWith('-'))
  return named === undefined ? null : resolve(folder, named)
}
