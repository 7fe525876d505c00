/** A computed value that stays the same object while it says the same, so that what reads it is not drawn anew. For small plain data. */
import { computed } from 'vue'
import type { ComputedRef } from 'vue'

export const stable = <T>(make: () => T): ComputedRef<T> =>
  computed<T>((before) => {
    const next = make()
    return before !== undefined && JSON.stringify(before) === JSON.stringify(next) ? before : next
  })
