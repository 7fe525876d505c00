/** Values that several parts of the trip share, each with its unit and its limits. */
import { z } from './zod.ts'

/** An id the user never reads: letters, digits, hyphen, underscore. */
export const ID_PATTERN = /^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/
export const idSchema = z.string().regex(ID_PATTERN)
export const labelSchema = z.string().min(1).max(200)
export const noteSchema = z.string().max(4000)

export const lengthMmSchema = z.int().min(1).max(20_000)
export const offsetMmSchema = z.int().min(-20_000).max(20_000)
export const massGSchema = z.int().min(0).max(10_000_000)
export const tempCSchema = z.number().min(-60).max(60)
export const powerWSchema = z.number().min(0).max(500_000)
export const energyWhSchema = z.number().min(0).max(500_000)
export const fraction01Schema = z.number().min(0).max(1)
export const currentASchema = z.number().min(0).max(400)
export const voltageVSchema = z.number().min(0).max(500)

/** Length, width, height of a box in mm: x along the vehicle, y across, z up. */
export const sizeMmSchema = z.tuple([lengthMmSchema, lengthMmSchema, lengthMmSchema])
/** A point in mm: x forward from the inside of the rear sill, y across from the left inner wall, z up from the load floor. */
export const pointMmSchema = z.tuple([offsetMmSchema, offsetMmSchema, offsetMmSchema])

export const DATE_PATTERN = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/
export const dateSchema = z.string().regex(DATE_PATTERN)
/** Wall-clock time. In a night, 12:00 to 23:59 is the evening's date and 00:00 to 11:59 the morning after. */
export const CLOCK_PATTERN = /^([01]\d|2[0-3]):[0-5]\d$/
export const clockSchema = z.string().regex(CLOCK_PATTERN)
/** From one clock to another, over midnight where `to` is not after `from`. */
export const clockSpanSchema = z.strictObject({ from: clockSchema, to: clockSchema })
/** IANA zone name, or a fixed offset such as `+01:00`. */
export const ZONE_PATTERN = /^([A-Za-z][A-Za-z0-9_+-]*(\/[A-Za-z0-9_+-]+)*|[+-]\d{2}:\d{2})$/
export const zoneSchema = z.string().regex(ZONE_PATTERN)

export const CURRENCY_PATTERN = /^[A-Z]{3}$/
export const currencySchema = z.string().regex(CURRENCY_PATTERN)

export const yesNoUnknownSchema = z.enum(['yes', 'no', 'not-known'])

export const phaseSchema = z.enum([
  'before-leaving',
  'on-the-road',
  'arriving',
  'before-dark',
  'bedtime',
  'in-the-night',
  'morning',
  'at-the-target',
  'check-out',
  'back-home',
])

export const accessClassSchema = z.enum([
  'en-route',
  'on-arrival',
  'evening',
  'night',
  'morning',
  'seldom',
  'emergency',
])
