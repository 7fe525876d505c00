/** English sentences: findings. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const findings = {} as const
