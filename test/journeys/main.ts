/** Runs the journeys through the built app on the loopback host, in a real browser; one line each, and a plain closing line. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { findBrowser, startBrowser } from './browser.ts'
import { FIVE } from './five.ts'
import { faultByHand, moveByHand, moveInTheSolid } from './hands.ts'
import { whatIf } from './what-if.ts'
import { startHost } from './host.ts'
import { everyScreen, germanAndSmall, screensAndThemes } from './looks.ts'
import { dialAnswers, hugeKit, solidFrames, start } from './speed.ts'
import { hugeTrip } from '../support/generators/huge-trip.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const out = join(root, 'test/journeys/out')
const only = process.argv.slice(2).filter((word) => !word.startsWith('--'))

/** So many that more than 150 units stand in the vehicle: some pieces ride in bins or lie in the bed. */
const ENOUGH_PIECES = 180

type Item = {
  readonly name: string
  readonly run: (page: Page, base: string) => Promise<string | void>
  /** Text of the trip to begin with; absent: the first sample. */
  readonly trip?: () => string
}

const ITEMS: readonly Item[] = [
  ...FIVE,
  { name: 'every screen named and in contrast', run: everyScreen },
  { name: 'every screen in three themes', run: async (page, base) => await screensAndThemes(page, base, out) },
  {
    name: 'German, the smallest window, the dialogs',
    run: async (page, base) => await germanAndSmall(page, base, out),
  },
  { name: 'what if it were colder', run: async (page, base) => await whatIf(page, base, out) },
  { name: 'a unit moved by hand', run: async (page, base) => await moveByHand(page, base, out) },
  { name: 'a unit moved in the solid drawing', run: async (page, base) => await moveInTheSolid(page, base, out) },
  { name: 'a failure dragged over the night', run: async (page, base) => await faultByHand(page, base, out) },
  { name: 'the dials answer', run: dialAnswers },
  { name: 'the start', run: start },
  { name: 'the solid drawing of 150 units', run: solidFrames, trip: () => hugeTrip(ENOUGH_PIECES, 2) },
  { name: 'the kit of 5,000 pieces', run: hugeKit, trip: () => hugeTrip(5000, 60) },
]

/** Runs one journey in a fresh profile; errors of the page and breaches of its policy fail it. */
async function runItem(browser: Browser, item: Item, base: string): Promise<string> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    acceptDownloads: true,
  })
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  const complaints: string[] = []
  page.on('pageerror', (error) => complaints.push(`page error: ${error.message}`))
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()}`)
  })
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) =>
      console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`),
    )
  })
  try {
    const said = await item.run(page, base)
    if (complaints.length > 0) throw new Error([...new Set(complaints)].slice(0, 5).join('\n'))
    return said ?? ''
  } catch (cause) {
    await page
      .screenshot({ path: join(out, `failed-${item.name.replaceAll(/[^a-z]+/gi, '-')}.png`) })
      .catch(() => undefined)
    const error = cause instanceof Error ? cause : new Error(String(cause))
    throw new Error([error.message, ...new Set(complaints)].slice(0, 6).join('\n'), { cause })
  } finally {
    await context.close()
  }
}

const chosen = ITEMS.filter(({ name }) => only.length === 0 || only.some((word) => name.includes(word)))
const found = await findBrowser()
if (!existsSync(join(root, 'dist/electron/web.js')) || !existsSync(join(root, 'dist/renderer/index.html'))) {
  console.log('The app is not built: run `npm run build` first.')
  console.log(`0 passed, ${chosen.length} failed, 0 skipped`)
  process.exit(1)
}
if (found.name === null) {
  console.log(`Journeys did not run: ${found.why}.`)
  console.log(`0 passed, 0 failed, ${chosen.length} skipped`)
  process.exit(0)
}

const browser = await startBrowser(found)
console.log(`Browser: ${found.name} ${browser.version()}`)
let failed = 0
for (const item of chosen) {
  const startMs = Date.now()
  // The host ends with its last window: each journey has one of its own.
  const host = await startHost(root, item.trip?.() ?? null)
  try {
    const said = await runItem(browser, item, await host.address())
    console.log(`ok   ${item.name} (${((Date.now() - startMs) / 1000).toFixed(1)} s)${said === '' ? '' : `: ${said}`}`)
  } catch (cause) {
    failed += 1
    console.log(`FAIL ${item.name} (${((Date.now() - startMs) / 1000).toFixed(1)} s)`)
    console.log(cause instanceof Error ? cause.message : String(cause))
  } finally {
    host.stop()
  }
}
await browser.close()
console.log(`${chosen.length - failed} passed, ${failed} failed, 0 skipped`)
process.exit(failed === 0 ? 0 : 1)
