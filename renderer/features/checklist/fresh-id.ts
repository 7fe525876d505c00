/** Ids for what the user adds to the checklist. */

/** The next id with this stem that the trip does not use: `lesson-3` after `lesson-2`. */
export function freshId(stem: string, taken: readonly { readonly id: string }[]): string {
  let number = taken.length + 1
  while (taken.some(({ id }) => id === `${stem}-${number}`)) number += 1
  return `${stem}-${number}`
}
