/** The few words that the shell itself shows: menus, dialogs, questions. */
import { createText } from '../../shared/text/index.ts'
import type { Language, TextKey } from '../../shared/text/index.ts'

export type ShellLanguage = Language
export type ShellKey = TextKey

export const shellText = (language: ShellLanguage): ((key: ShellKey) => string) => {
  const text = createText(language, 'metric')
  return (key) => text.t(key)
}
