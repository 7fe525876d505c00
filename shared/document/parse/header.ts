/** Is this a trip of ours, and of which version? */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import { FORMAT_NAME, FORMAT_VERSION } from '../schema/document.ts'
import { isRecord } from './json-value.ts'
import type { JsonRecord, JsonValue } from './json-value.ts'
import { showValue } from './show-value.ts'

/** A trip of a version that this program knows, not yet migrated. */
export type Header = { readonly version: number; readonly content: JsonRecord }

export function readHeader(value: JsonValue): Result<Header> {
  if (!isRecord(value)) return fail(problem('trip-not-an-object', [], { value: showValue(value) }))
  if (value['format'] !== FORMAT_NAME) {
    return fail(problem('trip-other-format', ['format'], { value: showValue(value['format']), expected: FORMAT_NAME }))
  }
  const version = value['version']
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return fail(
      problem('trip-version-unreadable', ['version'], { value: showValue(version), known: String(FORMAT_VERSION) }),
    )
  }
  if (version > FORMAT_VERSION) {
    return fail(problem('trip-newer', ['version'], { value: String(version), known: String(FORMAT_VERSION) }))
  }
  return ok({ version, content: value })
}
