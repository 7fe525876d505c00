/** What a page is told, and what stays held, when something outside the host fails: disk, locks, backups, journal, sheets. */
import { readFileSync } from 'node:fs'
import { beforeEach, describe, expect, it } from 'vitest'
import { parseTrip, serializeTrip } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import { createHost, planTrip } from '../../../shared/host/index.ts'
import type { Host, HostPorts, OperationInput, OperationName } from '../../../shared/host/index.ts'
import { fail, ok, problem } from '../../../shared/result/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'
import { ask, refusal, value } from '../../support/files/ask.ts'
import { emptyDisk, hostDouble } from '../../support/files/host-ports.ts'
import type { HostDouble } from '../../support/files/host-ports.ts'

const parsed = parseTrip(readFileSync(new URL('../../../assets/samples/bats-by-the-quarry.trip.json', import.meta.url)))
if (!parsed.ok) throw new Error('the sample is refused')
const trip = parsed.value
const retitled = (title: string): Trip => ({ ...trip, title })
const PATH = '/trips/quarry.trip.json'
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)
const broken = async () => fail(problem('broken', [], { by: 'the test' }))

let disk = emptyDisk()
let double: HostDouble = hostDouble({ disk })

beforeEach(() => {
  disk = emptyDisk()
  disk.put(PATH, utf8(serializeTrip(trip)))
  disk.put('/samples/quarry.trip.json', utf8(serializeTrip(trip)))
  double = hostDouble({ disk })
})

type Over = { readonly [P in keyof HostPorts]?: Partial<HostPorts[P]> }

/** A host that may start to fail: `break` takes effect from then on. */
function breakable(base: HostDouble = double): { readonly host: Host; readonly break: (over: Over) => void } {
  let over: Over = {}
  const port = <P extends 'files' | 'backups' | 'journal' | 'locks' | 'samples' | 'sheets'>(name: P): HostPorts[P] =>
    new Proxy(base.ports[name], { get: (real, key) => Reflect.get({ ...real, ...over[name] }, key) })
  const ports: HostPorts = {
    ...base.ports,
    files: port('files'),
    backups: port('backups'),
    journal: port('journal'),
    locks: port('locks'),
    samples: port('samples'),
    sheets: port('sheets'),
  }
  const host = createHost(ports, PATH)
  return {
    host,
    break: (next) => {
      over = next
    },
  }
}

async function openStart(host: Host, caller = 'a'): Promise<string> {
  const { startToken } = value(await ask(host, caller, 'readHostInfo', {}))
  const from = { kind: 'token', token: startToken ?? '' } as const
  return value(await ask(host, caller, 'openTrip', { from, asCopy: false }))?.file.token ?? ''
}
const untitled = async (host: Host): Promise<string> =>
  value(await ask(host, 'a', 'adoptTrip', { name: 'new', trip })).token

describe('a port that fails', () => {
  type Case = readonly [what: string, name: OperationName, input: (token: string) => object, over: Over]
  const saveAs = (token: string): OperationInput<'saveTripAs'> => ({ token, trip, name: 'other' })
  const theirs = (token: string) => ({ from: { kind: 'theirs', token }, asCopy: false })
  const cases: readonly Case[] = [
    ['the list of samples', 'listSamples', () => ({}), { samples: { list: broken } }],
    ['a sample', 'openSample', () => ({ id: 'quarry' }), { samples: { list: broken } }],
    ['their version', 'openTrip', theirs, { files: { read: broken } }],
    ['the state of the file', 'checkDisk', (token) => ({ token }), { files: { fingerprint: broken } }],
    ['closing', 'closeTrip', (token) => ({ token }), { journal: { drop: broken } }],
    ['saving (reading first)', 'saveTrip', (token) => ({ token, trip, replacing: null }), { files: { read: broken } }],
    ['saving', 'saveTrip', (token) => ({ token, trip, replacing: null }), { files: { save: broken } }],
    ['saving as (a free name)', 'saveTripAs', saveAs, { files: { freePath: broken } }],
    ['saving as (the lock)', 'saveTripAs', saveAs, { locks: { take: broken } }],
    ['saving as', 'saveTripAs', saveAs, { files: { save: broken } }],
    ['saving as (the name it got)', 'saveTripAs', saveAs, { files: { identify: broken } }],
    ['the list of versions', 'listBackups', (token) => ({ token }), { backups: { list: broken } }],
    ['a version', 'openBackup', (token) => ({ token, id: 'x' }), { backups: { read: broken } }],
    ['keeping unsaved work', 'keepRecovery', (token) => ({ token, trip }), { journal: { keep: broken } }],
    ['the list of unsaved work', 'listRecoveries', () => ({}), { journal: { list: broken } }],
    ['unsaved work', 'openRecovery', () => ({ id: 'nothing-1' }), { journal: { read: broken } }],
    ['dropping unsaved work', 'dropRecovery', () => ({ id: 'nothing-1' }), { journal: { drop: broken } }],
  ]
  it.each(cases)('says so to the page: %s', async (_, name, input, over) => {
    const { host, break: fails } = breakable()
    const token = await openStart(host)
    fails(over)
    const found = await host.handle('a', name, input(token))
    expect(found).toEqual({ ok: false, problem: { code: 'broken', path: [], params: { by: 'the test' } } })
  })

  it.each<[string, boolean, Over]>([
    ['who it is', false, { files: { identify: broken } }],
    ['its lock', false, { locks: { take: broken } }],
    ['its bytes', false, { files: { read: broken } }],
    ['who it is, as a copy', true, { files: { identify: broken } }],
    ['its bytes, as a copy', true, { files: { read: broken } }],
  ])('on opening a file: %s; afterwards the file is free', async (_, asCopy, over) => {
    const { host, break: fails } = breakable()
    const token = host.offerPath(PATH)
    const open = () => ask(host, 'a', 'openTrip', { from: { kind: 'token', token }, asCopy })
    fails(over)
    expect(refusal(await open()).code).toBe('broken')
    expect(disk.names('/locks')).toEqual([])
    expect(await host.whoHas(PATH)).toBeNull()
    fails({})
    expect(value(await open())?.trip).toEqual(trip)
  })

  it('a file that is no trip is refused on opening, on taking theirs, as a sample and as a version, and lets go of its lock', async () => {
    const { host } = breakable()
    disk.put('/trips/note.json', utf8('{"a":'))
    const token = host.offerPath('/trips/note.json')
    for (const asCopy of [false, true]) {
      const opened = await ask(host, 'a', 'openTrip', { from: { kind: 'token', token }, asCopy })
      expect(refusal(opened).code).toMatch(/^json-|^file-|^trip-/)
    }
    expect(disk.names('/locks')).toEqual([])
    const mine = await openStart(host)
    disk.put(PATH, utf8('{"a":'))
    const taken = await ask(host, 'a', 'openTrip', { from: { kind: 'theirs', token: mine }, asCopy: false })
    expect(taken.ok).toBe(false)
    disk.put('/samples/quarry.trip.json', utf8('{"a":'))
    expect((await ask(host, 'a', 'listSamples', {})).ok).toBe(false)
    expect((await ask(host, 'a', 'openSample', { id: 'quarry' })).ok).toBe(false)
    const { host: other, break: fails } = breakable()
    disk.put(PATH, utf8(serializeTrip(trip)))
    await host.release('a')
    const theirToken = await openStart(other)
    fails({
      backups: { read: async () => ok(utf8('{"a":')) },
      journal: { read: async () => ok({ entry, bytes: utf8('{') }) },
    })
    expect((await ask(other, 'a', 'openBackup', { token: theirToken, id: 'x' })).ok).toBe(false)
    expect((await ask(other, 'a', 'openRecovery', { id: 'x' })).ok).toBe(false)
  })

  it('a save under a new name that fails half-way lets go of the new lock and stays with the old file', async () => {
    for (const over of [{ files: { save: broken } }, { files: { identify: broken } }] satisfies Over[]) {
      const { host, break: fails } = breakable()
      const token = await openStart(host)
      fails(over)
      expect(refusal(await ask(host, 'a', 'saveTripAs', { token, trip, name: 'other' })).code).toBe('broken')
      expect(disk.names('/locks')).toHaveLength(1)
      fails({})
      const saved = value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('still here'), replacing: null }))
      expect(saved.file.name).toBe('quarry.trip.json')
      disk.put(PATH, utf8(serializeTrip(trip)))
      await host.release('a')
    }
  })

  it('a version that cannot be kept does not stop the save, and the log says why', async () => {
    const { host, break: fails } = breakable()
    const token = await openStart(host)
    fails({ backups: { keep: broken } })
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('saved'), replacing: null }))
    expect(double.log).toEqual(['backup-not-kept {"code":"broken"}'])
  })

  it('nor does unsaved work that cannot be dropped afterwards', async () => {
    const { host, break: fails } = breakable()
    const token = await openStart(host)
    fails({ journal: { drop: broken } })
    value(await ask(host, 'a', 'saveTrip', { token, trip, replacing: null }))
    expect(double.log).toEqual(['recovery-not-dropped {"code":"broken"}'])
  })

  it('writes nothing into the log where all goes well', async () => {
    const { host } = breakable()
    const token = await openStart(host)
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('saved'), replacing: null }))
    expect(double.log).toEqual([])
  })

  it('after a save that the disk did not confirm the next one knows what stands there', async () => {
    const { host, break: fails } = breakable()
    const token = await openStart(host)
    const real = double.ports.files
    fails({
      files: {
        save: async (path, bytes, expected) => {
          const saved = await real.save(path, bytes, expected)
          return saved.ok ? fail(problem('file-not-durable', [], { sha256: saved.value.sha256 })) : saved
        },
      },
    })
    const unsure = await ask(host, 'a', 'saveTrip', { token, trip: retitled('unsure'), replacing: null })
    expect(refusal(unsure).code).toBe('file-not-durable')
    fails({})
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('sure'), replacing: null }))
    expect(Buffer.from(disk.get(PATH) ?? []).toString()).toContain('sure')
  })

  it('another refusal that bears a fingerprint changes nothing', async () => {
    const { host, break: fails } = breakable()
    const token = await openStart(host)
    fails({ files: { save: async () => fail(problem('file-unreadable', [], { sha256: '0'.repeat(64) })) } })
    expect(refusal(await ask(host, 'a', 'saveTrip', { token, trip, replacing: null })).code).toBe('file-unreadable')
    expect(value(await ask(host, 'a', 'checkDisk', { token })).state).toBe('same')
  })
})

const entry = { id: 'x', title: 't', fileName: 'f', path: null, baseSha256: null, keptAtUtc: 0 }

describe('the state of the file', () => {
  it('is same, changed, missing or never saved', async () => {
    const { host } = breakable()
    const token = await openStart(host)
    const state = async (of: string) => value(await ask(host, 'a', 'checkDisk', { token: of }))
    const same = await state(token)
    expect(same).toEqual({ state: 'same', sha256: expect.stringMatching(/^[0-9a-f]{64}$/) })
    disk.put(PATH, utf8(serializeTrip(retitled('by another'))))
    const changed = await state(token)
    expect(changed.state).toBe('changed')
    expect(changed.sha256).not.toBe(same.sha256)
    await disk.calls().unlink(PATH)
    expect(await state(token)).toEqual({ state: 'missing', sha256: null })
    expect(await state(await untitled(host))).toEqual({ state: 'never-saved', sha256: null })
  })

  it('a trip without a file has no versions, none to open and none of theirs', async () => {
    const { host } = breakable()
    const token = await untitled(host)
    expect(value(await ask(host, 'a', 'listBackups', { token }))).toEqual({ backups: [] })
    const none = { code: 'trip-has-no-file', path: [], params: {} }
    expect(refusal(await ask(host, 'a', 'openBackup', { token, id: 'x' }))).toEqual(none)
    const theirs = await ask(host, 'a', 'openTrip', { from: { kind: 'theirs', token }, asCopy: false })
    expect(refusal(theirs)).toEqual(none)
    expect(refusal(await ask(host, 'a', 'saveTrip', { token, trip, replacing: null }))).toEqual(none)
  })

  it('an unknown token is refused by every operation that takes one', async () => {
    const { host } = breakable()
    const token = 'token-999999'
    const asked = [
      ['forgetRecent', { token }],
      ['openTrip', { from: { kind: 'token', token }, asCopy: false }],
      ['openTrip', { from: { kind: 'theirs', token }, asCopy: false }],
      ['closeTrip', { token }],
      ['checkDisk', { token }],
      ['saveTrip', { token, trip, replacing: null }],
      ['saveTripAs', { token, trip, name: 'x' }],
      ['markUnsaved', { token, unsaved: true }],
      ['listBackups', { token }],
      ['openBackup', { token, id: 'x' }],
      ['keepRecovery', { token, trip }],
    ] as const
    for (const [name, input] of asked) {
      const found = await host.handle('a', name, input)
      expect(found, name).toEqual({ ok: false, problem: { code: 'trip-token-unknown', path: [], params: {} } })
    }
    expect(double.unsaved.size).toBe(0)
  })

  it('a file that went while the trip was open is written again only where the user says so', async () => {
    const { host } = breakable()
    const token = await openStart(host)
    await disk.calls().unlink(PATH)
    const refused = refusal(await ask(host, 'a', 'saveTrip', { token, trip, replacing: null }))
    expect(refused).toEqual({ code: 'trip-file-missing', path: [], params: { name: 'quarry.trip.json' } })
    value(await ask(host, 'a', 'saveTrip', { token, trip, replacing: 'missing' }))
    expect(value(await ask(host, 'a', 'checkDisk', { token })).state).toBe('same')
  })

  it('closing a window says that nothing is unsaved any more', async () => {
    const { host } = breakable()
    const token = await openStart(host)
    value(await ask(host, 'a', 'markUnsaved', { token, unsaved: true }))
    await host.release('a')
    expect(double.unsaved.get('a')).toBe(false)
  })
})

describe('saving where a dialog says', () => {
  const withDialogs = (...answers: (string | null)[]) => {
    const base = hostDouble({ disk, answers })
    return { ...breakable(base), base }
  }

  it.each<[string, Over]>([
    ['whose place cannot be told', { files: { identify: broken } }],
    ['whose bytes cannot be read', { files: { fingerprint: broken } }],
  ])('refuses a file %s', async (_, over) => {
    const { host, break: fails } = withDialogs('/trips/new.trip.json')
    const token = await untitled(host)
    fails(over)
    expect(refusal(await ask(host, 'a', 'saveTripAs', { token, trip, name: 'n' })).code).toBe('broken')
  })

  it('over the very file that is open, present or gone, is a save', async () => {
    const { host } = withDialogs(PATH, PATH)
    const token = await openStart(host)
    value(await ask(host, 'a', 'saveTripAs', { token, trip: retitled('again'), name: 'n' }))
    await disk.calls().unlink(PATH)
    const saved = value(await ask(host, 'a', 'saveTripAs', { token, trip: retitled('anew'), name: 'n' }))
    expect(saved?.file).toMatchObject({ token, name: 'quarry.trip.json' })
    expect(Buffer.from(disk.get(PATH) ?? []).toString()).toContain('anew')
    expect(disk.names('/locks')).toHaveLength(1)
  })

  it('lets go of the file that was open before, and reads and keeps what it replaces', async () => {
    disk.put('/trips/old.trip.json', utf8(serializeTrip(retitled('old'))))
    const { host, base, break: fails } = withDialogs('/trips/old.trip.json', '/trips/quarry.trip.json')
    const token = await openStart(host)
    fails({ backups: { keep: broken } })
    value(await ask(host, 'a', 'saveTripAs', { token, trip, name: 'n' }))
    expect(base.log).toEqual(['backup-not-kept {"code":"broken"}'])
    expect(await host.whoHas(PATH)).toBeNull()
    expect(await host.whoHas('/trips/old.trip.json')).toBe('a')
    expect(disk.names('/locks')).toHaveLength(1)
    fails({ files: { read: broken } })
    expect(refusal(await ask(host, 'a', 'saveTripAs', { token, trip, name: 'n' })).code).toBe('broken')
    expect(disk.names('/locks')).toHaveLength(1)
  })
})

describe('unsaved work', () => {
  const leave = async (host: Host): Promise<string> => {
    const token = await openStart(host)
    value(await ask(host, 'a', 'keepRecovery', { token, trip: retitled('unsaved') }))
    await host.release('a')
    return value(await ask(host, 'b', 'listRecoveries', {})).recoveries[0]?.id ?? ''
  }

  it.each<[string, (host: Host) => Promise<unknown>]>([
    ['is gone', () => disk.calls().unlink(PATH)],
    ['is open in another window', (host) => openStart(host, 'c')],
  ])('of a file that %s comes back without a file, and is dropped once it is saved', async (_, before) => {
    const { host } = breakable()
    const id = await leave(host)
    await before(host)
    const opened = value(await ask(host, 'b', 'openRecovery', { id }))
    expect(opened).toMatchObject({ trip: { title: 'unsaved' }, unsaved: true, file: { folder: null } })
    value(await ask(host, 'b', 'saveTripAs', { token: opened.file.token, trip: opened.trip, name: 'saved' }))
    expect(disk.names('/journal')).toEqual([])
  })

  it('of a file that another program holds comes back without a file', async () => {
    const { host, break: fails } = breakable()
    const id = await leave(host)
    fails({ locks: { take: broken } })
    expect(value(await ask(host, 'b', 'openRecovery', { id })).file).toMatchObject({ folder: null })
  })

  it('of a trip never saved comes back as one', async () => {
    const { host } = breakable()
    const token = await untitled(host)
    value(await ask(host, 'a', 'keepRecovery', { token, trip }))
    await host.release('a')
    const [left] = value(await ask(host, 'b', 'listRecoveries', {})).recoveries
    expect(left).toEqual({ id: expect.any(String), title: trip.title, fileName: 'new.trip.json', keptAtUtc: 1000 })
    expect(value(await ask(host, 'b', 'openRecovery', { id: left?.id ?? '' })).file).toMatchObject({
      folder: null,
      name: 'new.trip.json',
    })
  })
})

describe('sheets', () => {
  const cardTrip = cardsTrip()
  const wanted = (deliver: 'folder' | 'bytes', ...sheets: ('load' | 'night')[]) => ({
    trip: cardTrip,
    plan: cardsPlan(cardTrip),
    sheets,
    deliver,
  })

  it('are given as bytes, each once', async () => {
    const { host } = breakable()
    const made = value(await ask(host, 'a', 'exportSheets', wanted('bytes', 'load', 'night', 'load')))
    expect(made).toEqual({
      folder: null,
      files: ['load', 'night'].map((name) => ({
        name: `${name}.txt`,
        mediaType: 'text/plain',
        base64: Buffer.from(name).toString('base64'),
      })),
    })
  })

  it('are written into a folder of the trip, never over a file that is there', async () => {
    const { host } = breakable()
    const folder = `/sheets/${cardTrip.title}`
    disk.addFolder(folder)
    const first = value(await ask(host, 'a', 'exportSheets', wanted('folder', 'load')))
    expect(first).toEqual({ folder, files: [{ name: 'load.txt', mediaType: 'text/plain', base64: null }] })
    const again = value(await ask(host, 'a', 'exportSheets', wanted('folder', 'load')))
    expect(again?.files.map(({ name }) => name)).toEqual(['load (2).txt'])
    expect([...disk.names(folder)].sort()).toEqual(['load (2).txt', 'load.txt'])
  })

  it('go where the dialog says, and nowhere where it is closed', async () => {
    const { host } = breakable(hostDouble({ disk, answers: ['/trips', null] }))
    expect(value(await ask(host, 'a', 'exportSheets', wanted('folder', 'load')))?.folder).toBe('/trips')
    expect(disk.names('/trips')).toContain('load.txt')
    expect(value(await ask(host, 'a', 'exportSheets', wanted('folder', 'load')))).toBeNull()
  })

  it.each<[string, 'folder' | 'bytes', Over]>([
    ['drawn', 'bytes', { sheets: { render: broken } }],
    ['named', 'folder', { files: { freePath: broken } }],
    ['written', 'folder', { files: { save: broken } }],
  ])('that cannot be %s are refused', async (_, deliver, over) => {
    const { host, break: fails } = breakable()
    fails(over)
    expect(refusal(await ask(host, 'a', 'exportSheets', wanted(deliver, 'load'))).code).toBe('broken')
  })
})

describe('what the host says', () => {
  it('says whether it has dialogs', async () => {
    const has = async (of: HostDouble) =>
      value(await ask(createHost(of.ports, null), 'a', 'readHostInfo', {})).hasDialogs
    expect(await has(double)).toBe(false)
    expect(await has(hostDouble({ disk, answers: [] }))).toBe(true)
  })

  it('plans no file that is no trip, and says all that is wrong with it', () => {
    const planned = planTrip(utf8('{"format": "kipstow-trip", "version": 1}'), {
      seed: 1,
      iterations: 1,
      remedies: false,
    })
    expect(planned.ok ? [] : planned.problem.map(({ code }) => code)).toContain('field-missing')
    expect(planned.ok ? 0 : planned.problem.length).toBeGreaterThan(3)
  })

  it('notes a crash as kind, place and own frames, and nothing else', async () => {
    const { host } = breakable()
    const frames = ['at f (scene-view.ts:12:5)', 'nowhere', 'https://host/assets/index-Bz.js:3:141', 'Trip.vue:7']
    value(await ask(host, 'a', 'noteCrash', { where: 'worker', errorName: 'TypeError', frames }))
    value(await ask(host, 'a', 'noteCrash', { where: 'view', errorName: 'Error: a trip', frames: [] }))
    expect(double.log.map((line) => JSON.parse(line.slice(line.indexOf('{'))))).toEqual([
      { where: 'worker', kind: 'TypeError', frames: 'scene-view.ts:12:5 index-Bz.js:3:141 Trip.vue:7' },
      { where: 'view', kind: 'Error', frames: '' },
    ])
    expect(double.log.every((line) => line.startsWith('page-crashed '))).toBe(true)
    expect(value(await ask(host, 'a', 'readDiagnostics', {})).text.split('\n')).toEqual([
      'kipstow 0.0.0',
      'host loopback',
      'platform linux',
      'language en',
      '',
      ...double.log,
    ])
  })

  it('names recent trips by file and folder, of either kind of path', async () => {
    const recents = {
      list: async () => [
        { path: 'C:\\Users\\a\\b.trip.json', openedAtUtc: 7 as Utc },
        { path: '/home/a/c.trip.json', openedAtUtc: 8 as Utc },
        { path: 'bare.trip.json', openedAtUtc: 9 as Utc },
      ],
      add: async () => {},
      forget: async () => {},
    }
    const host = createHost({ ...double.ports, recents }, null)
    const { trips } = value(await ask(host, 'a', 'recentTrips', {}))
    expect(trips.map(({ name, folder, openedAtUtc, missing }) => [name, folder, openedAtUtc, missing])).toEqual([
      ['b.trip.json', 'C:\\Users\\a', 7, true],
      ['c.trip.json', '/home/a', 8, true],
      ['bare.trip.json', '', 9, true],
    ])
  })

  it('knows its operations, and says which part of an input it refuses', async () => {
    const { host } = breakable()
    expect(refusal(await host.handle('a', 'toString', {}))).toEqual({
      code: 'host-operation-unknown',
      path: [],
      params: {},
    })
    expect(refusal(await host.handle('a', 'openTrip', { from: { kind: 'token', token: 7 }, asCopy: false }))).toEqual({
      code: 'host-input-refused',
      path: ['from', 'token'],
      params: { operation: 'openTrip' },
    })
  })

  it('gives the trip of the start to everyone, that of one window to that one until it goes', async () => {
    const { host } = breakable()
    host.startAt('b', '/trips/other.trip.json')
    const start = async (caller: string) => value(await ask(host, caller, 'readHostInfo', {})).startToken
    expect(await start('a')).toBe(host.offerPath(PATH))
    expect(await start('b')).toBe(host.offerPath('/trips/other.trip.json'))
    await host.release('b')
    expect(await start('b')).toBe(host.offerPath(PATH))
    expect(value(await ask(createHost(double.ports, null), 'a', 'readHostInfo', {})).startToken).toBeNull()
    expect(await host.whoHas('/trips/nowhere.trip.json')).toBeNull()
  })
})
