/** The windows: one page each, each a caller of the host, one for each real file. */
import type { BrowserWindow, WebContents } from 'electron'
import type { Host, Log } from '../../../shared/host/index.ts'
import { shellText } from '../../files/index.ts'
import type { ShellKey, ShellLanguage, Waits } from '../../files/index.ts'
import type { ElectronParts } from '../parts.ts'
import { APP_ORIGIN } from '../security/protocol.ts'
import { windowOptions } from './options.ts'
import type { WindowState } from './state.ts'

type Setting = {
  readonly electron: Pick<ElectronParts, 'app' | 'BrowserWindow' | 'dialog'>
  readonly host: Host
  readonly waits: Waits
  readonly state: WindowState
  readonly log: Log
  readonly language: ShellLanguage
  readonly preload: string
  readonly icon: string
}

type Held = { readonly window: BrowserWindow; unsaved: boolean }

export type Windows = {
  readonly open: (path: string | null) => void
  /** Brings up the window that has the file, else one for it; without a file, any window. */
  readonly show: (path: string | null) => Promise<void>
  readonly find: (caller: string) => BrowserWindow | null
  readonly focused: () => string | null
  readonly callerOf: (contents: WebContents) => string | null
  readonly contents: () => readonly WebContents[]
  readonly setUnsaved: (caller: string, unsaved: boolean) => void
}

export function createWindows(setting: Setting): Windows {
  const held = new Map<string, Held>()
  const callerWhere = (test: (window: BrowserWindow) => boolean): string | null =>
    [...held].find(([, { window }]) => test(window))?.[0] ?? null
  let count = 0
  const open = (path: string | null): void => {
    count += 1
    const caller = `window-${count}`
    if (path !== null) setting.host.startAt(caller, path)
    const { app, BrowserWindow: Window } = setting.electron
    const { preload, icon, state } = setting
    const window = new Window(windowOptions({ bounds: state.read(), preload, icon, tools: !app.isPackaged }))
    held.set(caller, { window, unsaved: false })
    follow(setting, held, caller, window)
    void window.loadURL(`${APP_ORIGIN}/`)
  }
  const bringUp = (caller: string): void => {
    const window = held.get(caller)?.window
    if (window?.isMinimized()) window.restore()
    window?.focus()
  }
  return {
    open,
    show: async (path) => {
      const caller = path === null ? ([...held.keys()].at(-1) ?? null) : await setting.host.whoHas(path)
      if (caller === null || !held.has(caller)) open(path)
      else bringUp(caller)
    },
    find: (caller) => held.get(caller)?.window ?? null,
    focused: () => callerWhere((window) => window.isFocused()),
    callerOf: (contents) => callerWhere((window) => window.webContents === contents),
    contents: () => [...held.values()].map(({ window }) => window.webContents),
    setUnsaved: (caller, unsaved) => {
      const holder = held.get(caller)
      if (holder !== undefined) holder.unsaved = unsaved
    },
  }
}

/** From the first picture to the last: show, ask before closing, offer a reload after a crash, let go. */
function follow(setting: Setting, held: Map<string, Held>, caller: string, window: BrowserWindow): void {
  const { host, waits, state, log, electron, language } = setting
  window.once('ready-to-show', () => window.show())
  window.on('close', (event) => {
    state.keep(window.getNormalBounds())
    if (held.get(caller)?.unsaved !== true) return
    event.preventDefault()
    void askToClose(electron, language, window)
  })
  window.on('closed', () => {
    held.delete(caller)
    waits.forget(caller)
    void host.release(caller)
  })
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    log.write('window-crashed', { reason })
    waits.forget(caller)
    if (reason !== 'clean-exit') void askToReload(electron, language, window)
  })
}

async function askToClose(
  electron: Setting['electron'],
  language: ShellLanguage,
  window: BrowserWindow,
): Promise<void> {
  const chosen = await ask(electron, language, window, {
    type: 'question',
    message: 'hosts.close.question',
    detail: 'hosts.close.detail',
    buttons: ['hosts.close.stay', 'hosts.close.close'],
    cancelId: 0,
  })
  if (chosen === 1) window.destroy()
}

async function askToReload(
  electron: Setting['electron'],
  language: ShellLanguage,
  window: BrowserWindow,
): Promise<void> {
  const chosen = await ask(electron, language, window, {
    type: 'error',
    message: 'hosts.crash.question',
    detail: 'hosts.crash.detail',
    buttons: ['hosts.crash.reload', 'hosts.crash.quit'],
    cancelId: 1,
  })
  if (chosen === 0) window.reload()
  else window.destroy()
}

type Question = {
  readonly type: 'question' | 'error'
  readonly message: ShellKey
  readonly detail: ShellKey
  readonly buttons: readonly ShellKey[]
  /** What closing the question means. */
  readonly cancelId: number
}

/** The button chosen; the first is the usual one. */
async function ask(
  { dialog }: Setting['electron'],
  language: ShellLanguage,
  window: BrowserWindow,
  { type, message, detail, buttons, cancelId }: Question,
): Promise<number> {
  const text = shellText(language)
  const { response } = await dialog.showMessageBox(window, {
    type,
    message: text(message),
    detail: text(detail),
    buttons: buttons.map(text),
    defaultId: 0,
    cancelId,
  })
  return response
}
