/** A trip of 5,000 pieces and 60 nights opens, changes and is saved. Time is that of the processor: other work on the machine does not count. */
import { describe, expect, it } from 'vitest'
import { applyEdit, createHistory, parseTrip, record, serializeTrip } from '../../shared/document/index.ts'
import { createHost } from '../../shared/host/index.ts'
import { ask, value } from '../support/files/ask.ts'
import { emptyDisk, hostDouble } from '../support/files/host-ports.ts'
import { hugeTrip } from '../support/generators/huge-trip.ts'

const OPEN_MS = 2000
const SAVE_MS = 2000
const EDIT_MS = 500

async function timed<T>(
  what: string,
  job: () => T | Promise<T>,
): Promise<{ readonly given: T; readonly cpuMs: number }> {
  const begun = process.cpuUsage()
  const given = await job()
  const { user, system } = process.cpuUsage(begun)
  const cpuMs = Math.round((user + system) / 1000)
  console.log(`${what}: ${cpuMs} ms of processor`)
  return { given, cpuMs }
}

describe('a trip of 5,000 pieces and 60 nights', () => {
  const bytes = new TextEncoder().encode(hugeTrip(5000, 60))

  it('is read in under two seconds, the first time', async () => {
    const read = await timed(`reading ${bytes.length} bytes`, () => parseTrip(bytes))
    expect(read.given.ok && read.given.value.kit.pieces.length).toBe(5000)
    expect(read.given.ok && read.given.value.nights.length).toBe(60)
    expect(read.cpuMs).toBeLessThan(OPEN_MS)
  })

  it('is opened by the host, changed and saved without a wait', async () => {
    const disk = emptyDisk()
    disk.put('/trips/huge.trip.json', bytes)
    const double = hostDouble({ disk })
    const host = createHost(double.ports, '/trips/huge.trip.json')
    const { startToken } = value(await ask(host, 'a', 'readHostInfo', {}))
    const opened = await timed('opening', () =>
      ask(host, 'a', 'openTrip', { from: { kind: 'token', token: startToken ?? '' }, asCopy: false }),
    )
    expect(opened.cpuMs).toBeLessThan(OPEN_MS)
    const { file, trip } = value(opened.given) ?? {}
    if (file === undefined || trip === undefined) throw new Error('not opened')
    const edited = await timed('one edit, written down', () => {
      const after = applyEdit(trip, { kind: 'remove-piece', pieceId: 'more-7' })
      if (!after.ok) throw new Error(after.problem.code)
      return { trip: after.value, history: record(createHistory(), trip, after.value, { name: 'remove' }) }
    })
    expect(edited.given.trip.kit.pieces).toHaveLength(4999)
    expect(edited.given.history.past).toHaveLength(1)
    expect(edited.cpuMs).toBeLessThan(EDIT_MS)
    const saved = await timed('saving', () =>
      ask(host, 'a', 'saveTrip', { token: file.token, trip: edited.given.trip, replacing: null }),
    )
    value(saved.given)
    expect(saved.cpuMs).toBeLessThan(SAVE_MS)
    expect(Buffer.from(disk.get('/trips/huge.trip.json') ?? []).toString()).toBe(serializeTrip(edited.given.trip))
  })
})
