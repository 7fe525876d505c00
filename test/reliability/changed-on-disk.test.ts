/** Another program changes the file, or another run of ours has it: nothing is overwritten that the user has not seen. */
import { fork } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import {
  linkSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { NODE_CALLS } from '../../electron/files/calls.ts'
import { createBackups } from '../../electron/files/keep/backups.ts'
import { createJournal } from '../../electron/files/keep/journal.ts'
import { createLocks } from '../../electron/files/keep/locks.ts'
import { createRecents } from '../../electron/files/keep/recents.ts'
import { createNodeFiles } from '../../electron/files/node-files.ts'
import { parseTrip, serializeTrip } from '../../shared/document/index.ts'
import type { Trip } from '../../shared/document/index.ts'
import { createHost } from '../../shared/host/index.ts'
import type { Host } from '../../shared/host/index.ts'
import { ask, refusal, value } from '../support/files/ask.ts'
import { bundleProgram } from '../support/files/bundle.ts'
import { emptyDisk, hostDouble } from '../support/files/host-ports.ts'

const sample = parseTrip(readFileSync(join(import.meta.dirname, '../../assets/samples/bats-by-the-quarry.trip.json')))
if (!sample.ok) throw new Error('the sample is refused')
const trip = sample.value
const retitled = (title: string): Trip => ({ ...trip, title })
const text = (title: string): string => serializeTrip(retitled(title))

let folder = ''
let path = ''
const hosts: Host[] = []

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kipstow-changed-'))
  path = join(folder, 'trip.trip.json')
  writeFileSync(path, text('mine'))
})
afterEach(async () => {
  for (const host of hosts.splice(0)) await host.release('a')
  rmSync(folder, { recursive: true })
})

/** A host on the real disk; `data`: its own folder, so that two of them do not lock each other out unless meant to. */
function realHost(data: string): Host {
  const keep = join(folder, data)
  mkdirSync(keep, { recursive: true })
  const setting = { calls: NODE_CALLS, windows: false, nowUtc: () => 1 }
  const { ports } = hostDouble({ disk: emptyDisk() })
  const host = createHost(
    {
      ...ports,
      files: createNodeFiles(NODE_CALLS, false, () => 0),
      backups: createBackups({ ...setting, folder: join(keep, 'backups') }),
      journal: createJournal({ calls: NODE_CALLS, folder: join(keep, 'journal') }),
      locks: createLocks({ calls: NODE_CALLS, folder: join(keep, 'locks') }),
      recents: createRecents({ calls: NODE_CALLS, path: join(keep, 'recent.json'), windows: false }),
    },
    null,
  )
  hosts.push(host)
  return host
}

async function open(host: Host, where = path): Promise<string> {
  const token = host.offerPath(where)
  const opened = value(await ask(host, 'a', 'openTrip', { from: { kind: 'token', token }, asCopy: false }))
  return opened?.file.token ?? ''
}

const sameLength = (): string => text('mine').replace('"mine"', '"hers"')

/** Each gives the bytes that must survive; null where the file is gone. */
const CHANGES: Readonly<Record<string, () => string | null>> = {
  'longer content': () => write(text('another title, longer')),
  'the same length': () => write(sameLength()),
  'the same length and the same time': () => {
    const then = new Date(1_000_000)
    utimesSync(path, then, then)
    write(sameLength())
    utimesSync(path, then, then)
    return sameLength()
  },
  'an older time': () => {
    write(text('from a backup'))
    utimesSync(path, new Date(0), new Date(0))
    return text('from a backup')
  },
  'another file renamed over it': () => {
    writeFileSync(join(folder, 'other'), text('renamed'))
    renameSync(join(folder, 'other'), path)
    return text('renamed')
  },
  'a link put in its place': () => {
    writeFileSync(join(folder, 'other'), text('linked'))
    unlinkSync(path)
    symlinkSync(join(folder, 'other'), path)
    return text('linked')
  },
  'a change through a second hard link': () => {
    linkSync(path, join(folder, 'second'))
    writeFileSync(join(folder, 'second'), text('through a link'))
    return text('through a link')
  },
  'an empty file': () => write(''),
  'one byte more': () => write(`${text('mine')} `),
  deletion: () => {
    unlinkSync(path)
    return null
  },
}

function write(content: string): string {
  writeFileSync(path, content)
  return content
}

describe.each(Object.entries(CHANGES))('a file changed on disk by %s', (_name, change) => {
  it('is not overwritten silently, and each of the three choices works', async () => {
    const host = realHost('data')
    const token = await open(host)
    const theirs = change()
    const refused = refusal(await ask(host, 'a', 'saveTrip', { token, trip: retitled('my edit'), replacing: null }))
    expect(refused.code).toBe(theirs === null ? 'trip-file-missing' : 'trip-changed-on-disk')
    if (theirs !== null) expect(readFileSync(path, 'utf8')).toBe(theirs)

    const now = value(await ask(host, 'a', 'checkDisk', { token }))
    expect(now.state).toBe(theirs === null ? 'missing' : 'changed')

    const replacing = now.sha256 ?? 'missing'
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('my edit'), replacing }))
    expect(JSON.parse(readFileSync(path, 'utf8')).title).toBe('my edit')
    if (theirs !== null) {
      const { backups } = value(await ask(host, 'a', 'listBackups', { token }))
      expect(backups.length).toBeGreaterThan(0)
    }
  })
})

describe('the choice to take theirs', () => {
  it('reads the file again and then saves over it', async () => {
    const host = realHost('data')
    const token = await open(host)
    write(text('theirs'))
    const opened = value(await ask(host, 'a', 'openTrip', { from: { kind: 'theirs', token }, asCopy: false }))
    expect(opened).toMatchObject({ file: { token }, trip: { title: 'theirs' }, unsaved: false })
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('both'), replacing: null }))
    expect(JSON.parse(readFileSync(path, 'utf8')).title).toBe('both')
  })

  it('asks again where the file changes once more between the question and the answer', async () => {
    const host = realHost('data')
    const token = await open(host)
    write(text('first'))
    const { sha256 } = value(await ask(host, 'a', 'checkDisk', { token }))
    write(text('second'))
    const saved = await ask(host, 'a', 'saveTrip', { token, trip: retitled('mine'), replacing: sha256 })
    expect(refusal(saved).code).toBe('trip-changed-on-disk')
    expect(JSON.parse(readFileSync(path, 'utf8')).title).toBe('second')
  })
})

describe('two runs on one file', () => {
  it('with the same data folder: the second is told, by whatever name it calls the file', async () => {
    const first = realHost('data')
    await open(first)
    const second = realHost('data')
    symlinkSync(path, join(folder, 'link.json'))
    for (const name of [path, join(folder, 'link.json'), join(folder, 'data', '..', 'trip.trip.json')]) {
      const opened = await ask(second, 'a', 'openTrip', {
        from: { kind: 'token', token: second.offerPath(name) },
        asCopy: false,
      })
      expect(refusal(opened).code).toBe('trip-open-elsewhere')
    }
    await first.release('a')
    expect(await open(second)).not.toBe('')
  })

  it('without a lock between them: one save wins, the other is told', async () => {
    const first = realHost('one')
    const second = realHost('two')
    const [a, b] = [await open(first), await open(second)]
    const saves = await Promise.all([
      ask(first, 'a', 'saveTrip', { token: a, trip: retitled('first'), replacing: null }),
      ask(second, 'a', 'saveTrip', { token: b, trip: retitled('second'), replacing: null }),
    ])
    const title = JSON.parse(readFileSync(path, 'utf8')).title
    expect(['first', 'second']).toContain(title)
    expect(saves.some((save) => save.ok)).toBe(true)
    const third = await ask(title === 'first' ? second : first, 'a', 'saveTrip', {
      token: title === 'first' ? b : a,
      trip: retitled('late'),
      replacing: null,
    })
    expect(refusal(third).code).toBe('trip-changed-on-disk')
  })
})

let holder = ''
beforeAll(async () => {
  holder = await bundleProgram(join(import.meta.dirname, '../support/files/hold-lock.ts'))
})

function hold(locks: string, file: string): Promise<{ child: ChildProcess; got: boolean }> {
  const child = fork(holder, [locks, file])
  return new Promise((resolve) => child.once('message', (message) => resolve({ child, got: message === 'held' })))
}

const end = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    child.once('exit', () => resolve())
    child.kill('SIGKILL')
  })

describe('the lock between processes', () => {
  it('holds while its process lives and falls with it, even killed', async () => {
    const locks = join(folder, 'locks')
    const first = await hold(locks, path)
    expect(first.got).toBe(true)
    const second = await hold(locks, path)
    expect(second.got).toBe(false)
    await end(first.child)
    const third = await hold(locks, path)
    expect(third.got).toBe(true)
    await end(second.child)
    await end(third.child)
  })

  it('goes to one only of many that ask at once for a dead one’s lock', async () => {
    const locks = join(folder, 'locks')
    const dead = await hold(locks, path)
    await end(dead.child)
    const asking = await Promise.all(Array.from({ length: 6 }, () => hold(locks, path)))
    expect(asking.filter(({ got }) => got)).toHaveLength(1)
    await Promise.all(asking.map(({ child }) => end(child)))
    expect(readdirSync(locks).filter((name) => name.endsWith('.lock'))).toHaveLength(1)
  })
})

describe('a clock that jumps', () => {
  it('does not change the order of backups, which count', async () => {
    let nowUtc = 2_000_000_000
    const backups = createBackups({
      calls: NODE_CALLS,
      folder: join(folder, 'kept'),
      windows: false,
      nowUtc: () => nowUtc,
    })
    for (const [title, jump] of [
      ['1', 0],
      ['2', -86_400],
      ['3', 31_536_000],
      ['4', -2_000_000_000],
    ] as const) {
      nowUtc += jump
      value(await backups.keep(path, Buffer.from(title)))
    }
    const listed = value(await backups.list(path))
    const read = await Promise.all(
      listed.map(async ({ id }) => Buffer.from(value(await backups.read(path, id))).toString()),
    )
    expect(read).toEqual(['4', '3', '2', '1'])
  })

  it('keeps the last twenty versions and no two that are the same', async () => {
    const backups = createBackups({ calls: NODE_CALLS, folder: join(folder, 'kept'), windows: false, nowUtc: () => 5 })
    for (let number = 0; number < 25; number += 1) {
      value(await backups.keep(path, Buffer.from(`version ${number}`)))
      value(await backups.keep(path, Buffer.from(`version ${number}`)))
    }
    const listed = value(await backups.list(path))
    expect(listed).toHaveLength(20)
    expect(Buffer.from(value(await backups.read(path, listed[0]?.id ?? ''))).toString()).toBe('version 24')
  })
})
