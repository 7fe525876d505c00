/** Fields for what one reads on the night itself, in the traveller's units; the script turns them into the trip's. */
import type { Measured } from '../../document/index.ts'
import type { Text } from '../../text/index.ts'
import { escapeMarkup } from '../escape.ts'

export const MOMENTS = ['at-the-post', 'bedtime', 'morning'] as const satisfies readonly Measured['moment'][]

/** Each with the largest and smallest value it may take, as in the trip's own format but for meters, which count on for years. */
export const READING_FIELDS = {
  volts: [0, 500],
  currentA: [0, 400],
  /** A meter of five figures of kWh. */
  meterWh: [0, 100_000_000],
  charge01: [0, 1],
  lowestInsideC: [-60, 60],
} as const satisfies Partial<Record<keyof Measured, readonly [number, number]>>

type Field = keyof typeof READING_FIELDS
const ASKED: Readonly<Record<Measured['moment'], readonly Field[]>> = {
  'at-the-post': ['volts', 'currentA', 'meterWh', 'charge01'],
  bedtime: ['volts', 'currentA', 'charge01'],
  morning: ['meterWh', 'charge01', 'lowestInsideC'],
}

export function readingsHtml(nightId: string, text: Text): string {
  return MOMENTS.map((moment) => {
    const legend = escapeMarkup(text.t(`pocket.moment.${moment}`))
    const fields = ASKED[moment].map((field) => fieldHtml(field, nightId, moment, text)).join('')
    return `<fieldset><legend>${legend}</legend><div class="fields">${clockHtml(nightId, moment, text)}${fields}</div></fieldset>`
  }).join('\n')
}

const clockHtml = (nightId: string, moment: string, text: Text): string =>
  `<label>${escapeMarkup(text.t('pocket.reading.clock'))}<input inputmode="text" autocomplete="off" placeholder="19:30" data-night="${escapeMarkup(nightId)}" data-moment="${moment}" data-field="clock"></label>`

function fieldHtml(field: Field, nightId: string, moment: string, text: Text): string {
  const { scale, offset } = scaleOf(field, text)
  const label = text.t(`pocket.reading.${field}`, { unit: text.units === 'us' ? '\u00b0F' : '\u00b0C' })
  return `<label>${escapeMarkup(label)}<input inputmode="decimal" autocomplete="off" data-night="${escapeMarkup(nightId)}" data-moment="${moment}" data-field="${field}" data-scale="${scale}" data-offset="${offset}"></label>`
}

/** The trip's value is what was typed times scale plus offset. */
function scaleOf(field: Field, text: Text): { readonly scale: number; readonly offset: number } {
  if (field === 'meterWh') return { scale: 1000, offset: 0 }
  if (field === 'charge01') return { scale: 0.01, offset: 0 }
  if (field === 'lowestInsideC' && text.units === 'us') return { scale: 5 / 9, offset: -160 / 9 }
  return { scale: 1, offset: 0 }
}
