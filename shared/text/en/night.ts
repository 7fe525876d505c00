/** English sentences: night. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const night = {} as const
