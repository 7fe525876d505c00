/** The question asked before a trip with edits that are nowhere on disk gives way to another one. */
import { shallowRef } from 'vue'
import type { ShallowRef } from 'vue'

export type LeaveAnswer = 'go' | 'stay'

export type Leaving = {
  /** True while the question stands. */
  readonly asked: ShallowRef<boolean>
  /** True where the trip in hand may go: at once where nothing would be lost, else when the user says so. */
  readonly mayLeave: () => Promise<boolean>
  readonly answer: (answer: LeaveAnswer) => void
}

export function createLeaving(wouldLose: () => boolean): Leaving {
  const asked = shallowRef(false)
  let resolve: ((go: boolean) => void) | null = null
  const answer = (given: LeaveAnswer): void => {
    asked.value = false
    resolve?.(given === 'go')
    resolve = null
  }
  return {
    asked,
    mayLeave: async () => {
      if (!wouldLose()) return true
      // A second question takes the place of the first: what was asked before stays undone.
      answer('stay')
      asked.value = true
      return await new Promise((done) => {
        resolve = done
      })
    },
    answer,
  }
}
