/** The log file: turned over before it grows large, readable for the diagnostics, harmless where it cannot be written. */
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { createLog } from '../../../../electron/files/keep/log.ts'

const base = mkdtempSync(join(tmpdir(), 'kipstow-log-'))
afterAll(() => rmSync(base, { recursive: true, force: true }))
let folder = base
beforeEach(() => {
  folder = join(mkdtempSync(join(base, 'case-')), 'log')
})
const logHere = (): ReturnType<typeof createLog> => createLog(folder, () => '2027-10-08T20:00:00Z')

describe('the log', () => {
  it('is one line of JSON an event, in order, in a folder that it makes', async () => {
    const log = logHere()
    log.write('started', { host: 'loopback' })
    log.write('window-crashed', { reason: 'oom', count: 2, again: true })
    expect((await log.recent()).map((line) => JSON.parse(line))).toEqual([
      { at: '2027-10-08T20:00:00Z', event: 'started', host: 'loopback' },
      { at: '2027-10-08T20:00:00Z', event: 'window-crashed', reason: 'oom', count: 2, again: true },
    ])
    expect(readFileSync(join(folder, 'kipstow.log'), 'utf8')).toBe(`${(await log.recent()).join('\n')}\n`)
  })

  it('is empty where nothing was ever written', async () => {
    expect(await logHere().recent()).toEqual([])
  })

  it('keeps three files of a quarter of a mebibyte, however much is written', async () => {
    const log = logHere()
    const note = 'x'.repeat(60_000)
    for (let number = 0; number < 40; number += 1) log.write('big', { number, note })
    const last = await log.recent()
    expect(JSON.parse(last.at(-1) ?? '{}')).toMatchObject({ number: 39 })
    expect(readdirSync(folder).sort()).toEqual(['kipstow.log', 'kipstow.log.1', 'kipstow.log.2'])
    for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).size).toBeLessThan(262_144 + 61_000)
  })

  it('still shows what stood there before it was turned over', async () => {
    const log = logHere()
    log.write('before', { note: 'x'.repeat(270_000) })
    log.write('after')
    expect((await log.recent()).map((line) => JSON.parse(line).event)).toEqual(['before', 'after'])
    expect(readdirSync(folder).sort()).toEqual(['kipstow.log', 'kipstow.log.1'])
  })

  it('shows the last four hundred lines', async () => {
    const log = logHere()
    for (let number = 0; number < 450; number += 1) log.write('n', { number })
    const lines = await log.recent()
    expect(lines).toHaveLength(400)
    expect(JSON.parse(lines[0] ?? '{}')).toMatchObject({ number: 50 })
  })

  it('never stops the planner where its folder cannot be made', async () => {
    writeFileSync(folder, 'a file stands there')
    const log = logHere()
    log.write('started')
    expect(await log.recent()).toEqual([])
    expect(readFileSync(folder, 'utf8')).toBe('a file stands there')
  })
})
