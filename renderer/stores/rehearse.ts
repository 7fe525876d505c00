/** A dial's turn gone through unseen while the window has nothing to do: the first one by hand is then as quick as the tenth. */
import { applyEdit } from '../../shared/document/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import { joinTurn } from '../workers/index.ts'
import type { PlanCaller, PlannedTrip } from '../workers/index.ts'

/** After this many the browser has compiled what a turn calls. */
const REHEARSALS = 6

export type RehearsalStage = {
  readonly turn: PlanCaller['turn']
  /** Draws a plan that says the same as the one that stands. */
  readonly show: (plan: Plan) => void
  /** False as soon as anything else is asked. */
  readonly stillStands: () => boolean
}

/** Edits, reckons and draws the nights as they stand; nothing that anybody sees changes, and it ends with the first real edit. */
export async function rehearseTurns(standing: PlannedTrip, { turn, show, stillStands }: RehearsalStage): Promise<void> {
  const { trip, plan } = standing
  for (let times = 0; times < REHEARSALS; times += 1) {
    await idle()
    if (!stillStands()) return
    for (const { id, covers } of trip.nights)
      applyEdit(trip, { kind: 'set-night', nightId: id, decision: { covers: !covers } })
    const outcome = await turn(trip.nights)
    if (outcome.kind !== 'turned' || !stillStands()) return
    show(joinTurn(plan, outcome.turned))
  }
}

const idle = async (): Promise<void> => {
  await new Promise<void>((resolve) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => resolve())
    else setTimeout(resolve)
  })
}
