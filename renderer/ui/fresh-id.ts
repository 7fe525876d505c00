/** Ids for what the user adds to a list. */

/** The next id with this stem that none of the list has: `lesson-3` after `lesson-2`. */
export function freshId(stem: string, list: readonly unknown[]): string {
  const taken = new Set(
    list.map((each) => (typeof each === 'object' && each !== null && 'id' in each ? each.id : null)),
  )
  let number = list.length + 1
  while (taken.has(`${stem}-${number}`)) number += 1
  return `${stem}-${number}`
}
