/** Things that one step names together: a person at dusk wants one line a place, not one a thing. */
import type { NamedThing, PlacedThing } from '../../checklist/index.ts'

/** Things of one place as one thing, in the order of the places' first things. */
export function byPlace<T extends PlacedThing>(
  things: readonly T[],
): readonly (readonly [PlacedThing, readonly T[]])[] {
  const groups = new Map<string, T[]>()
  for (const thing of things) groups.set(thing.place, [...(groups.get(thing.place) ?? []), thing])
  return [...groups].map(([place, members]) => [{ ...together(members), place }, members])
}

export const placesOf = (things: readonly PlacedThing[]): readonly PlacedThing[] =>
  byPlace(things).map(([group]) => group)

/** All of them as one, or nothing. */
export const asOne = <T extends NamedThing>(things: readonly T[]): readonly NamedThing[] =>
  things.length === 0 ? [] : [together(things)]

/** One thing keeps its own id; several share one that changes with their number and names, so that a tick speaks of just these. */
function together(things: readonly NamedThing[]): NamedThing {
  const [first] = things
  const ids = things.map(({ id }) => id)
  const id = things.length === 1 ? (first?.id ?? '') : `${first?.id ?? ''}.${mark(ids.toSorted().join(' '))}`
  return { id, name: things.map(({ name }) => name).join(', ') }
}

/** A short mark of a text. Source: Fowler, Noll, Vo, FNV-1a, 32 bit. */
function mark(text: string): string {
  let hash = 0x811c9dc5
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0
  return hash.toString(36)
}
