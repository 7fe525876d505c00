/** The window's shell against Electron's security list, on a double of Electron. Numbers are those of the list. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { CONTENT_SECURITY_POLICY, OPERATION_NAMES, PAGE_HEADERS } from '../../shared/host/index.ts'
import { buildMenu } from '../../electron/main/menu/build.ts'
import { mayLoad } from '../../electron/main/security/permissions.ts'
import { answer, APP_SCHEME } from '../../electron/main/security/protocol.ts'
import { whyUnsafe } from '../../electron/main/security/switches.ts'
import { startUp } from '../../electron/main/start-up.ts'
import { createWindowState } from '../../electron/main/windows/state.ts'
import { tripAmong } from '../../electron/main/windows/trip-argument.ts'
import { windowOptions } from '../../electron/main/windows/options.ts'
import { FakeContents, FakeWindow, freshDouble } from '../support/electron-double.ts'
import type { ElectronDouble } from '../support/electron-double.ts'

const repository = join(import.meta.dirname, '../..')
const root = mkdtempSync(join(tmpdir(), 'kipstow-shell-'))
mkdirSync(join(root, 'dist/renderer/assets'), { recursive: true })
writeFileSync(join(root, 'dist/renderer/index.html'), '<!doctype html>')
writeFileSync(join(root, 'dist/renderer/assets/a.js'), '1')
writeFileSync(join(root, 'package.json'), JSON.stringify({ version: '9.9.9' }))
cpSync(join(repository, 'assets/samples'), join(root, 'assets/samples'), { recursive: true })
vi.stubEnv('KIPSTOW_DATA', join(root, 'data'))
vi.stubEnv('KIPSTOW_TRIPS', join(root, 'trips'))
afterAll(() => rmSync(root, { recursive: true }))

let electron: ElectronDouble
async function boot(argv: readonly string[] = ['electron', '.']): Promise<void> {
  electron.app.userData = join(root, 'user-data')
  await startUp(electron.parts(), { root, argv, folder: root })
}
const lastWindow = (): FakeWindow => {
  const window = FakeWindow.all.at(-1)
  if (window === undefined) throw new Error('no window was opened')
  return window
}
const stopped = (contents: FakeContents, name: string): boolean => {
  let prevented = false
  contents.emit(name, { preventDefault: () => (prevented = true) }, 'https://evil.example')
  return prevented
}

beforeEach(() => {
  electron = freshDouble()
})

describe('starting', () => {
  it('sandboxes everything and names its scheme before it is ready (4, 18)', async () => {
    await boot()
    expect(electron.app.order).toEqual(['lock', 'sandbox', 'schemes', 'ready'])
    expect(electron.schemes).toEqual([APP_SCHEME])
    expect(APP_SCHEME.privileges).not.toHaveProperty('bypassCSP')
    expect(lastWindow().url).toBe('app://planner/')
  })

  it.each(['no-sandbox', 'disable-web-security', 'enable-blink-features'])(
    'does not start with --%s (4, 6, 10)',
    async (name) => {
      vi.spyOn(console, 'error').mockImplementation(() => undefined)
      electron.app.switches.add(name)
      await boot()
      expect(electron.app.order).toEqual(['exit 1'])
      expect(FakeWindow.all).toEqual([])
      expect(whyUnsafe(electron.app.commandLine)).toBe(name)
    },
  )

  it('leaves where another run is first, and that one opens the trip named', async () => {
    electron.app.first = false
    await boot()
    expect(electron.app.order).toEqual(['lock', 'quit'])
    electron = freshDouble()
    await boot()
    electron.app.emit('second-instance', {}, ['electron', '--flag', 'other.trip.json'], root)
    await vi.waitFor(() => expect(FakeWindow.all).toHaveLength(2))
    const info = await electron.invoke('readHostInfo', {})
    expect(info).toMatchObject({
      ok: true,
      value: { startToken: expect.any(String), kind: 'electron', appVersion: '9.9.9' },
    })
    electron.app.emit('second-instance', {}, ['electron'], root)
    await vi.waitFor(() => expect(lastWindow().did).toContain('focus'))
    expect(FakeWindow.all).toHaveLength(2)
  })

  it('brings up the window that has the file instead of opening it twice', async () => {
    const [sample] = readdirSync(join(root, 'assets/samples'))
    const path = join(root, 'assets/samples', sample ?? '')
    await boot(['electron', '.', path])
    const info = await electron.invoke('readHostInfo', {})
    const { startToken } = (info as { value: { startToken: string } }).value
    const opened = await electron.invoke('openTrip', { from: { kind: 'token', token: startToken }, asCopy: false })
    expect(opened).toMatchObject({ ok: true })
    electron.app.emit('open-file', { preventDefault: () => undefined }, path)
    await vi.waitFor(() => expect(lastWindow().did).toContain('focus'))
    expect(FakeWindow.all).toHaveLength(1)
    lastWindow().emit('closed')
  })

  it('finds the trip among the switches on a command line', () => {
    expect(tripAmong(['/a/electron.json', '--x', 'a.trip.json', '--y=b.json'])).toBe('a.trip.json')
    expect(tripAmong(['/a/electron', '.', '--no-sandbox'])).toBeNull()
  })
})

describe('the window', () => {
  it('has every protection on, and says nothing that weakens one (2, 3, 4, 6, 8, 9, 10, 11)', async () => {
    await boot()
    expect(lastWindow().options['webPreferences']).toEqual({
      preload: join(root, 'dist/preload/preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      safeDialogs: true,
      devTools: false,
    })
    expect(windowOptions({ bounds: { width: 900 }, preload: '', icon: '', tools: true })).toMatchObject({
      width: 900,
      height: 800,
    })
  })

  it('goes nowhere and opens nothing (12, 13, 14)', async () => {
    await boot()
    for (const contents of [lastWindow().webContents, new FakeContents()]) {
      electron.app.emit('web-contents-created', {}, contents)
      for (const name of ['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview']) {
        expect(stopped(contents, name), name).toBe(true)
      }
      expect(contents.openHandler?.({ url: 'https://evil.example' })).toEqual({ action: 'deny' })
    }
  })

  it('may ask for nothing (5) and load nothing but its own bundle (1)', async () => {
    await boot()
    const { defaultSession } = electron.session
    const denied = vi.fn()
    for (const permission of [
      'geolocation',
      'media',
      'notifications',
      'clipboard-read',
      'usb',
      'hid',
      'serial',
      'midi',
      'fullscreen',
    ]) {
      defaultSession.handlers['request']?.({}, permission, denied)
      expect(defaultSession.handlers['check']?.({}, permission)).toBe(false)
    }
    expect(new Set(denied.mock.calls.flat())).toEqual(new Set([false]))
    expect(defaultSession.handlers['device']?.({})).toBe(false)
    const paired = vi.fn()
    defaultSession.handlers['bluetooth']?.({}, paired)
    defaultSession.handlers['display']?.({}, paired)
    expect(paired.mock.calls).toEqual([[{ confirmed: false }], [{}]])
    for (const name of ['select-usb-device', 'select-hid-device']) {
      const refused = vi.fn()
      const event = { preventDefault: vi.fn() }
      defaultSession.emit(name, event, {}, refused)
      expect([event.preventDefault.mock.calls.length, refused.mock.calls]).toEqual([1, [[]]])
    }
    const port = vi.fn()
    defaultSession.emit('select-serial-port', { preventDefault: vi.fn() }, [], {}, port)
    expect(port.mock.calls).toEqual([['']])
    const download = { preventDefault: vi.fn() }
    defaultSession.emit('will-download', download)
    expect(download.preventDefault).toHaveBeenCalledOnce()
    expect(defaultSession.spellChecker).toBe(false)
    for (const url of [
      'http://a.example/',
      'https://a.example/',
      'ws://a.example',
      'file:///etc/passwd',
      'app://other/',
      'app://planner.evil/',
      'data:text/html,x',
      'blob:app://planner/x',
      'ftp://x',
    ]) {
      const decide = vi.fn()
      defaultSession.beforeRequest?.({ url }, decide)
      expect(decide.mock.calls, url).toEqual([[{ cancel: true }]])
    }
    expect(mayLoad('app://planner/assets/a.js')).toBe(true)
  })

  it('asks before it closes over unsaved edits, and keeps its place', async () => {
    await boot()
    const window = lastWindow()
    const close = (): boolean => {
      let prevented = false
      window.emit('close', { preventDefault: () => (prevented = true) })
      return prevented
    }
    expect(close()).toBe(false)
    const adopted = await electron.invoke('openSample', {
      id: readdirSync(join(root, 'assets/samples'))[0]?.replace('.trip.json', ''),
    })
    const { token } = (adopted as { value: { file: { token: string } } }).value.file
    await electron.invoke('markUnsaved', { token, unsaved: true })
    electron.answers = [{ response: 0 }]
    expect(close()).toBe(true)
    await vi.waitFor(() => expect(electron.asked).toHaveLength(1))
    expect(window.did).not.toContain('destroy')
    electron.answers = [{ response: 1 }]
    expect(close()).toBe(true)
    await vi.waitFor(() => expect(window.did).toContain('destroy'))
    await electron.app.emit('activate')
    await vi.waitFor(() => expect(FakeWindow.all).toHaveLength(2))
    expect(lastWindow().options).toMatchObject({ x: 10, y: 20, width: 900, height: 700 })
  })

  it('comes up in the usual place where its screen is gone or the note is unreadable', () => {
    const folder = join(root, 'state')
    const state = createWindowState(folder, { getAllDisplays: () => [] })
    expect(state.read()).toEqual({})
    state.keep({ x: 1, y: 2, width: 3, height: 4 })
    expect(state.read()).toEqual({})
    writeFileSync(join(folder, 'window-state.json'), '{"x":"left"}')
    expect(state.read()).toEqual({})
    writeFileSync(join(folder, 'window-state.json'), '{')
    expect(state.read()).toEqual({})
  })

  it('offers a reload when the page has crashed, and lets go of what it held', async () => {
    await boot()
    const window = lastWindow()
    electron.answers = [{ response: 0 }, { response: 1 }]
    window.webContents.emit('render-process-gone', {}, { reason: 'crashed' })
    await vi.waitFor(() => expect(window.did).toContain('reload'))
    window.webContents.emit('render-process-gone', {}, { reason: 'oom' })
    await vi.waitFor(() => expect(window.did).toContain('destroy'))
  })

  it('opens and saves by the system’s dialogs, and shows folders by key only (15)', async () => {
    await boot()
    const [sample] = readdirSync(join(root, 'assets/samples'))
    electron.answers = [
      { canceled: true, filePaths: [] },
      { canceled: false, filePaths: [join(root, 'assets/samples', sample ?? '')] },
    ]
    expect(await electron.invoke('openTrip', { from: { kind: 'dialog' }, asCopy: false })).toEqual({
      ok: true,
      value: null,
    })
    const opened = await electron.invoke('openTrip', { from: { kind: 'dialog' }, asCopy: true })
    expect(opened).toMatchObject({ ok: true, value: { unsaved: true } })
    const { file, trip } = (opened as { value: { file: { token: string }; trip: unknown } }).value
    mkdirSync(join(root, 'out'), { recursive: true })
    electron.answers = [
      { canceled: false, filePath: join(root, 'out/saved.trip.json') },
      { canceled: true, filePath: '' },
    ]
    const saved = await electron.invoke('saveTripAs', { token: file.token, trip, name: 'saved' })
    expect(saved).toMatchObject({ ok: true, value: { file: { name: 'saved.trip.json' } } })
    expect(await electron.invoke('saveTripAs', { token: file.token, trip, name: 'saved' })).toEqual({
      ok: true,
      value: null,
    })
    await electron.invoke('revealFolder', { folder: 'log' })
    expect(electron.opened).toEqual([join(root, 'data/log')])
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.string(), fc.webUrl(), fc.constantFrom('file:///etc', 'javascript:1', 'smb://x/y')),
        async (folder) => {
          expect(await electron.invoke('revealFolder', { folder: `${folder}!` })).toMatchObject({ ok: false })
        },
      ),
      { numRuns: 1000, seed: 7 },
    )
    expect(electron.opened).toHaveLength(1)
  })
})

describe('the page’s address', () => {
  it('is our scheme with the strict policy as a header (7, 18)', () => {
    const page = new Map([['/', { bytes: Buffer.from('x'), mediaType: 'text/html; charset=utf-8' }]])
    const served = answer(page, { method: 'GET', url: 'app://planner/' })
    expect([served.status, served.headers.get('content-security-policy')]).toEqual([200, CONTENT_SECURITY_POLICY])
    for (const [name, value] of Object.entries(PAGE_HEADERS)) expect(served.headers.get(name)).toBe(value)
    expect(CONTENT_SECURITY_POLICY).toMatch(/^default-src 'none'; script-src 'self';/)
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|\*|data:|blob:|http/)
    expect(answer(page, { method: 'POST', url: 'app://planner/' }).status).toBe(405)
  })

  it('gives out none of 200 escapes (18)', () => {
    const page = new Map([
      ['/', { bytes: Buffer.from('x'), mediaType: 'text/html' }],
      ['/a.js', { bytes: Buffer.from('x'), mediaType: 'text/javascript' }],
    ])
    const ups = ['..', '%2e%2e', '.%2e', '..%2f', '..\\', '%5c..', '..;', '\u0000', '%00', '//']
    const ends = [
      '/etc/passwd',
      '/package.json',
      '/a.js',
      '/../a.js',
      'a.js',
      '/%61.js',
      '/A.js',
      '/a.js?x',
      '/a.js/',
      '/ ',
    ]
    const escapes = ups.flatMap((up) =>
      ends.flatMap((end) => [`app://planner/${up}${end}`, `app://planner/assets/${up}/${up}${end}`]),
    )
    expect(escapes).toHaveLength(200)
    for (const url of [
      ...escapes,
      'app://other/',
      'app://planner:1/',
      'app://planner',
      'file:///a.js',
      'app:///a.js',
    ]) {
      expect(answer(page, { method: 'GET', url }).status, url).toBeGreaterThanOrEqual(400)
    }
  })
})

describe('messages', () => {
  it('have one channel for each operation and no other', async () => {
    await boot()
    expect([...electron.channels.keys()]).toEqual(OPERATION_NAMES.map((name) => `kipstow:${name}`))
  })

  it('are refused from any sender but the main frame of our own page (17)', async () => {
    await boot()
    const { webContents } = lastWindow()
    const frame = webContents.mainFrame
    const dead = new FakeContents()
    dead.destroyed = true
    const senders = {
      'a frame that is gone': { sender: webContents, senderFrame: null },
      'a frame inside the page': { sender: webContents, senderFrame: { ...frame, parent: frame } },
      'another frame of our origin': { sender: webContents, senderFrame: { ...frame } },
      'another window': { sender: new FakeContents(), senderFrame: frame },
      'destroyed contents': { sender: dead, senderFrame: dead.mainFrame },
    }
    for (const name of OPERATION_NAMES) {
      for (const [who, event] of Object.entries(senders)) {
        expect(await electron.invoke(name, {}, event), `${name} from ${who}`).toMatchObject({
          ok: false,
          problem: { code: 'host-sender-refused' },
        })
      }
    }
    Object.assign(frame, { origin: 'https://evil.example' })
    expect(await electron.invoke('readHostInfo', {})).toMatchObject({
      ok: false,
      problem: { code: 'host-sender-refused' },
    })
    Object.assign(frame, { origin: 'null' })
    expect(await electron.invoke('readHostInfo', {})).toMatchObject({ ok: false })
  })

  it('of any shape are refused or answered, never thrown on', { timeout: 300_000 }, async () => {
    await boot()
    const runs = process.env['KIPSTOW_DEEP'] === undefined ? 1000 : 10_000
    const quick = OPERATION_NAMES.filter((name) => name !== 'nextEvent')
    const nasty = fc.oneof(
      fc.anything(),
      fc.record(
        { token: fc.string(), id: fc.string(), from: fc.anything(), trip: fc.anything(), folder: fc.string() },
        { requiredKeys: [] },
      ),
      fc
        .constantFrom(
          '{"__proto__":{"a":1}}',
          '{"from":{"kind":"token","token":"../../etc/passwd"},"asCopy":false}',
          '{"id":"__proto__"}',
        )
        .map((text): unknown => JSON.parse(text)),
    )
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...quick), nasty, async (name, input) => {
        const result = await electron.invoke(name, input)
        expect(result).toHaveProperty('ok')
        expect(result).not.toMatchObject({ problem: { code: 'host-crashed' } })
      }),
      { numRuns: runs, seed: 11 },
    )
    expect(({} as { a?: number }).a).toBeUndefined()
  })

  it('answer a crash of a handler with a problem', async () => {
    await boot()
    electron.answers = ['no answer a dialog gives']
    const crashed = await electron.invoke('openTrip', { from: { kind: 'dialog' }, asCopy: false })
    expect(crashed).toMatchObject({ ok: false, problem: { code: 'host-crashed', params: { operation: 'openTrip' } } })
  })
})

describe('the bridge', () => {
  it('is exactly the operations, each a function of one input, and gives back no event (20)', async () => {
    const exposed = new Map<string, Record<string, (input: unknown) => Promise<unknown>>>()
    const invoke = vi.fn(async () => 'answer')
    vi.doMock('electron', () => ({
      contextBridge: {
        exposeInMainWorld: (name: string, api: Record<string, (input: unknown) => Promise<unknown>>) =>
          exposed.set(name, api),
      },
      ipcRenderer: { invoke },
    }))
    await import('../../electron/preload/preload.ts')
    vi.doUnmock('electron')
    expect([...exposed.keys()]).toEqual(['planner'])
    const api = exposed.get('planner') ?? {}
    expect(Object.keys(api)).toEqual([...OPERATION_NAMES])
    for (const name of OPERATION_NAMES) {
      expect(api[name]?.length).toBeLessThanOrEqual(1)
      expect(await api[name]?.({ a: 1 })).toBe('answer')
      expect(invoke).toHaveBeenLastCalledWith(`kipstow:${name}`, { a: 1 })
    }
  })
})

describe('the menus', () => {
  it('send the page’s own commands, in both languages, and hold no tools of a developer', () => {
    for (const language of ['en', 'de'] as const) {
      for (const mac of [true, false]) {
        const sent: string[] = []
        const menus = buildMenu({ language, mac, name: 'Kipstow' }, (command) => sent.push(command))
        const entries = menus.flatMap((menu) => (Array.isArray(menu.submenu) ? menu.submenu : []))
        for (const entry of entries) entry.click?.(undefined as never, undefined as never, undefined as never)
        expect(new Set(sent).size).toBeGreaterThanOrEqual(13)
        expect(entries.map((entry) => entry.role ?? '').join()).not.toMatch(/dev|reload/i)
        for (const entry of entries.filter(({ type }) => type !== 'separator')) expect(entry.label ?? '').not.toBe('')
      }
    }
  })

  it('reach the window in front', async () => {
    await boot()
    const window = lastWindow()
    window.focusedNow = true
    const menus = electron.menu as { submenu: { click?: () => void }[] }[]
    const event = electron.invoke('nextEvent', {})
    menus[0]?.submenu[0]?.click?.()
    expect(await event).toEqual({ ok: true, value: { kind: 'menu', command: 'new' } })
  })
})

describe('the sources', () => {
  const sources = (folder: string): { path: string; text: string }[] =>
    readdirSync(join(repository, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(ts|vue)$/.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => ({
        path: path.slice(repository.length + 1).replaceAll('\\', '/'),
        text: readFileSync(path, 'utf8'),
      }))

  it('never name what would weaken the window (6, 8, 9, 10, 15, 18)', () => {
    const all = [...sources('electron'), ...sources('renderer'), ...sources('shared')]
    expect(all.length).toBeGreaterThan(100)
    const banned = [
      /webSecurity/,
      /allowRunningInsecureContent/,
      /experimentalFeatures\b/,
      /enableBlinkFeatures/,
      /openExternal/,
      /['"`]file:\/\//,
      /nodeIntegration\w*: true/,
      /contextIsolation: false/,
      /sandbox: false/,
      /bypassCSP/,
      /v-html/,
      /executeJavaScript/,
      /\beval\(/,
      /new Function\(/,
    ]
    const found = all.flatMap(({ path, text }) =>
      banned.filter((pattern) => pattern.test(text)).map((pattern) => `${path} ${pattern}`),
    )
    expect(found).toEqual([])
  })

  it('name Electron’s message ends and the bridge in one file each (17, 20)', () => {
    const all = [...sources('electron'), ...sources('renderer'), ...sources('shared')]
    const where = (pattern: RegExp): readonly string[] =>
      all
        .filter(({ text }) => pattern.test(text))
        .map(({ path }) => path)
        .sort()
    expect(where(/ipcRenderer/)).toEqual(['electron/preload/preload.ts'])
    expect(where(/ipcMain\.handle/)).toEqual(['electron/main/ipc/register.ts'])
    expect(where(/from 'electron'/).every((path) => /^electron\/(main|preload)\//.test(path))).toBe(true)
    expect(where(/(window|globalThis)\.planner|'planner'\)/).every((path) => path.startsWith('renderer/host/'))).toBe(
      true,
    )
  })

  it('pin an Electron of a supported line (16)', () => {
    const manifest = JSON.parse(readFileSync(join(repository, 'package.json'), 'utf8'))
    expect(manifest.devDependencies.electron).toMatch(/^4[5-9]\.\d+\.\d+$/)
  })
})
