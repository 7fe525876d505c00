/** What was paid, for what, on which day. Amounts in hundredths of the currency. */
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'
import { dateSchema, idSchema, labelSchema } from './values.ts'

export const ledgerEntrySchema = z.strictObject({
  id: idSchema,
  date: dateSchema,
  nightId: idSchema.optional(),
  kind: z.enum(['site', 'charging', 'fuel', 'food', 'toll', 'other']),
  label: labelSchema,
  amountCents: z.int().min(-100_000_000).max(100_000_000),
  energyWh: z.number().min(0).max(1_000_000).optional(),
  paidByTravellerId: idSchema.optional(),
})

export type LedgerEntry = DeepReadonly<z.infer<typeof ledgerEntrySchema>>
