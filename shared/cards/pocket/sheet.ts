/** The pocket sheet: the night on one's phone as one HTML file that works offline and reads as plain text without its script. */
import { bayBlocks } from '../bay-blocks.ts'
import { PHASES, stepsOfNight } from '../../plan/index.ts'
import { escapeMarkup, wellFormed } from '../escape.ts'
import type { Block } from '../model.ts'
import { dawnRows, duskRows, pieceOrBin, wherePieces } from '../load-nights.ts'
import { moveNumbers } from '../bin-move-rows.ts'
import type { MoveRow } from '../bin-move-rows.ts'
import { namesOf } from '../names.ts'
import type { Names } from '../names.ts'
import { faultBlocks, legBlocks, pitchBlocks, sleeperBlocks, supplyBlocks } from '../night-blocks.ts'
import { figuresOf, timesOf } from '../night-card.ts'
import { noticeBlocks } from '../notices.ts'
import { nightsOf } from '../plan-parts.ts'
import type { CardInput, OneNight } from '../plan-parts.ts'
import { placeWords } from '../places.ts'
import { siteRows } from '../site-sheet.ts'
import { stepBlocks } from '../step-blocks.ts'
import { phaseWords, stepItem } from '../step-words.ts'
import { verdictWords } from '../verdict-words.ts'
import { blocksToHtml } from './blocks-html.ts'
import { POCKET_CSP } from './csp.ts'
import { readingsHtml } from './readings.ts'
import { POCKET_SCRIPT } from './script.ts'
import { POCKET_STYLE } from './style.ts'

export type PocketInput = Pick<CardInput, 'plan' | 'trip' | 'text'>

export const POCKET_MAX_BYTES = 300_000

/** Below `POCKET_MAX_BYTES`: first the drawings of each step of loading go, then the other drawings, then the reasons, then the last nights, and the sheet says so. */
export function pocketSheet(input: PocketInput): string {
  const whole = input.trip.nights.length
  for (const shown of [
    { nights: whole, steps: true, drawings: true, reasons: true },
    { nights: whole, steps: false, drawings: true, reasons: true },
    { nights: whole, steps: false, drawings: false, reasons: true },
    { nights: whole, steps: false, drawings: false, reasons: false },
  ]) {
    const sheet = sheetOf(input, shown)
    if (utf8Bytes(sheet) < POCKET_MAX_BYTES) return sheet
  }
  for (let nights = whole - 1; nights > 1; nights = Math.floor(nights * 0.8)) {
    const sheet = sheetOf(input, { nights, steps: false, drawings: false, reasons: false })
    if (utf8Bytes(sheet) < POCKET_MAX_BYTES) return sheet
  }
  return sheetOf(input, { nights: 1, steps: false, drawings: false, reasons: false })
}

type Shown = {
  readonly nights: number
  readonly steps: boolean
  readonly drawings: boolean
  readonly reasons: boolean
}

/** Bytes in UTF-8 of text without lone surrogates (escaping removed them). */
export const utf8Bytes = (text: string): number => encodeURIComponent(text).replaceAll(/%[0-9A-F]{2}/g, '.').length

function sheetOf(input: PocketInput, shown: Shown): string {
  const { trip, text } = input
  const card: CardInput = { ...input, nightId: null, paper: trip.preferences.paper }
  const nights = nightsOf(card).slice(0, shown.nights)
  const names = namesOf(trip, input.plan.packing)
  const section = (id: SectionId, body: string): string =>
    `<section><h2 id="${id}">${words(text.t(`pocket.${id}`))}</h2>\n${body}</section>`
  const cut =
    shown.nights < trip.nights.length
      ? `<p class="notice">${words(text.t('pocket.cut', { count: shown.nights, all: trip.nights.length }))}</p>`
      : ''
  const each = (body: (one: OneNight) => string): string =>
    nights.map((one) => `${nightHeading(one, card)}\n${body(one)}`).join('\n')
  return `<!doctype html>
<html lang="${text.language}"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POCKET_CSP}">
<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="referrer" content="no-referrer">
<title>${words(`${text.t('pocket.title')} \u00b7 ${trip.title}`)}</title>
<style>${POCKET_STYLE}</style></head>
<body ${pageData(input)}>
<main>
<label class="theme"><input type="checkbox" id="night-red"> ${words(text.t('pocket.nightRed'))}</label>
<h1>${words(trip.title)}</h1>
<p><b>${words(verdictWords(card))}</b></p>
<p><small id="memory">${words(text.t('pocket.forgets'))}</small> <small id="count"></small></p>
${cut}
<nav>${SECTIONS.map((id) => `<a href="#${id}">${words(text.t(`pocket.${id}`))}</a>`).join('')}</nav>
${section(
  'checklist',
  each((one) => stepsHtml(one, card, shown.reasons)),
)}
${section('where', `${each((one) => whereHtml(one, card, names))}\n${shown.drawings ? blocksToHtml(drawings(card, names, nights, shown.steps)) : ''}`)}
${section(
  'moves',
  each((one) => movesHtml(one, card, names)),
)}
${section(
  'numbers',
  each((one) => blocksToHtml(numberBlocks(one, card, names))),
)}
${section('help', `${each((one) => blocksToHtml([helpTable(one, card)]))}<p><b>${words(text.t('cards.site.emergency'))}</b></p><p>${words(text.t('cards.site.emergencyHow'))}</p>`)}
${section('readings', `<p>${words(text.t('pocket.readingsHow'))}</p>${each((one) => readingsHtml(one.night.id, text))}`)}
${section('back', backHtml(card))}
<p><small>${words(text.t('cards.footer', { title: trip.title }))}</small></p>
</main>
<script>${POCKET_SCRIPT}</script>
</body></html>
`
}

const SECTIONS = ['checklist', 'where', 'moves', 'numbers', 'help', 'readings', 'back'] as const
type SectionId = (typeof SECTIONS)[number]

const words = escapeMarkup

/** What the script says and where it keeps things; the words are the page's language. */
function pageData({ trip, text }: PocketInput): string {
  const data = {
    store: `kipstow-pocket ${trip.title} ${trip.nights[0]?.date ?? ''}`,
    trip: encodeURIComponent(wellFormed(trip.title)),
    remembers: text.t('pocket.remembers'),
    forgets: text.t('pocket.forgets'),
    done: text.t('pocket.done'),
    copied: text.t('pocket.copied'),
    byhand: text.t('pocket.copyByHand'),
    imported: text.t('pocket.imported'),
    not: text.t('pocket.notImported'),
  }
  return Object.entries(data)
    .map(([name, value]) => `data-${name}="${words(value)}"`)
    .join(' ')
}

const nightHeading = (one: OneNight, { text, trip }: CardInput): string =>
  trip.nights.length === 1 ? '' : `<h3>${words(`${text.date(one.night.date)} \u00b7 ${one.night.site.name}`)}</h3>`

function stepsHtml(one: OneNight, input: CardInput, reasons: boolean): string {
  const { plan, text } = input
  const steps = stepsOfNight(plan, one.night.id)
  return PHASES.flatMap((phase) => {
    const mine = steps.filter((step) => step.phase === phase)
    if (mine.length === 0) return []
    const items = mine.map((step) => {
      const item = stepItem(step, plan, text)
      const names = [...(item.caution ? ['caution'] : []), ...(item.state === 'skipped' ? ['skipped'] : [])].join(' ')
      const why = item.detail === null || !reasons ? '' : `<small>${words(item.detail)}</small>`
      const time = item.time === null ? '' : `<time>${words(item.time)}</time>`
      const checked = item.state === 'done' ? ' checked' : ''
      return `<li${names === '' ? '' : ` class="${names}"`}><label><input type="checkbox" data-step="${words(step.key)}"${checked}><span class="what">${words(item.text)}${why}</span>${time}</label></li>`
    })
    return [
      `<h4>${words(phaseWords(plan, { nightId: one.night.id, phase }, text))}</h4>\n<ul class="steps">\n${items.join('\n')}\n</ul>`,
    ]
  }).join('\n')
}

function drawings(input: CardInput, names: Names, nights: readonly OneNight[], steps: boolean): readonly Block[] {
  const { plan, text } = input
  const phone = { ...input, drawingWidthMm: 96 }
  return [
    { kind: 'heading', level: 1, text: text.t('cards.load.drive') },
    ...bayBlocks(phone, names, plan.packing.drive, null),
    ...(steps ? stepBlocks(phone, names) : []),
    ...nights.flatMap((one): readonly Block[] => {
      const changed = one.packing === null ? [] : bayBlocks(phone, names, one.packing.bed, plan.packing.drive)
      if (changed.length === 0) return []
      const title = text.t('cards.load.night', { date: text.date(one.night.date), site: one.night.site.name })
      return [{ kind: 'heading', level: 1, text: title }, ...changed]
    }),
  ]
}

/** One line a piece: short enough for a phone, plain enough without styles. */
function whereHtml(one: OneNight, { plan, text, trip }: CardInput, names: Names): string {
  const { packing } = plan
  const bed = one.packing?.bed ?? packing.drive
  const collator = new Intl.Collator(trip.preferences.language)
  const onRoad = words(text.t('cards.column.drive'))
  const atNight = words(text.t('cards.column.night'))
  const rows = wherePieces(packing.units, (id) => names.piece(id))
    .map(({ pieceId, unitId, inBin }) => {
      const drive = placeWords(unitId, packing.drive, names, text)
      const night = placeWords(pieceOrBin(pieceId, unitId, bed), bed, names, text)
      const bin = inBin ? `${names.number(unitId)} ${names.unit(unitId)}` : ''
      return [names.piece(pieceId), bin, drive, night === drive ? text.t('pocket.same') : night] as const
    })
    .toSorted((a, b) => collator.compare(a[0], b[0]))
    .map(([piece, bin, drive, night]) => {
      const inside = bin === '' ? '' : ` <small>${words(bin)}</small>`
      return `<li><b>${words(piece)}</b>${inside}<br>${onRoad}: ${words(drive)}<br>${atNight}: ${words(night)}</li>`
    })
  return `<ul class="where">\n${rows.join('\n')}\n</ul>`
}

function movesHtml(one: OneNight, input: CardInput, names: Names): string {
  const { text, plan } = input
  if (one.packing === null) return ''
  const list = (title: string, rows: readonly MoveRow[]): string => {
    if (rows.length === 0) return `<h4>${words(title)}</h4><p>${words(text.t('cards.moves.none'))}</p>`
    const numbers = moveNumbers(rows)
    const items = rows.map((row, index) => {
      const door = row.door === '' ? '' : ` <small>(${words(row.door)})</small>`
      return `<li><b>${numbers[index] ?? ''}</b> <b>${words(row.number === null ? row.unit : `${row.number} ${row.unit}`)}</b><br>${words(row.from)} \u203a <b>${words(row.to)}</b>${door}</li>`
    })
    return `<h4>${words(title)}</h4><ol class="moves">${items.join('\n')}</ol>`
  }
  return [
    list(text.t('cards.moves.dusk'), duskRows(one.packing, plan.packing.drive, names, input)),
    list(text.t('cards.moves.morning'), dawnRows(one.packing, names, input)),
  ].join('\n')
}

function numberBlocks(one: OneNight, input: CardInput, names: Names): readonly Block[] {
  const alone: CardInput = { ...input, nightId: one.night.id }
  return [
    { kind: 'paragraph', tone: 'strong', text: verdictWords(alone) },
    { kind: 'figures', items: figuresOf(one, input) },
    ...noticeBlocks(alone, ['night', 'leg', 'site', 'clock', 'load'], one.night.id),
    {
      kind: 'table',
      columns: [
        { title: '', share: 30, align: 'left', strong: true },
        { title: '', share: 70, align: 'left' },
      ],
      rows: timesOf(one, input).map(([label, clock]) => [clock, label]),
    },
    ...supplyBlocks(one, input),
    ...sleeperBlocks(one, input, names),
    ...legBlocks(one, input),
    ...faultBlocks(one, input),
    ...pitchBlocks(one, input),
    { kind: 'paragraph', tone: 'small', text: input.text.t('cards.night.caution') },
  ]
}

const helpTable = (one: OneNight, input: CardInput): Block => ({
  kind: 'table',
  columns: [
    { title: '', share: 40, align: 'left' },
    { title: '', share: 60, align: 'left', strong: true },
  ],
  rows: siteRows(one, input),
})

const backHtml = ({ text }: CardInput): string => `<div class="only-script"><p>${words(text.t('pocket.backHow'))}</p>
<button type="button" id="export">${words(text.t('pocket.export'))}</button><button type="button" id="import">${words(text.t('pocket.import'))}</button>
<p><label for="talk">${words(text.t('pocket.text'))}</label><textarea id="talk" spellcheck="false" autocomplete="off"></textarea></p>
<p id="said" role="status"></p></div>`
