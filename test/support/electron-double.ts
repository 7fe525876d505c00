/** Stands in for Electron: remembers what the shell asks of it and lets a test play the rest. */
import { EventEmitter } from 'node:events'
import type { ElectronParts } from '../../electron/main/parts.ts'

type Handler = (event: unknown, input: unknown) => Promise<unknown>

export class FakeContents extends EventEmitter {
  openHandler: ((details: { url: string }) => { action: string }) | null = null
  destroyed = false
  readonly mainFrame = { origin: 'app://planner', parent: null, url: 'app://planner/' }
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler
  }
  isDestroyed(): boolean {
    return this.destroyed
  }
}

export class FakeWindow extends EventEmitter {
  static all: FakeWindow[] = []
  readonly webContents = new FakeContents()
  readonly options: Record<string, unknown>
  readonly did: string[] = []
  url = ''
  focusedNow = false
  constructor(options: Record<string, unknown>) {
    super()
    this.options = options
    FakeWindow.all.push(this)
    double.app.emit('web-contents-created', {}, this.webContents)
  }
  async loadURL(url: string): Promise<void> {
    this.url = url
  }
  show(): void {
    this.did.push('show')
  }
  focus(): void {
    this.did.push('focus')
  }
  restore(): void {
    this.did.push('restore')
  }
  reload(): void {
    this.did.push('reload')
  }
  destroy(): void {
    this.did.push('destroy')
    this.emit('closed')
  }
  isMinimized(): boolean {
    return false
  }
  isFocused(): boolean {
    return this.focusedNow
  }
  getNormalBounds(): { x: number; y: number; width: number; height: number } {
    return { x: 10, y: 20, width: 900, height: 700 }
  }
}

class FakeApp extends EventEmitter {
  readonly order: string[] = []
  name = 'Kipstow'
  isPackaged = true
  first = true
  userData = ''
  switches = new Set<string>()
  readonly commandLine = { hasSwitch: (name: string): boolean => this.switches.has(name) }
  setName(name: string): void {
    this.name = name
  }
  requestSingleInstanceLock(): boolean {
    this.order.push('lock')
    return this.first
  }
  enableSandbox(): void {
    this.order.push('sandbox')
  }
  async whenReady(): Promise<void> {
    this.order.push('ready')
  }
  quit(): void {
    this.order.push('quit')
  }
  exit(code: number): void {
    this.order.push(`exit ${code}`)
  }
  getPath(): string {
    return this.userData
  }
}

class FakeSession extends EventEmitter {
  readonly handlers: Record<string, (...args: unknown[]) => unknown> = {}
  beforeRequest: ((details: { url: string }, answer: (decision: { cancel: boolean }) => void) => void) | null = null
  spellChecker = true
  readonly webRequest = {
    onBeforeRequest: (handler: NonNullable<FakeSession['beforeRequest']>): void => {
      this.beforeRequest = handler
    },
  }
  setPermissionRequestHandler(handler: (...args: unknown[]) => unknown): void {
    this.handlers['request'] = handler
  }
  setPermissionCheckHandler(handler: (...args: unknown[]) => unknown): void {
    this.handlers['check'] = handler
  }
  setDevicePermissionHandler(handler: (...args: unknown[]) => unknown): void {
    this.handlers['device'] = handler
  }
  setBluetoothPairingHandler(handler: (...args: unknown[]) => unknown): void {
    this.handlers['bluetooth'] = handler
  }
  setDisplayMediaRequestHandler(handler: (...args: unknown[]) => unknown): void {
    this.handlers['display'] = handler
  }
  setSpellCheckerEnabled(enabled: boolean): void {
    this.spellChecker = enabled
  }
}

export class ElectronDouble {
  readonly app = new FakeApp()
  readonly session = { defaultSession: new FakeSession() }
  readonly channels = new Map<string, Handler>()
  readonly opened: string[] = []
  schemes: unknown = null
  pageHandler: ((request: { method: string; url: string }) => Response) | null = null
  menu: unknown = null
  answers: unknown[] = []
  asked: unknown[] = []
  readonly ipcMain = { handle: (channel: string, handler: Handler): void => void this.channels.set(channel, handler) }
  readonly protocol = {
    registerSchemesAsPrivileged: (schemes: unknown): void => {
      this.app.order.push('schemes')
      this.schemes = schemes
    },
    handle: (_scheme: string, handler: (request: { method: string; url: string }) => Response): void => {
      this.pageHandler = handler
    },
  }
  readonly dialog = {
    showOpenDialog: async (_window: unknown, options: unknown): Promise<unknown> => this.answer(options),
    showSaveDialog: async (_window: unknown, options: unknown): Promise<unknown> => this.answer(options),
    showMessageBox: async (_window: unknown, options: unknown): Promise<unknown> => this.answer(options),
  }
  readonly Menu = {
    buildFromTemplate: (template: unknown): unknown => template,
    setApplicationMenu: (menu: unknown): void => {
      this.menu = menu
    },
  }
  readonly screen = { getAllDisplays: (): unknown => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] }
  readonly shell = {
    openPath: async (path: string): Promise<string> => {
      this.opened.push(path)
      return ''
    },
  }
  readonly BrowserWindow = FakeWindow

  /** As the shell knows it. */
  parts(): ElectronParts {
    return this as unknown as ElectronParts
  }

  invoke(name: string, input: unknown, event?: unknown): Promise<unknown> {
    const handler = this.channels.get(`kipstow:${name}`)
    if (handler === undefined) throw new Error(`no channel for ${name}`)
    return handler(event ?? this.eventOf(FakeWindow.all.at(-1)), input)
  }

  eventOf(window: FakeWindow | undefined): unknown {
    return { sender: window?.webContents, senderFrame: window?.webContents.mainFrame }
  }

  private answer(options: unknown): unknown {
    this.asked.push(options)
    return this.answers.shift()
  }
}

/** The one that new windows report to. */
export let double = new ElectronDouble()
export function freshDouble(): ElectronDouble {
  FakeWindow.all = []
  double = new ElectronDouble()
  return double
}
