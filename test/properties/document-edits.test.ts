/** Laws of editing: a trip stays a trip, the old one stays as it was, and everything done can be taken back. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  applyEdit,
  createHistory,
  record,
  redo,
  serializeTrip,
  undo,
  validateTrip,
} from '../../shared/document/index.ts'
import { setValue } from '../../shared/document/edits/set-value.ts'
import type { Edit, History, Trip } from '../../shared/document/index.ts'
import { arbitraryTrip } from '../support/generators/arbitrary-trip.ts'
import { arbitraryEdit } from '../support/generators/edits.ts'
import { freezeDeep } from '../support/generators/freeze.ts'
import { TIME_LIMIT_MS, runsOf } from '../support/generators/runs.ts'

const SMALL = { pieces: 4, bays: 2, nights: 2 }

const tripAndEdit = arbitraryTrip(SMALL).chain((trip) => fc.tuple(fc.constant(trip), arbitraryEdit(trip)))
/** Edits are drawn for the first trip: what they speak of may be gone when their turn comes, and they are refused then. */
const tripAndEdits = arbitraryTrip(SMALL).chain((trip) =>
  fc.tuple(
    fc.constant(trip),
    fc.array(fc.tuple(arbitraryEdit(trip), fc.constantFrom(null, 'drag')), { minLength: 1, maxLength: 60 }),
  ),
)

function runAll(
  trip: Trip,
  edits: readonly (readonly [Edit, string | null])[],
): { trip: Trip; history: History; steps: number } {
  let now = trip
  let history = createHistory()
  let steps = 0
  for (const [edit, gesture] of edits) {
    const next = applyEdit(now, edit)
    if (!next.ok) continue
    history = record(history, now, next.value, { name: edit.kind, gesture })
    now = next.value
    steps += 1
  }
  return { trip: now, history, steps }
}

describe('an edit', () => {
  it(
    'is accepted exactly where the whole changed trip is valid, and never touches the trip it was given',
    () => {
      let accepted = 0
      fc.assert(
        fc.property(tripAndEdit, ([trip, edit]) => {
          const before = serializeTrip(trip)
          const next = applyEdit(freezeDeep(trip), edit)
          expect(serializeTrip(trip)).toBe(before)
          accepted += next.ok ? 1 : 0
          const checked = next.ok ? validateTrip(next.value) : next
          expect(checked.ok ? [] : checked.problem).toEqual(next.ok ? [] : next.problem)
          // A field set to anything is judged as the whole file would be.
          const set = edit.kind === 'set-value' ? setValue(trip, edit) : next
          const whole = set.ok && validateTrip(set.value).ok
          expect(next.ok).toBe(whole)
        }),
        runsOf(400, 10_000),
      )
      // The generator must not only make nonsense.
      expect(accepted).toBeGreaterThan(100)
    },
    TIME_LIMIT_MS,
  )
})

describe('a history', () => {
  it(
    'undoes everything to the first bytes and redoes everything to the last',
    () => {
      let steps = 0
      fc.assert(
        fc.property(tripAndEdits, ([trip, edits]) => {
          const done = runAll(freezeDeep(trip), edits)
          steps += done.steps
          let now = done.trip
          let history = done.history
          for (let step = undo(history, now); step !== null; step = undo(history, now)) ({ trip: now, history } = step)
          expect(serializeTrip(now)).toBe(serializeTrip(trip))
          expect(history.past).toEqual([])
          for (let step = redo(history, now); step !== null; step = redo(history, now)) ({ trip: now, history } = step)
          expect(now).toEqual(done.trip)
          expect(serializeTrip(now)).toBe(serializeTrip(done.trip))
          expect(history.future).toEqual([])
        }),
        runsOf(150, 10_000),
      )
      expect(steps).toBeGreaterThan(300)
    },
    TIME_LIMIT_MS,
  )

  it(
    'stands where it stood after one step back and one forward, at any point',
    () => {
      fc.assert(
        fc.property(tripAndEdits, fc.nat(), ([trip, edits], point) => {
          const done = runAll(trip, edits)
          let now = done.trip
          let history = done.history
          for (let back = point % (history.past.length + 1); back > 0; back--) {
            const step = undo(history, now)
            if (step !== null) ({ trip: now, history } = step)
          }
          const back = undo(history, now)
          const forth = back === null ? null : redo(back.history, back.trip)
          expect(forth === null ? now : forth.trip).toEqual(now)
        }),
        runsOf(100, 2000),
      )
    },
    TIME_LIMIT_MS,
  )
})
