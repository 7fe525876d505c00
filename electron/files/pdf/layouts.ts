/** Rules and padding of the tables on a card. */
import type { CustomTableLayout } from 'pdfmake/interfaces'

const PADDING_PT = 3
const HAIR_PT = 0.4
const RULE_PT = 1
/** A list to tick is long: its lines stand closer. */
const TICK_PADDING_PT = 1.4

const padding = {
  paddingLeft: () => PADDING_PT,
  paddingRight: () => PADDING_PT,
  paddingTop: () => 1.6,
  paddingBottom: () => 1.6,
} satisfies CustomTableLayout

const base = {
  ...padding,
  vLineWidth: () => 0,
  hLineColor: () => '#000000',
  vLineColor: () => '#000000',
} satisfies CustomTableLayout

export const LAYOUTS = {
  paddingPt: PADDING_PT,
  headed: { ...base, hLineWidth: (row) => (row === 0 ? 0 : row === 1 ? RULE_PT : HAIR_PT) } satisfies CustomTableLayout,
  plain: { ...base, hLineWidth: () => HAIR_PT } satisfies CustomTableLayout,
  ticks: {
    ...base,
    hLineWidth: () => HAIR_PT,
    paddingTop: () => TICK_PADDING_PT,
    paddingBottom: () => TICK_PADDING_PT,
  } satisfies CustomTableLayout,
  bare: { ...base, hLineWidth: () => 0, paddingTop: () => 0, paddingBottom: () => 0 } satisfies CustomTableLayout,
  notice: {
    ...base,
    hLineWidth: () => RULE_PT,
    vLineWidth: (column) => (column < 2 ? RULE_PT : 0),
  } satisfies CustomTableLayout,
  boxed: { ...base, hLineWidth: () => RULE_PT, vLineWidth: () => RULE_PT } satisfies CustomTableLayout,
}
