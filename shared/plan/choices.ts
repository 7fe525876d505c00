/** A night's input together with what may be chosen otherwise: for the search, and for what to do when something fails. */
import type { NightInput } from '../climate/index.ts'
import type { NightPlan } from './types.ts'

/** The first bedding set is the one chosen now. */
export function choicesOf({ input, beddingSets }: Pick<NightPlan, 'input' | 'beddingSets'>): NightInput {
  const now = beddingSets[0]
  return now === undefined ? input : { ...input, beddingSets, decisions: { ...input.decisions, beddingSetId: now.id } }
}
