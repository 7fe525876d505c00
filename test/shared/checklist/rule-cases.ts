/** How a rule's case is written: facts on which its step appears, and a change that makes it go. */
import type { FactsPatch } from './calm-facts.ts'

export type RuleCase = {
  readonly ruleId: string
  readonly appearsWhen: FactsPatch
  /** Laid over `appearsWhen`; null: the step is there every night. */
  readonly goneWhen: FactsPatch | null
}

export const ruleCase = (ruleId: string, appearsWhen: FactsPatch, goneWhen: FactsPatch | null): RuleCase => ({
  ruleId,
  appearsWhen,
  goneWhen,
})

export const FIRST: FactsPatch = { trip: { firstNight: true } }
export const NOT_FIRST: FactsPatch = { trip: { firstNight: false } }
export const LAST: FactsPatch = { trip: { lastNight: true } }

export const THING = [{ id: 'p1', name: 'grey crate', place: 'left footwell' }]

/** A patch over a patch, area by area. */
export function over(base: FactsPatch, change: FactsPatch): FactsPatch {
  const areas = new Set([...Object.keys(base), ...Object.keys(change)]) as ReadonlySet<keyof FactsPatch>
  return Object.fromEntries([...areas].map((area) => [area, { ...base[area], ...change[area] }]))
}

export const first = (patch: FactsPatch): FactsPatch => over(FIRST, patch)
export const last = (patch: FactsPatch): FactsPatch => over(LAST, patch)
