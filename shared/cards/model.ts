/** Our own small page model: what a printed card holds, before any PDF library sees it. Lengths on paper in mm, y downwards. */
import type { Language } from '../text/index.ts'

export type Paper = 'a4' | 'letter'
export type Point = readonly [x: number, y: number]

export type Shape =
  | {
      readonly kind: 'line'
      readonly fromMm: Point
      readonly toMm: Point
      readonly weightMm: number
      readonly dashMm?: readonly number[]
    }
  | {
      readonly kind: 'rect'
      readonly atMm: Point
      readonly sizeMm: Point
      readonly weightMm: number
      readonly fill: 'none' | 'paper' | 'ink'
      readonly dashMm?: readonly number[]
    }
  | {
      readonly kind: 'polyline'
      readonly pointsMm: readonly Point[]
      readonly weightMm: number
      readonly closed?: boolean
      readonly fill?: 'none' | 'paper'
      readonly dashMm?: readonly number[]
    }
  /** `atMm` is the anchor on the base line. */
  | {
      readonly kind: 'label'
      readonly atMm: Point
      readonly text: string
      readonly heightMm: number
      readonly anchor: 'start' | 'middle' | 'end'
      readonly bold?: boolean
      readonly turnDeg?: number
      readonly halo?: boolean
      /** In the paper's colour, for a label on full ink; its halo is then ink. */
      readonly onInk?: boolean
    }

export type Drawing = {
  readonly kind: 'drawing'
  readonly widthMm: number
  readonly heightMm: number
  readonly shapes: readonly Shape[]
  /** What it shows, for those who cannot see it. */
  readonly description: string
}

export type TickItem = {
  readonly text: string
  readonly detail: string | null
  /** When: clock or deadline, already in words. */
  readonly time: string | null
  readonly state: 'open' | 'done' | 'skipped'
  readonly caution: boolean
}

export type Column = {
  readonly title: string
  readonly share: number
  readonly align: 'left' | 'right'
  readonly strong?: boolean
}

export type Block =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone: 'plain' | 'strong' | 'small' }
  | {
      readonly kind: 'notice'
      /** One word for the tone. */
      readonly label: string
      readonly text: string
      readonly tone: 'shortfall' | 'caution' | 'note'
    }
  /** Key numbers, set large. */
  | { readonly kind: 'figures'; readonly items: readonly { readonly label: string; readonly value: string }[] }
  | { readonly kind: 'table'; readonly columns: readonly Column[]; readonly rows: readonly (readonly string[])[] }
  | { readonly kind: 'ticks'; readonly items: readonly TickItem[] }
  /** Lines to write on by hand. */
  | { readonly kind: 'blanks'; readonly labels: readonly string[] }
  | Drawing
  /** Blocks that must not be parted by a page's end. */
  | { readonly kind: 'together'; readonly blocks: readonly Block[] }
  /** Side by side in equal columns; not parted by a page's end. */
  | { readonly kind: 'beside'; readonly columns: readonly (readonly Block[])[] }
  | { readonly kind: 'page-break' }

export type CardDocument = {
  readonly title: string
  readonly subtitle: string
  readonly footer: string
  readonly language: Language
  readonly paper: Paper
  readonly blocks: readonly Block[]
}

/** Width between the margins, mm: A4 is 210 wide, US Letter 215.9; 12 mm margins. */
export const MARGIN_MM = 12
export const pageSizeMm = (paper: Paper): Point => (paper === 'a4' ? [210, 297] : [215.9, 279.4])
/** Between two columns on paper. */
export const COLUMN_GAP_MM = 5
export const textWidthMm = (paper: Paper): number => Math.floor(pageSizeMm(paper)[0] - 2 * MARGIN_MM)
