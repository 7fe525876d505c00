/** Removes half-made files that a killed process left in a folder. */
import { join } from 'node:path'
import type { FileCalls } from './calls.ts'
import { attempt } from './cause.ts'
import { isAlive, readTempName } from './temp-name.ts'

/** Another machine's half-made file on a shared folder is swept after this long, ms. */
const FOREIGN_AGE_MS = 86_400_000

/** How many were removed. A folder that cannot be read has nothing to sweep. `nowMs`: wall clock, for other machines' files only. */
export async function sweepFolder(calls: FileCalls, folder: string, nowMs: number): Promise<number> {
  const names = await attempt(folder, () => calls.readdir(folder))
  if (!names.ok) return 0
  let removed = 0
  for (const name of names.value) {
    const maker = readTempName(name)
    if (maker === null || (maker.sameMachine && isAlive(maker.pid))) continue
    const path = join(folder, name)
    if (!maker.sameMachine && !(await isOld(calls, path, nowMs))) continue
    const done = await attempt(path, () => calls.unlink(path))
    if (done.ok) removed += 1
  }
  return removed
}

async function isOld(calls: FileCalls, path: string, nowMs: number): Promise<boolean> {
  const stat = await attempt(path, () => calls.stat(path))
  return stat.ok && nowMs - stat.value.mtimeMs > FOREIGN_AGE_MS
}
