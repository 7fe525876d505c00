/** Ids that nothing else has. */

/** An id has up to 64 characters; this leaves room for a hyphen and a number of five digits. */
const LONGEST_STEM = 58

/** The first id `stem-number` that is not taken, counting from `first`. */
export function freeId(taken: ReadonlySet<string>, stem: string, first = 2): string {
  const start = stem.slice(0, LONGEST_STEM)
  let number = first
  while (taken.has(`${start}-${String(number)}`)) number += 1
  return `${start}-${String(number)}`
}

/** The next id with this stem that none of the list has: `lesson-3` after `lesson-2`. */
export function freshId(stem: string, list: readonly unknown[]): string {
  const taken = list.flatMap((each) =>
    typeof each === 'object' && each !== null && 'id' in each && typeof each.id === 'string' ? [each.id] : [],
  )
  return freeId(new Set(taken), stem, list.length + 1)
}
