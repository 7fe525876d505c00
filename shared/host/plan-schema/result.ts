/** Generated from the types of shared/result by `tsx test/support/plan-schema/main.ts`; do not edit. */
import { z } from '../zod.ts'

export const documentPathSchema = z.array(z.union([z.string(), z.number()]))

export const problemSchema = z.object({
  code: z.string(),
  path: documentPathSchema,
  params: z.record(z.string(), z.union([z.boolean(), z.string(), z.number(), z.array(z.string())])),
})
