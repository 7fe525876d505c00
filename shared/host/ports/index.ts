/** Everything a host must bring so that the handlers can work. */
import type { HostInfo } from '../contract.ts'
import type { Files } from './files.ts'
import type { Backups, Journal, Locks, Recents, Samples } from './keepers.ts'
import type { Clock, Desktop, Dialogs, Events, Ids, Log, Sheets } from './surroundings.ts'

export type { FileIdentity, FileRead, Files } from './files.ts'
export type { BackupEntry, Backups, Journal, JournalEntry, Lock, Locks, Recent, Recents, Samples } from './keepers.ts'
export type { Caller, Clock, Desktop, Dialogs, Events, FolderKey, Ids, Log, SheetFile, Sheets } from './surroundings.ts'

export type HostFacts = Omit<HostInfo, 'startToken' | 'hasDialogs' | 'tripsFolder'>

export type HostPorts = {
  readonly facts: HostFacts
  readonly files: Files
  /** Text as UTF-8. */
  readonly encode: (text: string) => Uint8Array
  readonly backups: Backups
  readonly journal: Journal
  readonly locks: Locks
  readonly recents: Recents
  readonly samples: Samples
  readonly sheets: Sheets
  readonly clock: Clock
  readonly ids: Ids
  readonly log: Log
  readonly desktop: Desktop
  readonly events: Events
  /** Null where the host has no dialogs. */
  readonly dialogs: Dialogs | null
}
