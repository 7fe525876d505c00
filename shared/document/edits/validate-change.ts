/** Reads only what an edit changed through the schema, so that an edit of a long trip stays quick. */
import type { DocumentPath, Problem } from '../../result/index.ts'
import { problemsOfIssues } from '../parse/validate-shape.ts'
import { tripSchema } from '../schema/document.ts'
import type { Trip } from '../schema/document.ts'
import { z } from '../schema/zod.ts'

type Schema = z.core.$ZodType

/** Problems of shape in `after` that `before`, a valid trip, does not have. */
export const validateChange = (before: Trip, after: Trip): readonly Problem[] =>
  changed(tripSchema, before, after, [], after)

function changed(
  schema: Schema,
  before: unknown,
  after: unknown,
  path: DocumentPath,
  root: unknown,
): readonly Problem[] {
  if (before === after) return []
  if (schema instanceof z.ZodOptional) {
    return after === undefined ? [] : changed(schema.unwrap(), before, after, path, root)
  }
  if (schema instanceof z.ZodObject && isPlain(before) && isPlain(after))
    return changedObject(schema, before, after, path, root)
  if (schema instanceof z.ZodArray && Array.isArray(before) && Array.isArray(after)) {
    return changedList(schema, before, after, path, root)
  }
  return whole(schema, after, path, root)
}

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function whole(schema: Schema, value: unknown, path: DocumentPath, root: unknown): readonly Problem[] {
  const read = z.safeParse(schema, value)
  if (read.success) return []
  return problemsOfIssues(
    read.error.issues.map((issue) => ({ ...issue, path: [...path, ...issue.path] })),
    root,
  )
}

function changedObject(
  schema: z.ZodObject,
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
  path: DocumentPath,
  root: unknown,
): readonly Problem[] {
  const keys = new Set([...Object.keys(after), ...Object.keys(schema.shape)])
  return [...keys].flatMap((key) => {
    const field: Schema | undefined = schema.shape[key]
    // An unknown key is named by the object's own schema.
    if (field === undefined) return whole(schema, after, path, root)
    return changed(field, before[key], after[key], [...path, key], root)
  })
}

/** Elements that were there before, wherever they stood, need no second reading. */
function changedList(
  schema: z.ZodArray,
  before: readonly unknown[],
  after: readonly unknown[],
  path: DocumentPath,
  root: unknown,
): readonly Problem[] {
  const bare = z.array(z.unknown())
  const length = schema.def.checks === undefined ? bare : bare.check(...lengthChecks(schema))
  const read = after.length === before.length ? [] : whole(length, after, path, root)
  const known = new Set<unknown>(before)
  return [
    ...read,
    ...after.flatMap((element, index) => {
      if (typeof element === 'object' && element !== null && known.has(element)) return []
      return changed(schema.element, before[index], element, [...path, index], root)
    }),
  ]
}

const lengthChecks = (schema: z.ZodArray): z.core.$ZodCheck<unknown[]>[] =>
  (schema.def.checks ?? []) as z.core.$ZodCheck<unknown[]>[]
