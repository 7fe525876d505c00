/** Blocks of a card as pdfmake content. Black only; lengths in points. */
import type { Content, ContentTable, TableCell } from 'pdfmake/interfaces'
import { COLUMN_GAP_MM, drawingToSvg, MARGIN_MM, pageSizeMm } from '../../../shared/cards/index.ts'
import type { Block, CardDocument, Drawing, Paper, TickItem } from '../../../shared/cards/index.ts'
import { assertNever } from '../../../shared/result/index.ts'
import { runsOf } from './coverage.ts'
import { LAYOUTS } from './layouts.ts'

/** 1 in = 72 pt = 25.4 mm. */
export const PT_PER_MM = 72 / 25.4
const INK = '#000000'
const WHITE = '#ffffff'

/** Lists to tick run in two columns, each under its heading; everything else takes the whole width. */
export function contentOf(card: CardDocument): Content[] {
  const content: Content[] = []
  let rows: TableCell[][] = []
  const close = (): void => {
    if (rows.length > 0) content.push(twoColumns(rows, card.paper))
    rows = []
  }
  let heading: string | null = null
  for (const [index, block] of card.blocks.entries()) {
    if (block.kind === 'heading' && card.blocks[index + 1]?.kind === 'ticks') heading = block.text
    else if (block.kind === 'ticks') {
      rows.push(...tickRows(block.items, heading, card.paper))
      heading = null
    } else {
      close()
      const aboveTable = block.kind === 'heading' && card.blocks[index + 1]?.kind === 'table'
      content.push(aboveTable ? headingContent(block.text, block.level, ABOVE_TABLE) : blockContent(block, card.paper))
    }
  }
  close()
  return content
}

/** Text in the fonts that hold its characters. */
export const words = (text: string): { text: string; font: string }[] => runsOf(text).map((run) => ({ ...run }))

export const contentWidthPt = (paper: Paper): number => (pageSizeMm(paper)[0] - 2 * MARGIN_MM) * PT_PER_MM

function blockContent(block: Block, paper: Paper): Content {
  switch (block.kind) {
    case 'heading':
      return headingContent(block.text, block.level)
    case 'paragraph':
      return {
        text: words(block.text),
        bold: block.tone === 'strong',
        fontSize: block.tone === 'strong' ? 12.5 : block.tone === 'small' ? 9.5 : 10.5,
        margin: [0, 2, 0, 5],
      }
    case 'notice':
      return noticeContent(block)
    case 'figures':
      return figuresContent(block.items, paper)
    case 'table':
      return tableContent(block, paper)
    case 'ticks':
      return twoColumns(tickRows(block.items, null, paper), paper)
    case 'blanks':
      return blanksContent(block.labels, paper)
    case 'drawing':
      return drawingContent(block)
    case 'together':
      return { stack: block.blocks.map((inner) => blockContent(inner, paper)), unbreakable: true }
    case 'beside':
      return {
        columns: block.columns.map((blocks) => ({
          width: columnRoomPt(paper),
          stack: blocks.map((inner) => blockContent(inner, paper)),
        })),
        columnGap: COLUMN_GAP_PT,
        unbreakable: true,
      }
    case 'page-break':
      return { text: '', pageBreak: 'after', fontSize: 1 }
    default:
      return assertNever(block)
  }
}

const HEADING = {
  1: { fontSize: 17, above: 10 },
  2: { fontSize: 13, above: 9 },
  3: { fontSize: 11, above: 6 },
} as const

/** The headline level of a heading right above a table. */
export const ABOVE_TABLE = 4

const headingContent = (text: string, level: 1 | 2 | 3, headlineLevel: number = level): Content => ({
  text: words(text),
  bold: true,
  fontSize: HEADING[level].fontSize,
  headlineLevel,
  margin: [0, HEADING[level].above, 0, 3],
})

/** A word in a frame, then the sentence: black on white, no colour needed. */
function noticeContent(block: Extract<Block, { kind: 'notice' }>): Content {
  const filled = block.tone === 'shortfall'
  const label: TableCell = {
    text: words(block.label),
    bold: true,
    fontSize: 9.5,
    alignment: 'center',
    color: filled ? WHITE : INK,
    fillColor: filled ? INK : WHITE,
    margin: [0, 1, 0, 1],
  }
  return {
    table: {
      widths: [72, '*'],
      dontBreakRows: true,
      body: [[label, { text: words(block.text), fontSize: 10.5, bold: filled }]],
    },
    layout: LAYOUTS.notice,
    margin: [0, 2, 0, 2],
  }
}

function figuresContent(items: Extract<Block, { kind: 'figures' }>['items'], paper: Paper): Content {
  const width = contentWidthPt(paper) / items.length - 2 * LAYOUTS.paddingPt - 1
  return {
    table: {
      widths: items.map(() => width),
      body: [
        items.map((item): TableCell => ({
          stack: [
            { text: words(item.value), bold: true, fontSize: 19, lineHeight: 1 },
            { text: words(item.label), fontSize: 9.5 },
          ],
        })),
      ],
    },
    layout: LAYOUTS.boxed,
    margin: [0, 4, 0, 6],
  }
}

function tableContent(block: Extract<Block, { kind: 'table' }>, paper: Paper): ContentTable {
  const { columns, rows } = block
  const whole = columns.reduce((sum, column) => sum + column.share, 0)
  const room = contentWidthPt(paper) - columns.length * 2 * LAYOUTS.paddingPt
  const headed = columns.some((column) => column.title !== '')
  const head = columns.map((column): TableCell => ({
    text: words(column.title),
    bold: true,
    fontSize: 8.5,
    alignment: column.align,
  }))
  const body = rows.map((row) =>
    columns.map((column, index): TableCell => ({
      text: words(row[index] ?? ''),
      alignment: column.align,
      bold: column.strong === true,
      fontSize: 9,
      lineHeight: 1,
    })),
  )
  return {
    table: {
      headerRows: headed ? 1 : 0,
      keepWithHeaderRows: headed ? 1 : 0,
      dontBreakRows: true,
      widths: columns.map((column) => (room * column.share) / whole),
      body: headed ? [head, ...body] : body,
    },
    layout: headed ? LAYOUTS.headed : LAYOUTS.plain,
    margin: [0, 1, 0, 6],
  }
}

const BOX_PT = 11
const TIME_PT = 46

const COLUMN_GAP_PT = COLUMN_GAP_MM * PT_PER_MM

const columnRoomPt = (paper: Paper): number => (contentWidthPt(paper) - COLUMN_GAP_PT) / 2
/** Box, words and time of one line, one of two columns wide. */
const tickWidths = (paper: Paper): number[] => {
  const room = columnRoomPt(paper) - 6 * LAYOUTS.paddingPt
  return [BOX_PT + 1, room - BOX_PT - 1 - TIME_PT, TIME_PT]
}

/** Filled one after the other on each page, as a newspaper's: one table, since a second one begun in a right column would break early. */
const twoColumns = (rows: TableCell[][], paper: Paper): Content => ({
  columns: [
    {
      width: columnRoomPt(paper),
      table: { dontBreakRows: true, widths: tickWidths(paper), body: rows },
      layout: LAYOUTS.ticks,
    },
    { width: columnRoomPt(paper), text: '' },
  ],
  columnGap: COLUMN_GAP_PT,
  snakingColumns: true,
  margin: [0, 0, 0, 4],
})

/** The heading stands in one row with the first line, so that no column ends in a heading alone. */
function tickRows(items: readonly TickItem[], heading: string | null, paper: Paper): TableCell[][] {
  const rows = items.map(tickRow)
  const [first, ...rest] = rows
  if (heading === null || first === undefined) return rows
  const title: Content = { text: words(heading), bold: true, fontSize: 12, margin: [0, 6, 0, 1] }
  const line: Content = {
    table: { widths: tickWidths(paper), body: [first] },
    layout: LAYOUTS.bare,
    margin: [-LAYOUTS.paddingPt, 0, 0, 0],
  }
  return [[{ stack: [title, line], colSpan: 3 }, {}, {}], ...rest]
}

const tickRow = (item: TickItem): TableCell[] => [
  { svg: boxSvg(item.state), width: BOX_PT, height: BOX_PT, margin: [0, 1, 0, 0] },
  {
    stack: [
      { text: words(item.text), fontSize: 9.5, bold: true, lineHeight: 1 },
      ...(item.detail === null ? [] : [{ text: words(item.detail), fontSize: 8, lineHeight: 1 }]),
    ],
  },
  { text: words(item.time ?? ''), fontSize: 9, bold: true, alignment: 'right' },
]

/** The family has no tick boxes: they are drawn. Done has a tick, skipped a bar. */
function boxSvg(state: TickItem['state']): string {
  const mark = {
    open: '',
    done: '<path d="M3 8l3.5 4L13 3" fill="none" stroke="#000" stroke-width="1.8"/>',
    skipped: '<path d="M3 8h10" stroke="#000" stroke-width="1.8"/>',
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16" viewBox="0 0 16 16"><rect x="1" y="1" width="14" height="14" fill="#fff" stroke="#000" stroke-width="1.2"/>${mark[state]}</svg>`
}

/** Labels with a line to write on, two a row. */
function blanksContent(labels: readonly string[], paper: Paper): Content {
  const half = contentWidthPt(paper) / 2 - 6
  const cell = (label: string): Content =>
    label === ''
      ? { text: '' }
      : {
          stack: [
            { text: words(label), fontSize: 9.5 },
            { canvas: [{ type: 'line', x1: 0, y1: 15, x2: half - 8, y2: 15, lineWidth: 0.6, lineColor: INK }] },
          ],
        }
  const rows: Content[] = []
  for (let index = 0; index < labels.length; index += 2) {
    rows.push({
      columns: [
        { width: half, stack: [cell(labels[index] ?? '')] },
        { width: half, stack: [cell(labels[index + 1] ?? '')] },
      ],
      columnGap: 12,
      margin: [0, 3, 0, 4],
    })
  }
  return { stack: rows, unbreakable: true, margin: [0, 2, 0, 4] }
}

function drawingContent(drawing: Drawing): Content {
  const svg = drawingToSvg(drawing, { ink: INK, paper: WHITE, sizing: 'mm', label: labelMarkup })
  return { svg, width: drawing.widthMm * PT_PER_MM, height: drawing.heightMm * PT_PER_MM, margin: [0, 0, 0, 4] }
}

const labelMarkup = (text: string): string =>
  runsOf(text)
    .map((run) => `<tspan font-family="${run.font}">${escapeXml(run.text)}</tspan>`)
    .join('')

const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
