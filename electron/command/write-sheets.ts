/** Writes the plan and its sheets into a folder; earlier ones of the same name there are replaced, the trip itself never. */
import { basename, dirname, join } from 'node:path'
import type { Files, PlannedTrip, SheetFile } from '../../shared/host/index.ts'
import { SHEET_NAMES } from '../../shared/host/index.ts'
import { fail, ok, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'
import type { Utc } from '../../shared/units/index.ts'
import { createNodeFiles, createSheets, NODE_CALLS } from '../files/index.ts'

const MS_PER_S = 1000

/** The names written, in the order of the sheets. All are made before the first is written. */
export async function writeSheets(
  planned: PlannedTrip,
  out: string,
  tripPath: string,
): Promise<Result<readonly string[]>> {
  const files = createNodeFiles(NODE_CALLS, process.platform === 'win32', () => Date.now())
  const rendered = await renderAll(planned)
  if (!rendered.ok) return rendered
  // Making the folder is part of finding a free name in it.
  const made = await files.freePath(out, 'plan.json')
  if (!made.ok) return made
  const source = await files.identify(tripPath)
  for (const { name, bytes } of rendered.value) {
    const written = await writeOne(files, join(out, name), bytes, source.ok ? source.value.realPath : null)
    if (!written.ok) return written
  }
  return ok(rendered.value.map(({ name }) => name))
}

async function renderAll({ trip, plan }: PlannedTrip): Promise<Result<readonly SheetFile[]>> {
  const sheets = createSheets()
  const atUtc = Math.floor(Date.now() / MS_PER_S) as Utc
  const rendered: SheetFile[] = []
  for (const sheet of SHEET_NAMES) {
    const one = await sheets.render(trip, plan, sheet, atUtc)
    if (!one.ok) return one
    rendered.push(one.value)
  }
  return ok(rendered)
}

/** A link of that name is followed: what it stands for is replaced, unless that is the trip. */
async function writeOne(
  files: Files,
  path: string,
  bytes: Uint8Array,
  tripRealPath: string | null,
): Promise<Result<void>> {
  const there = await files.identify(path)
  const real = there.ok ? there.value.realPath : path
  if (real === tripRealPath) {
    return fail(problem('command-out-holds-trip', [], { name: basename(path), folder: dirname(path) }))
  }
  const now = await files.fingerprint(real)
  if (!now.ok) return now
  const saved = await files.save(real, bytes, now.value)
  return saved.ok ? ok(undefined) : saved
}
