/** What each command does. */
import { nextTick } from 'vue'
import type { ComputedRef } from 'vue'
import type { Text } from '../../shared/text/index.ts'
import { useDocumentStore } from '../stores/document.ts'
import type { DocumentStore } from '../stores/document.ts'
import type { Services } from '../stores/services.ts'
import { usePlanStore } from '../stores/plan.ts'
import { useViewStore } from '../stores/view.ts'
import type { DialogName, Part, ViewState, ViewStore } from '../stores/view.ts'
import type { CommandId } from './commands.ts'

export type FileDialogs = {
  readonly save: () => void
  readonly saveAs: () => void
}

type Actions = Readonly<Record<CommandId, () => void>>
type Some<Prefix extends string> = Pick<Actions, Extract<CommandId, `${Prefix}${string}`>>

export function useCommands(
  services: Services,
  text: ComputedRef<Text>,
  dialogs: FileDialogs,
): (id: CommandId) => void {
  const documents = useDocumentStore()
  const view = useViewStore()
  const plans = usePlanStore()
  const night = (by: number): void => {
    const count = plans.plan?.nights.length ?? 1
    view.set({ nightIndex: Math.min(count - 1, Math.max(0, view.state.nightIndex + by)), atUtc: null })
  }
  const actions: Actions = {
    ...showing(view),
    ...sizing(view),
    ...preferring(services, text, view),
    ...stepping(documents, services, text),
    save: dialogs.save,
    'save-as': dialogs.saveAs,
    'night-next': () => night(1),
    'night-previous': () => night(-1),
    stop: services.planner.cancel,
  }
  return (id) => actions[id]()
}

type Showing = Some<'screen-'> &
  Pick<Actions, 'new' | 'open' | 'findings' | 'what-if'> &
  Pick<Actions, Extract<CommandId, DialogName>>

const showing = (view: ViewStore): Showing => {
  const show = (change: Partial<ViewState>) => (): void => view.set(change)
  return {
    new: show({ dialog: 'files' }),
    open: show({ dialog: 'files' }),
    versions: show({ dialog: 'versions' }),
    export: show({ dialog: 'export' }),
    palette: show({ dialog: 'palette' }),
    shortcuts: show({ dialog: 'shortcuts' }),
    preferences: show({ dialog: 'preferences' }),
    about: show({ dialog: 'about' }),
    diagnostics: show({ dialog: 'diagnostics' }),
    findings: show({ screen: 'workbench', dialog: 'findings' }),
    'what-if': show({ screen: 'workbench', dialog: 'what-if' }),
    'screen-workbench': show({ screen: 'workbench' }),
    'screen-kit': show({ screen: 'kit' }),
    'screen-vehicle': show({ screen: 'vehicle' }),
    'screen-nights': show({ screen: 'nights' }),
    'screen-travellers': show({ screen: 'travellers' }),
  }
}

/** Which part has the whole sheet, and which has the focus. */
const sizing = (view: ViewStore): Some<'full-'> & Some<'go-'> => {
  const widen = (part: Part) => (): void =>
    view.set({ screen: 'workbench', full: view.state.full === part ? null : part })
  const focus = (selector: string) => (): void => {
    view.set({ screen: 'workbench' })
    void nextTick(() => document.querySelector<HTMLElement>(selector)?.focus())
  }
  return {
    'full-load': widen('load'),
    'full-night': widen('night'),
    'full-checklist': widen('checklist'),
    'full-none': () => view.set({ full: null }),
    'go-band': focus('[data-part=band]'),
    'go-load': focus('#part-load'),
    'go-night': focus('#part-night'),
    'go-checklist': focus('#part-checklist'),
  }
}

type Preferring = Some<'theme-'> & Some<'language-'> & Some<'units-'>

const preferring = (services: Services, text: ComputedRef<Text>, view: ViewStore): Preferring => {
  const prefer = (preferences: { readonly language?: 'en' | 'de'; readonly units?: 'metric' | 'us' }) => (): void =>
    void services.edit(text.value.t('window.edit.preferences'), { kind: 'set-preferences', preferences })
  return {
    'theme-light': () => view.set({ theme: 'light' }),
    'theme-dark': () => view.set({ theme: 'dark' }),
    'theme-night-red': () => view.set({ theme: 'red' }),
    'language-en': prefer({ language: 'en' }),
    'language-de': prefer({ language: 'de' }),
    'units-metric': prefer({ units: 'metric' }),
    'units-us': prefer({ units: 'us' }),
  }
}

const stepping = (
  documents: DocumentStore,
  services: Services,
  text: ComputedRef<Text>,
): Pick<Actions, 'undo' | 'redo'> => ({
  undo: () => {
    const name = documents.undoName
    if (name === null) return
    documents.undo()
    services.notify({ message: text.value.t('window.undone', { edit: name }) })
  },
  redo: () => {
    const name = documents.redoName
    if (name === null) return
    documents.redo()
    services.notify({ message: text.value.t('window.redone', { edit: name }) })
  },
})
