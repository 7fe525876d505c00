/** Loading the vehicle unit by unit, before driving: which stand already, and which is carried now. */
import { computed, ref, watch } from 'vue'
import type { ComputedRef } from 'vue'
import type { Plan } from '../../../shared/plan/index.ts'
import type { LayoutMoment } from '../../scene/moment.ts'

export type Loading = {
  /** Null while one is not loading step by step. */
  readonly step: ComputedRef<{ readonly done: number; readonly count: number; readonly unitId: string } | null>
  /** The moment as it is shown: with what is loaded so far, and nothing else. */
  readonly shown: ComputedRef<LayoutMoment>
  readonly toggle: () => void
  readonly go: (by: 1 | -1) => void
}

export function useLoading(plan: () => Plan, moment: () => LayoutMoment): Loading {
  const done = ref<number | null>(null)
  const order = computed(() => {
    const standing = new Set(moment().placements.map(({ unitId }) => unitId))
    return plan().packing.loadingOrder.filter((unitId) => standing.has(unitId))
  })
  // Only what drives is loaded: the bed layout and the moves to it have steps of their own.
  watch(
    () => moment().state,
    (state) => {
      if (state !== 'drive') done.value = null
    },
  )
  const step = computed(() => {
    const count = order.value.length
    const at = done.value === null ? null : Math.min(done.value, count)
    const unitId = at === null ? undefined : order.value[at - 1]
    return at === null || unitId === undefined ? null : { done: at, count, unitId }
  })
  const shown = computed((): LayoutMoment => {
    if (step.value === null) return moment()
    const loaded = new Set(order.value.slice(0, step.value.done))
    return { ...moment(), placements: moment().placements.filter(({ unitId }) => loaded.has(unitId)) }
  })
  return {
    step,
    shown,
    toggle: () => {
      done.value = done.value === null ? 1 : null
    },
    go: (by) => {
      if (step.value !== null) done.value = Math.min(step.value.count, Math.max(1, step.value.done + by))
    },
  }
}
