/** The loopback host as a program: `node dist/electron/web.js ROOT [TRIP]`. Says its address, stops when its window is gone. */
import { resolve } from 'node:path'
import { performance } from 'node:perf_hooks'
import { CODE_IN_FRAGMENT, createHost } from '../../shared/host/index.ts'
import { createNodePorts, createWaits, readPageBundle } from '../files/index.ts'
import { startServer } from './server.ts'
import { createSessions } from './sessions.ts'

const MS_PER_S = 1000
/** How often windows are looked after, ms. */
const LOOK_MS = 1000

const [root, trip] = process.argv.slice(2)
if (root === undefined) throw new Error('the planner’s own folder is missing: node web.js ROOT [TRIP]')

const waits = createWaits()
const ports = await createNodePorts({ kind: 'loopback', root, events: waits, dialogs: null, desktop: null })
const host = createHost(ports, trip === undefined ? null : resolve(trip))
const sessions = createSessions(() => performance.now() / MS_PER_S)
const server = await startServer({
  host,
  page: readPageBundle(resolve(root, 'dist/renderer')),
  sessions,
  onGone: waits.forget,
  onCrash: (operation, cause) => {
    ports.log.write('handler-crashed', { operation, kind: cause instanceof Error ? cause.name : 'unknown' })
    console.error(cause)
  },
})

/** To the launcher that started us, or to the terminal. */
function sayAddress(): void {
  const address = `http://127.0.0.1:${server.port}/#${CODE_IN_FRAGMENT}${sessions.newCode()}`
  if (process.send === undefined) console.log(address)
  else process.send({ kind: 'address', address })
}

let stopping = false
async function stop(): Promise<void> {
  if (stopping) return
  stopping = true
  clearInterval(looking)
  await server.close()
  for (const token of waits.callers()) await host.release(token)
  process.exit(0)
}

const looking = setInterval(() => {
  void (async () => {
    for (const token of sessions.sweep()) await host.release(token)
    if (sessions.everOpened() && sessions.count() === 0) await stop()
  })()
}, LOOK_MS)

process.on('SIGINT', () => void stop())
process.on('SIGTERM', () => void stop())
process.on('disconnect', () => void stop())
process.on('message', (message) => (message === 'new-address' ? sayAddress() : undefined))
ports.log.write('started', { host: 'loopback' })
sayAddress()
