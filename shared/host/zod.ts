/** The host contract's import of Zod: interpreted, never compiled to code, so that a strict content security policy holds. */
import * as z from 'zod'

z.config({ jitless: true })

export { z }

/** What crosses the contract is never changed in place. */
export type DeepReadonly<T> = T extends string | number | boolean | null | undefined
  ? T
  : { readonly [K in keyof T]: DeepReadonly<T[K]> }
