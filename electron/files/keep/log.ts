/** The log file: events by name with numbers, no words of the trip and no paths; turned over before it grows large. */
import { promises } from 'node:fs'
import { join } from 'node:path'
import type { Log } from '../../../shared/host/index.ts'
import { attempt } from '../cause.ts'

/** A log file is turned over at this size. */
const TURN_BYTES = 262_144
const KEPT = 3
const SHOWN_LINES = 400

export function createLog(folder: string, nowIso: () => string): Log {
  const path = join(folder, 'kipstow.log')
  let last: Promise<unknown> = Promise.resolve()
  return {
    write: (event, params = {}) => {
      const line = `${JSON.stringify({ at: nowIso(), event, ...params })}\n`
      last = last.then(() => attempt(path, () => append(folder, path, line)))
    },
    recent: async () => {
      await last
      const lines: string[] = []
      // The file before it too: this one may have been turned over a moment ago.
      for (const each of [`${path}.1`, path]) {
        const text = await attempt(each, () => promises.readFile(each, 'utf8'))
        if (text.ok) lines.push(...text.value.trimEnd().split('\n'))
      }
      return lines.slice(-SHOWN_LINES)
    },
  }
}

async function append(folder: string, path: string, line: string): Promise<void> {
  await promises.mkdir(folder, { recursive: true })
  const stat = await attempt(path, () => promises.stat(path))
  if (stat.ok && stat.value.size > TURN_BYTES) {
    for (let number = KEPT - 1; number >= 1; number -= 1) {
      const older = number === 1 ? path : `${path}.${number - 1}`
      await attempt(older, () => promises.rename(older, `${path}.${number}`))
    }
  }
  await promises.appendFile(path, line)
}
