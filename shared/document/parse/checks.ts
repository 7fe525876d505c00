/** Small pieces that the checks after the schema share. */
import { problem } from '../../result/index.ts'
import type { DocumentPath, Problem, ProblemParams } from '../../result/index.ts'
import { showPath, showValue } from './show-value.ts'

/** A problem at a field, with the field's written path and its value for the message. */
export const found = (code: string, path: DocumentPath, value: unknown, params: ProblemParams = {}): Problem =>
  problem(code, path, { field: showPath(path), value: showValue(value), ...params })

/** The axes of a box. */
export const AXES = [0, 1, 2] as const

type Named = { readonly id: string }

/** Where an id was given before: ids of one kind must differ. */
export function idsTwice(items: readonly { readonly id: string; readonly path: DocumentPath }[]): readonly Problem[] {
  const first = new Map<string, DocumentPath>()
  return items.flatMap(({ id, path }) => {
    const before = first.get(id)
    if (before === undefined) {
      first.set(id, path)
      return []
    }
    return [found('id-twice', [...path, 'id'], id, { id, other: showPath(before) })]
  })
}

export const placed = (items: readonly Named[], ...path: readonly (string | number)[]) =>
  items.map(({ id }, index) => ({ id, path: [...path, index] }))

/** Nothing where the id is known, else a problem that names it. */
export function unknownId(
  id: string | undefined,
  known: Pick<ReadonlySet<string>, 'has'>,
  what: 'piece' | 'bin' | 'bay' | 'night' | 'traveller' | 'bed-heater' | 'rule' | 'unit',
  path: DocumentPath,
): readonly Problem[] {
  return id === undefined || known.has(id) ? [] : [found('reference-unknown', path, id, { id, what })]
}

export const idSet = (items: readonly Named[]): ReadonlySet<string> => new Set(items.map((item) => item.id))
