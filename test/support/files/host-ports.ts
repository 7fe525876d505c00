/** A host's ports over a disk in memory: real keepers, a clock and ids that do as they are told. */
import { createBackups } from '../../../electron/files/keep/backups.ts'
import { createJournal } from '../../../electron/files/keep/journal.ts'
import { createLocks } from '../../../electron/files/keep/locks.ts'
import { createRecents } from '../../../electron/files/keep/recents.ts'
import { createSamples } from '../../../electron/files/keep/samples.ts'
import { createNodeFiles } from '../../../electron/files/node-files.ts'
import { createWaits } from '../../../electron/files/waits.ts'
import type { Waits } from '../../../electron/files/waits.ts'
import type { FileCalls } from '../../../electron/files/calls.ts'
import type { Dialogs, HostPorts } from '../../../shared/host/index.ts'
import { ok } from '../../../shared/result/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { MemoryDisk } from './memory-calls.ts'

export type HostSetting = {
  readonly disk: MemoryDisk
  readonly calls?: FileCalls
  readonly nowUtc?: () => number
  /** Paths that the dialogs answer with, in turn; null for a host without dialogs. */
  readonly answers?: (string | null)[] | null
}

export type HostDouble = {
  readonly ports: HostPorts
  readonly waits: Waits
  readonly log: string[]
  readonly focused: string[]
  readonly unsaved: Map<string, boolean>
}

export function emptyDisk(): MemoryDisk {
  const disk = new MemoryDisk()
  for (const folder of ['/trips', '/data', '/locks', '/journal', '/backups', '/samples', '/sheets'])
    disk.addFolder(folder)
  return disk
}

export function hostDouble({
  disk,
  calls = disk.calls(),
  nowUtc = () => 1000,
  answers = null,
}: HostSetting): HostDouble {
  const waits = createWaits(20)
  const log: string[] = []
  const focused: string[] = []
  const unsaved = new Map<string, boolean>()
  let ids = 0
  const next = async (): Promise<string | null> => answers?.shift() ?? null
  const dialogs: Dialogs = { chooseOpen: next, chooseSave: next, chooseFolder: next }
  return {
    waits,
    log,
    focused,
    unsaved,
    ports: {
      facts: { kind: 'loopback', appVersion: '0.0.0', platform: 'linux', language: 'en' },
      files: createNodeFiles(calls, false, () => 0),
      encode: (text) => new TextEncoder().encode(text),
      backups: createBackups({ calls, folder: '/backups', nowUtc, windows: false }),
      journal: createJournal({ calls, folder: '/journal' }),
      locks: createLocks({ calls, folder: '/locks' }),
      recents: createRecents({ calls, path: '/data/recent.json', windows: false }),
      samples: createSamples(calls, '/samples'),
      sheets: {
        render: async (_trip, _plan, sheet) =>
          ok({ name: `${sheet}.txt`, mediaType: 'text/plain', bytes: new TextEncoder().encode(sheet) }),
      },
      clock: { nowUtc: () => nowUtc() as Utc },
      ids: {
        next: () => {
          ids += 1
          return `token-${String(ids).padStart(6, '0')}`
        },
      },
      log: {
        write: (event, params) => log.push(`${event} ${JSON.stringify(params ?? {})}`),
        recent: async () => log,
      },
      desktop: {
        folders: { trips: '/trips', sheets: '/sheets', backups: '/backups', log: '/log' },
        reveal: async () => false,
        focus: (caller) => focused.push(caller),
        setUnsaved: (caller, value) => unsaved.set(caller, value),
      },
      events: waits,
      dialogs: answers === null ? null : dialogs,
    },
  }
}
