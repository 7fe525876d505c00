/** The one way a trip changes: an edit is applied, then what it changed is checked. */
import { assertNever, fail, ok } from '../../result/index.ts'
import type { Problem, Result } from '../../result/index.ts'
import { checkTrip } from '../parse/validate.ts'
import type { Trip } from '../schema/document.ts'
import { addBin, duplicateBin, removeBin } from './bins.ts'
import type { AddBin, DuplicateBin, RemoveBin } from './bins.ts'
import * as checklist from './checklist.ts'
import { lockUnit, unlockUnit } from './locks.ts'
import type { LockUnit, UnlockUnit } from './locks.ts'
import * as nights from './nights.ts'
import * as pieces from './pieces.ts'
import * as records from './records.ts'
import { setValue } from './set-value.ts'
import type { SetValue } from './set-value.ts'
import { takeRemedy } from './take-remedy.ts'
import type { TakeRemedy } from './take-remedy.ts'
import { validateChange } from './validate-change.ts'

export type Edit =
  | SetValue
  | pieces.AddPiece
  | pieces.AddPieces
  | pieces.DuplicatePiece
  | pieces.RemovePiece
  | pieces.RemovePieces
  | pieces.ChangePieces
  | pieces.MoveToBin
  | pieces.SetSpare
  | AddBin
  | DuplicateBin
  | RemoveBin
  | LockUnit
  | UnlockUnit
  | nights.SetNight
  | nights.ChooseBedding
  | nights.AddNight
  | nights.DuplicateNight
  | nights.RemoveNight
  | checklist.TickStep
  | checklist.UntickStep
  | checklist.AddLesson
  | checklist.RemoveLesson
  | checklist.LessonToRule
  | checklist.AddRule
  | checklist.EditRule
  | checklist.RemoveRule
  | checklist.SwitchRule
  | records.AddMeasurement
  | records.RemoveMeasurement
  | records.AddLedgerEntry
  | records.RemoveLedgerEntry
  | records.SetPreferences
  | TakeRemedy

/** The trip after an edit, or the first reason why it would be no trip any more; the trip given stays as it is. */
export function applyEdit(trip: Trip, edit: Edit): Result<Trip> {
  const next = makeEdit(trip, edit)
  return next.ok ? checkChange(trip, next.value) : next
}

/** A changed trip, checked where it differs from a valid one. */
function checkChange(before: Trip, after: Trip): Result<Trip> {
  if (before === after) return ok(after)
  const shape = validateChange(before, after)
  const problems: readonly Problem[] = shape.length > 0 ? shape : checkTrip(after, before)
  const [first] = problems
  return first === undefined ? ok(after) : fail(first)
}

/** The trip as an edit would have it, not checked yet. */
export function makeEdit(trip: Trip, edit: Edit): Result<Trip> {
  switch (edit.kind) {
    case 'set-value':
      return setValue(trip, edit)
    case 'add-piece':
      return pieces.addPiece(trip, edit)
    case 'add-pieces':
      return pieces.addPieces(trip, edit)
    case 'duplicate-piece':
      return pieces.duplicatePiece(trip, edit)
    case 'remove-piece':
      return pieces.removePiece(trip, edit)
    case 'remove-pieces':
      return pieces.removePieces(trip, edit)
    case 'change-pieces':
      return pieces.changePieces(trip, edit)
    case 'move-to-bin':
      return pieces.moveToBin(trip, edit)
    case 'set-spare':
      return pieces.setSpare(trip, edit)
    case 'add-bin':
      return addBin(trip, edit)
    case 'duplicate-bin':
      return duplicateBin(trip, edit)
    case 'remove-bin':
      return removeBin(trip, edit)
    case 'lock':
      return lockUnit(trip, edit)
    case 'unlock':
      return unlockUnit(trip, edit)
    case 'set-preferences':
      return records.setPreferences(trip, edit)
    case 'take-remedy':
      return takeRemedy(trip, edit)
    default:
      return makeOnNightOrList(trip, edit)
  }
}

type NightOrListEdit = Extract<
  Edit,
  {
    readonly kind:
      | `${string}night`
      | `${string}bedding`
      | `${string}tick`
      | `${string}lesson`
      | `${string}rule`
      | `${string}measurement`
      | `${string}entry`
  }
>

function makeOnNightOrList(trip: Trip, edit: NightOrListEdit): Result<Trip> {
  switch (edit.kind) {
    case 'set-night':
      return nights.setNight(trip, edit)
    case 'choose-bedding':
      return nights.chooseBedding(trip, edit)
    case 'add-night':
      return nights.addNight(trip, edit)
    case 'duplicate-night':
      return nights.duplicateNight(trip, edit)
    case 'remove-night':
      return nights.removeNight(trip, edit)
    case 'tick':
      return checklist.tickStep(trip, edit)
    case 'untick':
      return checklist.untickStep(trip, edit)
    case 'add-lesson':
      return checklist.addLesson(trip, edit)
    case 'remove-lesson':
      return checklist.removeLesson(trip, edit)
    case 'lesson-to-rule':
      return checklist.lessonToRule(trip, edit)
    case 'add-rule':
      return checklist.addRule(trip, edit)
    case 'edit-rule':
      return checklist.editRule(trip, edit)
    case 'remove-rule':
      return checklist.removeRule(trip, edit)
    case 'switch-rule':
      return checklist.switchRule(trip, edit)
    case 'add-measurement':
      return records.addMeasurement(trip, edit)
    case 'remove-measurement':
      return records.removeMeasurement(trip, edit)
    case 'add-ledger-entry':
      return records.addLedgerEntry(trip, edit)
    case 'remove-ledger-entry':
      return records.removeLedgerEntry(trip, edit)
    default:
      return assertNever(edit)
  }
}
