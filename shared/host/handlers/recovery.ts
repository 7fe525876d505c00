/** The recovery journal: kept while editing, offered after a crash, never written over the file. */
import { ok } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { OpenedTrip } from '../contract.ts'
import type { Caller, JournalEntry } from '../ports/index.ts'
import { addOpen, addUntitled, describeOpen, findOpen, readTrip, writeTrip } from './context.ts'
import type { Context, Handlers, OpenTrip } from './context.ts'

export function recoveryHandlers(
  context: Context,
): Pick<Handlers, 'keepRecovery' | 'listRecoveries' | 'openRecovery' | 'dropRecovery'> {
  const { journal, clock } = context.ports
  return {
    keepRecovery: async (caller, { token, trip }) => {
      const open = findOpen(context, caller, token)
      if (!open.ok) return open
      const keptAtUtc = clock.nowUtc()
      const { journalId: id, name: fileName, path, sha256: baseSha256 } = open.value
      const entry = { id, title: trip.title, fileName, path, baseSha256, keptAtUtc }
      const kept = await context.inTurn(`keep ${id}`, () => journal.keep(entry, writeTrip(context, trip)))
      return kept.ok ? ok({ keptAtUtc }) : kept
    },
    listRecoveries: async () => {
      const found = await journal.list()
      if (!found.ok) return found
      const inUse = new Set([...context.open.values()].map((open) => open.journalId))
      const left = found.value.filter((entry) => !inUse.has(entry.id))
      return ok({ recoveries: left.map(({ id, title, fileName, keptAtUtc }) => ({ id, title, fileName, keptAtUtc })) })
    },
    openRecovery: async (caller, { id }) => {
      const read = await journal.read(id)
      if (!read.ok) return read
      const trip = readTrip(read.value.bytes)
      if (!trip.ok) return trip
      const open = await reattach(context, caller, read.value.entry)
      return open.ok
        ? ok({ file: describeOpen(open.value), trip: trip.value, unsaved: true } satisfies OpenedTrip)
        : open
    },
    dropRecovery: async (_caller, { id }) => {
      const dropped = await journal.drop(id)
      return dropped.ok ? ok({}) : dropped
    },
  }
}

/** Back to its file where that still is and nobody else has it; without a file otherwise. A changed file shows on saving. */
async function reattach(context: Context, caller: Caller, entry: JournalEntry): Promise<Result<OpenTrip>> {
  if (entry.path === null) return ok(addUntitled(context, caller, entry.fileName, entry.id))
  const identity = await context.ports.files.identify(entry.path)
  if (!identity.ok) return ok(addUntitled(context, caller, entry.fileName, entry.id))
  const { realPath, name, folder, writable } = identity.value
  const held = [...context.open.values()].some((open) => open.path === realPath)
  const lock = held ? null : await context.ports.locks.take(realPath)
  if (lock === null || !lock.ok) return ok(addUntitled(context, caller, entry.fileName, entry.id))
  const open = { caller, name, folder, path: realPath, writable, sha256: entry.baseSha256, lock: lock.value }
  return ok(addOpen(context, open, entry.id))
}
