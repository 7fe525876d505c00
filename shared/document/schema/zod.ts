/** The one import of Zod: interpreted, never compiled to code, so that a strict content security policy holds. */
import * as z from 'zod'

z.config({ jitless: true })

export { z }

/** The document never changes in place: edits make a new one. */
export type DeepReadonly<T> = { readonly [K in keyof T]: DeepReadonly<T[K]> }
