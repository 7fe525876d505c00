/** Per measure and unit system: which units a person may use, and what one of them is in the engine's unit. */
import {
  G_PER_KG,
  G_PER_POUND,
  M_PER_MILE,
  MM3_PER_LITRE,
  MM_PER_INCH,
  MM_PER_M,
  S_PER_DAY,
  S_PER_HOUR,
  S_PER_MINUTE,
  WH_PER_KWH,
} from '../units/index.ts'
import type { Measure, UnitSystem } from './types.ts'

/** Exact: 1 ft = 12 in. */
export const INCHES_PER_FOOT = 12
/** Exact: 1 lb = 16 oz avoirdupois. */
export const OUNCES_PER_POUND = 16
/** Exact: the US gallon is 231 cubic inches. */
export const MM3_PER_GALLON = 231 * MM_PER_INCH ** 3
export const M_PER_FOOT = (INCHES_PER_FOOT * MM_PER_INCH) / MM_PER_M
/** Exact: 3600 s/h over 1000 m/km. */
const KM_PER_H_PER_M_PER_S = 3.6
export const KM_PER_MILE = M_PER_MILE / 1000
/** m/s in one mile an hour, exact. */
export const M_PER_S_PER_MPH = M_PER_MILE / S_PER_HOUR
const FAHRENHEIT_PER_KELVIN = 1.8

/** How a unit turns into the engine's: multiply, then add. */
export type UnitScale = { readonly factor: number; readonly offset?: number }
export type MeasureUnits = {
  /** Unit words as typed, lower case without dots; the value is `typed * factor + offset`. */
  readonly words: Readonly<Record<string, UnitScale>>
  /** Unit of a bare number and of the exact form. */
  readonly bare: Readonly<Record<UnitSystem, string>>
  /** Decimals that the exact form needs so that it reads back unchanged. */
  readonly exactDigits: number
  /** Whether the engine wants a whole number. */
  readonly whole: boolean
  /** Lowest value that makes sense, in the engine's unit. */
  readonly atLeast: number | null
}

const scale = (factor: number, ...words: readonly string[]): Record<string, UnitScale> =>
  Object.fromEntries(words.map((word) => [word, { factor }]))

const INCH_WORDS = ['in', 'inch', 'inches', 'zoll', '"', '\u2033', '\u201d', "''"]
export const METRE_WORDS = ['m', 'metre', 'metres', 'meter', 'meters']
export const KILOGRAM_WORDS = ['kg', 'kilo', 'kilos']
export const POUND_WORDS = ['lb', 'lbs', 'pound', 'pounds', '#']
export const HOUR_WORDS = ['h', 'hr', 'hrs', 'hour', 'hours', 'std', 'stunde', 'stunden']
export const DAY_WORDS = ['d', 'day', 'days', 'tag', 'tage']
export const FOOT_WORDS = ['ft', 'foot', 'feet', 'fu\u00df', 'fuss', "'", '\u2032', '\u2019']

export const MEASURES: Readonly<Record<Measure, MeasureUnits>> = {
  length: {
    words: {
      ...scale(1, 'mm'),
      ...scale(10, 'cm'),
      ...scale(MM_PER_M, ...METRE_WORDS),
      ...scale(MM_PER_INCH, ...INCH_WORDS),
      ...scale(MM_PER_INCH * INCHES_PER_FOOT, ...FOOT_WORDS),
    },
    bare: { metric: 'cm', us: 'in' },
    exactDigits: 2,
    whole: true,
    atLeast: null,
  },
  mass: {
    words: {
      ...scale(1, 'g', 'gram', 'grams', 'gramm'),
      ...scale(G_PER_KG, ...KILOGRAM_WORDS),
      ...scale(G_PER_KG * 1000, 't'),
      ...scale(G_PER_POUND, ...POUND_WORDS),
      ...scale(G_PER_POUND / OUNCES_PER_POUND, 'oz', 'ounce', 'ounces'),
    },
    bare: { metric: 'kg', us: 'lb' },
    exactDigits: 3,
    whole: true,
    atLeast: 0,
  },
  volume: {
    words: {
      ...scale(MM3_PER_LITRE / 1000, 'ml'),
      ...scale(MM3_PER_LITRE, 'l', 'litre', 'litres', 'liter', 'liters'),
      ...scale(MM3_PER_GALLON, 'gal', 'gallon', 'gallons'),
      ...scale(MM3_PER_GALLON / 4, 'qt', 'quart', 'quarts'),
    },
    bare: { metric: 'l', us: 'gal' },
    exactDigits: 3,
    whole: false,
    atLeast: 0,
  },
  temperature: {
    words: {
      ...scale(1, 'c', '\u00b0c', '\u00b0', 'celsius', 'grad'),
      f: { factor: 1 / FAHRENHEIT_PER_KELVIN, offset: -32 / FAHRENHEIT_PER_KELVIN },
      '\u00b0f': { factor: 1 / FAHRENHEIT_PER_KELVIN, offset: -32 / FAHRENHEIT_PER_KELVIN },
      fahrenheit: { factor: 1 / FAHRENHEIT_PER_KELVIN, offset: -32 / FAHRENHEIT_PER_KELVIN },
    },
    bare: { metric: '\u00b0c', us: '\u00b0f' },
    exactDigits: 2,
    whole: false,
    atLeast: -273.15,
  },
  temperatureDifference: {
    words: { ...scale(1, 'k', 'c', '\u00b0c', 'kelvin'), ...scale(1 / FAHRENHEIT_PER_KELVIN, 'f', '\u00b0f') },
    bare: { metric: '\u00b0c', us: '\u00b0f' },
    exactDigits: 2,
    whole: false,
    atLeast: null,
  },
  power: {
    words: { ...scale(1, 'w', 'watt', 'watts'), ...scale(1000, 'kw') },
    bare: { metric: 'w', us: 'w' },
    exactDigits: 1,
    whole: false,
    atLeast: 0,
  },
  energy: {
    words: { ...scale(1, 'wh'), ...scale(WH_PER_KWH, 'kwh') },
    bare: { metric: 'kwh', us: 'kwh' },
    exactDigits: 4,
    whole: false,
    atLeast: 0,
  },
  percent: {
    words: scale(0.01, '%', 'percent', 'prozent'),
    bare: { metric: '%', us: '%' },
    exactDigits: 2,
    whole: false,
    atLeast: 0,
  },
  current: {
    words: { ...scale(1, 'a', 'amp', 'amps', 'ampere'), ...scale(0.001, 'ma') },
    bare: { metric: 'a', us: 'a' },
    exactDigits: 2,
    whole: false,
    atLeast: 0,
  },
  voltage: {
    words: scale(1, 'v', 'volt', 'volts'),
    bare: { metric: 'v', us: 'v' },
    exactDigits: 2,
    whole: false,
    atLeast: 0,
  },
  distance: {
    words: {
      ...scale(1, ...METRE_WORDS),
      ...scale(1000, 'km'),
      ...scale(M_PER_MILE, 'mi', 'mile', 'miles', 'meile', 'meilen'),
      ...scale(M_PER_FOOT, ...FOOT_WORDS),
    },
    bare: { metric: 'km', us: 'mi' },
    exactDigits: 3,
    whole: true,
    atLeast: 0,
  },
  speed: {
    words: {
      ...scale(1, 'km/h', 'kmh', 'kph'),
      ...scale(KM_PER_MILE, 'mph', 'mi/h'),
      ...scale(KM_PER_H_PER_M_PER_S, 'm/s'),
    },
    bare: { metric: 'km/h', us: 'mph' },
    exactDigits: 2,
    whole: false,
    atLeast: 0,
  },
  windSpeed: {
    words: {
      ...scale(1, 'm/s'),
      ...scale(1 / KM_PER_H_PER_M_PER_S, 'km/h', 'kmh', 'kph'),
      ...scale(M_PER_S_PER_MPH, 'mph', 'mi/h'),
    },
    bare: { metric: 'm/s', us: 'mph' },
    exactDigits: 2,
    whole: false,
    atLeast: 0,
  },
  duration: {
    words: {
      ...scale(1, 's', 'sec', 'second', 'seconds', 'sek'),
      ...scale(S_PER_MINUTE, 'min', 'mins', 'minute', 'minutes', 'minuten'),
      ...scale(S_PER_HOUR, ...HOUR_WORDS),
      ...scale(S_PER_DAY, ...DAY_WORDS),
    },
    bare: { metric: 'min', us: 'min' },
    exactDigits: 2,
    whole: true,
    atLeast: 0,
  },
}
