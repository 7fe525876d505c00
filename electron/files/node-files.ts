/** The user's files on a real file system. */
import { basename, dirname, join } from 'node:path'
import type { FileIdentity, Files } from '../../shared/host/index.ts'
import { fail, ok, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'
import { saveAtomically, sha256Of } from './atomic-save.ts'
import type { FileCalls } from './calls.ts'
import { attempt } from './cause.ts'
import { sweepFolder } from './sweep.ts'

const MIB = 1_048_576
/** Largest trip read, bytes. */
export const LARGEST_FILE_BYTES = 32 * MIB
const LAST_NUMBER = 999

export function createNodeFiles(calls: FileCalls, windows: boolean, nowMs: () => number): Files {
  const swept = new Set<string>()
  const sweepOnce = async (folder: string): Promise<void> => {
    if (swept.has(folder)) return
    swept.add(folder)
    await sweepFolder(calls, folder, nowMs())
  }
  return {
    read: async (path) => {
      await sweepOnce(dirname(path))
      const bytes = await readWithinLimit(calls, path)
      return bytes.ok ? ok({ bytes: bytes.value, sha256: sha256Of(bytes.value) }) : bytes
    },
    save: (path, bytes, expected) => saveAtomically(calls, { path, bytes, expected, windows }),
    fingerprint: async (path) => {
      const bytes = await readWithinLimit(calls, path)
      if (bytes.ok) return ok(sha256Of(bytes.value))
      return bytes.problem.code === 'file-missing' ? ok(null) : bytes
    },
    identify: (path) => identify(calls, path),
    freePath: (folder, name) => freePath(calls, folder, name),
  }
}

/** Looks before it reads: a pipe would wait for ever, a huge file would fill the memory. */
export async function readWithinLimit(calls: FileCalls, path: string): Promise<Result<Uint8Array>> {
  const stat = await attempt(path, () => calls.stat(path))
  if (!stat.ok) return stat
  if (stat.value.isDirectory) return fail(problem('file-is-folder', [], { path }))
  if (!stat.value.isFile) return fail(problem('file-unreadable', [], { path }))
  if (stat.value.size > LARGEST_FILE_BYTES) {
    return fail(
      problem('file-too-large', [], {
        path,
        sizeMiB: Math.ceil((stat.value.size / MIB) * 10) / 10,
        limitMiB: LARGEST_FILE_BYTES / MIB,
      }),
    )
  }
  return attempt(path, () => calls.readFile(path))
}

async function identify(calls: FileCalls, path: string): Promise<Result<FileIdentity>> {
  const realPath = await attempt(path, () => calls.realpath(path))
  if (!realPath.ok) return realPath
  const [file, folder] = await Promise.all([
    attempt(path, () => calls.mayWrite(realPath.value)),
    attempt(path, () => calls.mayWrite(dirname(realPath.value))),
  ])
  return ok({
    realPath: realPath.value,
    name: basename(realPath.value),
    folder: dirname(realPath.value),
    writable: file.ok && folder.ok,
  })
}

async function freePath(calls: FileCalls, folder: string, name: string): Promise<Result<string>> {
  const made = await attempt(folder, () => calls.mkdir(folder))
  if (!made.ok) return made
  const there = await attempt(folder, () => calls.readdir(folder))
  if (!there.ok) return there
  const taken = new Set(there.value.map((each) => each.normalize('NFC').toLowerCase()))
  const cut = name.search(/\.(?:trip\.)?[a-z0-9]+$/i)
  const [stem, ending] = cut < 0 ? [name, ''] : [name.slice(0, cut), name.slice(cut)]
  for (let number = 1; number <= LAST_NUMBER; number += 1) {
    const candidate = number === 1 ? name : `${stem} (${number})${ending}`
    if (!taken.has(candidate.normalize('NFC').toLowerCase())) return ok(join(folder, candidate))
  }
  return fail(problem('file-exists', [], { path: join(folder, name) }))
}
