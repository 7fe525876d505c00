/** The list of trips opened lately. */
import { describe, expect, it } from 'vitest'
import { createRecents } from '../../../../electron/files/keep/recents.ts'
import { emptyDisk } from '../../../support/files/host-ports.ts'
import { SystemError } from '../../../support/files/memory-calls.ts'

const path = '/data/recent.json'

describe('the recent trips', () => {
  it('are the last twelve, newest first, each once', async () => {
    const disk = emptyDisk()
    const recents = createRecents({ calls: disk.calls(), path, windows: false })
    for (let number = 0; number < 15; number += 1) await recents.add({ path: `/t/${number}`, openedAtUtc: number })
    await recents.add({ path: '/t/9', openedAtUtc: 20 })
    const list = await recents.list()
    expect(list.map((recent) => recent.path.slice(3))).toEqual([
      '9',
      '14',
      '13',
      '12',
      '11',
      '10',
      '8',
      '7',
      '6',
      '5',
      '4',
      '3',
    ])
    await recents.forget('/t/9')
    expect((await recents.list())[0]?.path).toBe('/t/14')
  })

  it('changed at once by two windows are both remembered', async () => {
    const disk = emptyDisk()
    const recents = createRecents({ calls: disk.calls(), path, windows: false })
    await Promise.all(['a', 'b', 'c'].map((name, at) => recents.add({ path: name, openedAtUtc: at })))
    expect((await recents.list()).map((recent) => recent.path).sort()).toEqual(['a', 'b', 'c'])
  })

  it.each([
    ['no JSON', '{'],
    ['no list', '{"path": 1}'],
    [
      'entries of another shape',
      '[null, 4, {"path": "/a"}, {"path": 4, "openedAtUtc": 1}, {"path": "/a", "openedAtUtc": -1}, {"path": "/a", "openedAtUtc": 1.5}]',
    ],
  ])('start anew from %s', async (_what, content) => {
    const disk = emptyDisk()
    disk.put(path, Buffer.from(content))
    const recents = createRecents({ calls: disk.calls(), path, windows: false })
    expect(await recents.list()).toEqual([])
    await recents.add({ path: '/b', openedAtUtc: 1 })
    expect(await recents.list()).toEqual([{ path: '/b', openedAtUtc: 1 }])
  })

  it('that cannot be written stop nobody', async () => {
    const disk = emptyDisk()
    const refuse = (): Promise<never> => Promise.reject(new SystemError('EROFS'))
    for (const change of [{ mkdir: refuse }, { open: refuse }]) {
      const recents = createRecents({ calls: { ...disk.calls(), ...change }, path, windows: false })
      await recents.add({ path: '/b', openedAtUtc: 1 })
      expect(await recents.list()).toEqual([])
    }
  })
})
