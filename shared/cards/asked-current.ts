/** The current to set on the charging unit. */
import type { OneNight } from './plan-parts.ts'

/** What the traveller asked for where it is below what the circuit bears, else the whole amperes it bears. */
export const askedA = ({ input, outcome }: OneNight['plan']): number =>
  Math.min(input.decisions.currentA ?? Infinity, outcome.supply?.askA ?? 0)
