/** Each file call of each operation fails, once and for ever: a problem comes out, the user's file stays whole, the next try works. */
import { describe, expect, it } from 'vitest'
import { saveAtomically, sha256Of } from '../../electron/files/atomic-save.ts'
import type { FileCalls } from '../../electron/files/calls.ts'
import { createBackups } from '../../electron/files/keep/backups.ts'
import { createJournal } from '../../electron/files/keep/journal.ts'
import { createLocks } from '../../electron/files/keep/locks.ts'
import { createRecents } from '../../electron/files/keep/recents.ts'
import { createNodeFiles } from '../../electron/files/node-files.ts'
import { sweepFolder } from '../../electron/files/sweep.ts'
import type { Result } from '../../shared/result/index.ts'
import { failingCalls } from '../support/files/failing-calls.ts'
import { MemoryDisk } from '../support/files/memory-calls.ts'

const PATH = '/trips/a.trip.json'
const OLD = Buffer.from('{"version":"old"}')
const NEW = Buffer.from('{"version":"new"}')
const CODES = [
  'ENOSPC',
  'EIO',
  'EACCES',
  'EROFS',
  'EMFILE',
  'EPERM',
  'EBUSY',
  'EDQUOT',
  'EINVAL',
  'EUNHEARDOF',
] as const
const ENTRY = { id: 'journal-1', title: 'T', fileName: 'a', path: PATH, baseSha256: null, keptAtUtc: 5 }

function freshDisk(): MemoryDisk {
  const disk = new MemoryDisk()
  for (const folder of ['/trips', '/data', '/locks', '/journal', '/backups']) disk.addFolder(folder)
  disk.put(PATH, OLD)
  return disk
}

type Operation = (calls: FileCalls) => Promise<Result<unknown>>

const save: Operation = (calls) =>
  saveAtomically(calls, { path: PATH, bytes: NEW, expected: sha256Of(OLD), windows: false })

const OPERATIONS: Readonly<Record<string, Operation>> = {
  save,
  'save a new file': (calls) =>
    saveAtomically(calls, { path: '/trips/b.json', bytes: NEW, expected: null, windows: false }),
  read: (calls) => createNodeFiles(calls, false, () => 0).read(PATH),
  identify: (calls) => createNodeFiles(calls, false, () => 0).identify(PATH),
  fingerprint: (calls) => createNodeFiles(calls, false, () => 0).fingerprint(PATH),
  'find a free name': (calls) => createNodeFiles(calls, false, () => 0).freePath('/trips', 'a.trip.json'),
  'keep a backup': (calls) =>
    createBackups({ calls, folder: '/backups', nowUtc: () => 9, windows: false }).keep(PATH, OLD),
  'list backups': (calls) => createBackups({ calls, folder: '/backups', nowUtc: () => 9, windows: false }).list(PATH),
  'keep a recovery copy': (calls) => createJournal({ calls, folder: '/journal' }).keep(ENTRY, NEW),
  'list recovery copies': (calls) => createJournal({ calls, folder: '/journal' }).list(),
  'take a lock': (calls) => createLocks({ calls, folder: '/locks' }).take(PATH),
  'remember a recent trip': async (calls) => {
    await createRecents({ calls, path: '/data/recent.json', windows: false }).add({ path: PATH, openedAtUtc: 1 })
    return { ok: true, value: undefined }
  },
  sweep: async (calls) => ({ ok: true, value: await sweepFolder(calls, '/trips', 0) }),
}

describe.each(Object.entries(OPERATIONS))('%s, with each of its calls failing', (name, operation) => {
  it('gives a problem or goes on, throws nothing, and leaves the trip whole', async () => {
    let tried = 0
    for (const code of CODES) {
      for (const forEver of [false, true]) {
        for (let atCall = 1; ; atCall += 1) {
          const disk = freshDisk()
          const failing = failingCalls(disk.calls(), { atCall, code, forEver })
          const result = await operation(failing.calls)
          if (failing.count() < atCall) break
          tried += 1
          if (!result.ok) expect(result.problem.code, `${name} ${code} at ${atCall}`).toMatch(/^[a-z-]+$/)
          const bytes = disk.get(PATH)
          expect(bytes, `${name} ${code} at ${atCall}`).not.toBeNull()
          const whole = bytes !== null && [OLD, NEW].some((each) => Buffer.compare(each, bytes) === 0)
          expect(whole, `${name} ${code} at ${atCall}`).toBe(true)
        }
      }
    }
    expect(tried).toBeGreaterThanOrEqual(CODES.length * 2)
  })
})

describe('a save that failed', () => {
  it('never says it worked while the old bytes stand there', async () => {
    const lies: string[] = []
    for (const code of CODES) {
      for (let atCall = 1; ; atCall += 1) {
        const disk = freshDisk()
        const failing = failingCalls(disk.calls(), { atCall, code, forEver: true })
        const result = await save(failing.calls)
        if (failing.count() < atCall) break
        const bytes = disk.get(PATH)
        if (result.ok && (bytes === null || Buffer.compare(bytes, NEW) !== 0)) lies.push(`${code} at ${atCall}`)
      }
    }
    expect(lies).toEqual([])
  })

  it('works when tried again once the trouble is over', async () => {
    for (const code of CODES) {
      for (let atCall = 1; ; atCall += 1) {
        const disk = freshDisk()
        const failing = failingCalls(disk.calls(), { atCall, code, forEver: true })
        await save(failing.calls)
        if (failing.count() < atCall) break
        const now = disk.get(PATH)
        const expected = now === null ? null : sha256Of(now)
        const again = await saveAtomically(disk.calls(), { path: PATH, bytes: NEW, expected, windows: false })
        expect(again.ok, `${code} at ${atCall}`).toBe(true)
        expect(disk.get(PATH)).toEqual(NEW)
      }
    }
  })

  it('waits and tries again on Windows while another program holds the file', async () => {
    for (const code of ['EPERM', 'EACCES', 'EBUSY']) {
      const disk = freshDisk()
      const inner = disk.calls()
      let refusals = 3
      const calls: FileCalls = {
        ...inner,
        rename: async (from, to) => {
          refusals -= 1
          if (refusals >= 0) throw Object.assign(new Error(code), { code })
          await inner.rename(from, to)
        },
      }
      const result = await saveAtomically(calls, { path: PATH, bytes: NEW, expected: sha256Of(OLD), windows: true })
      expect(result.ok).toBe(true)
      expect(disk.get(PATH)).toEqual(NEW)
    }
  })
})
