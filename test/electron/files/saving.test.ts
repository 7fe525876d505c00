/** Saving, naming and looking ahead on disks and with neighbours that do not play along. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { saveAtomically, sha256Of } from '../../../electron/files/atomic-save.ts'
import type { FileCalls } from '../../../electron/files/calls.ts'
import { checkFolder } from '../../../electron/files/check-folder.ts'
import { appFolders } from '../../../electron/files/folders.ts'
import { createNodeFiles } from '../../../electron/files/node-files.ts'
import { MemoryDisk, SystemError } from '../../support/files/memory-calls.ts'

const path = '/trips/a.trip.json'
const OLD = Buffer.from('{"old": true}')
const NEW = Buffer.from('{"new": true}')
const refuse = (code: string) => (): Promise<never> => Promise.reject(new SystemError(code))

let disk = new MemoryDisk()
beforeEach(() => {
  disk = new MemoryDisk()
  disk.addFolder('/trips')
  disk.put(path, OLD)
})
const textAt = (where: string): string => Buffer.from(disk.get(where) ?? []).toString()

describe('a save', () => {
  const save = (change: Partial<FileCalls> = {}, windows = false): ReturnType<typeof saveAtomically> =>
    saveAtomically({ ...disk.calls(), ...change }, { path, bytes: NEW, expected: sha256Of(OLD), windows })

  it('does not replace what another program wrote while it was under way', async () => {
    const { open } = disk.calls()
    const meanwhile: FileCalls['open'] = async (where, flags, mode) => {
      if (flags === 'wx') disk.put(path, Buffer.from('theirs'))
      return open(where, flags, mode)
    }
    expect(await save({ open: meanwhile })).toEqual({
      ok: false,
      problem: { code: 'trip-changed-on-disk', path: [], params: { path } },
    })
    expect(disk.names('/trips')).toEqual(['a.trip.json'])
    expect(textAt(path)).toBe('theirs')
  })

  it('says that the file changed where it went while the save was under way', async () => {
    expect(await save({ readFile: refuse('ENOENT') })).toMatchObject({
      ok: false,
      problem: { code: 'trip-changed-on-disk' },
    })
    expect(disk.names('/trips')).toEqual(['a.trip.json'])
  })

  it('says what the disk says where the file can no longer be read', async () => {
    expect(await save({ readFile: refuse('EIO') })).toMatchObject({ ok: false, problem: { code: 'device-failed' } })
    expect(textAt(path)).toBe('{"old": true}')
  })

  it('on Windows is tried once more only while another program holds the file, not where the disk fails', async () => {
    let tries = 0
    const rename = (): Promise<never> => {
      tries += 1
      return refuse('EIO')()
    }
    expect(await save({ rename }, true)).toMatchObject({ ok: false, problem: { code: 'device-failed' } })
    expect(tries).toBe(1)
    expect(disk.names('/trips')).toEqual(['a.trip.json'])
    expect(textAt(path)).toBe('{"old": true}')
  })

  it('does not hide a mistake of the program behind a problem of the disk', async () => {
    const mistake = new TypeError('not a path')
    await expect(save({ rename: () => Promise.reject(mistake) }, true)).rejects.toBe(mistake)
    expect(textAt(path)).toBe('{"old": true}')
  })
})

describe('a free name', () => {
  const free = (name: string): Promise<unknown> =>
    createNodeFiles(disk.calls(), false, () => 0).freePath('/trips', name)

  it.each([
    ['b.trip.json', 'b.trip.json'],
    ['a.trip.json', 'a (2).trip.json'],
    ['A.TRIP.JSON', 'A (2).TRIP.JSON'],
    ['night.pdf', 'night (2).pdf'],
    ['notes', 'notes (2)'],
    ['Schlaf fu\u0308r zwei', 'Schlaf fu\u0308r zwei (2)'],
  ])('for %s is %s', async (name, given) => {
    for (const there of ['night.pdf', 'notes', 'Schlaf f\u00fcr zwei']) disk.put(`/trips/${there}`, OLD)
    expect(await free(name)).toEqual({ ok: true, value: `/trips/${given}` })
  })

  it('is not looked for beyond nine hundred and ninety-nine', async () => {
    for (let number = 2; number <= 998; number += 1) disk.put(`/trips/a (${number}).trip.json`, OLD)
    expect(await free('a.trip.json')).toEqual({ ok: true, value: '/trips/a (999).trip.json' })
    disk.put('/trips/a (999).trip.json', OLD)
    expect(await free('a.trip.json')).toEqual({
      ok: false,
      problem: { code: 'file-exists', path: [], params: { path } },
    })
  })
})

describe('asking whether a folder can be written', () => {
  it('ends at the root where nothing is there, and at once where the disk fails', async () => {
    expect(await checkFolder({ ...disk.calls(), stat: refuse('ENOENT') }, '/a/b')).toEqual({
      ok: false,
      problem: { code: 'file-missing', path: [], params: { path: '/', system: 'ENOENT' } },
    })
    expect(await checkFolder({ ...disk.calls(), stat: refuse('EIO') }, '/a/b')).toEqual({
      ok: false,
      problem: { code: 'device-failed', path: [], params: { path: '/a/b', system: 'EIO' } },
    })
  })
})

it('trips go into the documents of a home that has such a folder', () => {
  const home = mkdtempSync(join(tmpdir(), 'kipstow-home-'))
  try {
    expect(appFolders('linux', {}, home).trips).toBe(join(home, 'Kipstow'))
    mkdirSync(join(home, 'Documents'))
    expect(appFolders('linux', {}, home).trips).toBe(join(home, 'Documents', 'Kipstow'))
  } finally {
    rmSync(home, { recursive: true })
  }
})
