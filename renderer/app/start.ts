/** Puts the window together: stores, text, planner, files; and what runs by itself: planning after an edit, keeping, host events. */
import type { Pinia } from 'pinia'
import { shallowRef, watch } from 'vue'
import type { App, ComputedRef, Plugin } from 'vue'
import type { HostClient } from '../../shared/host/index.ts'
import type { Language, Text } from '../../shared/text/index.ts'
import { createFiles } from '../stores/files.ts'
import type { Files } from '../stores/files.ts'
import { createLeaving } from '../stores/leaving.ts'
import { useDocumentStore } from '../stores/document.ts'
import type { DocumentStore } from '../stores/document.ts'
import { createPlanner, usePlanStore } from '../stores/plan.ts'
import type { PlanCallers, Planner, PlanStore } from '../stores/plan.ts'
import { rehearseAfterFirstPlan } from '../stores/rehearse.ts'
import { SERVICES } from '../stores/services.ts'
import type { Services } from '../stores/services.ts'
import { useViewStore } from '../stores/view.ts'
import type { ViewStore } from '../stores/view.ts'
import { TEXT } from '../ui/text.ts'
import { listen, openFirst } from './first-trip.ts'
import { NOTICES, createNotices } from './notices.ts'
import type { Notices } from './notices.ts'
import { keepLooks, readLooks } from './looks.ts'
import { createWindowText } from './window-text.ts'

export type WindowParts = {
  readonly pinia: Pinia
  readonly host: HostClient
  readonly callers: PlanCallers
  readonly nowUtc: () => number
}

export type StartedWindow = { readonly i18n: Plugin; readonly install: (app: App) => void }

type Stores = { readonly documents: DocumentStore; readonly plans: PlanStore; readonly view: ViewStore }

const KEEP_AFTER_MS = 1000

export function startWindow({ pinia, host, callers, nowUtc }: WindowParts): StartedWindow {
  const stores: Stores = { documents: useDocumentStore(pinia), plans: usePlanStore(pinia), view: useViewStore(pinia) }
  const { documents, plans, view } = stores
  view.set(readLooks())
  const firstLanguage = shallowRef<Language>('en')
  const { i18n, text } = createWindowText(
    () => documents.trip?.preferences ?? { language: firstLanguage.value, units: 'metric' },
  )
  const notices = createNotices()
  const planner = createPlanner(plans, callers)
  const leaving = createLeaving(() => documents.wouldLose)
  const files = createFiles({
    host,
    documents,
    tell: (problem) => notices.notify({ message: text.value.problem(problem) }),
    mayLeave: leaving.mayLeave,
  })
  const services: Services = {
    files,
    planner,
    leaving,
    nowUtc,
    notify: notices.notify,
    ...editing(documents, notices, text),
  }

  planAfterEdits(stores, planner)
  rehearseAfterFirstPlan(plans, callers.quick.turn)
  keepWhatIsUnsaved(documents, host, files)
  watch([() => view.state.theme, () => view.state.brightness01], () => keepLooks(view.state))
  // A wait stands open from the first moment: to the loopback host a window without one is gone.
  void listen(host, { command: notices.command, open: (token) => files.open({ kind: 'token', token }) })
  void openFirst({
    files,
    isOpen: () => documents.trip !== null,
    say: (language) => {
      firstLanguage.value = language
    },
    offerKept: () => view.set({ dialog: 'files' }),
  }).then(() => view.set({ starting: false }))
  return { i18n, install: installer({ host, text, services, notices }) }
}

function editing(documents: DocumentStore, notices: Notices, text: ComputedRef<Text>): Pick<Services, 'set' | 'edit'> {
  return {
    set: (path, value) => {
      const name = text.value.t('window.edit.value', { where: text.value.path(path) })
      const refused = documents.edit(name, { kind: 'set-value', path, ...(value === undefined ? {} : { value }) })
      return refused === null ? null : text.value.problemAtField(refused)
    },
    edit: (name, edit, gesture = null) => {
      const refused = documents.edit(name, edit, gesture)
      if (refused !== null) notices.notify({ message: text.value.problemInTrip(refused) })
      return refused === null
    },
  }
}

function planAfterEdits({ documents, plans, view }: Stores, planner: Planner): void {
  watch(
    () => documents.trip,
    (trip, before) => {
      if (trip === null) plans.clear()
      else {
        if (before === null || before === undefined) plans.clear()
        planner.plan(trip)
      }
    },
    { flush: 'sync' },
  )
  watch(
    () => documents.state.file?.token,
    () => view.set({ nightIndex: 0, atUtc: null, chosenUnitId: null }),
  )
}

/** Unsaved edits are kept a moment after the last one, so that nothing is lost with the window. */
function keepWhatIsUnsaved(documents: DocumentStore, host: HostClient, files: Files): void {
  let keeping: ReturnType<typeof setTimeout> | undefined
  watch(
    () => documents.trip,
    () => {
      clearTimeout(keeping)
      if (documents.unsaved) keeping = setTimeout(() => void files.keep(), KEEP_AFTER_MS)
    },
  )
  watch(
    () => documents.unsaved,
    (unsaved) => {
      const token = documents.state.file?.token
      if (token !== undefined && !unsaved) void host.call('markUnsaved', { token, unsaved })
    },
  )
}

type Installed = {
  readonly host: HostClient
  readonly text: ComputedRef<Text>
  readonly services: Services
  readonly notices: Notices
}

const installer =
  ({ host, text, services, notices }: Installed) =>
  (app: App): void => {
    app.provide(TEXT, text)
    app.provide(SERVICES, services)
    app.provide(NOTICES, notices)
    app.config.errorHandler = (cause) => {
      const error = cause instanceof Error ? cause : new Error('not an error')
      void host.call('noteCrash', { where: 'view', errorName: error.name, frames: framesOf(error) })
      notices.crashed(error)
      console.error(error)
    }
  }

/** File and line of each frame, nothing that a trip says. */
const framesOf = (error: Error): string[] =>
  (error.stack ?? '')
    .split('\n')
    .slice(1, 21)
    .map((frame) => /([\w.-]+\.(?:js|ts|vue):\d+:\d+)/.exec(frame)?.[1] ?? '')
    .filter((frame) => frame !== '')
