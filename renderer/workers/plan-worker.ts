/** The worker that makes plans: one request at a time, going on from its own last plan. */
import { derivePlan } from '../../shared/plan/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import type { Trip } from '../../shared/document/index.ts'
import { dialPlan, differsOnlyInNights } from './dial-plan.ts'
import type { PlanAnswer, PlanRequest, PlannedTrip } from './messages.ts'

const SEED = 1
/** Improvement rounds of the packing search for a thorough plan: some seconds. */
const ITERATIONS = 400
const PROGRESS_EVERY_MS = 60

let last: PlannedTrip | null = null
let small: Plan | null = null
/** The same parts of the trip stay the same objects, so that what did not change is known by looking. */
let kept: Trip | null = null

const answer = (message: PlanAnswer): void => self.postMessage(message)

/** What arrives is a copy: its parts that equal the last trip's are replaced by those. */
function recognise(trip: Trip): Trip {
  if (kept === null) kept = trip
  const before = kept
  const part = <K extends 'vehicle' | 'travellers' | 'kit' | 'checklist'>(key: K): Trip[K] =>
    JSON.stringify(before[key]) === JSON.stringify(trip[key]) ? before[key] : trip[key]
  kept = {
    ...trip,
    vehicle: part('vehicle'),
    travellers: part('travellers'),
    kit: part('kit'),
    checklist: part('checklist'),
  }
  return kept
}

function make(request: PlanRequest): { readonly plan: Plan; readonly whole: boolean } {
  const trip = recognise(request.trip)
  if (request.previous !== undefined) {
    last = { plan: request.previous.plan, trip: recognise(request.previous.trip) }
    small = null
    kept = trip
  }
  if (request.effort === 'quick' && last !== null && differsOnlyInNights(last.trip, trip)) {
    const made = dialPlan(trip, { full: last.plan, small }, SEED)
    small = made.small
    return { plan: made.plan, whole: false }
  }
  let toldMs = -Infinity
  const plan = derivePlan(trip, {
    seed: SEED,
    iterations: request.effort === 'quick' ? 0 : ITERATIONS,
    remedies: request.effort === 'thorough',
    onProgress: (done01, note) => {
      const nowMs = performance.now()
      if (nowMs - toldMs < PROGRESS_EVERY_MS) return
      toldMs = nowMs
      answer({ kind: 'progress', id: request.id, done01, note })
    },
    ...(last === null ? {} : { previous: last.plan }),
  })
  last = { plan, trip }
  return { plan, whole: true }
}

function run(request: PlanRequest): void {
  const startedMs = performance.now()
  try {
    const { plan, whole } = make(request)
    answer({ kind: 'plan', id: request.id, plan, whole, tookMs: performance.now() - startedMs })
  } catch (cause) {
    const error = cause instanceof Error ? cause : new Error('not an error')
    answer({ kind: 'failed', id: request.id, errorName: error.name, message: error.message })
  }
}

self.addEventListener('message', (event: MessageEvent<PlanRequest>) => run(event.data))
