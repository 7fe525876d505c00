/** Earlier versions of a file: numbered, bounded, and told of where the disk refuses. */
import { createHash } from 'node:crypto'
import { beforeEach, describe, expect, it } from 'vitest'
import type { FileCalls } from '../../../../electron/files/calls.ts'
import { createBackups } from '../../../../electron/files/keep/backups.ts'
import { createSamples } from '../../../../electron/files/keep/samples.ts'
import { emptyDisk } from '../../../support/files/host-ports.ts'
import { SystemError } from '../../../support/files/memory-calls.ts'
import type { MemoryDisk } from '../../../support/files/memory-calls.ts'

const file = '/trips/a.trip.json'
const folder = `/backups/${createHash('sha256').update(file).digest('hex').slice(0, 32)}`

let disk: MemoryDisk
beforeEach(() => {
  disk = emptyDisk()
})
const backups = (nowUtc = 100, change: Partial<FileCalls> = {}): ReturnType<typeof createBackups> =>
  createBackups({ calls: { ...disk.calls(), ...change }, folder: '/backups', nowUtc: () => nowUtc, windows: false })
const refuse = (code: string) => (): Promise<never> => Promise.reject(new SystemError(code))

describe('earlier versions', () => {
  it('are numbered in order though the clock is set back, newest first; the same bytes are kept once', async () => {
    for (const [nowUtc, text] of [
      [100, 'a'],
      [200, 'bb'],
      [200, 'bb'],
      [50.9, 'ccc'],
      [-5, 'dddd'],
    ] as const)
      expect(await backups(nowUtc).keep(file, Buffer.from(text))).toEqual({ ok: true, value: undefined })
    expect(await backups().list(file)).toEqual({
      ok: true,
      value: [
        { id: '00000004-0.trip.json', savedAtUtc: 0, bytes: 4 },
        { id: '00000003-50.trip.json', savedAtUtc: 50, bytes: 3 },
        { id: '00000002-200.trip.json', savedAtUtc: 200, bytes: 2 },
        { id: '00000001-100.trip.json', savedAtUtc: 100, bytes: 1 },
      ],
    })
  })

  it('are the last twenty; what others put there is neither listed nor removed', async () => {
    disk.addFolder(folder)
    disk.put(`${folder}/mine.txt`, Buffer.from('mine'))
    for (let number = 1; number <= 23; number += 1) await backups().keep(file, Buffer.from(String(number)))
    const list = await backups().list(file)
    const ids = list.ok ? list.value.map((entry) => entry.id) : []
    expect([ids.length, ids[0], ids.at(-1)]).toEqual([20, '00000023-100.trip.json', '00000004-100.trip.json'])
    expect(disk.names(folder)).toHaveLength(21)
    expect(disk.names(folder)).toContain('mine.txt')
  })

  it('that cannot be removed for a new one are told of; the new one is kept all the same', async () => {
    for (let number = 1; number <= 20; number += 1) await backups().keep(file, Buffer.from(String(number)))
    const { unlink } = disk.calls()
    const kept = await backups(100, {
      unlink: (path) => (path.includes('00000001-') ? refuse('EACCES')() : unlink(path)),
    }).keep(file, Buffer.from('21'))
    expect(kept).toMatchObject({ ok: false, problem: { code: 'file-not-allowed' } })
    expect(Buffer.from(disk.get(`${folder}/00000021-100.trip.json`) ?? []).toString()).toBe('21')
  })

  it('that went while they were listed are left out', async () => {
    for (const text of ['a', 'b']) await backups().keep(file, Buffer.from(text))
    const { stat } = disk.calls()
    const list = await backups(100, {
      stat: (path) => (path.includes('00000002-') ? refuse('ENOENT')() : stat(path)),
    }).list(file)
    expect(list).toEqual({ ok: true, value: [{ id: '00000001-100.trip.json', savedAtUtc: 100, bytes: 1 }] })
  })

  it('are read by a name of ours only, never by a path', async () => {
    await backups().keep(file, Buffer.from('a'))
    const read = await backups().read(file, '00000001-100.trip.json')
    expect(read.ok && Buffer.from(read.value).toString()).toBe('a')
    disk.put('/backups/00000001-1.trip.json', Buffer.from('another'))
    for (const id of ['../00000001-1.trip.json', '', 'mine.txt', '00000001-1.trip.json\n'])
      expect(await backups().read(file, id)).toEqual({
        ok: false,
        problem: { code: 'backup-unknown', path: [], params: {} },
      })
  })
})

describe('the samples', () => {
  const samples = (change: Partial<FileCalls> = {}): ReturnType<typeof createSamples> =>
    createSamples({ ...disk.calls(), ...change }, '/samples')

  it('are the trips of their folder by name, and nothing else that lies there', async () => {
    for (const name of ['b.trip.json', 'read-me.txt', 'a.trip.json']) disk.put(`/samples/${name}`, Buffer.from(name))
    const list = await samples().list()
    expect(list.ok && list.value.map(({ id, bytes }) => [id, Buffer.from(bytes).toString()])).toEqual([
      ['a', 'a.trip.json'],
      ['b', 'b.trip.json'],
    ])
  })

  it('that cannot be listed or read are told of', async () => {
    expect(await samples({ readdir: refuse('ENOENT') }).list()).toEqual({
      ok: false,
      problem: { code: 'file-missing', path: [], params: { path: '/samples', system: 'ENOENT' } },
    })
    disk.put('/samples/a.trip.json', Buffer.from('a'))
    expect(await samples({ readFile: refuse('EIO') }).list()).toMatchObject({
      ok: false,
      problem: { code: 'device-failed', params: { path: '/samples/a.trip.json' } },
    })
  })
})
