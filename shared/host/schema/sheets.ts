/** Printed cards, pocket sheet, calendar and plan as files. */
import { z } from '../zod.ts'
import type { Plan } from '../../plan/index.ts'
import { planSchema } from '../plan-schema/plan.ts'
import { tripSchema } from './values.ts'

export const SHEET_NAMES = ['load', 'night', 'checklist', 'pocket', 'calendar', 'plan'] as const

export const sheetNameSchema = z.enum(SHEET_NAMES)
export type SheetName = (typeof SHEET_NAMES)[number]

/** A plan checked, then used as it came: fields that a newer engine adds are kept. */
const planAsGivenSchema = z.custom<Plan>((value) => planSchema.safeParse(value).success)

/**
 * Makes the sheets of a plan. `folder`: writes them (a dialog asks for the folder where the host has one, else the sheets folder);
 * `bytes`: gives them back for the page to download. Null: the user closed the dialog.
 */
export const exportSheets = {
  input: z.strictObject({
    trip: tripSchema,
    plan: planAsGivenSchema,
    sheets: z.array(sheetNameSchema).min(1).max(SHEET_NAMES.length).readonly(),
    deliver: z.enum(['folder', 'bytes']),
  }),
  output: z
    .strictObject({
      folder: z.string().nullable(),
      files: z
        .array(z.strictObject({ name: z.string(), mediaType: z.string(), base64: z.string().nullable() }))
        .readonly(),
    })
    .nullable(),
}
