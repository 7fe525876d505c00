/** Plan so far to the checklist engine's input: facts and moments of each night, and the moves that the changeover asks for. */
import { BUILT_IN_RULES, asFacts, ruleFromOwn } from '../../checklist/index.ts'
import type { ChecklistInput, ChecklistNight, GivenStep, Moments } from '../../checklist/index.ts'
import type { Night, Trip } from '../../document/index.ts'
import type { Changeover, Move, PackingOutcome } from '../../packing/index.ts'
import type { Utc } from '../../units/index.ts'
import { backFromTarget, nightInstant } from '../clock.ts'
import type { NightClock, NightPlan, NightStores } from '../types.ts'
import { nightFacts } from './facts.ts'
import { places } from './places.ts'

/** Minutes to lift one unit to its other place, in rain through a door: common practice. */
const MOVE_S = 45

export function checklistInput(
  trip: Trip,
  packing: PackingOutcome,
  nights: readonly NightPlan[],
  stores: readonly NightStores[],
): ChecklistInput {
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
          moments: moments(night, plan.clock),
          given: givenMoves(trip, packing, night),
        },
      ]
    }),
    ticks: trip.checklist.ticks.map(({ stepKey, state, atUtc, reason }) => ({
      stepKey,
      state,
      atUtc,
      ...(reason === undefined ? {} : { reason }),
    })),
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

/** Each move of the changeover is a step: at dusk towards the bed, in the morning back. */
function givenMoves(trip: Trip, packing: PackingOutcome, night: Night): readonly GivenStep[] {
  const packed = packing.nights.find(({ nightId }) => nightId === night.id)
  if (packed === undefined) return []
  return [
    ...moveSteps(trip, packing, night.id, packed.changeover, 'dusk'),
    ...moveSteps(trip, packing, night.id, packed.changeback, 'dawn'),
  ]
}

function moveSteps(
  trip: Trip,
  packing: PackingOutcome,
  nightId: string,
  changeover: Changeover,
  when: 'dusk' | 'dawn',
): GivenStep[] {
  const { nameOf, words } = places(trip, packing)
  const seen = new Map<string, number>()
  let before: string | null = null
  return changeover.moves.map((move) => {
    const count = (seen.get(move.unitId) ?? 0) + 1
    seen.set(move.unitId, count)
    const key = `move-${when}:${nightId}:${move.unitId}${count > 1 ? `:${count}` : ''}`
    const step: GivenStep = {
      key,
      ruleId: `move-${when}`,
      nightId,
      phase: when === 'dusk' ? 'before-dark' : 'morning',
      text: {
        kind: 'key',
        step: `move.${when}.${manner(move)}`,
        reason: `move.${when}.reason`,
      },
      params: {
        unit: nameOf(move.unitId),
        from: words(move.from),
        to: words(move.to),
        door: move.door ?? '',
        spot: shift(move),
      },
      after: before === null ? (when === 'dusk' ? ['bed-prepare'] : []) : [before],
      durationS: MOVE_S,
      notBeforeUtc: null,
      deadlineUtc: null,
      deadlineName: null,
      caution: false,
    }
    before = key
    return step
  })
}

const manner = (move: Move): 'step' | 'wait' | 'within' =>
  move.waits ? 'wait' : shift(move) === '' ? 'step' : 'within'

/** Which way a unit goes inside its own bay, by the longest part of its way; empty where it changes bays. */
function shift({ from, to }: Move): string {
  if (!('bayId' in from) || !('bayId' in to) || from.bayId !== to.bayId) return ''
  const [x = 0, y = 0, z = 0] = to.atMm.map((at, axis) => at - (from.atMm[axis] ?? 0))
  if (Math.abs(x) >= Math.abs(y) && Math.abs(x) >= Math.abs(z)) return x > 0 ? 'front' : x < 0 ? 'rear' : 'turned'
  if (Math.abs(y) >= Math.abs(z)) return y > 0 ? 'right' : 'left'
  return z > 0 ? 'up' : 'down'
}
