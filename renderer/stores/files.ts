/** What one can do with trip files: the host's operations put together with the trip in hand. Every refusal is told, none is swallowed. */
import type { Trip } from '../../shared/document/index.ts'
import type { HostClient, HostInfo, OperationOutput, SheetName } from '../../shared/host/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import type { Problem, Result } from '../../shared/result/index.ts'
import type { DocumentStore } from './document.ts'

export type FileProblem = Problem
export type OpenSource =
  | { readonly kind: 'dialog' }
  | { readonly kind: 'token'; readonly token: string }
  | { readonly kind: 'bytes'; readonly name: string; readonly base64: string }
export type SaveAnswer = 'saved' | 'closed' | 'needs-name' | 'conflict' | 'refused'
type Opened = OperationOutput<'openSample'>

export type Files = {
  readonly info: () => Promise<HostInfo | null>
  readonly samples: () => Promise<OperationOutput<'listSamples'>['samples']>
  readonly recent: () => Promise<OperationOutput<'recentTrips'>['trips']>
  readonly forget: (token: string) => Promise<void>
  readonly versions: () => Promise<OperationOutput<'listBackups'>['backups'] | null>
  /** Takes an earlier version's content as one named edit, so that undo brings back what stood before. */
  readonly openVersion: (id: string, name: string) => Promise<boolean>
  readonly diagnostics: () => Promise<string | null>
  readonly recoveries: () => Promise<OperationOutput<'listRecoveries'>['recoveries']>
  readonly openSample: (id: string) => Promise<boolean>
  readonly openRecovery: (id: string) => Promise<boolean>
  readonly dropRecovery: (id: string) => Promise<void>
  readonly open: (from: OpenSource) => Promise<boolean>
  readonly openTheirs: () => Promise<boolean>
  readonly adopt: (name: string, trip: Trip) => Promise<boolean>
  readonly save: (keepMine: boolean) => Promise<SaveAnswer>
  readonly saveAs: (name: string) => Promise<SaveAnswer>
  readonly keep: () => Promise<void>
  readonly export: (
    plan: Plan,
    sheets: readonly SheetName[],
    deliver: 'folder' | 'bytes',
  ) => Promise<OperationOutput<'exportSheets'>>
  readonly reveal: (folder: 'trips' | 'sheets' | 'backups' | 'log') => Promise<string | null>
}

type Ask = HostClient['call']
type Parts<K extends keyof Files> = Pick<Files, K>

export type FilesParts = {
  readonly host: HostClient
  readonly documents: DocumentStore
  readonly tell: (problem: FileProblem) => void
  /** Asks before edits would be lost. */
  readonly mayLeave: () => Promise<boolean>
}

export function createFiles({ host, documents, tell, mayLeave }: FilesParts): Files {
  const ask: Ask = async (name, input) => {
    const result = await host.call(name, input)
    if (!result.ok) tell(result.problem)
    return result
  }
  return {
    ...lists(ask),
    ...opening(ask, { host, documents, mayLeave }),
    ...earlier(ask, documents),
    ...saving(ask, host, documents, tell),
    ...giving(ask, documents),
  }
}

/** What there is to open. */
function lists(
  ask: Ask,
): Parts<'info' | 'samples' | 'recent' | 'forget' | 'recoveries' | 'dropRecovery' | 'diagnostics'> {
  /** Asked once: to the host this question means that the page begins anew, and gives up what it held. */
  let known: HostInfo | null = null
  return {
    info: async () => {
      if (known !== null) return known
      const result = await ask('readHostInfo', {})
      if (result.ok) known = result.value
      return known
    },
    samples: async () => {
      const result = await ask('listSamples', {})
      return result.ok ? result.value.samples : []
    },
    recent: async () => {
      const result = await ask('recentTrips', {})
      return result.ok ? result.value.trips : []
    },
    forget: async (token) => {
      await ask('forgetRecent', { token })
    },
    diagnostics: async () => {
      const result = await ask('readDiagnostics', {})
      return result.ok ? result.value.text : null
    },
    recoveries: async () => {
      const result = await ask('listRecoveries', {})
      return result.ok ? result.value.recoveries : []
    },
    dropRecovery: async (id) => {
      await ask('dropRecovery', { id })
    },
  }
}

function opening(
  ask: Ask,
  { host, documents, mayLeave }: Pick<FilesParts, 'host' | 'documents' | 'mayLeave'>,
): Parts<'openSample' | 'openRecovery' | 'open' | 'openTheirs' | 'adopt'> {
  const take = (opened: Opened, rescued = false): boolean => {
    documents.open(opened.trip, opened.file, opened.unsaved, rescued)
    return true
  }
  const release = async (token: string | undefined): Promise<void> => {
    if (token !== undefined) await host.call('closeTrip', { token })
  }
  /** Takes what was opened, then lets go of the trip that was open before. */
  const replace = async (asking: () => Promise<Result<Opened | null>>, rescued = false): Promise<boolean> => {
    if (!(await mayLeave())) return false
    const before = documents.state.file?.token
    const result = await asking()
    if (!result.ok || result.value === null) return false
    if (before !== result.value.file.token) await release(before)
    return take(result.value, rescued)
  }
  return {
    openSample: async (id) => await replace(() => ask('openSample', { id })),
    openRecovery: async (id) => await replace(() => ask('openRecovery', { id }), true),
    open: async (from) => await replace(() => ask('openTrip', { from, asCopy: false })),
    openTheirs: async () => {
      const token = documents.state.file?.token
      if (token === undefined) return false
      const result = await ask('openTrip', { from: { kind: 'theirs', token }, asCopy: false })
      return result.ok && result.value !== null ? take(result.value) : false
    },
    adopt: async (name, trip) => {
      if (!(await mayLeave())) return false
      const before = documents.state.file?.token
      const result = await ask('adoptTrip', { name, trip })
      if (!result.ok) return false
      await release(before)
      documents.open(trip, result.value, true)
      return true
    },
  }
}

/** Versions of the open file that saving has kept; null where the host cannot tell. */
function earlier(ask: Ask, documents: DocumentStore): Parts<'versions' | 'openVersion'> {
  return {
    versions: async () => {
      const token = documents.state.file?.token
      if (token === undefined) return []
      const result = await ask('listBackups', { token })
      return result.ok ? result.value.backups : null
    },
    openVersion: async (id, name) => {
      const token = documents.state.file?.token
      if (token === undefined) return false
      const result = await ask('openBackup', { token, id })
      if (result.ok) documents.replace(name, result.value.trip)
      return result.ok
    },
  }
}

function saving(
  ask: Ask,
  host: HostClient,
  documents: DocumentStore,
  tell: (problem: FileProblem) => void,
): Parts<'save' | 'saveAs' | 'keep'> {
  const saveWith = async (replacing: string | null): Promise<SaveAnswer> => {
    const { trip, file } = documents.state
    if (trip === null || file === null) return 'needs-name'
    const result = await host.call('saveTrip', { token: file.token, trip, replacing })
    if (result.ok) {
      documents.saved(result.value.file, trip)
      return 'saved'
    }
    if (result.problem.code === 'trip-has-no-file') return 'needs-name'
    if (result.problem.code === 'trip-changed-on-disk' || result.problem.code === 'trip-file-missing') return 'conflict'
    tell(result.problem)
    return 'refused'
  }
  return {
    save: async (keepMine) => {
      const token = documents.state.file?.token
      if (!keepMine || token === undefined) return await saveWith(null)
      const disk = await ask('checkDisk', { token })
      if (!disk.ok) return 'refused'
      return await saveWith(disk.value.state === 'missing' ? 'missing' : disk.value.sha256)
    },
    saveAs: async (name) => {
      const { trip, file } = documents.state
      if (trip === null || file === null) return 'refused'
      const result = await ask('saveTripAs', { token: file.token, trip, name })
      if (!result.ok) return 'refused'
      if (result.value === null) return 'closed'
      documents.saved(result.value.file, trip)
      return 'saved'
    },
    keep: async () => {
      const { trip, file } = documents.state
      if (trip === null || file === null || !documents.unsaved) return
      await host.call('keepRecovery', { token: file.token, trip })
      await host.call('markUnsaved', { token: file.token, unsaved: true })
    },
  }
}

/** What leaves the planner: sheets, and folders to look into. */
function giving(ask: Ask, documents: DocumentStore): Parts<'export' | 'reveal'> {
  return {
    export: async (plan, sheets, deliver) => {
      const { trip } = documents.state
      if (trip === null) return null
      const result = await ask('exportSheets', { trip, plan, sheets: [...sheets], deliver })
      return result.ok ? result.value : null
    },
    reveal: async (folder) => {
      const result = await ask('revealFolder', { folder })
      return result.ok ? result.value.path : null
    },
  }
}
