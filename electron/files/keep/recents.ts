/** Trips opened lately. A list that cannot be read starts anew: nothing the user made is in it. */
import { dirname } from 'node:path'
import type { Recent, Recents } from '../../../shared/host/index.ts'
import { saveAtomically, sha256Of } from '../atomic-save.ts'
import type { FileCalls } from '../calls.ts'
import { attempt } from '../cause.ts'
import { jsonOrNull } from './json-or-null.ts'

const KEPT = 12

type Setting = { readonly calls: FileCalls; readonly path: string; readonly windows: boolean }

export function createRecents(setting: Setting): Recents {
  let last: Promise<unknown> = Promise.resolve()
  const change = (edit: (recents: readonly Recent[]) => readonly Recent[]): Promise<void> => {
    const run = last.then(() => rewrite(setting, edit))
    last = run
    return run
  }
  return {
    list: async () => (await load(setting)).recents,
    add: (recent) =>
      change((recents) => [recent, ...recents.filter((each) => each.path !== recent.path)].slice(0, KEPT)),
    forget: (path) => change((recents) => recents.filter((each) => each.path !== path)),
  }
}

/** A list that cannot be written is not worth stopping the user for: it only shortens a menu. */
async function rewrite(setting: Setting, edit: (recents: readonly Recent[]) => readonly Recent[]): Promise<void> {
  const { calls, path, windows } = setting
  const made = await attempt(path, () => calls.mkdir(dirname(path)))
  if (!made.ok) return
  const { recents, sha256 } = await load(setting)
  const bytes = Buffer.from(`${JSON.stringify(edit(recents), null, 2)}\n`)
  await saveAtomically(calls, { path, bytes, expected: sha256, windows })
}

async function load({ calls, path }: Setting): Promise<{ recents: readonly Recent[]; sha256: string | null }> {
  const bytes = await attempt(path, () => calls.readFile(path))
  if (!bytes.ok) return { recents: [], sha256: null }
  return { recents: parse(Buffer.from(bytes.value).toString('utf8')), sha256: sha256Of(bytes.value) }
}

function parse(text: string): readonly Recent[] {
  const list = jsonOrNull(text)
  if (!Array.isArray(list)) return []
  return list.flatMap((each: unknown) => {
    if (typeof each !== 'object' || each === null || !('path' in each) || !('openedAtUtc' in each)) return []
    const { path, openedAtUtc } = each
    return typeof path === 'string' &&
      typeof openedAtUtc === 'number' &&
      Number.isInteger(openedAtUtc) &&
      openedAtUtc >= 0
      ? [{ path, openedAtUtc }]
      : []
  })
}
