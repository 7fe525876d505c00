/** Whether Electron can open a window here, and where its binary is. Never imports `electron`: that would start a download. */
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, readFileSync, statSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

/** Longest time given to fetching the binary, ms. */
const FETCH_MS = 60_000
const TICK_MS = 5000
const SETUID_ROOT_MODE = 0o4000

export type Surroundings = {
  readonly platform: string
  readonly environment: Readonly<Record<string, string | undefined>>
  readonly userId: number | undefined
  /** First line of a small file; null where there is none. */
  readonly readLine: (path: string) => string | null
  readonly canUnshare: () => boolean
}

/** Why no window can open here; null where it can. */
export function whyNoDisplay({ platform, environment }: Surroundings): string | null {
  if (platform === 'win32' || platform === 'darwin') return null
  return environment['DISPLAY'] || environment['WAYLAND_DISPLAY'] ? null : 'there is no display'
}

/** Why Electron must not be started here; null where it may be. Its sandbox is never switched off. */
export function whyNotElectron(surroundings: Surroundings, helper: string | null): string | null {
  const noDisplay = whyNoDisplay(surroundings)
  if (noDisplay !== null) return noDisplay
  if (surroundings.platform !== 'linux') return null
  if (surroundings.userId === 0) return 'it does not run as root'
  if (helper !== null && isSetuidRoot(helper)) return null
  return sandboxWorks(surroundings) ? null : 'this system gives it no sandbox'
}

/** Unprivileged user namespaces, which the sandbox is made of. */
function sandboxWorks({ readLine, canUnshare }: Surroundings): boolean {
  if (readLine('/proc/sys/kernel/unprivileged_userns_clone') === '0') return false
  if (readLine('/proc/sys/kernel/apparmor_restrict_unprivileged_userns') === '1') return false
  if (readLine('/proc/sys/user/max_user_namespaces') === '0') return false
  return canUnshare()
}

function isSetuidRoot(path: string): boolean {
  if (!existsSync(path)) return false
  const { uid, mode } = statSync(path)
  return uid === 0 && (mode & SETUID_ROOT_MODE) !== 0
}

export function realSurroundings(): Surroundings {
  return {
    platform: process.platform,
    environment: process.env,
    userId: process.getuid?.(),
    readLine: (path) => (existsSync(path) ? readFileSync(path, 'utf8').trim() : null),
    canUnshare: () => {
      const tried = spawnSync('unshare', ['--user', '--map-root-user', '--net', 'true'], {
        stdio: 'ignore',
        timeout: 2000,
      })
      return tried.error === undefined ? tried.status === 0 : true
    },
  }
}

const packageFolder = (): string => dirname(createRequire(import.meta.url).resolve('electron/package.json'))

/** The binary as the package's own `path.txt` names it; null where it has not been fetched. */
export function findElectron(folder: string = packageFolder()): string | null {
  const note = join(folder, 'path.txt')
  if (!existsSync(note)) return null
  const dist = process.env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(folder, 'dist')
  const binary = join(dist, readFileSync(note, 'utf8').trim())
  return existsSync(binary) ? binary : null
}

export const sandboxHelper = (binary: string): string => join(dirname(binary), 'chrome-sandbox')

/** Runs the package's own installer, with a word every few seconds; null where it fails or takes too long. */
export function fetchElectron(
  say: (line: string) => void,
  folder: string = packageFolder(),
  limitMs: number = FETCH_MS,
  tickMs: number = TICK_MS,
): Promise<string | null> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(folder, 'install.js')], { stdio: 'ignore' })
    let waitedMs = 0
    const ticking = setInterval(() => {
      waitedMs += tickMs
      say(`Fetching Electron … ${waitedMs / 1000} s of at most ${limitMs / 1000} s`)
    }, tickMs)
    const limit = setTimeout(() => child.kill(), limitMs)
    const finish = (): void => {
      clearInterval(ticking)
      clearTimeout(limit)
      resolve(findElectron(folder))
    }
    child.once('error', finish)
    child.once('exit', finish)
  })
}
