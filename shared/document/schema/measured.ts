/** What the user read on the night itself. */
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'
import {
  clockSchema,
  currentASchema,
  energyWhSchema,
  fraction01Schema,
  idSchema,
  tempCSchema,
  voltageVSchema,
} from './values.ts'

export const measuredSchema = z.strictObject({
  nightId: idSchema,
  moment: z.enum(['at-the-post', 'bedtime', 'morning']),
  clock: clockSchema,
  volts: voltageVSchema.optional(),
  currentA: currentASchema.optional(),
  /** Reading of a meter that has run for years. */
  meterWh: z.number().min(0).max(1_000_000_000).optional(),
  charge01: fraction01Schema.optional(),
  lowestInsideC: tempCSchema.optional(),
  meanInsideC: tempCSchema.optional(),
  meanOutsideC: tempCSchema.optional(),
  heatingWh: energyWhSchema.optional(),
})

export type Measured = DeepReadonly<z.infer<typeof measuredSchema>>
