/**
 * Unsaved work on disk. A copy is: one line of JSON about it, the trip's bytes, and an end line with length and SHA-256.
 * A copy without its whole end line was cut short; the one before it counts. Two are kept of each.
 */
import { join } from 'node:path'
import type { Journal, JournalEntry } from '../../../shared/host/index.ts'
import { fail, ok, problem } from '../../../shared/result/index.ts'
import type { Result } from '../../../shared/result/index.ts'
import { sha256Of } from '../atomic-save.ts'
import type { FileCalls } from '../calls.ts'
import { attempt } from '../cause.ts'
import { isAlive } from '../temp-name.ts'
import { jsonOrNull } from './json-or-null.ts'

const NAME = /^([A-Za-z0-9_-]{8,64})\.(\d{1,12})\.copy$/
const KEPT = 2

type Copy = { readonly entry: JournalEntry; readonly bytes: Uint8Array; readonly pid: number }
type Found = { readonly name: string; readonly id: string; readonly counter: number }
type Setting = { readonly calls: FileCalls; readonly folder: string }

export function createJournal(setting: Setting): Journal {
  const { calls, folder } = setting
  return {
    keep: (entry, bytes) => keep(setting, entry, bytes),
    list: async () => {
      const found = await copies(setting)
      if (!found.ok) return found
      const entries: JournalEntry[] = []
      for (const id of new Set(found.value.map((copy) => copy.id))) {
        const copy = await newestWhole(setting, found.value, id)
        if (copy !== null && (copy.pid === process.pid || !isAlive(copy.pid))) entries.push(copy.entry)
      }
      return ok(entries.sort((a, b) => b.keptAtUtc - a.keptAtUtc))
    },
    read: async (id) => {
      const found = await copies(setting)
      if (!found.ok) return found
      const copy = await newestWhole(setting, found.value, id)
      return copy === null ? fail(problem('recovery-unknown')) : ok(copy)
    },
    drop: async (id) => {
      const found = await copies(setting)
      if (!found.ok) return found
      for (const { name } of found.value.filter((copy) => copy.id === id)) {
        const removed = await attempt(folder, () => calls.unlink(join(folder, name)))
        if (!removed.ok && removed.problem.code !== 'file-missing') return removed
      }
      return ok(undefined)
    },
  }
}

async function copies({ calls, folder }: Setting): Promise<Result<readonly Found[]>> {
  const names = await attempt(folder, () => calls.readdir(folder))
  if (!names.ok) return names.problem.code === 'file-missing' ? ok([]) : names
  const found = names.value.flatMap((name) => {
    const match = NAME.exec(name)
    return match?.[1] === undefined ? [] : [{ name, id: match[1], counter: Number(match[2]) }]
  })
  return ok(found.sort((a, b) => b.counter - a.counter))
}

async function keep(setting: Setting, entry: JournalEntry, bytes: Uint8Array): Promise<Result<void>> {
  const { calls, folder } = setting
  const made = await attempt(folder, () => calls.mkdir(folder))
  if (!made.ok) return made
  const found = await copies(setting)
  if (!found.ok) return found
  const own = found.value.filter((copy) => copy.id === entry.id)
  const path = join(folder, `${entry.id}.${(own[0]?.counter ?? 0) + 1}.copy`)
  const written = await attempt(path, async () => {
    const handle = await calls.open(path, 'wx')
    try {
      await handle.writeFile(encode(entry, bytes))
      await handle.sync()
    } finally {
      await handle.close()
    }
  })
  if (!written.ok) {
    await attempt(path, () => calls.unlink(path))
    return written
  }
  for (const old of own.slice(KEPT - 1)) await attempt(path, () => calls.unlink(join(folder, old.name)))
  return ok(undefined)
}

async function newestWhole(setting: Setting, found: readonly Found[], id: string): Promise<Copy | null> {
  for (const { name } of found.filter((copy) => copy.id === id)) {
    const path = join(setting.folder, name)
    const bytes = await attempt(path, () => setting.calls.readFile(path))
    const copy = bytes.ok ? decode(bytes.value) : null
    if (copy !== null && copy.entry.id === id) return copy
  }
  return null
}

function encode(entry: JournalEntry, bytes: Uint8Array): Uint8Array {
  const head = Buffer.from(`${JSON.stringify({ ...entry, pid: process.pid })}\n`)
  const body = Buffer.concat([head, bytes])
  return Buffer.concat([body, Buffer.from(`\nend ${body.length} ${sha256Of(body)}\n`)])
}

/** Null where the copy is not whole. */
function decode(file: Uint8Array): Copy | null {
  const buffer = Buffer.from(file.buffer, file.byteOffset, file.byteLength)
  const endAt = buffer.lastIndexOf('\nend ')
  const headEnd = buffer.indexOf('\n')
  if (endAt < 0 || headEnd < 0 || headEnd > endAt) return null
  const body = buffer.subarray(0, endAt)
  if (buffer.toString('latin1', endAt) !== `\nend ${body.length} ${sha256Of(body)}\n`) return null
  const entry = readEntry(jsonOrNull(buffer.toString('utf8', 0, headEnd)))
  return entry === null ? null : { ...entry, bytes: body.subarray(headEnd + 1) }
}

function readEntry(head: unknown): Omit<Copy, 'bytes'> | null {
  if (typeof head !== 'object' || head === null) return null
  const { id, title, fileName, path, baseSha256, keptAtUtc, pid } = head as Record<string, unknown>
  if (typeof id !== 'string' || typeof title !== 'string' || typeof fileName !== 'string') return null
  if (typeof keptAtUtc !== 'number' || typeof pid !== 'number') return null
  if (path !== null && typeof path !== 'string') return null
  if (baseSha256 !== null && typeof baseSha256 !== 'string') return null
  return { entry: { id, title, fileName, path, baseSha256, keptAtUtc }, pid }
}
