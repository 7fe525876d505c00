/** Plan so far to the checklist engine's input: facts and moments of each night, and the moves that the changeover asks for. */
import { BUILT_IN_RULES, asFacts, ruleFromOwn } from '../../checklist/index.ts'
import type { ChecklistInput, ChecklistNight, Moments } from '../../checklist/index.ts'
import type { Night, Trip } from '../../document/index.ts'
import type { PackingOutcome } from '../../packing/index.ts'
import type { Utc } from '../../units/index.ts'
import { backFromTarget, nightInstant } from '../clock.ts'
import { homeInOrder, planHome, restAtHome } from '../home.ts'
import type { NightClock, NightPlan, NightStores } from '../types.ts'
import { nightFacts } from './facts.ts'
import { moveSteps } from './move-steps.ts'

export function checklistInput(
  trip: Trip,
  packing: PackingOutcome,
  nights: readonly NightPlan[],
  stores: readonly NightStores[],
): ChecklistInput {
  const home = homeMoments(trip, nights)
  return {
    rules: [...BUILT_IN_RULES, ...trip.checklist.rules.filter((rule) => rule.enabled).map(ruleFromOwn)],
    switchedOffRuleIds: trip.checklist.switchedOffRuleIds,
    nights: trip.nights.flatMap((night, at): ChecklistNight[] => {
      const plan = nights[at]
      if (plan === undefined) return []
      return [
        {
          nightId: night.id,
          facts: asFacts(nightFacts(trip, packing, nights, stores, at)),
          moments: { ...moments(night, plan.clock), ...home },
          given: moveSteps(trip, packing, night),
        },
      ]
    }),
    ticks: trip.checklist.ticks.map(({ stepKey, state, atUtc, reason }) => ({
      stepKey,
      state,
      atUtc,
      ...(reason === undefined ? {} : { reason }),
    })),
    ...(trip.leaveHome === undefined ? {} : { homeRest: restAtHome(trip.leaveHome) }),
  }
}

/** A clock at home that contradicts the nights is a finding, and times nothing. */
function homeMoments(trip: Trip, nights: readonly NightPlan[]): Moments {
  const { leave, back } = homeInOrder(planHome(trip), nights)
  return {
    ...(leave === null ? {} : { leaveHome: leave.atUtc }),
    ...(back === null ? {} : { backHome: back.atUtc }),
  }
}

/** Instants that rules may name; one that the night does not have is left out. */
function moments(night: Night, clock: NightClock): Moments {
  const { sun } = clock
  const named: Record<string, Utc | null> = {
    arrive: clock.arriveUtc,
    checkInFrom: night.checkIn === undefined ? null : nightInstant(night, night.checkIn.from),
    checkInTo: night.checkIn === undefined ? null : nightInstant(night, night.checkIn.to),
    sunset: sun.sunsetUtc,
    civilDusk: sun.civilDuskUtc,
    quietFrom: clock.quietFromUtc,
    quietTo: clock.quietToUtc,
    banFrom: clock.banFromUtc,
    banTo: clock.banToUtc,
    gateFrom: clock.gateFromUtc,
    gateTo: clock.gateToUtc,
    plugIn: night.hookup === undefined ? null : nightInstant(night, night.hookup.plugIn),
    bedtime: clock.bedtimeUtc,
    wake: clock.wakeUtc,
    unplug: night.hookup === undefined ? null : nightInstant(night, night.hookup.unplug),
    depart: clock.departUtc,
    civilDawn: sun.civilDawnUtc,
    sunrise: sun.sunriseUtc,
    beAtTarget: clock.beAtTargetUtc,
    backFromTarget: backFromTarget(night, clock),
    checkOutBy: clock.checkOutUtc,
  }
  return Object.fromEntries(Object.entries(named).flatMap(([name, utc]) => (utc === null ? [] : [[name, utc]])))
}
