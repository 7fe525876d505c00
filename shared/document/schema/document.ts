/** The whole trip, version by version: this file holds the current one. */
import { checklistSchema } from './checklist.ts'
import { kitSchema } from './kit.ts'
import { ledgerEntrySchema } from './ledger.ts'
import { measuredSchema } from './measured.ts'
import { nightSchema } from './nights.ts'
import { travellerSchema } from './travellers.ts'
import { clockSchema, currencySchema, dateSchema, labelSchema, noteSchema, zoneSchema } from './values.ts'
import { vehicleSchema } from './vehicle.ts'
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'

export const FORMAT_NAME = 'kipstow-trip'
export const FORMAT_VERSION = 1

/** A wall clock at home: of leaving, or of coming back. */
const homeClockSchema = z.strictObject({ date: dateSchema, clock: clockSchema, zone: zoneSchema })

export const tripSchema = z.strictObject({
  format: z.literal(FORMAT_NAME),
  version: z.literal(FORMAT_VERSION),
  title: labelSchema,
  note: noteSchema.optional(),
  leaveHome: homeClockSchema.optional(),
  backHome: homeClockSchema.optional(),
  preferences: z.strictObject({
    units: z.enum(['metric', 'us']),
    language: z.enum(['en', 'de']),
    /** ISO 4217. */
    currency: currencySchema,
    paper: z.enum(['a4', 'letter']),
  }),
  vehicle: vehicleSchema,
  travellers: z.array(travellerSchema).min(1).max(8),
  kit: kitSchema,
  nights: z.array(nightSchema).min(1).max(60),
  checklist: checklistSchema,
  measured: z.array(measuredSchema).max(1000),
  ledger: z.array(ledgerEntrySchema).max(5000),
})

/** Everything the user keeps. Integer mm and g, °C, W, Wh, s. */
export type Trip = DeepReadonly<z.infer<typeof tripSchema>>

export type HomeClock = DeepReadonly<z.infer<typeof homeClockSchema>>
