/** The bytes of a file to a trip: size, UTF-8, JSON, format name, version, migration, validation, references. */
import { fail } from '../../result/index.ts'
import type { Problem, Result } from '../../result/index.ts'
import { migrateTrip } from '../migrations/index.ts'
import { FORMAT_VERSION } from '../schema/document.ts'
import type { Trip } from '../schema/document.ts'
import { readHeader } from './header.ts'
import { readJson } from './json.ts'
import { decodeTripText } from './utf8.ts'
import { validateTrip } from './validate.ts'

/** A trip from the bytes of its file, or every reason why it is refused. The bytes are only read. */
export function parseTrip(bytes: Uint8Array): Result<Trip, readonly Problem[]> {
  const text = decodeTripText(bytes)
  if (!text.ok) return fail([text.problem])
  const value = readJson(text.value)
  if (!value.ok) return fail([value.problem])
  const header = readHeader(value.value)
  if (!header.ok) return fail([header.problem])
  return validateTrip(migrateTrip(header.value.content, header.value.version, FORMAT_VERSION))
}
