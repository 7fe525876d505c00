/** The metric sample, frozen, and edits of it. */
import { applyEdit, parseTrip } from '../../../../shared/document/index.ts'
import type { Edit, Trip } from '../../../../shared/document/index.ts'
import type { Problem } from '../../../../shared/result/index.ts'
import { freezeDeep } from '../../../support/generators/freeze.ts'
import { bytesOf, sampleText } from '../sample.ts'

const read = parseTrip(bytesOf(sampleText()))
if (!read.ok) throw new Error('the sample does not open')
export const sample: Trip = freezeDeep(read.value)

/** The sample, or another trip, after edits that must be accepted. */
export const edited = (edits: readonly Edit[], trip: Trip = sample): Trip =>
  edits.reduce((before, edit) => {
    const next = applyEdit(before, edit)
    if (!next.ok) throw new Error(`${next.problem.code} at ${next.problem.path.join('.')}`)
    return next.value
  }, trip)

/** What is said of an edit that must be refused. */
export function refused(edit: Edit, trip: Trip = sample): Problem {
  const next = applyEdit(trip, edit)
  if (next.ok) throw new Error(`${edit.kind} was accepted`)
  return next.problem
}

export function one<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no ${id}`)
  return found
}
