/** Generated from the types of shared/checklist by `tsx test/support/plan-schema/main.ts`; do not edit. */
import { z } from '../zod.ts'
import { utcSchema } from './units.ts'

export const phaseSchema = z.enum([
  'morning',
  'before-leaving',
  'on-the-road',
  'arriving',
  'before-dark',
  'bedtime',
  'in-the-night',
  'at-the-target',
  'check-out',
  'back-home',
])

export const stepSchema = z.object({
  key: z.string(),
  ruleId: z.string(),
  nightId: z.string(),
  phase: phaseSchema,
  text: z.union([
    z.object({
      kind: z.literal('key'),
      step: z.string(),
      reason: z.string(),
    }),
    z.object({
      kind: z.literal('own'),
      step: z.string(),
      reason: z.string(),
    }),
  ]),
  params: z.record(z.string(), z.union([z.string(), z.number()])),
  after: z.array(z.string()),
  durationS: z.number(),
  notBeforeUtc: utcSchema.nullable(),
  deadlineUtc: utcSchema.nullable(),
  deadlineName: z.string().nullable(),
  caution: z.boolean(),
  startUtc: utcSchema.nullable(),
  latestStartUtc: utcSchema.nullable(),
  state: z.enum(['open', 'done', 'skipped']),
  skipReason: z.string().nullable(),
})

export const conflictSchema = z.union([
  z.object({
    kind: z.literal('circle'),
    stepKeys: z.array(z.string()),
  }),
  z.object({
    kind: z.literal('window'),
    stepKeys: z.array(z.string()),
    lateByS: z.number(),
  }),
  z.object({
    kind: z.literal('bad-rule'),
    ruleId: z.string(),
    message: z.string(),
    at: z.string(),
  }),
])

export const checklistOutcomeSchema = z.object({
  steps: z.array(stepSchema),
  conflicts: z.array(conflictSchema),
})
