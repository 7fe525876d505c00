/** The checklist as it is read: by phase or by the clock, and which step the shared moment has come to. */
import { PHASES } from '../../../shared/plan/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'

export type Step = Plan['checklist']['steps'][number]
export type Phase = Step['phase']

export type StepGroup = {
  readonly id: string
  readonly phase: Phase | null
  readonly startUtc: number | null
  readonly steps: readonly Step[]
}

export const byPhase = (steps: readonly Step[]): readonly StepGroup[] =>
  PHASES.map((phase) => ({
    id: phase,
    phase,
    startUtc: null,
    steps: steps.filter((step) => step.phase === phase),
  })).filter((group) => group.steps.length > 0)

const HOUR_S = 3600

/** One group for each hour of the clock; steps without a time come first. */
export function byClock(steps: readonly Step[]): readonly StepGroup[] {
  const groups = new Map<number, Step[]>()
  for (const step of steps) {
    const key = step.startUtc === null ? -1 : Math.floor(step.startUtc / HOUR_S)
    groups.set(key, [...(groups.get(key) ?? []), step])
  }
  return [...groups]
    .sort(([a], [b]) => a - b)
    .map(([key, list]) => ({ id: String(key), phase: null, startUtc: key < 0 ? null : key * HOUR_S, steps: list }))
}

/** The step to do at an instant: the last one that has begun and is not done, else the next one that will begin. */
export function stepAt(steps: readonly Step[], atUtc: number): Step | null {
  let begun: Step | null = null
  let next: Step | null = null
  for (const step of steps) {
    if (step.startUtc === null || step.state !== 'open') continue
    if (step.startUtc <= atUtc) {
      if (begun === null || step.startUtc >= (begun.startUtc ?? 0)) begun = step
    } else if (next === null || step.startUtc < (next.startUtc ?? Infinity)) next = step
  }
  return begun ?? next
}
