/** The loopback host: our page and our operations on 127.0.0.1, for one browser window. */
import { createServer } from 'node:http'
import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Host } from '../../shared/host/index.ts'
import { PAGE_HEADERS } from '../../shared/host/index.ts'
import { invariant } from '../../shared/result/index.ts'
import type { PageBundle } from '../files/index.ts'
import { admit } from './door.ts'
import type { Admission } from './door.ts'
import { readBody } from './read-body.ts'
import type { Sessions } from './sessions.ts'

/** A request must be here whole within this, ms; answers may take longer (an open wait takes 20 s). */
const REQUEST_TIMEOUT_MS = 30_000
const HEADERS_TIMEOUT_MS = 5000
const KEEP_ALIVE_MS = 5000
const MOST_CONNECTIONS = 64
const LARGEST_HEADER_BYTES = 8192

export type WebHost = {
  readonly port: number
  readonly close: () => Promise<void>
}

type Setting = {
  readonly host: Host
  readonly page: PageBundle
  readonly sessions: Sessions
  /** A window let go of its wait for the next event. */
  readonly onGone: (token: string) => void
  /** A handler threw: a programming error, told without the trip's content. */
  readonly onCrash: (operation: string, cause: unknown) => void
}

export async function startServer(setting: Setting): Promise<WebHost> {
  const server = createServer({ maxHeaderSize: LARGEST_HEADER_BYTES, insecureHTTPParser: false })
  server.requestTimeout = REQUEST_TIMEOUT_MS
  server.headersTimeout = HEADERS_TIMEOUT_MS
  server.keepAliveTimeout = KEEP_ALIVE_MS
  server.maxConnections = MOST_CONNECTIONS
  const port = await listen(server)
  server.on('request', (request, response) => void answer(setting, port, request, response))
  server.on('clientError', (_error, socket) => socket.destroy())
  server.on('upgrade', (_request, socket) => socket.destroy())
  server.on('connect', (_request, socket) => socket.destroy())
  return {
    port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject)
    server.listen({ host: '127.0.0.1', port: 0, exclusive: true }, () => {
      const address: AddressInfo | string | null = server.address()
      invariant(address !== null && typeof address === 'object', 'a TCP server has a port')
      resolve(address.port)
    })
  })
}

async function answer(
  setting: Setting,
  port: number,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const { page, sessions } = setting
  const knock = { method: request.method ?? '', url: request.url ?? '', headers: request.headersDistinct }
  const admission = admit(knock, { port, hasFile: (path) => page.has(path), hasToken: sessions.has })
  switch (admission.kind) {
    case 'refused':
      return refuse(response, admission.status)
    case 'file': {
      const file = page.get(admission.path)
      invariant(file !== undefined, 'the door let in only files that are there')
      return send(response, 200, file.mediaType, file.bytes)
    }
    case 'exchange':
      return exchange(setting, admission.limitBytes, request, response)
    case 'call':
      return call(setting, admission, request, response)
  }
}

async function exchange(
  setting: Setting,
  limitBytes: number,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const body = await readBody(request, limitBytes)
  const code = typeof body === 'object' && body !== null && 'code' in body ? body.code : null
  const token = typeof code === 'string' ? setting.sessions.exchange(code) : null
  return token === null ? refuse(response, 401) : sendJson(response, { token })
}

async function call(
  { host, sessions, onGone, onCrash }: Setting,
  { operation, token, limitBytes }: Extract<Admission, { kind: 'call' }>,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  sessions.began(token)
  response.once('close', () => {
    sessions.ended(token)
    if (!response.writableFinished && operation === 'nextEvent') onGone(token)
  })
  try {
    const input = await readBody(request, limitBytes)
    if (input === undefined) return refuse(response, 400)
    sendJson(response, await host.handle(token, operation, input))
  } catch (cause) {
    onCrash(operation, cause)
    sendJson(response, { ok: false, problem: { code: 'host-crashed', path: [], params: { operation } } })
  }
}

const sendJson = (response: ServerResponse, value: unknown): void =>
  send(response, 200, 'application/json; charset=utf-8', Buffer.from(JSON.stringify(value)))

function send(response: ServerResponse, status: number, mediaType: string, bytes: Uint8Array): void {
  response.writeHead(status, { ...PAGE_HEADERS, 'content-type': mediaType, 'content-length': bytes.length })
  response.end(bytes)
}

/** Nothing is said, nothing more is read. */
function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, { ...PAGE_HEADERS, 'content-length': 0, connection: 'close' })
  response.end()
}
