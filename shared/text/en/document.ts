/** English sentences: document. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const document = {} as const
