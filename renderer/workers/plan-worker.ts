/** The worker that makes plans: one request at a time, going on from the last plan that it made or was told. */
import { choicesOf, compareWhatIf, derivePlan, runFault, settlingRounds } from '../../shared/plan/index.ts'
import type { Fault, FaultOutcome, Plan } from '../../shared/plan/index.ts'
import type { Trip } from '../../shared/document/index.ts'
import { invariant } from '../../shared/result/index.ts'
import type {
  PlanAnswer,
  PlanNote,
  PlanRequest,
  PlannedTrip,
  TurnedNights,
  Verdicts,
  WhatIfAsked,
  WhatIfTold,
} from './messages.ts'

const SEED = 1
/** Share of a settled search that the window waits for; the next plan goes on from this one. */
const PATIENCE_01 = 0.5
const PROGRESS_EVERY_MS = 60

let last: PlannedTrip | null = null
/** The last turn of a dial since `last`: nights that it left alone need not be reckoned again. */
let turned: Plan | null = null

const answer = (message: PlanAnswer): void => self.postMessage(message)

function know(previous: PlannedTrip): void {
  last = previous
  turned = null
}

function make({ id, trip, effort, previous }: Extract<PlanRequest, { readonly kind: 'plan' }>): Plan {
  if (previous !== undefined) know(previous)
  const plan = derivePlan(trip, {
    seed: SEED,
    iterations: effort === 'quick' ? 0 : thoroughRounds(trip),
    remedies: effort === 'thorough',
    onProgress: tellingOf(id),
    ...(last === null ? {} : { previous: last.plan }),
  })
  know({ plan, trip })
  return plan
}

const thoroughRounds = (trip: Trip): number => Math.ceil(settlingRounds(trip.kit.pieces.length) * PATIENCE_01)

/** Tells how far a job is, not too often. */
function tellingOf(id: number): (done01: number, note: PlanNote) => void {
  let toldMs = -Infinity
  return (done01, note) => {
    const nowMs = performance.now()
    if (nowMs - toldMs < PROGRESS_EVERY_MS) return
    toldMs = nowMs
    answer({ kind: 'progress', id, done01, note })
  }
}

/** The same effort as the plan at hand had, so that what differs comes from the change and not from the search. */
function compared(id: number, { kind, amounts, trip, standing }: WhatIfAsked): WhatIfTold | null {
  const budget = { seed: SEED, remedies: true, onProgress: tellingOf(id) }
  const plan =
    trip === standing.trip ? standing.plan : derivePlan(trip, { ...budget, iterations: 0, previous: standing.plan })
  const whatIf = compareWhatIf(trip, plan, kind, { ...budget, iterations: thoroughRounds(trip), amounts })
  if (whatIf === null) return null
  const { plan: after, ...told } = whatIf
  return { ...told, before: verdictsOf(plan), after: verdictsOf(after) }
}

const verdictsOf = ({ verdict, nightVerdicts }: Plan): Verdicts => ({ verdict, nightVerdicts })

/** Only the nights are reckoned; the answer is a few kilobytes, not the whole plan: what a search found stands with the asker. */
function turn(nights: Trip['nights']): TurnedNights {
  invariant(last !== null, 'a dial is turned on a plan that the worker knows')
  const plan = turnedPlan(last, nights)
  turned = plan
  return {
    nights: plan.nights.map((night) => ({ ...night, search: null, faults: [] })),
    findings: plan.findings,
    verdict: plan.verdict,
    nightVerdicts: plan.nightVerdicts,
    ledger: plan.ledger,
  }
}

const turnedPlan = ({ trip, plan }: PlannedTrip, nights: Trip['nights']): Plan =>
  derivePlan(
    { ...trip, nights },
    { seed: SEED, iterations: 0, remedies: false, keepLoad: true, previous: turned ?? plan },
  )

/** How often a turn is rehearsed, so that the engine has been compiled when the first hand turns a dial. */
const REHEARSALS = 12
/** Every rehearsal is another night: one that is the same would not be reckoned. */
const REHEARSAL_STEP_K = 0.01
let rehearsals = 0

/** One at a time: what is asked meanwhile comes first. */
function rehearse(known: PlannedTrip): void {
  if (rehearsals >= REHEARSALS || last !== known) return
  rehearsals += 1
  const nights = known.trip.nights.map((night) => {
    const coldMarginK = night.weather.coldMarginK + REHEARSAL_STEP_K * rehearsals
    return { ...night, weather: { ...night.weather, coldMarginK } }
  })
  turnedPlan(known, nights)
  setTimeout(() => rehearse(known))
}

/** Null where the newest plan knows no such night any more. */
function faulted(nightId: string, fault: Fault): FaultOutcome | null {
  const night = (turned ?? last?.plan)?.nights.find((each) => each.nightId === nightId)
  return night === undefined ? null : runFault(choicesOf(night), fault)
}

function run(request: PlanRequest): void {
  if (request.kind === 'know') {
    know(request.previous)
    return rehearse(request.previous)
  }
  const startedMs = performance.now()
  const tookMs = (): number => performance.now() - startedMs
  const { id } = request
  try {
    if (request.kind === 'turn') answer({ kind: 'turned', id, turned: turn(request.nights), tookMs: tookMs() })
    else if (request.kind === 'fault') answer({ kind: 'faulted', id, outcome: faulted(request.nightId, request.fault) })
    else if (request.kind === 'what-if') answer({ kind: 'compared', id, told: compared(id, request.asked) })
    else answer({ kind: 'plan', id, plan: make(request), tookMs: tookMs() })
  } catch (cause) {
    const error = cause instanceof Error ? cause : new Error('not an error')
    answer({ kind: 'failed', id, errorName: error.name, message: error.message })
  }
}

self.addEventListener('message', (event: MessageEvent<PlanRequest>) => run(event.data))
