/** What the host keeps beside the user's files: backups, the recovery journal, locks, recent trips. */
import type { Result } from '../../result/index.ts'

export type BackupEntry = { readonly id: string; readonly savedAtUtc: number; readonly bytes: number }

/** Earlier versions of one file, ordered by a counter, never by a clock. */
export type Backups = {
  readonly keep: (realPath: string, bytes: Uint8Array) => Promise<Result<void>>
  /** Newest first. */
  readonly list: (realPath: string) => Promise<Result<readonly BackupEntry[]>>
  readonly read: (realPath: string, id: string) => Promise<Result<Uint8Array>>
}

export type JournalEntry = {
  readonly id: string
  readonly title: string
  readonly fileName: string
  /** The file it belongs to and what stood there when it was read; null while never saved. */
  readonly path: string | null
  readonly baseSha256: string | null
  readonly keptAtUtc: number
}

/** Unsaved work. A copy that was cut short is passed over for the one before it. */
export type Journal = {
  readonly keep: (entry: JournalEntry, bytes: Uint8Array) => Promise<Result<void>>
  /** Copies left behind by windows that are gone. */
  readonly list: () => Promise<Result<readonly JournalEntry[]>>
  readonly read: (id: string) => Promise<Result<{ readonly entry: JournalEntry; readonly bytes: Uint8Array }>>
  readonly drop: (id: string) => Promise<Result<void>>
}

export type Lock = { readonly release: () => Promise<void> }

export type Locks = {
  /** Problem `trip-open-elsewhere` where another program of ours holds it. */
  readonly take: (realPath: string) => Promise<Result<Lock>>
}

export type Recent = { readonly path: string; readonly openedAtUtc: number }

export type Recents = {
  readonly list: () => Promise<readonly Recent[]>
  readonly add: (recent: Recent) => Promise<void>
  readonly forget: (path: string) => Promise<void>
}

export type Samples = {
  readonly list: () => Promise<Result<readonly { readonly id: string; readonly bytes: Uint8Array }[]>>
}
