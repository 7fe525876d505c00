/** The lock of a file, where the disk has no hard links, where another is quicker, and where the folder refuses. */
import { beforeEach, describe, expect, it } from 'vitest'
import { createLocks } from '../../../../electron/files/keep/locks.ts'
import type { FileCalls } from '../../../../electron/files/calls.ts'
import { emptyDisk } from '../../../support/files/host-ports.ts'
import { SystemError } from '../../../support/files/memory-calls.ts'
import type { MemoryDisk } from '../../../support/files/memory-calls.ts'

const DEAD = `${2 ** 31 - 1} 0123456789abcdef01234567`
const file = '/trips/a.trip.json'

let disk: MemoryDisk
beforeEach(() => {
  disk = emptyDisk()
})
const locks = (change: Partial<FileCalls> = {}): ReturnType<typeof createLocks> =>
  createLocks({ calls: { ...disk.calls(), ...change }, folder: '/locks' })
const text = (): string[] =>
  disk.names('/locks').map((name) => Buffer.from(disk.get(`/locks/${name}`) ?? []).toString())

describe('a lock', () => {
  it('is one small file while it is held, and nothing after', async () => {
    const taken = await locks().take(file)
    if (!taken.ok) throw new Error('not taken')
    expect(text()).toEqual([expect.stringMatching(new RegExp(`^${process.pid} [0-9a-f]{24}$`))])
    expect(await locks().take(file)).toMatchObject({
      ok: false,
      problem: { code: 'trip-open-elsewhere', params: { name: 'a.trip.json' } },
    })
    await taken.value.release()
    await taken.value.release()
    expect(disk.names('/locks')).toEqual([])
  })

  it('works where the disk has no hard links', async () => {
    const link = (): Promise<void> => Promise.reject(new SystemError('ENOTSUP'))
    const taken = await locks({ link }).take(file)
    expect(taken.ok).toBe(true)
    expect(disk.names('/locks')).toHaveLength(1)
    expect((await locks({ link }).take(file)).ok).toBe(false)
  })

  it('of a program that is gone is taken over', async () => {
    const first = await locks().take(file)
    if (!first.ok) throw new Error('not taken')
    const [name = ''] = disk.names('/locks')
    disk.put(`/locks/${name}`, Buffer.from(DEAD))
    expect((await locks().take(file)).ok).toBe(true)
    // The one before gives up a lock that is no longer its own: nothing happens to the new one.
    await first.value.release()
    expect(disk.names('/locks')).toHaveLength(1)
  })

  it('that a living program put there in between is put back, and the file is its', async () => {
    const first = await locks().take(file)
    if (!first.ok) throw new Error('not taken')
    const [name = ''] = disk.names('/locks')
    const living = disk.get(`/locks/${name}`) ?? new Uint8Array()
    disk.put(`/locks/${name}`, Buffer.from(DEAD))
    const calls = disk.calls()
    let swapped = false
    // Between the look at the dead one and moving it aside, the living one comes.
    const rename: FileCalls['rename'] = async (from, to) => {
      if (!swapped) disk.put(`/locks/${name}`, living)
      swapped = true
      return calls.rename(from, to)
    }
    expect(await locks({ rename }).take(file)).toMatchObject({ ok: false, problem: { code: 'trip-open-elsewhere' } })
    expect(swapped).toBe(true)
    expect(text()).toEqual([Buffer.from(living).toString()])
    await first.value.release()
    expect(disk.names('/locks')).toEqual([])
  })

  it('of a program that is gone, which another clears first, is taken at the next try', async () => {
    const first = await locks().take(file)
    if (!first.ok) throw new Error('not taken')
    const [name = ''] = disk.names('/locks')
    disk.put(`/locks/${name}`, Buffer.from(DEAD))
    const calls = disk.calls()
    const rename: FileCalls['rename'] = async (from) => {
      await calls.unlink(from)
      throw new SystemError('ENOENT')
    }
    expect((await locks({ rename }).take(file)).ok).toBe(true)
    expect(text()).toEqual([expect.stringMatching(new RegExp(`^${process.pid} `))])
    await first.value.release()
  })

  it('is given up on where others are always quicker', async () => {
    const link: FileCalls['link'] = () => Promise.reject(new SystemError('EEXIST'))
    expect(await locks({ link }).take(file)).toMatchObject({ ok: false, problem: { code: 'trip-open-elsewhere' } })
  })

  it('is a problem where its folder refuses', async () => {
    for (const refused of [
      { mkdir: (): Promise<void> => Promise.reject(new SystemError('EROFS')) },
      { link: (): Promise<void> => Promise.reject(new SystemError('ENOSPC')) },
      { open: (): ReturnType<FileCalls['open']> => Promise.reject(new SystemError('ENOSPC')) },
    ])
      expect((await locks(refused).take(file)).ok).toBe(false)
    expect(disk.names('/locks')).toEqual([])
  })
})
