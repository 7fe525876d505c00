/** A dial's turn gone through unseen while the window has nothing to do: the first one by hand is then as quick as the tenth. */
import { watch } from 'vue'
import { applyEdit } from '../../shared/document/index.ts'
import { joinTurn } from '../workers/index.ts'
import type { PlanCaller, PlannedTrip } from '../workers/index.ts'
import type { PlanStore } from './plan.ts'

/** After this many the browser has compiled what a turn calls. */
const REHEARSALS = 6

/** Once in a window's life, after its first search. */
export function rehearseAfterFirstPlan(store: PlanStore, turn: PlanCaller['turn']): void {
  const stop = watch(
    () => store.state,
    ({ whole, plannedTrip, job }, before) => {
      if (whole === null || plannedTrip === null || job !== null || before.job?.effort !== 'thorough') return
      stop()
      void rehearseTurns({ plan: whole, trip: plannedTrip }, store, turn)
    },
  )
}

/** Edits, reckons and draws the nights as they stand; nothing that anybody sees changes, and it ends with the first real edit. */
async function rehearseTurns({ plan, trip }: PlannedTrip, store: PlanStore, turn: PlanCaller['turn']): Promise<void> {
  const stillStands = (): boolean =>
    store.state.whole === plan && store.state.plannedTrip === trip && store.state.job === null
  for (let times = 0; times < REHEARSALS; times += 1) {
    await idle()
    if (!stillStands()) return
    for (const { id, covers } of trip.nights)
      applyEdit(trip, { kind: 'set-night', nightId: id, decision: { covers: !covers } })
    const outcome = await turn(trip.nights)
    if (outcome.kind !== 'turned' || !stillStands()) return
    store.set({ plan: joinTurn(plan, outcome.turned) })
  }
}

const idle = async (): Promise<void> => {
  await new Promise<void>((resolve) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => resolve())
    else setTimeout(resolve)
  })
}
