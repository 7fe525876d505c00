/** Finds a browser for the journeys: one named by KIPSTOW_BROWSER, an installed one, else the packaged Chromium (Linux x64 only). */
import { spawnSync } from 'node:child_process'
import { createReadStream, createWriteStream, existsSync } from 'node:fs'
import { chmod, mkdir, mkdtemp, rename, rm } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { fileURLToPath } from 'node:url'
import { createBrotliDecompress } from 'node:zlib'
import { chromium } from 'playwright-core'
import type { Browser } from 'playwright-core'
import { extract } from 'tar'

export type FoundBrowser = {
  readonly name: string
  readonly executablePath: string
  readonly env: Readonly<Record<string, string>>
}

const INSTALLED: Readonly<Record<string, readonly string[]>> = {
  linux: ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
    'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
}

/** Our own switches, never the package's: those turn web security off. */
const SWITCHES = [
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--hide-scrollbars',
  '--force-color-profile=srgb',
]

/** A browser that can be started here, or why there is none. */
export async function findBrowser(): Promise<FoundBrowser | { readonly name: null; readonly why: string }> {
  const named = process.env['KIPSTOW_BROWSER']
  if (named !== undefined && named !== '') return { name: named, executablePath: named, env: {} }
  for (const candidate of INSTALLED[process.platform] ?? []) {
    const path = candidate.includes('/') || candidate.includes('\\') ? candidate : which(candidate)
    if (path !== null && existsSync(path)) return { name: candidate, executablePath: path, env: {} }
  }
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    return { name: null, why: 'no installed Chromium, Chrome or Edge, and the packaged one is for Linux x64' }
  }
  return await unpackPackaged()
}

function which(program: string): string | null {
  const found = spawnSync('which', [program], { encoding: 'utf8' })
  return found.status === 0 ? found.stdout.trim() : null
}

/** Unpacked once into the project's own cache; a second run finds it there. */
async function unpackPackaged(): Promise<FoundBrowser> {
  const packages = fileURLToPath(new URL('../../node_modules/', import.meta.url))
  const bin = join(packages, '@sparticuz/chromium/bin')
  const folder = join(packages, '.cache/kipstow-browser')
  const executablePath = join(folder, 'chromium')
  const libraries = join(folder, 'libraries')
  if (!existsSync(executablePath)) {
    await mkdir(dirname(folder), { recursive: true })
    const fresh = await mkdtemp(join(dirname(folder), 'unpacking-'))
    await pipeline(
      createReadStream(join(bin, 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(join(fresh, 'chromium')),
    )
    await chmod(join(fresh, 'chromium'), 0o755)
    await unpackTar(join(bin, 'swiftshader.tar.br'), fresh)
    await mkdir(join(fresh, 'libraries'))
    await unpackTar(join(bin, 'al2023.tar.br'), join(fresh, 'libraries'))
    // Another run may have been quicker: its copy is as good.
    if (existsSync(folder)) await rm(fresh, { recursive: true })
    else await rename(fresh, folder)
  }
  const complete = spawnSync(executablePath, ['--version'], { encoding: 'utf8' }).status === 0
  const search = [join(libraries, 'lib'), libraries, process.env['LD_LIBRARY_PATH'] ?? '']
    .filter((part) => part !== '')
    .join(':')
  return { name: 'packaged Chromium', executablePath, env: complete ? {} : { LD_LIBRARY_PATH: search } }
}

async function unpackTar(archive: string, folder: string): Promise<void> {
  await pipeline(createReadStream(archive), createBrotliDecompress(), extract({ cwd: folder }))
}

export async function startBrowser(found: FoundBrowser): Promise<Browser> {
  const root = process.getuid?.() === 0
  const inherited = Object.fromEntries(
    Object.entries(process.env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  )
  return await chromium.launch({
    executablePath: found.executablePath,
    headless: true,
    args: [...SWITCHES, ...(root ? ['--no-sandbox'] : [])],
    env: { ...inherited, ...found.env },
  })
}
