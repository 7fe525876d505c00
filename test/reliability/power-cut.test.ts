/** The power goes at any call of a save: afterwards the file is the old one or the new one, whole. */
import { describe, expect, it } from 'vitest'
import { saveAtomically, sha256Of } from '../../electron/files/atomic-save.ts'
import type { FileCalls } from '../../electron/files/calls.ts'
import { failingCalls } from '../support/files/failing-calls.ts'
import { MemoryDisk } from '../support/files/memory-calls.ts'
import type { Outage } from '../support/files/memory-calls.ts'

const PATH = '/trips/a.trip.json'
const OLD = Buffer.from(JSON.stringify({ version: 'old', filler: 'x'.repeat(500) }))
const NEW = Buffer.from(JSON.stringify({ version: 'new', filler: 'y'.repeat(900) }))
const OUTAGES: readonly Outage[] = (['kept', 'lost', 'half'] as const).flatMap((data) =>
  (['kept', 'lost'] as const).map((names) => ({ data, names })),
)

const unsynced = (calls: FileCalls): FileCalls => ({
  ...calls,
  open: async (path, flags, mode) => ({ ...(await calls.open(path, flags, mode)), sync: async () => undefined }),
})

type Ending = {
  readonly found: Uint8Array | null
  readonly acknowledged: boolean
  readonly outage: Outage
  readonly call: number
}

async function cutEverywhere(
  before: Uint8Array | null,
  wrap: (calls: FileCalls) => FileCalls,
): Promise<readonly Ending[]> {
  const endings: Ending[] = []
  for (let call = 1; ; call += 1) {
    const disk = new MemoryDisk()
    disk.addFolder('/trips')
    if (before !== null) disk.put(PATH, before)
    const failing = failingCalls(wrap(disk.calls()), { atCall: call, code: 'POWER', forEver: true })
    const expected = before === null ? null : sha256Of(before)
    const done = await saveAtomically(failing.calls, { path: PATH, bytes: NEW, expected, windows: false }).then(
      (result) => result.ok,
      () => false,
    )
    const cut = failing.count() >= call
    for (const outage of OUTAGES) {
      endings.push({ found: disk.afterOutage(outage).get(PATH), acknowledged: done && !cut, outage, call })
    }
    if (!cut) return endings
  }
}

const isOneOf = (found: Uint8Array | null, allowed: readonly (Uint8Array | null)[]): boolean =>
  allowed.some((each) => (each === null || found === null ? each === found : Buffer.compare(each, found) === 0))

describe('a save cut off by a power cut', () => {
  it('leaves the old file or the new one, whole, at every call and for every fate of unsynced bytes and names', async () => {
    const endings = await cutEverywhere(OLD, (calls) => calls)
    expect(endings.length).toBeGreaterThanOrEqual(8 * OUTAGES.length)
    expect(endings.filter(({ found }) => !isOneOf(found, [OLD, NEW]))).toEqual([])
  })

  it('leaves the new file once it was acknowledged', async () => {
    const acknowledged = (await cutEverywhere(OLD, (calls) => calls)).filter((ending) => ending.acknowledged)
    expect(acknowledged.length).toBe(OUTAGES.length)
    for (const { found } of acknowledged) expect(isOneOf(found, [NEW])).toBe(true)
  })

  it('leaves nothing or the whole new file where there was none before', async () => {
    const endings = await cutEverywhere(null, (calls) => calls)
    expect(endings.filter(({ found }) => !isOneOf(found, [null, NEW]))).toEqual([])
  })

  it('would be caught by this harness if it did not sync', async () => {
    const endings = await cutEverywhere(OLD, unsynced)
    expect(endings.filter(({ found }) => !isOneOf(found, [OLD, NEW])).length).toBeGreaterThan(0)
  })
})
