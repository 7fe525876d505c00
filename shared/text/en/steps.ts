/** English sentences: steps. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const steps = {} as const
