/** Steps as they are read: which stand with a night, in which time zone, and by when their phase must be done. */
import { PHASE_TO } from '../checklist/index.ts'
import type { ChecklistOutcome, MomentName, Phase } from '../checklist/index.ts'
import type { NightClock, Plan, ZonedInstant } from './types.ts'

type OfNight = { readonly nightId: string; readonly phase: Phase }

/** The steps to read with one night; what is done at home for any night stands with the first. */
export function stepsOfNight({ checklist, nights }: Plan, nightId: string): ChecklistOutcome['steps'] {
  const isFirst = nights[0]?.nightId === nightId
  return checklist.steps.filter((step) => (step.phase === 'before-leaving' ? isFirst : step.nightId === nightId))
}

/** Time zone of a step: at home that of home where the trip tells it, else that of its night. */
export function zoneOfStep(plan: Plan, { nightId, phase }: OfNight): string {
  const home = phase === 'before-leaving' ? plan.home.leave : phase === 'back-home' ? plan.home.back : null
  const night = plan.nights.find((one) => one.nightId === nightId) ?? plan.nights[0]
  return home?.zone ?? night?.clock.zone ?? 'UTC'
}

/** The instant by which every step of the phase is done; null where the phase has none, or the trip does not tell it. */
export function phaseEnd(plan: Plan, { nightId, phase }: OfNight): ZonedInstant | null {
  if (phase === 'before-leaving') return plan.home.leave
  const clock = plan.nights.find((one) => one.nightId === nightId)?.clock
  const name = PHASE_TO[phase]
  const atUtc = clock === undefined || name === undefined ? null : (ENDS[name]?.(clock) ?? null)
  return clock === undefined || atUtc === null ? null : { atUtc, zone: clock.zone }
}

const ENDS: Readonly<Partial<Record<MomentName, (clock: NightClock) => NightClock['checkOutUtc']>>> = {
  bedtime: ({ bedtimeUtc }) => bedtimeUtc,
  depart: ({ departUtc }) => departUtc,
  checkOutBy: ({ checkOutUtc }) => checkOutUtc,
}
