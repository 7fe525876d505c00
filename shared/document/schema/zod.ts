/** The one import of Zod: interpreted, never compiled to code, so that a strict content security policy holds. */
import * as z from 'zod'

z.config({ jitless: true })

export { z }

/** Any JSON, read-only: the form that a condition of a rule has. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

/** The document never changes in place: edits make a new one. Open JSON is named, since spelling it out would never end. */
export type DeepReadonly<T> = [z.core.util.JSONType] extends [T]
  ? Json
  : { readonly [K in keyof T]: DeepReadonly<T[K]> }
