/** The loopback host as a program of its own, over a small root and a home that nobody else uses. */
import { fork } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { OperationInput, OperationName, OperationOutput } from '../../../shared/host/index.ts'
import type { Result } from '../../../shared/result/index.ts'
import { goodCall, knock } from './loopback.ts'

const project = join(import.meta.dirname, '../../..')

export type WebProgram = {
  readonly home: string
  readonly child: ChildProcess
  /** The next address it says. */
  readonly address: () => Promise<string>
  /** Its exit code; null where a signal ended it. */
  readonly ended: Promise<number | null>
}

/** A root with a page of one line; the home of an earlier run and a bundle that starts faster may be given. */
export function startWebProgram(
  trip: string | null,
  home = mkdtempSync(join(tmpdir(), 'kipstow-web-')),
  bundle: string | null = null,
): WebProgram {
  const root = join(home, 'root')
  for (const folder of ['dist/renderer', 'assets/samples']) mkdirSync(join(root, folder), { recursive: true })
  writeFileSync(join(root, 'package.json'), '{"version": "1.2.3"}')
  writeFileSync(join(root, 'dist/renderer/index.html'), '<!doctype html><title>page</title>')
  const child = fork(bundle ?? join(project, 'electron/web/main.ts'), [root, ...(trip === null ? [] : [trip])], {
    cwd: project,
    execArgv: bundle === null ? ['--import', 'tsx'] : [],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    env: { ...process.env, KIPSTOW_DATA: join(home, 'data'), KIPSTOW_TRIPS: join(home, 'trips') },
  })
  const said: string[] = []
  const asked: ((address: string) => void)[] = []
  child.on('message', (message: unknown) => {
    const address = String(Reflect.get(Object(message), 'address'))
    const next = asked.shift()
    if (next === undefined) said.push(address)
    else next(address)
  })
  return {
    home,
    child,
    address: () => {
      const there = said.shift()
      return there === undefined ? new Promise((resolve) => asked.push(resolve)) : Promise.resolve(there)
    },
    ended: new Promise((resolve) => child.once('exit', (code) => resolve(code))),
  }
}

export type Page = {
  readonly port: number
  readonly call: <N extends OperationName>(name: N, input: OperationInput<N>) => Promise<Result<OperationOutput<N>>>
}

/** Does what a page does with its address: trades the code for a token. Null where the code is refused. */
export async function openPage(address: string): Promise<Page | null> {
  const url = new URL(address)
  const port = Number(url.port)
  const body = JSON.stringify({ code: url.hash.replace('#code=', '') })
  const origin = `http://127.0.0.1:${port}`
  const headers = {
    host: `127.0.0.1:${port}`,
    origin,
    'content-type': 'application/json',
    'content-length': String(Buffer.byteLength(body)),
  }
  const traded = await knock(port, { method: 'POST', path: '/exchange', headers, body })
  if (traded.status !== 200) return null
  const token = String(JSON.parse(traded.body).token)
  return {
    port,
    call: async (name, input) => {
      const answer = await knock(port, goodCall(port, token, name, JSON.stringify(input)))
      if (answer.status !== 200) throw new Error(`${name}: ${answer.status}`)
      return JSON.parse(answer.body)
    },
  }
}
