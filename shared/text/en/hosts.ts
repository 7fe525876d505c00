/** English sentences: hosts. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const hosts = {} as const
