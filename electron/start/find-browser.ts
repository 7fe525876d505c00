/** An installed browser that can show a page in a window of its own. */
import { existsSync, realpathSync } from 'node:fs'
import { delimiter, join } from 'node:path'

type Environment = Readonly<Record<string, string | undefined>>

const LINUX_NAMES = [
  'google-chrome-stable',
  'google-chrome',
  'chromium',
  'chromium-browser',
  'microsoft-edge-stable',
  'microsoft-edge',
]
const MAC_PATHS = [
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Chromium.app/Contents/MacOS/Chromium',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
]
const WINDOWS_PATHS = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
]

/** `KIPSTOW_BROWSER` names one; else the first of the known ones; null for none. */
export function findBrowser(platform: string, environment: Environment): string | null {
  const named = environment['KIPSTOW_BROWSER']
  if (named !== undefined && named !== '') return existsSync(named) ? named : null
  return candidates(platform, environment).find((path) => existsSync(path)) ?? null
}

function candidates(platform: string, environment: Environment): readonly string[] {
  switch (platform) {
    case 'darwin':
      return ['/Applications', join(environment['HOME'] ?? '/', 'Applications')].flatMap((folder) =>
        MAC_PATHS.map((path) => join(folder, path)),
      )
    case 'win32':
      return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
        const folder = environment[name]
        return folder === undefined ? [] : WINDOWS_PATHS.map((path) => join(folder, ...path))
      })
    default: {
      const folders = (environment['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '')
      return LINUX_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)))
    }
  }
}

/** A profile of our own: a browser that is running already would take the window over and end at once. */
export function profileFolder(platform: string, environment: Environment, browser: string): string {
  const home = environment['HOME'] ?? environment['USERPROFILE'] ?? '.'
  // A browser from a snap may write only below its own folder.
  if (platform === 'linux' && existsSync(browser) && realpathSync(browser).includes('/snap')) {
    return join(home, 'snap', 'chromium', 'common', 'kipstow')
  }
  if (environment['KIPSTOW_DATA'] !== undefined) return join(environment['KIPSTOW_DATA'], 'browser')
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Kipstow', 'browser')
  if (platform === 'win32') return join(environment['LOCALAPPDATA'] ?? home, 'Kipstow', 'browser')
  return join(environment['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'kipstow', 'browser')
}

/** The switches of an app window. None of them weakens the browser. */
export const browserArguments = (address: string, profile: string): readonly string[] => [
  `--app=${address}`,
  `--user-data-dir=${profile}`,
  '--window-size=1280,800',
  '--no-first-run',
  '--no-default-browser-check',
]
