/** Puts the window together: stores, text, planner, files; and what runs by itself: planning after an edit, keeping, host events. */
import type { Pinia } from 'pinia'
import { shallowRef, watch } from 'vue'
import type { App, ComputedRef, Plugin } from 'vue'
import type { HostClient, HostEvent } from '../../shared/host/index.ts'
import type { Text } from '../../shared/text/index.ts'
import { createFiles } from '../stores/files.ts'
import { useDocumentStore } from '../stores/document.ts'
import { createPlanner, usePlanStore } from '../stores/plan.ts'
import { SERVICES } from '../stores/services.ts'
import type { Notice, Services } from '../stores/services.ts'
import { useViewStore } from '../stores/view.ts'
import { TEXT } from '../ui/text.ts'
import type { PlanCaller } from '../workers/index.ts'
import { NOTICES } from './notices.ts'
import type { Notices } from './notices.ts'
import { keepLooks, readLooks } from './looks.ts'
import { createWindowText } from './window-text.ts'

export type WindowParts = {
  readonly pinia: Pinia
  readonly host: HostClient
  readonly quick: PlanCaller
  readonly thorough: PlanCaller
  readonly nowUtc: () => number
}

export type StartedWindow = {
  readonly services: Services
  readonly text: ComputedRef<Text>
  readonly i18n: Plugin
  readonly install: (app: App, services: Services, text: ComputedRef<Text>) => void
}

const KEEP_AFTER_MS = 1000

export function startWindow({ pinia, host, quick, thorough, nowUtc }: WindowParts): StartedWindow {
  const documents = useDocumentStore(pinia)
  const plans = usePlanStore(pinia)
  const view = useViewStore(pinia)
  view.set(readLooks())
  const wording = (): { readonly language: 'en' | 'de'; readonly units: 'metric' | 'us' } =>
    documents.trip?.preferences ?? { language: firstLanguage.value, units: 'metric' }
  const firstLanguage = shallowRef<'en' | 'de'>('en')
  const { i18n, text } = createWindowText(wording)
  const notices = createNotices()
  const planner = createPlanner(plans, quick, thorough)
  const files = createFiles(host, documents, (problem) => notices.notify({ message: text.value.problem(problem) }))
  const services: Services = {
    files,
    planner,
    nowUtc,
    notify: notices.notify,
    set: (path, value) => {
      const name = text.value.t('window.edit.value', { where: text.value.path(path) })
      const refused = documents.edit(name, { kind: 'set-value', path, ...(value === undefined ? {} : { value }) })
      return refused === null ? null : text.value.problem(refused)
    },
    edit: (name, edit, gesture = null) => {
      const refused = documents.edit(name, edit, gesture)
      if (refused !== null) notices.notify({ message: text.value.problem(refused) })
      return refused === null
    },
  }

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
  watch([() => view.state.theme, () => view.state.brightness01], () => keepLooks(view.state))

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

  void begin()
  async function begin(): Promise<void> {
    const info = await files.info()
    if (info !== null) firstLanguage.value = info.language
    if (
      info?.startToken !== null &&
      info?.startToken !== undefined &&
      (await files.open({ kind: 'token', token: info.startToken }))
    ) {
      // The trip named at the start is open.
    } else {
      const kept = await files.recoveries()
      if (kept.length > 0) view.set({ filesOpen: true })
      const first = (await files.samples())[0]
      if (first !== undefined && documents.trip === null) await files.openSample(first.id)
    }
    await listen()
  }

  /** Waits for what the host has to tell, as long as it answers. */
  async function listen(): Promise<void> {
    for (;;) {
      const event = await host.call('nextEvent', {})
      if (!event.ok) return
      await heed(event.value)
    }
  }

  async function heed(event: HostEvent): Promise<void> {
    if (event.kind === 'menu') notices.command(event.command)
    if (event.kind === 'open-requested') await files.open({ kind: 'token', token: event.token })
  }

  return {
    services,
    text,
    i18n,
    install: (app) => {
      app.provide(TEXT, text)
      app.provide(SERVICES, services)
      app.provide(NOTICES, notices)
      app.config.errorHandler = (cause) => {
        const error = cause instanceof Error ? cause : new Error('not an error')
        void host.call('noteCrash', { where: 'view', errorName: error.name, frames: framesOf(error) })
        notices.crashed(error)
        console.error(error)
      }
    },
  }
}

/** File and line of each frame, nothing that a trip says. */
const framesOf = (error: Error): string[] =>
  (error.stack ?? '')
    .split('\n')
    .slice(1, 21)
    .map((frame) => /([\w.-]+\.(?:js|ts|vue):\d+:\d+)/.exec(frame)?.[1] ?? '')
    .filter((frame) => frame !== '')

function createNotices(): Notices {
  const list = shallowRef<readonly (Notice & { readonly id: number })[]>([])
  const command = shallowRef<{ readonly name: string; readonly number: number }>({ name: '', number: 0 })
  const error = shallowRef<Error | null>(null)
  let count = 0
  return {
    list,
    lastCommand: command,
    error,
    notify: (notice) => {
      count += 1
      list.value = [...list.value.slice(-3), { ...notice, id: count }]
    },
    gone: (id) => {
      list.value = list.value.filter((notice) => notice.id !== id)
    },
    command: (name) => {
      command.value = { name, number: command.value.number + 1 }
    },
    crashed: (cause) => {
      error.value = cause
    },
  }
}
