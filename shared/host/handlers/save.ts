/** Saving: never over what the user has not seen, the version before kept. */
import { checkTrip } from '../../document/index.ts'
import type { Trip } from '../../document/index.ts'
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { OperationOutput } from '../contract.ts'
import { tripFileName } from '../file-name.ts'
import type { Caller } from '../ports/index.ts'
import { describeOpen, findOpen, readTrip, writeTrip } from './context.ts'
import type { Context, Handlers, OpenTrip } from './context.ts'

type Saved = OperationOutput<'saveTrip'>

export function saveHandlers(
  context: Context,
): Pick<Handlers, 'saveTrip' | 'saveTripAs' | 'listBackups' | 'openBackup' | 'markUnsaved'> {
  return {
    saveTrip: (caller, { token, trip, replacing }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return Promise.resolve(open)
      const valid = canBeOpenedAgain(trip)
      if (!valid.ok) return Promise.resolve(valid)
      return context.inTurn(`save ${token}`, () => saveHere(context, open.value, trip, replacing))
    },
    saveTripAs: (caller, { token, trip, name }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return Promise.resolve(open)
      const valid = canBeOpenedAgain(trip)
      if (!valid.ok) return Promise.resolve(valid)
      return context.inTurn(`save ${token}`, () => saveAs(context, caller, open.value, { trip, name }))
    },
    markUnsaved: (caller, { token, unsaved }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return Promise.resolve(open)
      context.ports.desktop.setUnsaved(caller, unsaved)
      return Promise.resolve(ok({}))
    },
    listBackups: async (caller, { token }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return open
      if (open.value.path === null) return ok({ backups: [] })
      const found = await context.ports.backups.list(open.value.path)
      return found.ok ? ok({ backups: found.value }) : found
    },
    openBackup: async (caller, { token, id }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return open
      if (open.value.path === null) return fail(problem('trip-has-no-file'))
      const bytes = await context.ports.backups.read(open.value.path, id)
      if (!bytes.ok) return bytes
      const trip = readTrip(bytes.value)
      return trip.ok ? ok({ file: describeOpen(open.value), trip: trip.value, unsaved: true }) : trip
    },
  }
}

/** The host has read the shape; what is right piece by piece may still speak of a bay or a bin that is not there: such a file would be refused tomorrow. */
function canBeOpenedAgain(trip: Trip): Result<void> {
  const [first] = checkTrip(trip, null)
  return first === undefined ? ok(undefined) : fail(first)
}

async function saveHere(
  context: Context,
  open: OpenTrip,
  trip: Trip,
  replacing: string | null,
): Promise<Result<Saved>> {
  if (open.path === null) return fail(problem('trip-has-no-file'))
  const expected = await expectedOnDisk(context, open, open.path, replacing)
  if (!expected.ok) return expected
  const saved = await context.ports.files.save(open.path, writeTrip(context, trip), expected.value)
  if (!saved.ok) {
    // The new bytes stand there; only the disk's confirmation is missing. The next save must expect them.
    const { sha256 } = saved.problem.params
    if (saved.problem.code === 'file-not-durable' && typeof sha256 === 'string') open.sha256 = sha256
    return saved
  }
  open.sha256 = saved.value.sha256
  return finish(context, open)
}

/** What must still stand there when the new bytes go in; the version it replaces is backed up first. */
async function expectedOnDisk(
  context: Context,
  open: OpenTrip,
  path: string,
  replacing: string | null,
): Promise<Result<string | null>> {
  const expected = replacing === 'missing' ? null : (replacing ?? open.sha256)
  const now = await context.ports.files.read(path)
  if (!now.ok) {
    if (now.problem.code !== 'file-missing') return now
    return expected === null ? ok(null) : fail(problem('trip-file-missing', [], { name: open.name }))
  }
  if (now.value.sha256 !== expected) return fail(problem('trip-changed-on-disk', [], { name: open.name }))
  const kept = await context.ports.backups.keep(path, now.value.bytes)
  // A backup that cannot be made must not stop the save that the user asked for.
  if (!kept.ok) context.ports.log.write('backup-not-kept', { code: kept.problem.code })
  return ok(expected)
}

async function saveAs(
  context: Context,
  caller: Caller,
  open: OpenTrip,
  wanted: { readonly trip: Trip; readonly name: string },
): Promise<Result<Saved | null>> {
  const place = await choosePlace(context, caller, tripFileName(wanted.name))
  if (!place.ok) return place
  if (place.value === null) return ok(null)
  const { path, replaces } = place.value
  const taken = [...context.open.values()].find((other) => other.path === path && other !== open)
  if (taken !== undefined) return fail(problem('trip-open-in-window', [], { name: taken.name }))
  if (path === open.path) return saveHere(context, open, wanted.trip, replaces ?? 'missing')
  const lock = await context.ports.locks.take(path)
  if (!lock.ok) return lock
  const saved = await writeNew(context, path, wanted.trip, replaces)
  if (!saved.ok) {
    await lock.value.release()
    return saved
  }
  const identity = await context.ports.files.identify(path)
  if (!identity.ok) {
    await lock.value.release()
    return identity
  }
  await open.lock?.release()
  const { realPath, name, folder, writable } = identity.value
  Object.assign(open, { path: realPath, name, folder, writable, lock: lock.value, sha256: saved.value.sha256 })
  return finish(context, open)
}

type Place = { readonly path: string; readonly replaces: string | null }

/** By dialog (where the system has asked before an existing file is chosen), else a free name in the trips folder. */
async function choosePlace(context: Context, caller: Caller, name: string): Promise<Result<Place | null>> {
  const { dialogs, files, desktop } = context.ports
  if (dialogs === null) {
    const path = await files.freePath(desktop.folders.trips, name)
    return path.ok ? ok({ path: path.value, replaces: null }) : path
  }
  const path = await dialogs.chooseSave(caller, name)
  if (path === null) return ok(null)
  const identity = await files.identify(path)
  if (!identity.ok && identity.problem.code !== 'file-missing') return identity
  const real = identity.ok ? identity.value.realPath : path
  const now = await files.fingerprint(real)
  return now.ok ? ok({ path: real, replaces: now.value }) : now
}

async function writeNew(
  context: Context,
  path: string,
  trip: Trip,
  replaces: string | null,
): Promise<Result<{ readonly sha256: string }>> {
  if (replaces !== null) {
    const before = await context.ports.files.read(path)
    if (!before.ok) return before
    const kept = await context.ports.backups.keep(path, before.value.bytes)
    if (!kept.ok) context.ports.log.write('backup-not-kept', { code: kept.problem.code })
  }
  return context.ports.files.save(path, writeTrip(context, trip), replaces)
}

async function finish(context: Context, open: OpenTrip): Promise<Result<Saved>> {
  const savedAtUtc = context.ports.clock.nowUtc()
  const dropped = await context.ports.journal.drop(open.journalId)
  if (!dropped.ok) context.ports.log.write('recovery-not-dropped', { code: dropped.problem.code })
  context.ports.desktop.setUnsaved(open.caller, false)
  if (open.path !== null) await context.ports.recents.add({ path: open.path, openedAtUtc: savedAtUtc })
  return ok({ file: describeOpen(open), savedAtUtc })
}
