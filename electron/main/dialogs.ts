/** The system's file dialogs. */
import type { BrowserWindow, Dialog } from 'electron'
import type { Dialogs } from '../../shared/host/index.ts'
import { shellText } from '../files/index.ts'
import type { ShellLanguage } from '../files/index.ts'

type Find = (caller: string) => BrowserWindow | null

export function createDialogs(dialog: Dialog, find: Find, language: ShellLanguage): Dialogs {
  const text = shellText(language)
  const filters = [
    { name: text('hosts.dialog.tripFiles'), extensions: ['json', 'kipstow'] },
    { name: text('hosts.dialog.allFiles'), extensions: ['*'] },
  ]
  const pick = async (caller: string, options: Electron.OpenDialogOptions): Promise<string | null> => {
    const window = find(caller)
    if (window === null) return null
    const { canceled, filePaths } = await dialog.showOpenDialog(window, options)
    return canceled ? null : (filePaths[0] ?? null)
  }
  return {
    chooseOpen: (caller) => pick(caller, { title: text('hosts.dialog.open'), filters, properties: ['openFile'] }),
    chooseFolder: (caller) =>
      pick(caller, { title: text('hosts.dialog.folder'), properties: ['openDirectory', 'createDirectory'] }),
    chooseSave: async (caller, name) => {
      const window = find(caller)
      if (window === null) return null
      const { canceled, filePath } = await dialog.showSaveDialog(window, {
        title: text('hosts.dialog.save'),
        defaultPath: name,
        filters,
        properties: ['showOverwriteConfirmation', 'createDirectory'],
      })
      return canceled || filePath === '' ? null : filePath
    },
  }
}
