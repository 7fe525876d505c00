/** What a message holds: JSON within its limit, or nothing. */
import { PassThrough } from 'node:stream'
import type { IncomingMessage } from 'node:http'
import { describe, expect, it } from 'vitest'
import { readBody } from '../../../electron/web/read-body.ts'

function message(chunks: readonly (string | Uint8Array)[], whole = true): IncomingMessage {
  const stream = new PassThrough()
  for (const chunk of chunks) stream.write(chunk)
  if (whole) stream.end()
  return Object.assign(stream, { complete: whole }) as unknown as IncomingMessage
}

describe('a message', () => {
  it('is read as JSON, also where it comes in pieces that cut a letter', async () => {
    const bytes = Buffer.from('{"a": "ü"}')
    const cut = bytes.indexOf(0xc3) + 1
    expect(await readBody(message([bytes.subarray(0, cut), bytes.subarray(cut)]), 100)).toEqual({ a: 'ü' })
  })

  it('of exactly its limit is read, of one byte more is not, and is read no further', async () => {
    expect(await readBody(message(['"abc"']), 5)).toBe('abc')
    const long = message(['"abcd"'], false)
    expect(await readBody(long, 5)).toBeUndefined()
    expect(long.destroyed).toBe(true)
  })

  it.each([
    ['no JSON', '{'],
    ['empty', ''],
    ['no UTF-8', Uint8Array.of(0x22, 0xff, 0x22)],
  ])('that is %s is nothing', async (_what, body) => {
    expect(await readBody(message([body]), 100)).toBeUndefined()
  })

  it('that was cut short is nothing, however it ends', async () => {
    const closed = message(['{}'], false)
    setTimeout(() => closed.destroy(), 5)
    expect(await readBody(closed, 100)).toBeUndefined()
    const failed = message(['{}'], false)
    setTimeout(() => failed.destroy(new Error('reset')), 5)
    expect(await readBody(failed, 100)).toBeUndefined()
    const incomplete = Object.assign(message(['{}']), { complete: false })
    expect(await readBody(incomplete, 100)).toBeUndefined()
  })
})
