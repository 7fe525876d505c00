/** A second plan beside the first: colder, a weaker supply, one more person, nothing outside, the supply lost at three. */
import type { Night, Trip } from '../document/index.ts'
import { assertNever } from '../result/index.ts'
import { derivePlan } from './derive.ts'
import { differencesOf } from './differences.ts'
import type { Difference } from './differences.ts'
import type { Plan, PlanBudget } from './types.ts'

export type WhatIfKind = 'colder' | 'weaker-supply' | 'one-more-person' | 'no-outside-storage' | 'fault-at-three'

export const WHAT_IF_KINDS: readonly WhatIfKind[] = [
  'colder',
  'weaker-supply',
  'one-more-person',
  'no-outside-storage',
  'fault-at-three',
]

export type WhatIf = {
  readonly kind: WhatIfKind
  /** What the kind means in numbers, for its sentence `whatIf.<kind>`. */
  readonly params: Readonly<Record<string, number | string>>
  readonly trip: Trip
  readonly plan: Plan
  readonly differences: readonly Difference[]
}

/** How far forecasts for the next nights miss at worst, common practice. */
const COLDER_K = 5
const MARGIN_LIMIT_K = 20
/** What a worn post or a shared line leaves of the current, common practice. */
const WEAKER_01 = 2 / 3
const FAULT_CLOCK = '03:00'
/** A grown person of middling size, from memory: 1.75 m, 75 kg. */
const GUEST = { heightMm: 1750, massG: 75_000, sleepwearClo: 0.5 } as const

/**
 * Plans the trip again under one change of circumstances, going on from the plan at hand, and lists what differs.
 * `budget` as for `derivePlan`; null where the change has nothing to act on: no supply to weaken, nothing stands outside.
 */
export function compareWhatIf(trip: Trip, plan: Plan, kind: WhatIfKind, budget: PlanBudget): WhatIf | null {
  const changed = changedTrip(trip, plan, kind)
  if (changed === null) return null
  const fault = kind === 'fault-at-three' ? { fault: { clock: FAULT_CLOCK } } : {}
  const second = derivePlan(changed.trip, { ...budget, previous: plan, ...fault })
  return { kind, ...changed, plan: second, differences: differencesOf(changed.trip, plan, second) }
}

type Changed = Pick<WhatIf, 'params' | 'trip'>

function changedTrip(trip: Trip, plan: Plan, kind: WhatIfKind): Changed | null {
  switch (kind) {
    case 'colder':
      return { trip: onNights(trip, colder), params: { byK: COLDER_K } }
    case 'weaker-supply':
      return trip.nights.some(({ hookup }) => hookup !== undefined)
        ? { trip: onNights(trip, (night) => weaker(night, plan)), params: { share01: WEAKER_01 } }
        : null
    case 'one-more-person':
      return { trip: withGuest(trip), params: { massG: GUEST.massG } }
    case 'no-outside-storage':
      return trip.nights.some(({ rules }) => rules.outsideStorage)
        ? {
            trip: onNights(trip, (night) => ({ ...night, rules: { ...night.rules, outsideStorage: false } })),
            params: {},
          }
        : null
    case 'fault-at-three':
      return { trip, params: { clock: FAULT_CLOCK } }
    default:
      return assertNever(kind)
  }
}

const onNights = (trip: Trip, change: (night: Night) => Night): Trip => ({ ...trip, nights: trip.nights.map(change) })

/** Colder by the margin while the margin's own limit allows, and by the forecast where it does not. */
function colder(night: Night): Night {
  const { weather } = night
  const coldMarginK = Math.min(MARGIN_LIMIT_K, weather.coldMarginK + COLDER_K)
  const restK = COLDER_K - (coldMarginK - weather.coldMarginK)
  return {
    ...night,
    weather: { ...weather, coldMarginK, lowC: weather.lowC - restK, highC: weather.highC - restK },
  }
}

function weaker(night: Night, plan: Plan): Night {
  const { hookup } = night
  const usableA = plan.nights.find(({ nightId }) => nightId === night.id)?.outcome.supply?.usableA
  if (hookup === undefined || usableA === undefined) return night
  return { ...night, hookup: { ...hookup, heldA: Math.floor(usableA * WEAKER_01) } }
}

/** The guest brings no bedding: what the bed then lacks is what the comparison is to show. */
function withGuest(trip: Trip): Trip {
  const ids = new Set(trip.travellers.map(({ id }) => id))
  const number = [...ids, 'one more'].findIndex((_, index) => !ids.has(`guest-${index + 1}`)) + 1
  const guest = { ...GUEST, id: `guest-${number}`, label: '+1', drives: false, sleeps: 'average' } as const
  return { ...trip, travellers: [...trip.travellers, guest] }
}
