/** Puts the focus where one types next; the word that stands there is marked, so that typing replaces it as after Tab. */
export function beginAt(element: HTMLElement | null | undefined): void {
  element?.focus()
  if (element instanceof HTMLInputElement && element.type === 'text') element.select()
}
