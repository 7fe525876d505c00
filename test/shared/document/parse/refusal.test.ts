/** Files that are no trips: refused with the field named, and left as they were. */
import { describe, expect, it } from 'vitest'
import { SIZE_LIMIT_BYTES, parseTrip } from '../../../../shared/document/index.ts'
import type { Problem } from '../../../../shared/result/index.ts'
import { createText } from '../../../../shared/text/index.ts'
import { bytesOf, sampleText, spoiled } from '../sample.ts'
import { MALFORMED } from './malformed.ts'

const english = createText('en', 'metric')
const german = createText('de', 'metric')

/** Refusals of a single value repeat it; those of a whole list or of two fields name what clashes. */
const REPEATS_VALUE =
  /^field-(kind|not-whole|number|choice|id|date|clock|zone|currency)|^(date|zone|time)-|-order$|above|beyond|squeezed|over-limit|longer/

function expectSentence(sentence: string, problem: Problem): void {
  expect(sentence).not.toContain(problem.code)
  expect(sentence).not.toMatch(/\{[a-z]+\}/i)
  expect(sentence.endsWith('.')).toBe(true)
  const { field, value } = problem.params
  expect(sentence).toContain(typeof field === 'string' ? field : '')
  expect(sentence).toContain(typeof value === 'string' && REPEATS_VALUE.test(problem.code) ? value : '')
}

describe('a file that is no trip', () => {
  it('comes in at least thirty kinds, each named once', () => {
    expect(new Set(MALFORMED.map((one) => one.kind)).size).toBe(MALFORMED.length)
    expect(MALFORMED.length).toBeGreaterThanOrEqual(30)
  })

  it.each(MALFORMED.map((one) => [one.kind, one] as const))(
    'is refused, its field named in both languages: %s',
    (_, malformed) => {
      const before = Uint8Array.from(malformed.bytes)
      const read = parseTrip(malformed.bytes)
      const problems = read.ok ? [] : read.problem
      expect(problems[0]).toMatchObject({ code: malformed.code, path: malformed.path })
      expect(Buffer.compare(malformed.bytes, before)).toBe(0)
      for (const problem of problems) {
        for (const text of [english, german]) expectSentence(text.problem(problem), problem)
      }
    },
  )

  it('is not even read where it is too large', () => {
    const read = parseTrip(new Uint8Array(SIZE_LIMIT_BYTES + 1))
    expect(read).toMatchObject({
      ok: false,
      problem: [{ code: 'file-too-large', params: { sizeMiB: 32.1, limitMiB: 32 } }],
    })
  })

  it('gives the line, the column and the byte of bad JSON', () => {
    const read = parseTrip(bytesOf('{\n  "title": "Ä",\n  "note" 1\n}'))
    expect(read).toMatchObject({
      ok: false,
      problem: [
        { code: 'json-unreadable', params: { line: '3', column: '10', offset: 28, expected: ':', found: '"1"' } },
      ],
    })
  })

  it('names both versions where it is newer than the program', () => {
    const read = parseTrip(bytesOf(spoiled(['version'], 7)))
    expect(read).toMatchObject({ ok: false, problem: [{ code: 'trip-newer', params: { value: '7', known: '1' } }] })
  })

  it('lists at most fifty problems', () => {
    const pieces = Array.from({ length: 200 }, () => 'x')
    const read = parseTrip(bytesOf(spoiled(['kit', 'pieces'], pieces)))
    expect(read.ok ? 0 : read.problem.length).toBe(50)
  })

  it('refuses a clock that the change to summer time skips', () => {
    const text = spoiled(['nights', 0, 'date'], '2026-03-28')
    const skipped = text.replaceAll('"unplug":"06:05"', '"unplug":"02:30"')
    expect(parseTrip(bytesOf(skipped))).toMatchObject({
      ok: false,
      problem: [{ code: 'time-skipped', path: ['nights', 0, 'hookup', 'unplug'] }],
    })
  })
})

describe('a fixed place with a position and no size of its own', () => {
  // The load bay of the sample is 1090 mm long.
  const read = (x: number) =>
    parseTrip(
      bytesOf(spoiled(['kit', 'pieces', 4, 'locks'], [{ layout: 'drive', bayId: 'load-bay', atMm: [x, 0, 0] }])),
    )

  it('lies inside the bay by its corner, or is refused', () => {
    expect(read(1000).ok).toBe(true)
    expect(read(1089).ok).toBe(true)
    expect(read(1090)).toMatchObject({
      ok: false,
      problem: [{ code: 'lock-outside-bay', path: ['kit', 'pieces', 4, 'locks', 0, 'atMm'] }],
    })
    expect(read(-1)).toMatchObject({ ok: false, problem: [{ code: 'lock-outside-bay' }] })
  })
})

describe('a file with a byte order mark', () => {
  it('is read as if the mark were not there', () => {
    const plain = parseTrip(bytesOf(sampleText()))
    expect(plain.ok).toBe(true)
    expect(parseTrip(Uint8Array.from([0xef, 0xbb, 0xbf, ...bytesOf(sampleText())]))).toEqual(plain)
  })
})
