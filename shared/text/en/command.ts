/** English sentences: command. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const command = {} as const
