/** Freezes a value all the way down, so that a change in place throws. */
export function freezeDeep<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const inside of Object.values(value)) freezeDeep(inside)
  }
  return value
}
