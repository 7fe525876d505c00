/** English sentences: window. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const window = {} as const
