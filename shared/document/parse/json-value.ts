/** What JSON can say. */

export type JsonValue = string | number | boolean | null | readonly JsonValue[] | JsonRecord
export type JsonRecord = { readonly [key: string]: JsonValue }

export const isRecord = (value: JsonValue | undefined): value is JsonRecord =>
  typeof value === 'object' && value !== null && !isList(value)

/** `Array.isArray` that keeps the element's type. */
export const isList = (value: JsonValue | undefined): value is readonly JsonValue[] => Array.isArray(value)
