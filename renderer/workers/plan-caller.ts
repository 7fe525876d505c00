/** Calls the plan worker: `(trip, signal) => plan`, with progress; a call that is given up stops the worker at once. */
import type { Trip } from '../../shared/document/index.ts'
import type { Fault, FaultOutcome, Plan } from '../../shared/plan/index.ts'
import type {
  PlanAnswer,
  PlanEffort,
  PlanNote,
  PlanRequest,
  PlannedTrip,
  TurnedNights,
  WhatIfAsked,
  WhatIfTold,
} from './messages.ts'

export type PlanCall = {
  readonly trip: Trip
  readonly effort: PlanEffort
  readonly signal: AbortSignal
  readonly previous: PlannedTrip | null
  readonly onProgress: (done01: number, note: PlanNote) => void
}

type Failed = { readonly kind: 'failed'; readonly errorName: string; readonly message: string }
type Stopped = { readonly kind: 'stopped' }
export type PlanOutcome = { readonly kind: 'plan'; readonly plan: Plan; readonly tookMs: number } | Stopped | Failed
export type TurnOutcome =
  { readonly kind: 'turned'; readonly turned: TurnedNights; readonly tookMs: number } | Stopped | Failed

export type WhatIfOutcome = { readonly kind: 'compared'; readonly told: WhatIfTold | null } | Stopped | Failed

export type PlanWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener' | 'removeEventListener'>
export type PlanCaller = {
  readonly call: (call: PlanCall) => Promise<PlanOutcome>
  /** The plan that the worker knows, with other nights. */
  readonly turn: (nights: Trip['nights']) => Promise<TurnOutcome>
  /** Null where the worker could not tell. */
  readonly fault: (nightId: string, fault: Fault) => Promise<FaultOutcome | null>
  /** A second plan beside the standing one. */
  readonly whatIf: (asked: WhatIfAsked, watched: Pick<PlanCall, 'signal' | 'onProgress'>) => Promise<WhatIfOutcome>
  /** Tells the worker a plan that another one made. */
  readonly know: (previous: PlannedTrip) => void
  /** Starts the worker before it is asked for anything. */
  readonly warm: () => void
}

type Asked = Exclude<PlanRequest, { readonly kind: 'know' }>
type Told = Exclude<PlanAnswer, { readonly kind: 'progress' }>

const startWorker = (): PlanWorker => new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' })
const NEVER = new AbortController().signal
const STOPPED: Stopped = { kind: 'stopped' }

/** One worker that lives as long as nobody gives up a call; after that a new one, told the plan to go on from. */
export function createPlanCaller(start: () => PlanWorker = startWorker): PlanCaller {
  let worker: PlanWorker | null = null
  let calls = 0
  const nextId = (): number => (calls += 1)

  const ask = async (
    request: Asked,
    signal: AbortSignal,
    onProgress: PlanCall['onProgress'],
  ): Promise<Told | Stopped> => {
    if (signal.aborted) return STOPPED
    worker ??= start()
    const mine = worker
    const drop = (): void => {
      mine.terminate()
      if (worker === mine) worker = null
    }
    return await new Promise((resolve) => {
      const finish = (told: Told | Stopped): void => {
        mine.removeEventListener('message', onMessage)
        mine.removeEventListener('error', onError)
        signal.removeEventListener('abort', onAbort)
        resolve(told)
      }
      const onMessage = (event: Event): void => {
        const answer = (event as MessageEvent<PlanAnswer>).data // the worker sends nothing else
        if (answer.id !== request.id) return
        if (answer.kind === 'progress') onProgress(answer.done01, answer.note)
        else finish(answer)
      }
      const onError = (event: Event): void => {
        drop()
        const message = event instanceof ErrorEvent ? event.message : ''
        finish({ kind: 'failed', id: request.id, errorName: 'WorkerError', message })
      }
      const onAbort = (): void => {
        drop()
        finish(STOPPED)
      }
      mine.addEventListener('message', onMessage)
      mine.addEventListener('error', onError)
      signal.addEventListener('abort', onAbort)
      mine.postMessage(request)
    })
  }

  return {
    call: async ({ trip, effort, signal, previous, onProgress }) => {
      const known = previous === null ? {} : { previous }
      const told = await ask({ kind: 'plan', id: nextId(), trip, effort, ...known }, signal, onProgress)
      return told.kind === 'plan' || told.kind === 'failed' ? told : STOPPED
    },
    turn: async (nights) => {
      const told = await ask({ kind: 'turn', id: nextId(), nights }, NEVER, () => undefined)
      return told.kind === 'turned' || told.kind === 'failed' ? told : STOPPED
    },
    fault: async (nightId, fault) => {
      const told = await ask({ kind: 'fault', id: nextId(), nightId, fault }, NEVER, () => undefined)
      return told.kind === 'faulted' ? told.outcome : null
    },
    whatIf: async (asked, { signal, onProgress }) => {
      const told = await ask({ kind: 'what-if', id: nextId(), asked }, signal, onProgress)
      return told.kind === 'compared' || told.kind === 'failed' ? told : STOPPED
    },
    warm: () => {
      worker ??= start()
    },
    know: (previous) => {
      worker ??= start()
      const request: PlanRequest = { kind: 'know', previous }
      worker.postMessage(request)
    },
  }
}
