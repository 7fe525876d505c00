/** One step from a version of the file format to the next. */
import type { JsonRecord } from '../parse/json-value.ts'

export type Migration = {
  /** The version it makes: step 1 takes version 0 to version 1. */
  readonly to: number
  readonly name: string
  /** Takes the whole content of the older version; leaves alone what it does not understand, for validation to name. */
  readonly migrate: (content: JsonRecord) => JsonRecord
}
