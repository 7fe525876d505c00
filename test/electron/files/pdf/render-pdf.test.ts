/** Cards become PDF files: right size, same bytes twice, every character in a font, nothing but our fonts read. */
import { createRequire } from 'node:module'
import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../../../electron/files/pdf/index.ts'
import { fontOf, runsOf } from '../../../../electron/files/pdf/coverage.ts'
import { contentOf as contentOfCard } from '../../../../electron/files/pdf/content.ts'
import { fontFiles } from '../../../../electron/files/pdf/fonts.ts'
import { checklistCard, loadCard, nightCard, siteSheet } from '../../../../shared/cards/index.ts'
import type { Block, CardInput, TickItem } from '../../../../shared/cards/index.ts'
import { createText } from '../../../../shared/text/index.ts'
import { cardsPlan, cardsTrip } from '../../../support/cards-plan.ts'

const trip = cardsTrip()
const input: CardInput = { trip, plan: cardsPlan(trip), text: createText('en', 'metric'), nightId: null, paper: 'a4' }
const DATE = '2026-11-01T08:00:00Z'
const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')
const pagesOf = (bytes: Uint8Array): number => [...latin(bytes).matchAll(/\/Type \/Page\b(?!s)/g)].length

/** Page content with its compression undone. */
function contentOf(bytes: Uint8Array): string {
  const file = Buffer.from(bytes)
  const parts: string[] = []
  let from = file.indexOf('stream\n')
  while (from !== -1) {
    const end = file.indexOf('endstream', from)
    try {
      parts.push(inflateSync(file.subarray(from + 7, end)).toString('latin1'))
    } catch {
      // Not every stream is compressed text; fonts and plain streams are passed over.
    }
    from = file.indexOf('stream\n', end + 9)
  }
  return parts.join('\n')
}

describe('a card as PDF', () => {
  it.each([
    ['load', loadCard, 4],
    ['night', nightCard, 3],
    ['checklist', checklistCard, 2],
    ['no-coverage', siteSheet, 1],
  ] as const)('the %s card is a PDF of %s pages or more, the same bytes each time', async (_, make, pages) => {
    const first = await renderPdf(make(input), DATE)
    const second = await renderPdf(make(input), DATE)
    expect(latin(first).startsWith('%PDF-1.')).toBe(true)
    expect(latin(first).trimEnd().endsWith('%%EOF')).toBe(true)
    expect(Buffer.compare(first, second)).toBe(0)
    expect(pagesOf(first)).toBeGreaterThanOrEqual(pages)
  })

  it('takes the paper that was asked for', async () => {
    const a4 = latin(await renderPdf(siteSheet(input), DATE))
    const letter = latin(await renderPdf(siteSheet({ ...input, paper: 'letter' }), DATE))
    expect(a4).toMatch(/\/MediaBox \[0 0 595\.\d+ 841\.\d+\]/)
    expect(letter).toMatch(/\/MediaBox \[0 0 612 792\]/)
  })

  it('uses black, white and nothing else', async () => {
    const drawn = contentOf(await renderPdf(loadCard(input), DATE))
    const colours = new Set([...drawn.matchAll(/([\d.]+ [\d.]+ [\d.]+) (?:SCN|scn|RG|rg)\b/g)].map((match) => match[1]))
    expect(drawn.length).toBeGreaterThan(10_000)
    expect([...colours].filter((colour) => colour !== '0 0 0' && colour !== '1 1 1')).toEqual([])
  })

  it('carries the given date and no other', async () => {
    const file = latin(await renderPdf(siteSheet(input), DATE))
    expect(file).toContain('(D:20261101080000Z)')
  })

  it('survives names in any alphabet', async () => {
    const name = 'Łódź Ελλάδα Кухня 調理 עברית 🏕️ \u0000\ud800'
    const foreign = cardsTrip({
      title: name,
      kit: { ...trip.kit, bins: trip.kit.bins.map((bin) => ({ ...bin, name })) },
    })
    const bytes = await renderPdf(loadCard({ ...input, trip: foreign }), DATE)
    expect(pagesOf(bytes)).toBeGreaterThan(3)
  })
})

describe('the content of a card', () => {
  const tick = (over: Partial<TickItem>): TickItem => ({
    text: 'Chocks in',
    detail: null,
    time: null,
    state: 'open',
    caution: false,
    ...over,
  })
  const content = (...blocks: readonly Block[]): unknown[] => contentOfCard({ ...siteSheet(input), blocks })
  /** Every text in it, in order. */
  const textsOf = (part: unknown): readonly string[] => {
    if (Array.isArray(part)) return part.flatMap(textsOf)
    if (typeof part !== 'object' || part === null) return []
    return Object.entries(part).flatMap(([key, value]) =>
      key === 'text' && typeof value === 'string' ? [value] : textsOf(value),
    )
  }
  const svgsOf = (part: unknown): readonly string[] =>
    [...JSON.stringify(part).matchAll(/<path d=\\"([^\\]+)/g)].map((match) => match[1] ?? '')

  it('has a box for each line to tick, also inside blocks kept together: empty, ticked or barred', async () => {
    const items = [
      tick({ time: '17:20' }),
      tick({ text: 'Covers in', detail: 'Six degrees', state: 'done' }),
      tick({ text: 'Call the site', state: 'skipped' }),
    ]
    const inside = content({ kind: 'together', blocks: [{ kind: 'ticks', items }] })
    expect(textsOf(inside).filter((text) => text !== '')).toEqual([
      'Chocks in',
      '17:20',
      'Covers in',
      'Six degrees',
      'Call the site',
    ])
    expect(svgsOf(inside)).toEqual(['M3 8l3.5 4L13 3', 'M3 8h10'])
    expect(JSON.stringify(inside).match(/<svg /g)).toHaveLength(3)
    const bytes = await renderPdf(
      { ...siteSheet(input), blocks: [{ kind: 'together', blocks: [{ kind: 'ticks', items }] }] },
      DATE,
    )
    expect(pagesOf(bytes)).toBe(1)
  })

  it('puts no heading over a list of nothing, nor one heading over two lists', () => {
    const heading: Block = { kind: 'heading', level: 2, text: 'Before dark' }
    expect(textsOf(content(heading, { kind: 'ticks', items: [] }))).toEqual([])
    const twice = content(heading, { kind: 'ticks', items: [tick({})] }, { kind: 'ticks', items: [tick({})] })
    expect(textsOf(twice).filter((text) => text !== '')).toEqual(['Before dark', 'Chocks in', 'Chocks in'])
  })

  it('leaves a cell empty that its row does not have', () => {
    const column = { title: '', share: 1, align: 'left' } as const
    const [table] = content({ kind: 'table', columns: [column, column], rows: [['a'], ['b', 'c']] })
    const { body } = (table as { table: { body: unknown[][] } }).table
    expect(body.map((row) => row.map((cell) => textsOf(cell)))).toEqual([
      [['a'], []],
      [['b'], ['c']],
    ])
  })
})

describe('fonts', () => {
  const load = createRequire(createRequire(import.meta.url).resolve('pdfmake'))
  const fontkit: { openSync: (path: string) => { hasGlyphForCodePoint: (point: number) => boolean } } = load('fontkit')
  const files = Object.fromEntries(
    Object.entries(fontFiles()).map(([font, cuts]) => [
      font,
      [fontkit.openSync(cuts.normal), fontkit.openSync(cuts.bold)],
    ]),
  )

  it('hold every character that is said to be in them, in both cuts', () => {
    const missing: string[] = []
    let checked = 0
    for (let point = 0x20; point < 0x3000; point += 1) {
      const font = fontOf(point)
      if (font === null) continue
      checked += 1
      if ((files[font] ?? []).some((cut) => !cut.hasGlyphForCodePoint(point))) missing.push(point.toString(16))
    }
    expect(missing).toEqual([])
    expect(checked).toBeGreaterThan(600)
  })

  it('keep each character in order, in as few runs as may be', () => {
    expect(runsOf('Kiste Łódź 3')).toEqual([
      { text: 'Kiste ', font: 'Reading' },
      { text: 'Ł', font: 'Extended' },
      { text: 'ód', font: 'Reading' },
      { text: 'ź ', font: 'Extended' },
      { text: '3', font: 'Reading' },
    ])
  })

  it('put a question mark where no font has the character, and drop what is invisible', () => {
    expect(runsOf('a\u200b\u0301調')).toEqual([{ text: 'á?', font: 'Reading' }])
  })
})
