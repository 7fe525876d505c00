/** Who sleeps in the vehicle. */
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'
import { idSchema, labelSchema, lengthMmSchema, massGSchema } from './values.ts'

export const travellerSchema = z.strictObject({
  id: idSchema,
  label: labelSchema,
  heightMm: lengthMmSchema,
  massG: massGSchema,
  drives: z.boolean(),
  /** A cold sleeper wants more than the rating says. */
  sleeps: z.enum(['cold', 'average', 'warm']),
  /** Clothing worn in bed, clo. */
  sleepwearClo: z.number().min(0).max(4),
})

export type Traveller = DeepReadonly<z.infer<typeof travellerSchema>>
