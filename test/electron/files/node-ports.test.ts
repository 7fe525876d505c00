/** All ports on a real disk: what a host says of itself, and that what is kept is its user's alone. */
import { existsSync, mkdirSync, mkdtempSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { createNodePorts, systemLanguage } from '../../../electron/files/node-ports.ts'
import type { PortSetting } from '../../../electron/files/node-ports.ts'
import { createWaits } from '../../../electron/files/waits.ts'
import { readPageBundle } from '../../../electron/files/page-bundle.ts'

const base = mkdtempSync(join(tmpdir(), 'kipstow-ports-'))
afterAll(() => rmSync(base, { recursive: true, force: true }))

let root = base
let data = base
beforeEach(() => {
  root = mkdtempSync(join(base, 'case-'))
  data = join(root, 'deep/data')
  writeFileSync(join(root, 'package.json'), '{"version": "1.2.3"}')
  vi.stubEnv('KIPSTOW_DATA', data)
  vi.stubEnv('KIPSTOW_TRIPS', join(root, 'trips'))
})
afterEach(() => vi.unstubAllEnvs())

const portsHere = (change: Partial<PortSetting> = {}): ReturnType<typeof createNodePorts> =>
  createNodePorts({ kind: 'loopback', root, events: createWaits(), dialogs: null, desktop: null, ...change })

describe('the ports', () => {
  it('say what the host is, and give ids that nobody can guess', async () => {
    const ports = await portsHere()
    expect(ports.facts).toMatchObject({ kind: 'loopback', appVersion: '1.2.3' })
    const ids = Array.from({ length: 100 }, () => ports.ids.next())
    expect(new Set(ids).size).toBe(100)
    for (const id of ids) expect(id).toMatch(/^[\w-]{24}$/)
    expect(Math.abs(ports.clock.nowUtc() - Date.now() / 1000)).toBeLessThan(60)
  })

  it('have a version even where the manifest has none', async () => {
    writeFileSync(join(root, 'package.json'), '[]')
    expect((await portsHere()).facts.appVersion).toBe('0.0.0')
  })

  it('say of which family the system is, and which of our two languages it speaks', async () => {
    const real = process.platform
    const named: string[] = []
    try {
      for (const platform of ['linux', 'darwin', 'win32', 'freebsd'] as const) {
        Object.defineProperty(process, 'platform', { value: platform })
        named.push((await portsHere()).facts.platform)
      }
    } finally {
      Object.defineProperty(process, 'platform', { value: real })
    }
    expect(named).toEqual(['linux', 'mac', 'windows', 'other'])
    const options = new Intl.DateTimeFormat().resolvedOptions()
    const resolved = vi.spyOn(Intl.DateTimeFormat.prototype, 'resolvedOptions')
    const spoken = ['de-AT', 'DE', 'en-GB', 'fr-FR', 'und'].map((locale) => {
      resolved.mockReturnValueOnce({ ...options, locale })
      return systemLanguage()
    })
    resolved.mockRestore()
    expect(spoken).toEqual(['de', 'de', 'en', 'en', 'en'])
  })

  it('date what they keep and log by the clock of the system, and write text as UTF-8', async () => {
    vi.useFakeTimers({ toFake: ['Date'], now: Date.parse('2027-10-08T20:00:00.700Z') })
    try {
      const ports = await portsHere()
      expect(ports.clock.nowUtc()).toBe(Date.parse('2027-10-08T20:00:00Z') / 1000)
      expect([...ports.encode('aé€')]).toEqual([0x61, 0xc3, 0xa9, 0xe2, 0x82, 0xac])
      ports.log.write('started')
      expect((await ports.log.recent()).map((line) => JSON.parse(line))).toEqual([
        { at: '2027-10-08T20:00:00Z', event: 'started' },
      ])
      await ports.backups.keep('/t/a.trip.json', ports.encode('a'))
      expect(await ports.backups.list('/t/a.trip.json')).toEqual({
        ok: true,
        value: [{ id: '00000001-1823025600.trip.json', savedAtUtc: 1_823_025_600, bytes: 1 }],
      })
      // A half-made file of another machine is a day old by this clock, and swept on reading beside it.
      const foreign = join(root, '.kipstow-00000000-1-0123456789abcdef.tmp')
      const old = new Date('2027-10-07T19:59:00Z')
      writeFileSync(foreign, '')
      utimesSync(foreign, old, old)
      writeFileSync(join(root, 'a.trip.json'), 'a')
      expect((await ports.files.read(join(root, 'a.trip.json'))).ok).toBe(true)
      expect(existsSync(foreign)).toBe(false)
    } finally {
      vi.useRealTimers()
    }
  })

  it.skipIf(process.platform === 'win32')(
    'close a new data folder to everybody else, and leave one that is there',
    async () => {
      await portsHere()
      expect(statSync(data).mode & 0o777).toBe(0o700)
      data = join(root, 'mine')
      mkdirSync(data, { mode: 0o755 })
      vi.stubEnv('KIPSTOW_DATA', data)
      await portsHere()
      expect(statSync(data).mode & 0o777).toBe(0o755)
    },
  )

  it('start where nothing can be kept, and say so when something is to be', async () => {
    writeFileSync(join(root, 'file'), '')
    vi.stubEnv('KIPSTOW_DATA', join(root, 'file/data'))
    const ports = await portsHere()
    const entry = { id: 'abcdefgh', title: 't', fileName: 'f', path: null, baseSha256: null, keptAtUtc: 1 }
    expect(await ports.journal.keep(entry, new Uint8Array(1))).toMatchObject({
      ok: false,
      problem: { code: 'file-missing' },
    })
    expect(await ports.recents.list()).toEqual([])
  })

  it('show a folder that they make first, where the host can show one', async () => {
    const shown: string[] = []
    const desktop = {
      reveal: async (folder: string): Promise<boolean> => shown.push(folder) > 0,
      focus: vi.fn(),
      setUnsaved: vi.fn(),
    }
    const ports = await portsHere({ desktop })
    expect(await ports.desktop.reveal('sheets')).toBe(true)
    expect(shown).toEqual([join(root, 'trips/Sheets')])
    expect(existsSync(join(root, 'trips/Sheets'))).toBe(true)
    ports.desktop.focus('w')
    ports.desktop.setUnsaved('w', true)
    expect(desktop.focus).toHaveBeenCalledWith('w')
    expect(desktop.setUnsaved).toHaveBeenCalledWith('w', true)
    const without = await portsHere()
    expect(await without.desktop.reveal('log')).toBe(false)
    without.desktop.focus('w')
    without.desktop.setUnsaved('w', false)
  })
})

describe('the page', () => {
  it('is the built files of known kinds, by exact path', () => {
    const folder = join(root, 'page')
    mkdirSync(join(folder, 'assets'), { recursive: true })
    for (const name of ['index.html', 'assets/a.js', 'assets/secret.env', 'assets/a.js.map'])
      writeFileSync(join(folder, name), name)
    const page = readPageBundle(folder)
    expect([...page.keys()].sort()).toEqual(['/', '/assets/a.js', '/index.html'])
    expect(page.get('/')).toBe(page.get('/index.html'))
    expect(page.get('/assets/a.js')?.mediaType).toBe('text/javascript; charset=utf-8')
  })

  it('that is not built is said', () => {
    mkdirSync(join(root, 'empty'))
    expect(() => readPageBundle(join(root, 'empty'))).toThrow(/not built: run npm run build/)
  })
})
