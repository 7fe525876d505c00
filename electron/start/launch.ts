/**
 * What `npm start` does, over parts that a test can stand in for: build what is stale, then Electron where it can run,
 * else the same page on 127.0.0.1 in a browser window of its own, else just its address.
 */
import type { ChildProcess } from 'node:child_process'
import { join } from 'node:path'
import { browserArguments, findBrowser, profileFolder } from './find-browser.ts'
import { sandboxHelper, whyNoDisplay, whyNotElectron } from './find-electron.ts'
import type { Surroundings } from './find-electron.ts'

/** A window that closes sooner than this with an error has failed to open, ms. */
const FAILED_START_MS = 4000

type Started = Pick<ChildProcess, 'once'>
type Server = Pick<ChildProcess, 'on' | 'once' | 'kill' | 'send'>
type Signal = 'SIGINT' | 'SIGTERM'

export type LaunchParts = {
  readonly root: string
  /** Absolute; null for none. */
  readonly trip: string | null
  readonly surroundings: Surroundings
  readonly say: (line: string) => void
  /** True where everything is built. */
  readonly build: () => boolean
  readonly findElectron: () => string | null
  readonly fetchElectron: (say: (line: string) => void) => Promise<string | null>
  /** Starts a window's program; a browser's own chatter is not shown. */
  readonly open: (program: string, args: readonly string[], output: 'inherit' | 'ignore') => Started
  /** Starts the loopback host, which sends messages. */
  readonly serve: (script: string, args: readonly string[]) => Server
  readonly makeFolder: (path: string) => void
  readonly nowMs: () => number
  readonly exit: (code: number) => void
  readonly onSignal: (signal: Signal, heard: () => void) => void
  /** Null where nobody can press Enter. */
  readonly onEnter: ((pressed: () => void) => void) | null
}

export async function launch(parts: LaunchParts): Promise<void> {
  if (!parts.build()) {
    parts.say('The planner could not be built; what stands above says why.')
    return parts.exit(1)
  }
  const electron = await electronOrReason(parts)
  if ('binary' in electron) {
    if (await runElectron(parts, electron.binary)) return parts.exit(0)
    parts.say('Electron did not open a window: serving the planner on this machine only.')
  } else {
    parts.say(`Without Electron (${electron.reason}): serving the planner on this machine only.`)
  }
  runLoopback(parts)
}

/** The binary, or why there is none. */
async function electronOrReason({
  surroundings,
  findElectron,
  fetchElectron,
  say,
}: LaunchParts): Promise<{ readonly binary: string } | { readonly reason: string }> {
  const there = findElectron()
  const reason = whyNotElectron(surroundings, there === null ? null : sandboxHelper(there))
  if (reason !== null) return { reason }
  if (there !== null) return { binary: there }
  say('Fetching Electron, once …')
  const fetched = await fetchElectron(say)
  return fetched === null ? { reason: 'its binary could not be fetched' } : { binary: fetched }
}

const withTrip = (first: string, trip: string | null): readonly string[] => (trip === null ? [first] : [first, trip])

/** True once the window has been open; false where it could not open. */
function runElectron({ root, trip, open, nowMs }: LaunchParts, binary: string): Promise<boolean> {
  const begunMs = nowMs()
  return new Promise((done) => {
    const child = open(binary, withTrip(join(root, 'dist/electron/main.js'), trip), 'inherit')
    child.once('error', () => done(false))
    child.once('exit', (code: number | null) => done(code === 0 || nowMs() - begunMs > FAILED_START_MS))
  })
}

function runLoopback(parts: LaunchParts): void {
  const { root, trip, say, serve, exit, onSignal } = parts
  const server = serve(join(root, 'dist/electron/web.js'), withTrip(root, trip))
  let shown = false
  server.on('message', (message: unknown) => {
    const address = readAddress(message)
    if (address === null) return
    if (shown) say(address)
    else showPage(parts, address, server)
    shown = true
  })
  server.once('exit', (code: number | null) => exit(code ?? 0))
  for (const signal of ['SIGINT', 'SIGTERM'] as const) onSignal(signal, () => server.kill(signal))
}

function readAddress(message: unknown): string | null {
  if (typeof message !== 'object' || message === null || !('address' in message)) return null
  return typeof message.address === 'string' ? message.address : null
}

function showPage(parts: LaunchParts, address: string, server: Server): void {
  const { surroundings, open, makeFolder, nowMs } = parts
  const { platform, environment, userId } = surroundings
  const browser = findBrowser(platform, environment)
  const reason =
    whyNoDisplay(surroundings) ??
    (userId === 0 ? 'a browser has no sandbox as root' : null) ??
    (browser === null ? 'no Chrome, Chromium or Edge was found' : null)
  if (reason !== null || browser === null)
    return askForBrowser(parts, address, `No window here (${reason ?? ''}).`, server)
  const profile = profileFolder(platform, environment, browser)
  makeFolder(profile)
  const begunMs = nowMs()
  const window = open(browser, browserArguments(address, profile), 'ignore')
  const failed = (): void => askForBrowser(parts, address, 'The browser did not open a window.', server)
  window.once('error', failed)
  window.once('exit', (code: number | null) =>
    code !== 0 && nowMs() - begunMs < FAILED_START_MS ? failed() : undefined,
  )
}

/** The address holds a code that works once, for a minute; a new one for each press of Enter. */
function askForBrowser({ say, onEnter }: LaunchParts, address: string, why: string, server: Server): void {
  say(`${why} Open this within a minute in a browser on this machine; Enter makes a new address, Ctrl+C ends:`)
  say(address)
  onEnter?.(() => server.send('new-address'))
}
