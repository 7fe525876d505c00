/** Values that several operations share. Tokens stand for paths: a page never names a path. */
import { tripSchema as wholeTripSchema } from '../../document/index.ts'
import type { Trip } from '../../document/index.ts'
import { z } from '../zod.ts'

/** Given out by the host, meaningless elsewhere. */
export const tokenSchema = z.string().regex(/^[A-Za-z0-9_-]{8,64}$/)
/** What a file is called, without folder; checked again before it becomes a path. */
export const fileNameSchema = z.string().min(1).max(120)
/** The trip, minted readonly: comparing the two deep types member by member is more than the compiler takes. */
export const tripSchema = wholeTripSchema as unknown as z.ZodType<Trip>
export const utcSchema = z.int().min(0)
export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/)

/** A trip that this window holds open. `folder` is null while it has never been saved. */
export const openFileSchema = z.strictObject({
  token: tokenSchema,
  name: z.string(),
  folder: z.string().nullable(),
  writable: z.boolean(),
})

/** What opening gives: the trip as the page will edit it. `unsaved` asks the page to show it as changed. */
export const openedSchema = z.strictObject({
  file: openFileSchema,
  trip: tripSchema,
  unsaved: z.boolean(),
})

export const nothingSchema = z.strictObject({})
