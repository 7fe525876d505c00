/** What a placeholder shows: its value, converted and rounded by the unit that ends its name. */
import type { Utc } from '../units/index.ts'
import { sayClock, sayDayClock, sayDuration, sayList } from './moments.ts'
import { formatNumber, plainDigits } from './numbers.ts'
import * as say from './quantities.ts'
import type { Formats } from './quantities.ts'
import type { Quantity, TextParam, TextParams } from './types.ts'

type Rule = readonly [ending: RegExp, show: (value: number, formats: Formats) => string]

const by =
  (show: (value: number, formats: Formats) => Quantity) =>
  (value: number, formats: Formats): string =>
    show(value, formats).text

/** First match wins, so the longer endings stand first. */
const RULES: readonly Rule[] = [
  [/Mm3$/, by(say.sayVolume)],
  [/Mm$/, by(say.sayLength)],
  [/KmPerH$|^kmPerH$/, by(say.saySpeed)],
  [/MPerS$|^mPerS$/, by(say.sayWindSpeed)],
  [/WhPerKm$|^whPerKm$/, (value, formats) => `${formatNumber(value, formats.language, 0)}\u00a0Wh/km`],
  [/Wh$/, by(say.sayEnergy)],
  [/Ppm$/, (value, formats) => `${formatNumber(Math.round(value / 50) * 50, formats.language, 0)}\u00a0ppm`],
  [/01$/, by(say.sayPercent)],
  [/Ml$/, (value, formats) => say.sayVolume(value * 1000, formats).text],
  [/Kn$/, (value, formats) => `${formatNumber(value, formats.language, 1)}\u00a0kN`],
  [/Deg$/, (value, formats) => `${formatNumber(value, formats.language, 0)}\u00b0`],
  [/Clo$/, (value, formats) => `${formatNumber(value, formats.language, 1)}\u00a0clo`],
  [/Min$/, (value, formats) => sayDuration(value * 60, formats)],
  [/[a-z0-9]C$/, by(say.sayTemperature)],
  [/[a-z0-9]K$/, by(say.sayTemperatureDifference)],
  [/[a-z0-9]G$/, by(say.sayMass)],
  [/[a-z0-9]W$/, by(say.sayPower)],
  [/[a-z0-9]A$/, by(say.sayCurrent)],
  [/[a-z0-9]V$|^volts$/, by(say.sayVoltage)],
  [/[a-z0-9]S$/, (value, formats) => sayDuration(value, formats)],
  [/[a-z0-9]M$/, by(say.sayDistance)],
  // Of many hours nobody says the tenth.
  [/[a-z]H$/, (value, formats) => formatNumber(value, formats.language, value < 10 ? 1 : 0)],
]

/** The text of one placeholder. `word` turns a code into its word where the catalogue has one. */
export function showParam(
  name: string,
  params: TextParams,
  formats: Formats,
  word: (key: string) => string | null,
): string {
  const value = params[name]
  if (value === undefined) return `{${name}}`
  if (typeof value === 'number') return showNumber(name, value, params['zone'], formats)
  if (typeof value === 'boolean') return word(value ? 'word.yes' : 'word.no') ?? String(value)
  if (typeof value === 'string') return word(`${name}.${value}`) ?? value
  return sayList(
    value.map((item) => word(`${name}.${item}`) ?? item),
    formats,
  )
}

function showNumber(name: string, value: number, zone: TextParam | undefined, formats: Formats): string {
  if (typeof zone === 'string') {
    if (name.endsWith('DayUtc')) return sayDayClock(value as Utc, zone, formats)
    if (name.endsWith('Utc')) return sayClock(value as Utc, zone, formats)
  }
  const rule = RULES.find(([ending]) => ending.test(name))
  return rule === undefined ? formatNumber(value, formats.language, plainDigits(value)) : rule[1](value, formats)
}
