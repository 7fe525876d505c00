/** The trip's JSON Schema, draft 2020-12, made from the zod schemas. */
import { tripSchema } from '../schema/document.ts'
import { z } from '../schema/zod.ts'

export const tripJsonSchema = () => z.toJSONSchema(tripSchema, { target: 'draft-2020-12', io: 'input' })
