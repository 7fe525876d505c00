/**
 * Replaces a file whole or not at all, and so that it survives a power cut:
 * new file beside it, all bytes, fsync, compare what stands there, rename, fsync of the folder.
 * Measured against the usual library: that one replaced a good document by half a one on a full disk.
 */
import { createHash } from 'node:crypto'
import { dirname, join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { fail, ok, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'
import type { FileCalls } from './calls.ts'
import { attempt, systemCode } from './cause.ts'
import { tempName } from './temp-name.ts'

/** Waits before trying again while a scanner holds a file on Windows, ms: 1.3 s in all (from memory: scanners let go within one). */
const RETRY_MS = [10, 20, 40, 80, 160, 320, 640]
const HELD_BY_ANOTHER = new Set(['EPERM', 'EACCES', 'EBUSY'])
/** Folders that cannot be synced: the file system has no such call. */
const NO_FOLDER_SYNC = new Set(['EINVAL', 'ENOTSUP', 'EOPNOTSUPP', 'EISDIR', 'EPERM', 'EACCES', 'EBADF', 'ENOSYS'])
/** What a file system without hard links answers. */
export const NO_LINKS: ReadonlySet<string> = new Set([
  'EPERM',
  'ENOTSUP',
  'EOPNOTSUPP',
  'ENOSYS',
  'EINVAL',
  'EMLINK',
  'EXDEV',
])
const PERMISSION_BITS = 0o777

export type SaveRequest = {
  readonly path: string
  readonly bytes: Uint8Array
  /** SHA-256 that must still stand there; null where nothing may. */
  readonly expected: string | null
  readonly windows: boolean
}

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

export async function saveAtomically(
  calls: FileCalls,
  request: SaveRequest,
): Promise<Result<{ readonly sha256: string }>> {
  const { path, bytes, expected } = request
  const sha256 = sha256Of(bytes)
  const mode = await modeOf(calls, path, expected)
  if (!mode.ok) return mode
  const temp = join(dirname(path), tempName())
  const written = await attempt(path, () => writeWhole(calls, temp, bytes, mode.value))
  const placed = written.ok ? await place(calls, request, temp) : written
  if (!placed.ok) {
    await removeQuietly(calls, temp)
    return placed
  }
  const synced = await attempt(path, () => syncFolder(calls, dirname(path), request.windows))
  if (!synced.ok) return fail(problem('file-not-durable', [], { path, sha256 }))
  return ok({ sha256 })
}

/** Permissions of the file that is replaced; undefined (the system's default) for a new one. A write-protected file is refused. */
async function modeOf(calls: FileCalls, path: string, expected: string | null): Promise<Result<number | undefined>> {
  if (expected === null) return ok(undefined)
  const stat = await attempt(path, () => calls.stat(path))
  if (!stat.ok) return stat.problem.code === 'file-missing' ? fail(changed(path)) : stat
  const allowed = await attempt(path, () => calls.mayWrite(path))
  if (!allowed.ok) return fail(problem('file-read-only', [], { path }))
  return ok(stat.value.mode & PERMISSION_BITS)
}

async function writeWhole(calls: FileCalls, temp: string, bytes: Uint8Array, mode: number | undefined): Promise<void> {
  const handle = await calls.open(temp, 'wx', mode)
  try {
    await handle.writeFile(bytes)
    await handle.sync()
  } finally {
    await handle.close()
  }
}

async function place(calls: FileCalls, request: SaveRequest, temp: string): Promise<Result<void>> {
  const { path, expected, windows } = request
  if (expected === null) return placeNew(calls, request, temp)
  const now = await attempt(path, () => calls.readFile(path))
  if (!now.ok) return now.problem.code === 'file-missing' ? fail(changed(path)) : now
  if (sha256Of(now.value) !== expected) return fail(changed(path))
  return attempt(path, () => renameOver(calls, temp, path, windows))
}

/** A hard link refuses to replace; where there are none (many sticks and cards), an empty file claims the name first. */
async function placeNew(calls: FileCalls, { path, windows }: SaveRequest, temp: string): Promise<Result<void>> {
  return attempt(path, async () => {
    try {
      await calls.link(temp, path)
    } catch (cause) {
      if (!NO_LINKS.has(systemCode(cause) ?? '')) throw cause
      const claim = await calls.open(path, 'wx')
      await claim.close()
      await fillClaim(calls, temp, path, windows)
      return
    }
    await removeQuietly(calls, temp)
  })
}

/** A claim that cannot be filled is given up: an empty file must not pass for a trip. */
async function fillClaim(calls: FileCalls, temp: string, path: string, windows: boolean): Promise<void> {
  try {
    await renameOver(calls, temp, path, windows)
  } catch (cause) {
    await removeQuietly(calls, path)
    throw cause
  }
}

async function renameOver(calls: FileCalls, temp: string, path: string, windows: boolean): Promise<void> {
  for (const waitMs of windows ? RETRY_MS : []) {
    try {
      await calls.rename(temp, path)
      return
    } catch (cause) {
      if (!HELD_BY_ANOTHER.has(systemCode(cause) ?? '')) throw cause
      await wait(waitMs)
    }
  }
  await calls.rename(temp, path)
}

async function syncFolder(calls: FileCalls, folder: string, windows: boolean): Promise<void> {
  if (windows) return
  try {
    const handle = await calls.open(folder, 'r')
    try {
      await handle.sync()
    } finally {
      await handle.close()
    }
  } catch (cause) {
    if (!NO_FOLDER_SYNC.has(systemCode(cause) ?? '')) throw cause
  }
}

/** A half-made file that cannot be removed now is swept at the next start. */
async function removeQuietly(calls: FileCalls, temp: string): Promise<void> {
  await attempt(temp, () => calls.unlink(temp))
}

const changed = (path: string): ReturnType<typeof problem> => problem('trip-changed-on-disk', [], { path })
