/** Steps as a calendar file: iCalendar, RFC 5545 (with NAME of RFC 7986). */
import { formatIso } from '../units/index.ts'
import type { Utc } from '../units/index.ts'

export type CalendarEntry = {
  /** The step's key: the same step keeps its entry when the file is imported again. */
  readonly key: string
  readonly startUtc: Utc
  readonly durationS: number
  readonly summary: string
  readonly description: string
  readonly categories: readonly string[]
  readonly location: string | null
  /** Seconds before the start; null for no alarm. */
  readonly alarmBeforeS: number | null
}

export type Calendar = {
  readonly name: string
  readonly language: string
  /** Tells the entries of one trip from those of another; letters, digits, hyphen. */
  readonly tripId: string
  /** When the file is made: the host's clock passes it in. */
  readonly stampUtc: Utc
  readonly entries: readonly CalendarEntry[]
}

const CRLF = '\r\n'
const MAX_OCTETS = 75 // RFC 5545, 3.1, without the line break

/**
 * The text of a calendar file.
 * `calendar`: instants in UTC s, durations in s.
 * Lines end in CRLF and are folded at 75 octets of UTF-8 without cutting a character; times are UTC; an entry without
 * duration has no end, as section 3.6.1 allows. UIDs follow from trip and step alone.
 * Source: RFC 5545, RFC 7986.
 */
export function toICalendar(calendar: Calendar): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:-//Kipstow//Checklist//${calendar.language === 'de' ? 'DE' : 'EN'}`,
    'CALSCALE:GREGORIAN',
    `NAME:${escapeText(calendar.name)}`,
    ...calendar.entries.flatMap((entry) => eventLines(entry, calendar)),
    'END:VCALENDAR',
  ]
  return lines.map((line) => foldLine(line) + CRLF).join('')
}

function eventLines(entry: CalendarEntry, calendar: Calendar): readonly string[] {
  const end = (entry.startUtc + entry.durationS) as Utc
  return [
    'BEGIN:VEVENT',
    `UID:${escapeText(`${entry.key}@${calendar.tripId}`)}`,
    `DTSTAMP:${instant(calendar.stampUtc)}`,
    `DTSTART:${instant(entry.startUtc)}`,
    ...(instant(end) === instant(entry.startUtc) ? [] : [`DTEND:${instant(end)}`]),
    `SUMMARY:${escapeText(entry.summary)}`,
    ...(entry.description === '' ? [] : [`DESCRIPTION:${escapeText(entry.description)}`]),
    ...(entry.location === null ? [] : [`LOCATION:${escapeText(entry.location)}`]),
    ...(entry.categories.length === 0 ? [] : [`CATEGORIES:${entry.categories.map(escapeText).join(',')}`]),
    'TRANSP:TRANSPARENT',
    ...alarmLines(entry),
    'END:VEVENT',
  ]
}

function alarmLines(entry: CalendarEntry): readonly string[] {
  if (entry.alarmBeforeS === null) return []
  return [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    `TRIGGER:-PT${Math.max(0, Math.round(entry.alarmBeforeS))}S`,
    `DESCRIPTION:${escapeText(entry.summary)}`,
    'END:VALARM',
  ]
}

/** `20270212T163000Z`. */
const instant = (at: Utc): string => formatIso(Math.floor(at) as Utc).replaceAll(/[-:]|\.\d+/g, '')

/** Section 3.3.11: backslash, semicolon, comma and line breaks; other control characters are not allowed. */
function escapeText(text: string): string {
  return [...text.replaceAll(/\r\n|\r/g, '\n')]
    .filter(isPrintable)
    .join('')
    .replaceAll(/[\\;,]/g, (sign) => `\\${sign}`)
    .replaceAll('\n', '\\n')
}

/** Line feed and tab are the only control characters a text may hold. */
function isPrintable(sign: string): boolean {
  const point = sign.codePointAt(0) ?? 0
  return sign === '\n' || sign === '\t' || (point >= 0x20 && point !== 0x7f)
}

function foldLine(line: string): string {
  const parts: string[] = []
  let part = ''
  let octets = 0
  for (const sign of line) {
    const point = sign.codePointAt(0) ?? 0
    const whole = point >= 0xd800 && point <= 0xdfff ? '\ufffd' : sign
    const size = octetsOf(whole.codePointAt(0) ?? 0)
    if (octets + size > MAX_OCTETS) {
      parts.push(part)
      part = ' '
      octets = 1
    }
    part += whole
    octets += size
  }
  return [...parts, part].join(CRLF)
}

/** Length of a code point in UTF-8, RFC 3629. */
function octetsOf(point: number): number {
  if (point < 0x80) return 1
  if (point < 0x800) return 2
  return point < 0x10000 ? 3 : 4
}
