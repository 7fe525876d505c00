/** How any component gets its sentences and numbers: the text of the language and units in force. */
import { inject } from 'vue'
import type { ComputedRef, InjectionKey } from 'vue'
import { invariant } from '../../shared/result/index.ts'
import type { Text } from '../../shared/text/index.ts'
import type { Utc } from '../../shared/units/index.ts'

export const TEXT: InjectionKey<ComputedRef<Text>> = Symbol('text')

export function useText(): ComputedRef<Text> {
  const text = inject(TEXT)
  invariant(text, 'the window provides its text at the root')
  return text
}

/** A full hour as a ruler says it: 9, 21 or 9 pm, without its noughts. */
export const sayHour = (text: Text, at: Utc, zone: string): string =>
  text.clock(at, zone).replace(/^0/, '').replace(/:00/, '')
