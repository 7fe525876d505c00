/** Bytes as base64 text (RFC 4648, section 4, with padding), since `shared/` has neither DOM nor Node. */
import { fail, ok, problem } from '../result/index.ts'
import type { Result } from '../result/index.ts'

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const SHAPE = /^(?:[A-Za-z0-9+/]{4})*(?:[A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$/
const CHUNK = 8192

export function encodeBase64(bytes: Uint8Array): string {
  const chunks: string[] = []
  let chunk = ''
  for (let at = 0; at < bytes.length; at += 3) {
    const left = bytes.length - at
    const word = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0)
    chunk += ALPHABET.charAt(word >> 18) + ALPHABET.charAt((word >> 12) & 63)
    chunk += left > 1 ? ALPHABET.charAt((word >> 6) & 63) : '='
    chunk += left > 2 ? ALPHABET.charAt(word & 63) : '='
    if (chunk.length > CHUNK) {
      chunks.push(chunk)
      chunk = ''
    }
  }
  return chunks.join('') + chunk
}

/** Problem `base64-unreadable` where the text is not of that shape. */
export function decodeBase64(text: string): Result<Uint8Array> {
  if (text.length % 4 !== 0 || !SHAPE.test(text)) return fail(problem('base64-unreadable'))
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0
  const bytes = new Uint8Array((text.length / 4) * 3 - padding)
  const values = new Uint8Array(128)
  for (let at = 0; at < ALPHABET.length; at += 1) values[ALPHABET.charCodeAt(at)] = at
  const value = (at: number): number => values[text.charCodeAt(at)] ?? 0
  let to = 0
  for (let at = 0; at < text.length; at += 4) {
    const word = (value(at) << 18) | (value(at + 1) << 12) | (value(at + 2) << 6) | value(at + 3)
    for (const shift of [16, 8, 0]) {
      if (to < bytes.length) bytes[to] = (word >> shift) & 255
      to += 1
    }
  }
  return ok(bytes)
}
