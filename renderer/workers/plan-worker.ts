/** The worker that makes plans: one request at a time, going on from its own last plan. */
import { derivePlan } from '../../shared/plan/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import type { PlanAnswer, PlanEffort, PlanRequest } from './messages.ts'

const SEED = 1
/** Improvement rounds of the packing search: a dial's answer must not wait, a thorough plan may take seconds. */
const ITERATIONS: Readonly<Record<PlanEffort, number>> = { quick: 0, thorough: 400 }
const PROGRESS_EVERY_MS = 60

let previous: Plan | undefined

const answer = (message: PlanAnswer): void => self.postMessage(message)

function run(request: PlanRequest): void {
  const startedMs = performance.now()
  let toldMs = -Infinity
  const from = request.previous ?? previous
  try {
    const plan = derivePlan(request.trip, {
      seed: SEED,
      iterations: ITERATIONS[request.effort],
      remedies: request.effort === 'thorough',
      onProgress: (done01, note) => {
        const nowMs = performance.now()
        if (nowMs - toldMs < PROGRESS_EVERY_MS) return
        toldMs = nowMs
        answer({ kind: 'progress', id: request.id, done01, note })
      },
      ...(from === undefined ? {} : { previous: from }),
    })
    previous = plan
    answer({ kind: 'plan', id: request.id, plan, tookMs: performance.now() - startedMs })
  } catch (cause) {
    const error = cause instanceof Error ? cause : new Error('not an error')
    answer({ kind: 'failed', id: request.id, errorName: error.name, message: error.message })
  }
}

self.addEventListener('message', (event: MessageEvent<PlanRequest>) => run(event.data))
