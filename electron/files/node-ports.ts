/** All ports on a real system, for every host; what differs between hosts is given in. */
import { randomBytes } from 'node:crypto'
import { promises, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Desktop, Dialogs, Events, FolderKey, HostFacts, HostPorts } from '../../shared/host/index.ts'
import { formatIso } from '../../shared/units/index.ts'
import type { Utc } from '../../shared/units/index.ts'
import { NODE_CALLS } from './calls.ts'
import { attempt } from './cause.ts'
import { appFolders } from './folders.ts'
import type { AppFolders } from './folders.ts'
import { createBackups } from './keep/backups.ts'
import { createJournal } from './keep/journal.ts'
import { createLocks } from './keep/locks.ts'
import { createLog } from './keep/log.ts'
import { createRecents } from './keep/recents.ts'
import { createSamples } from './keep/samples.ts'
import { createNodeFiles } from './node-files.ts'
import { createSheets } from './sheets.ts'
import { sweepFolder } from './sweep.ts'

const MS_PER_S = 1000
/** Read, written and entered by its owner only. */
const OWN_MODE = 0o700

/** What a window can do beside files; null for a host without a desktop. */
export type DesktopPart = {
  readonly reveal: (folder: string) => Promise<boolean>
  readonly focus: Desktop['focus']
  readonly setUnsaved: Desktop['setUnsaved']
}

export type PortSetting = {
  readonly kind: HostFacts['kind']
  /** The planner's own folder: samples and version are read from it. */
  readonly root: string
  readonly events: Events
  readonly dialogs: Dialogs | null
  readonly desktop: DesktopPart | null
}

export async function createNodePorts(setting: PortSetting): Promise<HostPorts> {
  const folders = appFolders(process.platform, process.env)
  const windows = process.platform === 'win32'
  const calls = NODE_CALLS
  const nowUtc = (): Utc => Math.floor(Date.now() / MS_PER_S) as Utc
  await makePrivate(folders.data)
  await sweepOwnFolders(folders)
  return {
    facts: facts(setting),
    files: createNodeFiles(calls, windows, () => Date.now()),
    encode: (text) => new TextEncoder().encode(text),
    backups: createBackups({ calls, folder: folders.backups, nowUtc, windows }),
    journal: createJournal({ calls, folder: folders.journal }),
    locks: createLocks({ calls, folder: folders.locks }),
    recents: createRecents({ calls, path: join(folders.data, 'recent.json'), windows }),
    samples: createSamples(calls, join(setting.root, 'assets', 'samples')),
    sheets: createSheets(),
    clock: { nowUtc },
    ids: { next: () => randomBytes(18).toString('base64url') },
    log: createLog(folders.log, () => formatIso(nowUtc())),
    desktop: desktop(setting.desktop, folders),
    events: setting.events,
    dialogs: setting.dialogs,
  }
}

/** Backups and recovery copies are nobody else's: a new data folder is closed to other users of this machine. */
async function makePrivate(folder: string): Promise<void> {
  const there = await attempt(folder, () => NODE_CALLS.stat(folder))
  if (there.ok) return
  // A folder that cannot be made is told of when something is to be kept in it.
  await attempt(folder, async () => {
    await NODE_CALLS.mkdir(folder)
    await promises.chmod(folder, OWN_MODE)
  })
}

async function sweepOwnFolders(folders: AppFolders): Promise<void> {
  for (const folder of [folders.data, folders.journal, folders.locks, folders.trips]) {
    await sweepFolder(NODE_CALLS, folder, Date.now())
  }
}

function facts({ kind, root }: PortSetting): HostFacts {
  const manifest: unknown = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
  const hasVersion = typeof manifest === 'object' && manifest !== null && 'version' in manifest
  const platforms: Readonly<Record<string, HostFacts['platform']>> = { linux: 'linux', darwin: 'mac', win32: 'windows' }
  return {
    kind,
    appVersion: hasVersion ? String(manifest.version) : '0.0.0',
    platform: platforms[process.platform] ?? 'other',
    language: systemLanguage(),
  }
}

export const systemLanguage = (): 'en' | 'de' =>
  new Intl.DateTimeFormat().resolvedOptions().locale.toLowerCase().startsWith('de') ? 'de' : 'en'

function desktop(part: DesktopPart | null, folders: AppFolders): Desktop {
  const known: Readonly<Record<FolderKey, string>> = {
    trips: folders.trips,
    sheets: folders.sheets,
    backups: folders.backups,
    log: folders.log,
  }
  return {
    folders: known,
    reveal: async (folder) => {
      if (part === null) return false
      await NODE_CALLS.mkdir(known[folder])
      return part.reveal(known[folder])
    },
    focus: (caller) => part?.focus(caller),
    setUnsaved: (caller, unsaved) => part?.setUnsaved(caller, unsaved),
  }
}
