/** English sentences of the window, all parts. */
import { windowDialogs } from './window-dialogs.ts'
import { windowEditors } from './window-editors.ts'
import { windowForms } from './window-forms.ts'
import { windowFirst } from './window-first.ts'
import { windowSheet } from './window-sheet.ts'
import { windowTools } from './window-tools.ts'

export const window = {
  ...windowSheet,
  ...windowDialogs,
  ...windowEditors,
  ...windowTools,
  ...windowFirst,
  ...windowForms,
} as const
