/** Earlier versions of each file, in a folder of its own, ordered by a counter so that a clock set back changes nothing. */
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import type { BackupEntry, Backups } from '../../../shared/host/index.ts'
import { fail, ok, problem } from '../../../shared/result/index.ts'
import type { Result } from '../../../shared/result/index.ts'
import { saveAtomically } from '../atomic-save.ts'
import type { FileCalls } from '../calls.ts'
import { attempt } from '../cause.ts'
import { readWithinLimit } from '../node-files.ts'
import { sweepFolder } from '../sweep.ts'

/** Versions kept of one file. */
const KEPT = 20
const NAME = /^(\d{8})-(\d{1,12})\.trip\.json$/

type Numbered = { readonly name: string; readonly counter: number; readonly savedAtUtc: number }

type Setting = {
  readonly calls: FileCalls
  readonly folder: string
  readonly nowUtc: () => number
  readonly windows: boolean
}

export function createBackups(setting: Setting): Backups {
  const folderOf = (realPath: string): string =>
    join(setting.folder, createHash('sha256').update(realPath).digest('hex').slice(0, 32))
  return {
    keep: (realPath, bytes) => keep(setting, folderOf(realPath), bytes),
    list: (realPath) => list(setting, folderOf(realPath)),
    read: (realPath, id) =>
      NAME.test(id)
        ? readWithinLimit(setting.calls, join(folderOf(realPath), id))
        : Promise.resolve(fail(problem('backup-unknown'))),
  }
}

async function keep(setting: Setting, folder: string, bytes: Uint8Array): Promise<Result<void>> {
  const { calls, windows } = setting
  const made = await attempt(folder, () => calls.mkdir(folder))
  if (!made.ok) return made
  await sweepFolder(calls, folder, setting.nowUtc() * 1000)
  const there = await numbered(calls, folder)
  if (!there.ok) return there
  const newest = there.value[0]
  if (newest !== undefined && (await sameBytes(calls, join(folder, newest.name), bytes))) return ok(undefined)
  const counter = (newest?.counter ?? 0) + 1
  const name = `${String(counter).padStart(8, '0')}-${Math.max(0, Math.floor(setting.nowUtc()))}.trip.json`
  const saved = await saveAtomically(calls, { path: join(folder, name), bytes, expected: null, windows })
  if (!saved.ok) return saved
  for (const old of there.value.slice(KEPT - 1)) {
    const removed = await attempt(folder, () => calls.unlink(join(folder, old.name)))
    if (!removed.ok) return removed
  }
  return ok(undefined)
}

async function sameBytes(calls: FileCalls, path: string, bytes: Uint8Array): Promise<boolean> {
  const there = await readWithinLimit(calls, path)
  return there.ok && Buffer.compare(there.value, bytes) === 0
}

async function numbered(calls: FileCalls, folder: string): Promise<Result<readonly Numbered[]>> {
  const names = await attempt(folder, () => calls.readdir(folder))
  if (!names.ok) return names.problem.code === 'file-missing' ? ok([]) : names
  const entries = names.value.flatMap((name) => {
    const match = NAME.exec(name)
    return match === null ? [] : [{ name, counter: Number(match[1]), savedAtUtc: Number(match[2]) }]
  })
  return ok(entries.sort((a, b) => b.counter - a.counter))
}

async function list({ calls }: Setting, folder: string): Promise<Result<readonly BackupEntry[]>> {
  const there = await numbered(calls, folder)
  if (!there.ok) return there
  const entries: BackupEntry[] = []
  for (const { name, savedAtUtc } of there.value) {
    const stat = await attempt(folder, () => calls.stat(join(folder, name)))
    if (stat.ok) entries.push({ id: name, savedAtUtc, bytes: stat.value.size })
  }
  return ok(entries)
}
