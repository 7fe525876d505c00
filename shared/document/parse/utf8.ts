/** Bytes of a trip file to text: size limit, encoding, strict UTF-8. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'

/** Largest trip file that is read, bytes (32 MiB). */
export const SIZE_LIMIT_BYTES = 32 * 1024 * 1024

/** Code units joined at once: below the argument limit of any engine. */
const CHUNK = 8192

export function decodeTripText(bytes: Uint8Array): Result<string> {
  if (bytes.length === 0) return fail(problem('file-empty'))
  if (bytes.length > SIZE_LIMIT_BYTES) {
    return fail(
      problem('file-too-large', [], { sizeMiB: mebibytes(bytes.length), limitMiB: mebibytes(SIZE_LIMIT_BYTES) }),
    )
  }
  if (looksLikeUtf16(bytes)) return fail(problem('file-utf16'))
  const hasMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf
  return decodeUtf8(bytes, hasMark ? 3 : 0)
}

const mebibytes = (size: number): number => Math.ceil((size / 1024 / 1024) * 10) / 10

/** A UTF-16 mark, or JSON's first two characters with a zero byte between or before them. */
function looksLikeUtf16(bytes: Uint8Array): boolean {
  const [a, b] = bytes
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return true
  return bytes.length >= 4 && ((a === 0 && b !== 0) || (a !== 0 && b === 0))
}

type Sequence = { readonly length: number; readonly first: number; readonly least: number }

/** Lead byte of a sequence of two or more: its length, its own bits, and the least code point that may be written so long. */
function sequenceOf(lead: number): Sequence | null {
  if (lead >= 0xc2 && lead <= 0xdf) return { length: 2, first: lead & 0x1f, least: 0x80 }
  if (lead >= 0xe0 && lead <= 0xef) return { length: 3, first: lead & 0x0f, least: 0x800 }
  if (lead >= 0xf0 && lead <= 0xf4) return { length: 4, first: lead & 0x07, least: 0x10000 }
  return null
}

function decodeUtf8(bytes: Uint8Array, start: number): Result<string> {
  const parts: string[] = []
  let units: number[] = []
  let at = start
  for (let lead = bytes[at]; lead !== undefined; lead = bytes[at]) {
    if (lead < 0x80) {
      units.push(lead)
      at += 1
    } else {
      const point = codePointAt(bytes, at, lead)
      if (point === null) return fail(problem('file-not-utf8', [], { offset: at }))
      if (point.value > 0xffff) {
        units.push(0xd800 + ((point.value - 0x10000) >> 10), 0xdc00 + ((point.value - 0x10000) & 0x3ff))
      } else units.push(point.value)
      at += point.length
    }
    if (units.length >= CHUNK) {
      parts.push(String.fromCharCode(...units))
      units = []
    }
  }
  parts.push(String.fromCharCode(...units))
  return ok(parts.join(''))
}

function codePointAt(
  bytes: Uint8Array,
  at: number,
  lead: number,
): { readonly value: number; readonly length: number } | null {
  const sequence = sequenceOf(lead)
  if (sequence === null) return null
  let value = sequence.first
  for (let index = 1; index < sequence.length; index++) {
    // Past the end stands 0, which continues no sequence.
    const next = bytes[at + index] ?? 0
    if ((next & 0xc0) !== 0x80) return null
    value = value * 64 + (next & 0x3f)
  }
  const surrogate = value >= 0xd800 && value <= 0xdfff
  return value < sequence.least || value > 0x10ffff || surrogate ? null : { value, length: sequence.length }
}
