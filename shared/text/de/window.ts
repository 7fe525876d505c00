/** German sentences of the window, all parts. */
import { windowDialogs } from './window-dialogs.ts'
import { windowEditors } from './window-editors.ts'
import { windowSheet } from './window-sheet.ts'

export const window = { ...windowSheet, ...windowDialogs, ...windowEditors } as const
