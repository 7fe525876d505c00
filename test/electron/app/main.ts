/**
 * The five journeys and the window's security, in Electron itself. Where its binary or a display is missing that is said,
 * loudly, and nothing is counted: the same journeys run over the loopback host.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { _electron } from 'playwright-core'
import type { ElectronApplication, Page } from 'playwright-core'
import { findElectron, realSurroundings, sandboxHelper, whyNotElectron } from '../../../electron/start/find-electron.ts'
import { OPERATION_NAMES } from '../../../shared/host/index.ts'
import { FIVE } from '../../journeys/five.ts'

const root = join(import.meta.dirname, '../../..')
const ORIGIN = 'app://planner'

type Item = { readonly name: string; readonly run: (page: Page, app: ElectronApplication) => Promise<void> }

const demand = (holds: boolean, what: string): void => {
  if (!holds) throw new Error(what)
}

/** Numbers are those of Electron's security list. */
async function keptIn(page: Page, app: ElectronApplication): Promise<void> {
  const facts = await page.evaluate(() => ({
    origin: location.origin,
    node: ['process', 'require', 'module', 'Buffer'].filter((name) => name in globalThis),
    operations: Object.keys(Reflect.get(globalThis, 'planner') ?? {}),
  }))
  demand(facts.origin === ORIGIN, `(18) the page's origin is ${facts.origin}`)
  demand(facts.node.length === 0, `(2) the page sees ${facts.node.join(', ')}`)
  demand(facts.operations.join() === OPERATION_NAMES.join(), '(20) the bridge is not the operations')
  const reached = await page.evaluate(async () =>
    Promise.all(
      ['https://example.com/', 'http://127.0.0.1:9/', 'file:///etc/hosts'].map((url) =>
        fetch(url).then(
          () => url,
          () => '',
        ),
      ),
    ),
  )
  demand(reached.join('') === '', `(1, 6) the page reached ${reached.join(' ')}`)
  const denied = await page.evaluate(async () => (await navigator.permissions.query({ name: 'geolocation' })).state)
  demand(denied === 'denied', `(5) a permission is ${denied}`)
  await page.evaluate(() => {
    window.open('https://example.com/')
    location.assign('https://example.com/')
  })
  await page.waitForTimeout(500)
  demand(page.url().startsWith(`${ORIGIN}/`), `(13) the page went to ${page.url()}`)
  demand(app.windows().length === 1, `(14) there are ${app.windows().length} windows`)
  const sandboxed = await app.evaluate(({ app: own }) => !own.commandLine.hasSwitch('no-sandbox'))
  demand(sandboxed, '(4) the sandbox is off')
}

const ITEMS: readonly Item[] = [
  { name: 'the window is kept in', run: keptIn },
  ...FIVE.map(({ name, run }) => ({ name, run: (page: Page) => run(page, `${ORIGIN}/`) })),
]

/** Each item in an app and a home of its own. */
async function runItem(binary: string, item: Item): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'kipstow-electron-'))
  const app = await _electron.launch({
    executablePath: binary,
    args: [join(root, 'dist/electron/main.js'), `--user-data-dir=${join(home, 'user')}`],
    env: { ...process.env, KIPSTOW_DATA: join(home, 'data'), KIPSTOW_TRIPS: join(home, 'trips'), LANG: 'en_GB.UTF-8' },
  })
  try {
    const page = await app.firstWindow()
    page.setDefaultTimeout(30_000)
    await item.run(page, app)
  } finally {
    await app.close()
    rmSync(home, { recursive: true, force: true })
  }
}

const binary = findElectron()
const reason =
  whyNotElectron(realSurroundings(), binary === null ? null : sandboxHelper(binary)) ??
  (binary === null ? 'its binary is not here (npx install-electron fetches it)' : null)
if (reason !== null || binary === null) {
  console.log(`NOT RUN: the ${ITEMS.length} checks of the window in Electron: ${reason ?? ''}`)
  console.log('0 passed, 0 failed, 0 skipped')
} else {
  let failed = 0
  for (const item of ITEMS) {
    try {
      await runItem(binary, item)
      console.log(`ok   ${item.name}`)
    } catch (cause) {
      failed += 1
      console.log(`FAIL ${item.name}\n${cause instanceof Error ? cause.message : String(cause)}`)
    }
  }
  console.log(`${ITEMS.length - failed} passed, ${failed} failed, 0 skipped`)
  process.exitCode = failed === 0 ? 0 : 1
}
