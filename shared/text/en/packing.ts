/** English sentences: packing. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const packing = {} as const
