/** Files that are no trips, each of another kind, with the code and the field that the refusal must name. */
import { sampleText, spoiled } from '../sample.ts'
import type { Path } from '../sample.ts'

export type Malformed = {
  readonly kind: string
  readonly bytes: Uint8Array
  readonly code: string
  readonly path: Path
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)
const raw = (kind: string, bytes: Uint8Array | string, code: string, path: Path = []): Malformed => ({
  kind,
  bytes: typeof bytes === 'string' ? utf8(bytes) : bytes,
  code,
  path,
})
const set = (kind: string, path: Path, value: unknown, code: string, named: Path = path): Malformed => ({
  kind,
  bytes: utf8(spoiled(path, value)),
  code,
  path: named,
})

const utf16 = (text: string): Uint8Array =>
  Uint8Array.from([
    0xff,
    0xfe,
    ...[...text].flatMap((letter) => [letter.charCodeAt(0) & 0xff, letter.charCodeAt(0) >> 8]),
  ])
const replaced = (from: string, to: string): string => {
  const text = sampleText()
  if (!text.includes(from)) throw new Error(`the sample has no ${from}`)
  return text.replace(from, to)
}

/** The file itself. */
export const BAD_FILES: readonly Malformed[] = [
  raw('nothing at all', new Uint8Array(0), 'file-empty'),
  raw('only spaces', '   \n', 'json-unreadable'),
  raw('UTF-16 with a mark', utf16(sampleText()), 'file-utf16'),
  raw('UTF-16 without a mark', utf16(sampleText()).slice(2), 'file-utf16'),
  raw('a byte that no UTF-8 has', Uint8Array.from([...utf8('{"format": "'), 0xff, ...utf8('"}')]), 'file-not-utf8'),
  raw('an overlong sequence', Uint8Array.from([...utf8('{"a": "'), 0xc0, 0xaf, ...utf8('"}')]), 'file-not-utf8'),
  raw(
    'an encoded half of a pair',
    Uint8Array.from([...utf8('{"a": "'), 0xed, 0xa0, 0x80, ...utf8('"}')]),
    'file-not-utf8',
  ),
  raw(
    'a file cut off in the middle',
    sampleText().slice(0, sampleText().indexOf('"travellers"') + 20),
    'json-unreadable',
    ['travellers', 0],
  ),
  raw('a NUL in a name', replaced('"title": "Bats', '"title": "\u0000Bats'), 'json-unreadable', ['title']),
  raw('a comma too many', replaced('"language": "en",', '"language": "en",,'), 'json-unreadable', ['preferences']),
  raw('a comment', replaced('"version": 1,', '// one\n"version": 1,'), 'json-unreadable'),
  raw('single quotes', "{'format': 'kipstow-trip'}", 'json-unreadable'),
  raw('text after the end', `${sampleText()}x`, 'json-unreadable'),
  raw('NaN for a number', replaced('"minimumA": 6', '"minimumA": NaN'), 'json-unreadable', [
    'vehicle',
    'charging',
    'minimumA',
  ]),
  raw('a number beyond all bounds', replaced('"minimumA": 6', '"minimumA": 1e400'), 'json-number-range', [
    'vehicle',
    'charging',
    'minimumA',
  ]),
  raw('half a character', replaced('"title": "Bats', '"title": "\\ud800Bats'), 'json-broken-character', ['title']),
  raw('a bad escape', replaced('"title": "Bats', '"title": "\\qBats'), 'json-unreadable', ['title']),
  raw('a field given twice', replaced('"language": "en",', '"language": "en", "language": "de",'), 'json-key-twice', [
    'preferences',
  ]),
  raw(
    'a prototype smuggled in',
    replaced('"language": "en",', '"language": "en", "__proto__": {},'),
    'json-forbidden-key',
    ['preferences'],
  ),
  raw(
    'ten thousand brackets',
    '['.repeat(10_000),
    'json-too-deep',
    Array.from({ length: 100 }, () => 0),
  ),
  raw('a list instead of a trip', '[1, 2]', 'trip-not-an-object'),
  raw('another program’s file', '{"format": "shopping-list", "version": 1}', 'trip-other-format', ['format']),
  raw('no format name', '{"version": 1}', 'trip-other-format', ['format']),
  set('a version in words', ['version'], 'one', 'trip-version-unreadable'),
  set('a version of half', ['version'], 1.5, 'trip-version-unreadable'),
  set('a newer version', ['version'], 2, 'trip-newer'),
]

/** Single fields. */
export const BAD_FIELDS: readonly Malformed[] = [
  set('a missing title', ['title'], undefined, 'field-missing'),
  set('an empty title', ['title'], '', 'field-text-too-short'),
  set('a title that never ends', ['title'], 'x'.repeat(201), 'field-text-too-long'),
  set('a field nobody knows', ['vehicle', 'spoiler'], true, 'field-unknown'),
  set('a mass in words', ['kit', 'pieces', 3, 'massG'], '1.3 kg', 'field-kind'),
  set('a mass with a fraction', ['kit', 'pieces', 3, 'massG'], 1300.5, 'field-not-whole'),
  set('a mass below nothing', ['kit', 'pieces', 3, 'massG'], -1, 'field-number-too-low'),
  set('a breaker of 900 A', ['nights', 1, 'hookup', 'breakerA'], 900, 'field-number-too-high'),
  set('a piece without a height', ['kit', 'pieces', 5, 'sizeMm'], [450, 300], 'field-list-too-short'),
  set('a piece of no width', ['kit', 'pieces', 5, 'sizeMm', 1], 0, 'field-number-too-low'),
  set('a yes for a true', ['nights', 0, 'covers'], 'yes', 'field-kind'),
  set('nothing for a list', ['nights', 0, 'beddingPieceIds'], null, 'field-kind'),
  set('an unknown connector', ['nights', 0, 'hookup', 'connector'], 'banana', 'field-choice'),
  set('an unknown tariff', ['nights', 0, 'hookup', 'tariff', 'kind'], 'barter', 'field-choice'),
  set('an id with a space', ['kit', 'pieces', 2, 'id'], 'warm bag', 'field-id'),
  set('a date the other way round', ['nights', 0, 'date'], '08.10.2027', 'field-date'),
  set('half past twenty-five', ['nights', 0, 'arrive'], '25:30', 'field-clock'),
  set('a zone in words', ['nights', 0, 'site', 'zone'], 'one hour ahead', 'field-zone'),
  set('a currency sign', ['preferences', 'currency'], '€', 'field-currency'),
  set('no night at all', ['nights'], [], 'field-list-too-short'),
  set(
    'nine travellers',
    ['travellers'],
    Array.from({ length: 9 }, (_, index) => ({
      id: `t${String(index)}`,
      label: 'T',
      heightMm: 1700,
      massG: 70_000,
      drives: true,
      sleeps: 'average',
      sleepwearClo: 1,
    })),
    'field-list-too-long',
  ),
]

/** Things that each may be written, but not together. */
export const BAD_SENSE: readonly Malformed[] = [
  set('two pieces of one id', ['kit', 'pieces', 4, 'id'], 'covers', 'id-twice', ['kit', 'pieces', 9, 'id']),
  set('a bin and a piece of one id', ['kit', 'bins', 0, 'id'], 'covers', 'id-twice'),
  set('two bays of one id', ['vehicle', 'bays', 1, 'id'], 'load-bay', 'id-twice'),
  set('a piece in a bin that is not there', ['kit', 'pieces', 4, 'binId'], 'blue-box', 'reference-unknown'),
  set(
    'a piece fixed in a bay that is not there',
    ['kit', 'pieces', 4, 'locks'],
    [{ layout: 'bed', bayId: 'attic' }],
    'reference-unknown',
    ['kit', 'pieces', 4, 'locks', 0, 'bayId'],
  ),
  set(
    'a piece fixed where no layout puts it',
    ['kit', 'pieces', 4, 'locks'],
    [{ layout: 'bed', bayId: 'load-bay' }],
    'lock-bay-not-usable',
    ['kit', 'pieces', 4, 'locks', 0, 'bayId'],
  ),
  set(
    'a piece fixed half outside',
    ['kit', 'pieces', 4, 'locks'],
    [{ layout: 'drive', bayId: 'load-bay', atMm: [1000, 0, 0], sizeMm: [200, 100, 100] }],
    'lock-outside-bay',
    ['kit', 'pieces', 4, 'locks', 0, 'atMm'],
  ),
  set('a piece that belongs with itself', ['kit', 'pieces', 4, 'belongsWith'], ['pillow-imke'], 'reference-to-itself', [
    'kit',
    'pieces',
    4,
    'belongsWith',
    0,
  ]),
  set('a rigid piece that is squeezed', ['kit', 'pieces', 16, 'squeezeTo01'], 0.5, 'rigid-squeezed'),
  set('bedding for nobody', ['kit', 'pieces', 2, 'bedding', 'forTravellerId'], 'nobody', 'reference-unknown'),
  set('a bin larger inside than outside', ['kit', 'bins', 0, 'innerMm'], [575, 375, 330], 'bin-inside-larger', [
    'kit',
    'bins',
    0,
    'innerMm',
    2,
  ]),
  set('an opening beyond its face', ['vehicle', 'bays', 0, 'openings', 0, 'toMm'], [1300, 700], 'opening-outside-face'),
  set('an opening of no width', ['vehicle', 'bays', 0, 'openings', 0, 'toMm'], [0, 700], 'opening-empty'),
  set(
    'a wheel arch outside the bay',
    ['vehicle', 'bays', 0, 'obstacles', 1, 'atMm'],
    [300, 1150, 0],
    'obstacle-outside-bay',
    ['vehicle', 'bays', 0, 'obstacles', 1],
  ),
  set('a bed without a mattress', ['vehicle', 'bed', 'mattressPieceIds'], [], 'bed-without-mattress'),
  set('a tool box for a mattress', ['vehicle', 'bed', 'mattressPieceIds', 0], 'ramps', 'mattress-not-bedding'),
  set('a bed longer than the floor', ['vehicle', 'bed', 'sizeMm', 0], 2100, 'bed-longer-than-flat'),
  set('no payload', ['vehicle', 'masses', 'permittedG'], 2_000_000, 'payload-none', ['vehicle', 'masses', 'readyG']),
  set('an axle over its limit', ['vehicle', 'masses', 'frontAxle', 'limitG'], 900_000, 'axle-over-limit', [
    'vehicle',
    'masses',
    'frontAxle',
    'readyG',
  ]),
  set('axles that do not add up', ['vehicle', 'masses', 'rearAxle', 'readyG'], 800_000, 'axle-sum'),
  set('an electric car without a battery', ['vehicle', 'battery'], undefined, 'electric-without-battery'),
  set('a reserve above the charge limit', ['vehicle', 'battery', 'reserve01'], 0.95, 'reserve-above-limit'),
  set('nights out of order', ['nights', 1, 'date'], '2027-10-07', 'nights-out-of-order'),
  set('the thirtieth of February', ['nights', 0, 'date'], '2027-02-30', 'date-impossible'),
  set('a zone of the moon', ['nights', 0, 'site', 'zone'], 'Moon/Tranquility', 'zone-unknown'),
  set('sleep the wrong way round', ['nights', 0, 'sleep'], { from: '05:30', to: '21:45' }, 'sleep-too-long', [
    'nights',
    0,
    'sleep',
    'to',
  ]),
  set('quiet hours of no length', ['nights', 0, 'quiet', 'to'], '22:00', 'span-empty'),
  set('an adapter left out of the kit', ['nights', 1, 'hookup', 'adapterPieceId'], 'magic-plug', 'reference-unknown'),
  set('more volts under load', ['nights', 0, 'hookup', 'readings', 1, 'volts'], 240, 'reading-rises'),
  set('a low above the high', ['nights', 0, 'weather', 'lowC'], 20, 'low-above-high'),
  set('the same hour twice', ['nights', 0, 'weather', 'hours', 3, 'clock'], '16:00', 'clock-twice'),
  set('a boot as bedding', ['nights', 0, 'beddingPieceIds', 0], 'boots', 'bedding-not-bedding'),
  set('a charger beyond the leg', ['nights', 0, 'leg', 'fastChargers', 0, 'atM'], 97_000, 'charger-beyond-leg'),
  set('no charge on the first evening', ['nights', 0, 'arriveCharge01'], undefined, 'arrive-charge-missing'),
  set('a bill for a night that is not there', ['ledger', 0, 'nightId'], 'night-9', 'reference-unknown'),
]

export const MALFORMED: readonly Malformed[] = [...BAD_FILES, ...BAD_FIELDS, ...BAD_SENSE]
