/** Finding a browser, Electron and the trip; building only what is stale. */
import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { findBrowser, profileFolder } from '../../../electron/start/find-browser.ts'
import {
  fetchElectron,
  findElectron,
  realSurroundings,
  sandboxHelper,
  whyNoDisplay,
  whyNotElectron,
} from '../../../electron/start/find-electron.ts'
import type { Surroundings } from '../../../electron/start/find-electron.ts'
import { buildIfStale } from '../../../electron/start/stamp.ts'
import { tripAmongArguments } from '../../../electron/start/trip-argument.ts'

const base = mkdtempSync(join(tmpdir(), 'kipstow-find-'))
afterAll(() => rmSync(base, { recursive: true, force: true }))
let folder = base
beforeEach(() => {
  folder = mkdtempSync(join(base, 'case-'))
})
const put = (...path: string[]): string => {
  const file = join(folder, ...path)
  mkdirSync(join(file, '..'), { recursive: true })
  writeFileSync(file, '')
  return file
}

describe('a browser', () => {
  it('is the one named, and no other where that one is not there', () => {
    const named = put('mine')
    put('bin', 'chromium')
    const PATH = join(folder, 'bin')
    expect(findBrowser('linux', { KIPSTOW_BROWSER: named, PATH })).toBe(named)
    expect(findBrowser('linux', { KIPSTOW_BROWSER: join(folder, 'gone'), PATH })).toBeNull()
    expect(findBrowser('linux', { KIPSTOW_BROWSER: '', PATH })).toBe(join(PATH, 'chromium'))
  })

  it('is the best known one of the whole search path, not the first folder’s', () => {
    const chromium = put('a', 'chromium')
    const path = [join(folder, 'a'), '', join(folder, 'b')].join(delimiter)
    expect(findBrowser('linux', { PATH: path })).toBe(chromium)
    const chrome = put('b', 'google-chrome')
    expect(findBrowser('linux', { PATH: path })).toBe(chrome)
    expect(findBrowser('linux', {})).toBeNull()
  })

  it('is looked for where the other two systems keep programs', () => {
    const edge = put('Applications', 'Microsoft Edge.app/Contents/MacOS/Microsoft Edge')
    const windows = put('Microsoft', 'Edge', 'Application', 'msedge.exe')
    expect([edge, null]).toContain(findBrowser('darwin', { HOME: folder }))
    expect(findBrowser('win32', { 'PROGRAMFILES(X86)': folder })).toBe(windows)
    expect(findBrowser('win32', {})).toBeNull()
  })

  it('gets a profile folder of its own, below its own folder where it comes from a snap', () => {
    const plain = put('chromium')
    const snapped = put('snap', 'bin', 'chromium')
    symlinkSync(snapped, join(folder, 'link'))
    const home = { HOME: '/home/me' }
    expect(profileFolder('linux', home, plain)).toBe('/home/me/.local/share/kipstow/browser')
    expect(profileFolder('linux', { ...home, XDG_DATA_HOME: '/data' }, plain)).toBe('/data/kipstow/browser')
    expect(profileFolder('linux', { ...home, KIPSTOW_DATA: '/k' }, plain)).toBe(join('/k', 'browser'))
    expect(profileFolder('linux', { ...home, KIPSTOW_DATA: '/k' }, join(folder, 'link'))).toBe(
      '/home/me/snap/chromium/common/kipstow',
    )
    expect(profileFolder('darwin', home, plain)).toBe('/home/me/Library/Application Support/Kipstow/browser')
    expect(profileFolder('win32', { USERPROFILE: '/u', LOCALAPPDATA: '/l' }, plain)).toBe(
      join('/l', 'Kipstow', 'browser'),
    )
    expect(profileFolder('win32', { USERPROFILE: '/u' }, plain)).toBe(join('/u', 'Kipstow', 'browser'))
  })
})

describe('Electron', () => {
  const desk: Surroundings = {
    platform: 'linux',
    environment: { WAYLAND_DISPLAY: 'w' },
    userId: 1000,
    readLine: () => null,
    canUnshare: () => true,
  }

  it('needs a display on Linux only', () => {
    expect(whyNoDisplay(desk)).toBeNull()
    expect(whyNoDisplay({ ...desk, environment: { DISPLAY: '' } })).toBe('there is no display')
    for (const platform of ['win32', 'darwin']) expect(whyNoDisplay({ ...desk, platform, environment: {} })).toBeNull()
  })

  it('does not start without its sandbox, whatever switches it off', () => {
    expect(whyNotElectron(desk, null)).toBeNull()
    expect(whyNotElectron({ ...desk, userId: 0 }, null)).toBe('it does not run as root')
    expect(whyNotElectron({ ...desk, platform: 'darwin', userId: 0 }, null)).toBeNull()
    for (const [path, value] of [
      ['/proc/sys/kernel/unprivileged_userns_clone', '0'],
      ['/proc/sys/kernel/apparmor_restrict_unprivileged_userns', '1'],
      ['/proc/sys/user/max_user_namespaces', '0'],
    ] as const) {
      const readLine = (asked: string): string | null => (asked === path ? value : null)
      expect(whyNotElectron({ ...desk, readLine }, null), path).toBe('this system gives it no sandbox')
    }
    expect(whyNotElectron({ ...desk, canUnshare: () => false }, put('chrome-sandbox'))).toBe(
      'this system gives it no sandbox',
    )
    expect(whyNotElectron({ ...desk, canUnshare: () => false }, join(folder, 'none'))).toBe(
      'this system gives it no sandbox',
    )
  })

  it('starts with a helper that is root’s and setuid, and with no other', () => {
    const helper = put('chrome-sandbox')
    chmodSync(helper, 0o4755)
    // Only root can make one that is root's.
    const expected = process.getuid?.() === 0 ? null : 'this system gives it no sandbox'
    expect(whyNotElectron({ ...desk, canUnshare: () => false }, helper)).toBe(expected)
  })

  it('is found by the note that its package keeps, where the binary is there', () => {
    expect(findElectron(folder)).toBeNull()
    writeFileSync(join(folder, 'path.txt'), 'electron\n')
    expect(findElectron(folder)).toBeNull()
    const binary = put('dist', 'electron')
    expect(findElectron(folder)).toBe(binary)
    expect(sandboxHelper(binary)).toBe(join(folder, 'dist', 'chrome-sandbox'))
  })

  it('is fetched by its package’s own installer', async () => {
    writeFileSync(
      join(folder, 'install.js'),
      `const fs = require('fs'); fs.mkdirSync(__dirname + '/dist'); fs.writeFileSync(__dirname + '/dist/electron', ''); fs.writeFileSync(__dirname + '/path.txt', 'electron')`,
    )
    expect(await fetchElectron(() => undefined, folder)).toBe(join(folder, 'dist', 'electron'))
  })

  it('is given up where the installer fails or takes too long, with a word meanwhile', async () => {
    writeFileSync(join(folder, 'install.js'), 'process.exit(1)')
    expect(await fetchElectron(() => undefined, folder)).toBeNull()
    writeFileSync(join(folder, 'install.js'), 'setInterval(() => undefined, 1000)')
    const said: string[] = []
    expect(await fetchElectron((line) => said.push(line), folder, 500, 100)).toBeNull()
    expect(said[0]).toBe('Fetching Electron … 0.1 s of at most 0.5 s')
  })

  it('is asked for in real surroundings without importing it', () => {
    const here = realSurroundings()
    expect(here).toMatchObject({ platform: process.platform, environment: process.env, userId: process.getuid?.() })
    expect(here.readLine(join(folder, 'none'))).toBeNull()
    writeFileSync(join(folder, 'line'), '1\n')
    expect(here.readLine(join(folder, 'line'))).toBe('1')
    expect(typeof here.canUnshare()).toBe('boolean')
  })
})

describe('the trip named at the start', () => {
  it('is the first word that is no switch, from where the user stands', () => {
    expect(tripAmongArguments([], '/me')).toBeNull()
    expect(tripAmongArguments(['--x', ''], '/me')).toBeNull()
    expect(tripAmongArguments(['--x', 'a b.json', 'c.json'], '/me')).toBe('/me/a b.json')
    expect(tripAmongArguments(['/else/c.json'], '/me')).toBe('/else/c.json')
  })
})

describe('building', () => {
  it('is left out where nothing changed since the last whole build, and done again after a change', () => {
    mkdirSync(join(folder, 'dist'))
    const source = put('shared', 'deep', 'a.ts')
    let builds = 0
    const build = (): boolean => (builds += 1) > 0
    expect(buildIfStale(folder, build)).toBe(true)
    expect(buildIfStale(folder, build)).toBe(true)
    expect(builds).toBe(1)
    utimesSync(source, 1, 1)
    expect(buildIfStale(folder, build)).toBe(true)
    put('shared', 'deep', 'b.ts')
    expect(buildIfStale(folder, build)).toBe(true)
    expect(builds).toBe(3)
  })

  it('that fails is tried again, and what changes while it runs is built next time', () => {
    mkdirSync(join(folder, 'dist'))
    expect(buildIfStale(folder, () => false)).toBe(false)
    expect(existsSync(join(folder, 'dist/stamp.txt'))).toBe(false)
    let builds = 0
    const build = (): boolean => {
      builds += 1
      if (builds === 1) put('electron', 'late.ts')
      return true
    }
    for (const _ of [1, 2, 3]) buildIfStale(folder, build)
    expect(builds).toBe(2)
  })
})
