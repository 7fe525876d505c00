/** Generated from the types of shared/units by `tsx test/support/plan-schema/main.ts`; do not edit. */
import type { Utc } from '../../units/index.ts'
import { z } from '../zod.ts'

/** Seconds since 1970 UTC: the one place where the brand is minted from JSON. */
export const utcSchema = z.number() as unknown as z.ZodType<Utc>
