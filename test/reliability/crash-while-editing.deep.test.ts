/** The whole host is killed at random moments while somebody edits: what was kept is offered again, and the file is as it was. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { parseTrip } from '../../shared/document/index.ts'
import type { Trip } from '../../shared/document/index.ts'
import { BESIDE_PACKAGES, bundleProgram } from '../support/files/bundle.ts'
import { openPage, startWebProgram } from '../support/files/web-program.ts'
import type { Page } from '../support/files/web-program.ts'
import { smallTrip } from '../support/small-trip.ts'

const KILLS = 200
/** A start takes a second on an idle machine and ten times that on a busy one. */
const LIMIT_MS = KILLS * 18_000
const LATEST_KILL_MS = 250
const SEED = Number(process.env['KIPSTOW_SEED'] ?? 20_261_125)

const home = mkdtempSync(join(tmpdir(), 'kipstow-crash-'))
let program = ''
beforeAll(async () => {
  program = await bundleProgram(join(import.meta.dirname, '../../electron/web/main.ts'), BESIDE_PACKAGES)
}, 120_000)
afterAll(() => rmSync(home, { recursive: true, force: true }))

const numberOf = (trip: Trip): number => Number(/^edit (\d+)$/.exec(trip.note ?? '')?.[1] ?? 0)

/** Edits and keeps a copy again and again until the host is gone. The last number acknowledged. */
async function editUntilGone(page: Page, token: string, from: Trip, first: number): Promise<number> {
  let acknowledged = first
  for (let number = first + 1; ; number += 1) {
    try {
      const kept = await page.call('keepRecovery', { token, trip: { ...from, note: `edit ${number}` } })
      if (!kept.ok) throw new Error(`not kept: ${kept.problem.code}`)
      acknowledged = number
    } catch (cause) {
      // Status 0: the connection is gone with the host.
      if (cause instanceof Error && cause.message === 'keepRecovery: 0') return acknowledged
      throw cause
    }
  }
}

describe('a host killed while somebody edits', () => {
  it(
    `gives back every edit it acknowledged in ${KILLS} kills, and never touches the file`,
    { timeout: LIMIT_MS },
    async () => {
      console.log(`crash harness: seed ${SEED}`)
      mkdirSync(join(home, 'trips'))
      const path = join(home, 'trips', 'mine.trip.json')
      writeFileSync(path, smallTrip())
      const before = readFileSync(path)
      const parsed = parseTrip(before)
      if (!parsed.ok) throw new Error('the small trip does not parse')
      let state = SEED >>> 0
      let acknowledged = 0
      let lost = 0
      let offered = 0
      for (let kill = 0; kill <= KILLS; kill += 1) {
        const host = startWebProgram(path, home, program)
        const page = await openPage(await host.address())
        if (page === null) throw new Error('the address is refused')
        const info = await page.call('readHostInfo', {})
        const found = await page.call('listRecoveries', {})
        if (!info.ok || !found.ok) throw new Error('the host does not answer')
        const [recovery] = found.value.recoveries
        expect(found.value.recoveries.length).toBe(kill === 0 ? 0 : 1)
        let opened
        if (recovery === undefined) {
          opened = await page.call('openTrip', {
            from: { kind: 'token', token: info.value.startToken ?? '' },
            asCopy: false,
          })
        } else {
          offered += 1
          opened = await page.call('openRecovery', { id: recovery.id })
        }
        if (!opened.ok || opened.value === null) throw new Error('not opened')
        const { file, trip } = opened.value
        expect(file.name).toBe('mine.trip.json')
        // A copy that was being written when the host died may be there: then it is the newer one.
        if (numberOf(trip) < acknowledged) lost += 1
        expect(readFileSync(path).equals(before)).toBe(true)
        state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
        const editing = editUntilGone(page, file.token, parsed.value, Math.max(acknowledged, numberOf(trip)))
        setTimeout(() => host.child.kill('SIGKILL'), 20 + (state / 2 ** 32) * LATEST_KILL_MS)
        acknowledged = Math.max(await editing, numberOf(trip))
        await host.ended
        if (kill % 50 === 0) console.log(`${kill} kills, ${acknowledged} edits acknowledged`)
      }
      console.log(`${KILLS} kills: ${offered} copies offered, ${lost} edits missing of ${acknowledged} acknowledged`)
      expect(offered).toBe(KILLS)
      expect(lost).toBe(0)
      expect(acknowledged).toBeGreaterThan(KILLS)
    },
  )
})
