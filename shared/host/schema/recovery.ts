/** The recovery journal: what was unsaved when the window or the machine went away. */
import { z } from '../zod.ts'
import { nothingSchema, openedSchema, tokenSchema, utcSchema, tripSchema } from './values.ts'

/** Call about 1 s after the last edit. Saving and closing drop the copy by themselves. */
export const keepRecovery = {
  input: z.strictObject({ token: tokenSchema, trip: tripSchema }),
  output: z.strictObject({ keptAtUtc: utcSchema }),
}

export const listRecoveries = {
  input: nothingSchema,
  output: z.strictObject({
    recoveries: z
      .array(z.strictObject({ id: tokenSchema, title: z.string(), fileName: z.string(), keptAtUtc: utcSchema }))
      .readonly(),
  }),
}

/** Opens the copy as an unsaved change of its file; the file itself is not touched. */
export const openRecovery = { input: z.strictObject({ id: tokenSchema }), output: openedSchema }

export const dropRecovery = { input: z.strictObject({ id: tokenSchema }), output: nothingSchema }
