/** The colour tokens as the scene's buffers take them. */
import type { Colours } from '../styles/tokens.ts'
import type { Rgb } from './buffers.ts'

export type Palette = Readonly<
  Record<'ink' | 'outline' | 'rule' | 'accent' | 'unit' | 'shade' | 'dark' | 'chosen' | 'bed', Rgb>
>

export const palette = (colours: Colours): Palette => ({
  ink: rgb(colours.ink),
  outline: rgb(colours.outline),
  rule: rgb(colours.rule),
  accent: rgb(colours.accent),
  unit: rgb(colours.unit),
  shade: rgb(colours['unit-shade']),
  dark: rgb(colours['unit-dark']),
  chosen: rgb(colours.chosen),
  bed: rgb(colours.bed),
})

/** The three parts of `#rrggbb`, 0 to 1, as the screen shows them: our shaders do no colour management. */
function rgb(hex: string): Rgb {
  const part = (from: number): number => Number.parseInt(hex.slice(from, from + 2), 16) / 255
  return [part(1), part(3), part(5)]
}
