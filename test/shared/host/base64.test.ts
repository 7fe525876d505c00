/** Bytes as base64 text: the vectors of RFC 4648, section 10, and Node's own reading over random bytes. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decodeBase64, encodeBase64 } from '../../../shared/host/base64.ts'

const VECTORS = [
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
] as const

const read = (text: string): Uint8Array => {
  const decoded = decodeBase64(text)
  if (!decoded.ok) throw new Error(decoded.problem.code)
  return decoded.value
}

describe('base64', () => {
  it.each(VECTORS)('writes %o as %o and reads it back', (plain, text) => {
    const bytes = new TextEncoder().encode(plain)
    expect(encodeBase64(bytes)).toBe(text)
    expect(new TextDecoder().decode(read(text))).toBe(plain)
  })

  it('says what Node says of any bytes, also past the size of one chunk', () => {
    const any = fc.oneof(fc.uint8Array({ maxLength: 40 }), fc.uint8Array({ minLength: 6000, maxLength: 7000 }))
    fc.assert(
      fc.property(any, (bytes) => {
        const text = encodeBase64(bytes)
        expect(text).toBe(Buffer.from(bytes).toString('base64'))
        expect([...read(text)]).toEqual([...bytes])
      }),
      { numRuns: 60 },
    )
  })

  it.each(['Zg', 'Zg=', 'Zg===', 'Z===', 'Zm9v\n', ' Zm9', 'Zm9-', 'Zm9_', 'Z=9v', '====', 'Zg==Zg=='])(
    'refuses %o',
    (text) => {
      const decoded = decodeBase64(text)
      expect(decoded.ok ? null : decoded.problem.code).toBe('base64-unreadable')
    },
  )
})
