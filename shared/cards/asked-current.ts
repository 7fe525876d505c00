/** The current to set on the charging unit. */
import type { OneNight } from './plan-parts.ts'

/**
 * What the traveller asked for where it is below what the circuit bears, else the whole amperes it bears. Nothing where nobody may plug in,
 * and where a driving battery may not charge or cannot ask for so little.
 */
export const askedA = ({ input, outcome }: OneNight['plan']): number => {
  const { supply } = outcome
  if (supply === null || input.supply?.earthOk === 'no') return 0
  const charges = input.supply?.chargeAllowed !== false && !supply.belowMinimum
  return input.battery !== null && !charges ? 0 : Math.min(input.decisions.currentA ?? Infinity, supply.askA)
}
