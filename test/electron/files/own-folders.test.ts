/** Where each system keeps what is ours, what is swept there, and what its answers mean. */
import { describe, expect, it } from 'vitest'
import { attempt, systemCode } from '../../../electron/files/cause.ts'
import { appFolders } from '../../../electron/files/folders.ts'
import { sweepFolder } from '../../../electron/files/sweep.ts'
import { isAlive, readTempName, tempName } from '../../../electron/files/temp-name.ts'
import { MemoryDisk, SystemError } from '../../support/files/memory-calls.ts'

const slashes = (path: string): string => path.replaceAll('\\', '/')

describe('our own folders', () => {
  it.each([
    ['linux', {}, '/home/me/.local/share/kipstow'],
    ['linux', { XDG_DATA_HOME: '/data' }, '/data/kipstow'],
    ['darwin', {}, '/home/me/Library/Application Support/Kipstow'],
    ['win32', { APPDATA: '/roaming' }, '/roaming/Kipstow'],
    ['win32', {}, '/home/me/AppData/Roaming/Kipstow'],
    ['linux', { KIPSTOW_DATA: '/mine' }, '/mine'],
  ])('on %s with %o lie below %s', (platform, environment, data) => {
    const folders = appFolders(platform, environment, '/home/me')
    expect(slashes(folders.data)).toBe(data)
    for (const folder of [folders.backups, folders.journal, folders.locks, folders.log])
      expect(slashes(folder).startsWith(`${data}/`)).toBe(true)
    expect(slashes(folders.trips)).toBe('/home/me/Kipstow')
    expect(slashes(folders.sheets)).toBe('/home/me/Kipstow/Sheets')
  })

  it('keep trips where the user wants them', () => {
    expect(appFolders('linux', { KIPSTOW_TRIPS: '/my trips' }, '/home/me').trips).toBe('/my trips')
  })
})

describe('half-made files', () => {
  it('are told by their name: machine and process', () => {
    expect(readTempName(tempName())).toEqual({ sameMachine: true, pid: process.pid })
    expect(readTempName('trip.json')).toBeNull()
    expect(isAlive(process.pid)).toBe(true)
    for (const pid of [0, -1, 1.5, 2 ** 31 - 1]) expect(isAlive(pid)).toBe(false)
  })

  it('are swept where their maker is gone; those of the living and the user’s files stay', async () => {
    const disk = new MemoryDisk()
    disk.addFolder('/f')
    const mine = tempName()
    const dead = mine.replace(`-${process.pid}-`, `-${2 ** 31 - 1}-`)
    for (const name of [mine, dead, 'trip.json', '.kipstow-notes']) disk.put(`/f/${name}`, new Uint8Array(1))
    expect(await sweepFolder(disk.calls(), '/f', 0)).toBe(1)
    expect(disk.names('/f')).toEqual([mine, 'trip.json', '.kipstow-notes'])
  })

  it('of another machine on a shared folder are swept a day later', async () => {
    const disk = new MemoryDisk()
    disk.addFolder('/f')
    const foreign = tempName().replace(/kipstow-[0-9a-f]{8}/, 'kipstow-00000000')
    disk.put(`/f/${foreign}`, new Uint8Array(1))
    expect(await sweepFolder(disk.calls(), '/f', 86_400_000)).toBe(0)
    expect(disk.names('/f')).toEqual([foreign])
    expect(await sweepFolder(disk.calls(), '/f', 86_400_001)).toBe(1)
    expect(disk.names('/f')).toEqual([])
  })

  it('are left where the folder or the file refuses', async () => {
    const disk = new MemoryDisk()
    expect(await sweepFolder(disk.calls(), '/none', 0)).toBe(0)
    disk.addFolder('/f')
    disk.put(`/f/${tempName().replace(`-${process.pid}-`, `-${2 ** 31 - 1}-`)}`, new Uint8Array(1))
    const calls = { ...disk.calls(), unlink: () => Promise.reject(new SystemError('EROFS')) }
    expect(await sweepFolder(calls, '/f', 0)).toBe(0)
    expect(disk.names('/f')).toHaveLength(1)
  })
})

describe('an answer of the system', () => {
  it('becomes a problem with the path and its own code; one without a name of ours too', async () => {
    for (const [code, problem] of [
      ['ENOSPC', 'disk-full'],
      ['EROFS', 'file-read-only'],
      ['EDQUOT', 'disk-full'],
      ['EWHAT', 'file-failed'],
      ['ERR_FS_FILE_TOO_LARGE', 'file-failed'],
    ])
      expect(await attempt('/p', () => Promise.reject(new SystemError(code ?? '')))).toEqual({
        ok: false,
        problem: { code: problem, path: [], params: { path: '/p', system: code } },
      })
  })

  it('that is a programming error goes on upwards', async () => {
    for (const cause of [new TypeError('wrong'), new SystemError('ERR_INVALID_ARG_TYPE'), 'text', null])
      await expect(attempt('/p', () => Promise.reject(cause))).rejects.toBe(cause)
    expect([systemCode(null), systemCode({ code: 4 }), systemCode('x')]).toEqual([null, null, null])
  })
})
