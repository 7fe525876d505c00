/** The whole product on one screen: a trip goes in, the plan comes out. */
import { buildChecklist } from '../checklist/index.ts'
import { nightStandards, searchNight, simulateNight } from '../climate/index.ts'
import type { Fault, NightInput, NightSearch } from '../climate/index.ts'
import type { Trip } from '../document/index.ts'
import { packLoad } from '../packing/index.ts'
import type { PackingInput, PackingOutcome } from '../packing/index.ts'
import { invariant } from '../result/index.ts'
import { nightClock, nightInstant } from './clock.ts'
import {
  bedFindings,
  calibrationFindings,
  checklistFindings,
  clockFindings,
  homeFindings,
  loadFindings,
  nightFindings,
  siteFindings,
  storesFindings,
} from './findings/index.ts'
import { tripCalibration, withFittedLoss } from './calibration.ts'
import { choicesOf } from './choices.ts'
import { beddingSets } from './inputs/bedding-sets.ts'
import { checklistInput } from './inputs/checklist.ts'
import { nightInput } from './inputs/climate.ts'
import { freeRoomMm3, packingInput } from './inputs/packing.ts'
import { readCharge } from './inputs/readings.ts'
import { planHome } from './home.ts'
import { ledger } from './ledger.ts'
import { pitchAdvice } from './pitch.ts'
import { rehearsals } from './rehearsal.ts'
import { findRemedies } from './remedies/index.ts'
import { same } from './same.ts'
import { sameLoad } from './same-load.ts'
import { nightStores } from './stores.ts'
import type { Finding, NightPlan, Plan, PlanBudget } from './types.ts'
import { nightVerdict, tripVerdict } from './verdict.ts'

/**
 * The plan of a trip: nights first (a colder night asks for bedding), then the load (bedding asks for room, frost for heated bays),
 * then the checklist (moves, adapters, frost and hours become steps), then remedies for whatever falls short.
 * Pure and reproducible when the budget is in iterations. What has not changed since `budget.previous` is taken from it.
 */
export function derivePlan(trip: Trip, budget: PlanBudget): Plan {
  budget.onProgress?.(0, 'night')
  const calibration = tripCalibration(trip, budget.previous)
  const simulated = planNights(withFittedLoss(trip, calibration), budget, calibration?.fit.consumption?.scale ?? 1)
  const { loadInput, packing, askedIterations } = planLoad(trip, simulated, budget)
  const nights = withChoices(trip, simulated, { loadInput, packing }, budget)
  budget.onProgress?.(0.9, 'checklist')
  const stores = nightStores(trip, packing.mass)
  const turning = budget.keepLoad === true ? budget.previous : undefined
  const checklist = turning?.checklist ?? buildChecklist(checklistInput(trip, packing, nights, stores))
  const home = planHome(trip)
  const findings = [
    ...calibrationFindings(calibration),
    ...homeFindings(trip, home, nights),
    ...allFindings(trip, packing, nights),
    ...stores.flatMap((one, index) => storesFindings(trip, index, one)),
    ...checklistFindings(trip.nights, checklist),
  ]
  const nightVerdicts = nights.map((night) => nightVerdict(night, packing, findings))
  const plan: Plan = {
    planVersion: 1,
    home,
    verdict: tripVerdict(nightVerdicts, findings),
    nightVerdicts,
    packing,
    packingInput: loadInput,
    nights,
    calibration,
    stores,
    checklist,
    findings,
    remedies: [],
    ledger: ledger(trip, nights),
    budget: { seed: budget.seed, iterations: packing.iterations, cancelled: packing.cancelled, askedIterations },
  }
  if (!budget.remedies || plan.verdict.holds) return plan
  budget.onProgress?.(0.95, 'remedies')
  return { ...plan, remedies: findRemedies(trip, plan, budget, derivePlan) }
}

/** Night after night, the battery of one carried into the next. */
function planNights(trip: Trip, budget: PlanBudget, consumptionScale: number): readonly NightPlan[] {
  let carried: { charge01: number | null; leisure01: number | null } = { charge01: null, leisure01: null }
  return trip.nights.map((night) => {
    const clock = nightClock(night)
    const planned = nightInput(trip, night, clock, {
      charge01: readCharge(trip, night.id, 'at-the-post') ?? night.arriveCharge01 ?? carried.charge01,
      leisure01: night.leisureCharge01 ?? carried.leisure01,
    })
    const leg = planned.leg === null ? null : { ...planned.leg, consumptionScale }
    const input = { ...planned, leg, fault: faultOf(planned, night, budget) }
    const plan = planNight(trip, night, input, { clock, budget })
    carried = {
      charge01: afterLeg(plan, readCharge(trip, night.id, 'morning')),
      leisure01: plan.outcome.leisureDepart01,
    }
    return plan
  })
}

function faultOf(input: NightInput, night: Trip['nights'][number], { fault }: PlanBudget): Fault | null {
  if (fault === undefined) return null
  const kind = input.supply === null ? 'heater-fails' : 'supply-lost'
  return { kind, atUtc: nightInstant(night, fault.clock) }
}

function planNight(
  trip: Trip,
  night: Trip['nights'][number],
  input: NightInput,
  context: { clock: NightPlan['clock']; budget: PlanBudget },
): NightPlan {
  const { clock, budget } = context
  const kept = budget.previous?.nights.find((plan) => plan.nightId === night.id && same(plan.input, input))
  const outcome = kept?.outcome ?? simulateNight(input)
  return {
    nightId: night.id,
    clock,
    input,
    outcome,
    standards: kept?.standards ?? nightStandards(input, outcome),
    beddingSets: kept?.beddingSets ?? [],
    search: kept?.search ?? null,
    faults: kept?.faults ?? [],
    pitch: pitchAdvice(trip, night),
    cost: outcome.cost,
  }
}

/**
 * What each night could do otherwise, once the load tells which bedding is at hand and which finds room;
 * with the remedies, the search over it and the rehearsed faults. Earlier answers stand where nothing they rest on has changed.
 */
function withChoices(
  trip: Trip,
  nights: readonly NightPlan[],
  { loadInput, packing }: Pick<PlannedLoad, 'loadInput' | 'packing'>,
  budget: PlanBudget,
): readonly NightPlan[] {
  const room = { packing, freeMm3: freeRoomMm3(loadInput, packing) }
  return trip.nights.flatMap((night, index) => {
    const plan = nights[index]
    if (plan === undefined) return []
    const sets = beddingSets(trip, night, room)
    const stands = same(plan.beddingSets, sets)
    const chosen = { ...plan, beddingSets: sets }
    if (!budget.remedies) return [stands ? plan : chosen]
    return [
      {
        ...chosen,
        search: stands && plan.search !== null ? plan.search : searchOf(chosen),
        faults: stands && plan.faults.length > 0 ? plan.faults : rehearsals(chosen),
      },
    ]
  })
}

function searchOf(plan: NightPlan): NightSearch | null {
  const { heater, bedHeaters } = plan.input
  return heater.kind === 'none' && bedHeaters.length === 0 && plan.beddingSets.length === 0
    ? null
    : searchNight(choicesOf(plan))
}

/** Charge left after the next leg with its stops, from what was read in the morning or else from the plan; null where there is no leg to tell. */
function afterLeg({ outcome, input }: NightPlan, read01: number | null): number | null {
  const { leg } = outcome
  const depart01 = read01 ?? outcome.depart01
  if (leg === null || depart01 === null || input.battery === null) return depart01
  const gainedWh = leg.stops.reduce((sum, { energyWh }) => sum + energyWh, 0)
  return Math.max(0, Math.min(1, depart01 + (gainedWh - leg.needWh) / input.battery.usableWh))
}

type PlannedLoad = {
  readonly loadInput: PackingInput
  readonly packing: PackingOutcome
  readonly askedIterations: number
}

/** The earlier load where it still answers, and was searched for as long as is asked now; else the search goes on from it. */
function planLoad(trip: Trip, nights: readonly NightPlan[], budget: PlanBudget): PlannedLoad {
  const { previous } = budget
  if (budget.keepLoad === true && previous !== undefined) return keptLoad(previous)
  const loadInput = packingInput(
    trip,
    nights.map(({ outcome }) => outcome),
  )
  if (previous !== undefined && stillAnswers(previous, loadInput, budget)) return { ...keptLoad(previous), loadInput }
  const packing = packLoad(loadInput, {
    seed: budget.seed,
    iterations: budget.iterations,
    shouldStop: () => budget.shouldStop?.() === true || budget.enoughSearched?.() === true,
    ...(previous === undefined ? {} : { startFrom: previous.packing }),
    onProgress: (done01) => budget.onProgress?.(0.1 + 0.8 * done01, 'packing'),
  })
  return { loadInput, packing, askedIterations: budget.iterations }
}

const keptLoad = ({ packing, packingInput: loadInput, budget }: Plan): PlannedLoad => ({
  loadInput,
  packing,
  askedIterations: budget.askedIterations,
})

const stillAnswers = (previous: Plan, loadInput: PackingInput, { seed, iterations }: PlanBudget): boolean =>
  previous.budget.seed === seed &&
  previous.budget.askedIterations >= iterations &&
  !previous.packing.cancelled &&
  sameLoad(previous.packingInput, loadInput)

function allFindings(trip: Trip, packing: PackingOutcome, nights: readonly NightPlan[]): readonly Finding[] {
  const perNight = trip.nights.flatMap((night, index) => {
    const plan = nights[index]
    invariant(plan !== undefined, 'each night has a plan')
    return [
      ...clockFindings(night, index, plan.clock),
      ...siteFindings(trip, night, index, plan.pitch),
      ...nightFindings(trip, night, index, plan),
    ]
  })
  return [...bedFindings(trip), ...loadFindings(trip, packing), ...perNight]
}
