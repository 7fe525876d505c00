/** Which bedding people sleep under tonight, and what laying it costs in handlings and room. */
import { invariant } from '../result/index.ts'
import type { BeddingSet, NightDecisions, NightInput, Sleeper } from './types.ts'

/** The chosen set; null where the night has none to choose or the decisions name none. */
export function beddingSetOf(input: NightInput, setId: string | undefined): BeddingSet | null {
  if (setId === undefined) return null
  const found = input.beddingSets?.find((set) => set.id === setId)
  invariant(found !== undefined, 'a chosen bedding set is among those of the night')
  return found
}

/** The sleepers with the bedding of a set; their own where the set leaves them out or there is none. */
export function sleepersUnder(input: NightInput, setId: string | undefined): readonly Sleeper[] {
  const set = beddingSetOf(input, setId)
  if (set === null) return input.sleepers
  return input.sleepers.map((sleeper) => {
    const theirs = set.bySleeper.find(({ sleeperId }) => sleeperId === sleeper.id)
    return theirs === undefined ? sleeper : { ...sleeper, bedding: theirs.bedding }
  })
}

/** Ids of the sets to choose from; one undefined where there is nothing to choose. */
export const beddingChoices = (input: NightInput): readonly (string | undefined)[] => {
  const ids = input.beddingSets?.map(({ id }) => id) ?? []
  return ids.length === 0 ? [undefined] : ids
}

/** Handlings that a plan asks for at dusk: laying the bedding, and a cover for each pane unless the night says otherwise. */
export function movesOf(input: NightInput, decisions: Pick<NightDecisions, 'beddingSetId' | 'covers'>): number {
  const bedding = beddingSetOf(input, decisions.beddingSetId)?.moves ?? 0
  return bedding + (decisions.covers ? (input.coverMoves ?? input.cabin.panes.length) : 0)
}
