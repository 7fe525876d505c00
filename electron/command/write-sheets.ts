/** Writes the plan and its sheets into a folder; earlier ones of the same name there are replaced, the trip itself never. */
import { basename, dirname, join } from 'node:path'
import type { PlannedTrip } from '../../shared/host/index.ts'
import { SHEET_NAMES } from '../../shared/host/index.ts'
import { fail, ok, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'
import type { Utc } from '../../shared/units/index.ts'
import { createNodeFiles, createSheets, NODE_CALLS } from '../files/index.ts'

const MS_PER_S = 1000

/** The names written, in the order of the sheets. */
export async function writeSheets(
  { trip, plan }: PlannedTrip,
  out: string,
  tripPath: string,
): Promise<Result<readonly string[]>> {
  const files = createNodeFiles(NODE_CALLS, process.platform === 'win32', () => Date.now())
  const sheets = createSheets()
  const atUtc = Math.floor(Date.now() / MS_PER_S) as Utc
  // Making the folder is part of finding a free name in it.
  const made = await files.freePath(out, 'plan.json')
  if (!made.ok) return made
  const source = await files.identify(tripPath)
  const names: string[] = []
  for (const sheet of SHEET_NAMES) {
    const rendered = await sheets.render(trip, plan, sheet, atUtc)
    if (!rendered.ok) return rendered
    const path = join(out, rendered.value.name)
    const there = await files.identify(path)
    const real = there.ok ? there.value.realPath : path
    if (source.ok && real === source.value.realPath) {
      return fail(problem('command-out-holds-trip', [], { name: basename(path), folder: dirname(path) }))
    }
    const now = await files.fingerprint(real)
    if (!now.ok) return now
    const saved = await files.save(real, rendered.value.bytes, now.value)
    if (!saved.ok) return saved
    names.push(rendered.value.name)
  }
  return ok(names)
}
