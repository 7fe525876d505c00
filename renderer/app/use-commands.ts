/** What each command does. */
import { nextTick } from 'vue'
import type { ComputedRef } from 'vue'
import { assertNever } from '../../shared/result/index.ts'
import type { Text } from '../../shared/text/index.ts'
import { useDocumentStore } from '../stores/document.ts'
import type { Services } from '../stores/services.ts'
import { usePlanStore } from '../stores/plan.ts'
import { useViewStore } from '../stores/view.ts'
import type { CommandId } from './commands.ts'

export type FileDialogs = {
  readonly save: () => void
  readonly saveAs: () => void
  readonly openFile: () => void
  readonly newTrip: () => void
}

export function useCommands(
  services: Services,
  text: ComputedRef<Text>,
  dialogs: FileDialogs,
): (id: CommandId) => void {
  const documents = useDocumentStore()
  const view = useViewStore()
  const plans = usePlanStore()

  const focus = (selector: string): void => {
    view.set({ screen: 'workbench' })
    void nextTick(() => document.querySelector<HTMLElement>(selector)?.focus())
  }
  const night = (by: number): void => {
    const count = plans.plan?.nights.length ?? 1
    view.set({ nightIndex: Math.min(count - 1, Math.max(0, view.state.nightIndex + by)), atUtc: null })
  }
  const undo = (): void => {
    const name = documents.undoName
    if (name === null) return
    documents.undo()
    services.notify({ message: text.value.t('window.undone', { edit: name }) })
  }
  const redo = (): void => {
    const name = documents.redoName
    if (name === null) return
    documents.redo()
    services.notify({ message: text.value.t('window.redone', { edit: name }) })
  }
  const prefer = (preferences: { readonly language?: 'en' | 'de'; readonly units?: 'metric' | 'us' }): void =>
    void services.edit(text.value.t('window.edit.preferences'), { kind: 'set-preferences', preferences })

  return (id) => {
    switch (id) {
      case 'new':
        return dialogs.newTrip()
      case 'open':
        return view.set({ filesOpen: true })
      case 'save':
        return dialogs.save()
      case 'save-as':
        return dialogs.saveAs()
      case 'export':
        return view.set({ exportOpen: true })
      case 'undo':
        return undo()
      case 'redo':
        return redo()
      case 'palette':
        return view.set({ paletteOpen: true })
      case 'shortcuts':
        return view.set({ shortcutsOpen: true })
      case 'findings':
        return view.set({ findingsOpen: true })
      case 'screen-workbench':
        return view.set({ screen: 'workbench' })
      case 'screen-kit':
        return view.set({ screen: 'kit' })
      case 'screen-vehicle':
        return view.set({ screen: 'vehicle' })
      case 'screen-nights':
        return view.set({ screen: 'nights' })
      case 'screen-travellers':
        return view.set({ screen: 'travellers' })
      case 'full-load':
        return view.set({ screen: 'workbench', full: view.state.full === 'load' ? null : 'load' })
      case 'full-night':
        return view.set({ screen: 'workbench', full: view.state.full === 'night' ? null : 'night' })
      case 'full-checklist':
        return view.set({ screen: 'workbench', full: view.state.full === 'checklist' ? null : 'checklist' })
      case 'full-none':
        return view.set({ full: null })
      case 'go-band':
        return focus('[data-part=band]')
      case 'go-load':
        return focus('#part-load')
      case 'go-night':
        return focus('#part-night')
      case 'go-checklist':
        return focus('#part-checklist')
      case 'night-next':
        return night(1)
      case 'night-previous':
        return night(-1)
      case 'theme-light':
        return view.set({ theme: 'light' })
      case 'theme-dark':
        return view.set({ theme: 'dark' })
      case 'theme-night-red':
        return view.set({ theme: 'red' })
      case 'language-en':
        return prefer({ language: 'en' })
      case 'language-de':
        return prefer({ language: 'de' })
      case 'units-metric':
        return prefer({ units: 'metric' })
      case 'units-us':
        return prefer({ units: 'us' })
      case 'stop':
        return services.planner.cancel()
      default:
        return assertNever(id)
    }
  }
}
