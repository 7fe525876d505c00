/** Outcomes as values: what a user or a file can cause is a `Problem`; what only a programmer can cause throws. */

/** A place in the document: object keys and array indexes from the root. */
export type DocumentPath = readonly (string | number)[]

/** Values a message about a problem may show. Numbers are SI; `shared/text` converts and rounds. */
export type ProblemParams = Readonly<Record<string, string | number | boolean | readonly string[]>>

/** One thing that went wrong, without prose: `shared/text` owns one sentence per code. */
export type Problem = { readonly code: string; readonly path: DocumentPath; readonly params: ProblemParams }

export type Result<T, E = Problem> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: E }

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value })

export const fail = <E>(problem: E): Result<never, E> => ({ ok: false, problem })

export const problem = (code: string, path: DocumentPath = [], params: ProblemParams = {}): Problem => ({
  code,
  path,
  params,
})

/** Throws when a condition that only a programming error can break does not hold. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`invariant: ${message}`)
}

/** Ends a `switch` over a union: the compiler proves that no case is missing. */
export function assertNever(value: never): never {
  throw new Error(`unexpected value ${JSON.stringify(value)}`)
}
