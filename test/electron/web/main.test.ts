/** The loopback host as the program that `npm start` runs. */
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { smallTrip } from '../../support/small-trip.ts'
import { openPage, startWebProgram } from '../../support/files/web-program.ts'

describe('the loopback program', () => {
  it('says one address after another, opens the trip named, and lets go of it when told to end', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'kipstow-web-trip-'))
    const path = join(folder, 'small.trip.json')
    writeFileSync(path, smallTrip())
    const program = startWebProgram(path)
    const first = await program.address()
    expect(first).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#code=[\w-]{32}$/)
    program.child.send('new-address')
    const second = await program.address()
    // A new address makes the one before it void.
    expect(await openPage(first)).toBeNull()
    const page = await openPage(second)
    if (page === null) throw new Error('the second address is refused')
    expect(await openPage(second)).toBeNull()
    const info = await page.call('readHostInfo', {})
    if (!info.ok || info.value.startToken === null) throw new Error('no trip to start with')
    expect(info.value).toMatchObject({
      kind: 'loopback',
      appVersion: '1.2.3',
      tripsFolder: join(program.home, 'trips'),
    })
    const opened = await page.call('openTrip', { from: { kind: 'token', token: info.value.startToken }, asCopy: false })
    expect(opened).toMatchObject({ ok: true, value: { file: { name: 'small.trip.json', folder } } })
    program.child.kill('SIGTERM')
    expect(await program.ended).toBe(0)
    // The lock went with it: the next run takes the trip as its own.
    const again = startWebProgram(path, program.home)
    const next = await openPage(await again.address())
    const start = await next?.call('readHostInfo', {})
    const token = start?.ok === true ? start.value.startToken : null
    expect(await next?.call('openTrip', { from: { kind: 'token', token: token ?? '' }, asCopy: false })).toMatchObject({
      ok: true,
    })
    // A launcher that is gone takes its host with it.
    again.child.disconnect()
    expect(await again.ended).toBe(0)
    expect(existsSync(path)).toBe(true)
  })
})
