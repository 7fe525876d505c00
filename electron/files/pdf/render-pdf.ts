/** A card as a PDF: A4 or US Letter, black only, the same bytes for the same card and date. */
import pdfmake from 'pdfmake'
import type { Content, Node, TDocumentDefinitions } from 'pdfmake/interfaces'
import { MARGIN_MM, pageSizeMm } from '../../../shared/cards/index.ts'
import type { CardDocument } from '../../../shared/cards/index.ts'
import { invariant } from '../../../shared/result/index.ts'
import { ABOVE_TABLE, contentOf, PT_PER_MM, words } from './content.ts'
import { fontFiles } from './fonts.ts'

let prepared = false

/** pdfmake keeps fonts and policies once for the process: nothing is fetched, no file but the fonts is read. */
function prepare(): void {
  if (prepared) return
  const fonts = fontFiles()
  const allowed = new Set(Object.values(fonts).flatMap((font) => [font.normal, font.bold]))
  pdfmake.setUrlAccessPolicy(() => false)
  pdfmake.setLocalAccessPolicy((path) => allowed.has(path))
  pdfmake.setFonts({ ...fonts })
  prepared = true
}

/** `dateIso` (ISO 8601) is the creation date written into the file. */
export async function renderPdf(card: CardDocument, dateIso: string): Promise<Uint8Array> {
  const date = new Date(dateIso)
  invariant(!Number.isNaN(date.getTime()), `not a date: ${dateIso}`)
  prepare()
  const buffer = await pdfmake.createPdf(definitionOf(card, date)).getBuffer()
  return new Uint8Array(buffer)
}

function definitionOf(card: CardDocument, date: Date): TDocumentDefinitions {
  const [width, height] = pageSizeMm(card.paper)
  const margin = MARGIN_MM * PT_PER_MM
  return {
    pageSize: { width: width * PT_PER_MM, height: height * PT_PER_MM },
    pageMargins: [margin, margin + 6, margin, margin + 8],
    info: {
      title: card.title,
      subject: card.subtitle,
      author: 'Kipstow',
      creator: 'Kipstow',
      producer: 'Kipstow',
      creationDate: date,
      modDate: date,
    },
    language: card.language,
    defaultStyle: { font: 'Reading', fontSize: 10.5, lineHeight: 1.08, color: '#000000' },
    header: (page) =>
      page === 1 ? { text: '' } : runningLine(`${card.title} \u00b7 ${card.subtitle}`, '', margin, margin - 9),
    footer: (page, pages) => runningLine(card.footer, `${page} / ${pages}`, margin, 8),
    content: [
      { text: words(card.title), fontSize: 22, bold: true, margin: [0, -4, 0, 0] },
      { text: words(card.subtitle), fontSize: 11, margin: [0, 0, 0, 6] },
      ...contentOf(card),
    ],
    pageBreakBefore: (node, nodes) =>
      node.headlineLevel !== undefined && (isLowAboveTable(node) || !nodes.getFollowingNodesOnPage().some(isBody)),
  }
}

/** A heading lower on the page than this has no room for a table's head and first rows below it. */
const LOWEST_01 = 0.9

/** A table that begins on the next page is still said to follow on this one. */
const isLowAboveTable = (node: Node): boolean =>
  node.headlineLevel === ABOVE_TABLE && node.startPosition.verticalRatio > LOWEST_01

/** Text that is no heading, and drawings: stacks and tables are said to be on the page that they were moved from. */
const isBody = (node: Node): boolean =>
  node.headlineLevel === undefined && (node.text !== undefined || node.svg !== undefined || node.canvas !== undefined)

const runningLine = (left: string, right: string, margin: number, top: number): Content => ({
  columns: [
    { width: '*', text: words(left), fontSize: 8 },
    { width: 'auto', text: words(right), fontSize: 8, alignment: 'right' },
  ],
  margin: [margin, top, margin, 0],
})
