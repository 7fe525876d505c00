/** The desktop around the windows. Folders are shown by our own paths only; no address is ever handed to the system. */
import type { BrowserWindow, Shell } from 'electron'
import type { DesktopPart } from '../files/index.ts'

export function createDesktop(
  shell: Pick<Shell, 'openPath'>,
  find: (caller: string) => BrowserWindow | null,
  setUnsaved: DesktopPart['setUnsaved'],
): DesktopPart {
  return {
    reveal: async (folder) => (await shell.openPath(folder)) === '',
    focus: (caller) => {
      const window = find(caller)
      if (window?.isMinimized()) window.restore()
      window?.focus()
    },
    setUnsaved,
  }
}
