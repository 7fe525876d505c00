/** A value of a file as a short text for a message, and the path to it as one writes it in code. */
import type { DocumentPath } from '../../result/index.ts'

const LONGEST = 60

export function showValue(value: unknown): string {
  if (value === undefined) return 'nothing'
  const text = JSON.stringify(value) ?? typeof value
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text
}

/** `nights[1].hookup.breakerA` */
export const showPath = (path: DocumentPath): string =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${String(part)}]` : text === '' ? part : `${text}.${part}`),
    '',
  )

/** The value at a path, or undefined where the path leads nowhere. */
export function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, part) => {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined
    return Object.entries(value).find(([key]) => key === String(part))?.[1]
  }, root)
}
