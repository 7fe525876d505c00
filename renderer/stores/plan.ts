/** The latest plan and the job that makes the next one. A result for an older trip is dropped. */
import { defineStore } from 'pinia'
import { computed, shallowRef } from 'vue'
import type { Trip } from '../../shared/document/index.ts'
import type { Fault, FaultOutcome, Plan, WhatIfAmounts, WhatIfKind } from '../../shared/plan/index.ts'
import { differsOnlyInNights, joinTurn } from '../workers/index.ts'
import type { PlanCaller, PlanEffort, PlanNote, PlannedTrip, WhatIfOutcome, WhatIfTold } from '../workers/index.ts'

export type PlanJob = { readonly effort: PlanEffort; readonly done01: number; readonly note: PlanNote }
export type PlanState = {
  readonly plan: Plan | null
  /** The newest plan in which load and checklist are made anew too: what stands while a dial turns. */
  readonly whole: Plan | null
  readonly plannedTrip: Trip | null
  readonly job: PlanJob | null
  readonly error: { readonly errorName: string; readonly message: string } | null
  readonly stopped: boolean
  readonly tookMs: number | null
}

const EMPTY: PlanState = {
  plan: null,
  whole: null,
  plannedTrip: null,
  job: null,
  error: null,
  stopped: false,
  tookMs: null,
}

export const usePlanStore = defineStore('plan', () => {
  const state = shallowRef<PlanState>(EMPTY)
  const set = (change: Partial<PlanState>): void => {
    state.value = { ...state.value, ...change }
  }
  return {
    state,
    plan: computed(() => state.value.plan),
    whole: computed(() => state.value.whole),
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
  /** A night of the newest plan with a fault in it, while its hour is dragged; null where it cannot be told. */
  readonly fault: (nightId: string, fault: Fault) => Promise<FaultOutcome | null>
  /** A second plan beside the newest whole one; stopped at once where there is none yet. */
  readonly whatIf: (question: WhatIfQuestion) => Promise<WhatIfOutcome>
}

export type WhatIfAnswer = WhatIfTold

export type WhatIfQuestion = {
  readonly kind: WhatIfKind
  readonly amounts: Partial<WhatIfAmounts>
  readonly signal: AbortSignal
  readonly onProgress: (done01: number, note: PlanNote) => void
}

/** A dial that is turned again within this long is still being turned, ms. */
const SETTLE_MS = 500
const NEVER = new AbortController().signal

export type PlanCallers = { readonly quick: PlanCaller; readonly thorough: PlanCaller; readonly beside: PlanCaller }

/** Drives three workers: a quick one that answers while a dial moves, a thorough one that is stopped by the next change, and one for what-ifs. */
export function createPlanner(store: PlanStore, { quick, thorough, beside }: PlanCallers): Planner {
  let wanted: Trip | null = null
  let running = false
  let search: AbortController | null = null
  let settle: ReturnType<typeof setTimeout> | undefined
  /** The newest whole plan, and whether the thorough worker is the one that made it or was told it. */
  let whole: PlannedTrip | null = null
  let thoroughKnows: PlannedTrip | null = null

  const stopSearch = (): void => {
    clearTimeout(settle)
    if (search !== null) thoroughKnows = null
    search?.abort()
    search = null
  }

  /** False where there is nothing more to answer. */
  const answer = async (trip: Trip): Promise<boolean> => {
    const standing = whole
    const turning = standing !== null && differsOnlyInNights(standing.trip, trip)
    const outcome = turning
      ? await quick.turn(trip.nights)
      : await quick.call({ trip, effort: 'quick', signal: NEVER, previous: null, onProgress: () => undefined })
    if (outcome.kind === 'failed') store.set({ error: outcome, job: null })
    if (outcome.kind === 'failed' || outcome.kind === 'stopped') return false
    const { tookMs } = outcome
    if (outcome.kind === 'plan' && store.state.plannedTrip === trip && whole !== null) {
      // The search was quicker: its plan is the better one.
      quick.know(whole)
    } else if (outcome.kind === 'plan') {
      whole = { plan: outcome.plan, trip }
      store.set({ plan: outcome.plan, whole: outcome.plan, plannedTrip: trip, error: null, tookMs })
    } else if (standing !== null && standing === whole) {
      // Else the search has just made a newer plan to turn from.
      store.set({ plan: joinTurn(standing.plan, outcome.turned), plannedTrip: trip, error: null, tookMs })
    }
    return true
  }

  /** Whatever was asked meanwhile is left out: only the newest trip is answered. */
  const runQuick = async (): Promise<void> => {
    if (running) return
    running = true
    for (let trip = wanted; trip !== null && store.state.plannedTrip !== trip; trip = wanted)
      if (!(await answer(trip))) break
    running = false
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
      previous: thoroughKnows === whole ? null : whole,
      onProgress: (done01, note) => {
        if (search === controller) store.set({ job: { effort: 'thorough', done01, note } })
      },
    })
    if (search !== controller) return
    search = null
    if (outcome.kind === 'plan' && wanted === trip) {
      thoroughKnows = whole = { plan: outcome.plan, trip }
      quick.know(whole)
      const { plan, tookMs } = outcome
      store.set({ plan, whole: plan, plannedTrip: trip, job: null, error: null, stopped: false, tookMs })
    } else store.set({ job: null, error: outcome.kind === 'failed' ? outcome : store.state.error })
  }

  return {
    fault: quick.fault,
    whatIf: async (question) => await askBeside(beside, { wanted, whole }, question),
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

type Standing = { readonly wanted: Trip | null; readonly whole: PlannedTrip | null }

async function askBeside(
  beside: PlanCaller,
  { wanted, whole }: Standing,
  asked: WhatIfQuestion,
): Promise<WhatIfOutcome> {
  if (wanted === null || whole === null) return { kind: 'stopped' }
  const { kind, amounts, signal, onProgress } = asked
  return await beside.whatIf({ kind, amounts, trip: wanted, standing: whole }, { signal, onProgress })
}
