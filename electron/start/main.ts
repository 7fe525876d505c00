/**
 * `npm start [-- TRIP.json]`: builds what has changed, then opens the planner in Electron where that can run,
 * else serves the same page on 127.0.0.1 to a browser window of its own, else says the address.
 */
import { fork, spawn, spawnSync } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { browserArguments, findBrowser, profileFolder } from './find-browser.ts'
import {
  fetchElectron,
  findElectron,
  realSurroundings,
  sandboxHelper,
  whyNoDisplay,
  whyNotElectron,
} from './find-electron.ts'
import { isBuilt, rememberBuild, stampOfSources } from './stamp.ts'

/** A window that closes sooner than this with an error has failed to open, ms. */
const FAILED_START_MS = 4000

const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
const say = (line: string): void => console.log(line)

function tripFromArguments(): string | null {
  const named = process.argv.slice(2).find((argument) => !argument.startsWith('-'))
  return named === undefined ? null : resolve(process.env['INIT_CWD'] ?? process.cwd(), named)
}

function buildIfStale(): boolean {
  if (isBuilt(root)) return true
  say('Building …')
  const stamp = stampOfSources(root)
  const tsx = createRequire(import.meta.url).resolve('tsx/cli')
  const built = spawnSync(process.execPath, [tsx, join(root, 'electron/package/build.ts')], {
    cwd: root,
    stdio: 'inherit',
  })
  if (built.status !== 0) return false
  rememberBuild(root, stamp)
  return true
}

/** The binary, or why there is none. */
async function electronOrReason(): Promise<{ readonly binary: string } | { readonly reason: string }> {
  const surroundings = realSurroundings()
  const there = findElectron()
  const reason = whyNotElectron(surroundings, there === null ? null : sandboxHelper(there))
  if (reason !== null) return { reason }
  if (there !== null) return { binary: there }
  say('Fetching Electron, once …')
  const fetched = await fetchElectron(say)
  return fetched === null ? { reason: 'its binary could not be fetched' } : { binary: fetched }
}

/** True once the window has been open; false where it could not open. */
function runElectron(binary: string, trip: string | null): Promise<boolean> {
  const begun = Date.now()
  return new Promise((done) => {
    const child = spawn(binary, [join(root, 'dist/electron/main.js'), ...(trip === null ? [] : [trip])], {
      stdio: 'inherit',
    })
    child.once('error', () => done(false))
    child.once('exit', (code) => done(code === 0 || Date.now() - begun > FAILED_START_MS))
  })
}

function runLoopback(trip: string | null): void {
  const server = fork(join(root, 'dist/electron/web.js'), [root, ...(trip === null ? [] : [trip])], {
    stdio: 'inherit',
  })
  let shown = false
  server.on('message', (message) => {
    const address = readAddress(message)
    if (address === null) return
    if (shown) say(address)
    else showPage(address, server)
    shown = true
  })
  server.once('exit', (code) => process.exit(code ?? 0))
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => server.kill(signal))
}

function readAddress(message: unknown): string | null {
  if (typeof message !== 'object' || message === null || !('address' in message)) return null
  return typeof message.address === 'string' ? message.address : null
}

function showPage(address: string, server: ChildProcess): void {
  const surroundings = realSurroundings()
  const browser = findBrowser(surroundings.platform, surroundings.environment)
  const reason =
    whyNoDisplay(surroundings) ??
    (surroundings.userId === 0 ? 'a browser has no sandbox as root' : null) ??
    (browser === null ? 'no Chrome, Chromium or Edge was found' : null)
  if (reason !== null || browser === null) return askForBrowser(address, `No window here (${reason ?? ''}).`, server)
  const profile = profileFolder(surroundings.platform, surroundings.environment, browser)
  mkdirSync(profile, { recursive: true })
  const begun = Date.now()
  const window = spawn(browser, browserArguments(address, profile), { stdio: 'ignore' })
  const failed = (): void => askForBrowser(address, 'The browser did not open a window.', server)
  window.once('error', failed)
  window.once('exit', (code) => (code !== 0 && Date.now() - begun < FAILED_START_MS ? failed() : undefined))
}

/** The address holds a code that works once, for a minute; a new one for each press of Enter. */
function askForBrowser(address: string, why: string, server: ChildProcess): void {
  say(`${why} Open this within a minute in a browser on this machine; Enter makes a new address, Ctrl+C ends:`)
  say(address)
  if (process.stdin.isTTY) process.stdin.on('data', () => server.send('new-address'))
}

const trip = tripFromArguments()
if (buildIfStale()) {
  const electron = await electronOrReason()
  if ('binary' in electron) {
    if (await runElectron(electron.binary, trip)) process.exit(0)
    say('Electron did not open a window: serving the planner on this machine only.')
  } else {
    say(`Without Electron (${electron.reason}): serving the planner on this machine only.`)
  }
  runLoopback(trip)
} else {
  say('The planner could not be built; what stands above says why.')
  process.exitCode = 1
}
