import { describe, expect, test } from 'vitest'
import { toICalendar } from '../../../shared/checklist/index.ts'
import type { Calendar, CalendarEntry } from '../../../shared/checklist/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

const utc = (iso: string): Utc => (Date.parse(iso) / 1000) as Utc

const ENTRY: CalendarEntry = {
  key: 'clear-glass:n1',
  startUtc: utc('2027-02-13T05:13:00Z'),
  durationS: 360,
  summary: 'Clear all glass',
  description: '',
  categories: [],
  location: null,
  alarmBeforeS: null,
}

const calendar = (parts: Partial<CalendarEntry> = {}, whole: Partial<Calendar> = {}): string =>
  toICalendar({
    name: 'Two nights',
    language: 'en',
    tripId: 'trip-1',
    stampUtc: utc('2027-02-01T10:00:00Z'),
    entries: [{ ...ENTRY, ...parts }],
    ...whole,
  })

/** Reads a file as RFC 5545 says: lines end in CRLF, a line that begins with a space goes on with the one before. */
const unfolded = (text: string): readonly string[] => text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1)

const valueOf = (text: string, name: string): string | undefined =>
  unfolded(text)
    .find((line) => line.startsWith(`${name}:`))
    ?.slice(name.length + 1)

/** Section 3.3.11, the other way round. */
const unescaped = (value: string): string =>
  value.replaceAll(/\\(n|N|\\|;|,)/g, (_, sign: string) => (sign.toLowerCase() === 'n' ? '\n' : sign))

describe('calendar file', () => {
  test('an entry is written line by line as RFC 5545 asks', () => {
    expect(
      unfolded(calendar({ description: 'A peephole is not enough', categories: ['morning'], location: 'Pitch 7' })),
    ).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Kipstow//Checklist//EN',
      'CALSCALE:GREGORIAN',
      'NAME:Two nights',
      'BEGIN:VEVENT',
      'UID:clear-glass:n1@trip-1',
      'DTSTAMP:20270201T100000Z',
      'DTSTART:20270213T051300Z',
      'DTEND:20270213T051900Z',
      'SUMMARY:Clear all glass',
      'DESCRIPTION:A peephole is not enough',
      'LOCATION:Pitch 7',
      'CATEGORIES:morning',
      'TRANSP:TRANSPARENT',
      'END:VEVENT',
      'END:VCALENDAR',
    ])
  })

  test('every line ends in CRLF, is at most 75 octets long and cuts no character', () => {
    const texts = ['ü'.repeat(200), 'a'.repeat(75), '🏕️'.repeat(60), `${'x'.repeat(66)}€${'y'.repeat(90)}`]
    for (const summary of texts) {
      const text = calendar({ summary })
      const lines = text.split('\r\n')
      expect(lines.at(-1)).toBe('')
      expect(Math.max(...lines.map((line) => new TextEncoder().encode(line).length))).toBeLessThanOrEqual(75)
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
      expect(valueOf(text, 'SUMMARY')).toBe(summary)
    }
  })

  test('commas, semicolons, backslashes and line breaks come back as they were', () => {
    const description = 'Gate; code, 47\\11\nsecond line\ttab'
    const text = calendar({ description: description.replace('\n', '\r\n') })
    expect(unescaped(valueOf(text, 'DESCRIPTION') ?? '')).toBe(description)
    expect(valueOf(calendar({ categories: ['a,b', 'c'] }), 'CATEGORIES')).toBe('a\\,b,c')
  })

  test('a text cannot begin a line of its own or bring in control characters', () => {
    const text = calendar({ summary: 'x\r\nEND:VCALENDAR\u0000\u0007' })
    expect(unfolded(text).filter((line) => line === 'END:VCALENDAR')).toHaveLength(1)
    expect(valueOf(text, 'SUMMARY')).toBe('x\\nEND:VCALENDAR')
  })

  test('half a surrogate pair becomes the replacement character', () => {
    expect(valueOf(calendar({ summary: 'a\ud800b' }), 'SUMMARY')).toBe('a\ufffdb')
  })

  test('an entry without duration has no end', () => {
    const text = calendar({ durationS: 0 })
    expect(valueOf(text, 'DTSTART')).toBe('20270213T051300Z')
    expect(valueOf(text, 'DTEND')).toBe(undefined)
  })

  test('the same step of the same trip has the same UID, whenever the file is made', () => {
    const later = calendar({ startUtc: utc('2027-02-13T05:40:00Z') }, { stampUtc: utc('2027-02-02T00:00:00Z') })
    expect(valueOf(later, 'UID')).toBe(valueOf(calendar(), 'UID'))
    expect(valueOf(calendar({}, { tripId: 'trip-2' }), 'UID')).not.toBe(valueOf(calendar(), 'UID'))
  })

  test('an alarm rings before the start', () => {
    const lines = unfolded(calendar({ alarmBeforeS: 600 }))
    const from = lines.indexOf('BEGIN:VALARM')
    expect(lines.slice(from, from + 5)).toEqual([
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      'TRIGGER:-PT600S',
      'DESCRIPTION:Clear all glass',
      'END:VALARM',
    ])
  })

  test('a calendar without entries is still a calendar', () => {
    expect(unfolded(calendar({}, { entries: [], language: 'de' }))).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Kipstow//Checklist//DE',
      'CALSCALE:GREGORIAN',
      'NAME:Two nights',
      'END:VCALENDAR',
    ])
  })
})
