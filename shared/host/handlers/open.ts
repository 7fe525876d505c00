/** Opening and closing: samples, recent trips, files, bytes from the page. */
import { fail, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import { decodeBase64 } from '../base64.ts'
import type { OpenedTrip } from '../contract.ts'
import { tripFileName } from '../file-name.ts'
import type { Caller, FileIdentity, Lock } from '../ports/index.ts'
import { addOpen, addUntitled, describeOpen, findOpen, readTrip } from './context.ts'
import type { Context, Handlers, OpenTrip } from './context.ts'

type Names =
  'listSamples' | 'openSample' | 'recentTrips' | 'forgetRecent' | 'openTrip' | 'adoptTrip' | 'closeTrip' | 'checkDisk'

export function openHandlers(context: Context): Pick<Handlers, Names> {
  const { ports } = context
  return {
    listSamples: () => listSamples(context),
    openSample: (caller, { id }) => openSample(context, caller, id),
    recentTrips: () => recentTrips(context),
    forgetRecent: async (_caller, { token }) => {
      const path = context.paths.pathOf(token)
      if (path === null) return fail(problem('trip-token-unknown'))
      await ports.recents.forget(path)
      return ok({})
    },
    openTrip: (caller, { from, asCopy }) => {
      switch (from.kind) {
        case 'dialog':
          return openByDialog(context, caller, asCopy)
        case 'token':
          return openByToken(context, caller, from.token, asCopy)
        case 'theirs':
          return openTheirs(context, caller, from.token)
        case 'bytes':
          return Promise.resolve(openBytes(context, caller, from.name, from.base64))
      }
    },
    adoptTrip: (caller, { name }) =>
      Promise.resolve(ok(describeOpen(addUntitled(context, caller, tripFileName(name))))),
    closeTrip: async (caller, { token }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return open
      await forget(context, open.value)
      return ports.journal.drop(open.value.journalId).then((dropped) => (dropped.ok ? ok({}) : dropped))
    },
    checkDisk: async (caller, { token }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return open
      if (open.value.path === null) return ok({ state: 'never-saved', sha256: null })
      const now = await ports.files.fingerprint(open.value.path)
      if (!now.ok) return now
      if (now.value === null) return ok({ state: 'missing', sha256: null })
      return ok({ state: now.value === open.value.sha256 ? 'same' : 'changed', sha256: now.value })
    },
  }
}

/** Gives up lock and token; the recovery copy stays. */
export async function forget(context: Context, open: OpenTrip): Promise<void> {
  context.open.delete(open.token)
  context.ports.desktop.setUnsaved(open.caller, false)
  await open.lock?.release()
}

/** What a window held before it was closed, reloaded or lost: locks are given up, recovery copies stay. */
export async function releaseCaller(context: Context, caller: Caller): Promise<void> {
  for (const open of context.open.values()) if (open.caller === caller) await forget(context, open)
}

async function listSamples(context: Context): ReturnType<Handlers['listSamples']> {
  const found = await context.ports.samples.list()
  if (!found.ok) return found
  const samples = []
  for (const { id, bytes } of found.value) {
    const trip = readTrip(bytes)
    if (!trip.ok) return trip
    samples.push({ id, title: trip.value.title, units: trip.value.preferences.units })
  }
  return ok({ samples })
}

async function openSample(context: Context, caller: Caller, id: string): Promise<Result<OpenedTrip>> {
  const found = await context.ports.samples.list()
  if (!found.ok) return found
  const sample = found.value.find((each) => each.id === id)
  if (sample === undefined) return fail(problem('sample-unknown', [], { id }))
  const trip = readTrip(sample.bytes)
  if (!trip.ok) return trip
  const open = addUntitled(context, caller, tripFileName(trip.value.title))
  return ok({ file: describeOpen(open), trip: trip.value, unsaved: false })
}

async function recentTrips(context: Context): ReturnType<Handlers['recentTrips']> {
  const trips = []
  for (const recent of await context.ports.recents.list()) {
    const identity = await context.ports.files.identify(recent.path)
    const cut = Math.max(recent.path.lastIndexOf('/'), recent.path.lastIndexOf('\\'))
    trips.push({
      token: context.paths.tokenOf(recent.path),
      name: recent.path.slice(cut + 1),
      folder: recent.path.slice(0, Math.max(0, cut)),
      openedAtUtc: recent.openedAtUtc,
      missing: !identity.ok,
    })
  }
  return ok({ trips })
}

async function openByDialog(context: Context, caller: Caller, asCopy: boolean): Promise<Result<OpenedTrip | null>> {
  const { dialogs } = context.ports
  if (dialogs === null) return fail(problem('host-has-no-dialogs'))
  const path = await dialogs.chooseOpen(caller)
  return path === null ? ok(null) : openPath(context, caller, path, asCopy)
}

async function openByToken(
  context: Context,
  caller: Caller,
  token: string,
  asCopy: boolean,
): Promise<Result<OpenedTrip>> {
  const path = context.paths.pathOf(token)
  return path === null ? fail(problem('trip-token-unknown')) : openPath(context, caller, path, asCopy)
}

async function openPath(context: Context, caller: Caller, path: string, asCopy: boolean): Promise<Result<OpenedTrip>> {
  const identity = await context.ports.files.identify(path)
  if (!identity.ok) return identity
  if (asCopy) return openCopy(context, caller, identity.value)
  return context.inTurn(`open ${identity.value.realPath}`, async () => {
    const lock = await takeLock(context, caller, identity.value)
    if (!lock.ok) return lock
    const opened = await openLocked(context, caller, identity.value, lock.value)
    if (!opened.ok) await lock.value.release()
    return opened
  })
}

async function openCopy(context: Context, caller: Caller, file: FileIdentity): Promise<Result<OpenedTrip>> {
  const read = await context.ports.files.read(file.realPath)
  if (!read.ok) return read
  const trip = readTrip(read.value.bytes)
  if (!trip.ok) return trip
  return ok({ file: describeOpen(addUntitled(context, caller, file.name)), trip: trip.value, unsaved: true })
}

/** One window on one real file: the one that has it comes to the front. Within one window a trip may be opened anew. */
async function takeLock(context: Context, caller: Caller, file: FileIdentity): Promise<Result<Lock>> {
  const holder = [...context.open.values()].find((open) => open.path === file.realPath)
  if (holder === undefined) return context.ports.locks.take(file.realPath)
  if (holder.caller !== caller) {
    context.ports.desktop.focus(holder.caller)
    return fail(problem('trip-open-in-window', [], { name: file.name }))
  }
  await forget(context, holder)
  return context.ports.locks.take(file.realPath)
}

async function openLocked(
  context: Context,
  caller: Caller,
  file: FileIdentity,
  lock: Lock,
): Promise<Result<OpenedTrip>> {
  const read = await context.ports.files.read(file.realPath)
  if (!read.ok) return read
  const trip = readTrip(read.value.bytes)
  if (!trip.ok) return trip
  const { realPath, name, folder, writable } = file
  const open = addOpen(context, { caller, name, folder, path: realPath, writable, sha256: read.value.sha256, lock })
  await context.ports.recents.add({ path: realPath, openedAtUtc: context.ports.clock.nowUtc() })
  return ok({ file: describeOpen(open), trip: trip.value, unsaved: false })
}

/** Reads the file again over what the page has: the user chose the version on disk. */
async function openTheirs(context: Context, caller: Caller, token: string): Promise<Result<OpenedTrip>> {
  const open = findOpen(context, caller, token)
  if (!open.ok) return open
  if (open.value.path === null) return fail(problem('trip-has-no-file'))
  const read = await context.ports.files.read(open.value.path)
  if (!read.ok) return read
  const trip = readTrip(read.value.bytes)
  if (!trip.ok) return trip
  open.value.sha256 = read.value.sha256
  return ok({ file: describeOpen(open.value), trip: trip.value, unsaved: false })
}

function openBytes(context: Context, caller: Caller, name: string, base64: string): Result<OpenedTrip> {
  const bytes = decodeBase64(base64)
  if (!bytes.ok) return bytes
  const trip = readTrip(bytes.value)
  if (!trip.ok) return trip
  const open = addUntitled(context, caller, tripFileName(name))
  return ok({ file: describeOpen(open), trip: trip.value, unsaved: true })
}
