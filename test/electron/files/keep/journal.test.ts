/** Unsaved work on disk: what is offered after a crash, what is passed over, and what is said where the disk refuses. */
import { createHash } from 'node:crypto'
import { beforeEach, describe, expect, it } from 'vitest'
import type { FileCalls } from '../../../../electron/files/calls.ts'
import { createJournal } from '../../../../electron/files/keep/journal.ts'
import { emptyDisk } from '../../../support/files/host-ports.ts'
import { SystemError } from '../../../support/files/memory-calls.ts'
import type { MemoryDisk } from '../../../support/files/memory-calls.ts'

const NOBODY = 2 ** 31 - 1
const head = { id: 'trip-one', title: 'T', fileName: 'a', path: '/t/a', baseSha256: null, keptAtUtc: 5, pid: NOBODY }
const entryOf = ({ pid: _pid, ...entry }: typeof head): Omit<typeof head, 'pid'> => entry

let disk: MemoryDisk
beforeEach(() => {
  disk = emptyDisk()
})
const journal = (change: Partial<FileCalls> = {}): ReturnType<typeof createJournal> =>
  createJournal({ calls: { ...disk.calls(), ...change }, folder: '/journal' })

/** A whole copy, put together by hand as the file's description says. */
function put(name: string, headLine: string, bytes = 'unsaved'): void {
  const body = Buffer.from(`${headLine}\n${bytes}`)
  const sha256 = createHash('sha256').update(body).digest('hex')
  disk.put(`/journal/${name}`, Buffer.concat([body, Buffer.from(`\nend ${body.length} ${sha256}\n`)]))
}

const refuse = (code: string) => (): Promise<never> => Promise.reject(new SystemError(code))

describe('unsaved work', () => {
  it('of a program that is gone is offered, newest first, and read back byte for byte', async () => {
    put('trip-one.1.copy', JSON.stringify(head))
    put('trip-two.7.copy', JSON.stringify({ ...head, id: 'trip-two', keptAtUtc: 9, path: null }))
    disk.put('/journal/notes.txt', Buffer.from('not ours'))
    expect(await journal().list()).toEqual({
      ok: true,
      value: [{ ...entryOf(head), id: 'trip-two', keptAtUtc: 9, path: null }, entryOf(head)],
    })
    const read = await journal().read('trip-one')
    expect(read.ok && Buffer.from(read.value.bytes).toString()).toBe('unsaved')
  })

  it('of another program that still runs is its own', async () => {
    put('trip-one.1.copy', JSON.stringify({ ...head, pid: process.ppid }))
    expect(await journal().list()).toEqual({ ok: true, value: [] })
    put('trip-one.1.copy', JSON.stringify({ ...head, pid: process.pid }))
    expect(await journal().list()).toEqual({ ok: true, value: [entryOf(head)] })
  })

  it.each<readonly [string, string]>([
    ['no JSON', 'half a line {'],
    ['a number', '5'],
    ['nothing', 'null'],
    ...Object.entries({ id: 5, title: null, fileName: 5, path: 5, baseSha256: 5, keptAtUtc: 'noon', pid: 'mine' }).map(
      ([key, wrong]) => [`another ${key}`, JSON.stringify({ ...head, [key]: wrong })] as const,
    ),
    ['the id of another trip', JSON.stringify({ ...head, id: 'trip-two' })],
  ])('whose first line is %s is passed over for the copy before it', async (_, line) => {
    put('trip-one.2.copy', line)
    expect(await journal().list()).toEqual({ ok: true, value: [] })
    expect(await journal().read('trip-one')).toEqual({
      ok: false,
      problem: { code: 'recovery-unknown', path: [], params: {} },
    })
    put('trip-one.1.copy', JSON.stringify(head), 'before')
    const read = await journal().read('trip-one')
    expect(read.ok && Buffer.from(read.value.bytes).toString()).toBe('before')
  })

  it.each([
    ['changed by a letter', (bytes: Buffer) => Buffer.from(bytes.toString().replace('unsaved', 'unsaveD'))],
    ['cut off', (bytes: Buffer) => bytes.subarray(0, -3)],
    ['of an end line alone', (bytes: Buffer) => bytes.subarray(bytes.lastIndexOf('\nend '))],
    ['empty', () => Buffer.alloc(0)],
  ])('that is %s is not offered', async (_, spoil) => {
    put('trip-one.1.copy', JSON.stringify(head))
    disk.put('/journal/trip-one.1.copy', spoil(Buffer.from(disk.get('/journal/trip-one.1.copy') ?? [])))
    expect(await journal().list()).toEqual({ ok: true, value: [] })
  })

  it('that cannot be read is passed over for the copy before it', async () => {
    put('trip-one.1.copy', JSON.stringify(head), 'before')
    put('trip-one.2.copy', JSON.stringify(head), 'after')
    const { readFile } = disk.calls()
    const read = await journal({
      readFile: (path) => (path.endsWith('.2.copy') ? refuse('EIO')() : readFile(path)),
    }).read('trip-one')
    expect(read.ok && Buffer.from(read.value.bytes).toString()).toBe('before')
  })

  it('is kept twice at most, and dropped whole, without touching that of others', async () => {
    put('trip-two.1.copy', JSON.stringify({ ...head, id: 'trip-two' }))
    for (const text of ['a', 'b', 'c']) await journal().keep(entryOf(head), Buffer.from(text))
    expect(disk.names('/journal')).toEqual(['trip-two.1.copy', 'trip-one.2.copy', 'trip-one.3.copy'])
    expect(await journal().drop('trip-one')).toEqual({ ok: true, value: undefined })
    expect(disk.names('/journal')).toEqual(['trip-two.1.copy'])
  })
})

describe('a folder of unsaved work', () => {
  it('that was never made holds nothing', async () => {
    const none = journal({ readdir: refuse('ENOENT') })
    expect(await none.list()).toEqual({ ok: true, value: [] })
    expect(await none.read('trip-one')).toMatchObject({ ok: false, problem: { code: 'recovery-unknown' } })
    expect(await none.drop('trip-one')).toEqual({ ok: true, value: undefined })
  })

  it('that refuses is told, by whatever is asked of it', async () => {
    const broken = journal({ readdir: refuse('EIO') })
    const problem = { code: 'device-failed', path: [], params: { path: '/journal', system: 'EIO' } }
    expect(await broken.list()).toEqual({ ok: false, problem })
    expect(await broken.read('trip-one')).toEqual({ ok: false, problem })
    expect(await broken.drop('trip-one')).toEqual({ ok: false, problem })
    expect(await broken.keep(entryOf(head), Buffer.from('x'))).toEqual({ ok: false, problem })
  })

  it('that lets nothing go says so; what went by itself in between is as good as dropped', async () => {
    put('trip-one.1.copy', JSON.stringify(head))
    expect(await journal({ unlink: refuse('EROFS') }).drop('trip-one')).toMatchObject({
      ok: false,
      problem: { code: 'file-read-only' },
    })
    expect(await journal({ unlink: refuse('ENOENT') }).drop('trip-one')).toEqual({ ok: true, value: undefined })
  })

  it('that takes no more leaves no half copy behind', async () => {
    const { open } = disk.calls()
    const full: FileCalls['open'] = async (path, flags) => ({ ...(await open(path, flags)), sync: refuse('ENOSPC') })
    expect(await journal({ open: full }).keep(entryOf(head), Buffer.from('x'))).toMatchObject({
      ok: false,
      problem: { code: 'disk-full' },
    })
    expect(disk.names('/journal')).toEqual([])
  })
})
