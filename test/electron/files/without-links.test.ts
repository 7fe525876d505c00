/** Saving a new file where the disk has no hard links, as many sticks and cards. */
import { beforeEach, describe, expect, it } from 'vitest'
import { saveAtomically, sha256Of } from '../../../electron/files/atomic-save.ts'
import type { FileCalls } from '../../../electron/files/calls.ts'
import { MemoryDisk, SystemError } from '../../support/files/memory-calls.ts'

const path = '/stick/a.trip.json'
const bytes = Buffer.from('{"new": true}')

let disk = new MemoryDisk()
beforeEach(() => {
  disk = new MemoryDisk()
  disk.addFolder('/stick')
})
const save = (change: Partial<FileCalls> = {}, windows = false): ReturnType<typeof saveAtomically> => {
  const link = (): Promise<void> => Promise.reject(new SystemError('EPERM'))
  return saveAtomically({ ...disk.calls(), link, ...change }, { path, bytes, expected: null, windows })
}

describe('a new file on a disk without links', () => {
  it('is written whole, with nothing beside it', async () => {
    expect(await save()).toEqual({ ok: true, value: { sha256: sha256Of(bytes) } })
    expect(disk.names('/stick')).toEqual(['a.trip.json'])
    expect(Buffer.compare(disk.get(path) ?? new Uint8Array(), bytes)).toBe(0)
  })

  it('never replaces one that is there', async () => {
    const theirs = Buffer.from('theirs')
    disk.put(path, theirs)
    expect(await save()).toMatchObject({ ok: false, problem: { code: 'file-exists' } })
    expect(disk.names('/stick')).toEqual(['a.trip.json'])
    expect(Buffer.compare(disk.get(path) ?? new Uint8Array(), theirs)).toBe(0)
  })

  it('that cannot be put in its place leaves no empty file that would pass for a trip', async () => {
    const rename = (): Promise<void> => Promise.reject(new SystemError('EIO'))
    expect(await save({ rename })).toMatchObject({ ok: false, problem: { code: 'device-failed' } })
    expect(disk.names('/stick')).toEqual([])
  })

  it('is tried again on Windows while a scanner holds it', async () => {
    const calls = disk.calls()
    let held = 3
    const rename: FileCalls['rename'] = async (from, to) => {
      held -= 1
      if (held > 0) throw new SystemError('EBUSY')
      return calls.rename(from, to)
    }
    expect((await save({ rename }, true)).ok).toBe(true)
    expect(held).toBe(0)
    expect(disk.names('/stick')).toEqual(['a.trip.json'])
  })
})
