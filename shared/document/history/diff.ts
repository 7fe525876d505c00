/** The difference of two trips as reversible patches, found by what the two still share. */
import type { DocumentPath } from '../../result/index.ts'
import { invariant } from '../../result/index.ts'

/** One place set from one value to another, or a run of a list exchanged. */
export type Patch =
  | { readonly kind: 'put'; readonly path: DocumentPath; readonly before: unknown; readonly after: unknown }
  | {
      readonly kind: 'splice'
      readonly path: DocumentPath
      readonly at: number
      readonly removed: readonly unknown[]
      readonly added: readonly unknown[]
    }

type Plain = Readonly<Record<string, unknown>>

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null && !Array.isArray(value)

export function diff(before: unknown, after: unknown, path: DocumentPath = []): readonly Patch[] {
  if (Object.is(before, after)) return []
  if (Array.isArray(before) && Array.isArray(after)) return diffList(before, after, path)
  if (isPlain(before) && isPlain(after) && sameKeys(before, after)) {
    return Object.keys(before).flatMap((key) => diff(before[key], after[key], [...path, key]))
  }
  return [{ kind: 'put', path, before, after }]
}

/** Keys in another order make another text, so an object whose keys change is exchanged whole. */
function sameKeys(before: Plain, after: Plain): boolean {
  const keys = Object.keys(before)
  const others = Object.keys(after)
  return keys.length === others.length && keys.every((key, index) => key === others[index])
}

function diffList(before: readonly unknown[], after: readonly unknown[], path: DocumentPath): readonly Patch[] {
  const shortest = Math.min(before.length, after.length)
  let start = 0
  while (start < shortest && Object.is(before[start], after[start])) start += 1
  let end = 0
  while (end < shortest - start && Object.is(before[before.length - 1 - end], after[after.length - 1 - end])) end += 1
  const removed = before.slice(start, before.length - end)
  const added = after.slice(start, after.length - end)
  if (removed.length === added.length) {
    return removed.flatMap((element, index) => diff(element, added[index], [...path, start + index]))
  }
  return [{ kind: 'splice', path, at: start, removed, added }]
}

export const reverse = (patches: readonly Patch[]): readonly Patch[] =>
  patches
    .map((patch): Patch =>
      patch.kind === 'put'
        ? { ...patch, before: patch.after, after: patch.before }
        : { ...patch, removed: patch.added, added: patch.removed },
    )
    .toReversed()

/** The value after the patches; parts that no patch touches stay the same objects. */
export const applyPatches = (root: unknown, patches: readonly Patch[]): unknown =>
  patches.reduce((value, patch) => at(value, patch.path, (inside) => applyOne(inside, patch)), root)

function applyOne(value: unknown, patch: Patch): unknown {
  if (patch.kind === 'put') return patch.after
  invariant(Array.isArray(value), 'a run is exchanged in a list')
  return value.toSpliced(patch.at, patch.removed.length, ...patch.added)
}

function at(value: unknown, path: DocumentPath, change: (inside: unknown) => unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return change(value)
  if (typeof key === 'number') {
    invariant(Array.isArray(value), 'a patch follows the trip it was made from')
    return value.with(key, at(value[key], rest, change))
  }
  invariant(isPlain(value), 'a patch follows the trip it was made from')
  return { ...value, [key]: at(value[key], rest, change) }
}
