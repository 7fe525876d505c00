/** A step's words: what to do, why, and by when. */
import type { Plan } from '../plan/index.ts'
import type { Text, TextParams } from '../text/index.ts'
import type { TickItem } from './model.ts'
import type { Step } from './plan-parts.ts'

export const zoneOfNight = (plan: Plan, nightId: string): string =>
  plan.nights.find((night) => night.nightId === nightId)?.clock.zone ?? plan.nights[0]?.clock.zone ?? 'UTC'

export function stepWords(step: Step, zone: string, text: Text): { readonly step: string; readonly reason: string } {
  if (step.text.kind === 'own') return { step: step.text.step, reason: step.text.reason }
  const params: TextParams = { zone, ...step.params }
  const say = (key: string): string => (text.has(key) ? text.t(key, params) : key)
  return { step: say(step.text.step), reason: say(step.text.reason) }
}

/** "by 17:20", "21:40", "start by 16:50": the deadline where there is one, else when it comes. */
export function stepTime(step: Step, zone: string, text: Text): string | null {
  if (step.deadlineUtc !== null) return text.t('cards.step.by', { atUtc: step.deadlineUtc, zone })
  return step.startUtc === null ? null : text.clock(step.startUtc, zone)
}

export function stepItem(step: Step, plan: Plan, text: Text): TickItem {
  const zone = zoneOfNight(plan, step.nightId)
  const words = stepWords(step, zone, text)
  const latest =
    step.latestStartUtc === null || step.deadlineUtc === null || step.latestStartUtc === step.deadlineUtc
      ? ''
      : text.t('cards.step.latest', { atUtc: step.latestStartUtc, zone })
  const detail = [words.reason, latest].filter((part) => part !== '').join(' ')
  return {
    text: words.step,
    detail: detail === '' ? null : detail,
    time: stepTime(step, zone, text),
    state: step.state,
    caution: step.caution,
  }
}
