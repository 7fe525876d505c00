/** Reads only what an edit changed through the schema, so that an edit of a long trip stays quick. */
import type { DocumentPath, Problem } from '../../result/index.ts'
import { problemsOfIssues } from '../parse/validate-shape.ts'
import { tripSchema } from '../schema/document.ts'
import type { Trip } from '../schema/document.ts'
import { z } from '../schema/zod.ts'

type Schema = z.core.$ZodType
/** Two values of one place, and the whole changed trip for the messages. */
type Change = { readonly before: unknown; readonly after: unknown; readonly path: DocumentPath; readonly root: unknown }

/** Problems of shape in `after` that `before`, a valid trip, does not have. */
export const validateChange = (before: Trip, after: Trip): readonly Problem[] =>
  changed(tripSchema, { before, after, path: [], root: after })

function changed(schema: Schema, change: Change): readonly Problem[] {
  const { before, after } = change
  if (before === after) return []
  if (schema instanceof z.ZodOptional) return after === undefined ? [] : changed(schema.unwrap(), change)
  if (schema instanceof z.ZodObject && isPlain(before) && isPlain(after))
    return changedObject(schema, change, before, after)
  if (schema instanceof z.ZodArray && Array.isArray(before) && Array.isArray(after)) {
    return changedList(schema, change, before, after)
  }
  return whole(schema, change)
}

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function whole(schema: Schema, { after, path, root }: Change): readonly Problem[] {
  const read = z.safeParse(schema, after)
  if (read.success) return []
  return problemsOfIssues(
    read.error.issues.map((issue) => ({ ...issue, path: [...path, ...issue.path] })),
    root,
  )
}

function changedObject(
  schema: z.ZodObject,
  change: Change,
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
): readonly Problem[] {
  const unknown = Object.keys(after).some((key) => !Object.hasOwn(schema.shape, key))
  // An unknown key is named by the object's own schema.
  if (unknown) return whole(schema, change)
  return Object.entries(schema.shape).flatMap(([key, field]) =>
    changed(field, { ...change, before: before[key], after: after[key], path: [...change.path, key] }),
  )
}

/** Elements that were there before, wherever they stood, need no second reading. */
function changedList(
  schema: z.ZodArray,
  change: Change,
  before: readonly unknown[],
  after: readonly unknown[],
): readonly Problem[] {
  const length = z.array(z.unknown()).check(...lengthChecks(schema))
  const known = new Set<unknown>(before)
  return [
    ...(after.length === before.length ? [] : whole(length, change)),
    ...after.flatMap((element, index) => {
      if (typeof element === 'object' && element !== null && known.has(element)) return []
      return changed(schema.element, {
        ...change,
        before: before[index],
        after: element,
        path: [...change.path, index],
      })
    }),
  ]
}

/** A list's own checks are of its length: its elements have their own schema. */
const lengthChecks = (schema: z.ZodArray): z.core.$ZodCheck<unknown[]>[] =>
  (schema.def.checks ?? []) as z.core.$ZodCheck<unknown[]>[]
