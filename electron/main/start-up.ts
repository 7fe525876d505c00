/** The order in which the window comes up, in one place. */
import { resolve } from 'node:path'
import { createHost } from '../../shared/host/index.ts'
import type { Host, HostPorts } from '../../shared/host/index.ts'
import { createNodePorts, createWaits, readPageBundle, systemLanguage } from '../files/index.ts'
import type { Waits } from '../files/index.ts'
import { createDesktop } from './desktop.ts'
import { createDialogs } from './dialogs.ts'
import { registerOperations } from './ipc/register.ts'
import { buildMenu } from './menu/build.ts'
import type { ElectronParts } from './parts.ts'
import { limitNavigation } from './security/navigation.ts'
import { denyPermissions } from './security/permissions.ts'
import { APP_SCHEME, servePage } from './security/protocol.ts'
import { isOurs } from './security/sender.ts'
import { whyUnsafe } from './security/switches.ts'
import { createWindows } from './windows/windows.ts'
import type { Windows } from './windows/windows.ts'
import { createWindowState } from './windows/state.ts'
import { tripAmong } from './windows/trip-argument.ts'

export type Start = { readonly root: string; readonly argv: readonly string[]; readonly folder: string }

type Shell = { readonly host: Host; readonly windows: Windows; readonly ports: HostPorts }

export async function startUp(electron: ElectronParts, start: Start): Promise<void> {
  const { app, protocol } = electron
  const refusal = whyUnsafe(app.commandLine)
  if (refusal !== null) {
    console.error(`Not started: the switch --${refusal} takes protection away.`)
    return app.exit(1)
  }
  app.setName('Kipstow')
  if (!app.requestSingleInstanceLock()) return app.quit()
  app.enableSandbox()
  protocol.registerSchemesAsPrivileged([APP_SCHEME])
  limitNavigation(app)
  const early: string[] = []
  const keepEarly = (event: Electron.Event, path: string): void => {
    event.preventDefault()
    early.push(path)
  }
  app.on('open-file', keepEarly)
  await app.whenReady()
  const shell = await openShell(electron, start)
  app.off('open-file', keepEarly)
  listen(electron, shell)
  const named = tripAmong(start.argv)
  const path = early[0] ?? (named === null ? null : resolve(start.folder, named))
  shell.windows.open(path)
}

/** Everything between "ready" and the first window. */
async function openShell(electron: ElectronParts, { root }: Start): Promise<Shell> {
  const waits = createWaits()
  const page = readPageBundle(resolve(root, 'dist/renderer'))
  denyPermissions(electron.session.defaultSession)
  servePage(electron.protocol, page)
  const windowState = createWindowState(electron.app.getPath('userData'), electron.screen)
  // The windows need the host and the host's desktop needs the windows: the desktop looks them up when it is used.
  const late: { windows: Windows | null } = { windows: null }
  const find = (caller: string): Electron.BrowserWindow | null => late.windows?.find(caller) ?? null
  const ports = await createNodePorts({
    kind: 'electron',
    root,
    events: waits,
    dialogs: createDialogs(electron.dialog, find, systemLanguage()),
    desktop: createDesktop(electron.shell, find, (caller, unsaved) => late.windows?.setUnsaved(caller, unsaved)),
  })
  const host = createHost(ports, null)
  const windows = createWindows({
    electron,
    host,
    waits,
    state: windowState,
    log: ports.log,
    language: systemLanguage(),
    preload: resolve(root, 'dist/preload/preload.cjs'),
    icon: resolve(root, 'assets/icons/icon-256.png'),
  })
  late.windows = windows
  registerOperations(electron.ipcMain, host, {
    callerOf: (event) => (isOurs(event, windows.contents()) ? windows.callerOf(event.sender) : null),
    onRefused: (operation) => ports.log.write('sender-refused', { operation }),
    onCrash: (operation, cause) =>
      ports.log.write('handler-crashed', { operation, kind: cause instanceof Error ? cause.name : 'unknown' }),
  })
  setMenu(electron, windows, waits)
  ports.log.write('started', { host: 'electron' })
  return { host, windows, ports }
}

function setMenu({ Menu, app }: ElectronParts, windows: Windows, waits: Waits): void {
  const template = buildMenu(
    { language: systemLanguage(), mac: process.platform === 'darwin', name: app.name },
    (command) => {
      const caller = windows.focused()
      if (caller !== null) waits.emit(caller, { kind: 'menu', command })
      else windows.open(null)
    },
  )
  Menu.setApplicationMenu(Menu.buildFromTemplate(template))
}

function listen({ app }: ElectronParts, { windows }: Shell): void {
  app.on('second-instance', (_event, argv, folder) => {
    const named = tripAmong(argv)
    void windows.show(named === null ? null : resolve(folder, named))
  })
  app.on('open-file', (event, path) => {
    event.preventDefault()
    void windows.show(path)
  })
  app.on('activate', () => void windows.show(null))
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit()
  })
}
