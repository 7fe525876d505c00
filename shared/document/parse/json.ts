/**
 * JSON as RFC 8259 writes it, read strictly: the place of each fault is known, and keys given twice, `__proto__`,
 * numbers beyond the range of a double, broken surrogate pairs and bottomless nesting are refused.
 */
import { fail, ok, problem } from '../../result/index.ts'
import type { DocumentPath, Problem, ProblemParams, Result } from '../../result/index.ts'
import type { JsonValue } from './json-value.ts'

/** Deepest nesting that is read. */
export const DEPTH_LIMIT = 100

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
/** Everything up to a quote, a backslash or a control character; those below the space end a text wrongly. */
const PLAIN_TEXT = /[\u0020-\u0021\u0023-\u005b\u005d-\uffff]*/y
const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/
const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
}
const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype'])

export function readJson(text: string): Result<JsonValue> {
  return new JsonReader(text).read()
}

/** Reads forward through one text; `at` is the place reached. */
class JsonReader {
  private readonly text: string
  private readonly path: (string | number)[] = []
  private at = 0

  constructor(text: string) {
    this.text = text
  }

  read(): Result<JsonValue> {
    const value = this.value()
    if (!value.ok) return value
    this.space()
    return this.at === this.text.length ? value : fail(this.unreadable('end of file'))
  }

  private value(): Result<JsonValue> {
    this.space()
    const next = this.text[this.at]
    if (next === '{') return this.object()
    if (next === '[') return this.list()
    if (next === '"') return this.string()
    if (next === '-' || (next !== undefined && next >= '0' && next <= '9')) return this.number()
    return this.word()
  }

  private object(): Result<JsonValue> {
    if (this.path.length >= DEPTH_LIMIT) return fail(this.fault('json-too-deep', { limit: DEPTH_LIMIT }))
    const entries = new Map<string, JsonValue>()
    this.at += 1
    this.space()
    if (this.take('}')) return ok({})
    for (;;) {
      this.space()
      if (this.text[this.at] !== '"') return fail(this.unreadable('"'))
      const keyAt = this.at
      const key = this.string()
      if (!key.ok) return key
      if (FORBIDDEN_KEYS.has(key.value)) return fail(this.fault('json-forbidden-key', { key: key.value }, keyAt))
      if (entries.has(key.value)) return fail(this.fault('json-key-twice', { key: key.value }, keyAt))
      this.space()
      if (!this.take(':')) return fail(this.unreadable(':'))
      this.path.push(key.value)
      const value = this.value()
      if (!value.ok) return value
      this.path.pop()
      entries.set(key.value, value.value)
      this.space()
      if (this.take('}')) return ok(Object.fromEntries(entries))
      if (!this.take(',')) return fail(this.unreadable(', or }'))
    }
  }

  private list(): Result<JsonValue> {
    if (this.path.length >= DEPTH_LIMIT) return fail(this.fault('json-too-deep', { limit: DEPTH_LIMIT }))
    const items: JsonValue[] = []
    this.at += 1
    this.space()
    if (this.take(']')) return ok(items)
    for (;;) {
      this.path.push(items.length)
      const value = this.value()
      if (!value.ok) return value
      this.path.pop()
      items.push(value.value)
      this.space()
      if (this.take(']')) return ok(items)
      if (!this.take(',')) return fail(this.unreadable(', or ]'))
    }
  }

  private string(): Result<string> {
    const startAt = this.at
    this.at += 1
    let value = ''
    for (;;) {
      // It always matches, if only the empty text, and stops where it ends.
      PLAIN_TEXT.lastIndex = this.at
      PLAIN_TEXT.test(this.text)
      value += this.text.slice(this.at, PLAIN_TEXT.lastIndex)
      this.at = PLAIN_TEXT.lastIndex
      const next = this.text[this.at]
      if (next === '"') {
        this.at += 1
        if (LONE_SURROGATE.test(value)) return fail(this.fault('json-broken-character', {}, startAt))
        return ok(value)
      }
      if (next !== '\\') return fail(this.unreadable('"'))
      const escaped = this.escape()
      if (!escaped.ok) return escaped
      value += escaped.value
    }
  }

  private escape(): Result<string> {
    const letter = this.text[this.at + 1] ?? ''
    if (letter === 'u') {
      const digits = this.text.slice(this.at + 2, this.at + 6)
      if (!/^[0-9a-fA-F]{4}$/.test(digits)) return fail(this.unreadable('\\uXXXX'))
      this.at += 6
      return ok(String.fromCharCode(Number.parseInt(digits, 16)))
    }
    const plain = ESCAPES[letter]
    if (plain === undefined) return fail(this.unreadable('\\n'))
    this.at += 2
    return ok(plain)
  }

  private number(): Result<number> {
    const startAt = this.at
    NUMBER.lastIndex = this.at
    const digits = NUMBER.exec(this.text)?.[0]
    if (digits === undefined) return fail(this.unreadable('0'))
    this.at += digits.length
    const value = Number(digits)
    return Number.isFinite(value)
      ? ok(value)
      : fail(this.fault('json-number-range', { value: digits.slice(0, 40) }, startAt))
  }

  private word(): Result<JsonValue> {
    for (const [word, value] of [
      ['true', true],
      ['false', false],
      ['null', null],
    ] as const) {
      if (this.text.startsWith(word, this.at)) {
        this.at += word.length
        return ok(value)
      }
    }
    return fail(this.unreadable('a value'))
  }

  private space(): void {
    for (;;) {
      const next = this.text[this.at]
      if (next !== ' ' && next !== '\n' && next !== '\r' && next !== '\t') return
      this.at += 1
    }
  }

  private take(mark: string): boolean {
    if (this.text[this.at] !== mark) return false
    this.at += 1
    return true
  }

  private unreadable(expected: string): Problem {
    const found = this.at >= this.text.length ? 'end of file' : JSON.stringify(this.text[this.at])
    return this.fault('json-unreadable', { expected, found })
  }

  private fault(code: string, params: ProblemParams, at = this.at): Problem {
    const before = this.text.slice(0, at)
    const line = before.split('\n').length
    const column = at - before.lastIndexOf('\n')
    const path: DocumentPath = [...this.path]
    return problem(code, path, { ...params, line: String(line), column: String(column), offset: byteLength(before) })
  }
}

/** UTF-8 bytes of a text, so that an editor can jump to the place. */
function byteLength(text: string): number {
  let bytes = 0
  for (let at = 0; at < text.length; at += 1) {
    const unit = text.charCodeAt(at)
    // A pair of surrogates takes four bytes, two for each half.
    const isHalf = unit >= 0xd800 && unit <= 0xdfff
    bytes += unit < 0x80 ? 1 : unit < 0x800 || isHalf ? 2 : 3
  }
  return bytes
}
