/** `npm start`: which window comes up where, and what is said where none can. */
import { EventEmitter } from 'node:events'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { launch } from '../../../electron/start/launch.ts'
import type { LaunchParts } from '../../../electron/start/launch.ts'

const base = mkdtempSync(join(tmpdir(), 'kipstow-launch-'))
afterAll(() => rmSync(base, { recursive: true, force: true }))
const browser = join(base, 'browser')
writeFileSync(browser, '')
const address = 'http://127.0.0.1:4000/#code=abc'

class FakeServer extends EventEmitter {
  readonly did: string[] = []
  kill(signal: string): boolean {
    this.did.push(signal)
    return true
  }
  send(message: string): boolean {
    this.did.push(message)
    return true
  }
}

type World = {
  said: string[]
  opened: { program: string; args: readonly string[]; output: string; child: EventEmitter }[]
  served: (readonly string[])[]
  server: FakeServer
  made: string[]
  exits: number[]
  signals: Map<string, () => void>
  press: () => void
  nowMs: number
}

let world: World
beforeEach(() => {
  world = {
    said: [],
    opened: [],
    served: [],
    server: new FakeServer(),
    made: [],
    exits: [],
    signals: new Map(),
    press: () => undefined,
    nowMs: 0,
  }
})

const DESK = { DISPLAY: ':0', KIPSTOW_BROWSER: browser, KIPSTOW_DATA: base }

function parts(
  change: Partial<LaunchParts> = {},
  surroundings: Partial<LaunchParts['surroundings']> = {},
): LaunchParts {
  return {
    root: '/planner',
    trip: null,
    surroundings: {
      platform: 'linux',
      environment: DESK,
      userId: 1000,
      readLine: () => null,
      canUnshare: () => true,
      ...surroundings,
    },
    say: (line) => world.said.push(line),
    build: () => true,
    findElectron: () => null,
    fetchElectron: () => Promise.resolve(null),
    open: (program, args, output) => {
      const child = new EventEmitter()
      world.opened.push({ program, args, output, child })
      return child as unknown as ReturnType<LaunchParts['open']>
    },
    serve: (script, args) => {
      world.served.push([script, ...args])
      return world.server as unknown as ReturnType<LaunchParts['serve']>
    },
    makeFolder: (path) => world.made.push(path),
    nowMs: () => world.nowMs,
    exit: (code) => world.exits.push(code),
    onSignal: (signal, heard) => world.signals.set(signal, heard),
    onEnter: (pressed) => (world.press = pressed),
    ...change,
  }
}

const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

describe('a planner that cannot be built', () => {
  it('says so, opens nothing and ends with 1', async () => {
    await launch(parts({ build: () => false }))
    expect(world).toMatchObject({ exits: [1], opened: [], served: [] })
    expect(world.said.join()).toContain('could not be built')
  })
})

describe('where Electron can run', () => {
  const electron = { findElectron: () => '/bin/electron', trip: '/home/a b.json' }

  it('opens the built shell with the trip, without any switch, and the launcher ends as it ends', async () => {
    const run = launch(parts(electron))
    await settle()
    expect(world.opened.map(({ program, args, output }) => ({ program, args, output }))).toEqual([
      {
        program: '/bin/electron',
        args: [join('/planner', 'dist/electron/main.js'), '/home/a b.json'],
        output: 'inherit',
      },
    ])
    world.opened[0]?.child.emit('exit', 0)
    await run
    expect(world).toMatchObject({ exits: [0], served: [], said: [] })
  })

  it('is fetched once where its binary is not there yet', async () => {
    const run = launch(
      parts({
        fetchElectron: (say) => {
          say('half')
          return Promise.resolve('/fetched/electron')
        },
      }),
    )
    await settle()
    expect(world.said).toEqual(['Fetching Electron, once …', 'half'])
    expect(world.opened[0]?.program).toBe('/fetched/electron')
    world.opened[0]?.child.emit('exit', 0)
    await run
  })

  it('a window that closes later with an error has been open all the same', async () => {
    const run = launch(parts(electron))
    await settle()
    world.nowMs = 60_000
    world.opened[0]?.child.emit('exit', 1)
    await run
    expect(world).toMatchObject({ exits: [0], served: [] })
  })

  it.each([
    ['ends at once with an error', ['exit', 1]],
    ['is killed at once', ['exit', null]],
    ['cannot be started', ['error', new Error('no such file')]],
  ] as const)('that %s is replaced by the same page served instead', async (_what, [event, value]) => {
    const run = launch(parts(electron))
    await settle()
    world.opened[0]?.child.emit(event, value)
    await run
    expect(world.exits).toEqual([])
    expect(world.said).toEqual(['Electron did not open a window: serving the planner on this machine only.'])
    expect(world.served).toEqual([[join('/planner', 'dist/electron/web.js'), '/planner', '/home/a b.json']])
  })
})

describe('where Electron cannot run', () => {
  it.each([
    ['there is no display', {}, { environment: { KIPSTOW_BROWSER: browser } }],
    ['it does not run as root', {}, { userId: 0 }],
    ['this system gives it no sandbox', {}, { canUnshare: () => false }],
    ['its binary could not be fetched', {}, {}],
  ])('says in one line why: %s', async (reason, change, surroundings) => {
    await launch(parts(change, surroundings))
    expect(world.said.filter((line) => line.startsWith('Without'))).toEqual([
      `Without Electron (${reason}): serving the planner on this machine only.`,
    ])
    expect(world.opened).toEqual([])
    expect(world.served).toHaveLength(1)
  })

  it('the page opens in a browser window with a profile of its own and no switch that weakens it', async () => {
    await launch(parts())
    world.server.emit('message', { kind: 'address', address })
    const [window] = world.opened
    expect(window?.program).toBe(browser)
    expect(window?.output).toBe('ignore')
    expect(window?.args).toEqual([
      `--app=${address}`,
      `--user-data-dir=${join(base, 'browser')}`,
      '--window-size=1280,800',
      '--no-first-run',
      '--no-default-browser-check',
    ])
    expect(world.made).toEqual([join(base, 'browser')])
    // The code is the window's: it is not printed as well.
    expect(world.said.join()).not.toContain('code=')
  })

  it('a browser that opens no window is replaced by the address; one that is closed later is not', async () => {
    await launch(parts())
    world.server.emit('message', { address })
    world.nowMs = 1000
    world.opened[0]?.child.emit('exit', 1)
    expect(world.said.slice(-2)).toEqual([
      expect.stringContaining('The browser did not open a window. Open this within a minute'),
      address,
    ])
    const before = world.said.length
    await launch(parts())
    world.server.emit('message', { address })
    world.nowMs = 60_000
    world.opened.at(-1)?.child.emit('exit', 1)
    expect(world.said.slice(before).join()).not.toContain('Open this')
  })

  it.each([
    ['there is no display', { environment: { KIPSTOW_BROWSER: browser } }],
    ['a browser has no sandbox as root', { userId: 0 }],
    ['no Chrome, Chromium or Edge was found', { environment: { DISPLAY: ':0', PATH: '' } }],
  ])('without a window the address is printed with the reason: %s', async (reason, surroundings) => {
    await launch(parts({}, surroundings))
    world.server.emit('message', { address })
    expect(world.said.slice(-2)).toEqual([
      `No window here (${reason}). Open this within a minute in a browser on this machine; Enter makes a new address, Ctrl+C ends:`,
      address,
    ])
    world.press()
    expect(world.server.did).toEqual(['new-address'])
    world.server.emit('message', { address: 'http://127.0.0.1:4000/#code=next' })
    expect(world.said.at(-1)).toBe('http://127.0.0.1:4000/#code=next')
    expect(world.opened).toEqual([])
  })

  it('nobody is waited for where nobody can press Enter', async () => {
    await launch(parts({ onEnter: null }, { userId: 0 }))
    world.server.emit('message', { address })
    expect(world.said.at(-1)).toBe(address)
  })

  it('messages that are no address are passed over; signals and the end go through', async () => {
    await launch(parts({}, { userId: 0 }))
    const before = world.said.length
    for (const message of [null, 'x', { kind: 'other' }, { address: 4 }]) world.server.emit('message', message)
    expect(world.said).toHaveLength(before)
    for (const signal of ['SIGINT', 'SIGTERM']) world.signals.get(signal)?.()
    expect(world.server.did).toEqual(['SIGINT', 'SIGTERM'])
    world.server.emit('exit', 3)
    await launch(parts({}, { userId: 0 }))
    world.server.emit('exit', null)
    expect(world.exits).toEqual([3, 0])
  })
})
