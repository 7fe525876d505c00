/** Clock, chance, log, and the desktop around a window. */
import type { Plan } from '../../plan/index.ts'
import type { Trip } from '../../document/index.ts'
import type { Result } from '../../result/index.ts'
import type { Utc } from '../../units/index.ts'
import type { HostEvent } from '../contract.ts'
import type { SheetName } from '../schema/sheets.ts'

/** Who asks: one window, or one browser session. */
export type Caller = string

export type Clock = { readonly nowUtc: () => Utc }

/** Tokens nobody can guess. */
export type Ids = { readonly next: () => string }

/** Events by name; parameters hold no words of the trip and no paths. */
export type Log = {
  readonly write: (event: string, params?: Readonly<Record<string, string | number | boolean>>) => void
  readonly recent: () => Promise<readonly string[]>
}

/** Null: the user closed the dialog. */
export type Dialogs = {
  readonly chooseOpen: (caller: Caller) => Promise<string | null>
  readonly chooseSave: (caller: Caller, name: string) => Promise<string | null>
  readonly chooseFolder: (caller: Caller) => Promise<string | null>
}

export type FolderKey = 'trips' | 'sheets' | 'backups' | 'log'

export type Desktop = {
  readonly folders: Readonly<Record<FolderKey, string>>
  /** False where this host cannot show a folder. */
  readonly reveal: (folder: FolderKey) => Promise<boolean>
  readonly focus: (caller: Caller) => void
  readonly setUnsaved: (caller: Caller, unsaved: boolean) => void
}

export type Events = { readonly next: (caller: Caller) => Promise<HostEvent> }

export type SheetFile = { readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array }

export type Sheets = {
  readonly render: (trip: Trip, plan: Plan, sheet: SheetName, atUtc: Utc) => Promise<Result<SheetFile>>
}
