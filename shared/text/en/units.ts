/** English sentences: units. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const units = {} as const
