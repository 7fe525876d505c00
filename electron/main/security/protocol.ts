/** `app://planner/…`: our own bundle by exact path, and nothing else. No `file:`, no network. */
import type { CustomScheme, Protocol } from 'electron'
import { PAGE_HEADERS } from '../../../shared/host/index.ts'
import type { PageBundle } from '../../files/index.ts'

export const APP_ORIGIN = 'app://planner'

export const APP_SCHEME: CustomScheme = {
  scheme: 'app',
  privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true },
}

export function servePage(protocol: Pick<Protocol, 'handle'>, page: PageBundle): void {
  protocol.handle('app', (request) => answer(page, request))
}

/** The path is compared as it was sent: nothing is decoded, so nothing can escape. */
export function answer(page: PageBundle, request: Pick<Request, 'method' | 'url'>): Response {
  if (request.method !== 'GET') return refuse(405)
  if (!request.url.startsWith(`${APP_ORIGIN}/`)) return refuse(403)
  const path = request.url.slice(APP_ORIGIN.length).replace(/#.*$/s, '')
  const file = page.get(path)
  if (file === undefined) return refuse(404)
  return new Response(Buffer.from(file.bytes), {
    status: 200,
    headers: { ...PAGE_HEADERS, 'content-type': file.mediaType },
  })
}

const refuse = (status: number): Response => new Response(null, { status, headers: { ...PAGE_HEADERS } })
