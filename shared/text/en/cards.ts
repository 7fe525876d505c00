/** English sentences: cards. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const cards = {} as const
