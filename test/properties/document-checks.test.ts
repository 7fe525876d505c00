/** An edit reads only what it changed. Judged by the whole reading of the changed trip, which knows nothing of the trip before. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, tripSchema, validateTrip } from '../../shared/document/index.ts'
import type { Edit, Trip } from '../../shared/document/index.ts'
import { makeEdit } from '../../shared/document/edits/apply-edit.ts'
import { checkTrip } from '../../shared/document/parse/validate.ts'
import type { Problem } from '../../shared/result/index.ts'
import { arbitraryTrip } from '../support/generators/arbitrary-trip.ts'
import { arbitraryEdit, arbitraryTear } from '../support/generators/edits.ts'
import { TIME_LIMIT_MS, runsOf } from '../support/generators/runs.ts'

const SMALL = { pieces: 6, bays: 3, nights: 3 }

const anyEdit = (trip: Trip): fc.Arbitrary<Edit> => fc.oneof(arbitraryEdit(trip), arbitraryTear(trip))
const tripAndEdit = arbitraryTrip(SMALL).chain((trip) => fc.tuple(fc.constant(trip), anyEdit(trip)))
const tripAndEdits = arbitraryTrip(SMALL).chain((trip) =>
  fc.tuple(fc.constant(trip), fc.array(anyEdit(trip), { minLength: 1, maxLength: 4 })),
)

/** The first reason of a whole reading; null where there is none. */
function wholeVerdict(trip: Trip): Problem | null {
  const read = validateTrip(trip)
  return read.ok ? null : (read.problem[0] ?? null)
}

/** What the generators must make for a law to say something: trips in order, and these reasons among the others. */
const MUST_MEET = ['in-order', 'id-twice', 'reference-unknown', 'lock-bay-not-usable']

describe('an edited trip', () => {
  it(
    'is refused for the same first reason as its whole reading gives, or for none',
    () => {
      const codes = new Set<string>()
      fc.assert(
        fc.property(tripAndEdit, ([trip, edit]) => {
          const made = makeEdit(trip, edit)
          // What cannot be made at all has no trip to read.
          fc.pre(made.ok)
          const verdict = applyEdit(trip, edit)
          expect(verdict.ok ? null : verdict.problem).toEqual(wholeVerdict(made.value))
          codes.add(verdict.ok ? 'in-order' : verdict.problem.code)
        }),
        runsOf(160, 5000),
      )
      expect([...codes]).toEqual(expect.arrayContaining(MUST_MEET))
    },
    TIME_LIMIT_MS,
  )

  it(
    'has the same problems of sense, all of them, whether or not the trip before is known to have none',
    () => {
      const codes = new Set<string>()
      fc.assert(
        fc.property(tripAndEdits, ([trip, edits]) => {
          const after = edits.reduce((now, edit) => {
            const made = makeEdit(now, edit)
            return made.ok && tripSchema.safeParse(made.value).success ? made.value : now
          }, trip)
          const problems = checkTrip(after, trip)
          expect(problems).toEqual(checkTrip(after, null))
          for (const code of problems.length === 0 ? ['in-order'] : problems.map((problem) => problem.code))
            codes.add(code)
        }),
        runsOf(160, 5000),
      )
      expect([...codes]).toEqual(expect.arrayContaining(MUST_MEET))
    },
    TIME_LIMIT_MS,
  )
})
