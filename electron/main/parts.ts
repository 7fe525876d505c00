/** What the shell needs of Electron, as a type: `main.ts` gives the real thing, tests a double. */
import type {
  App,
  BrowserWindow as ElectronWindow,
  Dialog,
  IpcMain,
  Menu as ElectronMenu,
  Protocol,
  Screen,
  Session,
  Shell,
  WebContents,
} from 'electron'

export type WindowClass = {
  new (options: Electron.BrowserWindowConstructorOptions): ElectronWindow
  getAllWindows(): ElectronWindow[]
  getFocusedWindow(): ElectronWindow | null
  fromWebContents(contents: WebContents): ElectronWindow | null
}

export type ElectronParts = {
  readonly app: App
  readonly BrowserWindow: WindowClass
  readonly dialog: Dialog
  readonly ipcMain: IpcMain
  readonly Menu: typeof ElectronMenu
  readonly protocol: Protocol
  readonly screen: Screen
  readonly session: { readonly defaultSession: Session }
  readonly shell: Shell
}
