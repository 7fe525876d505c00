/** The colour tokens as numbers and strings for what CSS cannot reach: the scene and canvases. */

export const COLOUR_NAMES = [
  'desk',
  'sheet',
  'raised',
  'ink',
  'ink-soft',
  'rule',
  'outline',
  'accent',
  'accent-ink',
  'unit',
  'unit-shade',
  'unit-dark',
  'chosen',
  'bed',
] as const

export type ColourName = (typeof COLOUR_NAMES)[number]
export type Colours = Readonly<Record<ColourName, string>>
export type Theme = 'light' | 'dark' | 'red'

export const THEMES = ['light', 'dark', 'red'] as const

/** The colours that the theme in force gives `element`. */
export function readColours(element: Element): Colours {
  const style = getComputedStyle(element)
  const read = (name: ColourName): string => style.getPropertyValue(`--${name}`).trim() || '#000000'
  const colours: Partial<Record<ColourName, string>> = {}
  for (const name of COLOUR_NAMES) colours[name] = read(name)
  return colours as Colours // every name was just set
}
