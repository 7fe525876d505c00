/** Quantities rounded as a person would say them, in either unit system. */
import {
  G_PER_KG,
  G_PER_POUND,
  M_PER_MILE,
  MM3_PER_LITRE,
  MM_PER_INCH,
  MM_PER_M,
  toFahrenheit,
} from '../units/index.ts'
import {
  INCHES_PER_FOOT,
  KM_PER_MILE,
  M_PER_FOOT,
  M_PER_S_PER_MPH,
  MEASURES,
  MM3_PER_GALLON,
  OUNCES_PER_POUND,
} from './measures.ts'
import { formatNumber, roundTo } from './numbers.ts'
import type { Language, Measure, Quantity, UnitSystem } from './types.ts'

export type Formats = { readonly language: Language; readonly units: UnitSystem }

/** A no-break space keeps number and unit on one line. */
const SPACE = '\u00a0'
const MINUS = '\u2212'

const quantity = (number: string, unit: string): Quantity => ({ number, unit, text: `${number}${SPACE}${unit}` })

function say(formats: Formats, value: number, digits: number, unit: string): Quantity {
  return quantity(formatNumber(value, formats.language, digits), unit)
}

/** From here on a length is said in metres: nobody says 900 cm of a lead. */
const LONG_MM = 3 * MM_PER_M

export function sayLength(lengthMm: number, formats: Formats): Quantity {
  if (formats.units === 'us') return sayFeetAndInches(lengthMm, formats)
  const size = Math.abs(lengthMm)
  if (size < 100) return say(formats, lengthMm, 0, 'mm')
  if (size < LONG_MM) return say(formats, lengthMm / 10, 0, 'cm')
  const metres = size < 10 * MM_PER_M ? Math.round(lengthMm / 100) / 10 : Math.round(lengthMm / MM_PER_M)
  return say(formats, metres, Number.isInteger(metres) ? 0 : 1, 'm')
}

/** Under four inches to the quarter inch, under two feet to the half, then feet and whole inches, from ten feet on whole feet. */
function sayFeetAndInches(lengthMm: number, formats: Formats): Quantity {
  const sign = lengthMm < 0 ? MINUS : ''
  const inches = Math.abs(lengthMm) / MM_PER_INCH
  if (inches < 23.75) return quantity(sign + sayInches(inches, inches < 4 ? 4 : 2), 'in')
  const whole = Math.round(inches)
  if (whole >= 10 * INCHES_PER_FOOT) return say(formats, lengthMm / MM_PER_INCH / INCHES_PER_FOOT, 0, 'ft')
  const feet = Math.floor(whole / INCHES_PER_FOOT)
  const rest = whole % INCHES_PER_FOOT
  return rest === 0 ? quantity(`${sign}${feet}`, 'ft') : quantity(`${sign}${feet}${SPACE}ft${SPACE}${rest}`, 'in')
}

const FRACTIONS: Readonly<Record<number, string>> = { 0.25: '\u00bc', 0.5: '\u00bd', 0.75: '\u00be' }

function sayInches(inches: number, parts: 2 | 4): string {
  const rounded = Math.round(inches * parts) / parts
  const whole = Math.floor(rounded)
  const fraction = FRACTIONS[rounded - whole] ?? ''
  return whole === 0 && fraction !== '' ? fraction : `${whole}${fraction}`
}

/** Three edges in one unit: '40 × 30 × 22 cm'. */
export function saySize(sizeMm: readonly [number, number, number], formats: Formats): string {
  const inch = formats.units === 'us'
  const edges = sizeMm.map((edge) =>
    inch ? sayInches(edge / MM_PER_INCH, 2) : formatNumber(edge / 10, formats.language, 0),
  )
  return `${edges.join(`${SPACE}\u00d7${SPACE}`)}${SPACE}${inch ? 'in' : 'cm'}`
}

export function sayMass(massG: number, formats: Formats): Quantity {
  const size = Math.abs(massG)
  if (formats.units === 'us') {
    const pounds = massG / G_PER_POUND
    if (Math.abs(pounds) < 1) return say(formats, pounds * OUNCES_PER_POUND, 0, 'oz')
    return say(formats, pounds, Math.abs(pounds) < 20 ? 1 : 0, 'lb')
  }
  if (size < 100) return say(formats, massG, 0, 'g')
  if (size < G_PER_KG - 5) return say(formats, roundTo(massG, 10), 0, 'g')
  return say(formats, massG / G_PER_KG, size < 20 * G_PER_KG ? 1 : 0, 'kg')
}

export function sayVolume(volumeMm3: number, formats: Formats): Quantity {
  const [value, unit] = formats.units === 'us' ? [volumeMm3 / MM3_PER_GALLON, 'gal'] : [volumeMm3 / MM3_PER_LITRE, 'l']
  return say(formats, value, Math.abs(value) < 10 ? 1 : 0, unit)
}

export const sayTemperature = (tempC: number, formats: Formats): Quantity =>
  formats.units === 'us' ? say(formats, toFahrenheit(tempC), 0, '\u00b0F') : say(formats, tempC, 0, '\u00b0C')

export function sayTemperatureDifference(differenceK: number, formats: Formats): Quantity {
  if (formats.units === 'us') return say(formats, differenceK * 1.8, 0, '\u00b0F')
  return say(formats, differenceK, Math.abs(differenceK) < 3 ? 1 : 0, '\u00b0C')
}

export function sayPower(powerW: number, formats: Formats): Quantity {
  const size = Math.abs(powerW)
  if (size < 100) return say(formats, powerW, 0, 'W')
  if (size < 995) return say(formats, roundTo(powerW, 10), 0, 'W')
  return say(formats, powerW / 1000, size < 99_500 ? 1 : 0, 'kW')
}

export function sayEnergy(energyWh: number, formats: Formats): Quantity {
  const size = Math.abs(energyWh)
  if (size < 100) return say(formats, energyWh, 0, 'Wh')
  if (size < 995) return say(formats, roundTo(energyWh, 10), 0, 'Wh')
  return say(formats, energyWh / 1000, size < 99_500 ? 1 : 0, 'kWh')
}

export const sayPercent = (fraction01: number, formats: Formats): Quantity =>
  say(formats, fraction01 * 100, Math.abs(fraction01) < 0.1 ? 1 : 0, '%')

export const sayCurrent = (currentA: number, formats: Formats): Quantity =>
  say(formats, currentA, Math.abs(currentA) < 100 ? 1 : 0, 'A')

export const sayVoltage = (volts: number, formats: Formats): Quantity => say(formats, volts, 0, 'V')

export function sayDistance(distanceM: number, formats: Formats): Quantity {
  const size = Math.abs(distanceM)
  if (formats.units === 'us') {
    if (size < 1000 * M_PER_FOOT) return say(formats, distanceM / M_PER_FOOT, 0, 'ft')
    return say(formats, distanceM / M_PER_MILE, size < 10 * M_PER_MILE ? 1 : 0, 'mi')
  }
  if (size < 100) return say(formats, distanceM, 0, 'm')
  if (size < 995) return say(formats, roundTo(distanceM, 10), 0, 'm')
  return say(formats, distanceM / 1000, size < 10_000 ? 1 : 0, 'km')
}

export const sayElevation = (elevationM: number, formats: Formats): Quantity =>
  formats.units === 'us'
    ? say(formats, roundTo(elevationM / M_PER_FOOT, 10), 0, 'ft')
    : say(formats, elevationM, 0, 'm')

export const saySpeed = (kmPerH: number, formats: Formats): Quantity =>
  formats.units === 'us' ? say(formats, kmPerH / KM_PER_MILE, 0, 'mph') : say(formats, kmPerH, 0, 'km/h')

export const sayWindSpeed = (mPerS: number, formats: Formats): Quantity =>
  formats.units === 'us' ? say(formats, mPerS / M_PER_S_PER_MPH, 0, 'mph') : say(formats, mPerS, 0, 'm/s')

const SHOWN: Readonly<Record<string, string>> = {
  '\u00b0c': '\u00b0C',
  '\u00b0f': '\u00b0F',
  w: 'W',
  kwh: 'kWh',
  a: 'A',
  v: 'V',
}

/** The value unrounded in the field's unit, so that reading it back gives the same value. */
export function sayExact(measure: Measure, value: number, formats: Formats): Quantity {
  const units = MEASURES[measure]
  const word = units.bare[formats.units]
  const scale = units.words[word] ?? { factor: 1 }
  const shown = (value - (scale.offset ?? 0)) / scale.factor
  return quantity(formatNumber(shown, formats.language, units.exactDigits), SHOWN[word] ?? word)
}
