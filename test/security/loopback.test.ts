/** The loopback host lets in its own window and nobody else. */
import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { CONTENT_SECURITY_POLICY, OPERATION_NAMES } from '../../shared/host/index.ts'
import { createSessions } from '../../electron/web/sessions.ts'
import { goodCall, knock, startLoopback } from '../support/files/loopback.ts'
import type { Loopback, Sent } from '../support/files/loopback.ts'

const RUNS = process.env['KIPSTOW_DEEP'] === undefined ? 1000 : 10_000
const SEED = Number(process.env['KIPSTOW_SEED'] ?? 20_261_125)

let loopback: Loopback
let token = ''
let port = 0
beforeAll(async () => {
  loopback = await startLoopback()
  port = loopback.web.port
  token = loopback.sessions.exchange(loopback.sessions.newCode()) ?? ''
})
afterAll(() => loopback.web.close())

const withHeaders = (sent: Sent, headers: Readonly<Record<string, string | undefined>>): Sent => ({
  ...sent,
  headers: Object.fromEntries(
    Object.entries({ ...sent.headers, ...headers }).filter((each): each is [string, string] => each[1] !== undefined),
  ),
})

describe('the door', () => {
  it('lets in the window that has the token', async () => {
    const { status, body, headers } = await knock(port, goodCall(port, token))
    expect(status).toBe(200)
    expect(JSON.parse(body)).toMatchObject({ ok: true, value: { kind: 'loopback' } })
    expect(headers['content-security-policy']).toBe(CONTENT_SECURITY_POLICY)
  })

  it('serves the page and its files with the strict policy, and nothing beside them', async () => {
    const host = `127.0.0.1:${port}`
    const page = await knock(port, { method: 'GET', path: '/', headers: { host }, body: null })
    expect([page.status, page.headers['content-security-policy']]).toEqual([200, CONTENT_SECURITY_POLICY])
    expect(page.headers['x-content-type-options']).toBe('nosniff')
    for (const path of [
      '/../package.json',
      '/%2e%2e/package.json',
      '//etc/passwd',
      '/assets/',
      '/assets/a.js?x',
      '/assets\\a.js',
      '/ASSETS/A.JS',
      '/a.js%00',
      '/index.html/',
    ]) {
      const { status } = await knock(port, { method: 'GET', path, headers: { host }, body: null })
      expect(status, path).toBe(404)
    }
  })

  it(
    `accepts none of ${RUNS} requests with a wrong token, host, origin, method, path, type or size`,
    { timeout: 600_000 },
    async () => {
      const text = fc.string({
        minLength: 0,
        maxLength: 60,
        unit: fc.integer({ min: 33, max: 126 }).map((code) => String.fromCharCode(code)),
      })
      const header = (allowed: string): fc.Arbitrary<string> =>
        fc
          .oneof(
            text,
            fc.constantFrom(
              '',
              'null',
              '*',
              'localhost',
              `localhost:${port}`,
              `0.0.0.0:${port}`,
              `[::1]:${port}`,
              `127.0.0.1`,
              `127.0.0.1:${port + 1}`,
              `127.1:${port}`,
              'evil.example',
              `127.0.0.1:${port}.evil.example`,
              `http://localhost:${port}`,
              `https://127.0.0.1:${port}`,
              `http://127.0.0.1:${port}/`,
              'file://',
              'app://planner',
            ),
            fc
              .nat(allowed.length - 1)
              .map((at) => `${allowed.slice(0, at)}${allowed.charAt(at) === 'x' ? 'y' : 'x'}${allowed.slice(at + 1)}`),
          )
          .filter((value) => value !== allowed)
      const good = goodCall(port, token)
      const wrong = fc.oneof(
        header(token).map((value) => withHeaders(good, { 'x-kipstow-token': value })),
        fc.constant(withHeaders(good, { 'x-kipstow-token': undefined })),
        header(`127.0.0.1:${port}`).map((value) => withHeaders(good, { host: value })),
        header(`http://127.0.0.1:${port}`).map((value) => withHeaders(good, { origin: value })),
        fc.constant(withHeaders(good, { origin: undefined })),
        fc.constantFrom('cross-site', 'same-site').map((value) => withHeaders(good, { 'sec-fetch-site': value })),
        fc
          .constantFrom('GET', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'HEAD', 'POSTS')
          .map((method) => ({ ...good, method, body: null })),
        text
          .filter((path) => !OPERATION_NAMES.some((name) => name === path))
          .map((path) => ({ ...good, path: `/call/${encodeURI(path)}` })),
        fc
          .constantFrom(
            '/',
            '/exchange/',
            '/call',
            '/call/',
            '/call/readHostInfo?',
            '/call/readHostInfo/',
            '/call/readhostinfo',
            '/call/__proto__',
            '/call/constructor',
            '/CALL/readHostInfo',
            '//call/readHostInfo',
          )
          .map((path) => ({ ...good, path })),
        fc
          .constantFrom(
            'text/plain',
            'application/x-www-form-urlencoded',
            'multipart/form-data',
            'application/json; charset=utf-8',
          )
          .map((type) => withHeaders(good, { 'content-type': type })),
        fc
          .constantFrom('9999999999', '100663297', '-1', '1e3', '0x2')
          .map((length) => withHeaders({ ...good, body: null }, { 'content-length': length })),
        fc.constant(
          withHeaders(
            { ...good, path: '/exchange', body: JSON.stringify({ code: 'x'.repeat(300) }) },
            { 'content-length': '311' },
          ),
        ),
        text.map((code) => {
          const body = JSON.stringify({ code })
          return withHeaders(
            { ...good, path: '/exchange', body },
            { 'content-length': String(Buffer.byteLength(body)) },
          )
        }),
        fc
          .constantFrom('{', '', 'null x', '\u0000', '{"a":1e}')
          .map((body) => ({ ...goodCall(port, token, 'readHostInfo', body) })),
      )
      const accepted: string[] = []
      let asked = 0
      await fc.assert(
        fc.asyncProperty(wrong, async (sent) => {
          asked += 1
          const answer = await knock(port, sent)
          if (answer.status >= 200 && answer.status < 300) accepted.push(JSON.stringify(sent))
        }),
        { numRuns: RUNS, seed: SEED, endOnFailure: true },
      )
      console.log(`loopback fuzz: ${asked} requests, seed ${SEED}, ${accepted.length} accepted`)
      expect(accepted).toEqual([])
      expect(asked).toBe(RUNS)
      expect(loopback.crashes).toEqual([])
      expect((await knock(port, goodCall(port, token))).status).toBe(200)
    },
  )

  it('closes what is no HTTP, and raw lines that smuggle a second request', async () => {
    const raw = (bytes: string): Promise<string> =>
      new Promise((resolve) => {
        const socket = connect(port, '127.0.0.1', () => socket.write(bytes))
        let answer = ''
        socket.on('data', (chunk) => (answer += chunk.toString('latin1')))
        socket.on('close', () => resolve(answer))
        socket.on('error', () => resolve(answer))
      })
    const host = `Host: 127.0.0.1:${port}\r\n`
    for (const bytes of [
      'SSH-2.0-x\r\n\r\n',
      `GET http://127.0.0.1:${port}/ HTTP/1.1\r\n${host}Connection: close\r\n\r\n`,
      `CONNECT evil.example:443 HTTP/1.1\r\n${host}\r\n`,
      `GET / HTTP/1.1\r\n${host}Upgrade: websocket\r\nConnection: Upgrade\r\n\r\n`,
      `POST /call/readHostInfo HTTP/1.1\r\n${host}Content-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n`,
      `GET / HTTP/1.1\r\n${host}Host: evil.example\r\nConnection: close\r\n\r\n`,
      `GET / HTTP/1.1\r\nX: ${'y'.repeat(10_000)}\r\n\r\n`,
    ]) {
      expect(await raw(bytes), JSON.stringify(bytes.slice(0, 60))).not.toMatch(/^HTTP\/1\.1 2/)
    }
  })

  it('listens on 127.0.0.1 only', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter(({ internal, family }) => !internal && family === 'IPv4')
    for (const { address } of others) {
      const reached = await new Promise<boolean>((resolve) => {
        const socket = connect({ host: address, port, timeout: 1000 }, () => resolve(true))
        socket.on('error', () => resolve(false))
        socket.on('timeout', () => resolve(false))
      })
      expect(reached, address).toBe(false)
    }
    const six = await new Promise<boolean>((resolve) => {
      const socket = connect({ host: '::1', port }, () => resolve(true))
      socket.on('error', () => resolve(false))
    })
    expect(six).toBe(false)
  })

  it('closes its port when it ends', async () => {
    const other = await startLoopback()
    await other.web.close()
    const { status } = await knock(other.web.port, goodCall(other.web.port, 'x'))
    expect(status).toBe(0)
  })
})

describe('the one-time code', () => {
  it('works once', () => {
    const sessions = createSessions(() => 0)
    const code = sessions.newCode()
    expect(sessions.exchange(code)).not.toBeNull()
    expect(sessions.exchange(code)).toBeNull()
  })

  it('works for 60 s', () => {
    let nowS = 0
    const sessions = createSessions(() => nowS)
    const code = sessions.newCode()
    nowS = 60.5
    expect(sessions.exchange(code)).toBeNull()
    const later = sessions.newCode()
    nowS = 119
    expect(sessions.exchange(later)).not.toBeNull()
  })

  it('is given up after five wrong ones and when a new one is made', () => {
    const sessions = createSessions(() => 0)
    const code = sessions.newCode()
    for (let wrong = 0; wrong < 5; wrong += 1) expect(sessions.exchange(`x${wrong}`)).toBeNull()
    expect(sessions.exchange(code)).toBeNull()
    const old = sessions.newCode()
    sessions.newCode()
    expect(sessions.exchange(old)).toBeNull()
  })

  it('is traded for a token over the wire', async () => {
    const body = JSON.stringify({ code: loopback.sessions.newCode() })
    const { path: _, ...rest } = goodCall(port, 'none', 'x', body)
    const answer = await knock(port, { ...rest, path: '/exchange' })
    expect(answer.status).toBe(200)
    const { token: fresh } = JSON.parse(answer.body)
    expect((await knock(port, goodCall(port, fresh))).status).toBe(200)
    expect((await knock(port, { ...rest, path: '/exchange' })).status).toBe(401)
  })
})

describe('a window that is gone', () => {
  it('is noticed half a minute after its last wait ended, and its token is void', () => {
    let nowS = 0
    const sessions = createSessions(() => nowS)
    const open = sessions.exchange(sessions.newCode()) ?? ''
    sessions.began(open)
    nowS = 1000
    expect(sessions.sweep()).toEqual([])
    sessions.ended(open)
    nowS += 20
    expect(sessions.sweep()).toEqual([])
    sessions.began(open)
    sessions.ended(open)
    nowS += 31
    expect(sessions.sweep()).toEqual([open])
    expect([sessions.has(open), sessions.count(), sessions.everOpened()]).toEqual([false, 0, true])
  })

  it('ends its wait at once when the connection closes', async () => {
    const controller = new AbortController()
    const { headers, path, body } = goodCall(port, token, 'nextEvent')
    const asked = fetch(`http://127.0.0.1:${port}${path}`, {
      method: 'POST',
      headers: {
        'content-type': headers['content-type'] ?? '',
        origin: headers['origin'] ?? '',
        'x-kipstow-token': token,
      },
      body,
      signal: controller.signal,
    })
    controller.abort()
    await expect(asked).rejects.toThrow()
    expect((await knock(port, goodCall(port, token))).status).toBe(200)
  })
})
