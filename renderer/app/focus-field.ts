/** Goes to the field of a form that a path of the trip names. */
import type { DocumentPath } from '../../shared/result/index.ts'

const TYPED = 'input, select, textarea, button'
/** A screen that is shown for the first time is there some frames later. */
const FRAMES_TO_WAIT = 60

/** The field of the path itself, else the first inside it, else one beside it: the deepest part of the path that has a field. */
export function focusField(path: DocumentPath, framesLeft = FRAMES_TO_WAIT): void {
  const fields = [...document.querySelectorAll<HTMLElement>('[data-path]')]
  if (fields.length === 0 && framesLeft > 0) {
    requestAnimationFrame(() => focusField(path, framesLeft - 1))
    return
  }
  const field = nearest(fields, path)
  field?.scrollIntoView({ block: 'center' })
  field?.querySelector<HTMLElement>(TYPED)?.focus()
}

function nearest(fields: readonly HTMLElement[], path: DocumentPath): HTMLElement | null {
  for (let depth = path.length; depth > 0; depth--) {
    const wanted = path.slice(0, depth).join('.')
    const field = fields.find(({ dataset }) => `${dataset['path']}.`.startsWith(`${wanted}.`))
    if (field !== undefined) return field
  }
  return null
}
