/** The desktop start-up: what arrives early, what a last window means, and what the desktop does around the windows. */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { createDesktop } from '../../../electron/main/desktop.ts'
import { createDialogs } from '../../../electron/main/dialogs.ts'
import { startUp } from '../../../electron/main/start-up.ts'
import { smallTrip } from '../../support/small-trip.ts'
import { FakeWindow, freshDouble } from '../../support/electron-double.ts'
import type { ElectronDouble } from '../../support/electron-double.ts'

const repository = join(import.meta.dirname, '../../..')
const root = mkdtempSync(join(tmpdir(), 'kipstow-start-up-'))
mkdirSync(join(root, 'dist/renderer'), { recursive: true })
writeFileSync(join(root, 'dist/renderer/index.html'), '<!doctype html>')
writeFileSync(join(root, 'package.json'), '{"version": "9.9.9"}')
cpSync(join(repository, 'assets/samples'), join(root, 'assets/samples'), { recursive: true })
writeFileSync(join(root, 'named.trip.json'), smallTrip())
writeFileSync(join(root, 'early.kipstow'), smallTrip())
vi.stubEnv('KIPSTOW_DATA', join(root, 'data'))
vi.stubEnv('KIPSTOW_TRIPS', join(root, 'trips'))
afterAll(() => rmSync(root, { recursive: true }))

let electron: ElectronDouble
beforeEach(() => {
  electron = freshDouble()
  electron.app.userData = join(root, 'user-data')
})

const event = (): { preventDefault: () => void; prevented: boolean } => {
  const made = { prevented: false, preventDefault: () => (made.prevented = true) }
  return made
}

/** The name of the trip that the last window opens with; null for none. */
async function openedWith(): Promise<string | null> {
  const info = (await electron.invoke('readHostInfo', {})) as { value: { startToken: string | null } }
  const token = info.value.startToken
  if (token === null) return null
  const opened = (await electron.invoke('openTrip', { from: { kind: 'token', token }, asCopy: false })) as {
    value: { file: { name: string } }
  }
  return opened.value.file.name
}

describe('starting', () => {
  it('opens the trip on the command line, from the folder where it was said', async () => {
    await startUp(electron.parts(), { root, argv: ['kipstow', '--flag', 'named.trip.json'], folder: root })
    expect(await openedWith()).toBe('named.trip.json')
  })

  it('opens a double-clicked trip that the system named before it was ready', async () => {
    const early = event()
    const ready = electron.app.whenReady.bind(electron.app)
    electron.app.whenReady = async () => {
      electron.app.emit('open-file', early, join(root, 'early.kipstow'))
      await ready()
    }
    await startUp(electron.parts(), { root, argv: ['kipstow', 'named.trip.json'], folder: root })
    expect(early.prevented).toBe(true)
    expect(FakeWindow.all).toHaveLength(1)
    expect(await openedWith()).toBe('early.kipstow')
  })

  it('opens a window without a trip where none is named', async () => {
    await startUp(electron.parts(), { root, argv: ['kipstow'], folder: root })
    expect(await openedWith()).toBeNull()
  })

  it('ends with its last window, except where programs stay without one', async () => {
    await startUp(electron.parts(), { root, argv: ['kipstow'], folder: root })
    const platform = vi.spyOn(process, 'platform', 'get').mockReturnValue('linux')
    electron.app.emit('window-all-closed')
    expect(electron.app.order.filter((step) => step === 'quit')).toHaveLength(1)
    platform.mockReturnValue('darwin')
    electron.app.emit('window-all-closed')
    expect(electron.app.order.filter((step) => step === 'quit')).toHaveLength(1)
    platform.mockRestore()
  })

  it('opens a window for a menu command where none is in front', async () => {
    await startUp(electron.parts(), { root, argv: ['kipstow'], folder: root })
    for (const window of FakeWindow.all) window.focusedNow = false
    const menu = electron.menu as { submenu: { label?: string; click?: () => void }[] }[]
    menu
      .flatMap(({ submenu }) => submenu)
      .find(({ click }) => click !== undefined)
      ?.click?.()
    expect(FakeWindow.all).toHaveLength(2)
  })
})

describe('the desktop', () => {
  const minimised = (is: boolean): FakeWindow => {
    const window = new FakeWindow({})
    window.isMinimized = () => is
    return window
  }
  const desktopOf = (window: FakeWindow | null, answer = ''): ReturnType<typeof createDesktop> =>
    createDesktop(
      { openPath: async () => answer },
      () => window as unknown as Electron.BrowserWindow | null,
      () => undefined,
    )

  it('brings a window to the front, also one that is minimised, and is content where it is gone', () => {
    const small = minimised(true)
    desktopOf(small).focus('w')
    expect(small.did).toEqual(['restore', 'focus'])
    const open = minimised(false)
    desktopOf(open).focus('w')
    expect(open.did).toEqual(['focus'])
    expect(() => desktopOf(null).focus('w')).not.toThrow()
  })

  it('says whether the system showed the folder', async () => {
    expect(await desktopOf(null).reveal('/f')).toBe(true)
    expect(await desktopOf(null, 'no program for that').reveal('/f')).toBe(false)
  })

  it('asks nothing for a window that is gone', async () => {
    const dialogs = createDialogs(electron.parts().dialog, () => null, 'en')
    expect(await dialogs.chooseOpen('w')).toBeNull()
    expect(await dialogs.chooseSave('w', 'a.json')).toBeNull()
    expect(await dialogs.chooseFolder('w')).toBeNull()
    expect(electron.asked).toEqual([])
  })
})
