/** The user's own rules and edits, ticks and lessons. */
import { z } from './zod.ts'
import type { DeepReadonly } from './zod.ts'
import { idSchema, labelSchema, noteSchema, phaseSchema } from './values.ts'

/** A condition in JsonLogic over the plan's facts. */
export const conditionSchema = z.json()

export const userRuleSchema = z.strictObject({
  id: idSchema,
  phase: phaseSchema,
  step: labelSchema,
  reason: labelSchema,
  when: conditionSchema,
  after: z.array(idSchema).max(20),
  durationMin: z.number().min(0).max(600),
  enabled: z.boolean(),
})

export const tickSchema = z.strictObject({
  /** Stable key of a step: rule id, then the night, then the thing it speaks of. */
  stepKey: z.string().min(1).max(200),
  state: z.enum(['done', 'skipped']),
  atUtc: z.int(),
  reason: noteSchema.optional(),
})

export const lessonSchema = z.strictObject({
  id: idSchema,
  nightId: idSchema.optional(),
  text: noteSchema,
  ruleId: idSchema.optional(),
  unusedPieceIds: z.array(idSchema).max(500).optional(),
})

export const checklistSchema = z.strictObject({
  rules: z.array(userRuleSchema).max(500),
  switchedOffRuleIds: z.array(z.string().max(80)).max(500),
  ticks: z.array(tickSchema).max(20_000),
  lessons: z.array(lessonSchema).max(2000),
})

export type Checklist = DeepReadonly<z.infer<typeof checklistSchema>>
export type UserRule = DeepReadonly<z.infer<typeof userRuleSchema>>
