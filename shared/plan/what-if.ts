/** A second plan beside the first: colder, a weaker supply, one more person, nothing outside, the supply lost at three. */
import type { Night, Trip } from '../document/index.ts'
import { assertNever, invariant } from '../result/index.ts'
import { derivePlan } from './derive.ts'
import { differencesOf } from './differences.ts'
import type { Difference } from './difference.ts'
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
const HEAVIEST_GUEST_G = 300_000
/** A grown person of middling size, from memory: 1.75 m, 75 kg. */
const GUEST = { heightMm: 1750, massG: 75_000, sleepwearClo: 0.5 } as const

/** How much of each kind: colder by `byK`, the supply left with `share01`, a guest of `massG`, the fault at `clock`. */
export type WhatIfAmounts = {
  readonly byK: number
  readonly share01: number
  readonly massG: number
  readonly clock: string
}

export const WHAT_IF_AMOUNTS: WhatIfAmounts = {
  byK: COLDER_K,
  share01: WEAKER_01,
  massG: GUEST.massG,
  clock: FAULT_CLOCK,
}

export type WhatIfBudget = PlanBudget & { readonly amounts?: Partial<WhatIfAmounts> }

/**
 * Plans the trip again under one change of circumstances, going on from the plan at hand, and lists what differs.
 * `budget` as for `derivePlan`; its `amounts` (K up to 20, share between 0 and 1, g, clock 'HH:MM') are the usual ones where absent.
 * Null where the change has nothing to act on: no supply to weaken, nothing stands outside.
 */
export function compareWhatIf(trip: Trip, plan: Plan, kind: WhatIfKind, budget: WhatIfBudget): WhatIf | null {
  const amounts = { ...WHAT_IF_AMOUNTS, ...budget.amounts }
  invariant(amounts.byK > 0 && amounts.byK <= MARGIN_LIMIT_K, 'a night is colder by 20 K at most')
  invariant(amounts.share01 > 0 && amounts.share01 < 1, 'a weaker supply leaves a share of its current')
  invariant(amounts.massG > 0 && amounts.massG <= HEAVIEST_GUEST_G, 'a guest has the mass of a person')
  const changed = changedTrip(trip, plan, kind, amounts)
  if (changed === null) return null
  const fault = kind === 'fault-at-three' ? { fault: { clock: amounts.clock } } : {}
  const second = derivePlan(changed.trip, { ...budget, previous: plan, ...fault })
  return { kind, ...changed, plan: second, differences: differencesOf(changed.trip, plan, second) }
}

type Changed = Pick<WhatIf, 'params' | 'trip'>

function changedTrip(trip: Trip, plan: Plan, kind: WhatIfKind, amounts: WhatIfAmounts): Changed | null {
  const { byK, share01, massG, clock } = amounts
  switch (kind) {
    case 'colder':
      return { trip: onNights(trip, (night) => colder(night, byK)), params: { byK } }
    case 'weaker-supply':
      return trip.nights.some(({ hookup }) => hookup !== undefined)
        ? { trip: onNights(trip, (night) => weaker(night, plan, share01)), params: { share01 } }
        : null
    case 'one-more-person':
      return { trip: withGuest(trip, massG), params: { massG } }
    case 'no-outside-storage':
      return trip.nights.some(({ rules }) => rules.outsideStorage)
        ? {
            trip: onNights(trip, (night) => ({ ...night, rules: { ...night.rules, outsideStorage: false } })),
            params: {},
          }
        : null
    case 'fault-at-three':
      return { trip, params: { clock } }
    default:
      return assertNever(kind)
  }
}

const onNights = (trip: Trip, change: (night: Night) => Night): Trip => ({ ...trip, nights: trip.nights.map(change) })

/** Colder by the margin while the margin's own limit allows, and by the forecast where it does not. */
function colder(night: Night, byK: number): Night {
  const { weather } = night
  const coldMarginK = Math.min(MARGIN_LIMIT_K, weather.coldMarginK + byK)
  const restK = byK - (coldMarginK - weather.coldMarginK)
  return {
    ...night,
    weather: { ...weather, coldMarginK, lowC: weather.lowC - restK, highC: weather.highC - restK },
  }
}

function weaker(night: Night, plan: Plan, share01: number): Night {
  const { hookup } = night
  const usableA = plan.nights.find(({ nightId }) => nightId === night.id)?.outcome.supply?.usableA
  if (hookup === undefined || usableA === undefined) return night
  return { ...night, hookup: { ...hookup, heldA: Math.floor(usableA * share01) } }
}

/** The guest brings no bedding: what the bed then lacks is what the comparison is to show. */
function withGuest(trip: Trip, massG: number): Trip {
  const ids = new Set(trip.travellers.map(({ id }) => id))
  const number = [...ids, 'one more'].findIndex((_, index) => !ids.has(`guest-${index + 1}`)) + 1
  const guest = { ...GUEST, massG, id: `guest-${number}`, label: '+1', drives: false, sleeps: 'average' } as const
  return { ...trip, travellers: [...trip.travellers, guest] }
}
