/** A loopback host in this process, over a disk in memory, with a raw way to knock at it. */
import { request } from 'node:http'
import { createHost } from '../../../shared/host/index.ts'
import { startServer } from '../../../electron/web/server.ts'
import type { WebHost } from '../../../electron/web/server.ts'
import { createSessions } from '../../../electron/web/sessions.ts'
import type { Sessions } from '../../../electron/web/sessions.ts'
import type { PageBundle } from '../../../electron/files/page-bundle.ts'
import { emptyDisk, hostDouble } from './host-ports.ts'
import type { HostDouble } from './host-ports.ts'

export type Loopback = {
  readonly web: WebHost
  readonly sessions: Sessions
  readonly double: HostDouble
  readonly clock: { nowS: number }
  readonly crashes: string[]
}

const page: PageBundle = new Map(
  [
    ['/', 'text/html; charset=utf-8'],
    ['/index.html', 'text/html; charset=utf-8'],
    ['/assets/a.js', 'text/javascript; charset=utf-8'],
  ].map(([path, mediaType]) => [path ?? '', { bytes: Buffer.from(`file ${path}`), mediaType: mediaType ?? '' }]),
)

export async function startLoopback(): Promise<Loopback> {
  const clock = { nowS: 0 }
  const sessions = createSessions(() => clock.nowS)
  const double = hostDouble({ disk: emptyDisk() })
  const crashes: string[] = []
  const web = await startServer({
    host: createHost(double.ports, null),
    page,
    sessions,
    onGone: double.waits.forget,
    onCrash: (operation) => crashes.push(operation),
  })
  return { web, sessions, double, clock, crashes }
}

export type Sent = {
  readonly method: string
  readonly path: string
  readonly headers: Readonly<Record<string, string>>
  readonly body: string | null
}

export type Answer = {
  readonly status: number
  readonly headers: NodeJS.Dict<string | string[]>
  readonly body: string
}

/** Status 0: the connection was closed without an answer. */
export function knock(port: number, { method, path, headers, body }: Sent): Promise<Answer> {
  return new Promise((resolve) => {
    const sent = request(
      { host: '127.0.0.1', port, method, path, headers, setHost: false, agent: false },
      (response) => {
        let text = ''
        response.setEncoding('utf8')
        response.on('data', (chunk: string) => (text += chunk))
        response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }))
        response.on('error', () => resolve({ status: 0, headers: {}, body: '' }))
      },
    )
    sent.on('error', () => resolve({ status: 0, headers: {}, body: '' }))
    if (body !== null) sent.write(body)
    sent.end()
  })
}

export const goodCall = (port: number, token: string, operation = 'readHostInfo', body = '{}'): Sent => ({
  method: 'POST',
  path: `/call/${operation}`,
  headers: {
    host: `127.0.0.1:${port}`,
    origin: `http://127.0.0.1:${port}`,
    'content-type': 'application/json',
    'content-length': String(Buffer.byteLength(body)),
    'x-kipstow-token': token,
  },
  body,
})
