/** What a page can ask of its host, over a disk in memory. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { parseTrip, serializeTrip } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import { createHost } from '../../../shared/host/index.ts'
import type { Host } from '../../../shared/host/index.ts'
import { ask, refusal, value } from '../../support/files/ask.ts'
import { emptyDisk, hostDouble } from '../../support/files/host-ports.ts'
import type { HostDouble } from '../../support/files/host-ports.ts'
import type { MemoryDisk } from '../../support/files/memory-calls.ts'

const SAMPLE = 'bats-by-the-quarry'
const sampleBytes = readFileSync(join(import.meta.dirname, '../../../assets/samples', `${SAMPLE}.trip.json`))
const parsed = parseTrip(sampleBytes)
if (!parsed.ok) throw new Error('the sample is refused')
const trip = parsed.value
const retitled = (title: string): Trip => ({ ...trip, title })
const PATH = '/trips/quarry.trip.json'
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)
const titleAt = (disk: MemoryDisk, path: string): string =>
  JSON.parse(Buffer.from(disk.get(path) ?? []).toString()).title

let disk = emptyDisk()
let double: HostDouble = hostDouble({ disk })
let host: Host = createHost(double.ports, null)

beforeEach(() => {
  disk = emptyDisk()
  disk.put(PATH, utf8(serializeTrip(trip)))
  disk.put(`/samples/${SAMPLE}.trip.json`, sampleBytes)
  double = hostDouble({ disk })
  host = createHost(double.ports, PATH)
})

async function openStart(caller = 'a'): Promise<string> {
  const { startToken } = value(await ask(host, caller, 'readHostInfo', {}))
  const opened = value(
    await ask(host, caller, 'openTrip', { from: { kind: 'token', token: startToken ?? '' }, asCopy: false }),
  )
  return opened?.file.token ?? ''
}

describe('opening', () => {
  it('opens the trip named at the start, by a token and never by a path', async () => {
    const { startToken, hasDialogs, tripsFolder } = value(await ask(host, 'a', 'readHostInfo', {}))
    expect([startToken, hasDialogs, tripsFolder]).toEqual([expect.any(String), false, '/trips'])
    expect(startToken).not.toContain('/')
    const opened = value(
      await ask(host, 'a', 'openTrip', { from: { kind: 'token', token: startToken ?? '' }, asCopy: false }),
    )
    expect(opened).toMatchObject({
      file: { name: 'quarry.trip.json', folder: '/trips', writable: true },
      unsaved: false,
    })
    expect(opened?.trip).toEqual(trip)
  })

  it('refuses a token it never gave out and a path in its place', async () => {
    const token = await ask(host, 'a', 'openTrip', { from: { kind: 'token', token: 'not-a-token' }, asCopy: false })
    expect(refusal(token).code).toBe('trip-token-unknown')
    const path = await host.handle('a', 'openTrip', { from: { kind: 'token', token: PATH }, asCopy: false })
    expect(path).toMatchObject({ ok: false, problem: { code: 'host-input-refused' } })
    const extra = await host.handle('a', 'openTrip', { from: { kind: 'dialog', path: PATH }, asCopy: false })
    expect(extra).toMatchObject({ ok: false, problem: { code: 'host-input-refused' } })
  })

  it('lists samples and opens one as a copy without a file', async () => {
    const { samples } = value(await ask(host, 'a', 'listSamples', {}))
    expect(samples).toEqual([{ id: SAMPLE, title: trip.title, units: trip.preferences.units }])
    const opened = value(await ask(host, 'a', 'openSample', { id: SAMPLE }))
    expect(opened.file.folder).toBeNull()
    expect(refusal(await ask(host, 'a', 'openSample', { id: 'other' })).code).toBe('sample-unknown')
    const saved = await ask(host, 'a', 'saveTrip', { token: opened.file.token, trip, replacing: null })
    expect(refusal(saved).code).toBe('trip-has-no-file')
  })

  it('opens bytes that a page was given, and says what is wrong with bytes that are no trip', async () => {
    const base64 = Buffer.from(sampleBytes).toString('base64')
    const opened = value(
      await ask(host, 'a', 'openTrip', { from: { kind: 'bytes', name: '../x.json', base64 }, asCopy: false }),
    )
    expect(opened?.file).toMatchObject({ name: 'x.trip.json', folder: null })
    const bad = await ask(host, 'a', 'openTrip', {
      from: { kind: 'bytes', name: 'x', base64: Buffer.from('{"a":').toString('base64') },
      asCopy: false,
    })
    expect(refusal(bad).code).not.toBe('')
    const torn = await ask(host, 'a', 'openTrip', { from: { kind: 'bytes', name: 'x', base64: 'abc' }, asCopy: false })
    expect(refusal(torn).code).toBe('base64-unreadable')
  })

  it('has no dialogs here, and opens what the dialog names where there are some', async () => {
    const none = await ask(host, 'a', 'openTrip', { from: { kind: 'dialog' }, asCopy: false })
    expect(refusal(none).code).toBe('host-has-no-dialogs')
    const other = createHost(hostDouble({ disk, answers: [PATH, null] }).ports, null)
    expect(value(await ask(other, 'a', 'openTrip', { from: { kind: 'dialog' }, asCopy: false }))?.file.name).toBe(
      'quarry.trip.json',
    )
    expect(value(await ask(other, 'a', 'openTrip', { from: { kind: 'dialog' }, asCopy: false }))).toBeNull()
  })

  it('brings the window to the front that has the file already, also when it is named by a link', async () => {
    await openStart('a')
    disk.addLink('/trips/link.json', PATH)
    const token = host.offerPath('/trips/link.json')
    const second = await ask(host, 'b', 'openTrip', { from: { kind: 'token', token }, asCopy: false })
    expect(refusal(second).code).toBe('trip-open-in-window')
    expect(double.focused).toEqual(['a'])
    const copy = value(await ask(host, 'b', 'openTrip', { from: { kind: 'token', token }, asCopy: true }))
    expect(copy).toMatchObject({ file: { folder: null }, unsaved: true })
    expect(await host.whoHas('/trips/link.json')).toBe('a')
  })

  it('gives the file up when its window goes or starts anew', async () => {
    const token = await openStart('a')
    await host.release('a')
    expect(refusal(await ask(host, 'a', 'checkDisk', { token })).code).toBe('trip-token-unknown')
    await openStart('b')
    await ask(host, 'b', 'readHostInfo', {})
    await openStart('c')
    expect(await host.whoHas(PATH)).toBe('c')
    expect(disk.names('/locks')).toHaveLength(1)
  })

  it('remembers recent trips, says which are gone, and forgets on request', async () => {
    await openStart()
    disk.put('/trips/gone.trip.json', utf8(serializeTrip(trip)))
    const token = host.offerPath('/trips/gone.trip.json')
    value(await ask(host, 'b', 'openTrip', { from: { kind: 'token', token }, asCopy: false }))
    await disk.calls().unlink('/trips/gone.trip.json')
    const { trips } = value(await ask(host, 'a', 'recentTrips', {}))
    expect(trips.map(({ name, missing }) => [name, missing])).toEqual([
      ['gone.trip.json', true],
      ['quarry.trip.json', false],
    ])
    value(await ask(host, 'a', 'forgetRecent', { token: trips[0]?.token ?? '' }))
    expect(value(await ask(host, 'a', 'recentTrips', {})).trips).toHaveLength(1)
  })

  it('does not let one window use the token of another', async () => {
    const token = await openStart('a')
    const stolen = await ask(host, 'b', 'saveTrip', { token, trip: retitled('theirs'), replacing: null })
    expect(refusal(stolen).code).toBe('trip-token-unknown')
    expect(titleAt(disk, PATH)).toBe(trip.title)
  })
})

describe('saving', () => {
  it('saves, keeps the version before, and saves again', async () => {
    const token = await openStart()
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('one'), replacing: null }))
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('two'), replacing: null }))
    expect(titleAt(disk, PATH)).toBe('two')
    const { backups } = value(await ask(host, 'a', 'listBackups', { token }))
    expect(backups).toHaveLength(2)
    const newest = value(await ask(host, 'a', 'openBackup', { token, id: backups[0]?.id ?? '' }))
    expect(newest).toMatchObject({ trip: { title: 'one' }, unsaved: true })
    expect(refusal(await ask(host, 'a', 'openBackup', { token, id: '../../x' })).code).toBe('backup-unknown')
  })

  it('saves in turn what is asked for at once', async () => {
    const token = await openStart()
    const titles = ['1', '2', '3', '4', '5']
    const saves = titles.map((title) => ask(host, 'a', 'saveTrip', { token, trip: retitled(title), replacing: null }))
    for (const saved of await Promise.all(saves)) value(saved)
    expect(titleAt(disk, PATH)).toBe('5')
  })

  it('never saves a trip that it could not open again', async () => {
    const token = await openStart()
    const [night] = trip.nights
    if (night === undefined) throw new Error('the sample has no night')
    const broken = { ...trip, nights: [night, night] }
    expect(refusal(await ask(host, 'a', 'saveTrip', { token, trip: broken, replacing: null })).code).not.toBe('')
    expect(titleAt(disk, PATH)).toBe(trip.title)
  })

  it('saves under a free name in the trips folder where there are no dialogs', async () => {
    const opened = value(await ask(host, 'a', 'openSample', { id: SAMPLE }))
    const { token } = opened.file
    const saved = value(await ask(host, 'a', 'saveTripAs', { token, trip, name: '../../etc/quarry' }))
    expect(saved?.file).toMatchObject({ token, folder: '/trips', name: 'etc quarry.trip.json' })
    const again = value(await ask(host, 'a', 'saveTripAs', { token, trip, name: 'quarry' }))
    expect(again?.file.name).toBe('quarry (2).trip.json')
    expect(titleAt(disk, PATH)).toBe(trip.title)
    value(await ask(host, 'a', 'saveTrip', { token, trip: retitled('later'), replacing: null }))
    expect(titleAt(disk, '/trips/quarry (2).trip.json')).toBe('later')
  })

  it('saves where the dialog says, and does nothing where it is closed', async () => {
    const other = hostDouble({ disk, answers: ['/trips/new.trip.json', null, PATH] })
    host = createHost(other.ports, null)
    const { token } = value(await ask(host, 'a', 'openSample', { id: SAMPLE })).file
    expect(value(await ask(host, 'a', 'saveTripAs', { token, trip, name: 'n' }))?.file.name).toBe('new.trip.json')
    expect(value(await ask(host, 'a', 'saveTripAs', { token, trip, name: 'n' }))).toBeNull()
    // The dialog asked before it named a file that exists; the old one is kept as a backup.
    value(await ask(host, 'a', 'saveTripAs', { token, trip: retitled('over'), name: 'n' }))
    expect(titleAt(disk, PATH)).toBe('over')
    expect(value(await ask(host, 'a', 'listBackups', { token })).backups).toHaveLength(1)
  })

  it('does not save over a file that another window has open', async () => {
    const other = hostDouble({ disk, answers: [PATH] })
    host = createHost(other.ports, PATH)
    await openStart('a')
    const { token } = value(await ask(host, 'b', 'openSample', { id: SAMPLE })).file
    expect(refusal(await ask(host, 'b', 'saveTripAs', { token, trip, name: 'n' })).code).toBe('trip-open-in-window')
  })

  it('tells the window whether closing it would lose an edit', async () => {
    const token = await openStart()
    value(await ask(host, 'a', 'markUnsaved', { token, unsaved: true }))
    expect(double.unsaved.get('a')).toBe(true)
    value(await ask(host, 'a', 'saveTrip', { token, trip, replacing: null }))
    expect(double.unsaved.get('a')).toBe(false)
  })
})

describe('the recovery journal', () => {
  it('offers unsaved work after the window is gone, on its own file, without touching it', async () => {
    const token = await openStart()
    value(await ask(host, 'a', 'keepRecovery', { token, trip: retitled('unsaved') }))
    expect(value(await ask(host, 'a', 'listRecoveries', {})).recoveries).toEqual([])
    await host.release('a')
    const { recoveries } = value(await ask(host, 'b', 'listRecoveries', {}))
    expect(recoveries.map(({ title, fileName }) => [title, fileName])).toEqual([['unsaved', 'quarry.trip.json']])
    const opened = value(await ask(host, 'b', 'openRecovery', { id: recoveries[0]?.id ?? '' }))
    expect(opened).toMatchObject({ trip: { title: 'unsaved' }, unsaved: true, file: { folder: '/trips' } })
    expect(titleAt(disk, PATH)).toBe(trip.title)
    value(await ask(host, 'b', 'saveTrip', { token: opened.file.token, trip: opened.trip, replacing: null }))
    expect(titleAt(disk, PATH)).toBe('unsaved')
    expect(disk.names('/journal')).toEqual([])
  })

  it('asks before it overwrites a file that has changed since the crash', async () => {
    const token = await openStart()
    value(await ask(host, 'a', 'keepRecovery', { token, trip: retitled('unsaved') }))
    await host.release('a')
    disk.put(PATH, utf8(serializeTrip(retitled('by another'))))
    const { recoveries } = value(await ask(host, 'b', 'listRecoveries', {}))
    const opened = value(await ask(host, 'b', 'openRecovery', { id: recoveries[0]?.id ?? '' }))
    const saved = await ask(host, 'b', 'saveTrip', { token: opened.file.token, trip: opened.trip, replacing: null })
    expect(refusal(saved).code).toBe('trip-changed-on-disk')
    expect(titleAt(disk, PATH)).toBe('by another')
  })

  it('passes over a copy that was cut short, for the one before it', async () => {
    const token = await openStart()
    value(await ask(host, 'a', 'keepRecovery', { token, trip: retitled('whole') }))
    value(await ask(host, 'a', 'keepRecovery', { token, trip: retitled('torn') }))
    const last = [...disk.names('/journal')].sort().at(-1) ?? ''
    const bytes = disk.get(`/journal/${last}`) ?? new Uint8Array()
    for (const cut of [0, 1, 40, bytes.length - 70, bytes.length - 1]) {
      disk.put(`/journal/${last}`, bytes.slice(0, cut))
      const again = createHost(hostDouble({ disk }).ports, null)
      const { recoveries } = value(await ask(again, 'z', 'listRecoveries', {}))
      expect(
        recoveries.map(({ title }) => title),
        `cut at ${cut}`,
      ).toEqual(['whole'])
    }
  })

  it('drops the copy when its trip is closed or when the user says so', async () => {
    const token = await openStart()
    value(await ask(host, 'a', 'keepRecovery', { token, trip }))
    value(await ask(host, 'a', 'closeTrip', { token }))
    expect(disk.names('/journal')).toEqual([])
    const { token: next } = value(await ask(host, 'a', 'adoptTrip', { name: 'x', trip }))
    value(await ask(host, 'a', 'keepRecovery', { token: next, trip }))
    await host.release('a')
    const { recoveries } = value(await ask(host, 'a', 'listRecoveries', {}))
    value(await ask(host, 'a', 'dropRecovery', { id: recoveries[0]?.id ?? '' }))
    expect(disk.names('/journal')).toEqual([])
    expect(refusal(await ask(host, 'a', 'openRecovery', { id: 'nothing-1' })).code).toBe('recovery-unknown')
  })
})

describe('what the host says of itself', () => {
  it('answers a wait with the event, or as quiet after a while', async () => {
    expect(value(await ask(host, 'a', 'nextEvent', {}))).toEqual({ kind: 'quiet' })
    const waiting = ask(host, 'a', 'nextEvent', {})
    double.waits.emit('a', { kind: 'menu', command: 'save' })
    expect(value(await waiting)).toEqual({ kind: 'menu', command: 'save' })
    double.waits.emit('a', { kind: 'menu', command: 'undo' })
    expect(value(await ask(host, 'a', 'nextEvent', {}))).toEqual({ kind: 'menu', command: 'undo' })
  })

  it('notes a crash by places in our own code, without a word of the trip or a path', async () => {
    const input = {
      where: 'view' as const,
      errorName: 'TypeError: Imke sleeps in /home/imke',
      frames: ['at draw (/home/imke/kipstow/renderer/scene/scene-view.ts:12:5) Imke', 'Imke was here'],
    }
    value(await ask(host, 'a', 'noteCrash', input))
    const { text } = value(await ask(host, 'a', 'readDiagnostics', {}))
    expect(text).toContain('scene-view.ts:12:5')
    expect(text).not.toMatch(/imke/i)
  })

  it('names folders by key', async () => {
    expect(value(await ask(host, 'a', 'revealFolder', { folder: 'log' }))).toEqual({ path: '/log', shown: false })
    expect(await host.handle('a', 'revealFolder', { folder: '/etc' })).toMatchObject({ ok: false })
  })
})
