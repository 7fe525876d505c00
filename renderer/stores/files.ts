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

export function createFiles(host: HostClient, documents: DocumentStore, tell: (problem: FileProblem) => void): Files {
  const ask: Ask = async (name, input) => {
    const result = await host.call(name, input)
    if (!result.ok) tell(result.problem)
    return result
  }
  return {
    ...lists(ask),
    ...opening(ask, host, documents),
    ...saving(ask, host, documents, tell),
    ...giving(ask, documents),
  }
}

/** What there is to open. */
function lists(ask: Ask): Parts<'info' | 'samples' | 'recent' | 'recoveries' | 'dropRecovery'> {
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
  host: HostClient,
  documents: DocumentStore,
): Parts<'openSample' | 'openRecovery' | 'open' | 'openTheirs' | 'adopt'> {
  const take = (opened: Opened): boolean => {
    documents.open(opened.trip, opened.file, opened.unsaved)
    return true
  }
  const release = async (token: string | undefined): Promise<void> => {
    if (token !== undefined) await host.call('closeTrip', { token })
  }
  /** Takes what was opened, then lets go of the trip that was open before. */
  const replace = async (asked: Promise<Result<Opened | null>>): Promise<boolean> => {
    const before = documents.state.file?.token
    const result = await asked
    if (!result.ok || result.value === null) return false
    if (before !== result.value.file.token) await release(before)
    return take(result.value)
  }
  return {
    openSample: async (id) => await replace(ask('openSample', { id })),
    openRecovery: async (id) => await replace(ask('openRecovery', { id })),
    open: async (from) => await replace(ask('openTrip', { from, asCopy: false })),
    openTheirs: async () => {
      const token = documents.state.file?.token
      if (token === undefined) return false
      const result = await ask('openTrip', { from: { kind: 'theirs', token }, asCopy: false })
      return result.ok && result.value !== null ? take(result.value) : false
    },
    adopt: async (name, trip) => {
      const before = documents.state.file?.token
      const result = await ask('adoptTrip', { name, trip })
      if (!result.ok) return false
      await release(before)
      documents.open(trip, result.value, true)
      return true
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
