/** The built page: a fixed list of files, read once, so that no path from outside ever reaches the file system. */
import { readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { invariant } from '../../shared/result/index.ts'

export type PageFile = { readonly bytes: Uint8Array; readonly mediaType: string }

/** From a path such as `/index.html` to its file; `/` is the page itself. */
export type PageBundle = ReadonlyMap<string, PageFile>

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  ico: 'image/x-icon',
  woff: 'font/woff',
  woff2: 'font/woff2',
  wasm: 'application/wasm',
  webmanifest: 'application/manifest+json',
}

export function readPageBundle(folder: string): PageBundle {
  const bundle = new Map<string, PageFile>()
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue
    const path = join(entry.parentPath, entry.name)
    const mediaType = MEDIA_TYPES[entry.name.slice(entry.name.lastIndexOf('.') + 1)]
    if (mediaType === undefined) continue
    const url = `/${path.slice(folder.length).replaceAll('\\', '/').replace(/^\/+/, '')}`
    bundle.set(url, { bytes: readFileSync(path), mediaType })
  }
  const index = bundle.get('/index.html')
  invariant(index !== undefined, 'the page is not built: run npm run build')
  bundle.set('/', index)
  return bundle
}
