/** Who may come in: one rule after the other, each refusal without a word about why. Pure, so that it can be fuzzed. */
import { createHash, timingSafeEqual } from 'node:crypto'
import { CALL_PATH, EXCHANGE_PATH, OPERATION_NAMES, TOKEN_HEADER } from '../../shared/host/index.ts'

/** Most that one message may hold, bytes: a trip of 32 MiB as base64 and room for its plan. */
export const LARGEST_CALL_BYTES = 96 * 1024 * 1024
/** A code in JSON. */
const LARGEST_EXCHANGE_BYTES = 256
const LONGEST_PATH = 200

export type Knock = {
  readonly method: string
  /** As sent: path and query, not decoded. */
  readonly url: string
  /** Each header with all its values, as `headersDistinct` gives them. */
  readonly headers: Readonly<Record<string, readonly string[] | undefined>>
}

export type Admission =
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'exchange'; readonly limitBytes: number }
  | { readonly kind: 'call'; readonly operation: string; readonly token: string; readonly limitBytes: number }
  | { readonly kind: 'refused'; readonly status: 400 | 401 | 403 | 404 | 405 | 411 | 413 | 415 }

export type DoorSetting = {
  readonly port: number
  readonly hasFile: (path: string) => boolean
  readonly hasToken: (token: string) => boolean
}

const refused = (status: Extract<Admission, { kind: 'refused' }>['status']): Admission => ({ kind: 'refused', status })

/** Headers that decide something here; one that comes twice is a trick. */
const DECISIVE = ['host', 'origin', 'sec-fetch-site', 'content-type', 'content-length', TOKEN_HEADER] as const

export function admit(knock: Knock, setting: DoorSetting): Admission {
  const own = `127.0.0.1:${setting.port}`
  const { method, url, headers } = knock
  if (DECISIVE.some((name) => (headers[name]?.length ?? 0) > 1)) return refused(400)
  const header = (name: string): string | undefined => headers[name]?.[0]
  // The name in the Host header is what a rebound domain cannot fake.
  if (header('host') !== own) return refused(403)
  const origin = header('origin')
  if (origin !== undefined && origin !== `http://${own}`) return refused(403)
  const site = header('sec-fetch-site')
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return refused(403)
  if (url.length > LONGEST_PATH) return refused(404)
  if (method === 'GET') return setting.hasFile(url) ? { kind: 'file', path: url } : refused(404)
  if (method !== 'POST') return refused(405)
  if (origin === undefined) return refused(403)
  return admitPost(url, header, setting)
}

function admitPost(url: string, header: (name: string) => string | undefined, setting: DoorSetting): Admission {
  const operation = url.startsWith(CALL_PATH) ? url.slice(CALL_PATH.length) : null
  const known = operation === null ? url === EXCHANGE_PATH : OPERATION_NAMES.some((name) => name === operation)
  if (!known) return refused(404)
  if (header('content-type') !== 'application/json') return refused(415)
  if (header('content-encoding') !== undefined || header('transfer-encoding') !== undefined) return refused(411)
  const limitBytes = operation === null ? LARGEST_EXCHANGE_BYTES : LARGEST_CALL_BYTES
  const length = header('content-length')
  if (length === undefined || !/^\d{1,10}$/.test(length)) return refused(411)
  if (Number(length) > limitBytes) return refused(413)
  if (operation === null) return { kind: 'exchange', limitBytes }
  const token = header(TOKEN_HEADER)
  if (token === undefined || !setting.hasToken(token)) return refused(401)
  return { kind: 'call', operation, token, limitBytes }
}

/** Takes as long for a near miss as for any other. */
export function sameSecret(given: string, secret: string): boolean {
  const hash = (text: string): Buffer => createHash('sha256').update(text).digest()
  return timingSafeEqual(hash(given), hash(secret))
}
