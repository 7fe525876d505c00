/** Sets one field by its path; no value takes an optional field away. */
import { ok } from '../../result/index.ts'
import type { DocumentPath, Result } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import { isList, isRecord } from '../parse/json-value.ts'
import type { JsonValue } from '../parse/json-value.ts'
import { pathMissing } from './target.ts'

export type SetValue = {
  readonly kind: 'set-value'
  readonly path: DocumentPath
  /** Absent: the optional field is taken away. */
  readonly value?: JsonValue
}

export function setValue(trip: Trip, edit: SetValue): Result<Trip> {
  if (edit.path.length === 0 || edit.path[0] === 'format' || edit.path[0] === 'version') return pathMissing(edit.path)
  const changed = put(trip as JsonValue, edit.path, edit.value)
  // The checks after every edit read the changed field through the schema before this is a trip again.
  return changed === null ? pathMissing(edit.path) : ok(changed as Trip)
}

/** The value with one place changed, or null where the path leads nowhere. */
function put(value: JsonValue, path: DocumentPath, set: JsonValue | undefined): JsonValue | null {
  const [key, ...rest] = path
  if (key === undefined) return set ?? null
  if (isList(value)) {
    if (typeof key !== 'number') return null
    const inside = value[key]
    if (inside === undefined) return null
    if (rest.length === 0 && set === undefined) return value.filter((_, index) => index !== key)
    const changed = put(inside, rest, set)
    return changed === null && rest.length > 0 ? null : value.with(key, changed)
  }
  if (!isRecord(value) || typeof key !== 'string') return null
  if (rest.length === 0) {
    if (set !== undefined) return { ...value, [key]: set }
    const { [key]: _dropped, ...kept } = value
    return kept
  }
  const inside = value[key]
  if (inside === undefined) return null
  const changed = put(inside, rest, set)
  return changed === null ? null : { ...value, [key]: changed }
}
