/** The latest plan and the job that makes the next one. A result for an older trip is dropped. */
import { defineStore } from 'pinia'
import { computed, shallowRef } from 'vue'
import type { Trip } from '../../shared/document/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import type { PlanCaller, PlanEffort, PlanNote, PlannedTrip } from '../workers/index.ts'

export type PlanJob = { readonly effort: PlanEffort; readonly done01: number; readonly note: PlanNote }
export type PlanState = {
  readonly plan: Plan | null
  readonly plannedTrip: Trip | null
  readonly job: PlanJob | null
  readonly error: { readonly errorName: string; readonly message: string } | null
  readonly stopped: boolean
  readonly tookMs: number | null
}

const EMPTY: PlanState = { plan: null, plannedTrip: null, job: null, error: null, stopped: false, tookMs: null }

export const usePlanStore = defineStore('plan', () => {
  const state = shallowRef<PlanState>(EMPTY)
  const set = (change: Partial<PlanState>): void => {
    state.value = { ...state.value, ...change }
  }
  return {
    state,
    plan: computed(() => state.value.plan),
    job: computed(() => state.value.job),
    error: computed(() => state.value.error),
    set,
    clear: () => {
      state.value = EMPTY
    },
  }
})

export type PlanStore = ReturnType<typeof usePlanStore>

export type Planner = {
  /** Plans the trip: at once and roughly, then thoroughly when nothing else has changed for a moment. */
  readonly plan: (trip: Trip) => void
  readonly cancel: () => void
}

const SETTLE_MS = 350

/** Drives two workers: a quick one that answers while a dial moves, and a thorough one that is stopped by the next change. */
export function createPlanner(store: PlanStore, quick: PlanCaller, thorough: PlanCaller): Planner {
  let wanted: Trip | null = null
  let running: Trip | null = null
  let search: AbortController | null = null
  let settle: ReturnType<typeof setTimeout> | undefined
  /** The newest plan in which load and checklist are made anew too, and which of the workers knows it. */
  let whole: PlannedTrip | null = null
  const knows: { quick: PlannedTrip | null; thorough: PlannedTrip | null } = { quick: null, thorough: null }
  const hand = (worker: 'quick' | 'thorough'): PlannedTrip | null => (knows[worker] === whole ? null : whole)

  const stopSearch = (): void => {
    clearTimeout(settle)
    if (search !== null) knows.thorough = null
    search?.abort()
    search = null
  }

  const runQuick = async (): Promise<void> => {
    if (running !== null) return
    for (let trip = wanted; trip !== null && store.state.plannedTrip !== trip; trip = wanted) {
      running = trip
      const previous = hand('quick')
      const outcome = await quick.call({ trip, effort: 'quick', signal: NEVER, previous, onProgress: () => undefined })
      knows.quick = whole
      if (outcome.kind === 'failed') {
        store.set({ error: outcome, job: null })
        break
      }
      if (outcome.kind !== 'plan') break
      if (outcome.whole) knows.quick = whole = { plan: outcome.plan, trip }
      store.set({ plan: outcome.plan, plannedTrip: trip, error: null, tookMs: outcome.tookMs })
    }
    running = null
  }

  const runThorough = async (): Promise<void> => {
    const trip = wanted
    if (trip === null) return
    const controller = new AbortController()
    search = controller
    store.set({ job: { effort: 'thorough', done01: 0, note: 'night' } })
    const outcome = await thorough.call({
      trip,
      effort: 'thorough',
      signal: controller.signal,
      previous: hand('thorough'),
      onProgress: (done01, note) => {
        if (search === controller) store.set({ job: { effort: 'thorough', done01, note } })
      },
    })
    if (search !== controller) return
    search = null
    if (outcome.kind === 'plan' && wanted === trip) {
      knows.thorough = whole = { plan: outcome.plan, trip }
      store.set({
        plan: outcome.plan,
        plannedTrip: trip,
        job: null,
        error: null,
        stopped: false,
        tookMs: outcome.tookMs,
      })
    } else store.set({ job: null, error: outcome.kind === 'failed' ? outcome : store.state.error })
  }

  return {
    plan: (trip) => {
      wanted = trip
      stopSearch()
      store.set({ job: { effort: 'quick', done01: 0, note: 'night' }, stopped: false })
      void runQuick()
      settle = setTimeout(() => void runThorough(), SETTLE_MS)
    },
    cancel: () => {
      stopSearch()
      store.set({ job: null, stopped: true })
    },
  }
}

const NEVER = new AbortController().signal
