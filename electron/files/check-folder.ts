/** Whether files can be put into a folder that may not be there yet: asked before long work, so that the answer comes first. */
import { dirname } from 'node:path'
import { fail, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'
import type { FileCalls } from './calls.ts'
import { attempt } from './cause.ts'

/** Looks at the folder or the nearest one above it that is there. Nothing is made. */
export async function checkFolder(calls: FileCalls, folder: string): Promise<Result<void>> {
  for (let path = folder; ; path = dirname(path)) {
    const stat = await attempt(path, () => calls.stat(path))
    if (stat.ok && !stat.value.isDirectory) return fail(problem('folder-is-file', [], { path }))
    if (stat.ok) return attempt(path, () => calls.mayWrite(path))
    if (stat.problem.code !== 'file-missing' || dirname(path) === path) return stat
  }
}
