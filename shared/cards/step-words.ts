/** A step's words: what to do, why, and by when. */
import { phaseEnd, zoneOfStep } from '../plan/index.ts'
import type { Plan } from '../plan/index.ts'
import type { Utc } from '../units/index.ts'
import type { Text, TextParams } from '../text/index.ts'
import type { TickItem } from './model.ts'
import type { Step } from './plan-parts.ts'

/** At home, days may lie between a step and the next: its clock then has its weekday. */
export const sayClock = (step: Pick<Step, 'phase'>, atUtc: Utc, zone: string, text: Text): string =>
  step.phase === 'before-leaving' || step.phase === 'back-home'
    ? text.weekdayClock(atUtc, zone)
    : text.clock(atUtc, zone)

/** "Bedtime · by 22:00": the phase, and by when all of it is done where the plan tells that. */
export function phaseWords(plan: Plan, of: Pick<Step, 'nightId' | 'phase'>, text: Text): string {
  const phase = text.t(`phase.${of.phase}`)
  const end = phaseEnd(plan, of)
  return end === null ? phase : text.t('phase.until', { phase, clock: sayClock(of, end.atUtc, end.zone, text) })
}

export function stepWords(step: Step, plan: Plan, text: Text): { readonly step: string; readonly reason: string } {
  if (step.text.kind === 'own') return { step: step.text.step, reason: step.text.reason }
  const params: TextParams = { zone: zoneOfStep(plan, step), ...step.params }
  const say = (key: string): string => (text.has(key) ? text.t(key, params) : key)
  return { step: say(step.text.step), reason: say(step.text.reason) }
}

/** "by 17:20", "21:40", "start by 16:50": the deadline where there is one, else when it comes. */
export function stepTime(step: Step, plan: Plan, text: Text): string | null {
  const zone = zoneOfStep(plan, step)
  if (step.deadlineUtc !== null) return text.t('cards.step.by', { clock: sayClock(step, step.deadlineUtc, zone, text) })
  return step.startUtc === null ? null : sayClock(step, step.startUtc, zone, text)
}

export function stepItem(step: Step, plan: Plan, text: Text): TickItem {
  const zone = zoneOfStep(plan, step)
  const words = stepWords(step, plan, text)
  const latest =
    step.latestStartUtc === null || step.deadlineUtc === null || step.latestStartUtc === step.deadlineUtc
      ? ''
      : text.t('cards.step.latest', { clock: sayClock(step, step.latestStartUtc, zone, text) })
  const detail = [words.reason, latest].filter((part) => part !== '').join(' ')
  return {
    text: words.step,
    detail: detail === '' ? null : detail,
    time: stepTime(step, plan, text),
    state: step.state,
    caution: step.caution,
  }
}
