/** One program of ours on one real file. The lock lies in our own data folder, so read-only folders work and no litter is left. */
import { createHash, randomBytes } from 'node:crypto'
import { basename, join } from 'node:path'
import type { Locks } from '../../../shared/host/index.ts'
import { fail, ok, problem } from '../../../shared/result/index.ts'
import type { Result } from '../../../shared/result/index.ts'
import type { FileCalls } from '../calls.ts'
import { NO_LINKS } from '../atomic-save.ts'
import { attempt } from '../cause.ts'
import { isAlive, tempName } from '../temp-name.ts'

type Setting = { readonly calls: FileCalls; readonly folder: string }

/** How often a lock of a dead program is cleared before giving up: more means that others are quicker. */
const ATTEMPTS = 5

/** Marks of the locks that this process holds: a mark of ours that is not here is left from an earlier process of the same number. */
const held = new Set<string>()

export function createLocks({ calls, folder }: Setting): Locks {
  return {
    take: async (realPath) => {
      const path = join(folder, `${createHash('sha256').update(realPath).digest('hex').slice(0, 32)}.lock`)
      const mark = `${process.pid} ${randomBytes(12).toString('hex')}`
      const made = await attempt(folder, () => calls.mkdir(folder))
      if (!made.ok) return made
      for (let attemptNumber = 0; attemptNumber < ATTEMPTS; attemptNumber += 1) {
        const claimed = await claim(calls, folder, path, mark)
        if (claimed.ok) {
          held.add(mark)
          return ok({ release: () => release(calls, path, mark) })
        }
        if (claimed.problem.code !== 'file-exists') return claimed
        const cleared = await clearDead(calls, folder, path)
        if (!cleared) return fail(problem('trip-open-elsewhere', [], { name: basename(realPath) }))
      }
      return fail(problem('trip-open-elsewhere', [], { name: basename(realPath) }))
    },
  }
}

/** Appears with its content in one step: a hard link to a finished file, or an exclusive file where there are no links. */
async function claim(calls: FileCalls, folder: string, path: string, mark: string): Promise<Result<void>> {
  const temp = join(folder, tempName())
  const written = await attempt(temp, () => write(calls, temp, mark))
  if (!written.ok) return written
  const linked = await attempt(path, () => calls.link(temp, path))
  await attempt(temp, () => calls.unlink(temp))
  if (linked.ok || linked.problem.code === 'file-exists') return linked
  return NO_LINKS.has(String(linked.problem.params['system'])) ? attempt(path, () => write(calls, path, mark)) : linked
}

async function write(calls: FileCalls, path: string, mark: string): Promise<void> {
  const handle = await calls.open(path, 'wx')
  try {
    await handle.writeFile(Buffer.from(mark))
  } finally {
    await handle.close()
  }
}

/**
 * True where the way is free to try again. The lock is moved aside before it is judged a second time,
 * so that a live one put there in between is put back and not lost.
 */
async function clearDead(calls: FileCalls, folder: string, path: string): Promise<boolean> {
  const seen = await readMark(calls, path)
  if (seen === null) return true
  if (isLive(seen)) return false
  const aside = join(folder, tempName())
  const moved = await attempt(path, () => calls.rename(path, aside))
  if (!moved.ok) return true
  const taken = await readMark(calls, aside)
  if (taken !== null && isLive(taken)) await attempt(path, () => calls.link(aside, path))
  await attempt(aside, () => calls.unlink(aside))
  return true
}

function isLive(mark: string): boolean {
  const pid = Number(mark.split(' ')[0])
  return pid === process.pid ? held.has(mark) : isAlive(pid)
}

async function readMark(calls: FileCalls, path: string): Promise<string | null> {
  const bytes = await attempt(path, () => calls.readFile(path))
  return bytes.ok ? Buffer.from(bytes.value).toString('latin1') : null
}

async function release(calls: FileCalls, path: string, mark: string): Promise<void> {
  if (!held.delete(mark)) return
  if ((await readMark(calls, path)) === mark) await attempt(path, () => calls.unlink(path))
}
