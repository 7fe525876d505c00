/** Bytes at the border of what is a text and what is JSON: refused at the right place, or read as written. */
import { describe, expect, it } from 'vitest'
import { parseTrip } from '../../../../shared/document/index.ts'
import { readJson } from '../../../../shared/document/parse/json.ts'
import { decodeTripText } from '../../../../shared/document/parse/utf8.ts'
import { bytesOf, sampleText, spoiled } from '../sample.ts'

const firstProblem = (bytes: Uint8Array): unknown => {
  const read = parseTrip(bytes)
  return read.ok ? null : read.problem[0]
}

const utf16 = (text: string, order: 'le' | 'be'): Uint8Array =>
  Uint8Array.from(
    [...text].flatMap((letter) => (order === 'le' ? [letter.charCodeAt(0), 0] : [0, letter.charCodeAt(0)])),
  )

describe('the encoding', () => {
  it.each([
    ['big end first', Uint8Array.from([0xfe, 0xff, ...utf16('{}', 'be')])],
    ['big end first, without a mark', utf16('{"a": 1}', 'be')],
    ['little end first, without a mark', utf16('{"a": 1}', 'le')],
  ])('is told where it is UTF-16, %s', (_, bytes) => {
    expect(firstProblem(bytes)).toEqual({ code: 'file-utf16', path: [], params: {} })
  })

  it('is not taken for UTF-16 where four zeros stand, or where less than two letters could', () => {
    expect(firstProblem(new Uint8Array(4))).toMatchObject({ code: 'json-unreadable' })
    expect(firstProblem(Uint8Array.from([0, 0x7b]))).toMatchObject({ code: 'json-unreadable' })
  })

  // The Unicode Standard 16.0, table 3-7: well-formed UTF-8 byte sequences, first and last of each row.
  it.each([
    [[0x7f], 0x7f],
    [[0xc2, 0x80], 0x80],
    [[0xdf, 0xbf], 0x7ff],
    [[0xe0, 0xa0, 0x80], 0x800],
    [[0xed, 0x9f, 0xbf], 0xd7ff],
    [[0xee, 0x80, 0x80], 0xe000],
    [[0xef, 0xbf, 0xbf], 0xffff],
    [[0xf0, 0x90, 0x80, 0x80], 0x10000],
    [[0xf4, 0x8f, 0xbf, 0xbf], 0x10ffff],
  ])('takes %j for one character', (bytes, point) => {
    expect(decodeTripText(Uint8Array.from(bytes))).toEqual({ ok: true, value: String.fromCodePoint(point) })
  })

  it.each([
    ['a continuation alone', [0x80]],
    ['overlong, two bytes', [0xc1, 0xbf]],
    ['overlong, three bytes', [0xe0, 0x9f, 0xbf]],
    ['overlong, four bytes', [0xf0, 0x8f, 0xbf, 0xbf]],
    ['the first surrogate', [0xed, 0xa0, 0x80]],
    ['the last surrogate', [0xed, 0xbf, 0xbf]],
    ['beyond the last character', [0xf4, 0x90, 0x80, 0x80]],
    ['a lead that no character has', [0xf5, 0x80, 0x80, 0x80]],
    ['a lead followed by a letter', [0xe2, 0x82, 0x61]],
    ['two bytes of three at the end', [0xe2, 0x82]],
    ['three bytes of four at the end', [0xf0, 0x9f, 0x92]],
  ])('names the byte where it breaks: %s', (_, bytes) => {
    expect(decodeTripText(Uint8Array.from([0x61, 0x62, ...bytes]))).toEqual({
      ok: false,
      problem: { code: 'file-not-utf8', path: [], params: { offset: 2 } },
    })
  })

  it('keeps long text whole across its chunks', () => {
    const text = 'aé€💡'.repeat(5000)
    expect(decodeTripText(bytesOf(text))).toEqual({ ok: true, value: text })
  })
})

describe('JSON', () => {
  const fault = (text: string): unknown => {
    const read = readJson(text)
    return read.ok ? null : { code: read.problem.code, ...read.problem.params }
  }

  it.each([
    ['a backslash at the end', '"ab\\', { expected: '\\n', found: '"\\\\"', offset: 3 }],
    ['an escape of no hexadecimal', '"ab\\u12G4"', { expected: '\\uXXXX', found: '"\\\\"', offset: 3 }],
    ['an escape cut off', '"\\u12', { expected: '\\uXXXX', found: '"\\\\"', offset: 1 }],
    ['a text without its end', '"ab', { expected: '"', found: 'end of file', offset: 3 }],
    ['a line break in a text', '"a\nb"', { expected: '"', found: '"\\n"', offset: 2 }],
    ['a minus alone', '[-]', { expected: '0', found: '"-"', offset: 1 }],
    ['a point without digits', '[1.]', { expected: ', or ]', found: '"."', offset: 2 }],
    ['a zero in front', '[01]', { expected: ', or ]', found: '"1"', offset: 2 }],
    ['a plus', '[+1]', { expected: 'a value', found: '"+"', offset: 1 }],
    ['a list with a comma at its end', '[1,]', { expected: 'a value', found: '"]"', offset: 3 }],
    ['half a word', '[tru]', { expected: 'a value', found: '"t"', offset: 1 }],
    ['nothing', '', { expected: 'a value', found: 'end of file', offset: 0 }],
  ])('says what it expected, what stands there and where: %s', (_, text, said) => {
    expect(fault(text)).toMatchObject({ code: 'json-unreadable', ...said })
  })

  it('counts the bytes before a fault as UTF-8 does', () => {
    // 1 for the quote, 1 + 2 + 3 + 4 for the letters, then the tab that must not stand there.
    expect(fault('"aé€💡\t"')).toMatchObject({ offset: 11, line: '1', column: '7' })
    // The last of one byte, the first and last of two, the first of three, and the neighbours of the surrogates (RFC 3629).
    const edges = ['\u007f', '\u0080', '\u07ff', '\u0800', '\ud7ff', '\ue000', '\u{10ffff}']
    for (const letter of edges) {
      expect(fault(`"${letter}\t"`)).toMatchObject({ offset: 1 + Buffer.byteLength(letter, 'utf8') })
    }
  })

  it('reads every escape', () => {
    expect(readJson('"\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e9\\ud83d\\udca1"')).toEqual({
      ok: true,
      value: '"\\/\b\f\n\r\té💡',
    })
  })

  it.each([
    ['lists', '['.repeat(101)],
    ['objects', '{"a":'.repeat(101)],
    ['both', '[{"a":'.repeat(51)],
  ])('goes a hundred levels deep, not one more: %s', (_, text) => {
    expect(fault(text)).toMatchObject({ code: 'json-too-deep', limit: 100 })
  })

  it('of a hundred levels is read', () => {
    expect(readJson(`${'['.repeat(100)}${']'.repeat(100)}`).ok).toBe(true)
    expect(readJson(`${'{"a":'.repeat(100)}1${'}'.repeat(100)}`).ok).toBe(true)
  })
})

describe('a condition of a rule', () => {
  it('that is not there is missing, not misfit', () => {
    expect(firstProblem(bytesOf(spoiled(['checklist', 'rules', 0, 'when'], undefined)))).toMatchObject({
      code: 'field-missing',
      path: ['checklist', 'rules', 0, 'when'],
      params: { field: 'checklist.rules[0].when', value: 'nothing' },
    })
  })

  it.each([[null], [false], [0], ['x'], [[1, [2]]], [{ and: [] }]])('may be any JSON: %j', (when) => {
    const read = parseTrip(bytesOf(spoiled(['checklist', 'rules', 0, 'when'], when)))
    expect(read.ok && read.value.checklist.rules[0]?.when).toEqual(when)
  })
})

describe('a name of an own rule switched off', () => {
  it('is text of any kind, up to its length', () => {
    const text = spoiled(['checklist', 'switchedOffRuleIds'], ['x'.repeat(81)])
    expect(firstProblem(bytesOf(text))).toMatchObject({
      code: 'field-text-too-long',
      path: ['checklist', 'switchedOffRuleIds', 0],
      params: { maximum: '80', length: '81' },
    })
    expect(sampleText()).toContain('"switchedOffRuleIds": []')
  })
})
