/** Calls the plan worker: `(trip, signal) => plan`, with progress; a call that is given up stops the worker at once. */
import type { Trip } from '../../shared/document/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import type { PlanAnswer, PlanEffort, PlanNote, PlannedTrip, PlanRequest } from './messages.ts'

export type PlanCall = {
  readonly trip: Trip
  readonly effort: PlanEffort
  readonly signal: AbortSignal
  readonly previous: PlannedTrip | null
  readonly onProgress: (done01: number, note: PlanNote) => void
}

export type PlanOutcome =
  | { readonly kind: 'plan'; readonly plan: Plan; readonly whole: boolean; readonly tookMs: number }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly errorName: string; readonly message: string }

export type PlanWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener' | 'removeEventListener'>
export type PlanCaller = { readonly call: (call: PlanCall) => Promise<PlanOutcome> }

const startWorker = (): PlanWorker => new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' })

/** One worker that lives as long as nobody gives up a call; after that a new one, told the plan to go on from. */
export function createPlanCaller(start: () => PlanWorker = startWorker): PlanCaller {
  let worker: PlanWorker | null = null
  let calls = 0
  const call = async ({ trip, effort, signal, previous, onProgress }: PlanCall): Promise<PlanOutcome> => {
    if (signal.aborted) return { kind: 'stopped' }
    worker ??= start()
    const mine = worker
    calls += 1
    const request: PlanRequest = { id: calls, trip, effort, ...(previous === null ? {} : { previous }) }
    return await new Promise<PlanOutcome>((resolve) => {
      const finish = (outcome: PlanOutcome): void => {
        mine.removeEventListener('message', onMessage)
        mine.removeEventListener('error', onError)
        signal.removeEventListener('abort', onAbort)
        resolve(outcome)
      }
      const onMessage = (event: Event): void => {
        const answer = (event as MessageEvent<PlanAnswer>).data // the worker sends nothing else
        if (answer.id !== request.id) return
        if (answer.kind === 'progress') onProgress(answer.done01, answer.note)
        else finish(answer)
      }
      const drop = (): void => {
        mine.terminate()
        if (worker === mine) worker = null
      }
      const onError = (event: Event): void => {
        drop()
        finish({ kind: 'failed', errorName: 'WorkerError', message: event instanceof ErrorEvent ? event.message : '' })
      }
      const onAbort = (): void => {
        drop()
        finish({ kind: 'stopped' })
      }
      mine.addEventListener('message', onMessage)
      mine.addEventListener('error', onError)
      signal.addEventListener('abort', onAbort)
      mine.postMessage(request)
    })
  }
  return { call }
}
