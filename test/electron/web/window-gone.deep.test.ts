/** The loopback host ends by itself some seconds after its last window. */
import { describe, expect, it } from 'vitest'
import { openPage, startWebProgram } from '../../support/files/web-program.ts'

describe('the loopback program', () => {
  it('stays while a window waits, and ends when the last one asks for nothing any more', async () => {
    const program = startWebProgram(null)
    const page = await openPage(await program.address())
    const quiet = await page?.call('nextEvent', {})
    expect(quiet).toEqual({ ok: true, value: { kind: 'quiet' } })
    expect(program.child.exitCode).toBeNull()
    expect(await program.ended).toBe(0)
  })
})
